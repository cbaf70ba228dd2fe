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
    Box box;                  // around its body
    Vec3 lengthDirection;
    const ResolvedPart* part = nullptr;
    Frame frame;           // of the part, in that space
    bool isSquare = true;  // with the axes of that space
};

// One member where its relation puts it, in its assembly's space.
struct PlacedMember {
    Box box;
    Side faceSide = Side::Top;
    Side faceEdge = Side::Front;
    // For a part that lies askew: its own frame, in which the box then is, and the planes that its
    // ends are cut to.
    std::optional<Frame> turned;
    std::vector<PlaneCut> ends;
    Size length;
    Size width;
    Size thickness;
    Length gap;
};

// Where each relation puts its part. `section` is that of the part; empty comes back, with a
// trouble at `place`, where it cannot be placed. All in the space of the part's assembly.

[[nodiscard]] std::optional<PlacedMember> placeStanding(
    const Part&, const Stands&, const Section&, const Place&, Evaluation&);

// The post leaning by its rake and splay, from where it would stand upright (leaning.cpp): its
// middle line goes through the middle of its section at the level where x and y are stated, its
// face edge keeps to its side as nearly as it can, its ends are level.
[[nodiscard]] std::optional<PlacedMember> placeLeaning(const Part&,
                                                       const Stands&,
                                                       const PlacedMember& upright,
                                                       const Section&,
                                                       const Place&,
                                                       Evaluation&);

// `ends` are the two parts it spans; `between`, for a set, the two that the set lies between.
[[nodiscard]] std::vector<PlacedMember> placeSpanning(
    const Part&,
    const Spans&,
    const Section&,
    const std::array<Neighbour, 2>& ends,
    const std::optional<std::array<Neighbour, 2>>& between,
    const Place&,
    Evaluation&);

// The same for a member that runs from where it is set on the one to where it is set on the other
// (askew_spans.cpp): its ends lie on the faces that it meets, as cut, and its box reaches to their
// furthest corners. Members of a set share out the room on each of the two parts, so that they fan
// out where it differs.
[[nodiscard]] std::vector<PlacedMember> placeAngled(
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

// How far a section reaches along a direction: `width` and `thickness` are what half of each has of
// it. A round one has no corners.
[[nodiscard]] double reachOf(SectionForm form, double width, double thickness);

// A size that follows from `rule` alone.
[[nodiscard]] Size sizeFrom(RuleId rule, Length value);

// The outward side of an axis where the maker names none: right of the middle, the front, the top.
[[nodiscard]] Side outward(int axis);

// The axes of a spanning member: along it, across its width, across its thickness.
struct MemberAxes {
    int along = 0;
    int width = 2;
    int thickness = 1;
};
[[nodiscard]] MemberAxes axesOf(const Spans& spans, int along, const Neighbour& from);

// A spanning member's sizes across its length, and the sides of space that its face side and face
// edge look to; no place yet.
[[nodiscard]] PlacedMember spanningMember(const Part&,
                                          const Spans&,
                                          const Section&,
                                          const MemberAxes&);

// The axis along which `a` and `b` face each other, some way apart; none when they do not.
[[nodiscard]] std::optional<int> facingAxis(const Box& a, const Box& b);

}  // namespace shoulderline
