#include <algorithm>
#include <cmath>
#include <functional>

#include "core/check/checks.h"
#include "core/check/figure_text.h"
#include "core/check/hole_edit.h"
#include "core/check/hole_in_shape.h"
#include "core/geometry/box_solids.h"
#include "core/measure/angle_text.h"
#include "core/resolve/holes.h"

namespace shoulderline {

namespace {

constexpr double kHoleSlack = 0.001;  // mm
constexpr double kShapeSlack = 0.02;  // mm: a hair over how closely a rim is followed

// How far the hole comes out of the sides of the blank that it is not meant to, at its mouth and
// where it ends, along one axis: below its low side or above its high one.
double outAlongAxis(
    const ResolvedHole& hole, const CutAxes& axes, const Vec3& size, int axis, bool isThrough) {
    const double radius = hole.diameter.mm() / 2;
    const double lean = hole.into[axis] / hole.into[axes.into];
    const double slot = std::abs(hole.slotAlong[axis]) *
                        std::max(0.0, (hole.slotLength.value - hole.slotWidth).mm() / 2);
    // A slice along the face is an ellipse; the bottom of a blind hole a disc across its axis.
    const double atMouth = radius * std::hypot(1.0, lean) + slot;
    const double atEnd =
        (isThrough ? radius * std::hypot(1.0, lean)
                   : radius * std::sqrt(std::max(0.0, 1.0 - hole.into[axis] * hole.into[axis]))) +
        slot;
    const Vec3 end = hole.mouth + hole.into * hole.depth.mm();
    return std::max({atMouth - hole.mouth[axis],
                     hole.mouth[axis] + atMouth - size[axis],
                     atEnd - end[axis],
                     end[axis] + atEnd - size[axis]});
}

// How far the bottom of a blind hole that tilts comes through the face behind it.
double outBehind(const ResolvedHole& hole, const CutAxes& axes, const Vec3& size) {
    const double down = std::abs(hole.into[axes.into]);
    return hole.depth.mm() * down +
           hole.diameter.mm() / 2 * std::sqrt(std::max(0.0, 1.0 - down * down)) - size[axes.into];
}

// The largest t in [0, 1] at which `works` still holds, given that it does at 0.
double largestShare(const std::function<bool(double)>& works) {
    double low = 0.0;
    double high = 1.0;
    if (works(high)) {
        return high;
    }
    for (int i = 0; i < 50; ++i) {
        const double middle = (low + high) / 2;
        (works(middle) ? low : high) = middle;
    }
    return low;
}

class HoleJudge {
  public:
    HoleJudge(const CheckContext& context, std::vector<Finding>& findings)
        : context_(context), findings_(findings) {}

    void judge() {
        for (std::size_t i = 0; i < context_.resolved.parts.size(); ++i) {
            const ResolvedPart& part = context_.resolved.parts[i];
            for (const ResolvedCut& cut : part.cuts) {
                if (cut.hole) {
                    judgeOnFace(i, cut);
                } else if (cut.kind == CutKind::Bore && !cut.joint) {
                    judgeInShape(i, cut);  // a pin's or a peg's: no face is too small for these
                }
            }
            judgeNeighbours(i);
        }
    }

  private:
    Finding& add(RuleId rule, Severity severity, std::size_t part, double value, double limit) {
        findings_.push_back(holeFinding(context_, rule, severity, part, value, limit));
        return findings_.back();
    }

    void judgeOnFace(std::size_t index, const ResolvedCut& cut) {
        const ResolvedHole& hole = *cut.hole;
        const CutAxes axes = axesOn(cut.face);
        const Vec3 size = context_.resolved.parts[index].bodyBox().size();
        for (const int axis : {axes.along, axes.across}) {
            const double out = outAlongAxis(hole, axes, size, axis, cut.isThrough);
            if (out > kHoleSlack) {
                tellOut(index, cut, axis, out);
                return;  // one at a time: mending one often mends the other
            }
        }
        const double behind = cut.isThrough ? 0.0 : outBehind(hole, axes, size);
        if (behind > kHoleSlack) {
            tellBehind(index, cut, axes, size, behind);
        }
        judgeInShape(index, cut);
    }

    void judgeInShape(std::size_t index, const ResolvedCut& cut) {
        const Outline* shape = shapedOutline(context_.resolved.parts[index], cut.face);
        if (shape == nullptr) {
            return;
        }
        const double out = outOfOutline(*shape, roundHole(cut), cut.face, cut.isThrough);
        if (out <= kShapeSlack) {
            return;
        }
        Finding& finding = add(RuleId::MouthOnFace, Severity::LookAt, index, out, 0.0);
        finding.message = "a " + nameOfHole(cut) + " in {part} breaks out of its shaped side by " +
                          context_.shownMm(out);
        if (!cut.hole) {
            finding.mends.push_back({"leave more wood beside it", std::nullopt});
            return;
        }
        const CutAxes axes = axesOn(cut.face);
        const Vec3 size = context_.resolved.parts[index].bodyBox().size();
        for (const int axis : {axes.across, axes.along}) {
            const bool isAlong = axis == axes.along;
            addPlace(
                index,
                cut,
                axis,
                isAlong,
                size,
                [&](const ResolvedHole& hole) {
                    return std::max({outAlongAxis(hole, axes, size, axes.along, cut.isThrough),
                                     outAlongAxis(hole, axes, size, axes.across, cut.isThrough),
                                     outOfOutline(*shape, hole, cut.face, cut.isThrough)});
                },
                finding);
        }
    }

