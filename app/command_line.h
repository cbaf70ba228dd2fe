#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace shoulderline {

enum class Command { Window, Check, Sizes, Strength, Movement, Settle, Print };

// What the command line asks for.
struct CommandLine {
    Command command = Command::Window;
    std::string file;  // empty: the window opens on a new piece
    bool isJson = false;
    std::string what = "parts";  // of print: parts, piece, pictorial, set, patterns, rods, story or
                                 // calibration
    std::string paper = "A4";
    std::string scale = "1:1";
    bool isScaleGiven = false;
    std::string overlap = "15 mm";
    std::string held = "either";     // upright, lying or either
    bool leavesOutPlain = false;
    std::string units = "as-piece";  // see printUnitsFrom()
    std::string measured;            // "ACROSS x UP" of a calibration sheet; empty for none
    std::string out;
    std::vector<std::pair<std::string, std::string>> with;   // measure, expression
    std::vector<std::pair<std::string, std::string>> stock;  // stock, thickness
};

// Reads the arguments. Empty where there is nothing more to do: help or the version was printed
// (`exitCode` 0), or the arguments were refused (`exitCode` 2, one line on the standard error).
[[nodiscard]] std::optional<CommandLine> readCommandLine(int argc, char** argv, int& exitCode);

}  // namespace shoulderline
