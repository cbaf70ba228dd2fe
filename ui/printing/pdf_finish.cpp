#include "ui/printing/pdf_finish.h"

#include <exception>
#include <memory>

#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>

namespace shoulderline {

namespace {

constexpr double kPointsPerMm = 72.0 / 25.4;

// D:20261124000000Z
std::string pdfDate(std::string_view iso) {
    std::string digits;
    for (const char c : iso) {
        if (c >= '0' && c <= '9') {
            digits += c;
        }
    }
    digits = digits.size() >= 8 ? digits.substr(0, 8) : std::string("20000101");
    return "D:" + digits + "000000Z";
}

void fitPage(QPDF& pdf, QPDFPageObjectHelper& page, Vec2 size) {
    const double width = size.x * kPointsPerMm;
    const double height = size.y * kPointsPerMm;
    const double wasHigh = page.getMediaBox().getArrayItem(3).getNumericValue();
    const std::string shift =
        "q 1 0 0 1 0 " + QPDFObjectHandle::newReal(height - wasHigh, 5).getRealValue() + " cm\n";
    page.addPageContents(QPDFObjectHandle::newStream(&pdf, shift), true);
    page.addPageContents(QPDFObjectHandle::newStream(&pdf, "\nQ\n"), false);
    const std::vector<QPDFObjectHandle> box{QPDFObjectHandle::newInteger(0),
                                            QPDFObjectHandle::newInteger(0),
                                            QPDFObjectHandle::newReal(width, 4),
                                            QPDFObjectHandle::newReal(height, 4)};
    page.getObjectHandle().replaceKey("/MediaBox", QPDFObjectHandle::newArray(box));
}

std::string finished(std::string_view bytes,
                     const std::vector<Vec2>& sizes,
                     std::string_view date) {
    QPDF pdf;
    pdf.setSuppressWarnings(true);
    pdf.processMemoryFile("drawing", bytes.data(), bytes.size());
    pdf.getRoot().replaceKey(
        "/ViewerPreferences",
        QPDFObjectHandle::parse(
            "<< /PrintScaling /None /PickTrayByPDFSize true /Duplex /Simplex /NumCopies 1 >>"));
    QPDFObjectHandle info = pdf.getTrailer().getKey("/Info");
    if (info.isDictionary()) {
        info.replaceKey("/CreationDate", QPDFObjectHandle::newString(pdfDate(date)));
        info.removeKey("/ModDate");
    }
    std::vector<QPDFPageObjectHelper> pages = QPDFPageDocumentHelper(pdf).getAllPages();
    for (std::size_t i = 0; i < pages.size() && i < sizes.size(); ++i) {
        fitPage(pdf, pages[i], sizes[i]);
    }
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setDeterministicID(true);
    writer.setMinimumPDFVersion("1.7");
    writer.setObjectStreamMode(qpdf_o_disable);
    writer.write();
    const std::shared_ptr<Buffer> buffer = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

}  // namespace

Result<std::string> finishPdf(std::string_view bytes,
                              const std::vector<Vec2>& pages,
                              std::string_view date) {
    try {
        return finished(bytes, pages, date);
    } catch (const std::exception& e) {  // libqpdf's way to report
        return fail(ErrorCode::CannotWrite, std::string("The PDF could not be made: ") + e.what());
    }
}

}  // namespace shoulderline
