#pragma once

#include "core/joint/joint_sizing.h"
#include "core/resolve/evaluation.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A joint between two parts whose sizes are being worked out: who they are, and how the frame of
// JointSolid at the end of the tenoned part lies in each.
struct OpenJoint {
    std::size_t tenoned = 0;  // indices in ResolvedPiece::parts
    std::size_t mortised = 0;
    End end = End::Start;
    JointTask task;
    StatedSizes stated;
    SizedJoint sized;
    Frame inTenoned;   // the end's frame in the tenoned part's
    Frame inMortised;  // and in the mortised part's; square to it
    int axis = 0;      // of the mortised part along which it is entered, most nearly, and which way
    double way = 1.0;
    // Of a joint that does not meet square: the mortised part's face in the end's frame, its wood
    // within.
    std::optional<HalfSpace> face;
    // Where the shoulder is not square to its part (square to a curve, or along a shaped face): its
    // plane in the end's frame, the tenon within.
    std::optional<HalfSpace> shoulder;
    // The face of the mortised part's blank in the end's frame: before the shoulder, where that
    // lies on a face that is shaped.
    Length blankFace = {};
    Length referenceIn = {};  // see Mortise
};

// The joint as a task: where the parts lie to one another. Empty when they do not meet.
[[nodiscard]] std::optional<OpenJoint> openJoint(const ResolvedPiece& resolved,
                                                 std::size_t tenoned,
                                                 std::size_t mortised,
                                                 End end,
                                                 const JointForm& form);

// Fills in how far the edges of the tenoned part are shaped in at its end.
void setShapedEdges(const ResolvedPart& tenoned, End end, JointTask& task);

// Takes the mouth where it was sized and sets the task to the wood as it is there: the face that is
// shaped or cut away, the far side that is. `pieces`: of the mortised part's body.
void takeFaceAsItIs(OpenJoint& joint, const ResolvedPart& mortised, const SizingGuide& guide);

// How far shortened tenons may run: fills JointTask::neighbourBefore with the way to what lies in
// theirs, another joint's mortise as sized or a cut. Both members of a pair are treated alike.
void findNeighboursBefore(std::span<OpenJoint> joints,
                          const ResolvedPiece& resolved,
                          const SizingGuide& guide);
// The same where they do not lie square to one another (askew_joints.cpp): the joint's frame lies
// in line with the tenoned part, or square to the mortised one where the maker says so; its origin
// such that the tenoned part's middle line goes through the middle of the section. JointTask::post
// is then as deep as the wood is behind the whole mouth.
[[nodiscard]] std::optional<OpenJoint> openAskew(const ResolvedPiece& resolved,
                                                 std::size_t tenoned,
                                                 std::size_t mortised,
                                                 End end,
                                                 const JointForm& form);

// `solid`, which begins at the shoulder x = 0, beginning on the face of `keeps` instead, and on the
// side of it that `keeps` holds.
[[nodiscard]] ConvexSolid fromFace(const JointSolid& solid, const HalfSpace& keeps);

// The far cheeks that mitred tenons run to: fills JointTask::neighbourBeyond of those that meet a
// mitred neighbour, and gives for each joint the half-spaces of its mortised part that its
// tenon keeps to. Both members of a pair are treated alike.
struct MitreCut {
    std::size_t joint = 0;  // position in `joints`
    HalfSpace keeps;        // in the mortised part's frame
};
[[nodiscard]] std::vector<MitreCut> mitreEnds(std::span<OpenJoint> joints,
                                              const SizingGuide& guide);

// Cuts a shaped face level under the shoulder of a joint that lies in from the blank's face there,
// right across the mortised part.
void cutLevel(const OpenJoint& joint, ResolvedPiece& resolved);

// Puts a sized joint into both parts and into ResolvedPiece::joints. `mitre`, where there is one,
// takes the corner off its tenon.
void placeJoint(const OpenJoint& joint,
                const SizingGuide& guide,
                const std::vector<HalfSpace>& mitres,
                ResolvedPiece& resolved);

// The frame of a joint between two parts that lie against one another: in the middle of what they
// share, x from the first into the second; the first's own frame where they do not touch flat.
[[nodiscard]] Frame restingFrame(const ResolvedPart& first, const ResolvedPart& second);

// A bore of a joint as a cut of `part`; `inPart` is the frame of the bore in the part's.
[[nodiscard]] ResolvedCut boreIn(const JointBore& bore,
                                 const Frame& inPart,
                                 const ResolvedPart& part,
                                 std::size_t joint,
                                 std::string note);

}  // namespace shoulderline
