#pragma once

#include <optional>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// Where a drawing has room left: its lines, arcs and lettering taken apart once. Tints do not
// count.
class FreeSpace {
  public:
    FreeSpace(const std::vector<Op>& ops, const TextMetrics& metrics);
    // Takes more of the sheet.
    void take(const std::vector<Op>& ops, const TextMetrics& metrics);

    // Whether nothing comes within `area`.
    [[nodiscard]] bool isFree(const Rect& area) const;
    // Whether no lettering, and no whole circle, comes within `area`.
    [[nodiscard]] bool isClearOfLettering(const Rect& area) const;
    // A place inside `room` for a rectangle of `size` that nothing comes within 2 mm of: its top
    // left corner. The lowest, then the rightmost on a grid of 2 mm; none where there is none.
    [[nodiscard]] std::optional<Vec2> placeFor(Vec2 size, const Rect& room) const;

  private:
    void takeArc(const ArcOp& arc);
    void takeFill(const Fill& fill);

    void takeStroke(Stroke stroke);

    // Each with what it covers, which most areas lie clear of.
    struct Taken {
        Stroke stroke;
        Rect bounds;
    };
    std::vector<Taken> strokes_;
    std::vector<Rect> boxes_;
};

}  // namespace shoulderline
