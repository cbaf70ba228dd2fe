#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "core/measure/result.h"
#include "core/piece/piece.h"

namespace shoulderline {

// The whole text of a file, at most kLargestFile bytes. Errors: CannotRead, naming the file and
// why.
[[nodiscard]] Result<std::string> readFile(const std::filesystem::path& path);

// Puts `text` in the place of the file, atomically: the old file stays whole until the new one is
// written and flushed to the disk. Errors: CannotWrite, naming the file and why (a full disk, a
// folder that may not be written); the old file is then as it was.
[[nodiscard]] Result<void> replaceFile(const std::filesystem::path& path, std::string_view text);

// A piece from a file. Errors: those of readFile() and readPiece(), with the file's name before the
// place.
[[nodiscard]] Result<Piece> loadPiece(const std::filesystem::path& path);

// Saves a piece. Errors: those of replaceFile().
[[nodiscard]] Result<void> savePiece(const std::filesystem::path& path, const Piece& piece);

}  // namespace shoulderline