    void tellOut(std::size_t index, const ResolvedCut& cut, int axis, double out) {
        const ResolvedHole& hole = *cut.hole;
        const CutAxes axes = axesOn(cut.face);
        const bool isAlong = axis == axes.along;
        const Vec3 size = context_.resolved.parts[index].bodyBox().size();
        Finding& finding = add(RuleId::MouthOnFace, Severity::LookAt, index, out, 0.0);
        finding.message = "a " + nameOfHole(cut) + " in {part} breaks out of its side by " +
                          context_.shownMm(out);
        if (hole.lean.isTilted()) {
            addSmallerTilt(index, cut, finding);
        }
        const auto outOf = [&](const ResolvedHole& moved) {
            return outAlongAxis(moved, axes, size, axis, cut.isThrough);
        };
        addPlace(index, cut, axis, isAlong, size, outOf, finding);
    }

    // The hole tilted so that its slope is a share of what is stated.
    static ResolvedHole tilted(
        const ResolvedHole& hole, const CutAxes& axes, double share, double whole, bool isThrough) {
        ResolvedHole less = hole;
        Vec3 way;
        way[axes.into] = axes.fromHigh ? -1.0 : 1.0;
        way[axes.along] = std::tan(hole.lean.along.radians() * share);
        way[axes.across] = std::tan(hole.lean.across.radians() * share);
        less.into = normalised(way);
        if (isThrough) {
            less.depth = Length::mm(norm(way) * whole);
        }
        return less;
    }

    void addSmallerTilt(std::size_t index, const ResolvedCut& cut, Finding& finding) const {
        const CutAxes axes = axesOn(cut.face);
        const Vec3 size = context_.resolved.parts[index].bodyBox().size();
        const auto works = [&](double share) {
            const ResolvedHole less =
                tilted(*cut.hole, axes, share, size[axes.into], cut.isThrough);
            return outAlongAxis(less, axes, size, axes.along, cut.isThrough) <= 0.0 &&
                   outAlongAxis(less, axes, size, axes.across, cut.isThrough) <= 0.0;
        };
        if (!works(0.0)) {
            return;
        }
        const double share = largestShare(works);
        const auto shorter = [&](Angle angle) {
            return std::trunc(angle.degrees() * share * 10.0) / 10.0;  // as angles are shown
        };
        const double along = shorter(cut.hole->lean.along);
        const double across = shorter(cut.hole->lean.across);
        std::string text = "tilt it ";
        const bool hasAlong = std::abs(cut.hole->lean.along.degrees()) > 1e-6;
        const bool hasAcross = std::abs(cut.hole->lean.across.degrees()) > 1e-6;
        text += hasAlong ? showAngle(Angle::degrees(along)) + " along" : "";
        text += hasAlong && hasAcross ? " and " : "";
        text += hasAcross ? showAngle(Angle::degrees(across)) + " across" : "";
        finding.mends.push_back(
            {text, withCut(context_, index, cut.hole->cut, [&](CutStatement& stated) {
                 stated.tiltAlong = hasAlong ? figureText(along, 1) + " deg" : Statement();
                 stated.tiltAcross = hasAcross ? figureText(across, 1) + " deg" : Statement();
             })});
    }

    // Its centre moved back into the wood, along or across its face, to where `outOf` is not above
    // 0.
    void addPlace(std::size_t index,
                  const ResolvedCut& cut,
                  int axis,
                  bool isAlong,
                  const Vec3& size,
                  const std::function<double(const ResolvedHole&)>& outOf,
                  Finding& finding) const {
        const auto outAt = [&](double place) {
            ResolvedHole moved = *cut.hole;
            moved.mouth[axis] = place;
            return outOf(moved);
        };
        const double grid = holeStep(context_).mm();
        const double now = cut.hole->mouth[axis];
        std::optional<double> nearest;
        for (double place = grid; place < size[axis]; place += grid) {
            const bool isNearer = !nearest || std::abs(place - now) < std::abs(*nearest - now);
            if (isNearer && outAt(place) <= 0.0) {
                nearest = place;
            }
        }
        if (!nearest) {
            return;
        }
        const Length place = Length::mm(*nearest);
        finding.mends.push_back({"put its centre " + context_.shown(place) +
                                     (isAlong ? " along the face" : " across the face"),
                                 withCut(context_, index, cut.hole->cut, [&](CutStatement& stated) {
                                     (isAlong ? stated.alongFrom : stated.acrossFrom) =
                                         Datum::Start;
                                     (isAlong ? stated.along : stated.across) =
                                         CheckContext::statement(place);
                                 })});
    }

