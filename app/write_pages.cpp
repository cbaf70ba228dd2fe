#include "app/write_pages.h"

#include <algorithm>
#include <filesystem>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/svg_writer.h"
#include "core/storage/piece_file.h"
#include "ui/painting/lettering_font.h"
#include "ui/printing/pdf_writer.h"

namespace shoulderline {

namespace {

bool isSvg(const std::filesystem::path& path) {
    std::string ending = path.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return ending == ".svg";
}

}  // namespace

Result<std::vector<std::string>> writePages(const PrintJob& job,
                                            const std::string& out,
                                            const std::string& date,
                                            const ScaleCorrection& correction) {
    const std::filesystem::path path(out);
    if (!isSvg(path)) {
        return writePdf(job, path, date, correction).map([&] {
            return std::vector<std::string>{out};
        });
    }
    if (!correction.isNone()) {
        return fail(ErrorCode::OutOfRange,
                    "SVG files are always true: a printer is corrected in a PDF or at printing.",
                    out);
    }
    const LetteringMetrics metrics;
    const std::string font = letteringFontFile();
    std::vector<std::string> files;
    for (std::size_t i = 0; i < job.pages.size(); ++i) {
        std::filesystem::path file = path;
        if (job.pages.size() > 1) {
            file.replace_filename(path.stem().string() + "-" + std::to_string(i + 1) +
                                  path.extension().string());
        }
        const Result<void> written = replaceFile(file, svgOf(job, job.pages[i], metrics, font));
        if (!written) {
            return tl::unexpected(written.error());
        }
        files.push_back(file.string());
    }
    return files;
}

}  // namespace shoulderline
