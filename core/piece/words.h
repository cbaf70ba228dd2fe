#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/rules/size_state.h"

namespace shoulderline {

// What a part is in the piece. The trade's words; several rules go by them.
enum class Role { Post, Rail, Stretcher, Stile, Slat, Spindle, Arm, Seat, Panel, Bracket, Cleat };

// What a part is across its length: four sides; turned or planed round; eight sides.
enum class SectionForm { Square, Round, Octagonal };

// Directions as one faces the piece, and the middle. Left is -x, right +x, front -y, back +y,
// bottom -z, top +z.
enum class Side { Left, Right, Front, Back, Bottom, Top, Centre };

// Which of a left-and-right pair; None for a part that stands alone.
enum class Hand { None, Left, Right };

// How wood is cut from the log: growth rings flat, near upright, or between.
enum class Cut { Flat, Quarter, Rift };

// Kinds of joint. Blind and through mortise and tenon; a stub goes into a groove that the mortised
// part has; a loose tenon is a part of its own, let into both; a round tenon goes into a bored
// hole; a member let in goes in with its whole section, a housed one in a housing that runs across
// the face; a bridle is an open mortise; a lap takes half of each; dowelled and screwed are butts.
// Cross lap: both run on past one another, half taken out of each. In a groove: a panel's edge that
// stands dry in a groove, with room to move; tongued: a tongue along the edge of a board that
// stands so in the next. Rests: one part lies on or against the other with no
// wood joint (buttons or glue as the note says).
enum class JointKind {
    Blind,
    Through,
    Stub,
    Loose,
    Round,
    LetIn,
    Housed,
    Grooved,
    Tongued,
    Bridle,
    Lap,
    CrossLap,
    Dowelled,
    Screwed,
    Rests,
};

// What a mortise and tenon may have besides. Bare-faced: no shoulder at the back side. Twin: two
// tenons side by side in the thickness; double: one above the other in the width. A haunch fills
// the mouth out to the edge next to the end of the mortised part; a sloping one runs out to nothing
// there. Mitred: the end is cut to let a neighbour's go by. Wedges go in at the edges of a through
// tenon, or in saw kerfs. A drawbored pin's hole is offset in the tenon. A horn is length left on
// the mortised part until the glue is dry. A stopped housing ends short of the face edge. Tusked: a
// through tenon runs on far enough for a wedge through it to draw the shoulder up. The end of a
// through tenon is chamfered or rounded where it stands proud. Shortened: the tenon ends before a
// neighbour's mortise. Round ends: the mortise is left as a cutter leaves it, the tenon rounded to
// it. Plugged: the heads of screws are sunk and covered. Where a member meets the other at an
// angle, its tenon runs on in line with it, or is square to the post.
enum class JointFeature {
    BareFaced,
    Twin,
    Double,
    Haunch,
    SlopingHaunch,
    Mitred,
    WedgedOutside,
    WedgedInKerfs,
    Pinned,
    Drawbored,
    Horn,
    Stopped,
    Tusked,
    ChamferedEnd,
    RoundedEnd,
    Shortened,
    RoundEnds,
    Plugged,
    SquareToPost,
};

// The two ends of a part along its length: where its length is measured from, and the other.
enum class End { Start, Far };

// A part's six faces in its own frame: length x, width y, thickness z. The face side is z = 0, the
// face edge y = 0: the reference surfaces that all marking is done from.
enum class Face { FaceSide, BackSide, FaceEdge, BackEdge, StartEnd, FarEnd };

// What a place along an edge is measured from.
enum class Datum { Start, Middle, Far };

// How a shaped edge goes on from one of its points to the next: straight, in one arc, or in a
// smooth curve through all the points up to where the curve ends.
enum class Run { Line, Arc, Curve };

// How a bent part gets its bow: glued up of thin plies over a form, sawn out of thicker stock, or
// steamed and set on a form.
enum class BendMethod { Laminated, Sawn, Steamed };

// What the shoulders of a bent part are square to: the chord between its ends, or the curve where
// it ends.
enum class BendShoulders { Chord, Curve };

// How a member meets a face that is shaped: its shoulder cut to run with the face, or the face cut
// level for a shoulder that stays square.
enum class ShoulderFit { Follow, Level };

// Cuts that belong to no joint. A screw hole is one that the screw slips through.
enum class CutKind { Groove, Rabbet, Notch, Bore, ScrewHole };

// What a screw hole has for the screw's head: nothing, a cone that takes a flat head level with the
// face, a wider hole that takes it below the face, and that hole with a plug over the head.
enum class ScrewHead { Plain, Countersunk, Counterbored, Plugged };

// Which way a screw hole is slotted on the face it enters, for wood that moves over the screw.
enum class SlotWay { Round, Along, Across };

// How an arris is taken off: to a flat, round, to a hollow quarter round, or around an end to
// slopes that meet in a point.
enum class EasingKind { Chamfer, RoundOver, Cove, Pyramid };

// The arrises of a part: the four along it by the faces that meet there, or all four; those around
// a side; those around an end.
enum class Arris {
    FaceSideFaceEdge,
    FaceSideBackEdge,
    BackSideFaceEdge,
    BackSideBackEdge,
    AllAlong,
    AroundFaceSide,
    AroundBackSide,
    StartEnd,
    FarEnd,
};

// The sizes of a joint that a maker may state over the rule.
enum class SizeName {
    TenonThickness,
    TenonWidth,
    TenonLength,
    Projection,
    ShoulderFaceSide,
    ShoulderBackSide,
    ShoulderFaceEdge,
    ShoulderBackEdge,
    MortiseWidth,
    MortiseLength,
    MortiseDepth,
    TenonGap,
    HaunchLength,
    PinDiameter,
    PinPlace,
    DrawboreOffset,
    WedgeFlare,
    KerfDepth,
    Horn,
    Diameter,
    BoreDepth,
    StoppedBy,
    TuskThickness,
    TuskWidth,
    TuskBeyond,
    EndEasing,
    PlugDiameter,
    PlugDepth,
    TongueThickness,
    TongueLength,
    GrooveWidth,
    GrooveDepth,
    Room,
    LapDepth,
    TuskLength,
};
inline constexpr std::size_t kSizeNameCount = static_cast<std::size_t>(SizeName::TuskLength) + 1;

// The word used for each in files and on screen, lower case ("face side"); and back again.
[[nodiscard]] std::string_view wordFor(Role);
[[nodiscard]] std::string_view wordFor(SectionForm);
[[nodiscard]] std::string_view wordFor(Side);
[[nodiscard]] std::string_view wordFor(Hand);
[[nodiscard]] std::string_view wordFor(Cut);
[[nodiscard]] std::string_view wordFor(JointKind);
[[nodiscard]] std::string_view wordFor(JointFeature);
[[nodiscard]] std::string_view wordFor(End);
[[nodiscard]] std::string_view wordFor(Face);
[[nodiscard]] std::string_view wordFor(Datum);
[[nodiscard]] std::string_view wordFor(Run);
[[nodiscard]] std::string_view wordFor(BendMethod);
[[nodiscard]] std::string_view wordFor(BendShoulders);
[[nodiscard]] std::string_view wordFor(ShoulderFit);
[[nodiscard]] std::string_view wordFor(CutKind);
[[nodiscard]] std::string_view wordFor(ScrewHead);
[[nodiscard]] std::string_view wordFor(SlotWay);
[[nodiscard]] std::string_view wordFor(EasingKind);
[[nodiscard]] std::string_view wordFor(Arris);
[[nodiscard]] std::string_view wordFor(SizeName);
[[nodiscard]] std::string_view wordFor(SizeState);
template <class Word>
[[nodiscard]] std::optional<Word> fromWord(std::string_view word);
template <>
std::optional<Role> fromWord(std::string_view);
template <>
std::optional<SectionForm> fromWord(std::string_view);
template <>
std::optional<Side> fromWord(std::string_view);
template <>
std::optional<Hand> fromWord(std::string_view);
template <>
std::optional<Cut> fromWord(std::string_view);
template <>
std::optional<JointKind> fromWord(std::string_view);
template <>
std::optional<JointFeature> fromWord(std::string_view);
template <>
std::optional<Face> fromWord(std::string_view);
template <>
std::optional<Datum> fromWord(std::string_view);
template <>
std::optional<Run> fromWord(std::string_view);
template <>
std::optional<BendMethod> fromWord(std::string_view);
template <>
std::optional<BendShoulders> fromWord(std::string_view);
template <>
std::optional<ShoulderFit> fromWord(std::string_view);
template <>
std::optional<CutKind> fromWord(std::string_view);
template <>
std::optional<ScrewHead> fromWord(std::string_view);
template <>
std::optional<SlotWay> fromWord(std::string_view);
template <>
std::optional<EasingKind> fromWord(std::string_view);
template <>
std::optional<Arris> fromWord(std::string_view);
template <>
std::optional<SizeName> fromWord(std::string_view);
template <>
std::optional<SizeState> fromWord(std::string_view);

// All of a kind, in order.
template <class Word>
[[nodiscard]] std::vector<Word> allWords();

// All words of a kind, in order, for lists to choose from ("post, rail, ...").
template <class Word>
[[nodiscard]] std::string listOfWords();

}  // namespace shoulderline
