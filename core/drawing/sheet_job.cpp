#include <algorithm>

#include "core/drawing/assembly_sheet.h"
#include "core/drawing/dimension_parts.h"
#include "core/drawing/index_sheet.h"
#include "core/drawing/joint_sheets.h"
#include "core/drawing/paper.h"
#include "core/drawing/part_set_up_sheet.h"
#include "core/drawing/part_sheet.h"
#include "core/drawing/parts_list.h"
#include "core/drawing/pictorial.h"
#include "core/drawing/shared_sheets.h"
#include "core/drawing/title_block.h"

namespace shoulderline {

namespace {

Vec2 lying(const Paper& paper) {
    return {std::max(paper.size.x, paper.size.y), std::min(paper.size.x, paper.size.y)};
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

Vec2 heldSo(const Paper& paper, Held held) {
    return held == Held::Upright ? upright(paper) : lying(paper);
}

// The part on the paper lying, or upright where that is better.
PartOnSheets setOutOn(const Piece& piece,
                      const ResolvedPiece& resolved,
                      const PartKind& kind,
                      const Paper& paper,
                      double scale,
                      Held held,
                      const TextMetrics& metrics) {
    PartOnSheets out = setOutPart(piece, resolved, kind, heldSo(paper, held), scale, metrics);
    if (held == Held::Either && (!out.fits || out.drawings.size() > 1)) {
        PartOnSheets other = setOutPart(piece, resolved, kind, upright(paper), scale, metrics);
        if (isBetterSetOut(other, out)) {
            return other;
        }
    }
    return out;
}

// Whether the list of parts would leave the views little room on their sheet.
bool isListLong(const Piece& piece,
                const ResolvedPiece& resolved,
                Vec2 paper,
                const TextMetrics& metrics) {
    constexpr double kMost = 0.6;  // of the room's height
    const Vec2 list = boundsOf(partsList(piece, resolved, metrics), metrics).size();
    return list.y > kMost * drawingSpace(paper).size().y;
}

// The list by itself, on the paper upright where it is too high for it lying.
Sheet listSheet(const Piece& piece,
                const ResolvedPiece& resolved,
                SheetFrame frame,
                const TextMetrics& metrics) {
    constexpr double kClear = 4.0;
    std::vector<Op> list = partsList(piece, resolved, metrics);
    const Rect bounds = boundsOf(list, metrics);
    const auto roomOn = [](Vec2 paper) {
        return drawingSpace(paper).size() - Vec2{2.0 * kClear, 2.0 * kClear};
    };
    if (bounds.size().y > roomOn(frame.paper).y) {
        frame.paper = {std::min(frame.paper.x, frame.paper.y),
                       std::max(frame.paper.x, frame.paper.y)};
    }
    Sheet sheet;
    sheet.size = frame.paper;
    sheet.lines = LineGroup::Medium;
    TitleBlock block = titleBlock("list of parts", piece, frame);
    block.quantity = std::to_string(resolved.parts.size()) + " parts";
    block.material = "as listed";
    block.sizeCaption = "";
    block.scale = "none";
    sheet.ops = frameAndTitle(frame.paper, block, metrics);
    move(list, drawingSpace(frame.paper).min + Vec2{kClear, kClear} - bounds.min);
    append(sheet.ops, std::move(list));
    return sheet;
}

// A sheet of views with the list of parts on it, or before a sheet of the list where that is long.
void addWithList(
    const Piece& piece,
    const ResolvedPiece& resolved,
    Sheet (*views)(const Piece&, const ResolvedPiece&, const SheetFrame&, const TextMetrics&),
    SheetFrame frame,
    const TextMetrics& metrics,
    PrintJob& job) {
    frame.withList = !isListLong(piece, resolved, frame.paper, metrics);
    if (!frame.withList) {
        frame.number = 1;
        frame.count = 2;
    }
    addPage(views(piece, resolved, frame, metrics), job);
    if (!frame.withList) {
        ++frame.number;
        addPage(listSheet(piece, resolved, frame, metrics), job);
    }
}

// The parts of a job, set out, and their sheets.
class PartsSetOut {
  public:
    PartsSetOut(const Piece& piece,
                const ResolvedPiece& resolved,
                const Paper& paper,
                double scale,
                Held held,
                const TextMetrics& metrics)
        : piece_(piece),
          resolved_(resolved),
          metrics_(metrics),
          kinds_(kindsOnSheets(piece, resolved, metrics)) {
        for (const PartKind& kind : kinds_) {
            parts_.push_back(setOutOn(piece, resolved, kind, paper, scale, held, metrics));
        }
    }

    [[nodiscard]] std::size_t count() const {
        std::size_t count = 0;
        for (const PartOnSheets& part : parts_) {
            count += part.drawings.size();
        }
        return count;
    }
    [[nodiscard]] std::vector<std::string> titles() const {
        std::vector<std::string> titles;
        for (std::size_t i = 0; i < kinds_.size(); ++i) {
            for (std::size_t k = 0; k < parts_[i].drawings.size(); ++k) {
                titles.push_back(titleOf(kinds_[i], k, parts_[i].drawings.size()));
            }
        }
        return titles;
    }
    // Numbered from the frame's number on.
    [[nodiscard]] std::vector<Sheet> sheets(SheetFrame frame) const {
        std::vector<Sheet> sheets;
        for (std::size_t i = 0; i < kinds_.size(); ++i) {
            for (std::size_t k = 0; k < parts_[i].drawings.size(); ++k) {
                sheets.push_back(
                    framedPartSheet(piece_, resolved_, kinds_[i], parts_[i], k, frame, metrics_));
                ++frame.number;
            }
        }
        return sheets;
    }

  private:
    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const TextMetrics& metrics_;
    std::vector<PartKind> kinds_;
    std::vector<PartOnSheets> parts_;
};

}  // namespace

PrintJob setJob(const Piece& piece,
                const ResolvedPiece& resolved,
                const Paper& paper,
                const std::string& date,
                const TextMetrics& metrics,
                Held held) {
    PrintJob job;
    job.title = piece.name + ", drawings";
    if (resolved.parts.empty()) {
        return job;
    }
    const PartsSetOut parts(piece, resolved, paper, 0.0, held, metrics);
    SheetFrame frame{heldSo(paper, held), 0.0, date, 0, 0};
    JointsSetOut joints = setOutJoints(piece, resolved, frame.paper, metrics);
    frame.withList = !isListLong(piece, resolved, frame.paper, metrics);
    std::vector<std::string> titles{"front, side and plan"};
    if (!frame.withList) {
        titles.push_back("list of parts");
    }
    titles.push_back("assembled and pulled apart");
    const std::vector<GlueUp> glueUps = glueUpsOf(piece, resolved);
    for (const GlueUp& glueUp : glueUps) {
        titles.push_back(titleOf(piece, glueUp));
    }
    for (std::string& title : parts.titles()) {
        titles.push_back(std::move(title));
    }
    for (const JointsOnSheet& sheet : joints.sheets) {
        titles.push_back(titleOf(sheet));
    }
    const std::vector<SetUpsOnSheet> setUps =
        setOutPartSetUps(piece, resolved, frame.paper, metrics);
    for (std::size_t i = 0; i < setUps.size(); ++i) {
        titles.push_back(partSetUpsTitle(i, setUps.size()));
    }
    const int index = indexSheetCount(frame.paper, titles, metrics);
    frame.count = index + static_cast<int>(titles.size());
    frame.number = index + 1;

    std::vector<Sheet> sheets;
    const auto add = [&](Sheet sheet) {
        sheet.title = titles[sheets.size()];
        sheets.push_back(std::move(sheet));
        ++frame.number;
    };
    add(pieceSheet(piece, resolved, frame, metrics));
    if (!frame.withList) {
        add(listSheet(piece, resolved, frame, metrics));
    }
    frame.withList = false;  // once in a set
    add(pictorialSheet(piece, resolved, frame, metrics));
    const auto addAll = [&](std::vector<Sheet> more) {
        for (Sheet& sheet : more) {
            add(std::move(sheet));
        }
    };
    for (const GlueUp& glueUp : glueUps) {
        addAll({assemblySheet(piece, resolved, glueUp, frame, metrics)});
    }
    addAll(parts.sheets(frame));
    addAll(jointSheets(piece, resolved, std::move(joints), frame, metrics));
    addAll(partSetUpSheets(piece, setUps, frame, metrics));
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
                      const TextMetrics& metrics,
                      Held held) {
    PrintJob job;
    job.title = piece.name;
    if (!resolved.parts.empty()) {
        addWithList(
            piece, resolved, pictorialSheet, {heldSo(paper, held), scale, date}, metrics, job);
    }
    return job;
}

PrintJob assembliesJob(const Piece& piece,
                       const ResolvedPiece& resolved,
                       const Paper& paper,
                       double scale,
                       const std::string& date,
                       const TextMetrics& metrics,
                       Held held) {
    PrintJob job;
    job.title = piece.name + ", assemblies";
    const std::vector<GlueUp> glueUps = glueUpsOf(piece, resolved);
    SheetFrame frame{heldSo(paper, held), scale, date, 0, static_cast<int>(glueUps.size())};
    for (const GlueUp& glueUp : glueUps) {
        ++frame.number;
        addPage(assemblySheet(piece, resolved, glueUp, frame, metrics), job);
    }
    return job;
}

PrintJob sheetJob(const Piece& piece,
                  const ResolvedPiece& resolved,
                  bool parts,
                  const Paper& paper,
                  double scale,
                  const std::string& date,
                  const TextMetrics& metrics,
                  Held held) {
    PrintJob job;
    job.title = piece.name;
    if (!parts) {
        addWithList(piece, resolved, pieceSheet, {heldSo(paper, held), scale, date}, metrics, job);
        return job;
    }
    const PartsSetOut setOut(piece, resolved, paper, scale, held, metrics);
    for (Sheet& sheet : setOut.sheets({{}, scale, date, 1, static_cast<int>(setOut.count())})) {
        addPage(std::move(sheet), job);
    }
    return job;
}

namespace {

bool isWithin(const Rect& inner, const Rect& outer) {
    constexpr double kHair = 1e-6;
    return inner.min.x > outer.min.x - kHair && inner.min.y > outer.min.y - kHair &&
           inner.max.x < outer.max.x + kHair && inner.max.y < outer.max.y + kHair;
}

// What a framed sheet shows of the piece, from its first group on: frame, title block and legend
// stand before that. Empty for a sheet without a frame.
std::vector<Op> drawnIn(const Sheet& sheet) {
    const bool isFramed = std::any_of(sheet.ops.begin(), sheet.ops.end(), [](const Op& op) {
        const auto* stroke = std::get_if<Stroke>(&op);
        return stroke != nullptr && stroke->role == LineRole::Border;
    });
    const auto first = std::find_if(sheet.ops.begin(), sheet.ops.end(), [](const Op& op) {
        return std::holds_alternative<BeginGroup>(op);
    });
    return isFramed ? std::vector<Op>(first, sheet.ops.end()) : std::vector<Op>();
}

// Within the frame, and off the title block.
bool keepsToItsSpace(const Op& op, Vec2 paper, const TextMetrics& metrics) {
    if (std::holds_alternative<BeginGroup>(op) || std::holds_alternative<EndGroup>(op)) {
        return true;
    }
    const Rect bounds = boundsOf(std::vector<Op>{op}, metrics);
    const Rect inner = innerFrame(paper);
    const double left = inner.max.x - std::min(kTitleWidth, inner.size().x);
    const double top = inner.max.y - kTitleHeight;
    return isWithin(bounds, inner) && (bounds.max.y <= top || bounds.max.x <= left);
}

}  // namespace

std::optional<std::string> runsOffPaper(const PrintJob& job, const TextMetrics& metrics) {
    for (const Sheet& sheet : job.contents) {
        if (!isWithin(boundsOf(sheet.ops, metrics), {{0, 0}, sheet.size})) {
            return sheet.title;
        }
        for (const Op& op : drawnIn(sheet)) {
            if (!keepsToItsSpace(op, sheet.size, metrics)) {
                return sheet.title;
            }
        }
    }
    return std::nullopt;
}

}  // namespace shoulderline
