#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QLineEdit>
#include <QPushButton>

#include "core/piece/piece.h"

namespace shoulderline {

// Asks for the little that a new part needs: a name, a role, its stock and how it is placed. The
// rest is stated in the column at the right.
class AddPartDialog final : public QDialog {
    Q_OBJECT
  public:
    explicit AddPartDialog(const Piece& piece, QWidget* parent = nullptr);
    [[nodiscard]] Part part() const;

  private:
    [[nodiscard]] Relation relation() const;

    const Piece& piece_;
    QLineEdit* name_;
    QComboBox* role_;
    QComboBox* stock_;
    QComboBox* placed_;
    QCheckBox* pair_;
    QPushButton* add_ = nullptr;
};

}  // namespace shoulderline
