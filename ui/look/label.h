#pragma once

#include <QLabel>

#include "ui/look/remembered_sizes.h"

namespace shoulderline {

// A label of plain text that remembers its sizes until its text or look changes.
class Label final : public QLabel {
  public:
    using QLabel::QLabel;

    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  private:
    [[nodiscard]] RememberedSizes& sizes() const;

    mutable RememberedSizes sizes_;
};

}  // namespace shoulderline
