#pragma once

#include <QTreeWidget>

#include "ui/document/document.h"

namespace shoulderline {

// The stated parts under their assemblies; at the right what each stands for: L R, or a count.
// Under them what the joints take besides: loose tenons, wedges, pins.
class PartTree final : public QTreeWidget {
    Q_OBJECT
  public:
    explicit PartTree(Document& document, QWidget* parent = nullptr);
    // As high as its rows: the column scrolls, not the tree.
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return {100, sizeHint().height()}; }

  protected:
    bool focusNextPrevChild(bool next) override { return QWidget::focusNextPrevChild(next); }

  private:
    void rebuild();
    void addSmallParts();
    void showChosen();
    void chooseCurrent();

    Document& document_;
    bool isShowing_ = false;
};

}  // namespace shoulderline
