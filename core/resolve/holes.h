#pragma once

#include <string>
#include <vector>

#include "core/joint/joint_sizing.h"
#include "core/resolve/evaluation.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The axes of a cut on a face of its part: along it, across it, into the wood.
struct CutAxes {
    int along = 0;
    int across = 1;
    int into = 2;
    bool fromHigh = false;  // the face lies at the high end of `into`
};
[[nodiscard]] CutAxes axesOn(Face face);
// What places across a face, and along it, are measured from.
[[nodiscard]] Face acrossReference(Face face);
[[nodiscard]] std::string alongReference(const ResolvedPart& part, Face face);

// Where the low side of a stretch of `size` lies on an axis `whole` long, `at` from there; of one
// that is placed by its middle, that middle is meant. Millimetres.
[[nodiscard]] double lowOnAxis(Datum from, double at, double size, double whole, bool byMiddle);

// A bore or a screw hole in a blank `size` large, the wider hole for a screw's head after it; none
// where it cannot be worked out, which is a trouble at `place`. A counterbore is by rule as a plug
// over a screw is, a countersink has sides at 82 degrees to one another in a piece in inches, else
// 90 (common practice: as flat heads are sold). A slotted hole whose length is not stated is still
// round: see slotByRule().
[[nodiscard]] std::vector<ResolvedCut> workOutHole(const CutStatement& cut,
                                                   const Vec3& size,
                                                   const Place& place,
                                                   const SizingGuide& guide,
                                                   Evaluation& evaluation);

// The round hole that a bore is: as stated, or the one that its box takes up.
[[nodiscard]] ResolvedHole roundHole(const ResolvedCut& bore);

// The solid of a hole, in the frame of its part: facets within kArcSagitta, inside it. One that
// comes out goes past both faces, so that it takes all wood there.
[[nodiscard]] ConvexSolid solidOf(const ResolvedHole& hole, bool isThrough, Unit unit);

// What a screw goes into through its hole, and how that wood and the wood with the hole move over
// one another on the face of the hole.
struct ScrewedTo {
    std::size_t part = 0;      // behind the hole
    std::size_t mover = 0;     // that part or the hole's own: the wider across its grain there
    bool moverIsWidth = true;  // across its width; else across its thickness
    Vec3 way;                  // across the grain of what moves, unit length, in the piece's space
    Length distance;  // that way from the middle of what moves, where it is held, to the screw
};
// None for a hole that does not come out, or where nothing lies behind it.
[[nodiscard]] std::optional<ScrewedTo> screwedTo(const ResolvedPiece& resolved,
                                                 std::size_t part,
                                                 const ResolvedHole& hole);

// Gives each slotted hole whose length is not stated its length by rule. One with nothing behind it
// stays round, which is a trouble at its part.
void slotByRule(const Piece& piece,
                const SizingGuide& guide,
                Evaluation& evaluation,
                ResolvedPiece& resolved);

}  // namespace shoulderline
