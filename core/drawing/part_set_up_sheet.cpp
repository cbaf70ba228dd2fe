#include "core/drawing/part_set_up_sheet.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"
#include "core/resolve/part_set_up.h"

namespace shoulderline {

namespace {

constexpr double kSetUpClear = 8.0;
constexpr double kSetUpHeight = 2.5;
constexpr double kSetUpBetween = 10.0;       // columns
constexpr double kSetUpColumn = 120.0;       // the least width of one
constexpr double kSetUpCautionHeight = 1.8;  // as the captions of the title block
constexpr double kSetUpOverCautions = 4.0;

Vec2 setUpRoomOn(Vec2 paper) {
    return drawingSpace(paper).size() - Vec2{2.0 * kSetUpClear, 2.0 * kSetUpClear};
}

// What is said of one kind of part, its name first.
struct SaidOfPart {
    std::vector<std::string> lines;
    std::vector<PartSetUp> setUps;
};

std::vector<SaidOfPart> saidOfParts(const Piece& piece,
                                    const ResolvedPiece& resolved,
                                    double width,
                                    const TextMetrics& metrics) {
    std::vector<SaidOfPart> all;
    for (const PartKind& kind : partKinds(resolved)) {
        SaidOfPart said;
        said.setUps = partSetUpsOf(resolved.parts[kind.parts.front()], piece.style);
        if (said.setUps.empty()) {
            continue;
        }
        said.lines.push_back(kind.name + ", " + quantityText(resolved, kind));
        for (const PartSetUp& one : said.setUps) {
            for (std::string& line : wrapText("  " + partSetUpText(one, resolved.rules),
                                              width,
                                              kSetUpHeight,
                                              metrics,
                                              "     ")) {
                said.lines.push_back(std::move(line));
            }
        }
        said.lines.emplace_back();
        all.push_back(std::move(said));
    }
    return all;
}

}  // namespace

std::vector<SetUpsOnSheet> setOutPartSetUps(const Piece& piece,
                                            const ResolvedPiece& resolved,
                                            Vec2 paper,
                                            const TextMetrics& metrics) {
    const Vec2 room = setUpRoomOn(paper);
    const auto count = static_cast<std::size_t>(
        std::max(1.0, (room.x + kSetUpBetween) / (kSetUpColumn + kSetUpBetween)));
    const double width = (room.x + kSetUpBetween) / static_cast<double>(count) - kSetUpBetween;
    const std::vector<SaidOfPart> said = saidOfParts(piece, resolved, width, metrics);
    // The cautions of all tools on every sheet: what is cut next may be on the one before.
    std::vector<PartSetUp> every;
    for (const SaidOfPart& one : said) {
        every.insert(every.end(), one.setUps.begin(), one.setUps.end());
    }
    std::vector<std::string> cautions;
    for (const std::string& one : cautionsFor(every, resolved.rules)) {
        for (std::string& line : wrapText(one, room.x, kSetUpCautionHeight, metrics, "   ")) {
            cautions.push_back(std::move(line));
        }
    }
    const double high =
        room.y - kSetUpOverCautions - heightOfLines(cautions.size(), kSetUpCautionHeight);
    std::size_t rows = 1;
    while (heightOfLines(rows + 1, kSetUpHeight) <= high) {
        ++rows;
    }
    std::vector<SetUpsOnSheet> sheets;
    for (const SaidOfPart& one : said) {
        const bool isFull =
            sheets.empty() || sheets.back().columns.back().size() + one.lines.size() > rows + 1;
        if (isFull && (sheets.empty() || sheets.back().columns.size() == count)) {
            sheets.push_back({{{}}, cautions});
        } else if (isFull) {
            sheets.back().columns.emplace_back();
        }
        for (const std::string& line : one.lines) {
            // One that is longer than a column goes on in the next.
            if (sheets.back().columns.back().size() >= rows) {
                if (sheets.back().columns.size() == count) {
                    sheets.push_back({{{}}, cautions});
                } else {
                    sheets.back().columns.emplace_back();
                }
            }
            sheets.back().columns.back().push_back(line);
        }
    }
    return sheets;
}

std::string partSetUpsTitle(std::size_t index, std::size_t count) {
    const std::string title = "set-ups for parts";
    return count > 1 ? title + ", " + std::to_string(index + 1) + " of " + std::to_string(count)
                     : title;
}

std::vector<Sheet> partSetUpSheets(const Piece& piece,
                                   const std::vector<SetUpsOnSheet>& setOut,
                                   SheetFrame frame,
                                   const TextMetrics& metrics) {
    const Rect space = drawingSpace(frame.paper);
    const Vec2 room = setUpRoomOn(frame.paper);
    const Vec2 corner = space.min + Vec2{kSetUpClear, kSetUpClear};
    std::vector<Sheet> sheets;
    for (const SetUpsOnSheet& one : setOut) {
        const std::string title = partSetUpsTitle(sheets.size(), setOut.size());
        TitleBlock block = titleBlock(title, piece, frame);
        block.sizeCaption = "";
        block.scale = "none";
        Sheet sheet;
        sheet.title = title;
        sheet.size = frame.paper;
        sheet.ops = frameAndTitle(frame.paper, block, metrics);
        const auto count = static_cast<double>(std::max<std::size_t>(
            1,
            static_cast<std::size_t>((room.x + kSetUpBetween) / (kSetUpColumn + kSetUpBetween))));
        for (std::size_t i = 0; i < one.columns.size(); ++i) {
            std::vector<Op> lines = linesOfText(one.columns[i], kSetUpHeight);
            move(lines,
                 corner + Vec2{static_cast<double>(i) * (room.x + kSetUpBetween) / count, 0.0});
            append(sheet.ops, std::move(lines));
        }
        std::vector<Op> cautions = linesOfText(one.cautions, kSetUpCautionHeight);
        move(cautions,
             corner + Vec2{0.0, room.y - heightOfLines(one.cautions.size(), kSetUpCautionHeight)});
        append(sheet.ops, std::move(cautions));
        sheets.push_back(std::move(sheet));
        ++frame.number;
    }
    return sheets;
}

}  // namespace shoulderline
