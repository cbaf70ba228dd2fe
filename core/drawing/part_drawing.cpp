#include "core/drawing/part_drawing.h"

#include "core/drawing/part_blocks.h"
#include "core/drawing/part_fixing.h"
#include "core/drawing/part_layout.h"
#include "core/drawing/wrapped_text.h"

namespace shoulderline {

namespace {

constexpr double kRoundDrawing = 2.0;  // round the whole drawing

bool isInThirdAngle(const Piece& piece) {
    return piece.unit == Unit::Inch;
}

// What is told in words, as a column; none where there is nothing to tell.
std::vector<PartBlock> notesBlock(const std::vector<std::string>& notes,
                                  const TextMetrics& metrics) {
    constexpr double kNoteHeight = 2.5;
    constexpr double kNoteWidth = 64.0;
    constexpr double kBetweenNotes = 2.5;
    std::vector<Op> ops;
    double y = 0.0;
    for (const std::string& note : notes) {
        std::vector<std::string> lines = wrapText(note, kNoteWidth, kNoteHeight, metrics, "  ");
        const double high = heightOfLines(lines.size(), kNoteHeight);
        std::vector<Op> column = linesOfText(std::move(lines), kNoteHeight);
        move(column, {0.0, y});
        append(ops, std::move(column));
        y += high + kBetweenNotes;
    }
    if (ops.empty()) {
        return {};
    }
    const Rect bounds = boundsOf(ops, metrics);
    return {{Face::FaceSide, std::move(ops), bounds, 0.0, false, false}};
}

Sheet sheetOf(std::vector<Op> ops,
              const PartKind& kind,
              const PartStyle& style,
              const TextMetrics& metrics) {
    Sheet sheet;
    sheet.title = kind.name;
    sheet.lines = style.lines;
    sheet.ops = std::move(ops);
    const Rect all = boundsOf(sheet.ops, metrics);
    move(sheet.ops, Vec2{kRoundDrawing, kRoundDrawing} - all.min);
    sheet.size = all.size() + Vec2{2.0 * kRoundDrawing, 2.0 * kRoundDrawing};
    return sheet;
}

}  // namespace

PartDrawingBlocks drawBlocks(const Piece& piece,
                             const ResolvedPiece& resolved,
                             const PartKind& kind,
                             const PartStyle& style,
                             PartLines& lines,
                             const TextMetrics& metrics) {
    const std::size_t index = kind.parts.front();
    const ResolvedPart& part = resolved.parts[index];
    const PartBlocks draw(piece, resolved, index, style, lines, metrics);
    PartDrawingBlocks blocks;
    for (const Face face : facesToShow(part, isInThirdAngle(piece))) {
        blocks.sides.push_back(draw.sideView(face));
    }
    for (const EndToShow& end : endsToShow(part, isInThirdAngle(piece))) {
        blocks.ends.push_back(draw.endView(end));
    }
    // Tables first, so that they stand by the views with their points.
    blocks.further = draw.outlineTables();
    std::vector<PartBlock> sections = draw.sections();
    std::move(sections.begin(), sections.end(), std::back_inserter(blocks.further));
    if (style.withSections && kind.hasMirrorTwins) {
        blocks.further.push_back(draw.pair());
    }
    if (style.withSections && style.withNotes) {
        std::vector<PartBlock> notes = notesBlock(fixingNotes(piece, resolved, kind), metrics);
        std::move(notes.begin(), notes.end(), std::back_inserter(blocks.further));
    }
    return blocks;
}

Sheet setInProjection(PartDrawingBlocks blocks,
                      const Piece& piece,
                      const PartKind& kind,
                      const PartStyle& style,
                      const TextMetrics& metrics) {
    return sheetOf(
        inProjection(std::move(blocks), style.sectionPlace, isInThirdAngle(piece), metrics),
        kind,
        style,
        metrics);
}

std::vector<Sheet> setOnSheets(PartDrawingBlocks blocks,
                               const Piece& piece,
                               const PartKind& kind,
                               const PartStyle& style,
                               Vec2 room,
                               const TextMetrics& metrics) {
    const PackingWay way{room - Vec2{2.0 * kRoundDrawing, 2.0 * kRoundDrawing},
                         isInThirdAngle(piece),
                         style.dimensions.height,
                         style.isThrifty};
    std::optional<std::vector<std::vector<Op>>> pages = packed(std::move(blocks), way, metrics);
    std::vector<Sheet> sheets;
    if (pages) {
        for (std::vector<Op>& ops : *pages) {
            sheets.push_back(sheetOf(std::move(ops), kind, style, metrics));
        }
    }
    return sheets;
}

Sheet partDrawing(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const PartKind& kind,
                  double scale,
                  bool isFullSize,
                  const TextMetrics& metrics) {
    PartStyle style;
    style.scale = scale;
    style.lines = isFullSize ? LineGroup::Fine : LineGroup::Bold;
    PartLines lines(resolved.parts[kind.parts.front()]);
    return setInProjection(
        drawBlocks(piece, resolved, kind, style, lines, metrics), piece, kind, style, metrics);
}

}  // namespace shoulderline
