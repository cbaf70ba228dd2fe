#pragma once

#include <QDialog>
#include <QFormLayout>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>

#include "ui/document/document.h"
#include "ui/look/afterglow.h"
#include "ui/pages/piece_canvas.h"

namespace shoulderline {

// A new piece from a starter: which one, its name, its main measures (those with limits), and its
// elevations beside them, redrawn as they are typed. The elevations have their rods as in the
// window.
class StarterDialog final : public QDialog {
    Q_OBJECT
  public:
    explicit StarterDialog(const Resources& resources, QWidget* parent = nullptr);
    ~StarterDialog() override;
    // As it was chosen and stated.
    [[nodiscard]] const Piece& piece() const { return document_.piece(); }

  private:
    void choose(int starter);
    void addMeasure(const Measure& measure);
    void showFindings();

    Document document_;  // of its own, so that nothing is begun until it is accepted
    Afterglow glow_;
    QListWidget* starters_;
    QLineEdit* name_;
    QFormLayout* measures_;
    PieceCanvas* canvas_;
    QLabel* findings_;
    QPushButton* begin_;
};

}  // namespace shoulderline
