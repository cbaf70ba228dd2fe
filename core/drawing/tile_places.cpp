#include "core/drawing/tile_places.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/free_space.h"

namespace shoulderline {

PlacesToKeepWhole placesToKeepWhole(const Sheet& drawing, const TextMetrics& metrics) {
    constexpr double kClear = 0.5;
    PlacesToKeepWhole places;
    const auto keepWhole = [&](const TextOp& text) {
        const Rect area = boundsOf(text, metrics);
        places.acrossX.emplace_back(area.min.x - kClear, area.max.x + kClear);
        places.acrossY.emplace_back(area.min.y - kClear, area.max.y + kClear);
    };
    std::vector<SubjectKind> open;
    for (const Op& op : drawing.ops) {
        if (const auto* group = std::get_if<BeginGroup>(&op)) {
            open.push_back(group->subject.kind);
        } else if (std::holds_alternative<EndGroup>(op) && !open.empty()) {
            open.pop_back();
        } else if (const auto* text = std::get_if<TextOp>(&op)) {
            keepWhole(*text);
        } else if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
            keepWhole(partsOf(*dimension, metrics).figure);
            const bool isUpright = dimension->isTurned && !dimension->running;
            std::vector<double>& along = isUpright ? places.y : places.x;
            along.push_back(isUpright ? dimension->from.y : dimension->from.x);
            along.push_back(isUpright ? dimension->to.y : dimension->to.x);
        } else if (const auto* stroke = std::get_if<Stroke>(&op);
                   stroke != nullptr && stroke->role == LineRole::Visible && !open.empty() &&
                   open.back() == SubjectKind::Joint) {
            for (const Vec2& p : stroke->points) {
                places.x.push_back(p.x);
                places.y.push_back(p.y);
            }
        }
    }
    return places;
}

namespace {

// The places of titles in the list of ops.
std::vector<std::size_t> titlesIn(const std::vector<Op>& ops) {
    std::vector<std::size_t> titles;
    for (std::size_t i = 1; i < ops.size(); ++i) {
        const auto* group = std::get_if<BeginGroup>(&ops[i - 1]);
        if (group != nullptr && group->name == kTitleGroup &&
            std::holds_alternative<TextOp>(ops[i])) {
            titles.push_back(i);
        }
    }
    return titles;
}

class TitleMover {
  public:
    TitleMover(std::vector<double> cuts, const TextMetrics& metrics)
        : cuts_(std::move(cuts)), metrics_(metrics) {}

    // To the nearest place between `from` and `to`; as it is where there is none.
    [[nodiscard]] TextOp moved(const TextOp& title,
                               double from,
                               double to,
                               const FreeSpace& space) const {
        constexpr double kStep = 1.0;
        for (const double height : {title.height, 3.5, 2.5}) {
            TextOp op = title;
            op.height = std::min(height, title.height);
            const double width = metrics_.width(op.text, op.height, op.isBold);
            for (double off = 0.0; off < to - from; off += kStep) {
                for (const double x : {title.at.x + off, title.at.x - off}) {
                    op.at.x = x;
                    const bool isIn = off == 0.0 || (x > from && x + width < to);
                    if (isIn && stands(op, space)) {
                        return op;
                    }
                }
            }
        }
        return title;
    }

  private:
    [[nodiscard]] bool stands(const TextOp& op, const FreeSpace& space) const {
        constexpr double kClear = 1.0;
        Rect area = boundsOf(op, metrics_);
        area.min.x -= kClear;
        area.max.x += kClear;
        const bool isCut = std::any_of(cuts_.begin(), cuts_.end(), [&](double cut) {
            return cut > area.min.x && cut < area.max.x;
        });
        return !isCut && space.isFree(area);
    }

    std::vector<double> cuts_;
    const TextMetrics& metrics_;
};

}  // namespace

void moveTitlesOffSeams(Sheet& drawing,
                        const std::vector<Rect>& rooms,
                        const Paper& paper,
                        const TileOptions& options,
                        const TextMetrics& metrics) {
    const std::vector<std::size_t> titles = titlesIn(drawing.ops);
    Sheet rest = drawing;
    for (auto it = titles.rbegin(); it != titles.rend(); ++it) {
        rest.ops.erase(rest.ops.begin() + static_cast<std::ptrdiff_t>(*it));
    }
    const TileGrid grid = tileGrid(drawing.size, paper, options, placesToKeepWhole(rest, metrics));
    std::vector<double> cuts;
    for (int i = 0; i + 1 < grid.columns; ++i) {
        cuts.push_back(grid.cutAfterColumn(i));
    }
    if (cuts.empty()) {
        return;
    }
    const TitleMover mover(std::move(cuts), metrics);
    FreeSpace space(rest.ops, metrics);
    for (const std::size_t i : titles) {
        TextOp& title = std::get<TextOp>(drawing.ops[i]);
        const auto room = std::find_if(rooms.begin(), rooms.end(), [&](const Rect& rect) {
            return title.at.x >= rect.min.x && title.at.x <= rect.max.x &&
                   title.at.y >= rect.min.y && title.at.y <= rect.max.y;
        });
        title = room != rooms.end() ? mover.moved(title, room->min.x, room->max.x, space)
                                    : mover.moved(title, 0.0, drawing.size.x, space);
        space.take({title}, metrics);
    }
}

}  // namespace shoulderline
