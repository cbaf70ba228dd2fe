#include "core/drawing/section_marks.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
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
          isOfTenons_(section.tenonsAt.has_value()),
          arrow_(1.2 * style.dimensions.height),
          height_(1.4 * style.dimensions.height),
          width_(metrics.width(letter_, height_, false)),
          letterAtOrigin_(boundsOf(letterOp({}), metrics)) {}

    [[nodiscard]] bool isOfTenons() const { return isOfTenons_; }

    [[nodiscard]] HalfAreas areasOf(const Half& half) const {
        constexpr double kClear = 0.6;
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
                              foot - Vec2{0.0, outOf(half) * kClear}}) {
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
    bool isOfTenons_;
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

// Farther off where they must step over dimension lines.
constexpr double kFarthestMark = 60.0;
constexpr double kMarkStep = 1.5;
constexpr std::array<double, 4> kReaches{0.0, 4.0, 8.0, 12.0};
constexpr std::array<LetterPlace, 3> kLetterPlaces{
    LetterPlace::Behind, LetterPlace::OverArrow, LetterPlace::Beyond};

// The two halves of a mark, over the view and under it.
struct FoundMark {
    std::array<Half, 2> halves;
    double cost = std::numeric_limits<double>::infinity();
};

// Costs of a half with its letter in each of the places.
using LetterCosts = std::array<std::optional<double>, kLetterPlaces.size()>;
LetterCosts letterCosts(const MarkMaker& maker, Half half, const FreeSpace& space) {
    constexpr double kPastTip = 8.0;  // mm farther off that are as bad
    LetterCosts costs;
    for (std::size_t i = 0; i < costs.size(); ++i) {
        half.letter = kLetterPlaces[i];
        costs[i] = costOf(half, maker.areasOf(half), space);
        if (costs[i] && maker.isOfTenons() && half.letter == LetterPlace::Behind) {
            *costs[i] += kPastTip;  // it would stand at the tip, as though it named that
        }
    }
    return costs;
}

// Both halves as they are but for their letters, which stand alike rather than not.
void tryLetters(const MarkMaker& maker,
                std::array<Half, 2> halves,
                const FreeSpace& space,
                FoundMark& best) {
    constexpr double kUnlike = 2.0;
    const LetterCosts over = letterCosts(maker, halves[0], space);
    const LetterCosts under = letterCosts(maker, halves[1], space);
    for (std::size_t i = 0; i < over.size(); ++i) {
        for (std::size_t j = 0; j < under.size(); ++j) {
            if (!over[i] || !under[j]) {
                continue;
            }
            const double cost = *over[i] + *under[j] + (i == j ? 0.0 : kUnlike);
            if (cost < best.cost) {
                halves[0].letter = kLetterPlaces[i];
                halves[1].letter = kLetterPlaces[j];
                best = {halves, cost};
            }
        }
    }
}

// The best mark at x: both halves as far off, their arrows as long, as the one needs that has the
// less room.
void tryMark(
    const MarkMaker& maker, double x, Span across, const FreeSpace& space, FoundMark& best) {
    constexpr double kFarthestAlike = 24.0;
    for (double off = 1.0; off < kFarthestAlike && 2.0 * off < best.cost; off += kMarkStep) {
        for (const double reach : kReaches) {
            if (2.0 * (off + reach) < best.cost) {
                tryLetters(maker,
                           {Half{x, across.from, off, reach, true, LetterPlace::Behind},
                            Half{x, across.to, off, reach, false, LetterPlace::Behind}},
                           space,
                           best);
            }
        }
    }
}

// One half with an arrow of that length, as near as it may stand by itself.
struct FoundHalf {
    Half half;
    double cost = 0.0;
};
FoundHalf nearestHalf(const MarkMaker& maker, const Half& at, const FreeSpace& space) {
    constexpr double kNowhere = 1000.0;
    FoundHalf best{at, kNowhere};
    for (double off = 1.0; off < kFarthestMark && off < best.cost; off += kMarkStep) {
        for (const LetterPlace place : kLetterPlaces) {
            const Half half{at.x, at.edge, off, at.reach, at.isAbove, place};
            const std::optional<double> cost = costOf(half, maker.areasOf(half), space);
            if (cost && *cost < best.cost) {
                best = {half, *cost};
            }
        }
    }
    return best;
}

// Where both would have to stand far off for one of them: each as near as it may, with arrows of
// one length.
void tryApart(
    const MarkMaker& maker, double x, Span across, const FreeSpace& space, FoundMark& best) {
    for (const double reach : kReaches) {
        const FoundHalf over = nearestHalf(
            maker, {x, across.from, kFarthestMark, reach, true, LetterPlace::Behind}, space);
        const FoundHalf under = nearestHalf(
            maker, {x, across.to, kFarthestMark, reach, false, LetterPlace::Behind}, space);
        if (over.cost + under.cost < best.cost) {
            best = {{over.half, under.half}, over.cost + under.cost};
        }
    }
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
    const auto placeAt = [&](double place) {
        return (section.low + (section.high - section.low) * place) * scale;
    };
    FoundMark best;
    for (const double place : kPlaces) {
        tryMark(maker, placeAt(place), across, space, best);
    }
    if (best.cost == std::numeric_limits<double>::infinity()) {
        for (const double place : kPlaces) {
            tryApart(maker, placeAt(place), across, space, best);
        }
    }
    std::vector<Op> ops;
    for (const Half& half : best.halves) {
        std::vector<Op> mark = maker.opsOf(half);
        space.take(mark, metrics);
        append(ops, std::move(mark));
    }
    return ops;
}

namespace {

// A place on the border of the wood that looks the way a mark stands out.
struct BorderFoot {
    Vec2 at;
    double slope = 0.0;  // of the border there, from square to that way
};

// The way that a mark stands out: along the sheet's x (axis 0) or y, up it or down.
struct OutWay {
    int axis = 1;
    double way = -1.0;
    [[nodiscard]] double out(Vec2 p) const { return axis == 0 ? p.x : p.y; }
    [[nodiscard]] double aside(Vec2 p) const { return axis == 0 ? p.y : p.x; }
};

// Where the border lies at `aside` across that way; none past the wood.
std::optional<BorderFoot> borderAt(const std::vector<std::vector<Vec2>>& wood,
                                   const OutWay& out,
                                   double aside) {
    std::optional<BorderFoot> foot;
    for (const std::vector<Vec2>& ring : wood) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec2 a = ring[i];
            const Vec2 b = ring[(i + 1) % ring.size()];
            const double run = out.aside(b) - out.aside(a);
            const double part = (aside - out.aside(a)) / run;
            if (run == 0.0 || part < 0.0 || part > 1.0) {
                continue;
            }
            const Vec2 at = a + (b - a) * part;
            if (!foot || out.way * (out.out(at) - out.out(foot->at)) > 0.0) {
                foot = BorderFoot{at, (out.out(b) - out.out(a)) / run};
            }
        }
    }
    return foot;
}

