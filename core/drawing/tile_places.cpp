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

// What moves as one: a title, or the lines of a block of words.
struct Movable {
    std::vector<std::size_t> ops;  // their places in the list
    bool isTitle = false;
};

std::vector<Movable> movablesIn(const std::vector<Op>& ops) {
    std::vector<Movable> all;
    bool isOpen = false;
    for (std::size_t i = 0; i < ops.size(); ++i) {
        if (const auto* group = std::get_if<BeginGroup>(&ops[i])) {
            isOpen = group->name == kTitleGroup || group->name == kWordsGroup;
            if (isOpen) {
                all.push_back({{}, group->name == kTitleGroup});
            }
        } else if (std::holds_alternative<EndGroup>(ops[i])) {
            isOpen = false;
        } else if (isOpen && std::holds_alternative<TextOp>(ops[i])) {
            all.back().ops.push_back(i);
        }
    }
    std::erase_if(all, [](const Movable& one) { return one.ops.empty(); });
    return all;
}

class WordsMover {
  public:
    WordsMover(std::vector<double> cuts, const TextMetrics& metrics)
        : cuts_(std::move(cuts)), metrics_(metrics) {}

    // To the nearest place between `from` and `to`; as they are where there is none.
    [[nodiscard]] std::vector<TextOp> moved(const std::vector<TextOp>& lines,
                                            bool mayShrink,
                                            double from,
                                            double to,
                                            const FreeSpace& space) const {
        constexpr double kStep = 1.0;
        const double height = lines.front().height;
        for (const double smaller : {height, 3.5, 2.5}) {
            std::vector<TextOp> some = lines;
            for (TextOp& line : some) {
                line.height = std::min(smaller, height);
            }
            const double width = widthOf(some);
            for (double off = 0.0; off < to - from; off += kStep) {
                for (const double by : {off, -off}) {
                    const double x = lines.front().at.x + by;
                    for (std::size_t i = 0; i < some.size(); ++i) {
                        some[i].at.x = lines[i].at.x + by;
                    }
                    const bool isIn = off == 0.0 || (x > from && x + width < to);
                    if (isIn && stand(some, space)) {
                        return some;
                    }
                }
            }
            if (!mayShrink) {
                break;
            }
        }
        return lines;
    }

  private:
    [[nodiscard]] double widthOf(const std::vector<TextOp>& lines) const {
        double width = 0.0;
        for (const TextOp& line : lines) {
            width = std::max(width, metrics_.width(line.text, line.height, line.isBold));
        }
        return width;
    }

    [[nodiscard]] bool stand(const std::vector<TextOp>& lines, const FreeSpace& space) const {
        constexpr double kClear = 1.0;
        return std::all_of(lines.begin(), lines.end(), [&](const TextOp& line) {
            Rect area = boundsOf(line, metrics_);
            area.min.x -= kClear;
            area.max.x += kClear;
            const bool isCut = std::any_of(cuts_.begin(), cuts_.end(), [&](double cut) {
                return cut > area.min.x && cut < area.max.x;
            });
            return !isCut && space.isFree(area);
        });
    }

    std::vector<double> cuts_;
    const TextMetrics& metrics_;
};

struct SeamCuts {
    std::vector<double> x;
    std::vector<double> y;
};

SeamCuts seamCuts(const TileGrid& grid) {
    SeamCuts cuts;
    for (int i = 0; i + 1 < grid.columns; ++i) {
        cuts.x.push_back(grid.cutAfterColumn(i));
    }
    for (int i = 0; i + 1 < grid.rows; ++i) {
        cuts.y.push_back(grid.cutAfterRow(i));
    }
    return cuts;
}

bool isCutBy(const SeamCuts& cuts, const Rect& area) {
    return std::any_of(cuts.x.begin(),
                       cuts.x.end(),
                       [&](double x) { return x > area.min.x && x < area.max.x; }) ||
           std::any_of(cuts.y.begin(), cuts.y.end(), [&](double y) {
               return y > area.min.y && y < area.max.y;
           });
}

