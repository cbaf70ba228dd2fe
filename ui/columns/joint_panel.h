#pragma once

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>
#include <optional>
#include <vector>

#include "ui/columns/gauges.h"
#include "ui/columns/joint_stock.h"
#include "ui/columns/why_box.h"
#include "ui/document/document.h"
#include "ui/fields/statement_field.h"
#include "ui/look/text_button.h"

namespace shoulderline {

// The sizes of one joint with how each came to be, its kind, its proportions, and why.
class JointPanel final : public QWidget {
    Q_OBJECT
  public:
    explicit JointPanel(Document& document, QWidget* parent = nullptr);
    void refresh();
    // Whether its proportions are told here; not where a page tells them itself.
    void setGaugesShown(bool shown);

  protected:
    bool eventFilter(QObject* object, QEvent* event) override;

  private:
    struct Row {
        SizeName size = SizeName::TenonLength;
        QLabel* label = nullptr;
        StatementField* field = nullptr;
        TextButton* state = nullptr;
    };
    void addRow(SizeName size, int at);
    void showRow(Row& row, const ResolvedJoint& joint);
    void showFeatures(const ResolvedJoint& joint);
    void showWhy(const ResolvedJoint& joint);
    void chooseKind(int index);
    void openFeatures();
    void openStates(SizeName size, QWidget& under);
    Result<void> setSize(SizeName size, const SizeStatement& statement, Document::Kind kind);
    [[nodiscard]] const ResolvedJoint* joint() const;
    [[nodiscard]] const SizeStatement* statementOf(SizeName size) const;
    void showOthers(const ResolvedJoint& joint);

    Document& document_;
    QLabel* title_;
    QComboBox* kind_;
    TextButton* features_;
    QGridLayout* grid_;
    std::vector<Row> rows_;
    JointStock* stock_;
    QLabel* others_;
    Gauges* gauges_;
    bool gaugesShown_ = true;
    WhyBox* why_;
    SizeName whyOf_ = SizeName::TenonThickness;
};

}  // namespace shoulderline
