#include <algorithm>

#include "core/drawing/paper.h"
#include "core/drawing/part_sheet.h"
#include "core/drawing/pictorial.h"

namespace shoulderline {

namespace {

Vec2 lying(const Paper& paper) {
    return {std::max(paper.size.x, paper.size.y), std::min(paper.size.x, paper.size.y)};
}
Vec2 upright(const Paper& paper) {
    return {std::min(paper.size.x, paper.size.y), std::max(paper.size.x, paper.size.y)};
}

void addPage(Sheet sheet, PrintJob& job) {
    Page page;
    page.size = sheet.size;
    page.printable = {{0, 0}, sheet.size};
    page.content = job.contents.size();
    page.name = sheet.title;
    page.furniture.size = sheet.size;
    job.contents.push_back(std::move(sheet));
    job.pages.push_back(std::move(page));
}

}  // namespace

PrintJob pictorialJob(const Piece& piece,
                      const ResolvedPiece& resolved,
                      const Paper& paper,
                      double scale,
                      const std::string& date,
                      const TextMetrics& metrics) {
    PrintJob job;
    job.title = piece.name;
    if (!resolved.parts.empty()) {
        addPage(pictorialSheet(piece, resolved, {lying(paper), scale, date, 0, 0}, metrics), job);
    }
    return job;
}

PrintJob sheetJob(const Piece& piece,
                  const ResolvedPiece& resolved,
                  bool parts,
                  const Paper& paper,
                  double scale,
                  const std::string& date,
                  const TextMetrics& metrics) {
    PrintJob job;
    job.title = piece.name;
    if (!parts) {
        addPage(pieceSheet(piece, resolved, {lying(paper), scale, date, 0, 0}, metrics), job);
        return job;
    }
    const std::vector<PartKind> kinds = partKinds(resolved);
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        SheetFrame frame{
            lying(paper), scale, date, static_cast<int>(i) + 1, static_cast<int>(kinds.size())};
        ScaledSheet sheet = scaledPartSheet(piece, resolved, kinds[i], frame, metrics);
        if (!sheet.fits) {
            frame.paper = upright(paper);
            ScaledSheet other = scaledPartSheet(piece, resolved, kinds[i], frame, metrics);
            if (other.fits) {
                sheet = std::move(other);
            }
        }
        addPage(std::move(sheet.sheet), job);
    }
    return job;
}

}  // namespace shoulderline
