#include "core/drawing/joint_blocks.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/fraction_text.h"
#include "core/drawing/joint_drawing.h"
#include "core/drawing/scales.h"
#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"

namespace shoulderline {

namespace {

constexpr double kNameHeight = 3.5;
constexpr double kCaptionHeight = 2.5;
constexpr double kNameRows = 11.0;

std::string nameOf(const ResolvedPiece& resolved, const JointGroup& group) {
    const ResolvedJoint& joint = resolved.joints[group.joints.front()];
    return resolved.parts[joint.tenoned].of + " into " + resolved.parts[joint.mortised].of;
}

// "haunch length 3/8, horn 1"; empty where it has no more sizes than every joint.
std::string furtherSizes(const Piece& piece, const ResolvedJoint& joint) {
    std::string text;
    for (const FurtherSize& further : joint.further) {
        text += text.empty() ? "" : ", ";
        text +=
            std::string(wordFor(further.name)) + " " + showLength(further.size.value, piece.style);
    }
    return text;
}

// "make 2; blind; 1 : 4".
std::string captionOf(const ResolvedPiece& resolved, const JointGroup& group, double scale) {
    const ResolvedJoint& joint = resolved.joints[group.joints.front()];
    return "make " + std::to_string(group.joints.size()) + "; " + joint.form().words() + "; " +
           scaleText(scale);
}

constexpr double kOverSetUps = 3.0;

// How the tools are set, in lines at most `width` wide.
std::vector<std::string> setUpLinesWithin(double width,
                                          const Piece& piece,
                                          const ResolvedPiece& resolved,
                                          const JointGroup& group,
                                          const TextMetrics& metrics) {
    std::vector<std::string> lines;
    for (const std::string& one : setUpLines(piece, resolved, group)) {
        for (std::string& line : wrapText(one, width, kCaptionHeight, metrics, "   ")) {
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

// The settings under the drawing, as wide as it is.
void addSetUps(const Piece& piece,
               const ResolvedPiece& resolved,
               const JointGroup& group,
               const TextMetrics& metrics,
               JointBlock& block) {
    constexpr double kLeastWidth = 80.0;
    block.setUps = setUpsOf(resolved, group);
    block.size.x = std::max(block.size.x, kLeastWidth);
    const std::vector<std::string> lines =
        setUpLinesWithin(block.size.x, piece, resolved, group, metrics);
    if (lines.empty()) {
        return;
    }
    std::vector<Op> text = linesOfText(lines, kCaptionHeight);
    move(text, {0.0, block.size.y + kOverSetUps});
    append(block.ops, std::move(text));
    block.size.y += kOverSetUps + heightOfLines(lines.size(), kCaptionHeight) + 1.0;
}

// The settings by themselves, where they find no room under the drawing: as many blocks as they
// take.
std::vector<JointBlock> setUpBlocks(const Piece& piece,
                                    const ResolvedPiece& resolved,
                                    const JointGroup& group,
                                    Vec2 room,
                                    const TextMetrics& metrics) {
    std::vector<std::string> lines = setUpLinesWithin(room.x, piece, resolved, group, metrics);
    const double head = kNameHeight + kOverSetUps;
    const double each = kLineSpacing * kCaptionHeight;
    const auto most = static_cast<std::size_t>(std::max(1.0, (room.y - head - 1.0) / each));
    std::vector<JointBlock> blocks;
    for (std::size_t from = 0; from < lines.size(); from += most) {
        const std::size_t to = std::min(lines.size(), from + most);
        const std::vector<std::string> some(lines.begin() + static_cast<std::ptrdiff_t>(from),
                                            lines.begin() + static_cast<std::ptrdiff_t>(to));
        JointBlock block;
        block.part = resolved.parts[resolved.joints[group.joints.front()].tenoned].of;
        block.setUps = setUpsOf(resolved, group);
        const FittedText name =
            fitText(nameOf(resolved, group) + ": set-ups", kNameHeight, room.x, metrics);
        block.ops.push_back(
            TextOp{{0.0, kNameHeight}, name.text, name.height, Align::Left, false, true});
        std::vector<Op> text = linesOfText(some, kCaptionHeight);
        move(text, {0.0, head});
        append(block.ops, std::move(text));
        block.size = {room.x, head + heightOfLines(some.size(), kCaptionHeight) + 1.0};
        blocks.push_back(std::move(block));
    }
    return blocks;
}

JointBlock blockOf(const Piece& piece,
                   const ResolvedPiece& resolved,
                   const JointGroup& group,
                   double scale,
                   bool withSetUps,
                   const TextMetrics& metrics) {
    constexpr DimensionStyle kClose{2.5, 7.0, 5.5};
    Sheet drawing = drawJoint(piece, resolved, group.joints.front(), {scale, kClose}, metrics);
    JointBlock block;
    block.part = resolved.parts[resolved.joints[group.joints.front()].tenoned].of;
    const std::string caption = captionOf(resolved, group, scale);
    const std::string further = furtherSizes(piece, resolved.joints[group.joints.front()]);
    const double rows = kNameRows + (further.empty() ? 0.0 : 2.0 + kCaptionHeight);
    block.size = Vec2{std::max({drawing.size.x,
                                metrics.width(caption, kCaptionHeight, false),
                                metrics.width(further, kCaptionHeight, false)}),
                      drawing.size.y + rows};
    const FittedText name = fitText(nameOf(resolved, group), kNameHeight, block.size.x, metrics);
    block.ops.push_back(
        TextOp{{0.0, kNameHeight}, name.text, name.height, Align::Left, false, true});
    block.ops.push_back(TextOp{{0.0, kNameHeight + 2.0 + kCaptionHeight},
                               caption,
                               kCaptionHeight,
                               Align::Left,
                               false,
                               false});
    if (!further.empty()) {
        block.ops.push_back(TextOp{{0.0, kNameHeight + 4.0 + 2.0 * kCaptionHeight},
                                   further,
                                   kCaptionHeight,
                                   Align::Left,
                                   false,
                                   false});
    }
    move(drawing.ops, {0.0, rows});
    append(block.ops, std::move(drawing.ops));
    if (withSetUps) {
        addSetUps(piece, resolved, group, metrics, block);
    }
    return block;
}

// The scales that joints are drawn at: full size, a half, and for pieces in inches a quarter, else
// a fifth; smaller ones only where nothing else goes on the paper.
std::vector<double> jointScales(Unit unit) {
    std::vector<double> scales = standardScales(unit);
    if (unit == Unit::Inch) {
        std::erase_if(scales, [](double scale) { return std::fmod(1.0 / scale, 10.0) == 5.0; });
    }
    return scales;
}

}  // namespace

const JointBlock& JointBlocks::of(std::size_t group, double scale, bool withSetUps) {
    const auto [it, isNew] = made_.try_emplace({group, scale, withSetUps});
    if (isNew) {
        it->second = blockOf(piece_, resolved_, groups_[group], scale, withSetUps, metrics_);
    }
    return it->second;
}

std::vector<JointBlock> JointBlocks::fitted(std::size_t i, Vec2 room) {
    constexpr double kGoodToRead = 0.25;
    const Vec2 half = (room - Vec2{kBetweenJoints, kBetweenJoints}) * 0.5;
    const std::vector<double> scales = jointScales(piece_.unit);
    JointBlock block;
    for (const bool withSetUps : {true, false}) {
        for (const bool sharesSheet : {true, false}) {
            for (const double scale : scales) {
                block = of(i, scale, withSetUps);
                const bool goesIn = block.size.x <= room.x && block.size.y <= room.y;
                const bool isHalf = block.size.x <= half.x || block.size.y <= half.y;
                const bool isLegible = !withSetUps || scale > kGoodToRead / 4;
                if (goesIn && isLegible && (isHalf || !sharesSheet)) {
                    std::vector<JointBlock> blocks{std::move(block)};
                    if (!withSetUps) {
                        for (JointBlock& text :
                             setUpBlocks(piece_, resolved_, groups_[i], room, metrics_)) {
                            blocks.push_back(std::move(text));
                        }
                    }
                    return blocks;
                }
                if (sharesSheet && scale <= kGoodToRead) {
                    break;
                }
            }
        }
    }
    return {std::move(block)};
}

}  // namespace shoulderline
