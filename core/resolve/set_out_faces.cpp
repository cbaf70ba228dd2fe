#include "core/resolve/set_out_faces.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/frames.h"
#include "core/resolve/joint_angles.h"

namespace shoulderline {

namespace {

bool takesMortises(const ResolvedPart& part, Face face) {
    return std::any_of(part.mortises.begin(), part.mortises.end(), [&](const MortiseSolid& m) {
        return m.face == face;
    });
}

// The cuts that a maker sets out on a face: those that start there, but for what goes through its
// tenons at the ends.
bool carriesCuts(const ResolvedPart& part, Face face) {
    const double length = part.shoulderLength.value.mm();
    return std::any_of(part.cuts.begin(), part.cuts.end(), [&](const ResolvedCut& cut) {
        return cut.face == face && cut.box.max.x > 0.0 && cut.box.min.x < length;
    });
}

// Whether all cuts of a face go through to one that is shown anyway: they are set out there.
template <class IsShown>
bool isSetOutBehind(const ResolvedPart& part, Face face, const IsShown& isShown) {
    return isShown(oppositeOf(face)) &&
           std::all_of(part.cuts.begin(), part.cuts.end(), [&](const ResolvedCut& cut) {
               return cut.face != face || cut.isThrough;
           });
}

}  // namespace

bool isAngledOn(const ResolvedPart& part, Face side) {
    constexpr double kAngled = 1e-7;  // radians
    for (const End end : {End::Start, End::Far}) {
        for (const ShoulderLine& line : endAnglesOf(part, end).lines) {
            if (line.side == side && std::abs(line.fromSquare.radians()) > kAngled) {
                return true;
            }
        }
    }
    return false;
}

bool isSetOutOn(const ResolvedPart& part, const ResolvedCut& cut, Face face) {
    if (cut.face == face) {
        return true;
    }
    const std::vector<Face> shown = facesToShow(part, true);
    return cut.isThrough && oppositeOf(cut.face) == face &&
           std::find(shown.begin(), shown.end(), cut.face) == shown.end();
}

std::vector<Face> facesToShow(const ResolvedPart& part, bool isThirdAngle) {
    std::vector<Face> order =
        isThirdAngle
            ? std::vector<Face>{Face::FaceEdge, Face::FaceSide, Face::BackEdge, Face::BackSide}
            : std::vector<Face>{Face::BackEdge, Face::FaceSide, Face::FaceEdge, Face::BackSide};
    const std::vector<Face> all = order;
    // On the edge that shows its shoulders too, where those follow the curve.
    const Face bowed = isAngledOn(part, Face::FaceEdge) ? Face::FaceEdge : all.front();
    std::erase_if(order, [&](Face face) {
        const bool showsBow = part.bend && face == bowed;
        const bool showsOutline =
            part.body.edge && !part.bend && !takesMortises(part, Face::BackEdge);
        const bool showsAngle = face == Face::FaceEdge && (isAngledOn(part, face) || showsOutline);
        return face != Face::FaceSide && !showsAngle && !showsBow && !takesMortises(part, face);
    });
    const auto isShown = [&](Face face) {
        return std::find(order.begin(), order.end(), face) != order.end();
    };
    std::vector<Face> shown;
    for (const Face face : all) {
        if (isShown(face) || (carriesCuts(part, face) && !isSetOutBehind(part, face, isShown))) {
            shown.push_back(face);
        }
    }
    return shown;
}

Face setOutFace(const ResolvedPart& part, const ResolvedCut& cut) {
    const Face behind = oppositeOf(cut.face);
    const bool isLong = cut.face != Face::StartEnd && cut.face != Face::FarEnd;
    const bool isSquare = !cut.hole || !cut.hole->lean.isTilted();
    return isLong && isSquare && isSetOutOn(part, cut, behind) ? behind : cut.face;
}

}  // namespace shoulderline