// Where a mark stands on the true line of its face, as near the middle of that as `areaAt` it is
// free; where nowhere is, clear of lettering, else in the middle.
template <class AreaAt>
std::optional<BorderFoot> freeOnBorder(const std::vector<std::vector<Vec2>>& wood,
                                       const OutWay& out,
                                       const FreeSpace& space,
                                       const AreaAt& areaAt) {
    constexpr double kStep = 0.5;
    constexpr double kSteepest = 1.0;  // past 45 degrees it is another face
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (const std::vector<Vec2>& ring : wood) {
        for (const Vec2& p : ring) {
            low = std::min(low, out.aside(p));
            high = std::max(high, out.aside(p));
        }
    }
    std::vector<BorderFoot> feet;
    for (double aside = low + kStep; aside < high; aside += kStep) {
        const std::optional<BorderFoot> foot = borderAt(wood, out, aside);
        if (foot && std::abs(foot->slope) < kSteepest) {
            feet.push_back(*foot);
        }
    }
    if (feet.empty()) {
        return std::nullopt;
    }
    const double middle = (out.aside(feet.front().at) + out.aside(feet.back().at)) / 2.0;
    std::stable_sort(feet.begin(), feet.end(), [&](const BorderFoot& a, const BorderFoot& b) {
        return std::abs(out.aside(a.at) - middle) < std::abs(out.aside(b.at) - middle);
    });
    for (const bool isClear : {true, false}) {
        for (const BorderFoot& foot : feet) {
            const Rect area = areaAt(foot);
            if (isClear ? space.isFree(area) : space.isClearOfLettering(area)) {
                return foot;
            }
        }
    }
    return feet.front();
}

constexpr double kOffBorder = 0.3;  // what must be free of a mark begins that far from its line

}  // namespace

std::vector<Op> faceMarksAcross(const std::vector<std::vector<Vec2>>& wood,
                                bool isFaceSideLeft,
                                FreeSpace& space,
                                double height,
                                const TextMetrics& metrics) {
    const double half = 0.45 * height;
    const double v = 0.7 * height;
    std::vector<Op> ops;
    const auto onEdge = freeOnBorder(wood, {1, -1.0}, space, [&](const BorderFoot& foot) {
        const double off = kOffBorder + half * std::abs(foot.slope);
        return Rect{foot.at - Vec2{half, v}, foot.at + Vec2{half, -std::min(off, v)}};
    });
    if (onEdge) {
        append(ops, inGroup(kFaceEdgeGroup, {}, {faceEdgeMark(onEdge->at, v, true)}));
        space.take(ops, metrics);
    }
    const double out = isFaceSideLeft ? -1.0 : 1.0;
    const auto onSide = freeOnBorder(wood, {0, out}, space, [&](const BorderFoot& foot) {
        const double near = foot.at.x + out * (kOffBorder + half * std::abs(foot.slope));
        const double far = foot.at.x + out * height;
        return Rect{{std::min(near, far), foot.at.y - half},
                    {std::max(near, far), foot.at.y + half}};
    });
    if (onSide) {
        // Laid down, so that its tail runs off at the line.
        Stroke mark = faceSideMark({0.0, 0.0}, height);
        const double tail = mark.points.front().x - 0.1 * height;
        const Vec2 foot = onSide->at + Vec2{onSide->slope * tail, 0.0};
        for (Vec2& p : mark.points) {
            p = {foot.x + out * p.y, foot.y + p.x - 0.1 * height};
        }
        append(ops, inGroup(kFaceSideGroup, {}, {std::move(mark)}));
    }
    return ops;
}

}  // namespace shoulderline
