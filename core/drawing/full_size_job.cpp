#include <algorithm>
#include <numeric>

#include "core/drawing/left_out.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/strips.h"
#include "core/drawing/tile_places.h"
#include "core/drawing/tiler.h"
#include "core/drawing/tiles.h"
#include "core/drawing/title_block.h"

namespace shoulderline {

PrintJob tiledJob(const Piece& piece,
                  const std::string& title,
                  std::vector<FullSizeDrawing> drawings,
                  const Paper& paper,
                  const TileOptions& options,
                  const std::string& date,
                  const TextMetrics& metrics) {
    PrintJob job;
    job.title = title;
    job.contents.emplace_back();  // of the maps
    for (FullSizeDrawing& drawing : drawings) {
        std::vector<Rect> rooms = drawing.titleRooms;
        if (options.leavesOutPlain) {
            Sheet shorter = withPlainLeftOut(drawing.drawing, piece.style, metrics);
            if (tileGrid(shorter.size, paper, options).count() <
                tileGrid(drawing.drawing.size, paper, options).count()) {
                drawing.drawing = std::move(shorter);
                rooms.clear();
                drawing.about += "; plain stretches left out";
                drawing.size += "; plain stretches are left out at the breaks, as lettered there";
            }
        }
        moveWordsOffSeams(drawing.drawing, rooms, paper, options, metrics);
        job.contents.push_back(std::move(drawing.drawing));
        const Tiler tiler(piece, drawing, job.contents.back(), paper, options, date, metrics);
        for (Page& page : tiler.pages(job.contents.size() - 1, 0)) {
            job.pages.push_back(std::move(page));
        }
    }
    return job;
}

PrintJob fullSizeJob(const Piece& piece,
                     const ResolvedPiece& resolved,
                     const std::vector<std::size_t>& kinds,
                     const Paper& paper,
                     const TileOptions& options,
                     const std::string& date,
                     const TextMetrics& metrics) {
    const std::vector<PartKind> all = partKinds(resolved);
    std::vector<std::size_t> chosen = kinds;
    if (chosen.empty()) {
        chosen.resize(all.size());
        std::iota(chosen.begin(), chosen.end(), std::size_t{0});
    }
    std::vector<FullSizeDrawing> drawings;
    for (const std::size_t i : chosen) {
        if (i >= all.size()) {
            continue;
        }
        const ResolvedPart& part = resolved.parts[all[i].parts.front()];
        drawings.push_back({partDrawing(piece, resolved, all[i], 1.0, true, metrics),
                            all[i].name,
                            quantityText(resolved, all[i]),
                            materialText(piece, part) + "; finished size over all " +
                                finishedSize(piece, part) + " " + unitsOf(piece)});
    }
    return tiledJob(
        piece, piece.name + ", full size", std::move(drawings), paper, options, date, metrics);
}

}  // namespace shoulderline
