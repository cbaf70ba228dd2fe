#include "ui/pages/calibration_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPrintDialog>
#include <QPrinter>

#include "core/drawing/lettering_metrics.h"
#include "core/measure/number_text.h"
#include "ui/look/text.h"
#include "ui/printing/pdf_writer.h"
#include "ui/printing/printer.h"
#include "ui/printing/printer_correction.h"
#include "ui/prompts/prompts.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

// The sheet's lines are whole centimetres; what they measure may be typed in inches all the same.
constexpr LengthStyle kStyle = LengthStyle::millimetres(1);

}  // namespace

CalibrationDialog::CalibrationDialog(const QStringList& printers,
                                     Paper paper,
                                     bool inInches,
                                     const std::string& date,
                                     Prompts& prompts,
                                     QWidget* parent)
    : QDialog(parent),
      paper_(std::move(paper)),
      inInches_(inInches),
      date_(date),
      prompts_(prompts) {
    setWindowTitle(tr("Correct a Printer"));
    makeFields(printers);
    showKept();
}

void CalibrationDialog::makeFields(const QStringList& printers) {
    auto* form = new QFormLayout(this);
    const Vec2 ought = calibrationLengths(paper_);
    const auto shown = [&](double mm) {
        return qt(showLength(Length::mm(mm), inInches_ ? kStyle.inBothUnits() : kStyle, true));
    };
    auto* what = new QLabel(
        tr("Print the calibration sheet of %1, measure its two lines, and enter what they are. "
           "Prints on this printer and paper are then stretched to come out true, and say so. "
           "PDF files are not changed.")
            .arg(qt(paper_.name)),
        this);
    what->setWordWrap(true);
    form->addRow(what);
    printer_ = new QComboBox(this);
    printer_->setEditable(true);
    printer_->addItems(printers);
    printer_->setAccessibleName(tr("printer"));
    printer_->lineEdit()->setAccessibleName(tr("printer"));
    form->addRow(tr("P&rinter"), printer_);
    auto* sheets = new QHBoxLayout;
    auto* print = new QPushButton(tr("&Print the Sheet…"), this);
    auto* save = new QPushButton(tr("&Save It as PDF…"), this);
    print->setAutoDefault(false);  // Enter in a field is for the figures
    save->setAutoDefault(false);
    sheets->addWidget(print);
    sheets->addWidget(save);
    sheets->addStretch(1);
    form->addRow(QString(), sheets);
    across_ = new LengthField(this);
    across_->setAccessibleName(tr("measured across"));
    up_ = new LengthField(this);
    up_->setAccessibleName(tr("measured up"));
    form->addRow(tr("&Across the sheet, %1").arg(shown(ought.x)), across_);
    form->addRow(tr("&Up the sheet, %1").arg(shown(ought.y)), up_);
    verdict_ = new QLabel(this);
    verdict_->setWordWrap(true);
    verdict_->setMinimumHeight(3 * fontMetrics().lineSpacing());
    verdict_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    form->addRow(verdict_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    keep_ = buttons->addButton(tr("&Keep"), QDialogButtonBox::AcceptRole);
    forget_ = buttons->addButton(tr("&Forget"), QDialogButtonBox::DestructiveRole);
    keep_->setDefault(true);
    form->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &CalibrationDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(forget_, &QPushButton::clicked, this, &CalibrationDialog::forget);
    connect(print, &QPushButton::clicked, this, &CalibrationDialog::printSheet);
    connect(save, &QPushButton::clicked, this, &CalibrationDialog::saveSheet);
    connect(printer_, &QComboBox::currentTextChanged, this, &CalibrationDialog::showKept);
    for (LengthField* field : {across_, up_}) {
        connect(field, &LengthField::lengthChanged, this, &CalibrationDialog::judge);
    }
}

// What is kept for the printer; else the lengths that the lines ought to have.
void CalibrationDialog::showKept() {
    const std::optional<Measured> kept = measuredFor(printer_->currentText().trimmed(), paper_);
    const Vec2 lengths = kept ? kept->lengths : calibrationLengths(paper_);
    across_->setLength(Length::mm(lengths.x), kStyle);
    up_->setLength(Length::mm(lengths.y), kStyle);
    forget_->setEnabled(kept.has_value());
    judge();
}

Vec2 CalibrationDialog::measured() const {
    return {across_->length().mm(), up_->length().mm()};
}

void CalibrationDialog::judge() {
    const bool hasPrinter = !printer_->currentText().trimmed().isEmpty();
    const Result<ScaleCorrection> correction = correctionFrom(paper_, measured());
    keep_->setEnabled(hasPrinter && correction.has_value());
    if (!correction) {
        verdict_->setText(qt(correction.error().message));
    } else if (!hasPrinter) {
        verdict_->setText(tr("Name the printer that the sheet was printed on."));
    } else if (correction->isNone()) {
        verdict_->setText(tr("Both lines are as they ought to be: nothing is corrected."));
    } else {
        verdict_->setText(tr("Prints will be stretched by %1 along the short side and by %2 along "
                             "the long side.")
                              .arg(qt(showDecimal(correction->shortSide, 4)),
                                   qt(showDecimal(correction->longSide, 4))));
    }
}

PrintJob CalibrationDialog::sheet() const {
    return calibrationJob(paper_, inInches_, date_, LetteringMetrics());
}

void CalibrationDialog::printSheet() {
    if (const Result<void> found = findPrinter(); !found) {
        prompts_.tell(this, qt(found.error().message));
        return;
    }
    QPrinter printer;
    if (const QString name = printer_->currentText().trimmed(); !name.isEmpty()) {
        printer.setPrinterName(name);
    }
    QPrintDialog dialog(&printer, this);
    if (dialog.exec() != QDialog::Accepted) {
        return;
    }
    printer_->setCurrentText(printer.printerName());
    if (const Result<void> printed = shoulderline::print(sheet(), printer); !printed) {
        prompts_.tell(this, qt(printed.error().message));
    }
}

void CalibrationDialog::saveSheet() {
    const QString path =
        prompts_.pdfPath(this, tr("calibration sheet %1").arg(qt(paper_.name)) + u".pdf"_s);
    if (path.isEmpty()) {
        return;
    }
    if (const Result<void> written = writePdf(sheet(), utf8(path), date_); !written) {
        prompts_.tell(this, qt(written.error().message));
    }
}

void CalibrationDialog::forget() {
    forgetMeasured(printer_->currentText().trimmed(), paper_);
    showKept();
}

void CalibrationDialog::accept() {
    across_->clearFocus();  // takes what is still being typed
    up_->clearFocus();
    judge();
    if (!keep_->isEnabled()) {
        return;
    }
    keepMeasured(printer_->currentText().trimmed(), paper_, {measured(), qt(date_)});
    QDialog::accept();
}

}  // namespace shoulderline
