#pragma once

#include <QGridLayout>
#include <QLabel>
#include <QWidget>
#include <vector>

#include "ui/document/document.h"
#include "ui/fields/choice_box.h"
#include "ui/fields/statement_field.h"
#include "ui/look/marks.h"
#include "ui/look/text_button.h"

namespace shoulderline {

// What the chosen joint bears, as far as published tests go: the range with what governs it, how
// hard which load works it, what is taken for granted, and the caution. The glue and a test of the
// maker's own are stated here, and from here the loads.
class StrengthPanel final : public QWidget {
    Q_OBJECT
  public:
    explicit StrengthPanel(Document& document, QWidget* parent = nullptr);
    void refresh();

  private:
    void makeFields(QLayout& layout);
    void showFigures(std::size_t joint);
    void showWorking(std::size_t joint);
    void showAssumptions(const JointStrength& strength);
    void showJoint();
    void addFigure(const QString& name, const QString& figure, bool isBold);
    void hideFiguresOver();
    [[nodiscard]] const StrengthTest* statedTest() const;

    struct FigureRow {
        QLabel* name;
        QLabel* figure;
    };

    Document& document_;
    QLabel* summary_;
    QGridLayout* figures_;
    std::vector<FigureRow> rows_;
    std::size_t figuresShown_ = 0;
    QLabel* working_;
    GaugeBar* gauge_;
    ChoiceBox* glue_;
    StatementField* test_;
    QLabel* assumptions_;
};

}  // namespace shoulderline
