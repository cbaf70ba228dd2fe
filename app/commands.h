#pragma once

#include <vector>

#include "app/command_line.h"
#include "core/piece/edit.h"
#include "ui/document/resources.h"

namespace shoulderline {

// The exit codes of the commands, as --help tells them.
inline constexpr int kDone = 0;
inline constexpr int kMustMend = 1;
inline constexpr int kUnreadable = 2;
inline constexpr int kNotWritten = 4;

// The edits that --with and --stock ask for, to a piece. Errors: UnknownName for a measure or stock
// that is not there.
[[nodiscard]] Result<std::vector<Edit>> askedEdits(const CommandLine& line, const Piece& piece);

// Tells what went wrong on the standard error, and gives `exitCode` back.
int refuse(const Error& error, int exitCode);
// The piece that is named, with the changes of --with and --stock.
[[nodiscard]] Result<Piece> readAsked(const CommandLine& line);

// Each reads the piece, makes the changes of --with and --stock, prints to the standard output what
// was asked for and to the standard error what went wrong, and gives the exit code.
[[nodiscard]] int runCheck(const CommandLine& line, const Resources& resources);
[[nodiscard]] int runSizes(const CommandLine& line, const Resources& resources);
[[nodiscard]] int runStrength(const CommandLine& line, const Resources& resources);
[[nodiscard]] int runMovement(const CommandLine& line, const Resources& resources);
// Writes the settled piece where --out asks for it.
[[nodiscard]] int runSettle(const CommandLine& line, const Resources& resources);
// Needs a QGuiApplication, for the lettering.
[[nodiscard]] int runPrint(const CommandLine& line, const Resources& resources);

}  // namespace shoulderline
