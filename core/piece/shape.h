#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/piece/words.h"

namespace shoulderline {

using Statement = std::string;

// A point of a shaped edge or end, by where it is along it and how far in from where the edge of
// the blank would be. An edge runs from the part's start to its far end, an end from the face edge
// to the back edge.
struct EdgePoint {
    Datum from = Datum::Start;  // what `along` is measured from: the start of the edge (of an end:
                                // the face edge), its middle (towards its far end), or its far end
    Statement along;            // empty for zero
    Statement in;               // into the wood positive; empty for zero
    Run run = Run::Line;        // how the edge goes on to the next point
    Statement bow;  // for an arc: how far its middle stands off the straight line, out of the
                    // wood positive
    std::string extras;
    friend bool operator==(const EdgePoint&, const EdgePoint&) = default;
};

// A stated outline of one side of a part. Before its first point and after its last an edge runs
// straight on; an end runs from its first point to its last.
using ShapedEdge = std::vector<EdgePoint>;

// The sides that are not straight. Face edge, back edge and the ends shape the part as seen on its
// face side; face side and back side as seen on its face edge.
using Shape = std::map<Face, ShapedEdge>;

// A point that the middle line of a bent part runs through.
struct BowPoint {
    Datum from = Datum::Start;  // what `along` is measured from, along the chord
    Statement along;            // empty for zero
    Statement rise;             // off the chord, towards the bow; empty for zero
    std::string extras;
    friend bool operator==(const BowPoint&, const BowPoint&) = default;
};

// The bow of a bent part: its middle line over the chord between its shoulders, in one arc given by
// its rise or its radius, or in a smooth curve through stated points. One of the three decides.
// Shoulders square to the curve touch what they meet square to the chord with the one corner that
// leads; at an end that meets its neighbour askew the shoulder follows that neighbour's face.
struct Bend {
    BendMethod method = BendMethod::Laminated;
    Face hollow = Face::FaceSide;  // face side or back side: the one that is hollow
    Statement rise;
    Statement radius;
    std::vector<BowPoint> through;  // between the two ends, which lie on the chord
    Statement plies;                // their number; empty: by `ply`, or by rule
    Statement ply;                  // thickness of one; empty: what `plies` leave of the thickness
    BendShoulders shoulders = BendShoulders::Chord;
    Statement springback;  // as the maker found it: the share of the rise that is lost on
                           // release ("(26 mm - 25 mm) / (26 mm)"); empty: by rule
    std::string extras;
    friend bool operator==(const Bend&, const Bend&) = default;
};

// A cut that belongs to no joint. On a side it lies along the length and across the side, measured
// from the face edge (on an edge: from the face side); on an end, along is from the face edge and
// across from the face side. A rabbet is a groove at an edge, a notch one at both. A bore may tilt
// out of square to its face, in one direction or both; its place is then that of its mouth.
struct CutStatement {
    CutKind kind = CutKind::Groove;
    Face face = Face::FaceSide;  // cut into, or bored from
    Datum alongFrom = Datum::Start;
    Statement along;   // to its near end, from the middle to its middle; a bore or a screw hole: to
                       // its centre. Empty for zero
    Statement length;  // empty: all the way to the end; of a slotted screw hole over its ends,
                       // empty: by rule, for the movement of what it holds
    Datum acrossFrom = Datum::Start;
    Statement across;  // likewise
    Statement width;   // empty: all the way across; of a bore or a screw hole its diameter, which
                       // must be stated
    Statement
        depth;  // empty: through; of a bore that tilts, along its axis from the mouth's middle
    std::string note;
    std::string extras;
    // A bore's angle out of square to the face, as seen from the side: towards the far end (in an
    // end: the back edge) as it goes in, and away from where `across` is measured from. Empty for
    // square; within kMostTilt either way.
    Statement tiltAlong = {};
    Statement tiltAcross = {};
    // Of a screw hole.
    ScrewHead head = ScrewHead::Plain;
    SlotWay slot = SlotWay::Round;
    Statement headWidth = {};  // diameter of the countersink or counterbore; empty: by rule
    Statement headDepth = {};  // of a counterbore how far the head is sunk; empty: by rule
    friend bool operator==(const CutStatement&, const CutStatement&) = default;
};

// What is taken off an arris, or off all the arrises around a side or an end. An arris along the
// part runs with its shape; stopped ones begin and end within it and run out to nothing there.
struct EasingStatement {
    EasingKind kind = EasingKind::Chamfer;
    Arris at = Arris::FaceSideFaceEdge;
    Statement size;  // how far it reaches into the first face named (around a side or an end:
                     // into that); of a round-over or a cove its radius (a cove's centre is on the
                     // arris), of a pyramid how far it slopes down
    Statement second;     // into the other face, at an end along the length; empty: as `size`
    Statement fromStart;  // where it begins, from the start of the part; empty: runs through
    Statement fromFar;    // where it ends, from the far end; empty: runs through
    Statement runOut;     // the length that a stopped one runs out over; empty: as `size`
    std::string note;
    std::string extras;
    friend bool operator==(const EasingStatement&, const EasingStatement&) = default;
};

}  // namespace shoulderline
