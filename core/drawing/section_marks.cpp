#include "core/drawing/section_marks.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/trade_marks.h"

namespace shoulderline {

namespace {

// Where the letter of a mark stands: behind the stroke, beyond the arrow, or beyond the stroke.
enum class LetterPlace { Behind, OverArrow, Beyond };

// Half of a cutting plane's mark, over a view or under it: its stroke at `x` begins `off` from
// `edge`; its arrow is `reach` longer than it must be, so that it gets past what stands beside it.
struct Half {
    double x = 0.0;
    double edge = 0.0;
    double off = 0.0;
    double reach = 0.0;
    bool isAbove = false;
    LetterPlace letter = LetterPlace::Behind;
};

// What a half covers on the sheet, with a little room round it: all of it, its letter, its arrow.
struct HalfAreas {
    Rect all;
    Rect letter;
    Rect arrow;
};

class MarkMaker {
  public:
    MarkMaker(const PartSection& section, const PartStyle& style, const TextMetrics& metrics)
        : letter_(section.letter),
          way_(section.tenonsAt != End::Start ? -1.0 : 1.0),
          arrow_(1.2 * style.dimensions.height),
          height_(1.4 * style.dimensions.height),
          width_(metrics.width(letter_, height_, false)),
          letterAtOrigin_(boundsOf(letterOp({}), metrics)) {}

    [[nodiscard]] HalfAreas areasOf(const Half& half) const {
        constexpr double kClear = 0.4;
        const Vec2 foot = footOf(half);
        const Vec2 corner = cornerOf(half);
        const Vec2 tip = tipOf(half);
        const Vec2 letter = letterPlace(half);
        const auto grown = [](Rect rect) {
            return Rect{rect.min - Vec2{kClear, kClear}, rect.max + Vec2{kClear, kClear}};
        };
        HalfAreas areas;
        areas.letter = grown({letter + letterAtOrigin_.min, letter + letterAtOrigin_.max});
        Rect arrow{tip, tip};
        arrow.include(tip - Vec2{way_ * arrow_, 0.0});
        arrow.min.y -= kArrowHalf * arrow_;
        arrow.max.y += kArrowHalf * arrow_;
        areas.arrow = grown(arrow);
        areas.all = areas.arrow;
        for (const Vec2& p : {areas.letter.min,
                              areas.letter.max,
                              corner - Vec2{kClear, 0.0},
                              corner + Vec2{kClear, 0.0},
                              foot}) {
            areas.all.include(p);
        }
        return areas;
    }

    [[nodiscard]] std::vector<Op> opsOf(const Half& half) const {
        const Vec2 corner = cornerOf(half);
        const Vec2 tip = tipOf(half);
        return {Stroke{{footOf(half), corner}, LineRole::Visible},
                Stroke{{corner, tip}, LineRole::Dimension},
                arrowhead(tip, corner, arrow_),
                letterOp(letterPlace(half))};
    }

  private:
    static constexpr double kArrowHalf = 0.132;  // of its length: 15 degrees wide

    [[nodiscard]] TextOp letterOp(Vec2 at) const {
        return {at, letter_, height_, Align::Centre, false, false};
    }
    static double outOf(const Half& half) { return half.isAbove ? -1.0 : 1.0; }
    static Vec2 footOf(const Half& half) { return {half.x, half.edge + outOf(half) * half.off}; }
    static Vec2 cornerOf(const Half& half) {
        constexpr double kStroke = 3.6;
        return footOf(half) + Vec2{0.0, outOf(half) * kStroke};
    }
    [[nodiscard]] Vec2 tipOf(const Half& half) const {
        return cornerOf(half) + Vec2{way_ * (arrow_ + 1.0 + half.reach), 0.0};
    }
    // On the baseline.
    [[nodiscard]] Vec2 letterPlace(const Half& half) const {
        constexpr double kOff = 1.0;
        const Vec2 corner = cornerOf(half);
        const double beyond = half.isAbove ? -kOff : kOff + height_;
        switch (half.letter) {
            case LetterPlace::Behind:
                return corner +
                       Vec2{-way_ * (kOff + width_ / 2.0), half.isAbove ? height_ - kOff : kOff};
            case LetterPlace::OverArrow:
                return corner +
                       Vec2{way_ * (2.0 + half.reach), beyond + kArrowHalf * arrow_ * outOf(half)};
            case LetterPlace::Beyond:
                return corner + Vec2{-way_ * width_ / 2.0, beyond};
        }
        return corner;
    }

