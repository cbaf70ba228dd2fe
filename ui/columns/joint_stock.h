#pragma once

#include <QComboBox>
#include <QLabel>
#include <QWidget>

#include "ui/document/document.h"

namespace shoulderline {

// The stock of what a joint takes besides its two members: its loose tenon, wedges, pins, dowels or
// plugs. Hidden for a joint that takes nothing.
class JointStock final : public QWidget {
    Q_OBJECT
  public:
    explicit JointStock(Document& document, QWidget* parent = nullptr);
    // Shows that of the chosen joint.
    void refresh();

  private:
    void choose(int index);

    Document& document_;
    QLabel* label_;
    QComboBox* stock_;
};

}  // namespace shoulderline
