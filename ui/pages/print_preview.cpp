#include "ui/pages/print_preview.h"

#include <QPaintEvent>
#include <QPainter>
#include <algorithm>
#include <utility>

#include "ui/look/text.h"
#include "ui/look/theme.h"
#include "ui/printing/page_painter.h"

namespace shoulderline {

namespace {

constexpr int kGap = 22;
constexpr int kCaption = 24;

}  // namespace

PrintPreview::PrintPreview(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    setAccessibleName(tr("pages as they will come out"));
}

void PrintPreview::show(PrintJob job) {
    job_ = std::move(job);
    drawn_.clear();
    layOut(width());
    QStringList names;
    for (const shoulderline::Page& page : job_.pages) {
        names << qt(page.name);
    }
    setAccessibleDescription(names.join(QStringLiteral("; ")));
}

void PrintPreview::setPageWidth(int pixels) {
    pageWidth_ = std::clamp(pixels, 90, 1200);
    drawn_.clear();
    layOut(width());
}

QSize PrintPreview::pageSize(const shoulderline::Page& page) const {
    // All pages at the same scale: the widest is as wide as wanted.
    double widest = 1.0;
    for (const shoulderline::Page& one : job_.pages) {
        widest = std::max(widest, one.size.x);
    }
    const double scale = pageWidth_ / widest;
    return QSizeF(page.size.x * scale, page.size.y * scale).toSize();
}

int PrintPreview::columns(int width) const {
    return std::max(1, (width - kGap) / (pageWidth_ + kGap));
}

// Rows are as high as their highest page.
void PrintPreview::layOut(int width) {
    cells_.clear();
    const auto across = static_cast<std::size_t>(columns(width));
    int top = kGap;
    for (std::size_t first = 0; first < job_.pages.size(); first += across) {
        int highest = 0;
        for (std::size_t i = first; i < std::min(first + across, job_.pages.size()); ++i) {
            const int left = kGap + static_cast<int>(i - first) * (pageWidth_ + kGap);
            cells_.emplace_back(QPoint(left, top), pageSize(job_.pages[i]));
            highest = std::max(highest, cells_.back().height());
        }
        top += highest + kCaption + kGap;
    }
    setMinimumSize(pageWidth_ + 2 * kGap, std::max(top, 80));
    update();
}

void PrintPreview::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    layOut(width());
}

QPixmap PrintPreview::draw(const shoulderline::Page& page, QSize size) const {
    const double ratio = devicePixelRatioF();
    QPixmap pixmap(QSizeF(size.width() * ratio, size.height() * ratio).toSize());
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::white);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    const double scale = size.width() / page.size.x;
    painter.scale(scale, scale);
    SheetLook look;
    look.colours = SheetColours::print();
    look.leastWidth = 0.6 / scale;
    paintPage(painter, job_, page, painter_, look);
    return pixmap;
}

void PrintPreview::paintEvent(QPaintEvent* event) {
    const Theme theme = Theme::of(palette());
    QPainter painter(this);
    painter.fillRect(event->rect(), theme.desk);
    for (std::size_t i = 0; i < cells_.size(); ++i) {
        const QRect& area = cells_[i];
        if (!area.adjusted(-4, -4, 4, kCaption).intersects(event->rect())) {
            continue;
        }
        auto it = drawn_.find(i);
        if (it == drawn_.end()) {
            it = drawn_.emplace(i, draw(job_.pages[i], area.size())).first;
        }
        painter.drawPixmap(area.topLeft(), it->second);
        painter.setPen(theme.fieldEdge);
        painter.drawRect(area.adjusted(0, 0, -1, -1));
        painter.setPen(theme.softInk);
        const QString name =
            painter.fontMetrics().elidedText(qt(job_.pages[i].name), Qt::ElideMiddle, pageWidth_);
        painter.drawText(QRect(area.left(), area.bottom() + 3, pageWidth_, kCaption - 4),
                         Qt::AlignLeft | Qt::AlignVCenter,
                         name);
    }
}

}  // namespace shoulderline
