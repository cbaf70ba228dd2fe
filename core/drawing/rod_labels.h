#pragma once

#include <optional>
#include <vector>

namespace shoulderline {

// Where the figures beside a rod go, in any one unit along it (pixels, millimetres) and in rows
// away from it.
struct LabelSpan {
    double at = 0.0;    // of the line it belongs to
    double size = 0.0;  // of the figure, along the rod
    int rank = 0;       // those of lower rank find their places first
};

// The row of each label, 0 nearest the rod, so that none in a row comes nearer to another than
// `gap`; none for a label that no row has room for. Those first in rank, then in order, choose
// first.
[[nodiscard]] std::vector<std::optional<int>> labelRows(const std::vector<LabelSpan>& labels,
                                                        int rows,
                                                        double gap);

// Where the middles of labels in one column go, so that neighbours are at least `apart` from one
// another and within [low, high] as far as that has room: each as near to its line as it can be.
// `lines` ascending.
[[nodiscard]] std::vector<double> spreadLabels(const std::vector<double>& lines,
                                               double apart,
                                               double low,
                                               double high);

}  // namespace shoulderline
