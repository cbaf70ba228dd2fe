#pragma once

#include "core/drawing/sheets.h"

namespace shoulderline {

// A part's drawing set out for sheets of one size, without frame and title block: on one sheet
// where it fits there in full lettering, else on several, and at their scale on fewer of them where
// it is closer set or lettered a size smaller.
struct PartOnSheets {
    std::vector<Sheet> drawings;  // one at least
    double scale = 1.0;
    Vec2 paper;
    bool fits = true;
    bool hasSparse = false;  // one of several sheets with little on it, or no view of the part
};
// `scale` as in SheetFrame.
[[nodiscard]] PartOnSheets setOutPart(const Piece&,
                                      const ResolvedPiece&,
                                      const PartKind&,
                                      Vec2 paper,
                                      double scale,
                                      const TextMetrics&);

// Whether `a` is to be taken rather than `b`: what fits; what is drawn twice as large on one sheet
// more at most, none of them with little on it; what takes fewer sheets; what is drawn larger.
[[nodiscard]] bool isBetterSetOut(const PartOnSheets& a, const PartOnSheets& b);

// "front post, 1 of 2".
[[nodiscard]] std::string titleOf(const PartKind&, std::size_t index, std::size_t count);

// Sheet `index` of those: its drawing in frame and title block. The frame's paper and scale do not
// count, its number is that of the sheet.
[[nodiscard]] Sheet framedPartSheet(const Piece&,
                                    const ResolvedPiece&,
                                    const PartKind&,
                                    PartOnSheets,
                                    std::size_t index,
                                    const SheetFrame&,
                                    const TextMetrics&);

}  // namespace shoulderline
