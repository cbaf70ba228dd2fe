#include "ui/printing/page_painter.h"

namespace shoulderline {

void paintPage(QPainter& painter,
               const PrintJob& job,
               const Page& page,
               const SheetPainter& sheets,
               const SheetLook& look,
               const ScaleCorrection& correction) {
    painter.save();
    const Vec2 middle = page.size * 0.5;
    const Vec2 by = correction.on(page);
    painter.translate(middle.x, middle.y);
    painter.scale(by.x, by.y);
    painter.translate(-middle.x, -middle.y);
    const Vec2 min = page.printable.min;
    const Vec2 max = page.printable.max;
    painter.save();
    painter.setClipRect(QRectF(QPointF(min.x, min.y), QPointF(max.x, max.y)));
    painter.translate(min.x, min.y);
    painter.rotate(page.turn.degrees());
    painter.translate(-page.origin.x, -page.origin.y);
    sheets.paint(painter, job.contents[page.content], look);
    painter.restore();
    sheets.paint(painter, page.furniture, look);
    painter.restore();
}

}  // namespace shoulderline
