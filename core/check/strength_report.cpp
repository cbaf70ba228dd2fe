#include "core/check/strength_report.h"

#include <algorithm>
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

}  // namespace

std::size_t StrengthReport::rankOf(std::size_t joint) const {
    const auto it = std::find(order.begin(), order.end(), joint);
    return static_cast<std::size_t>(it - order.begin()) + 1;
}

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
        rating.working = hardest(rating.strength, carried.demands[i], carried.loads, estimator);
        if (rating.working) {
            Assumptions& taken = rating.strength.assumptions;
            const bool isRepeated = carried.loads[rating.working->demand.load].isRepeated;
            taken.set(
                static_cast<std::size_t>(isRepeated ? Assumption::Repeated : Assumption::Once));
            taken.set(static_cast<std::size_t>(Assumption::EqualFrames));
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
    report.loads = std::move(carried.loads);
    report.troubles = std::move(carried.troubles);
    report.troubles.insert(report.troubles.end(), own.troubles.begin(), own.troubles.end());
    return report;
}

}  // namespace shoulderline
