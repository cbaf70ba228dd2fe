#include <algorithm>
#include <chrono>
#include <filesystem>
#include <iostream>

#include "app/commands.h"
#include "app/scale_text.h"
#include "app/write_pages.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/print_order.h"
#include "core/measure/length_text.h"
#include "core/resolve/resolve.h"

namespace shoulderline {

namespace {

// The day of the file's last change, ISO 8601 (UTC).
std::string dayOfLastChange(const std::string& file) {
    std::error_code error;
    const auto changed = std::filesystem::last_write_time(file, error);
    if (error) {
        return {};
    }
    const auto system = std::chrono::file_clock::to_sys(changed);
    const std::chrono::year_month_day day{std::chrono::floor<std::chrono::days>(system)};
    const auto padded = [](unsigned value) {
        return (value < 10 ? "0" : "") + std::to_string(value);
    };
    return std::to_string(static_cast<int>(day.year())) + "-" +
           padded(static_cast<unsigned>(day.month())) + "-" +
           padded(static_cast<unsigned>(day.day()));
}

PrintKind kindOf(const CommandLine& line, double scale) {
    const bool isFull = scale == 1.0;
    if (line.what == "set") {
        return PrintKind::Set;
    }
    if (line.what == "patterns") {
        return PrintKind::Patterns;
    }
    if (line.what == "rods") {
        return PrintKind::Rods;
    }
    if (line.what == "story") {
        return PrintKind::Story;
    }
    if (line.what == "pictorial") {
        return PrintKind::Pictorial;
    }
    if (line.what == "assemblies") {
        return PrintKind::Assemblies;
    }
    if (line.what == "piece") {
        return isFull ? PrintKind::PieceFullSize : PrintKind::PieceSheet;
    }
    return isFull ? PrintKind::PartsFullSize : PrintKind::PartSheets;
}

// Why there is nothing to print.
std::string nothingOf(PrintKind kind, const ResolvedPiece& resolved) {
    if (!resolved.parts.empty() && kind == PrintKind::Patterns) {
        return "No part of this piece is shaped: there is no pattern to print.";
    }
    if (!resolved.parts.empty() && kind == PrintKind::Assemblies) {
        return "This piece states no assembly: there is none to print.";
    }
    return "There is no part to print in this piece.";
}

Result<TileOptions> readTiles(const CommandLine& line) {
    TileOptions options;
    const Result<Length> overlap = readLength(line.overlap, Unit::Millimetre);
    if (!overlap || overlap->mm() < 10.0 || overlap->mm() > 40.0) {
        return fail(ErrorCode::OutOfRange,
                    "'" + line.overlap + "' is no overlap: 10 mm to 40 mm is expected.",
                    "--overlap");
    }
    options.overlap = overlap->mm();
    options.leavesOutPlain = line.leavesOutPlain;
    options.held = line.held == "upright" ? Held::Upright
                                          : (line.held == "lying" ? Held::Lying : Held::Either);
    return options;
}

// Of --measured; none where it is not given.
Result<ScaleCorrection> readCorrection(const CommandLine& line, const Paper& paper) {
    if (line.measured.empty()) {
        return ScaleCorrection{};
    }
    const std::size_t cross = line.measured.find('x');
    const auto side = [&](std::size_t from, std::size_t length) {
        return readLength(line.measured.substr(from, length), Unit::Millimetre);
    };
    if (cross != std::string::npos) {
        const Result<Length> across = side(0, cross);
        const Result<Length> up = side(cross + 1, std::string::npos);
        if (across && up) {
            return correctionFrom(paper, {across->mm(), up->mm()});
        }
    }
    return fail(ErrorCode::BadText,
                "'" + line.measured +
                    "' is not what a calibration sheet measures: '169.5 x 240.5 mm' and the like "
                    "is expected.",
                "--measured");
}

// What the command line asks for, read; errors name the option.
struct Asked {
    PrintOrder order;
    ScaleCorrection correction;
};
Result<Asked> readOrder(const CommandLine& line) {
    const Result<Paper> paper = findPaper(line.paper);
    const Result<double> scale = readScale(line.scale);
    const Result<TileOptions> tiles = readTiles(line);
    if (!paper) {
        return tl::unexpected(paper.error());
    }
    if (!scale) {
        return tl::unexpected(scale.error());
    }
    if (!tiles) {
        return tl::unexpected(tiles.error());
    }
    const Result<ScaleCorrection> correction = readCorrection(line, *paper);
    if (!correction) {
        return tl::unexpected(correction.error());
    }
    Asked asked;
    asked.order.kind = kindOf(line, *scale);
    asked.order.paper = *paper;
    // One sheet for many things has the scale at which they fit, unless another is asked for.
    const bool isOfMany =
        asked.order.kind == PrintKind::Pictorial || asked.order.kind == PrintKind::Assemblies;
    asked.order.scale = isOfMany && !line.isScaleGiven ? 0.0 : *scale;
    asked.order.tiles = *tiles;
    asked.order.units = printUnitsFrom(line.units).value_or(PrintUnits::AsPiece);
    asked.order.date = dayOfLastChange(line.file);
    asked.correction = *correction;
    return asked;
}

int writeJob(PrintJob job, const CommandLine& line, const Asked& asked) {
    if (const std::optional<std::string> tooLarge = runsOffPaper(job, LetteringMetrics())) {
        return refuse(
            {ErrorCode::OutOfRange,
             "'" + *tooLarge + "' does not fit on " + asked.order.paper.name + " at " + line.scale +
                 "; a smaller scale, larger paper or --scale fit is expected.",
             "--scale",
             0},
            kUnreadable);
    }
    job = withCorrectionNoted(std::move(job), asked.correction, "the printer that was measured");
    const Result<std::vector<std::string>> written =
        writePages(job, line.out, asked.order.date, asked.correction);
    if (!written) {
        return refuse(written.error(), kNotWritten);
    }
    std::cout << written->front() << (written->size() > 1 ? " to " + written->back() : "") << ": "
              << job.pages.size() << (job.pages.size() == 1 ? " page" : " pages") << " of "
              << asked.order.paper.name << "\n";
    return kDone;
}

}  // namespace

int runPrint(const CommandLine& line, const Resources& resources) {
    const Result<Asked> asked = readOrder(line);
    if (line.what == "calibration") {
        return asked ? writeJob(calibrationJob(asked->order.paper, true, {}, LetteringMetrics()),
                                line,
                                *asked)
                     : refuse(asked.error(), kUnreadable);
    }
    const Result<Piece> piece = readAsked(line);
    if (!piece) {
        return refuse(piece.error(), kUnreadable);
    }
    if (!asked) {
        return refuse(asked.error(), kUnreadable);
    }
    const ResolvedPiece resolved = resolve(*piece, resources.rules, resources.workshop);
    const LetteringMetrics metrics;
    PrintJob job = printJob(*piece, resolved, asked->order, metrics);
    if (job.pages.empty()) {
        return refuse({ErrorCode::OutOfRange, nothingOf(asked->order.kind, resolved), line.file, 0},
                      kUnreadable);
    }
    return writeJob(std::move(job), line, *asked);
}

}  // namespace shoulderline
