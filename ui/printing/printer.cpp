#include "ui/printing/printer.h"

#include <QPrintEngine>
#include <QPrinterInfo>
#include <QStringList>
#include <QVariant>
#include <algorithm>
#include <array>

#include "ui/printing/page_painter.h"
#include "ui/printing/page_size.h"

namespace shoulderline {

namespace {

// Qt's own property for options of a CUPS job; print engines of other kinds pass it over.
constexpr auto kCupsOptions = static_cast<QPrintEngine::PrintEnginePropertyKey>(0xfe00);

// Size and way up one by one: a whole layout without margins is refused by printers that have some,
// and the job would go onto the printer's own paper.
void setUp(QPrinter& printer, const Page& page) {
    const QPageLayout layout = layoutOf(page);
    printer.setFullPage(true);
    printer.setPageSize(layout.pageSize());
    printer.setPageOrientation(layout.orientation());
    printer.setPageMargins(QMarginsF(0, 0, 0, 0), QPageLayout::Millimeter);
}

// What a dialog has chosen, but for paper and scale, which are the job's. A printer that a dialog
// was shown for keeps to the paper the dialog wrote into it, so that another one takes the job.
void adopt(const QPrinter& chosen, QPrinter& printer) {
    if (chosen.outputFormat() == QPrinter::PdfFormat) {
        printer.setOutputFormat(QPrinter::PdfFormat);
    } else {
        printer.setPrinterName(chosen.printerName());
    }
    if (!chosen.outputFileName().isEmpty()) {
        printer.setOutputFileName(chosen.outputFileName());
    }
    printer.setCopyCount(chosen.copyCount());
    printer.setCollateCopies(chosen.collateCopies());
    printer.setDuplex(chosen.duplex());
    printer.setColorMode(chosen.colorMode());
    printer.setPageOrder(chosen.pageOrder());
    printer.setPaperSource(chosen.paperSource());
    // Pairs of names and values.
    const QStringList all = chosen.printEngine()->property(kCupsOptions).toStringList();
    QStringList options;
    for (qsizetype i = 0; i + 1 < all.size(); i += 2) {
        constexpr std::array kOfTheJob{
            "media", "PageSize", "print-scaling", "fit-to-page", "scaling", "number-up"};
        const bool isOfTheJob =
            std::any_of(kOfTheJob.begin(), kOfTheJob.end(), [&](const char* name) {
                return all[i].compare(QLatin1String(name), Qt::CaseInsensitive) == 0;
            });
        if (!isOfTheJob) {
            options << all[i] << all[i + 1];
        }
    }
    options << QStringLiteral("print-scaling") << QStringLiteral("none");
    printer.printEngine()->setProperty(kCupsOptions, options);
}

// The pages of the printer's range; all without one.
PrintJob asked(PrintJob job, const QPrinter& printer) {
    const auto count = static_cast<int>(job.pages.size());
    if (printer.printRange() == QPrinter::PageRange && printer.fromPage() > 0) {
        const int from = std::min(printer.fromPage(), count + 1);
        const int to = std::clamp(printer.toPage(), from - 1, count);
        job.pages.erase(job.pages.begin() + to, job.pages.end());
        job.pages.erase(job.pages.begin(), job.pages.begin() + (from - 1));
    }
    return job;
}

}  // namespace

Result<void> findPrinter() {
    if (QPrinterInfo::availablePrinterNames().isEmpty()) {
        return fail(ErrorCode::CannotWrite,
                    "No printer is set up on this computer: save the sheets as PDF and print them "
                    "elsewhere.");
    }
    return {};
}

Result<void> print(const PrintJob& all, const QPrinter& chosen, const ScaleCorrection& correction) {
    const PrintJob job =
        withCorrectionNoted(asked(all, chosen), correction, chosen.printerName().toStdString());
    if (job.pages.empty()) {
        return fail(ErrorCode::CannotWrite,
                    "There is nothing to print: the piece has no parts that could be worked out.");
    }
    QPrinter printer(QPrinter::HighResolution);
    adopt(chosen, printer);
    printer.setDocName(QString::fromStdString(job.title));
    setUp(printer, job.pages.front());
    QPainter painter;
    if (!painter.begin(&printer)) {
        return fail(ErrorCode::CannotWrite,
                    "The printer '" + printer.printerName().toStdString() +
                        "' does not take the job: see whether it is switched on and connected.");
    }
    const SheetPainter sheets;
    for (const Page& page : job.pages) {
        if (&page != &job.pages.front()) {
            setUp(printer, page);
            if (!printer.newPage()) {
                return fail(ErrorCode::CannotWrite,
                            "The printer stopped before '" + page.name + "'.");
            }
        }
        painter.save();
        const double scale = printer.resolution() / 25.4;
        painter.scale(scale, scale);
        paintPage(painter, job, page, sheets, {}, correction);
        painter.restore();
    }
    return painter.end() ? Result<void>()
                         : fail(ErrorCode::CannotWrite, "The printer did not finish the job.");
}

}  // namespace shoulderline
