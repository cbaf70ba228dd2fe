#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QWidget>

#include "core/drawing/print_order.h"
#include "ui/document/document.h"
#include "ui/fields/length_field.h"

namespace shoulderline {

// What is to be printed and how: what of the piece, paper and which way up, scale, units, overlap
// of tiles. Only what counts for the kind of print is shown.
class PrintChoices final : public QWidget {
    Q_OBJECT
  public:
    explicit PrintChoices(Document& document, QWidget* parent = nullptr);

    // Errors: those of findPaper() for what stands in the paper's field.
    [[nodiscard]] Result<PrintOrder> order() const;
    // Names the piece's parts anew.
    void refresh();

  Q_SIGNALS:
    void chosen();

  private:
    void makeWhat();
    void makePaper();
    void makeHow();
    void fillParts();
    void fillScales();
    void showWhatCounts();
    [[nodiscard]] PrintKind kind() const;

    Document& document_;
    QComboBox* what_;
    QComboBox* part_;
    QComboBox* paper_;
    QComboBox* held_;
    QComboBox* scale_;
    QComboBox* units_;
    QLabel* overlapLabel_;
    LengthField* overlap_;
    QCheckBox* leaveOut_;
    int generation_ = -1;
};

}  // namespace shoulderline
