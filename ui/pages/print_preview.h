#pragma once

#include <QPixmap>
#include <QWidget>
#include <map>
#include <vector>

#include "core/drawing/paper.h"
#include "ui/painting/sheet_painter.h"

namespace shoulderline {

// The pages of a print, one beside the other as they will come out: black on white, whatever the
// colours of the window are. Draws a page when it first comes in sight.
class PrintPreview final : public QWidget {
    Q_OBJECT
  public:
    explicit PrintPreview(QWidget* parent = nullptr);
    void show(PrintJob job);
    // Wanted width of a page, in pixels.
    void setPageWidth(int pixels);
    [[nodiscard]] int pageWidth() const { return pageWidth_; }

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void layOut(int width);
    [[nodiscard]] QSize pageSize(const shoulderline::Page& page) const;
    [[nodiscard]] int columns(int width) const;
    [[nodiscard]] QPixmap draw(const shoulderline::Page& page, QSize size) const;

    PrintJob job_;
    SheetPainter painter_;
    int pageWidth_ = 186;
    std::vector<QRect> cells_;  // of the pages
    std::map<std::size_t, QPixmap> drawn_;
};

}  // namespace shoulderline
