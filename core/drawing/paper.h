#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/drawing/sheet.h"
#include "core/drawing/sheets.h"
#include "core/measure/result.h"

namespace shoulderline {

// A sheet of paper, upright; millimetres.
struct Paper {
    std::string name;
    Vec2 size;
};

// Its size stood on the shorter side, also where it was stated lying.
[[nodiscard]] Vec2 upright(const Paper& paper);

// Letter, Legal, Tabloid, A4, A3, A2, A1, A0 (ISO 216; ASME Y14.1 for the first and third).
[[nodiscard]] const std::vector<Paper>& standardPapers();

// A paper by its name, any capitals, or a stated size "300 x 1300 mm" / "24 x 36 in" (width x
// height; each side 50 mm to 5000 mm). Errors: BadText naming what is expected.
[[nodiscard]] Result<Paper> findPaper(std::string_view text);

// One page that comes out of a printer: `content` placed with its point `origin` at the page's
// `printable` corner, turned about it by `turn`, clipped to `printable`, and `furniture` (marks,
// captions) drawn over it in page coordinates. All true millimetres, y down.
struct Rectangle {
    Vec2 min;
    Vec2 max;
};
struct Page {
    Vec2 size;
    Rectangle printable;
    Vec2 origin;              // of the content at printable.min
    std::size_t content = 0;  // index in PrintJob::contents
    Sheet furniture;
    std::string name;  // "front post, B2"
    Angle turn;        // of the content about printable.min, clockwise as seen

    // Where a point of the content comes to lie.
    [[nodiscard]] Vec2 onPage(Vec2 p) const {
        const Vec2 from = p - origin;
        return printable.min + Vec2{from.x * turn.cos() - from.y * turn.sin(),
                                    from.x * turn.sin() + from.y * turn.cos()};
    }
};
struct PrintJob {
    std::string title;
    std::vector<Sheet> contents;
    std::vector<Page> pages;
};

// Which way up paper is held: upright is higher than wide.
enum class Held { Either, Upright, Lying };

struct TileOptions {
    double margin = 10.0;   // unprintable edge, all round; at least 5
    double overlap = 15.0;  // of neighbouring tiles; 10 to 40
    Held held = Held::Either;
    // Long stretches in which nothing happens are left out, with how much, where that saves sheets.
    bool leavesOutPlain = false;
};

// Full-size drawings of the part kinds named (all when empty) tiled over `paper`, whichever way up
// takes the fewer sheets (or as the options have it): per part the map of its tiles where it takes
// more than one, then the tiles by rows; on one sheet along its diagonal where the drawing goes on
// it only so. Every page bears piece, part, faces, row and column, date, and bars of 100 mm both
// ways (with 4 in on inch pieces) to check the scale by ruler; the map always, every tile with room
// for it, and at least one in each row, a square of 100 mm. Neighbours share their match marks; one
// is cut in the middle of the overlap, and glued on the other. Map pages have an empty content.
[[nodiscard]] PrintJob fullSizeJob(const Piece&,
                                   const ResolvedPiece&,
                                   const std::vector<std::size_t>& kinds,
                                   const Paper&,
                                   const TileOptions&,
                                   const std::string& date,
                                   const TextMetrics&);

// Sheets lie, unless `held` says otherwise; with Either, what fits only upright is upright.

// Every drawing of the piece on one paper, each at the scale that fits, numbered through: index,
// piece, pictorial view, assemblies, part sheets, joint sheets.
[[nodiscard]] PrintJob setJob(const Piece&,
                              const ResolvedPiece&,
                              const Paper&,
                              const std::string& date,
                              const TextMetrics&,
                              Held held = Held::Either);

// The sheet with the piece assembled and pulled apart.
[[nodiscard]] PrintJob pictorialJob(const Piece&,
                                    const ResolvedPiece&,
                                    const Paper&,
                                    double scale,
                                    const std::string& date,
                                    const TextMetrics&,
                                    Held held = Held::Either);

// Each assembly alone on a sheet, with its note on the glue-up; no page for a piece that states
// none.
[[nodiscard]] PrintJob assembliesJob(const Piece&,
                                     const ResolvedPiece&,
                                     const Paper&,
                                     double scale,
                                     const std::string& date,
                                     const TextMetrics&,
                                     Held held = Held::Either);

// Part sheets (one page each) or the piece sheet at a scale (0 for the largest standard scale that
// fits).
[[nodiscard]] PrintJob sheetJob(const Piece&,
                                const ResolvedPiece&,
                                bool parts,
                                const Paper&,
                                double scale,
                                const std::string& date,
                                const TextMetrics&,
                                Held held = Held::Either);

// Front, side and plan of the piece at full size, each tiled over the paper like the parts.
[[nodiscard]] PrintJob fullSizePieceJob(const Piece&,
                                        const ResolvedPiece&,
                                        const Paper&,
                                        const TileOptions&,
                                        const std::string& date,
                                        const TextMetrics&);

// The title of the first drawing of a job that runs off its own sheet or into its title block, as
// one at too large a scale does; none where all keep to their space.
[[nodiscard]] std::optional<std::string> runsOffPaper(const PrintJob&, const TextMetrics&);

}  // namespace shoulderline
