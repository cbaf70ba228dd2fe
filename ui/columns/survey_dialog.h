#pragma once

#include <QDialog>
#include <QLabel>
#include <QTableWidget>

#include "ui/document/document.h"

namespace shoulderline {

// The measures of the piece as they were found on an original, beside the figures chosen: where
// they differ, and where the found figures contradict one another, by how much. Found figures are
// typed into the table; each is one step to undo.
class SurveyDialog final : public QDialog {
    Q_OBJECT
  public:
    explicit SurveyDialog(Document& document, QWidget* parent = nullptr);

  private:
    void refresh();
    [[nodiscard]] QString chosen(const std::string& name) const;
    void showCell(int row, int column, const QString& text);
    void state(const QTableWidgetItem& item);

    Document& document_;
    QTableWidget* table_;
    QLabel* told_;
};

}  // namespace shoulderline
