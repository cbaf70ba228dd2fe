#include "core/drawing/section_marks.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/trade_marks.h"

namespace shoulderline {

namespace {

// Half of a cutting plane's mark as it would stand over a view, or under it.
struct Mark {
    std::vector<Op> ops;
    Rect area;
    Rect letter;
    Rect arrow;
    double off = 0.0;
};

// Where its letter stands: behind the stroke, beyond the arrow, or beyond the stroke.
enum class LetterPlace { Behind, OverArrow, Beyond };

class MarkMaker {
  public:
    MarkMaker(const PartSection& section, const PartStyle& style, const TextMetrics& metrics)
        : letter_(section.letter),
          way_(section.tenonsAt != End::Start ? -1.0 : 1.0),
          arrow_(1.2 * style.dimensions.height),
          height_(1.4 * style.dimensions.height),
          metrics_(metrics) {}

    // Its stroke begins `off` from `edge`.
    [[nodiscard]] Mark at(
        double x, double edge, double off, bool isAbove, LetterPlace place) const {
        constexpr double kStroke = 3.6;
        const double out = isAbove ? -1.0 : 1.0;
        const Vec2 foot{x, edge + out * off};
        const Vec2 corner = foot + Vec2{0.0, out * kStroke};
        const Vec2 tip = corner + Vec2{way_ * (arrow_ + 1.0), 0.0};
        Mark mark;
        mark.off = off;
        mark.ops.push_back(Stroke{{foot, corner}, LineRole::Visible});
        mark.ops.push_back(Stroke{{corner, tip}, LineRole::Dimension});
        mark.ops.push_back(arrowhead(tip, corner, arrow_));
        const TextOp letter{
            letterAt(corner, isAbove, place), letter_, height_, Align::Centre, false, false};
        mark.letter = boundsOf(letter, metrics_);
        mark.ops.push_back(letter);
        mark.arrow = boundsOf(std::vector<Op>{mark.ops[2]}, metrics_);
        mark.area = boundsOf(mark.ops, metrics_);
        for (Rect* area : {&mark.area, &mark.letter, &mark.arrow}) {
            constexpr double kClear = 0.4;
            area->min = area->min - Vec2{kClear, isAbove || area != &mark.area ? kClear : 0.0};
            area->max = area->max + Vec2{kClear, isAbove && area == &mark.area ? 0.0 : kClear};
        }
        return mark;
    }

  private:
    // On the baseline.
    [[nodiscard]] Vec2 letterAt(Vec2 corner, bool isAbove, LetterPlace place) const {
        constexpr double kOff = 1.0;
        const double half = metrics_.width(letter_, height_, false) / 2.0;
        const double beyond = isAbove ? -kOff : kOff + height_;
        const double head = arrow_ * 0.13 * (isAbove ? -1.0 : 1.0);
        switch (place) {
            case LetterPlace::Behind:
                return corner + Vec2{-way_ * (kOff + half), isAbove ? height_ - kOff : kOff};
            case LetterPlace::OverArrow:
                return corner + Vec2{way_ * 2.0, beyond + head};
            case LetterPlace::Beyond:
                return corner + Vec2{-way_ * half, beyond};
        }
        return corner;
    }

    std::string letter_;
    double way_;
    double arrow_;
    double height_;
    const TextMetrics& metrics_;
};

// How badly a half stands: far from the view, or with lines across it; none where its letter or its
// arrow would lie on something.
std::optional<double> costOf(const Mark& mark, const FreeSpace& space) {
    constexpr double kCrossing = 7.0;  // mm farther off that are as bad
    if (space.isFree(mark.area)) {
        return mark.off;
    }
    if (space.isClearOfLettering(mark.area) && space.isFree(mark.letter) &&
        space.isFree(mark.arrow)) {
        return mark.off + kCrossing;
    }
    return std::nullopt;
}

// The best half at x.
struct Half {
    Mark mark;
    double cost = 0.0;
};
Half bestHalf(const MarkMaker& maker, double x, double edge, bool isAbove, const FreeSpace& space) {
    // Farther off where it must step over dimension lines.
    constexpr double kFarthest = 60.0;
    constexpr double kStep = 1.5;
    constexpr double kNowhere = 1000.0;
    Half best{{}, kNowhere};
    for (double off = 1.0; off < kFarthest && off < best.cost; off += kStep) {
        for (const LetterPlace place :
             {LetterPlace::Behind, LetterPlace::OverArrow, LetterPlace::Beyond}) {
            Mark mark = maker.at(x, edge, off, isAbove, place);
            const std::optional<double> cost = costOf(mark, space);
            if (cost && *cost < best.cost) {
                best = {std::move(mark), *cost};
            }
        }
    }
    return best;
}

}  // namespace

std::vector<Op> cuttingPlaneMarks(const PartSection& section,
                                  Span across,
                                  double scale,
                                  const PartStyle& style,
                                  FreeSpace& space,
                                  const TextMetrics& metrics) {
    // Of the places that the plane may have, those near its middle first.
    constexpr std::array<double, 9> kPlaces{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.08, 0.92};
    const MarkMaker maker(section, style, metrics);
    std::optional<std::array<Half, 2>> best;
    const auto costOfBoth = [](const std::array<Half, 2>& halves) {
        return halves[0].cost + halves[1].cost;
    };
    for (const double place : kPlaces) {
        const double x = (section.low + (section.high - section.low) * place) * scale;
        std::array<Half, 2> halves{bestHalf(maker, x, across.from, true, space),
                                   bestHalf(maker, x, across.to, false, space)};
        if (!best || costOfBoth(halves) < costOfBoth(*best)) {
            best = std::move(halves);
        }
    }
    std::vector<Op> ops;
    for (Half& half : *best) {
        space.take(half.mark.ops, metrics);
        append(ops, std::move(half.mark.ops));
    }
    return ops;
}

namespace {

// The place along a line of the section, `length` long, that is free for `areaAt` it: as near its
// middle as there is one; its middle else.
template <class AreaAt>
double freeAlong(double length, const FreeSpace& space, const AreaAt& areaAt) {
    constexpr double kStep = 0.5;
    const double middle = length / 2.0;
    for (double off = 0.0; off < middle - kStep; off += kStep) {
        for (const double at : {middle - off, middle + off}) {
            if (space.isFree(areaAt(at))) {
                return at;
            }
        }
    }
    return middle;
}

}  // namespace

std::vector<Op> faceMarksAcross(Vec2 size,
                                bool isFaceSideLeft,
                                const FreeSpace& space,
                                double height) {
    constexpr double kOff = 0.3;  // of what must be free from the section's own line
    const double half = 0.45 * height;
    const double v = 0.7 * height;
    const double x = freeAlong(size.x, space, [&](double at) {
        return Rect{{at - half, -v - kOff}, {at + half, -kOff}};
    });
    std::vector<Op> ops{faceEdgeMark({x, 0.0}, v, true)};
    const double line = isFaceSideLeft ? 0.0 : size.x;
    const double out = isFaceSideLeft ? -1.0 : 1.0;
    const double y = freeAlong(size.y, space, [&](double at) {
        const double near = line + out * kOff;
        const double far = line + out * height;
        return Rect{{std::min(near, far), at - half}, {std::max(near, far), at + half}};
    });
    // Laid down, so that its tail runs off at the line.
    Stroke mark = faceSideMark({0.0, 0.0}, height);
    for (Vec2& p : mark.points) {
        p = {line + out * p.y, y + p.x - 0.1 * height};
    }
    ops.push_back(std::move(mark));
    return ops;
}

}  // namespace shoulderline