    void tellBehind(std::size_t index,
                    const ResolvedCut& cut,
                    const CutAxes& axes,
                    const Vec3& size,
                    double behind) {
        const double down = std::abs(cut.hole->into[axes.into]);
        const double rest = cut.hole->diameter.mm() / 2 * std::sqrt(1.0 - down * down);
        const Length most =
            snapDown(Length::mm((size[axes.into] - rest) / down), holeStep(context_));
        Finding& finding = add(RuleId::MouthOnFace, Severity::LookAt, index, behind, 0.0);
        finding.message = "the bottom of a " + nameOfHole(cut) +
                          " in {part} comes through the face "
                          "behind it by " +
                          context_.shownMm(behind);
        if (most.mm() > 0.0) {
            finding.mends.push_back(
                {"bore it " + context_.shown(most) + " deep",
                 withCut(context_, index, cut.hole->cut, [&](CutStatement& stated) {
                     stated.depth = CheckContext::statement(most);
                 })});
        }
    }

    // Two holes of one part, each as stated; what they are to joints is told with the joints.
    void judgeNeighbours(std::size_t index) {
        const std::vector<ResolvedCut>& cuts = context_.resolved.parts[index].cuts;
        const double least = context_.resolved.rules[RuleId::MortiseGapLeast].value;
        for (std::size_t a = 0; a < cuts.size(); ++a) {
            for (std::size_t b = a + 1; b < cuts.size(); ++b) {
                if (!cuts[a].hole || !cuts[b].hole || cuts[a].hole->cut == cuts[b].hole->cut ||
                    distance(cuts[a].box, cuts[b].box) >= least) {
                    continue;
                }
                const ConvexSolid one = cuts[a].solid();
                const ConvexSolid other = cuts[b].solid();
                const double wall = intersection(one, other) ? 0.0 : distance(one, other).distance;
                if (wall < least - kHoleSlack) {
                    tellNear(index, cuts[a], cuts[b], wall, least);
                }
            }
        }
    }

    void tellNear(std::size_t index,
                  const ResolvedCut& first,
                  const ResolvedCut& second,
                  double wall,
                  double least) {
        Finding& finding = add(RuleId::MortiseGapLeast, Severity::LookAt, index, wall, least);
        finding.message =
            "in {part} a " + nameOfHole(first) + " and a " + nameOfHole(second) +
            (wall <= 0.0 ? " run into one another"
                         : " leave " + context_.shownMm(wall) + " of wood between them") +
            "; the rule book asks " + context_.shownMm(least);
        const int axis = axesOn(second.face).along;
        const double length = context_.resolved.parts[index].bodyBox().size()[axis];
        const double way = second.hole->mouth[axis] >= first.hole->mouth[axis] ? 1.0 : -1.0;
        const ConvexSolid fixed = first.solid();
        const ConvexSolid moving = second.solid();
        const double grid = holeStep(context_).mm();
        for (double by = grid; by < length; by += grid) {
            Frame moved;
            moved.origin[axis] = way * by;
            const ConvexSolid there = moving.transformed(moved);
            if (intersection(fixed, there) || distance(fixed, there).distance < least) {
                continue;
            }
            const Length place = Length::mm(second.hole->mouth[axis] + way * by);
            if (place.mm() > 0.0 && place.mm() < length) {
                finding.mends.push_back(
                    {"put the centre of the second " + context_.shown(place) + " along the face",
                     withCut(context_, index, second.hole->cut, [&](CutStatement& stated) {
                         stated.alongFrom = Datum::Start;
                         stated.along = CheckContext::statement(place);
                     })});
            }
            return;
        }
    }

    const CheckContext& context_;
    std::vector<Finding>& findings_;
};

}  // namespace

Finding holeFinding(const CheckContext& context,
                    RuleId rule,
                    Severity severity,
                    std::size_t part,
                    double value,
                    double limit) {
    Finding finding = context.finding(rule, severity);
    finding.parts = {part};
    finding.value = value;
    finding.limit = limit;
    finding.unit = "mm";
    return finding;
}

Length holeStep(const CheckContext& context) {
    return context.piece.unit == Unit::Inch ? Length::inches(1.0 / 32) : Length::mm(0.5);
}

std::optional<Edit> withCut(const CheckContext& context,
                            std::size_t part,
                            std::size_t cut,
                            const std::function<void(CutStatement&)>& change) {
    Part changed = context.stated(part);
    if (cut >= changed.cuts.size()) {
        return std::nullopt;
    }
    change(changed.cuts[cut]);
    return SetPart{changed.name, changed};
}

std::string nameOfHole(const ResolvedCut& cut) {
    const std::string kind = cut.hole && cut.hole->isForHead
                                 ? std::string("hole for the head of a screw")
                                 : std::string(wordFor(cut.hole ? cut.hole->kind : cut.kind));
    return cut.note.empty() ? kind : kind + " (" + cut.note + ")";
}

void checkHoles(const CheckContext& context, std::vector<Finding>& findings) {
    HoleJudge(context, findings).judge();
}

}  // namespace shoulderline
