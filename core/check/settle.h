#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/check/mend_effect.h"

namespace shoulderline {

// What 'settle' chose for the joints between two stated parts: what they have besides, before and
// after.
struct SettledJoint {
    std::string tenoned;
    std::string mortised;
    JointFeatures before;
    JointFeatures after;
};

// A rail that is moved a little, where ends alone do not keep mortises clear.
struct SettledRail {
    std::string rail;  // stated name
    std::string text;  // "raise side rail by 1/4 in"
    Length by;
};

// A choice for every place where hollows of joints meet, for the whole piece together. Stated
// joints are one for a pair and for every member of a set, so what is symmetric comes out alike.
struct Settlement {
    std::vector<SettledJoint> joints;  // those that change
    std::vector<SettledRail> rails;    // those that are moved
    SetJointFeatures edit;             // does it in one step; nothing in it where nothing changes
    std::size_t meetingsBefore = 0;    // places where mortises meet or leave too little wood
    std::size_t meetingsAfter = 0;
    // Of the joints that meet: the weakest in bending, the middle of its range in newton metres: as
    // chosen, and by the plain rule, every one of them shortened for its neighbour. None where
    // there is no estimate of any. `isCovered`: published tests cover the weakest both ways; where
    // not, the figures rank only.
    std::optional<double> weakest;
    std::optional<double> weakestByPlainRule;
    std::string weakestName;
    bool isCovered = false;
    std::size_t tried = 0;  // ways that were worked through

    [[nodiscard]] std::optional<double> gain() const;
};

// Mitres, shortens, haunches or splits tenons so that as few as can be meet, then the weakest joint
// is as strong in bending as it can be, then the next weakest; ties go to the fewest changes. Tries
// every way for joints that depend on one another, up to some thousands; beyond that it betters one
// joint and then one pair after another. Where mortises meet even so, rails are staggered or moved
// across, one after another and each time with all ends chosen anew: by no more than the rule book
// lets a rail be moved, the one that leaves the fewest meetings first, of these the strongest, of
// these the least.
[[nodiscard]] Settlement settle(const Piece& piece, const Workbench& bench);

// For the command line and the window: what was chosen, one joint a line, and what was gained.
[[nodiscard]] std::string settlementText(const Settlement& settlement);
[[nodiscard]] std::string settlementJson(const Settlement& settlement);

}  // namespace shoulderline
