#include "core/resolve/screwing.h"

#include "core/joint/screws.h"
#include "core/resolve/face_there.h"
#include "core/resolve/frames.h"
#include "core/resolve/joint_places.h"

namespace shoulderline {

namespace {

// How far the wood lies in from the blank's face under a mouth in that face.
std::optional<double> woodInFrom(const ResolvedPart& part, const Box& mouth, int axis, double way) {
    Vec3 in;
    in[axis] = way;
    Vec3 across;
    across[(axis + 1) % 3] = 1.0;
    Vec3 origin;
    origin[axis] = mouth.min[axis];
    const Frame frame{origin, in, across, cross(in, across)};
    const Box there = relativeFrame(frame, Frame{}).outerBounds(mouth);
    const std::optional<WoodThere> wood = woodBehind(part, frame, there, false);
    return wood ? std::optional(wood->face) : std::nullopt;
}

}  // namespace

std::string placeScrews(std::size_t index,
                        const SizingGuide& guide,
                        const StatedSizes& stated,
                        ResolvedPiece& resolved) {
    ResolvedJoint& joint = resolved.joints[index];
    ResolvedPart& through = resolved.parts[joint.tenoned];
    ResolvedPart& into = resolved.parts[joint.mortised];
    const std::optional<Frame> relative = squared(relativeFrame(through.frame, into.frame));
    if (!relative) {
        return "the two do not lie square on one another, so no screw goes through";
    }
    ScrewTask task{
        through.bodyBox(), relative->outerBounds(into.bodyBox()), joint.has(JointFeature::Plugged)};
    if (!through.body.isBox()) {
        task.woodIn = [&through](const Box& mouth, int axis, double way) {
            return woodInFrom(through, mouth, axis, way);
        };
    }
    ScrewedButt butt = screwButt(task, guide, stated);
    const Frame toInto = relativeFrame(*relative, Frame{});
    for (const JointBore& bore : butt.clearance) {
        through.cuts.push_back(boreIn(bore, Frame{}, through, index, "screw, clearance hole"));
    }
    for (const JointBore& bore : butt.plugs) {
        through.cuts.push_back(boreIn(bore, Frame{}, through, index, "screw, plug over the head"));
    }
    for (const JointBore& bore : butt.pilot) {
        into.cuts.push_back(boreIn(bore, toInto, into, index, "screw, pilot hole"));
    }
    joint.further = std::move(butt.further);
    return std::move(butt.trouble);
}

}  // namespace shoulderline
