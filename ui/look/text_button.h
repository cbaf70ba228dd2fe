#pragma once

#include <QAbstractButton>

#include "ui/look/remembered_sizes.h"

namespace shoulderline {

// A command that is a word: no box, teal where it acts, underlined under the pointer and when it
// has the focus. Breaks its text over several lines where there is not room for one.
class TextButton final : public QAbstractButton {
    Q_OBJECT
  public:
    // Action: a command in teal. Plain: a sentence in ink that leads somewhere. Quiet: soft ink.
    // Page: the name of a page, underlined in teal while it is the chosen one.
    enum class Kind { Action, Plain, Quiet, Page };

    explicit TextButton(const QString& text, Kind kind = Kind::Action, QWidget* parent = nullptr);

    void setWordWrap(bool wraps);
    void setBold(bool bold);
    void setAlignment(Qt::Alignment alignment);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return wraps_; }
    [[nodiscard]] int heightForWidth(int width) const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    [[nodiscard]] QFont shownFont() const;
    [[nodiscard]] int flags() const;
    [[nodiscard]] RememberedSizes& sizes() const;

    Kind kind_;
    Qt::Alignment alignment_ = Qt::AlignLeft;
    bool wraps_ = false;
    bool bold_ = false;
    mutable RememberedSizes sizes_;
};

}  // namespace shoulderline
