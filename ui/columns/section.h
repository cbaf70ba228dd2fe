#pragma once

#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>

#include "ui/look/text_button.h"

namespace shoulderline {

// The heading of a part of a column, in small soft capitals, with room for one command at its
// right.
class SectionHeading final : public QWidget {
    Q_OBJECT
  public:
    explicit SectionHeading(const QString& title, QWidget* parent = nullptr);
    // Adds a command in words.
    TextButton* addCommand(const QString& text, const QString& accessibleName);
    // A text at the right, in amber.
    void setAside(const QString& text);

  private:
    QLabel* aside_;
    QWidget* spacer_;
};

// A label in soft ink; `scale` of the window's text size.
[[nodiscard]] QLabel* makeSoftLabel(const QString& text,
                                    double scale = 0.92,
                                    QWidget* parent = nullptr);

// Takes all widgets out of a layout and deletes them once the event in hand is done with.
void clearLayout(QLayout& layout);

}  // namespace shoulderline
