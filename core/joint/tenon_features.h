#pragma once

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// What a mortise and tenon may have besides: each adds its sizes to a joint that is sized already,
// where its form asks for it, and its solids to the cuts.

// A haunch fills the mouth from the tenon out to the edge next to the end of the mortised part, and
// between double tenons. As long as a groove there is deep.
void sizeHaunch(const JointTask&, const SizingGuide&, const StatedSizes&, SizedJoint&);
void cutHaunch(const JointTask&, const SizedJoint&, JointCuts&);

// One pin or two, from the nearer face of the mortised part through the tenon into the far cheek;
// drawbored: the hole in the tenon lies nearer the shoulder.
void sizePins(const JointTask&, const SizingGuide&, const StatedSizes&, SizedJoint&);
void cutPins(const JointTask&, const SizedJoint&, const SizingGuide&, JointCuts&);

// Wedges at the edges of a through tenon, or in kerfs (in a blind one: fox wedges). The mortise
// widens to its far end.
void sizeWedges(const JointTask&, const SizingGuide&, const StatedSizes&, SizedJoint&);
void cutWedges(const JointTask&, const SizedJoint&, const SizingGuide&, JointCuts&);

// The end of a through tenon: the wedge of a tusk tenon, a chamfer or rounding; and the round ends
// that a cutter leaves. tuskProjection() adds the sizes of the wedge and gives what stands out.
[[nodiscard]] Size tuskProjection(const SizingGuide&, const StatedSizes&, SizedJoint&);
void sizeTenonEnd(const JointTask&, const SizingGuide&, const StatedSizes&, SizedJoint&);
void cutTenonEnds(const JointTask&, const SizedJoint&, const SizingGuide&, JointCuts&);

// Length left on past the end of the mortised part.
void sizeHorn(const JointTask&, const SizingGuide&, const StatedSizes&, SizedJoint&);

// Makes a mortise in the tenoned part's own end of each tenon: the tenon is a part of its own.
void makeLoose(JointCuts&);

}  // namespace shoulderline
