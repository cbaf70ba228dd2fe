#pragma once

#include <vector>

#include "core/drawing/sheet.h"

namespace shoulderline {

// The joiner's marks, as strokes; common practice in the trade. On a drawing each stands in a group
// of its name, from which the legend of the sheet is made.
inline constexpr const char* kFaceSideGroup = "mark of the face side";
inline constexpr const char* kFaceEdgeGroup = "mark of the face edge";
inline constexpr const char* kThroughGroup = "mark of a mortise right through";
inline constexpr const char* kBlindGroup = "mark of a blind mortise";
inline constexpr const char* kGrainGroup = "the grain";
[[nodiscard]] std::vector<Op> inGroup(const char* name,
                                      const Subject& subject,
                                      std::vector<Op> mark);

// On the face side: a loop whose tail runs off at the face edge. `at` is on the face edge's line,
// with the face below it.
[[nodiscard]] Stroke faceSideMark(Vec2 at, double height);
// On the face edge: a V with its point on the arris that it shares with the face side. `at` is the
// point; `upwards` when the face edge lies above it on the sheet.
[[nodiscard]] Stroke faceEdgeMark(Vec2 at, double height, bool upwards);

// The dot that a leader ends in on a face.
[[nodiscard]] Fill leaderDot(Vec2 centre);

// Which way the grain runs: a level line with an arrow at each end. `at` is its middle.
[[nodiscard]] std::vector<Op> grainArrow(Vec2 at, double length);

// The diagonals of a mouth: crossed where the mortise goes through, one where it is blind.
[[nodiscard]] std::vector<Op> mouthDiagonals(Vec2 min, Vec2 max, bool isThrough);

// The sign that tells how views are arranged (ISO 5456-2): a truncated cone in two views, `height`
// that of the lettering. `at` is the middle of the sign's left side; it is 7 heights wide.
[[nodiscard]] std::vector<Op> projectionSymbol(Vec2 at, double height, bool isThirdAngle);

}  // namespace shoulderline
