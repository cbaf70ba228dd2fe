#pragma once

#include <QLabel>

#include "core/drawing/lettering_metrics.h"
#include "ui/document/document.h"
#include "ui/look/text_button.h"
#include "ui/pages/board_page.h"
#include "ui/pages/part_canvas.h"

namespace shoulderline {

// The chosen part in elevation with its dimensions.
class PartsPage final : public BoardPage {
    Q_OBJECT
  public:
    explicit PartsPage(Document& document, QWidget* parent = nullptr);
    [[nodiscard]] Canvas* canvas() const override { return canvas_; }

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    void refresh();
    void step(int by);

    Document& document_;
    LetteringMetrics metrics_;
    QLabel* title_;
    QLabel* about_;
    PartCanvas* canvas_;
};

}  // namespace shoulderline