// The dimension with its figure between its arrows at the nearest place to where it is that nothing
// lies on and no cut runs through; as it is where there is none.
DimensionOp withFigureOffCuts(const DimensionOp& dimension,
                              const SeamCuts& cuts,
                              const FreeSpace& others,
                              const TextMetrics& metrics) {
    constexpr double kStep = 1.0;
    constexpr double kClear = 0.5;
    const Vec2 line = dimension.lineTo - dimension.lineFrom;
    const double span = norm(line);
    const double half = metrics.width(dimension.text, dimension.height, false) / 2.0;
    const double room = span / 2.0 - half - 2.0 * dimension.height;  // arrows are left their place
    for (double off = 0.0; off < room; off += kStep) {
        for (const double by : {off, -off}) {
            DimensionOp moved = dimension;
            moved.textAt = dimension.textAt + line * (by / span);
            Rect area = boundsOf(partsOf(moved, metrics).figure, metrics);
            area.min = area.min - Vec2{kClear, kClear};
            area.max = area.max + Vec2{kClear, kClear};
            if (!isCutBy(cuts, area) && others.isFree(area)) {
                return moved;
            }
        }
    }
    return dimension;
}

void moveFiguresOffSeams(Sheet& drawing,
                         const Paper& paper,
                         const TileOptions& options,
                         const TextMetrics& metrics) {
    const SeamCuts cuts =
        seamCuts(tileGrid(drawing.size, paper, options, placesToKeepWhole(drawing, metrics)));
    for (std::size_t i = 0; i < drawing.ops.size(); ++i) {
        const auto* dimension = std::get_if<DimensionOp>(&drawing.ops[i]);
        if (dimension == nullptr || dimension->running ||
            !isCutBy(cuts, boundsOf(partsOf(*dimension, metrics).figure, metrics))) {
            continue;
        }
        std::vector<Op> others = drawing.ops;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        drawing.ops[i] = withFigureOffCuts(*dimension, cuts, FreeSpace(others, metrics), metrics);
    }
}

}  // namespace

void moveWordsOffSeams(Sheet& drawing,
                       const std::vector<Rect>& rooms,
                       const Paper& paper,
                       const TileOptions& options,
                       const TextMetrics& metrics) {
    const std::vector<Movable> movables = movablesIn(drawing.ops);
    std::vector<bool> moves(drawing.ops.size(), false);
    for (const Movable& one : movables) {
        for (const std::size_t i : one.ops) {
            moves[i] = true;
        }
    }
    Sheet rest = drawing;
    rest.ops.clear();
    for (std::size_t i = 0; i < drawing.ops.size(); ++i) {
        if (!moves[i]) {
            rest.ops.push_back(drawing.ops[i]);
        }
    }
    const SeamCuts cuts =
        seamCuts(tileGrid(drawing.size, paper, options, placesToKeepWhole(rest, metrics)));
    if (cuts.x.empty()) {
        return;
    }
    const WordsMover mover(cuts.x, metrics);
    FreeSpace space(rest.ops, metrics);
    for (const Movable& one : movables) {
        std::vector<TextOp> lines;
        for (const std::size_t i : one.ops) {
            lines.push_back(std::get<TextOp>(drawing.ops[i]));
        }
        const Vec2 at = lines.front().at;
        const auto room = std::find_if(rooms.begin(), rooms.end(), [&](const Rect& rect) {
            return at.x >= rect.min.x && at.x <= rect.max.x && at.y >= rect.min.y &&
                   at.y <= rect.max.y;
        });
        const Rect within = room != rooms.end() ? *room : Rect{{0, 0}, drawing.size};
        lines = mover.moved(lines, one.isTitle, within.min.x, within.max.x, space);
        for (std::size_t i = 0; i < lines.size(); ++i) {
            drawing.ops[one.ops[i]] = lines[i];
            space.take({lines[i]}, metrics);
        }
    }
    moveFiguresOffSeams(drawing, paper, options, metrics);
}

}  // namespace shoulderline
