#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/drawing/paper.h"

namespace shoulderline {

// What can be printed of a piece.
enum class PrintKind {
    PartsFullSize,
    PartSheets,
    PieceFullSize,
    PieceSheet,
    Pictorial,
    Assemblies,
    Set,
    Patterns,
    Rods,
    Story,
};
inline constexpr PrintKind kPrintKinds[] = {PrintKind::PartsFullSize,
                                            PrintKind::PartSheets,
                                            PrintKind::PieceFullSize,
                                            PrintKind::PieceSheet,
                                            PrintKind::Pictorial,
                                            PrintKind::Assemblies,
                                            PrintKind::Set,
                                            PrintKind::Patterns,
                                            PrintKind::Rods,
                                            PrintKind::Story};
// Whether it comes at full size, tiled where it must be; and whether it comes at a scale that the
// maker may choose.
[[nodiscard]] bool isFullSize(PrintKind kind);
[[nodiscard]] bool hasScale(PrintKind kind);

// The units that sizes are lettered in: the piece's own, one other, or two, the second in brackets.
enum class PrintUnits {
    AsPiece,
    Fractions,
    DecimalInches,
    Millimetres,
    InchesAndMillimetres,
    MillimetresAndInches,
};
// "as-piece", "fractions", "decimal", "mm", "in-mm", "mm-in"; none for other words.
[[nodiscard]] std::optional<PrintUnits> printUnitsFrom(std::string_view word);

// One print as the maker orders it.
struct PrintOrder {
    PrintKind kind = PrintKind::PartsFullSize;
    std::vector<std::size_t> parts;  // of PartsFullSize: positions in partKinds(); all when empty
    Paper paper;
    double scale = 0.0;  // 0 for the largest standard scale that fits; of those with a scale only
    TileOptions tiles;   // `held` counts for sheets too
    PrintUnits units = PrintUnits::AsPiece;
    std::string date;  // of the piece's last change, ISO 8601
};

// The pages of the order; none where the piece has nothing of the kind.
[[nodiscard]] PrintJob printJob(const Piece&,
                                const ResolvedPiece&,
                                const PrintOrder&,
                                const TextMetrics&);

}  // namespace shoulderline
