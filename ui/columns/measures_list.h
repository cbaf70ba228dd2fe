#pragma once

#include <QGridLayout>
#include <QLabel>
#include <QWidget>
#include <string>
#include <vector>

#include "ui/document/document.h"
#include "ui/fields/statement_field.h"
#include "ui/look/afterglow.h"

namespace shoulderline {

class Prompts;

// The measures of the piece: name and field, one to a row.
class MeasuresList final : public QWidget {
    Q_OBJECT
  public:
    MeasuresList(Document& document, Afterglow& glow, Prompts& prompts, QWidget* parent = nullptr);

    // The measure whose field has the focus, or had it last; empty for none.
    [[nodiscard]] const std::string& current() const { return current_; }
    void renameCurrent();
    void noteCurrent();
    void removeCurrent();
    void add();

  protected:
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* object, QEvent* event) override;

  private:
    struct Row {
        std::string name;
        QLabel* label = nullptr;
        StatementField* field = nullptr;
    };
    void refresh();
    void rebuild();
    void repaintTint();
    [[nodiscard]] QRect tintNow() const;
    void show(Row& row, const Measure& measure, const ResolvedMeasure& resolved);
    void openMenu(const std::string& name, QPoint at);

    Document& document_;
    Afterglow& glow_;
    Prompts& prompts_;
    QGridLayout* rows_;
    std::vector<Row> all_;
    std::string current_;
    QRect tinted_;  // what was tinted when last painted
};

}  // namespace shoulderline
