#include "ui/printing/page_painter.h"

namespace shoulderline {

void paintPage(QPainter& painter,
               const PrintJob& job,
               const Page& page,
               const SheetPainter& sheets,
               const SheetLook& look) {
    const Vec2 min = page.printable.min;
    const Vec2 max = page.printable.max;
    painter.save();
    painter.setClipRect(QRectF(QPointF(min.x, min.y), QPointF(max.x, max.y)));
    painter.translate(min.x - page.origin.x, min.y - page.origin.y);
    sheets.paint(painter, job.contents[page.content], look);
    painter.restore();
    sheets.paint(painter, page.furniture, look);
}

}  // namespace shoulderline
