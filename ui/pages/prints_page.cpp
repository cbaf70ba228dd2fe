#include "ui/pages/prints_page.h"

#include <QHBoxLayout>
#include <QPrintDialog>
#include <QPrinter>
#include <QPrinterInfo>
#include <QPushButton>
#include <QScrollArea>

#include "ui/look/text.h"
#include "ui/look/text_button.h"
#include "ui/pages/calibration_dialog.h"
#include "ui/printing/pdf_writer.h"
#include "ui/printing/printer.h"
#include "ui/printing/printer_correction.h"
#include "ui/prompts/prompts.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr int kRest = 150;  // milliseconds without a change before pages are laid out anew

}  // namespace

PrintsPage::PrintsPage(Document& document, Prompts& prompts, QWidget* parent)
    : BoardPage(parent), document_(document), prompts_(prompts) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    choices_ = new PrintChoices(document_, this);
    layout->addWidget(choices_);
    makeCommands(*layout);
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setAccessibleName(tr("pages"));
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    preview_ = new PrintPreview;
    scroll->setWidget(preview_);
    layout->addWidget(scroll, 1);
    connect(choices_, &PrintChoices::chosen, this, &PrintsPage::refresh);
    // The pages are laid out anew once the rest of the window shows the change, and typing rests.
    later_.setSingleShot(true);
    connect(&later_, &QTimer::timeout, this, &PrintsPage::refresh);
    connect(&document_, &Document::changed, this, [this] {
        if (isVisible()) {
            later_.start(kRest);
        }
    });
}

// Saving and printing, and the size of the preview.
void PrintsPage::makeCommands(QVBoxLayout& layout) {
    auto* how = new QHBoxLayout;
    how->setContentsMargins(14, 8, 14, 0);
    how->setSpacing(8);
    auto* pdf = new QPushButton(tr("Save PDF…"), this);
    auto* printer = new QPushButton(tr("Print…"), this);
    auto* correct = new QPushButton(tr("Correct a Printer…"), this);
    for (QWidget* widget : {pdf, printer, correct}) {
        how->addWidget(widget);
    }
    how->addStretch(1);
    layout.addLayout(how);
    auto* foot = new QHBoxLayout;
    foot->setContentsMargins(14, 6, 14, 8);
    count_ = new QLabel(this);
    count_->setForegroundRole(QPalette::PlaceholderText);
    count_->setWordWrap(true);
    foot->addWidget(count_, 1);
    auto* smaller = new TextButton(tr("smaller"), TextButton::Kind::Action, this);
    auto* larger = new TextButton(tr("larger"), TextButton::Kind::Action, this);
    foot->addWidget(smaller);
    foot->addSpacing(8);
    foot->addWidget(larger);
    layout.addLayout(foot);
    connect(pdf, &QPushButton::clicked, this, &PrintsPage::savePdf);
    connect(printer, &QPushButton::clicked, this, &PrintsPage::print);
    connect(correct, &QPushButton::clicked, this, &PrintsPage::correctPrinter);
    connect(smaller, &TextButton::clicked, this, [this] {
        preview_->setPageWidth(preview_->pageWidth() * 3 / 4);
    });
    connect(larger, &TextButton::clicked, this, [this] {
        preview_->setPageWidth(preview_->pageWidth() * 4 / 3);
    });
}

void PrintsPage::showEvent(QShowEvent* event) {
    BoardPage::showEvent(event);
    refresh();
}

void PrintsPage::refresh() {
    choices_->refresh();
    const Result<PrintOrder> order = choices_->order();
    if (!order) {
        count_->setText(qt(order.error().message));
        return;
    }
    order_ = *order;
    job_ = printJob(document_.piece(), document_.resolved(), order_, metrics_);
    const auto count = static_cast<int>(job_.pages.size());
    if (const std::optional<std::string> tooLarge = runsOffPaper(job_, metrics_)) {
        count_->setText(tr("'%1' does not fit on %2 at this scale: a smaller one, or larger paper.")
                            .arg(qt(*tooLarge), qt(order_.paper.name)));
        job_ = {};
    } else if (count == 0) {
        count_->setText(nothingToPrint());
    } else {
        // Without a translation Qt keeps the plural: one page has its own words.
        const QString pages = count == 1 ? tr("1 page") : tr("%n pages", nullptr, count);
        count_->setText(isFullSize(order_.kind)
                            ? tr("%1 of %2, full size. Print at 100 %, then check the bar and "
                                 "square with a rule.")
                                  .arg(pages, qt(order_.paper.name))
                            : tr("%1 of %2").arg(pages, qt(order_.paper.name)));
    }
    preview_->show(job_);
}

bool PrintsPage::hasPages() {
    refresh();
    if (job_.pages.empty()) {
        prompts_.tell(this, count_->text());
    }
    return !job_.pages.empty();
}

void PrintsPage::savePdf() {
    if (!hasPages()) {
        return;
    }
    const QString name = qt(document_.piece().name).simplified().replace(u'/', u'-');
    const QString path = prompts_.pdfPath(this, name + u".pdf"_s);
    if (path.isEmpty()) {
        return;
    }
    if (const Result<void> written = writePdf(job_, utf8(path), order_.date); !written) {
        prompts_.tell(this, qt(written.error().message));
        return;
    }
    const auto count = static_cast<int>(job_.pages.size());
    count_->setText((count == 1 ? tr("Saved 1 page") : tr("Saved %n pages", nullptr, count)) +
                    u": "_s + path);
}

void PrintsPage::print() {
    if (!hasPages()) {
        return;
    }
    if (const Result<void> found = findPrinter(); !found) {
        prompts_.tell(this, tr("%1 Save PDF works without one.").arg(qt(found.error().message)));
        return;
    }
    QPrinter printer;
    printer.setDocName(qt(document_.piece().name));
    QPrintDialog dialog(&printer, this);
    dialog.setMinMax(1, static_cast<int>(job_.pages.size()));
    dialog.setFromTo(1, static_cast<int>(job_.pages.size()));
    dialog.setOption(QAbstractPrintDialog::PrintPageRange);
    if (dialog.exec() != QDialog::Accepted) {
        return;
    }
    const ScaleCorrection correction = correctionFor(printer.printerName(), order_.paper);
    if (const Result<void> printed = shoulderline::print(job_, printer, correction); !printed) {
        prompts_.tell(this, qt(printed.error().message));
    }
}

void PrintsPage::correctPrinter() {
    refresh();
    CalibrationDialog dialog(QPrinterInfo::availablePrinterNames(),
                             order_.paper,
                             document_.piece().unit == Unit::Inch,
                             order_.date,
                             prompts_,
                             this);
    dialog.exec();
}

QString PrintsPage::nothingToPrint() const {
    const bool isEmpty = document_.resolved().parts.empty();
    if (!isEmpty && order_.kind == PrintKind::Patterns) {
        return tr("No part of this piece is shaped: there is no pattern to print.");
    }
    if (!isEmpty && order_.kind == PrintKind::Assemblies) {
        return tr("This piece states no assembly: there is none to print.");
    }
    return tr("There is nothing to print yet.");
}

}  // namespace shoulderline
