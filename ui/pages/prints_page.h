#pragma once

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>
#include <vector>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/paper.h"
#include "ui/document/document.h"
#include "ui/fields/length_field.h"
#include "ui/pages/board_page.h"
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

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    enum What { AllFullSize, OneFullSize, PartSheets, PieceSheet };
    void makeOptions();
    void makeCommands(QVBoxLayout& layout);
    void refresh();
    void fillParts();
    [[nodiscard]] PrintJob makeJob() const;
    [[nodiscard]] Paper paper() const;

    Document& document_;
    Prompts& prompts_;
    LetteringMetrics metrics_;
    QComboBox* what_;
    QComboBox* part_;
    QComboBox* paper_;
    LengthField* overlap_;
    QLabel* overlapLabel_;
    QLabel* count_;
    PrintPreview* preview_;
    QTimer later_;
    PrintJob job_;
    int generation_ = -1;
};

}  // namespace shoulderline
