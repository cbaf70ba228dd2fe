#pragma once

#include <string_view>

#include "core/geometry/box.h"
#include "core/piece/piece.h"
#include "core/resolve/evaluation.h"

namespace shoulderline {

// Steps by which a member's box is put together, one axis (0 x, 1 y, 2 z) at a time; millimetres.

// Parts nearer to one another than this touch.
inline constexpr double kApart = 1e-6;

// A size that follows from where the part lies.
[[nodiscard]] Size placedSize(Length value);

// Whether `side` is one of the two ends of `axis`.
[[nodiscard]] bool liesOn(Side side, int axis);

// Whether the boxes share more than a touch along `axis`.
[[nodiscard]] bool overlapsAlong(const Box& a, const Box& b, int axis);

// Fills `box` along `axis` with `size`, one face or the middle of it at `at`.
void putAt(Box& box, int axis, Side face, double at, double size);

// Places along `axis` by a stated position; false with a trouble, which calls it `what`, where the
// position names another axis or cannot be worked out.
[[nodiscard]] bool putAtPosition(Box& box,
                                 int axis,
                                 const Position& position,
                                 double size,
                                 std::string_view what,
                                 const Place& place,
                                 Evaluation& evaluation);

// Places along `axis` across the part that a member joins, set in from one of the faces of `from`
// or off its middle; false with a trouble as above.
[[nodiscard]] bool putInFrom(Box& box,
                             int axis,
                             const Setting& setting,
                             const Box& from,
                             double size,
                             const Place& place,
                             Evaluation& evaluation);

}  // namespace shoulderline
