#pragma once

#include "core/drawing/text_metrics.h"

namespace shoulderline {

// Widths of the lettering that the drawings are painted with (Routed Gothic), from its own table of
// advances: no kerning, as the painters set it. Characters that it lacks count as wide as a
// question mark.
class LetteringMetrics final : public TextMetrics {
  public:
    [[nodiscard]] double width(std::string_view text, double height, bool isBold) const override;
};

}  // namespace shoulderline
