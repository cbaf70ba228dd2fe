#include "core/check/strength_report.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shoulderline {

namespace {

Range ratioOf(double asked, double share, const Range& ultimate) {
    if (ultimate.low <= 0.0) {
        return {};
    }
    return {asked / (share * ultimate.high), asked / (share * ultimate.low)};
}

std::optional<Working> hardest(const JointStrength& strength,
                               const std::vector<Demand>& demands,
                               const std::vector<Load>& loads,
                               const StrengthEstimator& estimator) {
    std::optional<Working> worst;
    for (const Demand& demand : demands) {
        const double share = estimator.allowableShare(loads[demand.load].isRepeated);
        const Range moment = ratioOf(demand.newtonMetres, share, strength.bending.range);
        const Range shear = ratioOf(demand.shearNewtons, share, strength.shear.range);
        const bool isByShear = shear.high > moment.high;
        const Range ratio = isByShear ? shear : moment;
        if (ratio.high > 0.0 && (!worst || ratio.high > worst->ratio.high)) {
            worst = Working{demand, share, ratio, isByShear};
        }
    }
    return worst;
}

// Places in the order, from 1; joints whose figures differ by rounding alone share one.
std::vector<std::size_t> ranksOf(const StrengthReport& report) {
    constexpr double kAlike = 1e-6;
    std::vector<std::size_t> ranks(report.joints.size());
    for (std::size_t place = 0; place < report.order.size(); ++place) {
        const JointRating& now = report.joints[report.order[place]];
        std::size_t rank = place + 1;
        if (place > 0) {
            const JointRating& before = report.joints[report.order[place - 1]];
            const auto figure = [](const JointRating& rating) {
                return rating.working ? rating.working->ratio.high
                                      : rating.strength.bending.range.middle();
            };
            const bool isAlike =
                now.working.has_value() == before.working.has_value() &&
                now.strength.isEstimated() == before.strength.isEstimated() &&
                std::abs(figure(now) - figure(before)) <= kAlike * std::abs(figure(before));
            rank = isAlike ? ranks[report.order[place - 1]] : rank;
        }
        ranks[report.order[place]] = rank;
    }
    return ranks;
}

}  // namespace

StrengthReport strengthReport(const Piece& piece,
                              const ResolvedPiece& resolved,
                              const SpeciesTable& species,
                              const StrengthBook& book) {
    CarriedLoads carried = carryLoads(piece, resolved, species, book);
    OwnTests own = ownTests(piece, resolved);
    const StrengthEstimator estimator(piece, resolved, species, book, std::move(own.tests));
    StrengthReport report;
    report.joints.resize(resolved.joints.size());
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        JointRating& rating = report.joints[i];
        rating.strength = estimator.strengthOf(i);
        if (!rating.strength.isEstimated()) {
            continue;
        }
        ++report.estimated;
        rating.working = hardest(rating.strength, carried.demands[i], carried.loads, estimator);
        if (rating.working) {
            Assumptions& taken = rating.strength.assumptions;
            const bool isRepeated = carried.loads[rating.working->demand.load].isRepeated;
            taken.set(
                static_cast<std::size_t>(isRepeated ? Assumption::Repeated : Assumption::Once));
            taken.set(static_cast<std::size_t>(Assumption::EqualFrames));
            taken.set(static_cast<std::size_t>(Assumption::WholeChairs), isRepeated);
            taken.set(static_cast<std::size_t>(Assumption::GlueLeastShare),
                      isRepeated && !estimator.adhesive().fatigueShare);
        }
    }
    report.order.resize(report.joints.size());
    std::iota(report.order.begin(), report.order.end(), std::size_t{0});
    const auto keyOf = [&](std::size_t i) {
        const JointRating& rating = report.joints[i];
        const int group = rating.working ? 0 : (rating.strength.isEstimated() ? 1 : 2);
        const double within =
            rating.working ? -rating.working->ratio.high : rating.strength.bending.range.middle();
        return std::pair(group, within);
    };
    std::stable_sort(report.order.begin(), report.order.end(), [&](std::size_t a, std::size_t b) {
        return keyOf(a) < keyOf(b);
    });
    report.ranks = ranksOf(report);
    report.loads = std::move(carried.loads);
    report.troubles = std::move(carried.troubles);
    report.troubles.insert(report.troubles.end(), own.troubles.begin(), own.troubles.end());
    return report;
}

}  // namespace shoulderline
