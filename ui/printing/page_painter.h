#pragma once

#include <QPainter>

#include "core/drawing/calibration.h"
#include "core/drawing/paper.h"
#include "ui/painting/sheet_painter.h"

namespace shoulderline {

// Paints one page of a job, black on white: the painter comes scaled so that one unit is one
// millimetre, its origin at the paper's top left corner. The drawing is clipped to the page's
// printable area, the furniture is not.
// `correction` stretches the page about its middle.
void paintPage(QPainter& painter,
               const PrintJob& job,
               const Page& page,
               const SheetPainter& sheets,
               const SheetLook& look = {},
               const ScaleCorrection& correction = {});

}  // namespace shoulderline
