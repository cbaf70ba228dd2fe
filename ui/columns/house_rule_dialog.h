#pragma once

#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

#include "ui/document/document.h"

namespace shoulderline {

// Sets the maker's own figure over one of the rule book, or goes back to the book. While it is
// typed, tells what else it would change; nothing changes until it is taken.
class HouseRuleDialog final : public QDialog {
    Q_OBJECT
  public:
    HouseRuleDialog(Document& document, RuleId rule, QWidget* parent = nullptr);

  private:
    void foresee();
    void take(const std::string& value);
    [[nodiscard]] std::string stated() const;

    Document& document_;
    RuleId rule_;
    QLineEdit* value_;
    QLabel* heading_;
    QPlainTextEdit* moved_;
    QPushButton* take_;
};

}  // namespace shoulderline
