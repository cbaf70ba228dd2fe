#pragma once

#include <vector>

#include "core/drawing/joint_members.h"

namespace shoulderline {

// A box of a part's frame in the frame of a joint.
[[nodiscard]] Box inJoint(const ResolvedJoint& joint, const ResolvedPart& part, const Box& box);

// The way out of the wood through a face, in the part's own frame.
[[nodiscard]] Vec3 outwardOf(Face face);

// Whether a solid is a box along the axes, whatever part it is of.
[[nodiscard]] bool isBox(const Polyhedron& solid);

// A member that lies square, `shown` of it, less the rabbets and grooves of its part that run along
// all of that; `along` is the axis of the joint's frame that the part runs along.
[[nodiscard]] Polyhedron woodLessGrooves(const ResolvedJoint& joint,
                                         const ResolvedPart& part,
                                         const Box& shown,
                                         int along);

// What is let in whole is one with its part: no line runs across it where it goes in.
void takeLetIn(JointMembers& members);

// Adds to `hollows` the grooves and the like of a part that reach into what is `shown` of it, where
// they are not out of its `solid` already; only of parts that lie square.
void addOtherCuts(const ResolvedJoint& joint,
                  const ResolvedPart& part,
                  std::size_t index,
                  const Polyhedron& solid,
                  const Box& shown,
                  std::vector<Hollow>& hollows);

}  // namespace shoulderline
