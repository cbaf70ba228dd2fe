#pragma once

#include <optional>
#include <vector>

#include "core/check/loads.h"
#include "core/check/strength.h"

namespace shoulderline {

// How hard a joint is worked by the load that works it hardest.
struct Working {
    Demand demand;
    double allowable = 1.0;  // share of the ultimate moment that counts under that load
    Range ratio;             // what is asked over what is allowed: below 1 is within it
    bool isByShear = false;  // the force across its tenon works it harder than the moment
};

struct JointRating {
    JointStrength strength;
    std::optional<Working> working;  // none where no load reaches it
};

// The strength of all joints of a piece, with the loads that reach them. `order`: joints from the
// hardest worked down; then those that no load reaches, from the weakest up; then those without an
// estimate.
struct StrengthReport {
    std::vector<Load> loads;
    std::vector<JointRating> joints;  // by joint
    std::vector<std::size_t> order;
    std::vector<std::size_t> ranks;  // by joint, from 1; alike for joints that are worked alike
    std::size_t estimated = 0;       // joints that have an estimate
    std::vector<std::string>
        troubles;  // stated loads and tests that do not count, one sentence each
};

[[nodiscard]] StrengthReport strengthReport(const Piece& piece,
                                            const ResolvedPiece& resolved,
                                            const SpeciesTable& species,
                                            const StrengthBook& book);

}  // namespace shoulderline
