#pragma once

#include <QPainter>

#include "core/drawing/paper.h"
#include "ui/painting/sheet_painter.h"

namespace shoulderline {

// Paints one page of a job, black on white: the painter comes scaled so that one unit is one
// millimetre, its origin at the paper's top left corner. The drawing is clipped to the page's
// printable area, the furniture is not.
void paintPage(QPainter& painter,
               const PrintJob& job,
               const Page& page,
               const SheetPainter& sheets,
               const SheetLook& look = {});

}  // namespace shoulderline
