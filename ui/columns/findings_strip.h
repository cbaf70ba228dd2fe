#pragma once

#include <QGridLayout>
#include <QLabel>
#include <QWidget>
#include <memory>
#include <vector>

#include "ui/document/document.h"
#include "ui/look/marks.h"
#include "ui/look/text_button.h"

namespace shoulderline {

class Prompts;

// The findings, always in view: a shape, a word, a sentence that leads to its part, and what mends
// it.
class FindingsStrip final : public QWidget {
    Q_OBJECT
  public:
    FindingsStrip(Document& document, Prompts& prompts, QWidget* parent = nullptr);

  Q_SIGNALS:
    void led();  // to a part or joint, by a click

  private:
    struct Row {
        SeverityMark* mark = nullptr;
        QLabel* word = nullptr;
        TextButton* sentence = nullptr;
        TextButton* mend = nullptr;
    };
    void refresh();
    Row makeRow(int at);
    void showRow(Row& row, const Finding& finding);
    void lead(const Finding& finding);
    void mend(const Finding& finding, QWidget& under);
    void applyMend(const Mend& mend);

    Document& document_;
    Prompts& prompts_;
    QLabel* summary_;
    QGridLayout* grid_;
    QWidget* list_;
    std::vector<Row> rows_;
};

}  // namespace shoulderline
