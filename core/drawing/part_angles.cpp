#include "core/drawing/part_angles.h"

#include <cmath>

#include "core/drawing/part_sizing.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/joint_angles.h"

namespace shoulderline {

namespace {

constexpr double kSquare = 1e-7;       // radians
constexpr double kLeastSetBack = 0.4;  // mm; less than that no rule shows

// The end's line on a side, in EndAngles::lines.
const ShoulderLine& lineOn(const EndAngles& angles, Face side) {
    switch (side) {
        case Face::BackSide:
            return angles.lines[1];
        case Face::FaceEdge:
            return angles.lines[2];
        case Face::BackEdge:
            return angles.lines[3];
        case Face::FaceSide:
        case Face::StartEnd:
        case Face::FarEnd:
            break;
    }
    return angles.lines[0];
}

// The two corners of an end on a side: at the face edge (on an edge: the face side), and across.
std::array<Vec3, 2> cornersOn(const ResolvedPart& part, End end, Face side) {
    const Vec3 size = part.bodyBox().max;
    const bool onEdge = side == Face::FaceEdge || side == Face::BackEdge;
    std::array<Vec3, 2> corners;
    for (std::size_t i = 0; i < 2; ++i) {
        double y = onEdge ? (side == Face::BackEdge ? size.y : 0.0) : (i == 0 ? 0.0 : size.y);
        double z = onEdge ? (i == 0 ? 0.0 : size.z) : (side == Face::BackSide ? size.z : 0.0);
        corners[i] = {endAt(part, end, y, z), y, z};
    }
    return corners;
}

bool hasTenonAt(const ResolvedPart& part, End end) {
    return (end == End::Start ? part.startTenon : part.farTenon) > kLengthTolerance;
}

}  // namespace

void addAngleSizes(SizeWriter& writer) {
    const ResolvedPart& part = writer.part;
    const PartView& view = writer.view;
    // The back side and the back edge have the same angles.
    if (part.body.planes.empty() || (view.face != Face::FaceSide && view.face != Face::FaceEdge)) {
        return;
    }
    for (const End end : {End::Start, End::Far}) {
        const ShoulderLine line = lineOn(endAnglesOf(part, end), view.face);
        if (std::abs(line.fromSquare.radians()) <= kSquare) {
            continue;
        }
        const std::array<Vec3, 2> corners = cornersOn(part, end, view.face);
        const Vec2 a = view.toPlane(corners[0]);
        const Vec2 b = view.toPlane(corners[1]);
        const Vec2 low = a.x < b.x ? a : b;
        const Vec2 high = a.x < b.x ? b : a;
        if (line.setBack.mm() >= kLeastSetBack) {
            writer.along({low.x,
                          high.x,
                          low.y,
                          high.y,
                          writer.shown(line.setBack.mm()),
                          0.0,
                          "set back",
                          writer.subject});
        }
        std::vector<std::string> words{hasTenonAt(part, end) ? "shoulder" : "end",
                                       slopeText(line.fromSquare) + " from square"};
        if (!hasTenonAt(part, end)) {  // a shoulder's longer side is told with its joint
            const bool isAtReference = (corners[0].x < corners[1].x) == (end == End::Start);
            const bool onEdge = view.face == Face::FaceEdge;
            words.push_back(
                "longer at the " +
                std::string(wordFor(onEdge ? (isAtReference ? Face::FaceSide : Face::BackSide)
                                           : (isAtReference ? Face::FaceEdge : Face::BackEdge))));
        }
        writer.note({(a + b) * 0.5, std::move(words), writer.subject});
    }
}

ShoulderSpan shoulderSpan(const ResolvedPart& part) {
    const Vec3 size = part.bodyBox().max;
    ShoulderSpan span{alongFaceArris(part), false};
    const auto settle = [&](End end, double& corner, double outermost) {
        const double off = std::abs(corner - outermost);
        if (off < kLeastSetBack) {
            corner = outermost;
            return;
        }
        const auto isThere = [&](double y, double z) {
            return std::abs(endAt(part, end, y, z) - outermost) < kLengthTolerance.mm();
        };
        span.needsCorners = span.needsCorners || (!isThere(size.y, 0.0) && !isThere(0.0, size.z));
    };
    settle(End::Start, span.arris.min, 0.0);
    settle(End::Far, span.arris.max, size.x);
    return span;
}

Box footOf(const ResolvedPart& part, const TenonSolid& tenon) {
    constexpr double kOnEnd = 1e-4;
    if (!tenon.exact || part.body.planes.empty()) {
        return tenon.box;
    }
    std::optional<Box> foot;
    for (const Vec3& vertex : tenon.exact->vertices()) {
        for (const End end : {End::Start, End::Far}) {
            if (std::abs(vertex.x - endAt(part, end, vertex.y, vertex.z)) < kOnEnd) {
                foot = foot ? Box::around(*foot, {vertex, vertex}) : Box{vertex, vertex};
            }
        }
    }
    return foot.value_or(tenon.box);
}

}  // namespace shoulderline
