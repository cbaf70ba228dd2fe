#pragma once

#include <QLabel>

#include "ui/look/remembered_sizes.h"

namespace shoulderline {

// A label of plain text that remembers its sizes until its text or look changes. They are found
// with as little setting of the text as can be, for that is what takes time when many labels
// change: one line is set once, and a text that wraps only at the widths that it is given.
class Label final : public QLabel {
  public:
    using QLabel::QLabel;

    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  private:
    [[nodiscard]] RememberedSizes& sizes() const;
    [[nodiscard]] bool isPlain() const;
    [[nodiscard]] QSize oneLine() const;
    [[nodiscard]] QSize narrowest() const;

    mutable RememberedSizes sizes_;
};

// Gives the widget's text that colour; one that has it is left alone, for a palette that is set is
// worked through by the style even where it is the same.
void setInk(QWidget& widget, const QColor& colour);

}  // namespace shoulderline
