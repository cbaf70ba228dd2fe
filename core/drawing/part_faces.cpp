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

}  // namespace

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
