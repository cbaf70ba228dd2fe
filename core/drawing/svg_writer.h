#pragma once

#include <string>
#include <string_view>

#include "core/drawing/paper.h"
#include "core/drawing/sheet.h"
#include "core/drawing/text_metrics.h"

namespace shoulderline {

// Drawings as SVG 1.1 text, UTF-8: width and height in millimetres, one user unit to the
// millimetre, coordinates to the micrometre. Black lines in layers: a group with the id, class and
// title of each line role ("visible", "hidden", "cut-plane"), of "lettering" and of "solid" areas;
// inside them a group for each subject ("part", "joint") with its name. Broken lines are written as
// the strokes they consist of, so that every viewer shows the same dashes. Lettering stays text in
// the family "Routed Gothic", as wide as it was laid out also where that is replaced by another;
// fractions are stacked. `fontFile` holds the bytes of that font's file, which the drawing then
// carries in itself, once, for viewers on which it is not installed; without them it is only named.
// Tints are left out, as on paper.

// A sheet of its own.
[[nodiscard]] std::string svgOf(const Sheet& sheet,
                                const TextMetrics& metrics,
                                std::string_view fontFile = {});

// One page of a job: its drawing clipped to the printable area, over it the furniture, whose layers
// have ids beginning with "furniture-". Of the drawing only what reaches the page is written.
[[nodiscard]] std::string svgOf(const PrintJob& job,
                                const Page& page,
                                const TextMetrics& metrics,
                                std::string_view fontFile = {});

// The name of a role's layer.
[[nodiscard]] std::string layerName(LineRole role);

}  // namespace shoulderline
