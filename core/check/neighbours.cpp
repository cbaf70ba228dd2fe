#include "core/check/neighbours.h"

#include <algorithm>

#include "core/geometry/box_solids.h"

namespace shoulderline {

std::vector<Meeting> meetingsIn(const ResolvedPiece& resolved, std::size_t part) {
    std::vector<Meeting> meetings;
    const double least = resolved.rules[RuleId::MortiseGapLeast].value;
    // In order along the part, so that only near neighbours are compared.
    std::vector<const MortiseSolid*> sorted;
    for (const MortiseSolid& mortise : resolved.parts[part].mortises) {
        sorted.push_back(&mortise);
    }
    std::sort(sorted.begin(), sorted.end(), [](const MortiseSolid* a, const MortiseSolid* b) {
        return std::pair(a->box.min.x, a->joint) < std::pair(b->box.min.x, b->joint);
    });
    for (std::size_t i = 0; i < sorted.size(); ++i) {
        for (std::size_t j = i + 1;
             j < sorted.size() && sorted[j]->box.min.x < sorted[i]->box.max.x + least;
             ++j) {
            const Box& a = sorted[i]->box;
            const Box& b = sorted[j]->box;
            const std::optional<Box> shared = overlap(a, b);
            const double wall = shared ? 0.0 : distance(a, b);
            if (shared || wall < least - kLengthTolerance.mm()) {
                const auto [first, second] = std::minmax(sorted[i]->joint, sorted[j]->joint);
                meetings.push_back({part, first, second, shared, wall});
            }
        }
    }
    return meetings;
}

}  // namespace shoulderline
