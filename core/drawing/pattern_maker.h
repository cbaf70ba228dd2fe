#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheets.h"

namespace shoulderline {

// One outline of a part that is not its blank, and the plane that it lies in: x along the part,
// `across` the axis of its frame that runs down the sheet.
struct PatternPlane {
    const Outline* outline = nullptr;  // in the part
    Vec2 blank;
    int across = 1;
    Face seenOn = Face::FaceSide;
};
// Over the face side, and over the back edge.
[[nodiscard]] std::vector<PatternPlane> patternPlanes(const ResolvedPart& part);

// Where title and arcs stand: over and under the drawing, at its right, or at its left under the
// names of rows.
enum class PatternWordsPlace { Around, Beside, Margin };

// How a pattern's words are set out round it.
struct PatternLayout {
    bool areNamesOver = false;  // the names of rows of figures over them, not before them
    PatternWordsPlace words = PatternWordsPlace::Around;
    bool hasLength = true;  // a dimension of its length, which its last station tells too
    double widest = 1e6;    // that a line of words may be; millimetres
};

struct PatternWords {
    std::string title;
    std::string datum;  // the straight edge of the blank that offsets are taken from
    bool withJoints = true;
    std::vector<std::string> notes = {};
};

// The pattern at full size: blank, outline, middle lines, joints, offsets at even stations, sizes
// of the blank, arcs with radius and centre.
[[nodiscard]] Sheet makePattern(const Piece&,
                                const ResolvedPiece&,
                                const ResolvedPart&,
                                const PatternPlane&,
                                const PatternLayout&,
                                const PatternWords&,
                                const TextMetrics&);

}  // namespace shoulderline
