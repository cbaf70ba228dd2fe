#include <array>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/piece_view.h"
#include "core/drawing/strips.h"
#include "core/drawing/title_block.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kRoundElevation = 10.0;  // round the elevation

// One elevation at full size; tints are for the screen.
Sheet fullSizeElevation(const ResolvedPiece& resolved, const View& view, const std::string& name) {
    const Elevation elevation = elevationOf(resolved, view);
    Sheet sheet;
    sheet.title = name;
    sheet.lines = LineGroup::Fine;
    sheet.size = {elevation.allMax.x - elevation.allMin.x + 2 * kRoundElevation,
                  elevation.allMax.y - elevation.allMin.y + 2 * kRoundElevation};
    sheet.ops = elevationOps(resolved, elevation, 1.0);
    std::erase_if(sheet.ops, [](const Op& op) { return std::holds_alternative<Fill>(op); });
    move(sheet.ops, {kRoundElevation - elevation.allMin.x, kRoundElevation + elevation.allMax.y});
    return sheet;
}

}  // namespace

PrintJob fullSizePieceJob(const Piece& piece,
                          const ResolvedPiece& resolved,
                          const Paper& paper,
                          const TileOptions& options,
                          const std::string& date,
                          const TextMetrics& metrics) {
    struct Named {
        const char* name;
        View view;
    };
    const std::array<Named, 3> views{
        {{"front", View::front()}, {"side", View::side()}, {"plan", View::plan()}}};
    std::vector<FullSizeDrawing> drawings;
    for (const Named& named : views) {
        if (resolved.parts.empty()) {
            break;
        }
        Sheet sheet = fullSizeElevation(resolved, named.view, named.name);
        const auto shown = [&](double mm) { return letterLength(Length::mm(mm), piece.style); };
        std::string over = "over all " + shown(sheet.size.x - 2 * kRoundElevation) + " × " +
                           shown(sheet.size.y - 2 * kRoundElevation) + " " + unitsOf(piece);
        drawings.push_back({std::move(sheet), named.name, "the whole piece", std::move(over)});
    }
    return tiledJob(
        piece, piece.name + ", full size", std::move(drawings), paper, options, date, metrics);
}

}  // namespace shoulderline
