#include "core/resolve/end_words.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>

#include "core/resolve/end_plane.h"

namespace shoulderline {

namespace {

// The words of the start and of the far end, "front" and "back", and whether these stand alone.
struct EndNames {
    std::string_view start;
    std::string_view far;
    bool isUpright = false;

    [[nodiscard]] std::string_view at(End end) const { return end == End::Start ? start : far; }
};

// Of a pair the words must hold for both, which are drawn as one.
EndNames namesOfEnds(const ResolvedPart& part) {
    constexpr double kUpright = 0.5;  // of its direction; a stile may lean with its frame
    constexpr double kSame = 1e-6;
    const Vec3 way = part.frame.x;
    if (std::abs(way.z) > kUpright) {
        return way.z > 0.0 ? EndNames{"foot", "top", true} : EndNames{"top", "foot", true};
    }
    if (part.hand == Hand::None) {
        return {"left", "right"};
    }
    if (std::abs(way.y) >= std::abs(way.x) - kSame) {
        return way.y > 0.0 ? EndNames{"front", "back"} : EndNames{"back", "front"};
    }
    const double start = part.frame.origin.x;
    const double far = start + way.x * part.shoulderLength.value.mm();
    return std::abs(start) > std::abs(far) ? EndNames{"outer", "inner"}
                                           : EndNames{"inner", "outer"};
}

// " at the face side": where the outermost corners of a slanted shoulder are, which places along a
// part are from; nothing for a square one.
std::string outermostWord(const ResolvedPart& part, End end) {
    constexpr double kSeen = 0.4;  // mm: less shows on no rule
    const std::optional<HalfSpace> plane = endPlaneOf(part.body, end);
    const Vec3 size = part.bodyBox().max;
    if (!plane) {
        return {};
    }
    if (part.section != SectionForm::Square) {
        const double lean = std::hypot(plane->normal.y, plane->normal.z);
        return lean * std::min(size.y, size.z) > kSeen ? " on its long side" : "";
    }
    const double outermost = end == End::Start ? 0.0 : size.x;
    const auto isOut = [&](double y, double z) {
        return std::abs(endAt(part, end, y, z) - outermost) < kSeen;
    };
    const bool atFaceSide = isOut(0.0, 0.0) || isOut(size.y, 0.0);
    const bool atBackSide = isOut(0.0, size.z) || isOut(size.y, size.z);
    const bool atFaceEdge = isOut(0.0, 0.0) || isOut(0.0, size.z);
    const bool atBackEdge = isOut(size.y, 0.0) || isOut(size.y, size.z);
    std::string words;
    if (atFaceSide != atBackSide) {
        words = wordFor(atFaceSide ? Face::FaceSide : Face::BackSide);
    }
    if (atFaceEdge != atBackEdge) {
        words += words.empty() ? "" : " and ";
        words += wordFor(atFaceEdge ? Face::FaceEdge : Face::BackEdge);
    }
    return words.empty() ? words : " at the " + words;
}

}  // namespace

std::string endWord(const ResolvedPart& part, End end) {
    const EndNames names = namesOfEnds(part);
    return std::string(names.at(end)) + (names.isUpright ? "" : " end");
}

std::string placesFromWord(const ResolvedPart& part, End end) {
    const Length tenon = end == End::Start ? part.startTenon : part.farTenon;
    if (tenon <= kLengthTolerance) {
        return endWord(part, end) + outermostWord(part, end);
    }
    const EndNames names = namesOfEnds(part);
    return names.isUpright ? "shoulder at the " + std::string(names.at(end))
                           : std::string(names.at(end)) + " shoulder" + outermostWord(part, end);
}

std::string faceWordOn(const ResolvedPart& part, Face face) {
    if (face == Face::StartEnd || face == Face::FarEnd) {
        return endWord(part, face == Face::StartEnd ? End::Start : End::Far);
    }
    return std::string(wordFor(face));
}

std::string arrisWordOn(const ResolvedPart& part, Arris arris) {
    if (arris == Arris::StartEnd || arris == Arris::FarEnd) {
        return endWord(part, arris == Arris::StartEnd ? End::Start : End::Far);
    }
    return arris == Arris::AllAlong ? "all four arrises along it" : std::string(wordFor(arris));
}

}  // namespace shoulderline
