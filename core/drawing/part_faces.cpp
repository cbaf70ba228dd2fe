#include "core/drawing/part_faces.h"

#include <algorithm>

namespace shoulderline {

namespace {

bool carriesMortises(const ResolvedPart& part, Face face) {
    return std::any_of(part.mortises.begin(), part.mortises.end(), [&](const MortiseSolid& m) {
        return m.face == face;
    });
}

// Across the length, what the tenons at one end cover.
std::vector<Box> tenonsAt(const ResolvedPart& part, End end) {
    std::vector<Box> tenons;
    for (const TenonSolid& tenon : part.tenons) {
        if ((tenon.box.min.x < 0.0) == (end == End::Start)) {
            Box box = tenon.box;
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

}  // namespace

std::vector<Face> facesToShow(const ResolvedPart& part, bool isThirdAngle) {
    std::vector<Face> order =
        isThirdAngle
            ? std::vector<Face>{Face::FaceEdge, Face::FaceSide, Face::BackEdge, Face::BackSide}
            : std::vector<Face>{Face::BackEdge, Face::FaceSide, Face::FaceEdge, Face::BackSide};
    std::erase_if(
        order, [&](Face face) { return face != Face::FaceSide && !carriesMortises(part, face); });
    return order;
}

std::vector<EndToShow> endsToShow(const ResolvedPart& part) {
    const std::vector<Box> start = tenonsAt(part, End::Start);
    const std::vector<Box> far = tenonsAt(part, End::Far);
    const bool startCarries = !start.empty() || carriesMortises(part, Face::StartEnd);
    const bool farCarries = !far.empty() || carriesMortises(part, Face::FarEnd);
    if (startCarries && farCarries && areAlike(start, far) &&
        !carriesMortises(part, Face::StartEnd)) {
        return {{Face::FarEnd, "both ends", true}};
    }
    if (startCarries && farCarries) {
        // The section is dimensioned at the far end; the start end shows its own tenons.
        return {{Face::FarEnd, "right end", true}, {Face::StartEnd, "left end", false}};
    }
    if (startCarries) {
        return {{Face::StartEnd, "left end", true}};
    }
    return {{Face::FarEnd, farCarries ? "right end" : "end", true}};
}

}  // namespace shoulderline
