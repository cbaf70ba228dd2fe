#include "ui/pages/print_preview.h"

#include <algorithm>
#include <utility>

#include <QPaintEvent>
#include <QPainter>

#include "ui/look/text.h"
#include "ui/look/theme.h"
#include "ui/printing/page_painter.h"

namespace shoulderline {

namespace {

constexpr int kGap = 22;
constexpr int kCaption = 24;

}  // namespace

PrintPreview::PrintPreview(QWidget* parent) : QWidget(parent) {
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAccessibleName(tr("pages as they will come out"));
}

void PrintPreview::show(PrintJob job) {
    job_ = std::move(job);
    drawn_.clear();
    setMinimumHeight(heightForWidth(width()));
    updateGeometry();
    update();
    QStringList names;
    for (const shoulderline::Page& page : job_.pages) {
        names << qt(page.name);
    }
    setAccessibleDescription(names.join(QStringLiteral("; ")));
}

void PrintPreview::setPageWidth(int pixels) {
    pageWidth_ = std::clamp(pixels, 90, 1200);
    drawn_.clear();
    setMinimumHeight(heightForWidth(width()));
    updateGeometry();
    update();
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

QRect PrintPreview::cell(std::size_t page, int width) const {
    const int across = columns(width);
    const int row = static_cast<int>(page) / across;
    const int column = static_cast<int>(page) % across;
    int tallest = 0;
    for (const shoulderline::Page& one : job_.pages) {
        tallest = std::max(tallest, pageSize(one).height());
    }
    const QSize size = pageSize(job_.pages[page]);
    return {QPoint(kGap + column * (pageWidth_ + kGap), kGap + row * (tallest + kGap + kCaption)), size};
}

int PrintPreview::heightForWidth(int width) const {
    if (job_.pages.empty()) {
        return 80;
    }
    int bottom = 0;
    for (std::size_t i = job_.pages.size(); i > 0 && i + 12 > job_.pages.size(); --i) {
        bottom = std::max(bottom, cell(i - 1, width).bottom());
    }
    return bottom + kCaption + kGap;
}

QSize PrintPreview::sizeHint() const {
    return {pageWidth_ + 2 * kGap, heightForWidth(std::max(width(), pageWidth_ + 2 * kGap))};
}

void PrintPreview::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    setMinimumHeight(heightForWidth(width()));
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
    for (std::size_t i = 0; i < job_.pages.size(); ++i) {
        const QRect area = cell(i, width());
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
        const QString name = painter.fontMetrics().elidedText(qt(job_.pages[i].name), Qt::ElideMiddle, pageWidth_);
        painter.drawText(QRect(area.left(), area.bottom() + 3, pageWidth_, kCaption - 4), Qt::AlignLeft | Qt::AlignVCenter, name);
    }
}

}  // namespace shoulderline
