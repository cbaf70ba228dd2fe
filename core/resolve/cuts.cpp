#include "core/geometry/cylinder.h"
#include "core/resolve/shaping.h"

namespace shoulderline {

namespace {

// The axes of a cut on a face: along it, across it, into the wood.
struct CutAxes {
    int along = 0;
    int across = 1;
    int into = 2;
    bool fromHigh = false;  // the face lies at the high end of `into`
};

CutAxes axesOn(Face face) {
    switch (face) {
        case Face::FaceSide:
            return {0, 1, 2, false};
        case Face::BackSide:
            return {0, 1, 2, true};
        case Face::FaceEdge:
            return {0, 2, 1, false};
        case Face::BackEdge:
            return {0, 2, 1, true};
        case Face::StartEnd:
            return {1, 2, 0, false};
        case Face::FarEnd:
            return {1, 2, 0, true};
    }
    return {};
}

// Where a stretch of `size` lies on an axis `whole` long; a bore is placed by its middle.
double lowOf(Datum from, double at, double size, double whole, bool byMiddle) {
    const double half = byMiddle ? size / 2 : 0.0;
    switch (from) {
        case Datum::Start:
            return at - half;
        case Datum::Middle:
            return whole / 2 + at - size / 2;
        case Datum::Far:
            break;
    }
    return whole - at - size + half;
}

class CutReader {
  public:
    CutReader(const Vec3& size, const Place& place, Evaluation& evaluation)
        : size_(size), place_(place), evaluation_(evaluation) {}

    std::optional<ResolvedCut> read(const CutStatement& cut) {
        const CutAxes axes = axesOn(cut.face);
        const bool isBore = cut.kind == CutKind::Bore;
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
            isBore
                ? evaluation_.size(cut.width, place_, "bore: diameter")
                : evaluation_.size(cut.width, place_, name + ": width", rest(axes.across, *across));
        const std::optional<Length> length =
            isBore
                ? width
                : evaluation_.size(cut.length, place_, name + ": length", rest(axes.along, *along));
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
            lowOf(cut.alongFrom, along->mm(), length->mm(), size_[axes.along], isBore);
        box.max[axes.along] = box.min[axes.along] + length->mm();
        box.min[axes.across] =
            lowOf(cut.acrossFrom, across->mm(), width->mm(), size_[axes.across], isBore);
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
                                     Evaluation& evaluation) {
    std::vector<ResolvedCut> resolved;
    CutReader reader(size, place, evaluation);
    for (const CutStatement& cut : cuts) {
        if (std::optional<ResolvedCut> one = reader.read(cut)) {
            resolved.push_back(std::move(*one));
        }
    }
    return resolved;
}

}  // namespace shoulderline
