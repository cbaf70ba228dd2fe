#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>

#include "ui/document/document.h"

namespace shoulderline {

// The loads that the piece is judged by: those of the book that reach it, to read, and the maker's
// own, to add, change and take away. Each change is one step to undo.
class LoadsDialog final : public QDialog {
    Q_OBJECT
  public:
    explicit LoadsDialog(Document& document, QWidget* parent = nullptr);

  private:
    void makeForm(QLayout& layout);
    void refresh();
    void showChosen();
    void state();
    void remove();
    [[nodiscard]] StatedLoad load() const;

    Document& document_;
    QListWidget* list_;
    QLineEdit* name_;
    QComboBox* on_;
    QComboBox* towards_;
    QLineEdit* newtons_;
    QLineEdit* height_;
    QCheckBox* repeated_;
    QLabel* told_;
    QPushButton* state_;
    QPushButton* remove_;
};

}  // namespace shoulderline
