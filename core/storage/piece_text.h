#pragma once

#include <string>
#include <string_view>

#include "core/measure/result.h"
#include "core/piece/piece.h"

namespace shoulderline {

// The version of the .shoulder format that this program writes, and the newest that it reads.
inline constexpr int kPieceVersion = 1;

// Reads a piece from the text of a .shoulder file (JSON; resources/schema/piece.schema.json).
// Members that this version does not know are kept in `extras` and written back.
// Errors: BadFile with the place (/parts/3/width) and what was expected; NewerFile for a file of a
// later version. Statements are kept as they are: whether they can be worked out is for resolve().
[[nodiscard]] Result<Piece> readPiece(std::string_view text);

// The text of a .shoulder file: UTF-8, stable order, two spaces of indent, a final newline. Writing
// what was read from written text gives the same bytes.
[[nodiscard]] std::string writePiece(const Piece& piece);

}  // namespace shoulderline
