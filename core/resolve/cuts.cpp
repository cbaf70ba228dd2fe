#include "core/geometry/cylinder.h"
#include "core/resolve/holes.h"
#include "core/resolve/pegs.h"
#include "core/resolve/shaping.h"

namespace shoulderline {

namespace {

class CutReader {
  public:
    CutReader(const Vec3& size, const Place& place, Evaluation& evaluation)
        : size_(size), place_(place), evaluation_(evaluation) {}

    std::optional<ResolvedCut> read(const CutStatement& cut) {
        const CutAxes axes = axesOn(cut.face);
        const std::string name(wordFor(cut.kind));
        const std::optional<Length> along =
            evaluation_.length(cut.along, place_, name + ": place along", Length());
        const std::optional<Length> across =
            evaluation_.length(cut.across, place_, name + ": place across", Length());
        const std::optional<Length> depth =
            evaluation_.size(cut.depth, place_, name + ": depth", Length::mm(size_[axes.into]));
        if (!along || !across || !depth) {
            return std::nullopt;
        }
        // What is left open runs to the far end, or to the whole where it starts there.
        const auto rest = [&](int axis, Length at) { return Length::mm(size_[axis]) - at; };
        const std::optional<Length> width =
            evaluation_.size(cut.width, place_, name + ": width", rest(axes.across, *across));
        const std::optional<Length> length =
            evaluation_.size(cut.length, place_, name + ": length", rest(axes.along, *along));
        if (!width || !length) {
            return std::nullopt;
        }
        ResolvedCut resolved;
        resolved.kind = cut.kind;
        resolved.face = cut.face;
        resolved.note = cut.note;
        resolved.isThrough = depth->mm() >= size_[axes.into] - kLengthTolerance.mm();
        Box& box = resolved.box;
        box.min[axes.along] =
            lowOnAxis(cut.alongFrom, along->mm(), length->mm(), size_[axes.along], false);
        box.max[axes.along] = box.min[axes.along] + length->mm();
        box.min[axes.across] =
            lowOnAxis(cut.acrossFrom, across->mm(), width->mm(), size_[axes.across], false);
        box.max[axes.across] = box.min[axes.across] + width->mm();
        box.min[axes.into] = axes.fromHigh ? size_[axes.into] - depth->mm() : 0.0;
        box.max[axes.into] = box.min[axes.into] + depth->mm();
        return isInWood(box, axes, name) ? std::optional(resolved) : std::nullopt;
    }

  private:
    bool isInWood(const Box& box, const CutAxes& axes, const std::string& name) {
        for (const int axis : {axes.along, axes.across}) {
            if (box.min[axis] >= size_[axis] || box.max[axis] <= 0.0) {
                const bool isAlong = axis == axes.along;
                evaluation_.trouble(
                    place_,
                    "a " + name + " of it lies outside the wood: its middle is " +
                        evaluation_.shown(Length::mm((box.min[axis] + box.max[axis]) / 2)) +
                        (isAlong ? " along" : " across") + " the face, which is " +
                        evaluation_.shown(Length::mm(size_[axis])) + (isAlong ? " long" : " wide"));
                return false;
            }
        }
        return true;
    }

    const Vec3& size_;
    const Place& place_;
    Evaluation& evaluation_;
};

}  // namespace

ConvexSolid ResolvedCut::solid() const {
    if (exact) {
        return *exact;
    }
    if (kind != CutKind::Bore) {
        return ConvexSolid::box(box);
    }
    return cylinderIn(box, axesOn(face).into);
}

std::vector<ResolvedCut> workOutCuts(const std::vector<CutStatement>& cuts,
                                     const Vec3& size,
                                     const Place& place,
                                     const SizingGuide& guide,
                                     Evaluation& evaluation) {
    std::vector<ResolvedCut> resolved;
    CutReader reader(size, place, evaluation);
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        const CutStatement& cut = cuts[i];
        if (cut.kind == CutKind::Bore || cut.kind == CutKind::ScrewHole) {
            for (ResolvedCut& hole : workOutHole(cut, size, place, guide, evaluation)) {
                hole.hole->cut = i;
                resolved.push_back(std::move(hole));
            }
        } else if (cut.kind == CutKind::PegMortise) {
            if (std::optional<ResolvedCut> peg = workOutPegMortise(cut, size, place, evaluation)) {
                peg->peg->cut = i;
                resolved.push_back(std::move(*peg));
            }
        } else if (std::optional<ResolvedCut> one = reader.read(cut)) {
            resolved.push_back(std::move(*one));
        }
    }
    return resolved;
}

}  // namespace shoulderline
