#pragma once

#include <QFont>
#include <QLabel>
#include <optional>
#include <utility>
#include <vector>

namespace shoulderline {

// A label of plain text that remembers its sizes until its text or look changes. A column asks each
// of its wrapping labels for heights at several widths whenever one of them changes, and setting
// the text anew for each answer takes longer than all else that a keystroke sets off.
class Label final : public QLabel {
  public:
    using QLabel::QLabel;

    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  private:
    struct Sizes {
        QString text;
        QFont font;
        QMargins margins;
        bool wraps = false;
        std::vector<std::pair<int, int>> heights = {};  // at widths
        std::optional<QSize> hint = std::nullopt;
        std::optional<QSize> minimum = std::nullopt;
    };
    [[nodiscard]] Sizes& sizes() const;

    mutable Sizes sizes_;
};

}  // namespace shoulderline
