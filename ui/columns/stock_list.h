#pragma once

#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>
#include <vector>

#include "ui/document/document.h"
#include "ui/fields/statement_field.h"
#include "ui/look/text_button.h"

namespace shoulderline {

class Prompts;

// The stock of the piece: its name and thickness, species and cut, and its thickness as measured.
class StockList final : public QWidget {
    Q_OBJECT
  public:
    StockList(Document& document, Prompts& prompts, QWidget* parent = nullptr);
    void add();

  private:
    struct Row {
        std::string name;
        StatementField* thickness = nullptr;
        StatementField* measured = nullptr;
        TextButton* wood = nullptr;
    };
    void refresh();
    void rebuild();
    Row makeRow(const Stock& stock, QWidget& holder);
    [[nodiscard]] const Stock* find(const std::string& name) const;
    void openWoodMenu(const std::string& name, QWidget& under);

    Document& document_;
    Prompts& prompts_;
    QVBoxLayout* rows_;
    std::vector<Row> all_;
};

}  // namespace shoulderline
