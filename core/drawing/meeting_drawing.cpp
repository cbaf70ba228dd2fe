#include "core/drawing/meeting_drawing.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/scales.h"
#include "core/drawing/section_drawing.h"

namespace shoulderline {

namespace {

constexpr double kHand = 90.0;  // millimetres on the sheet

// The hollows of a joint in a part.
std::vector<Box> hollowsOf(const ResolvedPart& part, std::size_t joint) {
    std::vector<Box> boxes;
    for (const MortiseSolid& mortise : part.mortises) {
        if (mortise.joint == joint) {
            boxes.push_back(mortise.box);
        }
    }
    for (const ResolvedCut& cut : part.cuts) {
        if (cut.joint == joint) {
            boxes.push_back(cut.box);
        }
    }
    return boxes;
}

// What two boxes share, or what lies between them, axis by axis.
Box between(const Box& a, const Box& b) {
    Box box;
    for (int axis = 0; axis < 3; ++axis) {
        const double low = std::max(a.min[axis], b.min[axis]);
        const double high = std::min(a.max[axis], b.max[axis]);
        box.min[axis] = std::min(low, high);
        box.max[axis] = std::max(low, high);
    }
    return box;
}

double apart(const Box& a, const Box& b) {
    double squared = 0.0;
    for (int axis = 0; axis < 3; ++axis) {
        const double gap = std::max({0.0, a.min[axis] - b.max[axis], b.min[axis] - a.max[axis]});
        squared += gap * gap;
    }
    return squared;
}

std::optional<Box> placeOf(const ResolvedPart& part,
                           std::size_t joint,
                           std::optional<std::size_t> otherJoint) {
    const std::vector<Box> own = hollowsOf(part, joint);
    const std::vector<Box> others = otherJoint ? hollowsOf(part, *otherJoint) : own;
    std::optional<Box> place;
    double nearest = 0.0;
    for (const Box& a : own) {
        for (const Box& b : others) {
            if (!place || apart(a, b) < nearest) {
                place = between(a, b);
                nearest = apart(a, b);
            }
        }
    }
    return place;
}

}  // namespace

Sheet meetingDrawing(const Piece& piece,
                     const ResolvedPiece& resolved,
                     std::size_t index,
                     std::size_t joint,
                     std::optional<std::size_t> otherJoint,
                     const TextMetrics& metrics) {
    Sheet sheet;
    const ResolvedPart& part = resolved.parts[index];
    const std::optional<Box> place = placeOf(part, joint, otherJoint);
    if (!place) {
        return sheet;
    }
    PartSection section;
    section.at = section.low = section.high = place->centre().x;
    for (std::size_t i = 0; i < part.mortises.size(); ++i) {
        const Box& box = part.mortises[i].box;
        if (box.min.x < section.at && box.max.x > section.at) {
            section.mortises.push_back(i);
        }
    }
    const double wide = std::max(part.width.value.mm(), part.thickness.value.mm());
    const double scale = scaleThatFits(wide, kHand, piece.unit);
    PartStyle style;
    style.scale = scale;
    style.lines = LineGroup::Medium;
    sheet.title = part.name + ", " + letterLength(Length::mm(section.at), piece.style, true) +
                  " from its start";
    sheet.ops = sectionOps(section, piece, resolved, index, scale, style, metrics);
    const Vec3 centre = place->centre();
    const double radius =
        scale * std::hypot(place->size().y, place->size().z) / 2 + 3.0;  // clear around it
    sheet.ops.push_back(ArcOp{Vec2{centre.z, centre.y} * scale,
                              radius,
                              Angle(),
                              Angle::degrees(360.0),
                              LineRole::CutPlane});
    constexpr double kMargin = 4.0;
    constexpr double kHeight = 3.5;
    const Rect bounds = boundsOf(sheet.ops, metrics);
    move(sheet.ops, Vec2{kMargin, kMargin} - bounds.min);
    sheet.size = bounds.size() + Vec2{2 * kMargin, 2 * kMargin};
    for (const std::string& line : {sheet.title, "scale " + scaleText(scale)}) {
        sheet.ops.push_back(
            TextOp{{kMargin, sheet.size.y + kHeight}, line, kHeight, Align::Left, false, false});
        sheet.size.x = std::max(sheet.size.x, metrics.width(line, kHeight, false) + 2 * kMargin);
        sheet.size.y += 2 * kHeight;
    }
    sheet.size.y += kMargin;
    return sheet;
}

}  // namespace shoulderline
