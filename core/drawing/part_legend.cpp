#include "core/drawing/part_legend.h"

#include <algorithm>
#include <string>
#include <string_view>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/trade_marks.h"
#include "core/piece/words.h"

namespace shoulderline {

bool showsFace(const std::vector<Op>& ops, Face face) {
    const std::string word = ", " + std::string(wordFor(face));
    return std::any_of(ops.begin(), ops.end(), [&](const Op& op) {
        const auto* group = std::get_if<BeginGroup>(&op);
        return group != nullptr && group->name.size() > word.size() &&
               group->name.compare(group->name.size() - word.size(), word.size(), word) == 0;
    });
}

namespace {

bool hasGroup(const std::vector<Op>& ops, std::string_view name) {
    return std::any_of(ops.begin(), ops.end(), [&](const Op& op) {
        const auto* group = std::get_if<BeginGroup>(&op);
        return group != nullptr && group->name == name;
    });
}

}  // namespace

std::vector<Op> legendOf(const std::vector<Op>& drawing, Vec2 corner, int columns) {
    constexpr double kHeight = 2.5;
    constexpr double kRow = 5.8;
    constexpr double kColumn = 56.0;
    constexpr double kToWords = 9.0;
    std::vector<Op> ops;
    int told = 0;
    // Where the next mark stands.
    const auto place = [&] {
        return corner + Vec2{6.0 + kColumn * (told % columns), 5.5 + kRow * (told / columns)};
    };
    const auto say = [&](std::vector<Op> mark, const std::string& text) {
        const Vec2 words = place() + Vec2{kToWords, kHeight / 2.0};
        append(ops, std::move(mark));
        ops.push_back(TextOp{words, text, kHeight, Align::Left, false, false});
        ++told;
    };
    const auto mouth = [](Vec2 at, bool isThrough) {
        const Vec2 min = at - Vec2{3.5, 1.5};
        const Vec2 max = at + Vec2{3.5, 1.5};
        std::vector<Op> mark = mouthDiagonals(min, max, isThrough);
        mark.push_back(
            Stroke{{min, {max.x, min.y}, max, {min.x, max.y}, min}, LineRole::Dimension});
        return mark;
    };
    if (hasGroup(drawing, kFaceSideGroup)) {
        say({faceSideMark(place() - Vec2{0.0, 3.0}, 5.5)}, "face side: mark from here");
    }
    if (hasGroup(drawing, kFaceEdgeGroup)) {
        say({faceEdgeMark(place() + Vec2{0.0, 1.8}, 3.6, true)}, "face edge: and from here");
    }
    if (hasGroup(drawing, kThroughGroup)) {
        say(mouth(place(), true), "mortise right through");
    }
    if (hasGroup(drawing, kBlindGroup)) {
        say(mouth(place(), false), "blind mortise");
    }
    if (hasGroup(drawing, kGrainGroup)) {
        say(grainArrow(place(), 7.0), "the grain");
    }
    return ops;
}

}  // namespace shoulderline
