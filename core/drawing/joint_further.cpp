#include "core/drawing/joint_further.h"

#include <algorithm>
#include <optional>

#include "core/drawing/fraction_text.h"
#include "core/drawing/tenon_pegs.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// "loose tenon 26 by 36 by 10".
std::string smallText(const Piece& piece, const SmallPart& small) {
    const auto shown = [&](Length length) { return letterLength(length, piece.style); };
    return std::string(wordFor(small.kind)) + " " + shown(small.length) + " by " +
           shown(small.width) + " by " + shown(small.thickness);
}

// How deep the holes over the heads are bored from the blank of a part that is shaped there; none
// where that is the depth of their plugs.
std::optional<Length> plugHoleFromBlank(const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    const Size* wide = joint.size(SizeName::PlugDiameter);
    const Size* depth = joint.size(SizeName::PlugDepth);
    if (wide == nullptr || depth == nullptr) {
        return std::nullopt;
    }
    for (const ResolvedCut& cut : resolved.parts[joint.tenoned].cuts) {
        const int into = inwardOf(cut.face).axis;
        const Vec3 size = cut.box.size();
        const bool isOverHead = cut.joint == index && cut.kind == CutKind::Bore &&
                                nearlyEqual(Length::mm(size[(into + 1) % 3]), wide->value);
        if (isOverHead && Length::mm(size[into]) > depth->value + kLengthTolerance) {
            return Length::mm(size[into]);
        }
    }
    return std::nullopt;
}

}  // namespace

std::string furtherSizes(const Piece& piece,
                         const ResolvedPiece& resolved,
                         const std::vector<SmallPart>& smalls,
                         std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    std::string text;
    for (const SmallPart& small : smalls) {
        const bool isOfIt =
            std::find(small.joints.begin(), small.joints.end(), index) != small.joints.end();
        if (isOfIt &&
            (small.kind == SmallPartKind::LooseTenon || small.kind == SmallPartKind::Wedge)) {
            text += (text.empty() ? "" : ", ") + smallText(piece, small);
        }
    }
    const auto shown = [&](Length length) { return letterLength(length, piece.style); };
    const std::optional<Length> plugHole = plugHoleFromBlank(resolved, index);
    for (const FurtherSize& further : joint.further) {
        text += text.empty() ? "" : ", ";
        text += further.name == SizeName::PlugDepth && plugHole
                    ? "plug hole " + shown(*plugHole) + " deep from the blank"
                    : std::string(wordFor(further.name)) + " " + shown(further.size.value);
    }
    for (const SmallPart& small : smalls) {
        const bool isOfIt =
            std::find(small.joints.begin(), small.joints.end(), index) != small.joints.end();
        text += plugHole && isOfIt && small.kind == SmallPartKind::Plug
                    ? ", plugs up to " + shown(small.length) + " long"
                    : "";
    }
    if (const std::optional<std::string> pegs = tenonPegsText(piece, resolved, index)) {
        text += (text.empty() ? "" : ", ") + *pegs;
    }
    return text;
}

}  // namespace shoulderline