    std::string letter_;
    double way_;
    double arrow_;
    double height_;
    double width_;
    Rect letterAtOrigin_;
};

// How badly a half stands: far from the view, its arrow long, with lines across it; none where its
// letter or its arrow would lie on something.
std::optional<double> costOf(const Half& half, const HalfAreas& areas, const FreeSpace& space) {
    constexpr double kCrossing = 7.0;  // mm farther off that are as bad
    if (!space.isFree(areas.letter) || !space.isFree(areas.arrow)) {
        return std::nullopt;
    }
    const double off = half.off + half.reach;
    if (space.isFree(areas.all)) {
        return off;
    }
    return space.isClearOfLettering(areas.all) ? std::optional(off + kCrossing) : std::nullopt;
}

// The best half at x.
struct FoundHalf {
    Half half;
    double cost = 0.0;
};
FoundHalf bestHalf(
    const MarkMaker& maker, double x, double edge, bool isAbove, const FreeSpace& space) {
    // Farther off where it must step over dimension lines.
    constexpr double kFarthest = 60.0;
    constexpr double kStep = 1.5;
    constexpr double kNowhere = 1000.0;
    FoundHalf best{{x, edge, kFarthest, 0.0, isAbove, LetterPlace::Behind}, kNowhere};
    for (double off = 1.0; off < kFarthest && off < best.cost; off += kStep) {
        for (const double reach : {0.0, 4.0, 8.0, 12.0}) {
            for (const LetterPlace place :
                 {LetterPlace::Behind, LetterPlace::OverArrow, LetterPlace::Beyond}) {
                if (off + reach >= best.cost) {
                    continue;
                }
                const Half half{x, edge, off, reach, isAbove, place};
                const std::optional<double> cost = costOf(half, maker.areasOf(half), space);
                if (cost && *cost < best.cost) {
                    best = {half, *cost};
                }
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
    std::optional<std::array<FoundHalf, 2>> best;
    const auto costOfBoth = [](const std::array<FoundHalf, 2>& halves) {
        return halves[0].cost + halves[1].cost;
    };
    for (const double place : kPlaces) {
        const double x = (section.low + (section.high - section.low) * place) * scale;
        const std::array<FoundHalf, 2> halves{bestHalf(maker, x, across.from, true, space),
                                              bestHalf(maker, x, across.to, false, space)};
        if (!best || costOfBoth(halves) < costOfBoth(*best)) {
            best = halves;
        }
    }
    std::vector<Op> ops;
    for (const FoundHalf& found : *best) {
        std::vector<Op> mark = maker.opsOf(found.half);
        space.take(mark, metrics);
        append(ops, std::move(mark));
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

std::vector<Op> faceMarksAcross(const Rect& wood,
                                bool isFaceSideLeft,
                                const FreeSpace& space,
                                double height) {
    constexpr double kOff = 0.3;  // of what must be free from the section's own line
    const double half = 0.45 * height;
    const double v = 0.7 * height;
    const Vec2 size = wood.size();
    const double x = wood.min.x + freeAlong(size.x, space, [&](double at) {
                         const Vec2 foot{wood.min.x + at, wood.min.y};
                         return Rect{foot - Vec2{half, v + kOff}, foot + Vec2{half, -kOff}};
                     });
    std::vector<Op> ops{faceEdgeMark({x, wood.min.y}, v, true)};
    const double line = isFaceSideLeft ? wood.min.x : wood.max.x;
    const double out = isFaceSideLeft ? -1.0 : 1.0;
    const double y =
        wood.min.y + freeAlong(size.y, space, [&](double at) {
            const double near = line + out * kOff;
            const double far = line + out * height;
            const double level = wood.min.y + at;
            return Rect{{std::min(near, far), level - half}, {std::max(near, far), level + half}};
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
