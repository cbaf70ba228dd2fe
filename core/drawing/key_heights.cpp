#include "core/drawing/key_heights.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "core/drawing/rods.h"
#include "core/resolve/frames.h"
#include "core/resolve/sitting.h"

namespace shoulderline {

namespace {

constexpr std::size_t kMostNamedHeights = 6;
constexpr double kSameHeight = 0.001;  // mm
constexpr std::string_view kHeightWord = " height";

// "seat" of "seat height"; empty for a measure that is not called a height.
std::string wordOfMeasure(const std::string& name) {
    const bool isHeight =
        name.size() > kHeightWord.size() &&
        std::string_view(name).substr(name.size() - kHeightWord.size()) == kHeightWord;
    return isHeight ? name.substr(0, name.size() - kHeightWord.size()) : std::string();
}

void addHeight(KeyHeight height, std::vector<KeyHeight>& heights) {
    const bool isThere = std::any_of(heights.begin(), heights.end(), [&](const KeyHeight& other) {
        return std::abs(other.at - height.at) < kSameHeight;
    });
    if (!isThere && height.at > kSameHeight) {
        heights.push_back(std::move(height));
    }
}

// Arms, and boards that lie flat: seats, shelves and tops.
bool isLaidLevel(const ResolvedPart& part) {
    constexpr double kFlat = 0.9;  // cosine: a seat or an arm may slope
    const bool isBoard = part.role == Role::Seat || part.role == Role::Panel;
    return part.role == Role::Arm || (isBoard && std::abs(part.frame.z.z) > kFlat &&
                                      !part.body.face.flatten().points.empty());
}

}  // namespace

std::vector<KeyHeight> keyHeights(const Piece& piece, const ResolvedPiece& resolved) {
    std::vector<KeyHeight> heights;
    const Rod rod = rodOf(piece, resolved, RodKind::Heights);
    for (std::size_t i = 0; i < rod.lines.size() && heights.size() < kMostNamedHeights; ++i) {
        const RodHandle handle = handleOf(piece, resolved, rod, i, "0");
        if (handle.edit && std::holds_alternative<SetMeasure>(*handle.edit)) {
            addHeight({rod.lines[i].at, handle.drives, wordOfMeasure(handle.drives)}, heights);
        }
    }
    if (const std::optional<Sitting> sitting = sittingOn(resolved)) {
        const std::string& of = resolved.parts[sitting->seat.front()].of;
        addHeight({sitting->seatHeight.mm(), of + ", top", of}, heights);
    }
    for (const ResolvedPart& part : resolved.parts) {
        if (isLaidLevel(part)) {
            addHeight({boundsInSpace(part).max.z, part.of + ", top", part.of}, heights);
        }
    }
    std::stable_sort(heights.begin(), heights.end(), [](const KeyHeight& a, const KeyHeight& b) {
        return a.at < b.at;
    });
    return heights;
}

}  // namespace shoulderline
