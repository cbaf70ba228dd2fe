#include "core/drawing/rod_labels.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace shoulderline {

std::vector<std::optional<int>> labelRows(const std::vector<LabelSpan>& labels,
                                          int rows,
                                          double gap) {
    std::vector<std::size_t> order(labels.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return labels[a].rank < labels[b].rank;
    });
    std::vector<std::vector<std::size_t>> taken(static_cast<std::size_t>(std::max(rows, 0)));
    std::vector<std::optional<int>> result(labels.size());
    for (const std::size_t i : order) {
        for (std::size_t row = 0; row < taken.size() && !result[i]; ++row) {
            const bool isFree =
                std::all_of(taken[row].begin(), taken[row].end(), [&](std::size_t j) {
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

// Labels that touch form a run, which lies evenly about the middle of its lines; runs that meet
// join.
std::vector<double> spreadLabels(const std::vector<double>& lines,
                                 double apart,
                                 double low,
                                 double high) {
    struct Run {
        double sum = 0.0;  // of where the first label would lie for each of its lines
        int count = 0;
        double first = 0.0;
    };
    const auto settle = [&](Run& run) {
        const double room = std::max(low, high - apart * (run.count - 1));
        run.first = std::clamp(run.sum / run.count, low, room);
    };
    std::vector<Run> runs;
    for (const double line : lines) {
        Run run{line, 1, line};
        settle(run);
        runs.push_back(run);
        while (runs.size() > 1) {
            Run& last = runs[runs.size() - 1];
            Run& before = runs[runs.size() - 2];
            if (before.first + apart * before.count <= last.first) {
                break;
            }
            before.sum += last.sum - last.count * before.count * apart;
            before.count += last.count;
            settle(before);
            runs.pop_back();
        }
    }
    std::vector<double> places;
    for (const Run& run : runs) {
        for (int i = 0; i < run.count; ++i) {
            places.push_back(run.first + apart * i);
        }
    }
    return places;
}

}  // namespace shoulderline
