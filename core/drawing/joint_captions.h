#pragma once

#include <string>
#include <vector>

#include "core/drawing/joint_sheets.h"

namespace shoulderline {

// The words over and under the drawing of a group of joints on its sheet.

// "make 2, the right drawn, the left mirrored; blind; 1 : 4", "make 2, 13 screws each; screwed".
[[nodiscard]] std::string captionOf(const ResolvedPiece& resolved,
                                    const JointGroup& group,
                                    double scale);

// What the maker says of the joints that are drawn, each once, and what was found at the bench that
// their sizes follow from.
[[nodiscard]] std::vector<std::string> makersNotes(const Piece& piece,
                                                   const ResolvedPiece& resolved,
                                                   const JointGroup& group);

// The parts whose tenons are drawn, by their stated names.
[[nodiscard]] std::vector<std::string> tenonedOf(const ResolvedPiece& resolved,
                                                 const JointGroup& group);

}  // namespace shoulderline
