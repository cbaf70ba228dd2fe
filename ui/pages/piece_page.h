#pragma once

#include "ui/pages/board_page.h"
#include "ui/pages/piece_canvas.h"

namespace shoulderline {

// The piece in its elevations, framed by its rods.
class PiecePage final : public BoardPage {
    Q_OBJECT
  public:
    PiecePage(Document& document, Afterglow& glow, QWidget* parent = nullptr);
    [[nodiscard]] Canvas* canvas() const override { return canvas_; }

  private:
    PieceCanvas* canvas_;
};

}  // namespace shoulderline
