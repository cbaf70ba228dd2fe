#pragma once

#include <QLabel>
#include <QScrollArea>

#include "ui/columns/joint_panel.h"
#include "ui/columns/measures_list.h"
#include "ui/columns/part_panel.h"
#include "ui/columns/part_tree.h"
#include "ui/columns/ripple_list.h"
#include "ui/columns/stock_list.h"

namespace shoulderline {

// The left column: what the maker states.
class StatedColumn final : public QScrollArea {
    Q_OBJECT
  public:
    StatedColumn(Document& document, Afterglow& glow, Prompts& prompts, QWidget* parent = nullptr);
    [[nodiscard]] MeasuresList& measures() { return *measures_; }
    [[nodiscard]] StockList& stocks() { return *stocks_; }
    [[nodiscard]] PartTree& parts() { return *parts_; }

  Q_SIGNALS:
    void addPartAsked();

  private:
    MeasuresList* measures_;
    StockList* stocks_;
    PartTree* parts_;
};

// The right column: what follows. What the last change moved, then what is chosen.
class FollowingColumn final : public QScrollArea {
    Q_OBJECT
  public:
    FollowingColumn(Document& document, Prompts& prompts, QWidget* parent = nullptr);
    // Whether a joint's proportions are told here; not where the page tells them itself.
    void setGaugesShown(bool shown) { joint_->setGaugesShown(shown); }

  private:
    void refresh();
    void showSitting(bool isWanted);

    Document& document_;
    QLabel* nothing_;
    QLabel* sitting_;  // where nothing is chosen: the seat and the back, if it has them
    TextButton* toPart_;
    PartPanel* part_;
    JointPanel* joint_;
};

}  // namespace shoulderline
