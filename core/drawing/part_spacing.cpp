#include "core/drawing/part_spacing.h"

#include <cmath>

#include "core/measure/length_text.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// "front rail and back rail"; of "post, left" and "post, right": "the left and the right post".
std::string bothOf(const std::string& after, const std::string& before) {
    const std::string left = ", " + std::string(wordFor(Hand::Left));
    const std::size_t stem = after.rfind(", ");
    const bool areTwins = stem != std::string::npos && after != before &&
                          before.compare(0, stem + 2, after, 0, stem + 2) == 0 &&
                          (after.substr(stem) == left || before.substr(stem) == left);
    return areTwins ? "the left and the right " + after.substr(0, stem)
                    : namesInARow({after, before});
}

// The side of the set on which its first member lies; none where it is another for each hand.
std::string sideOfFirst(const ResolvedPiece& resolved, const std::vector<std::size_t>& set) {
    const Vec3 way = boundsInSpace(resolved.parts[set.back()]).centre() -
                     boundsInSpace(resolved.parts[set.front()]).centre();
    const int axis = longestAxis(way);
    if (axis == 0 && resolved.parts[set.front()].hand != Hand::None) {
        return {};
    }
    const bool isLow = way[axis] > 0.0;
    return axis == 2   ? (isLow ? "bottom" : "top")
           : axis == 1 ? (isLow ? "front" : "back")
                       : (isLow ? "left" : "right");
}

// Between the first member and what the set lies after, along the way from it to the second;
// none where they do not lie square to one another.
std::optional<double> firstGap(const ResolvedPiece& resolved,
                               const std::vector<std::size_t>& set,
                               const std::string& after) {
    const ResolvedPart& member = resolved.parts[set.front()];
    const Box first = boundsInSpace(resolved.parts[set.front()]);
    const Vec3 way = boundsInSpace(resolved.parts[set[1]]).centre() - first.centre();
    const int axis = longestAxis(way);
    for (const ResolvedPart& part : resolved.parts) {
        const bool isIt = part.name == after || (part.of == after && part.hand == member.hand);
        if (isIt && squared(part.frame) && squared(member.frame)) {
            const Box box = boundsInSpace(part);
            return way[axis] > 0.0 ? first.min[axis] - box.max[axis]
                                   : box.min[axis] - first.max[axis];
        }
    }
    return std::nullopt;
}

}  // namespace

std::string namesInARow(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    }
    return text;
}

std::vector<std::size_t> membersOfSet(const ResolvedPiece& resolved, std::size_t part) {
    const ResolvedPart& one = resolved.parts[part];
    std::vector<std::size_t> members;
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        if (resolved.parts[i].stated == one.stated && resolved.parts[i].hand == one.hand) {
            members.push_back(i);
        }
    }
    return members;
}

std::optional<std::string> spacingNote(const Piece& piece,
                                       const ResolvedPiece& resolved,
                                       std::size_t index) {
    const ResolvedPart& part = resolved.parts[index];
    const std::optional<Spacing>& spacing = piece.parts[part.stated].spacing;
    const std::vector<std::size_t> set = membersOfSet(resolved, index);
    if (!spacing || set.size() < 2) {
        return std::nullopt;
    }
    const auto shown = [&](double mm) { return letterLength(Length::mm(mm), piece.style); };
    const bool isPair = part.hand != Hand::None;
    std::string text = std::to_string(set.size()) + (isPair ? " a side, " : " in all, ");
    const double apart = std::abs(part.gap.mm());
    // Gaps that are stepped off one by one add up what each is rounded by.
    const bool areShared = spacing->pitch.empty();
    text += part.gap >= kLengthTolerance
                ? (areShared ? "sharing the room evenly, gaps " + shown(apart)
                             : shown(apart) + " apart")
            : part.gap <= -kLengthTolerance ? "lapping by " + shown(apart)
                                            : "edge to edge";
    const std::string both = bothOf(spacing->after, spacing->before);
    if (areShared) {
        text += ", the first and last equally far from " + both;
    } else if (const std::optional<double> first = firstGap(resolved, set, spacing->after)) {
        text += ", the first and last " + shown(*first) + " from " + both;
    }
    const std::string side = sideOfFirst(resolved, set);
    return text + (side.empty() ? "" : ", numbered from the " + side);
}

}  // namespace shoulderline
