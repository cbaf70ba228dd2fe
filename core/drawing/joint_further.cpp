#include "core/drawing/joint_further.h"

#include <algorithm>
#include <optional>

#include "core/drawing/fraction_text.h"
#include "core/drawing/mortise_rows.h"
#include "core/drawing/tenon_pegs.h"
#include "core/measure/length_text.h"
#include "core/resolve/frames.h"
#include "core/resolve/shaping_order.h"

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

// How deep the mortise is cut from the face of the blank, where the wood is shaped away under it;
// empty where it is as deep as the drawing letters it.
std::string depthFromBlank(const ResolvedPiece& resolved,
                           std::size_t index,
                           const LengthStyle& style) {
    const ResolvedJoint& joint = resolved.joints[index];
    const ResolvedPart& part = resolved.parts[joint.mortised];
    if (joint.isThrough() || !isSawnToShape(part) || joint.mortise.below <= kLengthTolerance) {
        return {};
    }
    for (const MortiseSolid& mortise : part.mortises) {
        if (mortise.joint != index || mortise.isHaunch || isDepthAlongIt(resolved, part, mortise)) {
            continue;
        }
        const auto [into, way] = inwardOf(mortise.face);
        const Box box = setOutBox(mortise);
        const double under = way > 0.0 ? box.min[into] : part.bodyBox().max[into] - box.max[into];
        if (under < kLengthTolerance.mm()) {
            return "mortise " + letterLength(Length::mm(box.size()[into]), style) +
                   " deep from the blank's " + std::string(wordFor(mortise.face));
        }
    }
    return {};
}

// How wide the wedge of a tusk tenon is where it is widest; none where it has none.
std::optional<Length> widestOfWedge(const std::vector<SmallPart>& smalls, std::size_t index) {
    for (const SmallPart& small : smalls) {
        if (small.kind == SmallPartKind::TuskWedge &&
            std::find(small.joints.begin(), small.joints.end(), index) != small.joints.end()) {
            return small.width;
        }
    }
    return std::nullopt;
}

}  // namespace

std::optional<Length> tongueFromShoulder(const ResolvedPart& panel, std::size_t joint) {
    for (const ResolvedCut& cut : panel.cuts) {
        if (cut.joint == joint && cut.kind == CutKind::Rabbet) {
            const Vec3 box = cut.box.size();
            return Length::mm(inwardOf(cut.face).axis == 2 ? std::min(box.x, box.y) : box.z);
        }
    }
    return std::nullopt;
}

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
        // What has two figures on the drawing says here which is which.
        if (further.name == SizeName::TongueLength) {
            const std::optional<Length> own =
                tongueFromShoulder(resolved.parts[joint.tenoned], index);
            text += own && !nearlyEqual(*own, further.size.value)
                        ? " in the groove and " + shown(*own) + " from its shoulder"
                        : "";
        }
        if (further.name == SizeName::TuskWidth) {
            const std::optional<Length> widest = widestOfWedge(smalls, index);
            text += widest && !nearlyEqual(*widest, further.size.value)
                        ? " at the slot's wide end and " + shown(*widest) + " at its own"
                        : "";
        }
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
    if (const std::string depth = depthFromBlank(resolved, index, piece.style); !depth.empty()) {
        text += (text.empty() ? "" : ", ") + depth;
    }
    return text;
}

}  // namespace shoulderline
