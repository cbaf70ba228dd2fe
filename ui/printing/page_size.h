#pragma once

#include <QPageLayout>
#include <QSizeF>

#include "core/drawing/paper.h"

namespace shoulderline {

// The page as Qt's layout, without margins. Standard papers are asked for by name, so that a
// printer knows them; any other by its exact size.
[[nodiscard]] inline QPageLayout layoutOf(const Page& page) {
    const bool isLying = page.size.x > page.size.y;
    const QSizeF upright(std::min(page.size.x, page.size.y), std::max(page.size.x, page.size.y));
    const QPageSize::PageSizeId known =
        QPageSize::id(upright, QPageSize::Millimeter, QPageSize::ExactMatch);
    const QPageSize size =
        known == QPageSize::Custom
            ? QPageSize(upright, QPageSize::Millimeter, QString(), QPageSize::ExactMatch)
            : QPageSize(known);
    QPageLayout layout(size,
                       isLying ? QPageLayout::Landscape : QPageLayout::Portrait,
                       QMarginsF(0, 0, 0, 0),
                       QPageLayout::Millimeter);
    layout.setMode(QPageLayout::FullPageMode);
    return layout;
}

}  // namespace shoulderline
