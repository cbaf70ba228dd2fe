#pragma once

#include <QFrame>
#include <QLabel>
#include <functional>

#include "core/drawing/rods.h"
#include "ui/document/document.h"
#include "ui/fields/statement_field.h"

namespace shoulderline {

// The bubble at a line of a rod: what it is, and a field that moves it; or what it follows from.
class RodBubble final : public QFrame {
    Q_OBJECT
  public:
    explicit RodBubble(Document& document, QWidget* parent);
    void open(const Rod& rod, std::size_t line, QPoint at);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* object, QEvent* event) override;

  private:
    [[nodiscard]] std::string statementNow(const RodHandle& handle) const;

    Document& document_;
    Rod rod_;
    std::size_t line_ = 0;
    QLabel* name_;
    QLabel* follows_;
    StatementField* field_;
};

}  // namespace shoulderline
