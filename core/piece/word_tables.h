#pragma once

#include <array>
#include <string_view>

#include "core/piece/words.h"

// The words as files and screens have them, for words.cpp alone.
namespace shoulderline {

template <class Word>
struct Entry {
    Word word;
    std::string_view text;
};

template <class Word>
struct Table;

template <>
struct Table<Role> {
    static constexpr std::array<Entry<Role>, 11> entries{{{Role::Post, "post"},
                                                          {Role::Rail, "rail"},
                                                          {Role::Stretcher, "stretcher"},
                                                          {Role::Stile, "stile"},
                                                          {Role::Slat, "slat"},
                                                          {Role::Spindle, "spindle"},
                                                          {Role::Arm, "arm"},
                                                          {Role::Seat, "seat"},
                                                          {Role::Panel, "panel"},
                                                          {Role::Bracket, "bracket"},
                                                          {Role::Cleat, "cleat"}}};
};

template <>
struct Table<SectionForm> {
    static constexpr std::array<Entry<SectionForm>, 3> entries{
        {{SectionForm::Square, "square"},
         {SectionForm::Round, "round"},
         {SectionForm::Octagonal, "octagonal"}}};
};

template <>
struct Table<Side> {
    static constexpr std::array<Entry<Side>, 7> entries{{{Side::Left, "left"},
                                                         {Side::Right, "right"},
                                                         {Side::Front, "front"},
                                                         {Side::Back, "back"},
                                                         {Side::Bottom, "bottom"},
                                                         {Side::Top, "top"},
                                                         {Side::Centre, "centre"}}};
};

template <>
struct Table<Hand> {
    static constexpr std::array<Entry<Hand>, 3> entries{
        {{Hand::None, "none"}, {Hand::Left, "left"}, {Hand::Right, "right"}}};
};

template <>
struct Table<Cut> {
    static constexpr std::array<Entry<Cut>, 3> entries{
        {{Cut::Flat, "flat"}, {Cut::Quarter, "quarter"}, {Cut::Rift, "rift"}}};
};

template <>
struct Table<JointKind> {
    static constexpr std::array<Entry<JointKind>, 15> entries{{{JointKind::Blind, "blind"},
                                                               {JointKind::Through, "through"},
                                                               {JointKind::Stub, "stub"},
                                                               {JointKind::Loose, "loose"},
                                                               {JointKind::Round, "round"},
                                                               {JointKind::LetIn, "let in"},
                                                               {JointKind::Housed, "housed"},
                                                               {JointKind::Grooved, "in a groove"},
                                                               {JointKind::Tongued, "tongued"},
                                                               {JointKind::Bridle, "bridle"},
                                                               {JointKind::Lap, "lap"},
                                                               {JointKind::CrossLap, "cross lap"},
                                                               {JointKind::Dowelled, "dowelled"},
                                                               {JointKind::Screwed, "screwed"},
                                                               {JointKind::Rests, "rests"}}};
};

template <>
struct Table<JointFeature> {
    static constexpr std::array<Entry<JointFeature>, 19> entries{
        {{JointFeature::BareFaced, "bare-faced"},
         {JointFeature::Twin, "twin"},
         {JointFeature::Double, "double"},
         {JointFeature::Haunch, "haunch"},
         {JointFeature::SlopingHaunch, "sloping haunch"},
         {JointFeature::Mitred, "mitred"},
         {JointFeature::WedgedOutside, "wedged outside"},
         {JointFeature::WedgedInKerfs, "wedged in kerfs"},
         {JointFeature::Pinned, "pinned"},
         {JointFeature::Drawbored, "drawbored"},
         {JointFeature::Horn, "horn"},
         {JointFeature::Stopped, "stopped"},
         {JointFeature::Tusked, "tusked"},
         {JointFeature::ChamferedEnd, "chamfered end"},
         {JointFeature::RoundedEnd, "rounded end"},
         {JointFeature::Shortened, "shortened"},
         {JointFeature::RoundEnds, "round ends"},
         {JointFeature::Plugged, "plugged"},
         {JointFeature::SquareToPost, "square to the post"}}};
};

template <>
struct Table<End> {
    static constexpr std::array<Entry<End>, 2> entries{{{End::Start, "start"}, {End::Far, "far"}}};
};

template <>
struct Table<Face> {
    static constexpr std::array<Entry<Face>, 6> entries{{{Face::FaceSide, "face side"},
                                                         {Face::BackSide, "back side"},
                                                         {Face::FaceEdge, "face edge"},
                                                         {Face::BackEdge, "back edge"},
                                                         {Face::StartEnd, "start end"},
                                                         {Face::FarEnd, "far end"}}};
};

template <>
struct Table<Datum> {
    static constexpr std::array<Entry<Datum>, 3> entries{
        {{Datum::Start, "start"}, {Datum::Middle, "middle"}, {Datum::Far, "far"}}};
};

template <>
struct Table<Run> {
    static constexpr std::array<Entry<Run>, 3> entries{
        {{Run::Line, "line"}, {Run::Arc, "arc"}, {Run::Curve, "curve"}}};
};

template <>
struct Table<BendMethod> {
    static constexpr std::array<Entry<BendMethod>, 3> entries{{{BendMethod::Laminated, "laminated"},
                                                               {BendMethod::Sawn, "sawn"},
                                                               {BendMethod::Steamed, "steamed"}}};
};

template <>
struct Table<BendShoulders> {
    static constexpr std::array<Entry<BendShoulders>, 2> entries{
        {{BendShoulders::Chord, "chord"}, {BendShoulders::Curve, "curve"}}};
};

template <>
struct Table<ShoulderFit> {
    static constexpr std::array<Entry<ShoulderFit>, 2> entries{
        {{ShoulderFit::Follow, "follow"}, {ShoulderFit::Level, "level"}}};
};

template <>
struct Table<EasingKind> {
    static constexpr std::array<Entry<EasingKind>, 4> entries{
        {{EasingKind::Chamfer, "chamfer"},
         {EasingKind::RoundOver, "round-over"},
         {EasingKind::Cove, "cove"},
         {EasingKind::Pyramid, "pyramid"}}};
};

template <>
struct Table<Arris> {
    static constexpr std::array<Entry<Arris>, 9> entries{
        {{Arris::FaceSideFaceEdge, "face side and face edge"},
         {Arris::FaceSideBackEdge, "face side and back edge"},
         {Arris::BackSideFaceEdge, "back side and face edge"},
         {Arris::BackSideBackEdge, "back side and back edge"},
         {Arris::AllAlong, "all along"},
         {Arris::AroundFaceSide, "around the face side"},
         {Arris::AroundBackSide, "around the back side"},
         {Arris::StartEnd, "start end"},
         {Arris::FarEnd, "far end"}}};
};

template <>
struct Table<CutKind> {
    static constexpr std::array<Entry<CutKind>, 5> entries{{{CutKind::Groove, "groove"},
                                                            {CutKind::Rabbet, "rabbet"},
                                                            {CutKind::Notch, "notch"},
                                                            {CutKind::Bore, "bore"},
                                                            {CutKind::ScrewHole, "screw hole"}}};
};

template <>
struct Table<ScrewHead> {
    static constexpr std::array<Entry<ScrewHead>, 4> entries{
        {{ScrewHead::Plain, "plain"},
         {ScrewHead::Countersunk, "countersunk"},
         {ScrewHead::Counterbored, "counterbored"},
         {ScrewHead::Plugged, "plugged"}}};
};

template <>
struct Table<SlotWay> {
    static constexpr std::array<Entry<SlotWay>, 3> entries{
        {{SlotWay::Round, "round"}, {SlotWay::Along, "along"}, {SlotWay::Across, "across"}}};
};

template <>
struct Table<SizeName> {
    static constexpr std::array<Entry<SizeName>, kSizeNameCount> entries{
        {{SizeName::TenonThickness, "tenon thickness"},
         {SizeName::TenonWidth, "tenon width"},
         {SizeName::TenonLength, "tenon length"},
         {SizeName::Projection, "projection"},
         {SizeName::ShoulderFaceSide, "shoulder at face side"},
         {SizeName::ShoulderBackSide, "shoulder at back side"},
         {SizeName::ShoulderFaceEdge, "shoulder at face edge"},
         {SizeName::ShoulderBackEdge, "shoulder at back edge"},
         {SizeName::MortiseWidth, "mortise width"},
         {SizeName::MortiseLength, "mortise length"},
         {SizeName::MortiseDepth, "mortise depth"},
         {SizeName::TenonGap, "gap between tenons"},
         {SizeName::HaunchLength, "haunch length"},
         {SizeName::PinDiameter, "pin diameter"},
         {SizeName::PinPlace, "pin from shoulder"},
         {SizeName::DrawboreOffset, "drawbore offset"},
         {SizeName::WedgeFlare, "wedge flare"},
         {SizeName::KerfDepth, "kerf depth"},
         {SizeName::Horn, "horn"},
         {SizeName::Diameter, "diameter"},
         {SizeName::BoreDepth, "bore depth"},
         {SizeName::StoppedBy, "stopped short by"},
         {SizeName::TuskThickness, "wedge thickness"},
         {SizeName::TuskWidth, "wedge width"},
         {SizeName::TuskBeyond, "wood beyond the wedge"},
         {SizeName::EndEasing, "end eased by"},
         {SizeName::PlugDiameter, "plug diameter"},
         {SizeName::PlugDepth, "plug depth"},
         {SizeName::TongueThickness, "tongue thickness"},
         {SizeName::TongueLength, "tongue length"},
         {SizeName::GrooveWidth, "groove width"},
         {SizeName::GrooveDepth, "groove depth"},
         {SizeName::Room, "room to move"},
         {SizeName::LapDepth, "lap depth"},
         {SizeName::TuskLength, "wedge length"}}};
};

template <>
struct Table<SizeState> {
    static constexpr std::array<Entry<SizeState>, 4> entries{
        {{SizeState::ByRule, "by rule"},
         {SizeState::RulePlusOffset, "by rule with offset"},
         {SizeState::Stated, "stated"},
         {SizeState::AsFound, "as found"}}};
};

}  // namespace shoulderline
