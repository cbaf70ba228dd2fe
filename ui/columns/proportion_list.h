#pragma once

#include <QGridLayout>
#include <QLabel>
#include <QWidget>
#include <vector>

#include "core/check/proportions.h"
#include "ui/columns/why_box.h"
#include "ui/document/document.h"
#include "ui/look/marks.h"
#include "ui/look/text_button.h"

namespace shoulderline {

// The proportions of the chosen joint in full: a gauge for each, with the maker's figure, the range
// that is allowed, where the rule comes from, and the way to a house rule. The subject opens the
// chain of reasons of the size that it is about.
class ProportionList final : public QWidget {
    Q_OBJECT
  public:
    explicit ProportionList(Document& document, QWidget* parent = nullptr);
    void refresh();

  private:
    struct Row {
        QWidget* holder = nullptr;
        TextButton* subject = nullptr;
        QLabel* figure = nullptr;
        GaugeBar* bar = nullptr;
        QLabel* range = nullptr;
        TextButton* house = nullptr;
        RuleId rule = RuleId::Stated;
    };
    Row makeRow();
    void showRow(Row& row, const Proportion& one);
    void openWhy(RuleId rule);
    void openHouseRule(RuleId rule);

    Document& document_;
    QVBoxLayout* rowsLayout_;
    std::vector<Row> rows_;
    WhyBox* why_;
    QLabel* nothing_;
    std::optional<RuleId> whyOf_;
};

}  // namespace shoulderline
