#pragma once

#include <QComboBox>

namespace shoulderline {

// A list to choose from that the wheel changes only while it has the focus: scrolling past it
// must not change the piece.
class ChoiceBox final : public QComboBox {
    Q_OBJECT
  public:
    explicit ChoiceBox(QWidget* parent = nullptr);

  protected:
    void wheelEvent(QWheelEvent* event) override;
};

}  // namespace shoulderline
