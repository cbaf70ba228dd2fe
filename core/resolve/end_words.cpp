#include "core/resolve/end_words.h"

#include <cmath>

namespace shoulderline {

namespace {

bool standsOnStart(const ResolvedPart& part) {
    constexpr double kUpright = 0.5;  // of its direction; a stile may lean with its frame
    return (part.role == Role::Post || part.role == Role::Stile) && part.frame.x.z > kUpright;
}

}  // namespace

std::string endWord(const ResolvedPart& part, End end) {
    if (standsOnStart(part)) {
        return end == End::Start ? "foot" : "top";
    }
    return end == End::Start ? "left end" : "right end";
}

std::string placesFromWord(const ResolvedPart& part, End end) {
    const Length tenon = end == End::Start ? part.startTenon : part.farTenon;
    if (tenon <= kLengthTolerance) {
        return endWord(part, end);
    }
    if (standsOnStart(part)) {
        return "shoulder at the " + endWord(part, end);
    }
    return end == End::Start ? "left shoulder" : "right shoulder";
}

std::string faceWordOn(const ResolvedPart& part, Face face) {
    if (face == Face::StartEnd || face == Face::FarEnd) {
        return endWord(part, face == Face::StartEnd ? End::Start : End::Far);
    }
    return std::string(wordFor(face));
}

}  // namespace shoulderline
