#include "core/drawing/part_faces.h"

#include <algorithm>

#include "core/drawing/part_angles.h"
#include "core/drawing/part_views.h"
#include "core/resolve/end_words.h"

namespace shoulderline {

namespace {

bool carriesMortises(const ResolvedPart& part, Face face) {
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

// Across the length, what the tenons at one end cover.
std::vector<Box> tenonsAt(const ResolvedPart& part, End end) {
    std::vector<Box> tenons;
    for (const TenonSolid& tenon : part.tenons) {
        if ((tenon.box.min.x < 0.0) == (end == End::Start)) {
            Box box = footOf(part, tenon);
            box.min.x = box.max.x = 0.0;
            tenons.push_back(box);
        }
    }
    return tenons;
}

bool areAlike(const std::vector<Box>& a, const std::vector<Box>& b) {
    constexpr double kSameSize = 0.001;
    return a.size() == b.size() && std::all_of(a.begin(), a.end(), [&](const Box& box) {
               return std::any_of(b.begin(), b.end(), [&](const Box& other) {
                   return box.holds(other, kSameSize) && other.holds(box, kSameSize);
               });
           });
}

// The cuts that are set out on an end.
std::vector<Box> cutsIn(const ResolvedPart& part, Face end) {
    std::vector<Box> cuts;
    for (const ResolvedCut& cut : part.cuts) {
        const bool isKerf = cut.joint && cut.kind == CutKind::Notch;
        if (cut.face == end && !isKerf) {
            Box box = cut.box;
            box.min.x = 0.0;
            box.max.x = cut.box.size().x;
            cuts.push_back(box);
        }
    }
    return cuts;
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
            part.body.edge && !part.bend && !carriesMortises(part, Face::BackEdge);
        const bool showsAngle = face == Face::FaceEdge && (isAngledOn(part, face) || showsOutline);
        return face != Face::FaceSide && !showsAngle && !showsBow && !carriesMortises(part, face);
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

std::vector<EndToShow> endsToShow(const ResolvedPart& part, bool isThirdAngle) {
    const std::vector<Box> start = tenonsAt(part, End::Start);
    const std::vector<Box> far = tenonsAt(part, End::Far);
    const std::vector<Box> startCuts = cutsIn(part, Face::StartEnd);
    const std::vector<Box> farCuts = cutsIn(part, Face::FarEnd);
    const bool startCarries =
        !start.empty() || !startCuts.empty() || carriesMortises(part, Face::StartEnd);
    const bool farCarries = !far.empty() || !farCuts.empty() || carriesMortises(part, Face::FarEnd);
    const Face atRight = isThirdAngle ? Face::FarEnd : Face::StartEnd;
    if (startCarries && farCarries && areAlike(start, far) && areAlike(startCuts, farCuts) &&
        !carriesMortises(part, Face::StartEnd)) {
        return {{atRight, "both ends", true}};
    }
    const EndToShow left{Face::StartEnd, endWord(part, End::Start), !isThirdAngle || !farCarries};
    const EndToShow right{Face::FarEnd, endWord(part, End::Far), isThirdAngle || !startCarries};
    if (startCarries && farCarries) {
        // The section is dimensioned at the first; the other shows its own tenons.
        return isThirdAngle ? std::vector<EndToShow>{right, left}
                            : std::vector<EndToShow>{left, right};
    }
    if (startCarries) {
        return {left};
    }
    return farCarries ? std::vector<EndToShow>{right}
                      : std::vector<EndToShow>{{atRight, "end", true}};
}

}  // namespace shoulderline
