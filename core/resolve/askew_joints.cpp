#include <algorithm>
#include <cmath>

#include "core/resolve/end_plane.h"
#include "core/resolve/frames.h"
#include "core/resolve/joint_places.h"
#include "core/resolve/shaped_face.h"
#include "core/resolve/stations.h"

namespace shoulderline {

namespace {

// The frame of JointSolid in the piece's space, its origin where the corner of the tenoned part's
// section would lie.
Frame jointFrame(const ResolvedPart& tenoned,
                 Vec3 outOfEnd,
                 const EnteredFace& face,
                 const Station& post,
                 bool isSquareToPost) {
    Frame frame{{}, outOfEnd, tenoned.frame.y, tenoned.frame.z};
    if (isSquareToPost) {
        // Along the post and across its face, whichever lies nearest to the tenoned part's own.
        frame.x = -face.outward;
        const Vec3 along = normalised(post.direction - frame.x * dot(post.direction, frame.x));
        const Vec3 across = cross(frame.x, along);
        const bool widthRunsWithPost =
            std::abs(dot(along, tenoned.frame.y)) >= std::abs(dot(across, tenoned.frame.y));
        const auto towards = [](Vec3 v, Vec3 other) { return dot(v, other) < 0 ? -v : v; };
        frame.y = towards(widthRunsWithPost ? along : across, tenoned.frame.y);
        frame.z = towards(widthRunsWithPost ? across : along, tenoned.frame.z);
    }
    frame.origin = face.point - frame.y * (tenoned.width.value.mm() / 2) -
                   frame.z * (tenoned.thickness.value.mm() / 2);
    return frame;
}

// The face as the end lies on it: on one that is curved a shoulder runs straight.
void takeShoulder(const ResolvedPart& tenoned, End end, Vec3 outOfEnd, EnteredFace& face) {
    const std::optional<HalfSpace> plane = endPlaneOf(tenoned.body, end);
    if (!plane) {
        return;
    }
    const Vec3 middle = tenoned.bodyBox().centre();
    const Vec3 point =
        tenoned.frame.toOuter({endAt(tenoned, end, middle.y, middle.z), middle.y, middle.z});
    face.depth -= dot(point - face.point, outOfEnd);
    face.point = point;
    face.outward = -tenoned.frame.directionToOuter(plane->normal);
}

// How much wood is in line behind the whole mouth, not only behind its middle.
double depthBehind(const Frame& frame, const EnteredFace& face, const TenonedSection& section) {
    const double in = std::abs(dot(face.outward, frame.x));
    const double slip = (std::abs(dot(face.outward, frame.y)) * section.width.mm() +
                         std::abs(dot(face.outward, frame.z)) * section.thickness.mm()) /
                        (2 * in);
    return std::max(0.0, face.depth - slip);
}

struct Stretch {
    double min = 0.0;
    double max = 0.0;
};

// From `before` behind to `after` ahead of the middle of the tenoned part, whose half is `half`,
// along an axis that runs against the way they are given where `way` is below zero.
Stretch around(double half, double before, double after, double way) {
    const double scale = std::abs(way);
    return way > 0 ? Stretch{half - before / scale, half + after / scale}
                   : Stretch{half - after / scale, half + before / scale};
}

// The mortised part as seen from the end of the tenoned one: as deep as the wood is there, as long
// and as wide as its own section at the place.
Box postBox(const Frame& frame,
            const ResolvedPart& mortised,
            const Station& post,
            const EnteredFace& face,
            const TenonedSection& section,
            int postAxis) {
    const int otherAxis = 3 - postAxis;
    const auto half = [&](int axis) {
        return (axis == 1 ? section.width : section.thickness).mm() / 2;
    };
    const std::size_t across =
        std::abs(dot(face.outward, post.across[0])) < std::abs(dot(face.outward, post.across[1]))
            ? 0
            : 1;
    const double off = dot(face.point - post.middle, post.across[across]);
    const Stretch along = around(half(postAxis),
                                 post.along,
                                 mortised.shoulderLength.value.mm() - post.along,
                                 dot(post.direction, frame.axis(postAxis)));
    const Stretch aside = around(half(otherAxis),
                                 post.half[across] + off,
                                 post.half[across] - off,
                                 dot(post.across[across], frame.axis(otherAxis)));
    Box box;
    box.max.x = depthBehind(frame, face, section);
    box.min[postAxis] = along.min;
    box.max[postAxis] = along.max;
    box.min[otherAxis] = aside.min;
    box.max[otherAxis] = aside.max;
    return box;
}

}  // namespace

std::optional<OpenJoint> openAskew(const ResolvedPiece& resolved,
                                   std::size_t tenonedIndex,
                                   std::size_t mortisedIndex,
                                   End end,
                                   const JointForm& form) {
    constexpr double kSteepest = 0.2;  // of the face to the member: about 78 degrees from square
    const ResolvedPart& tenoned = resolved.parts[tenonedIndex];
    const ResolvedPart& mortised = resolved.parts[mortisedIndex];
    const Vec3 outOfEnd = end == End::Far ? tenoned.frame.x : -tenoned.frame.x;
    const Vec3 middle = tenoned.frame.toOuter(tenoned.bodyBox().centre());
    std::optional<EnteredFace> face = enteredFace(mortised, mortised.frame, middle, outOfEnd);
    if (!face || dot(face->outward, outOfEnd) > -kSteepest) {
        return std::nullopt;
    }
    if (isShaped(mortised)) {
        takeShoulder(tenoned, end, outOfEnd, *face);
    }
    const Station post = stationAt(mortised, mortised.frame, mortised.frame.toLocal(face->point).x);
    const bool isSquareToPost = form.has(JointFeature::SquareToPost);
    const Frame frame = jointFrame(tenoned, outOfEnd, *face, post, isSquareToPost);
    if (isSquareToPost) {
        const std::optional<EnteredFace> squarely =
            enteredFace(mortised, mortised.frame, face->point + face->outward, -face->outward);
        face->depth = squarely ? squarely->depth : 0.0;
    }
    OpenJoint joint;
    joint.tenoned = tenonedIndex;
    joint.mortised = mortisedIndex;
    joint.end = end;
    joint.inTenoned = relativeFrame(tenoned.frame, frame);
    joint.inMortised = relativeFrame(mortised.frame, frame);
    joint.face = HalfSpace{frame.directionToLocal(face->outward), 0.0};
    joint.face->offset = dot(joint.face->normal, frame.toLocal(face->point));
    joint.axis = longestAxis(mortised.frame.directionToLocal(-face->outward));
    joint.way = mortised.frame.directionToLocal(-face->outward)[joint.axis];
    JointTask& task = joint.task;
    task.form = form;
    task.section = {tenoned.role, tenoned.width.value, tenoned.thickness.value};
    setShapedEdges(tenoned, end, task);
    task.postAxis =
        std::abs(dot(post.direction, frame.y)) >= std::abs(dot(post.direction, frame.z)) ? 1 : 2;
    task.post = postBox(frame, mortised, post, *face, task.section, task.postAxis);
    return joint;
}

ConvexSolid fromFace(const JointSolid& solid, const HalfSpace& keeps) {
    constexpr double kAtShoulder = 1e-6;
    const ConvexSolid given = solid.exact ? *solid.exact : ConvexSolid::box(solid.box);
    const Vec3 size = solid.box.size();
    const double spare = 20 * (size.y + size.z);  // more than any face leans over the section
    Box room = solid.box;
    room.min.x -= spare;
    room.max.x += spare;
    std::optional<ConvexSolid> made = ConvexSolid::box(room).clipped(keeps);
    for (const ConvexSolid::Face& face : given.faces()) {
        const bool isShoulder = std::abs(face.plane.offset) < kAtShoulder &&
                                std::abs(face.plane.normal.x) > 1.0 - kAtShoulder;
        if (made && !isShoulder) {
            made = made->clipped(face.plane, face.surface);
        }
    }
    return made.value_or(given);
}

}  // namespace shoulderline
