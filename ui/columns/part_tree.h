#pragma once

#include <QTreeWidget>
#include <optional>
#include <vector>

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
    void changeEvent(QEvent* event) override;

  private:
    // A row as it is shown; one of a group has no number of its own.
    struct Row {
        QString group;
        QString name;
        QString count;
        std::optional<std::size_t> stated;  // of a part
        std::optional<std::size_t> joint;   // of a small part, its first
        friend bool operator==(const Row&, const Row&) = default;
    };
    [[nodiscard]] std::vector<Row> rowsNow() const;
    void rebuild();
    void showChosen();
    void chooseCurrent();

    Document& document_;
    std::vector<Row> rows_;
    bool isShowing_ = false;
};

}  // namespace shoulderline
