#include <algorithm>
#include <cmath>

#include "core/check/checks.h"
#include "core/check/hole_edit.h"
#include "core/geometry/box_solids.h"
#include "core/resolve/holes.h"

namespace shoulderline {

namespace {

constexpr double kPegSlack = 0.001;  // mm

class PegJudge {
  public:
    PegJudge(const CheckContext& context, std::vector<Finding>& findings)
        : context_(context), findings_(findings) {}

    void judge() {
        for (std::size_t i = 0; i < context_.resolved.parts.size(); ++i) {
            const std::vector<ResolvedCut>& cuts = context_.resolved.parts[i].cuts;
            for (std::size_t a = 0; a < cuts.size(); ++a) {
                if (!cuts[a].peg) {
                    continue;
                }
                judgeOnFace(i, cuts[a]);
                for (std::size_t b = 0; b < cuts.size(); ++b) {
                    // Two pegs are compared once.
                    if (cuts[b].hole || (cuts[b].peg && a < b)) {
                        judgeBeside(i, cuts[a], cuts[b]);
                    }
                }
            }
        }
    }

  private:
    Finding& add(RuleId rule, std::size_t part, double value, double limit) {
        findings_.push_back(holeFinding(context_, rule, Severity::LookAt, part, value, limit));
        return findings_.back();
    }

    static std::string nameOf(const ResolvedCut& cut) {
        if (cut.hole) {
            return nameOfHole(cut);
        }
        const std::string kind(wordFor(cut.kind));
        return cut.note.empty() ? kind : kind + " (" + cut.note + ")";
    }

    void judgeOnFace(std::size_t index, const ResolvedCut& cut) {
        const CutAxes axes = axesOn(cut.face);
        const Vec3 size = context_.resolved.parts[index].bodyBox().size();
        for (const int axis : {axes.along, axes.across}) {
            const double out = std::max(-cut.box.min[axis], cut.box.max[axis] - size[axis]);
            if (out > kPegSlack) {
                Finding& finding = add(RuleId::MouthOnFace, index, out, 0.0);
                finding.message = "a " + nameOf(cut) + " in {part} breaks out of its side by " +
                                  context_.shownMm(out);
                addPlace(index, cut, axis, size[axis], finding);
                return;  // one at a time, as of holes
            }
        }
    }

    // Its middle moved back into the wood, onto the grid.
    void addPlace(
        std::size_t index, const ResolvedCut& cut, int axis, double whole, Finding& finding) const {
        const double grid =
            (context_.piece.unit == Unit::Inch ? Length::inches(1.0 / 32) : Length::mm(0.5)).mm();
        const double half = cut.peg->side.mm() / 2;
        const bool isLow = cut.box.min[axis] < 0.0;
        const double middle = isLow ? std::ceil(half / grid - kPegSlack) * grid
                                    : std::floor((whole - half) / grid + kPegSlack) * grid;
        if (middle < half - kPegSlack || middle > whole - half + kPegSlack) {
            return;
        }
        const bool isAlong = axis == axesOn(cut.face).along;
        const Length place = Length::mm(middle);
        finding.mends.push_back({"put its centre " + context_.shown(place) +
                                     (isAlong ? " along the face" : " across the face"),
                                 withCut(context_, index, cut.peg->cut, [&](CutStatement& stated) {
                                     (isAlong ? stated.alongFrom : stated.acrossFrom) =
                                         Datum::Start;
                                     (isAlong ? stated.along : stated.across) =
                                         CheckContext::statement(place);
                                 })});
    }

    // Another hole that the part has by itself; what it is to joints is told with the joints.
    void judgeBeside(std::size_t index, const ResolvedCut& peg, const ResolvedCut& other) {
        const double least = context_.resolved.rules[RuleId::MortiseGapLeast].value;
        if (distance(peg.box, other.box) >= least) {
            return;
        }
        const ConvexSolid one = peg.solid();
        const ConvexSolid two = other.solid();
        const double wall = intersection(one, two) ? 0.0 : distance(one, two).distance;
        if (wall >= least - kPegSlack) {
            return;
        }
        Finding& finding = add(RuleId::MortiseGapLeast, index, wall, least);
        finding.message =
            "in {part} a " + nameOf(peg) + " and a " + nameOf(other) +
            (wall <= 0.0 ? " run into one another"
                         : " leave " + context_.shownMm(wall) + " of wood between them") +
            "; the rule book asks " + context_.shownMm(least);
    }

    const CheckContext& context_;
    std::vector<Finding>& findings_;
};

}  // namespace

void checkPegs(const CheckContext& context, std::vector<Finding>& findings) {
    PegJudge(context, findings).judge();
}

}  // namespace shoulderline
