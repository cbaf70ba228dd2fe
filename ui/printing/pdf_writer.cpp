#include "ui/printing/pdf_writer.h"

#include <QBuffer>
#include <QMarginsF>
#include <QPageLayout>
#include <QPageSize>
#include <QPdfWriter>
#include <algorithm>

#include "core/storage/piece_file.h"
#include "ui/printing/page_painter.h"
#include "ui/printing/page_size.h"
#include "ui/printing/pdf_finish.h"

namespace shoulderline {

namespace {

constexpr int kResolution = 1200;  // dots per inch; only a device pixel's size hangs on it

}  // namespace

Result<std::string> pdfOf(const PrintJob& job,
                          const std::string& date,
                          const ScaleCorrection& correction) {
    if (job.pages.empty()) {
        return fail(ErrorCode::CannotWrite,
                    "There is nothing to print: the piece has no parts that could be worked out.");
    }
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(kResolution);
        writer.setTitle(QString::fromStdString(job.title));
        writer.setCreator(QStringLiteral("Shoulderline"));
        writer.setPageLayout(layoutOf(job.pages.front()));
        const SheetPainter sheets;
        QPainter painter;
        for (const Page& page : job.pages) {
            if (&page == &job.pages.front()) {
                painter.begin(&writer);
            } else {
                writer.setPageLayout(layoutOf(page));
                writer.newPage();
            }
            painter.save();
            painter.scale(kResolution / 25.4, kResolution / 25.4);
            paintPage(painter, job, page, sheets, {}, correction);
            painter.restore();
        }
        painter.end();
    }
    std::vector<Vec2> sizes;
    std::transform(
        job.pages.begin(), job.pages.end(), std::back_inserter(sizes), [](const Page& page) {
            return page.size;
        });
    return finishPdf({bytes.constData(), static_cast<std::size_t>(bytes.size())}, sizes, date);
}

Result<void> writePdf(const PrintJob& job,
                      const std::filesystem::path& path,
                      const std::string& date,
                      const ScaleCorrection& correction) {
    const Result<std::string> bytes = pdfOf(job, date, correction);
    if (!bytes) {
        return tl::unexpected<Error>(bytes.error());
    }
    return replaceFile(path, *bytes);
}

}  // namespace shoulderline
