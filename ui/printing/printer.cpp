#include "ui/printing/printer.h"

#include <QPrintEngine>
#include <QPrinterInfo>
#include <QStringList>
#include <QVariant>
#include <algorithm>

#include "ui/printing/page_painter.h"
#include "ui/printing/page_size.h"

namespace shoulderline {

namespace {

// Qt's own property for options of a CUPS job; print engines of other kinds pass it over.
constexpr auto kCupsOptions = static_cast<QPrintEngine::PrintEnginePropertyKey>(0xfe00);

void setUp(QPrinter& printer, const Page& page) {
    printer.setFullPage(true);
    printer.setPageLayout(layoutOf(page));
    printer.setPageMargins(QMarginsF(0, 0, 0, 0), QPageLayout::Millimeter);
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

Result<void> print(const PrintJob& all, QPrinter& printer, const ScaleCorrection& correction) {
    const PrintJob job =
        withCorrectionNoted(asked(all, printer), correction, printer.printerName().toStdString());
    if (job.pages.empty()) {
        return fail(ErrorCode::CannotWrite,
                    "There is nothing to print: the piece has no parts that could be worked out.");
    }
    printer.setDocName(QString::fromStdString(job.title));
    printer.printEngine()->setProperty(
        kCupsOptions, QStringList{QStringLiteral("print-scaling"), QStringLiteral("none")});
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
