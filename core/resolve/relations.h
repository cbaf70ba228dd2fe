#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/resolve/evaluation.h"
#include "core/resolve/frames.h"

namespace shoulderline {

// A part's section: what its length does not give.
struct Section {
    Size width;
    Size thickness;
};

// A part that another refers to, as it stands in the space of the referring part's assembly.
struct Neighbour {
    std::size_t stated = 0;   // index in Piece::parts
    bool isMirrored = false;  // the mirror twin of the one stated
    std::size_t number = 0;   // within its set, from 0
    Box box;
    Vec3 lengthDirection;
};

// One member where its relation puts it, in its assembly's space.
struct PlacedMember {
    Box box;
    Side faceSide = Side::Top;
    Side faceEdge = Side::Front;
    std::optional<Frame> turned;  // for a free part: its own frame; box is then in that frame
    Size length;
    Size width;
    Size thickness;
    Length gap;
};

// Where each relation puts its part. `section` is that of the part; empty comes back, with a
// trouble at `place`, where it cannot be placed. All in the space of the part's assembly.

[[nodiscard]] std::optional<PlacedMember> placeStanding(
    const Part&, const Stands&, const Section&, const Place&, Evaluation&);

// `ends` are the two parts it spans; `between`, for a set, the two that the set lies between.
[[nodiscard]] std::vector<PlacedMember> placeSpanning(
    const Part&,
    const Spans&,
    const Section&,
    const std::array<Neighbour, 2>& ends,
    const std::optional<std::array<Neighbour, 2>>& between,
    const Place&,
    Evaluation&);

// `supports` are the parts whose tops it lies on, at least one.
[[nodiscard]] std::vector<PlacedMember> placeCapping(
    const Part&,
    const Caps&,
    const Section&,
    const std::vector<Neighbour>& supports,
    const std::optional<std::array<Neighbour, 2>>& between,
    const Place&,
    Evaluation&);

[[nodiscard]] std::optional<PlacedMember> placeFree(
    const Part&, const Free&, const Section&, const Place&, Evaluation&);

// The member as a part: its frame in its assembly's space, its sizes; no body and no joints yet.
// `stated` is the index in Piece::parts.
[[nodiscard]] ResolvedPart partFrom(const Part& part,
                                    std::size_t stated,
                                    const PlacedMember& member);

// The axis along which `a` and `b` face each other, some way apart; none when they do not.
[[nodiscard]] std::optional<int> facingAxis(const Box& a, const Box& b);

}  // namespace shoulderline
