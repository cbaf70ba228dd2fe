#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/index_sheet.h"
#include "core/drawing/joint_sheets.h"
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

// The part on the paper lying, or upright where it fits only so.
Sheet partSheetOn(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const PartKind& kind,
                  const Paper& paper,
                  SheetFrame frame,
                  const TextMetrics& metrics) {
    frame.paper = lying(paper);
    ScaledSheet sheet = scaledPartSheet(piece, resolved, kind, frame, metrics);
    if (!sheet.fits) {
        frame.paper = upright(paper);
        ScaledSheet other = scaledPartSheet(piece, resolved, kind, frame, metrics);
        if (other.fits) {
            return std::move(other.sheet);
        }
    }
    return std::move(sheet.sheet);
}

}  // namespace

PrintJob setJob(const Piece& piece,
                const ResolvedPiece& resolved,
                const Paper& paper,
                const std::string& date,
                const TextMetrics& metrics) {
    PrintJob job;
    job.title = piece.name + ", drawings";
    if (resolved.parts.empty()) {
        return job;
    }
    const std::vector<PartKind> kinds = partKinds(resolved);
    SheetFrame frame{lying(paper), 0.0, date, 0, 0};
    const std::size_t joints = jointSheets(piece, resolved, frame, metrics).size();
    const std::size_t after = 2 + kinds.size() + joints;
    const int index = indexSheetCount(frame.paper, after);
    frame.count = index + static_cast<int>(after);
    frame.number = index;

    std::vector<Sheet> sheets;
    std::vector<std::string> titles;
    const auto add = [&](Sheet sheet, const std::string& title) {
        sheet.title = title;
        titles.push_back(title);
        sheets.push_back(std::move(sheet));
    };
    ++frame.number;
    add(pieceSheet(piece, resolved, frame, metrics), "front, side and plan");
    ++frame.number;
    add(pictorialSheet(piece, resolved, frame, metrics), "assembled and pulled apart");
    for (const PartKind& kind : kinds) {
        ++frame.number;
        add(partSheetOn(piece, resolved, kind, paper, frame, metrics), kind.name);
    }
    ++frame.number;
    for (Sheet& sheet : jointSheets(piece, resolved, frame, metrics)) {
        const std::string title = sheet.title;
        add(std::move(sheet), title);
    }
    for (Sheet& sheet : indexSheets(piece, titles, frame, metrics)) {
        addPage(std::move(sheet), job);
    }
    for (Sheet& sheet : sheets) {
        addPage(std::move(sheet), job);
    }
    return job;
}

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
        const SheetFrame frame{
            lying(paper), scale, date, static_cast<int>(i) + 1, static_cast<int>(kinds.size())};
        addPage(partSheetOn(piece, resolved, kinds[i], paper, frame, metrics), job);
    }
    return job;
}

std::optional<std::string> runsOffPaper(const PrintJob& job, const TextMetrics& metrics) {
    for (const Sheet& sheet : job.contents) {
        const Rect bounds = boundsOf(sheet.ops, metrics);
        if (bounds.min.x < 0 || bounds.min.y < 0 || bounds.max.x > sheet.size.x ||
            bounds.max.y > sheet.size.y) {
            return sheet.title;
        }
    }
    return std::nullopt;
}

}  // namespace shoulderline
