#pragma once

#include <optional>

#include "core/measure/result.h"
#include "core/timber/species.h"

namespace shoulderline {

// How the growth rings lie to a direction across the grain: along them, through them, or between.
enum class RingDirection { Tangential, Radial, Between };

// Change in that direction for 1 % of moisture content, as a fraction of the size, between 6 and
// 14 %; none where the species has no published figure. Between: the mean of both, as for rings at
// 45 degrees by C = CT cos2 + CR sin2 (common practice).
// Source: Wood Handbook, FPL-GTR-190 (2010), Table 13-5.
[[nodiscard]] std::optional<double> changeCoefficient(const Species& species, RingDirection rings);

// Shrinkage from green to ovendry, in percent of the green size, that a change coefficient goes
// with, and back: C = 1 / (3000 / S - 20), shrinkage taken to begin at 30 %. Derived; it reproduces
// the single species of Table 13-5 from Table 4-3.
[[nodiscard]] double shrinkageFor(double coefficient);
[[nodiscard]] double coefficientFor(double shrinkage);

// By how much `size` changes (in its own unit; below zero where it shrinks) from one moisture
// content to another, in percent. Between 6 and 14 %: D C (MF - MI), Wood Handbook eq. (13-2),
// p. 13-15. Where either lies outside that, the form for larger changes, D (MF - MI) / (3000 / S -
// 30 + MI), eq. (13-3) as derived from shrinkage that begins at 30 %.
// Errors: OutOfRange for a moisture content below 0 or over 30 percent (NaN too).
[[nodiscard]] Result<double> changeOfSize(double size,
                                          double coefficient,
                                          double fromMoisture,
                                          double toMoisture);

// Room, in millimetres, that a panel needs on each of two sides in its grooves to swell from the
// moisture content it is made at to the dampest: half its growth across the grain; zero where it
// only shrinks. Errors: as changeOfSize().
[[nodiscard]] Result<double> panelRoomPerSide(double width,
                                              double coefficient,
                                              double madeAt,
                                              double dampest);

// Least length, in millimetres, of a slotted screw hole at `distance` across the grain from where
// the part is held, for a screw of `shank` diameter: the shank and the whole movement there from
// the driest to the dampest. Errors: as changeOfSize().
[[nodiscard]] Result<double> slottedHoleLength(
    double distance, double coefficient, double driest, double dampest, double shank);

}  // namespace shoulderline
