#pragma once

#include <QLabel>
#include <QTimer>
#include <QVBoxLayout>

#include "core/drawing/lettering_metrics.h"
#include "ui/document/document.h"
#include "ui/pages/board_page.h"
#include "ui/pages/print_choices.h"
#include "ui/pages/print_preview.h"

namespace shoulderline {

class Prompts;

// What will come out of the printer, page by page, before it does.
class PrintsPage final : public BoardPage {
    Q_OBJECT
  public:
    PrintsPage(Document& document, Prompts& prompts, QWidget* parent = nullptr);

    void savePdf();
    void print();
    void correctPrinter();

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    void makeCommands(QVBoxLayout& layout);
    void refresh();
    // Whether there are pages; tells it where there are none.
    [[nodiscard]] bool hasPages();
    [[nodiscard]] QString nothingToPrint() const;

    Document& document_;
    Prompts& prompts_;
    LetteringMetrics metrics_;
    PrintChoices* choices_;
    QLabel* count_;
    PrintPreview* preview_;
    QTimer later_;
    PrintJob job_;
    PrintOrder order_;
};

}  // namespace shoulderline
