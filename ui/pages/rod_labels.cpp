#include "ui/pages/rod_labels.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace shoulderline {

std::vector<std::optional<int>> labelRows(const std::vector<LabelSpan>& labels, int rows, double gap) {
    std::vector<std::size_t> order(labels.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return labels[a].rank < labels[b].rank;
    });
    std::vector<std::vector<std::size_t>> taken(static_cast<std::size_t>(std::max(rows, 0)));
    std::vector<std::optional<int>> result(labels.size());
    for (const std::size_t i : order) {
        for (std::size_t row = 0; row < taken.size() && !result[i]; ++row) {
            const bool isFree = std::all_of(taken[row].begin(), taken[row].end(), [&](std::size_t j) {
                const double apart = std::abs(labels[i].at - labels[j].at);
                return apart >= (labels[i].size + labels[j].size) / 2.0 + gap;
            });
            if (isFree) {
                taken[row].push_back(i);
                result[i] = static_cast<int>(row);
            }
        }
    }
    return result;
}

}  // namespace shoulderline
