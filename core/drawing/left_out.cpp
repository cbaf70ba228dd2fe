#include "core/drawing/left_out.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/free_space.h"
#include "core/drawing/overloaded.h"

namespace shoulderline {

namespace {

constexpr double kLeastLeftOut = 40.0;
constexpr double kKept = 15.0;      // beside what is drawn, on either side of a break
constexpr double kHalfBreak = 1.5;  // from the middle of a break to either of its lines
constexpr double kLevel = 1e-6;

struct Kept {
    double low = 0.0;
    double high = 0.0;
};

// A stretch that is left out, in the drawing as it was.
struct Gap {
    double from = 0.0;
    double length = 0.0;
};

// Where along the drawing something is, other than level lines that run through.
class Busy {
  public:
    explicit Busy(const TextMetrics& metrics) : metrics_(metrics) {}

    void add(const Op& op) {
        std::visit(Overloaded{
                       [&](const Stroke& stroke) { add(stroke.points); },
                       [&](const Fill& fill) {
                           std::vector<Vec2> ring = fill.points;
                           ring.push_back(ring.front());
                           add(ring);
                       },
                       [&](const ArcOp& arc) { add(boundsOf(arc)); },
                       [&](const TextOp& text) { add(boundsOf(text, metrics_)); },
                       [&](const DimensionOp& dimension) {
                           const DimensionParts parts = partsOf(dimension, metrics_);
                           for (const Stroke& stroke : parts.strokes) {
                               add(stroke.points);
                           }
                           for (const Fill& arrow : parts.arrows) {
                               add(boundsOf({arrow}, metrics_));
                           }
                           add(boundsOf(parts.figure, metrics_));
                       },
                       [](const BeginGroup&) {},
                       [](const EndGroup&) {},
                   },
                   op);
    }

    // What lies between, ascending.
    [[nodiscard]] std::vector<Kept> between() {
        std::sort(taken_.begin(), taken_.end(), [](const Kept& a, const Kept& b) {
            return a.low < b.low;
        });
        std::vector<Kept> free;
        double reach = taken_.empty() ? 0.0 : taken_.front().high;
        for (const Kept& interval : taken_) {
            if (interval.low > reach) {
                free.push_back({reach, interval.low});
            }
            reach = std::max(reach, interval.high);
        }
        return free;
    }

  private:
    void add(const Rect& rect) { taken_.push_back({rect.min.x, rect.max.x}); }
    void add(const std::vector<Vec2>& points) {
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            const Kept run{std::min(points[i].x, points[i + 1].x),
                           std::max(points[i].x, points[i + 1].x)};
            if (std::abs(points[i].y - points[i + 1].y) < kLevel) {
                taken_.push_back({run.low, run.low});
                taken_.push_back({run.high, run.high});
            } else {
                taken_.push_back(run);
            }
        }
    }

    const TextMetrics& metrics_;
    std::vector<Kept> taken_;
};

std::vector<Gap> gapsIn(const Sheet& drawing, double step, const TextMetrics& metrics) {
    Busy busy(metrics);
    for (const Op& op : drawing.ops) {
        busy.add(op);
    }
    std::vector<Gap> gaps;
    for (const Kept& free : busy.between()) {
        const double whole = std::floor((free.high - free.low - 2.0 * kKept) / step) * step;
        if (whole >= kLeastLeftOut) {
            gaps.push_back({(free.low + free.high - whole) / 2.0, whole});
        }
    }
    return gaps;
}

class Shortener {
  public:
    Shortener(const std::vector<Gap>& gaps) : gaps_(gaps) {}

    [[nodiscard]] Vec2 moved(Vec2 p) const {
        double shift = 0.0;
        for (const Gap& gap : gaps_) {
            shift += std::clamp(p.x - gap.from, 0.0, gap.length);
        }
        return {p.x - shift, p.y};
    }
    void move(Op& op) const {
        const auto each = [&](std::vector<Vec2>& points) {
            for (Vec2& p : points) {
                p = moved(p);
            }
        };
        std::visit(Overloaded{
                       [&](Stroke& stroke) { each(stroke.points); },
                       [&](Fill& fill) { each(fill.points); },
                       [&](ArcOp& arc) {
                           // By where it is drawn: its centre may lie beyond a gap.
                           const Rect bounds = boundsOf(arc);
                           arc.centre = arc.centre + moved(bounds.min) - bounds.min;
                       },
                       [&](TextOp& text) { text.at = moved(text.at); },
                       [&](DimensionOp& d) {
                           for (Vec2* p : {&d.from, &d.to, &d.lineFrom, &d.lineTo, &d.textAt}) {
                               *p = moved(*p);
                           }
                           if (d.running) {
                               d.running->foot = moved(d.running->foot);
                           }
                       },
                       [](BeginGroup&) {},
                       [](EndGroup&) {},
                   },
                   op);
    }

