#pragma once

#include <QSortFilterProxyModel>
#include <QTableView>

#include "core/drawing/lettering_metrics.h"
#include "ui/canvas/sheet_canvas.h"
#include "ui/columns/proportion_list.h"
#include "ui/columns/set_up_list.h"
#include "ui/columns/strength_panel.h"
#include "ui/document/document.h"
#include "ui/pages/board_page.h"
#include "ui/pages/joint_table.h"

namespace shoulderline {

// Every joint in a table; the chosen one drawn large below it; under that its proportions and its
// strength.
class JointsPage final : public BoardPage {
    Q_OBJECT
  public:
    explicit JointsPage(Document& document, QWidget* parent = nullptr);
    [[nodiscard]] Canvas* canvas() const override { return canvas_; }

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    [[nodiscard]] QWidget* makeJudgement();
    void refresh();
    void chooseCurrent(const QModelIndex& index);

    Document& document_;
    LetteringMetrics metrics_;
    JointTable* table_;
    QSortFilterProxyModel* sorted_;
    QTableView* view_;
    SheetCanvas* canvas_;
    ProportionList* proportions_;
    SetUpList* setUps_ = nullptr;
    StrengthPanel* strength_;
    bool isShowing_ = false;
};

}  // namespace shoulderline
