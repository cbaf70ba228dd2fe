#pragma once

#include <string>

#include "core/drawing/joint_sheets.h"

namespace shoulderline {

// What the drawing of a group of joints is headed by: of one joint, and of those that are drawn
// alike: "end rail into front leg, and into back leg; front rail into front leg". Where other
// drawings are of the same two parts, the members that this one is of: "back slat 2 into crest
// rail".
[[nodiscard]] std::string nameOfGroup(const ResolvedPiece& resolved, const JointGroup& group);

}  // namespace shoulderline
