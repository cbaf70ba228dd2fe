#pragma once

#include <QLabel>
#include <QWidget>
#include <vector>

#include "core/rules/reason.h"
#include "ui/document/document.h"

namespace shoulderline {

// Why a size is what it is: the chain of reasons in words, and where the rule comes from.
class WhyBox final : public QWidget {
    Q_OBJECT
  public:
    explicit WhyBox(Document& document, QWidget* parent = nullptr);
    void show(const QString& sizeName, const Size& size);
    [[nodiscard]] QString text() const { return chain_->text(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    Document& document_;
    QLabel* title_;
    QLabel* chain_;
    QLabel* source_;
};

}  // namespace shoulderline
