#pragma once

#include <optional>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// One hollow inside a part: a mortise, or a cut of another kind.
struct Cavity {
    std::optional<std::size_t> joint;  // that it is made for; none for a cut of its own
    const MortiseSolid* mortise = nullptr;
    const ResolvedCut* cut = nullptr;  // one of the two is there

    // Around all of it.
    [[nodiscard]] Box box() const { return mortise != nullptr ? mortise->bounds() : cut->box; }
    [[nodiscard]] Face face() const { return mortise != nullptr ? mortise->face : cut->face; }
    [[nodiscard]] bool isBox() const {
        return mortise != nullptr ? !mortise->exact : cut->kind != CutKind::Bore && !cut->exact;
    }
    [[nodiscard]] ConvexSolid solid() const {
        return mortise != nullptr ? mortise->solid() : cut->solid();
    }
};

// Two hollows inside one part that meet, or leave less wood between them than the rule book asks.
// Valid as long as the resolved piece is.
struct Meeting {
    std::size_t part = 0;
    Cavity first;
    Cavity second;
    std::optional<Box> overlap;  // around what both take, in the part's frame; none where wood is
                                 // left between
    double shared = 0.0;         // volume that both take, cubic millimetres
    double wall = 0.0;  // wood left between them at the thinnest; 0 where they meet. Millimetres
};

// Every such meeting in `part`, exact for the convex solids that the hollows are. Left out are the
// hollows of one joint, two mitred tenons that keep clear of one another, the haunch or stub that a
// groove is for, a tenon's mortise and the peg mortise that pins it, and a hollow of another kind
// that runs into one of its own.
[[nodiscard]] std::vector<Meeting> meetingsIn(const ResolvedPiece& resolved, std::size_t part);

// Those of all parts, in order.
[[nodiscard]] std::vector<Meeting> allMeetings(const ResolvedPiece& resolved);

}  // namespace shoulderline
