#pragma once

#include <vector>

#include "core/drawing/sheet.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// What the joints and cuts of a part leave on its pattern, seen on `face` (face side or back edge)
// in the view's own millimetres: x along the part, y down from the blank's upper edge. Tenons by
// their outermost lines, each with its shoulder where there is wood; mortises that go in from the
// face seen or the one behind it by their true mouths there, hidden behind wood; bored ones round,
// with the cross of their centre; others by what they cover. `outline` is the body's, closed, last
// point not repeated.
[[nodiscard]] std::vector<Op> patternJoints(const ResolvedPiece& resolved,
                                            const ResolvedPart& part,
                                            Face face,
                                            const std::vector<Vec2>& outline);

}  // namespace shoulderline
