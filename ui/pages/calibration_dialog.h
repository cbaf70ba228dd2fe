#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QPushButton>

#include "core/drawing/calibration.h"
#include "ui/fields/length_field.h"

namespace shoulderline {

class Prompts;

// Makes a printer's pages true: prints the calibration sheet, takes what its lines measure, and
// keeps that for the printer and paper.
class CalibrationDialog final : public QDialog {
    Q_OBJECT
  public:
    // `printers` are offered by name; one may be typed that is not there now.
    CalibrationDialog(const QStringList& printers,
                      Paper paper,
                      bool inInches,
                      const std::string& date,
                      Prompts& prompts,
                      QWidget* parent = nullptr);

    void accept() override;

  private:
    void makeFields(const QStringList& printers);
    void showKept();
    void judge();
    void printSheet();
    void saveSheet();
    void forget();
    [[nodiscard]] Vec2 measured() const;
    [[nodiscard]] PrintJob sheet() const;

    Paper paper_;
    bool inInches_;
    std::string date_;
    Prompts& prompts_;
    QComboBox* printer_;
    LengthField* across_;
    LengthField* up_;
    QLabel* verdict_;
    QPushButton* keep_;
    QPushButton* forget_;
};

}  // namespace shoulderline
