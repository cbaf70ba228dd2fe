#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "core/measure/length.h"

namespace shoulderline {

// Every rule that the planner goes by. The figures, sources and sentences are rows of the rule
// book (resources/rules/rule_book.json); the ids there are those of ruleIdText().
enum class RuleId {
    Stated,                 // the maker stated the size
    StatedOver,             // ... over what the rule would give
    StatedOffset,           // the maker stated an offset to the rule
    AsFound,                // taken at the bench
    StockThickness,         // the part is as thick as its stock
    StockMeasured,          // ... as its stock measures
    PartFound,              // a part's width or thickness, taken at the bench
    PartPlaced,             // follows from where the parts are placed
    ShoulderToShoulder,     // the clear distance between the parts that a member spans
    TenonThicknessShare,    // tenon thickness as a share of the tenoned part's thickness
    SlatTenonShoulder,      // cheek shoulder of a slat's tenon
    ChiselNearest,          // taken to a chisel on the rack
    TenonCentred,           // the tenon stands in the middle of its part's thickness
    BareFaced,              // a bare-faced tenon has no shoulder at the back side
    ShoulderLeft,           // a shoulder: what the tenon and the shoulder across from it leave
    TenonBetweenShoulders,  // the tenon is what two stated shoulders leave
    EdgeShoulder,           // shoulder at each edge of a rail's tenon
    EdgeShoulderShare,      // ... at most this share of the part's width
    TenonWidthLeft,         // tenon width: what the edge shoulders leave
    TenonWidthRatio,        // tenon width at most this many times its thickness
    TenonWidthShareLeast,   // ... but at least this share of the part's width
    TenonLengthShare,       // blind tenon length as a share of what the mortised part holds
    SlatTenonLength,        // blind tenon length of a slat or spindle
    TenonLengthRatioLeast,  // tenon length at least this many times its thickness
    MortiseFloorLeast,      // wood left under a blind mortise
    MortiseDepthExtra,      // mortise deeper than its tenon, for glue and chips
    MortiseAsTenon,         // the mouth is as wide and long as the tenon
    MouthTakesTenon,        // the mortise is as large as the tenon that goes into it
    MortiseWallLeast,       // wood beside a mortise
    MortiseEndLeast,        // wood between a mortise and the end of its part
    MortiseGapLeast,        // wood between two mortises inside a part
    MortiseThrough,         // a through mortise goes through the whole part
    ThroughProjection,      // how far a through tenon stands proud
    ThroughLength,          // through tenon length: the part it passes and its projection
    ShoulderLeast,          // smallest shoulder worth cutting
    MouthOnFace,            // the mouth lies whole on the face it enters
    SizeOnGrid,             // sizes that rules produce are taken to the maker's grid
    TenonTwinShare,         // each of twin tenons, as a share of the part's thickness
    TenonTwinGap,           // gap between twin tenons
    TenonDoubleShare,       // each of double tenons, as a share of what the edge shoulders leave
    TenonDoubleGap,         // gap between double tenons
    HaunchWidthShare,       // width of a haunch as a share of the part
    HaunchLength,           // how far a haunch goes in
    HaunchFillsGroove,      // a haunch fills the groove that it meets
    MitreGap,               // air between the mitred ends of two tenons
    MitreLength,            // a mitred tenon runs to the far cheek of its neighbour
    PinShare,               // pin diameter as a share of the tenoned part's thickness
    PinSize,                // pin diameter to the nearest size of peg
    PinPlace,               // pin centre from the shoulder: its diameter and this
    PinTwoFrom,             // two pins from this tenon width on
    DrawboreOffset,         // how much nearer the shoulder a drawbored tenon's hole is
    WedgeFlare,         // widening of a wedged mortise at each end of its far mouth, to its depth
    KerfPlace,          // saw kerf for a wedge, from the edge of the tenon
    KerfDepth,          // depth of the kerf as a share of the tenon
    HornLength,         // length left on for a horn
    StubLength,         // a stub tenon is as long as its groove is deep
    GrooveTakesStub,    // a stub tenon goes into a groove
    RoundShare,         // round tenon diameter as a share of the part's thickness
    LetInDepth,         // how far a whole section is let in
    WholeSection,       // let in with its whole section
    StoppedBy,          // a stopped housing ends short of the face edge by
    BridleThird,        // a bridle's tenon, as a share of the part
    LapHalf,            // a lap takes this share of each part
    FlushThrough,       // runs through and ends flush
    FlushEnd,           // ... so that nothing stands proud
    NoShoulder,         // as wide or thick as its part, so that there is no shoulder
    DowelShare,         // dowel diameter as a share of the part's thickness
    DowelDepth,         // how far a dowel goes into each part, in diameters
    ScrewDiameter,      // screw diameter as a share of the part that it holds
    ScrewDepth,         // how far a screw's thread goes into the part behind, in diameters
    TuskThickness,      // thickness of a tusk tenon's wedge as a share of the tenon's width
    TuskWidth,          // width of that wedge to its thickness
    TuskInside,         // how far inside the outer face its slot begins
    TuskBeyond,         // wood beyond the slot to the wedge's thickness
    TuskTaper,          // taper of the wedge
    TuskProjection,     // how far a tusk tenon stands out: what its wedge needs
    TuskLength,         // how far the wedge stands out of its tenon at each side
    TongueLaps,         // a tongue is as long as two boards lap over one another
    TongueRoom,         // a board's groove is deeper than its tongue by the room
    SettleMoveMost,     // how far a rail may be moved to pass another's mortise
    EndEased,           // chamfer or rounding of a through tenon's end
    ShortOfNeighbour,   // a shortened tenon ends before its neighbour's mortise
    PlugDiameter,       // a plug's diameter to its screw's
    PlugDepth,          // how deep a plug sits to its diameter
    GrooveWidth,        // a panel's groove as a share of the grooved part
    GrooveDepth,        // depth of a panel's groove to its width
    GrooveHolds,        // a panel's groove holds a tongue as long as the room is wide
    TongueFills,        // the tongue is as thick as its groove is wide
    PanelRoom,          // room for a panel at each edge as a share of its width
    PanelEndRoom,       // room for a panel at its ends
    ClearsShape,        // a tenon's shoulder is measured from a shaped edge
    ClearsGroove,       // a tenon leaves the depth of a groove along its part's edge
    CrossHalf,          // a cross lap takes this share of the depth that both share
    FaceAsItIs,         // a mortise is measured from the face as it is
    ShoulderPastFace,   // a shoulder that follows a shaped face runs past the mouth
    ReferenceAsItIs,    // ... and across it from the reference face as it is
    ShoulderMeetsFace,  // the shoulder lies on the face
    EasingStops,        // an eased arris stops short of what joins it there
    MovementPanelRoom,  // room that a panel needs to swell
    MovementPanelHeld,  // tongue left in its groove at the driest
    SetUpMortiser,      // set-ups, each with its caution
    SetUpChisel,
    SetUpRouter,
    SetUpBit,
    SetUpSaw,
    SetUpShoulderPlane,
    SetUpPlough,
    SetUpTiltedBit,
    SetUpEasingRouter,
    SetUpEasingPlane,
    SetUpParing,
    SetUpRoundTenon,
    SetUpHousing,
    SetUpRabbet,
    SetUpEndMortise,     // longest part that stands on end under a hollow chisel
    SetUpLongSaw,        // longest part that stands on end at the saw bench
    ScrewSinkWidth,      // diameter of a countersink to its screw's
    ScrewUnderHead,      // wood left under a sunk head
    SlotRoom,            // room in a slotted hole to how far it is from where the wood is held
    SlotTakesMovement,   // a slotted hole takes the movement of what it holds
    BendArc,             // an arc over its chord
    BendAsDrawn,         // a curve through stated points
    BendPlies,           // plies share the thickness
    BendPlyComfort,      // what plies the rule chooses
    BendPlyLeast,        // a ply bent tighter may break
    BendPlyRupture,      // a ply bent tighter breaks
    BendSpringback,      // how much tighter the form is bent
    BendMeasured,        // springback as the maker found it
    BendBlank,           // the blank along the curve
    BendKerf,            // kerf of sawn plies
    BendPlaning,         // planing loss of plies
    BendLengthExtra,     // length left on
    BendWidthExtra,      // width left on
    BendClampGap,        // clamps along the form
    BendClampHours,      // time in the form
    BendGlue,            // glue that does not creep
    BendTenonInBlank,    // a straight tenon in a curved blank
    BendShoulderOpen,    // a shoulder square to a curve
    BendShortGrain,      // short grain of a sawn curve
    BendSteamLeast,      // steamed wood
    BendInStock,         // a sawn curve in its stock
    SwingReach,          // a station in reach
    SwingClear,          // clear through the swing
    SwingBearing,        // bearing of the rest bar
    SwingSpacer,         // room for the spacers
    SwingLean,           // angle of a back, against published ones
    SeatSlope,           // how far a seat slopes down to its back
    SeatToBack,          // the angle between a seat and what one leans on
    GapHead,             // gaps that a small child's head can be caught in
    GrainRunOut,         // slope of a tenon to the grain of its part
    JointWanted,         // parts that touch are joined
    PartsClear,          // parts do not run through one another
    StockYields,         // stock that can yield the part
    FacesSquarely,       // a member meets the part it joins square
    MovementTenonHeld,   // a tenon so wide that the mortise should not hold it whole
    MovementFixedApart,  // movement between places that hold a part across its grain
    MovementGapLeast,    // gap left between the members of a set at the dampest
    StrengthWorst,       // the joint that is worked hardest
    PieceResolves,       // everything stated can be worked out
    MeasureLimits,       // a measure keeps within the limits set for it
};
inline constexpr std::size_t kRuleCount = static_cast<std::size_t>(RuleId::MeasureLimits) + 1;

// The id of a rule as the rule book and findings give it ("tenon.thickness.share"). Never reused.
[[nodiscard]] std::string_view ruleIdText(RuleId);
[[nodiscard]] std::optional<RuleId> ruleIdFromText(std::string_view);

// What a rule's figure is: a length, or a plain ratio; or nothing (the rule is a sentence only).
enum class RuleUnit { None, Length, Ratio };

// How well founded a rule is.
enum class Grade { Published, CommonPractice, OurChoice };

// One row of the rule book. `value` is the default; [low, high] the range that sources give, where
// they differ or where the rule is a limit on one side. Lengths are in millimetres.
struct Rule {
    std::string id;
    RuleUnit unit = RuleUnit::None;
    double value = 0.0;
    std::optional<double> low;
    std::optional<double> high;
    Grade grade = Grade::OurChoice;
    std::string subject;   // what it is about, for lists ("tenon thickness to stock")
    std::string sentence;  // the reason shown; {a}, {b}, {value} are lengths, {share} the figure
    std::string source;
    bool isHouseRule = false;

    [[nodiscard]] Length length() const { return Length::mm(value); }
};

}  // namespace shoulderline
