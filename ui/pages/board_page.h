#pragma once

#include <QWidget>

#include "ui/canvas/canvas.h"

namespace shoulderline {

// One page of the window. It draws only while it is in sight.
class BoardPage : public QWidget {
    Q_OBJECT
  public:
    using QWidget::QWidget;
    // The drawing that zooming acts on; null for a page without one.
    [[nodiscard]] virtual Canvas* canvas() const { return nullptr; }
};

}  // namespace shoulderline
