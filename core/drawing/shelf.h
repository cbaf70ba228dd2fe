#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/geometry/rect.h"

namespace shoulderline {

// Room kept clear between blocks of a drawing, on the sheet: at their sides, and over and under
// them.
struct Gaps {
    double beside = 9.0;
    double between = 6.0;
};

// One sheet's worth of blocks. A block is given by the areas that it covers, from its own corner,
// the first of them its uppermost.
class Shelf {
  public:
    Shelf(Vec2 room, const Gaps& gaps) : room_(room), gaps_(gaps) {}

    // Where a block finds room and `mayStand` there: nearest to `beside` where that is given, else
    // the highest place; then the one farthest left. None where it finds none.
    [[nodiscard]] std::optional<Vec2> placeFor(const std::vector<Rect>& covers,
                                               const std::optional<Rect>& beside,
                                               const std::function<bool(Vec2)>& mayStand) const;
    void take(Vec2 at, const std::vector<Rect>& covers);

  private:
    [[nodiscard]] std::vector<double> corners(double Vec2::*axis, double between) const;
    [[nodiscard]] bool isFree(const std::vector<Rect>& covers, Vec2 at) const;
    [[nodiscard]] bool isFree(const Rect& area) const;

    Vec2 room_;
    Gaps gaps_;
    std::vector<Rect> taken_;
};

}  // namespace shoulderline
