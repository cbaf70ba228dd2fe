#include "core/resolve/shaping_order.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/frames.h"
#include "core/resolve/joint_angles.h"

namespace shoulderline {

namespace {

// mm: what the spindle of a drill press travels at least (common practice). A bit goes on through
// wood that is sawn off later; a chisel is not driven through more of it than the mortise is deep.
constexpr double kBitReach = 60.0;

}  // namespace

bool isSawnToShape(const ResolvedPart& part) {
    const Box blank = part.bodyBox();
    const bool isSawn = part.body.face != Outline::rectangle(blank.max.x, blank.max.y) ||
                        part.body.edge.has_value();
    return isSawn && !part.bend && part.section == SectionForm::Square;
}

bool isSawnAway(const ResolvedPart& part, Face face) {
    const Box blank = part.bodyBox();
    return inwardOf(face).axis == 2
               ? part.body.edge.has_value()
               : part.body.face != Outline::rectangle(blank.max.x, blank.max.y);
}

bool isCutBeforeShaping(const ResolvedPiece& resolved, std::size_t joint, std::size_t part) {
    const ResolvedJoint& made = resolved.joints[joint];
    if (!isSawnToShape(resolved.parts[part]) || part != made.mortised) {
        return isSawnToShape(resolved.parts[part]);
    }
    return made.kind == JointKind::Round
               ? (made.mortise.below + made.mortise.depth.value).mm() < kBitReach
               : made.mortise.below <= made.mortise.depth.value;
}

bool isStoppedAlongTool(const ResolvedPiece& resolved,
                        std::size_t part,
                        const MortiseSolid& mortise) {
    const ResolvedJoint& joint = resolved.joints[mortise.joint];
    const bool isChoppedInFace =
        mortise.exact && !mortise.isHaunch && !mortise.isThrough && part == joint.mortised;
    if (!isChoppedInFace || !anglesOf(resolved, joint).lean.isTilted()) {
        return false;
    }
    const AxisWay inward = inwardOf(mortise.face);
    const Box mouth = mouthOf(mortise);
    const double slack = kLengthTolerance.mm();
    const bool isFlat = mouth.size()[inward.axis] < slack;
    const double blank = inward.way > 0.0 ? 0.0 : resolved.parts[part].bodyBox().max[inward.axis];
    const bool isThere = std::abs(mouth.centre()[inward.axis] - blank) < slack;
    return !isFlat || isThere || !isCutBeforeShaping(resolved, mortise.joint, part);
}

void layOnShape(SetUp& setUp, const ResolvedPart& part, const MortiseSolid& mortise) {
    setUp.afterShaping = true;
    const int into = inwardOf(mortise.face).axis;
    const Outline* outline = into == 1                                 ? &part.body.face
                             : into == 2 && part.body.edge.has_value() ? &*part.body.edge
                                                                       : nullptr;
    if (outline == nullptr) {
        return;
    }
    const Box mouth = mouthOf(mortise);
    const bool isLow = inwardOf(mortise.face).way > 0.0;
    const std::size_t count = outline->vertices.size();
    for (std::size_t i = 0; i < count; ++i) {
        const OutlineVertex& from = outline->vertices[i];
        const Vec2 to = outline->vertices[(i + 1) % count].point;
        // Counter-clockwise the low side runs towards the far end, the high one back.
        const bool isOnSide = isLow ? to.x > from.point.x : to.x < from.point.x;
        const double low = std::min(from.point.x, to.x);
        const double high = std::max(from.point.x, to.x);
        const double slack = kLengthTolerance.mm();
        if (isOnSide && from.bulge == 0.0 && mouth.min.x > low - slack &&
            mouth.max.x < high + slack) {
            setUp.lieFrom = Length::mm(low);
            setUp.lieTo = Length::mm(high);
        }
    }
}

}  // namespace shoulderline