  private:
    const std::vector<Gap>& gaps_;
};

// The stretches of one view's lines that a break runs across.
struct Crossed {
    std::optional<Kept> rows;
    void add(double y) {
        rows = rows ? Kept{std::min(rows->low, y), std::max(rows->high, y)} : Kept{y, y};
    }
};

// Level lines of parts and of strips stop short of the break at `x` and go on behind it.
void openLines(double x, std::vector<Op>& ops, std::vector<Crossed>& views) {
    std::vector<Op> opened;
    views.emplace_back();  // of what stands in no group
    std::size_t view = 0;
    int depth = 0;
    bool isOfPart = false;
    for (Op& op : ops) {
        if (const auto* group = std::get_if<BeginGroup>(&op)) {
            if (depth++ == 0) {
                isOfPart = group->subject.kind == SubjectKind::Part;
                view = views.size();
                views.emplace_back();
            }
        } else if (std::holds_alternative<EndGroup>(op) && --depth == 0) {
            isOfPart = false;
            view = 0;
        }
        auto* stroke = std::get_if<Stroke>(&op);
        const bool crosses = stroke != nullptr && (isOfPart || stroke->role == LineRole::Visible) &&
                             stroke->points.size() == 2 &&
                             std::min(stroke->points[0].x, stroke->points[1].x) < x - kHalfBreak &&
                             std::max(stroke->points[0].x, stroke->points[1].x) > x + kHalfBreak;
        if (!crosses) {
            opened.push_back(std::move(op));
            continue;
        }
        if (stroke->points[0].x > stroke->points[1].x) {
            std::swap(stroke->points[0], stroke->points[1]);
        }
        const double y = stroke->points[0].y;
        opened.emplace_back(Stroke{{stroke->points[0], {x - kHalfBreak, y}}, stroke->role});
        opened.emplace_back(Stroke{{{x + kHalfBreak, y}, stroke->points[1]}, stroke->role});
        views[view].add(y);
    }
    ops = std::move(opened);
}

Stroke zigzag(double x, const Kept& rows) {
    constexpr double kOverrun = 3.0;
    const double middle = (rows.low + rows.high) / 2.0;
    const double zig = std::clamp((rows.high - rows.low) / 6.0, 0.5, 2.5);
    return {{{x, rows.low - kOverrun},
             {x, middle - zig},
             {x + zig, middle - zig * 0.5},
             {x - zig, middle + zig * 0.5},
             {x, middle + zig},
             {x, rows.high + kOverrun}},
            LineRole::Dimension};
}

// Where the words over or under a view stand clear, nearest to it first; under all else at worst.
Vec2 wordsPlace(double x, const Kept& rows, double half, double height, const FreeSpace& space) {
    constexpr double kUnder = 7.0;
    constexpr double kOver = 4.5;
    constexpr double kStep = 2.0;
    constexpr int kTries = 60;
    for (int i = 0; i < kTries; ++i) {
        for (const double y : {rows.high + kUnder + i * kStep, rows.low - kOver - i * kStep}) {
            if (space.isFree({{x - half, y - height - 0.8}, {x + half, y + 1.2}})) {
                return {x, y};
            }
        }
    }
    return {x, rows.high + kUnder + kTries * kStep};
}

void addBreak(double x,
              const std::string& words,
              const std::vector<Crossed>& views,
              const TextMetrics& metrics,
              std::vector<Op>& ops) {
    constexpr double kHeight = 2.5;
    FreeSpace space(ops, metrics);
    const double half = metrics.width(words, kHeight, false) / 2.0 + 0.5;
    ops.push_back(BeginGroup{{}, std::string(kBreakGroup)});
    for (const Crossed& view : views) {
        if (!view.rows) {
            continue;
        }
        for (const double way : {-1.0, 1.0}) {
            ops.push_back(zigzag(x + way * kHalfBreak, *view.rows));
        }
        const Vec2 at = wordsPlace(x, *view.rows, half, kHeight, space);
        ops.push_back(TextOp{at, words, kHeight, Align::Centre, false, false});
        space.take({ops.back()}, metrics);
    }
    ops.push_back(EndGroup{});
}

}  // namespace

Sheet withPlainLeftOut(const Sheet& drawing, const LengthStyle& style, const TextMetrics& metrics) {
    const double step = unitOf(style) == Unit::Inch ? Length::kMmPerInch : 10.0;
    const std::vector<Gap> gaps = gapsIn(drawing, step, metrics);
    const Shortener shortener(gaps);
    Sheet sheet = drawing;
    for (Op& op : sheet.ops) {
        shortener.move(op);
    }
    sheet.size = shortener.moved(sheet.size);
    for (const Gap& gap : gaps) {
        const double x = shortener.moved({gap.from, 0.0}).x;
        std::vector<Crossed> views;
        openLines(x, sheet.ops, views);
        addBreak(x,
                 letterLength(Length::mm(gap.length), style, true) + " left out",
                 views,
                 metrics,
                 sheet.ops);
    }
    return sheet;
}

}  // namespace shoulderline
