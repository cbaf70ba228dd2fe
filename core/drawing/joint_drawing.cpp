#include "core/drawing/joint_drawing.h"

#include <algorithm>

#include "core/drawing/cut_joint.h"
#include "core/drawing/dimension_parts.h"
#include "core/drawing/joint_pictures.h"
#include "core/drawing/scales.h"

namespace shoulderline {

namespace {

constexpr double kLargest = 300.0;  // mm: on screen the drawing keeps within about this width

// The largest standard scale at which the drawing keeps to about the width of a screen.
double scaleForScreen(const JointMembers& members, Unit unit) {
    const double long_ = members.rail.size().x + 2.0 * members.tenon.size().x +
                         2.0 * members.post.size().x + members.post.size().z;
    constexpr double kSizes = 80.0;
    return scaleThatFits(2.0 * long_, 2.0 * (kLargest - kSizes), unit);
}

// Whether anything is cut for the joint.
bool isCut(const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    const auto isOfIt = [index](const ResolvedCut& cut) { return cut.joint == index; };
    const std::vector<ResolvedCut>& cuts = resolved.parts[joint.tenoned].cuts;
    return joint.hasTenon() || joint.form().isDry() ||
           std::any_of(cuts.begin(), cuts.end(), isOfIt);
}

}  // namespace

Sheet drawJoint(const Piece& piece,
                const ResolvedPiece& resolved,
                std::size_t joint,
                const JointStyle& style,
                const TextMetrics& metrics) {
    constexpr double kMargin = 2.0;
    Sheet sheet;
    sheet.title = resolved.joints[joint].name;
    sheet.ops.push_back(BeginGroup{{SubjectKind::Joint, joint}, sheet.title});
    std::vector<Op> pictures = resolved.joints[joint].hasTenon()
                                   ? JointPictures(piece, resolved, joint, style, metrics)
                                         .compose(piece.unit == Unit::Inch)
                                   : cutJointOps(piece, resolved, joint, style, metrics);
    sheet.ops.insert(sheet.ops.end(),
                     std::make_move_iterator(pictures.begin()),
                     std::make_move_iterator(pictures.end()));
    sheet.ops.push_back(EndGroup{});
    const Rect bounds = boundsOf(sheet.ops, metrics);
    move(sheet.ops, Vec2{kMargin, kMargin} - bounds.min);
    sheet.size = bounds.size() + Vec2{2.0 * kMargin, 2.0 * kMargin};
    return sheet;
}

Sheet jointDrawing(const Piece& piece,
                   const ResolvedPiece& resolved,
                   std::size_t joint,
                   const TextMetrics& metrics) {
    if (!isCut(resolved, joint)) {
        constexpr double kHeight = 3.5;
        Sheet sheet;
        sheet.title = resolved.joints[joint].name;
        sheet.ops.push_back(TextOp{
            {4.0, 4.0 + kHeight}, "rests: no joint is cut", kHeight, Align::Left, false, false});
        sheet.size = boundsOf(sheet.ops, metrics).max + Vec2{4.0, 4.0};
        return sheet;
    }
    JointStyle style;
    style.scale = resolved.joints[joint].hasTenon()
                      ? scaleForScreen(membersOf(resolved, joint), piece.unit)
                      : scaleThatFits(widthOfCutJoint(resolved, joint), kLargest / 2, piece.unit);
    Sheet sheet = drawJoint(piece, resolved, joint, style, metrics);
    constexpr double kHeight = 3.5;
    sheet.ops.push_back(TextOp{{2.0, sheet.size.y + kHeight},
                               "scale " + scaleText(style.scale),
                               kHeight,
                               Align::Left,
                               false,
                               false});
    sheet.size.y += 2.0 * kHeight;
    return sheet;
}

}  // namespace shoulderline
