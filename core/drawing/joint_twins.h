#pragma once

#include <vector>

#include "core/drawing/joint_sheets.h"
#include "core/drawing/text_metrics.h"

namespace shoulderline {

// The groups of joints with those that are drawn alike, line for line and figure for figure, taken
// together: the front rail's into the front post and the back rail's into the back post. Marks of
// face sides may differ, as the settings tell what each is gauged from.
[[nodiscard]] std::vector<JointGroup> drawnOnce(const Piece& piece,
                                                const ResolvedPiece& resolved,
                                                std::vector<JointGroup> groups,
                                                const TextMetrics& metrics);

// The settings of a group in words; of others that are drawn alike only what differs, each under
// its name.
[[nodiscard]] std::vector<std::string> linesWithTwins(const Piece& piece,
                                                      const ResolvedPiece& resolved,
                                                      const JointGroup& group);
// The settings of all of them.
[[nodiscard]] std::vector<SetUp> setUpsWithTwins(const ResolvedPiece& resolved,
                                                 const JointGroup& group);

// "front rail into front post"; of one between boards of a set "head board into the next head
// board".
[[nodiscard]] std::string nameOfJoint(const ResolvedPiece& resolved, std::size_t joint);

}  // namespace shoulderline
