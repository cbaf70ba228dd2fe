#include "app/commands.h"

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <iostream>

#include "app/scale_text.h"
#include "app/write_pages.h"
#include "core/check/findings_json.h"
#include "core/check/movement_json.h"
#include "core/check/strength_json.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/paper.h"
#include "core/drawing/patterns.h"
#include "core/drawing/strips.h"
#include "core/resolve/resolve.h"
#include "core/resolve/sizes_json.h"
#include "core/storage/piece_file.h"

namespace shoulderline {

namespace {

int refuse(const Error& error, int exitCode) {
    std::cerr << "shoulderline: " << (error.where.empty() ? "" : error.where + ": ")
              << error.message << "\n";
    return exitCode;
}

Result<Edit> measureEdit(const Piece& piece,
                         const std::string& name,
                         const std::string& expression) {
    const bool isThere = std::any_of(piece.measures.begin(),
                                     piece.measures.end(),
                                     [&](const Measure& measure) { return measure.name == name; });
    if (!isThere) {
        return fail(
            ErrorCode::UnknownName, "There is no measure '" + name + "' in this piece.", "--with");
    }
    return SetMeasure{name, expression};
}

// A thickness stated so stands over one that was measured.
Result<Edit> stockEdit(const Piece& piece, const std::string& name, const std::string& thickness) {
    const auto it = std::find_if(piece.stocks.begin(), piece.stocks.end(), [&](const Stock& stock) {
        return stock.name == name;
    });
    if (it == piece.stocks.end()) {
        return fail(
            ErrorCode::UnknownName, "There is no stock '" + name + "' in this piece.", "--stock");
    }
    Stock changed = *it;
    changed.thickness = thickness;
    changed.measuredThickness.clear();
    return SetStock{changed};
}

Result<Piece> readAsked(const CommandLine& line) {
    const Result<Piece> piece = loadPiece(line.file);
    return piece.and_then([&](const Piece& read) -> Result<Piece> {
        const Result<std::vector<Edit>> edits = askedEdits(line, read);
        if (!edits) {
            return tl::unexpected(edits.error());
        }
        Result<Piece> changed = read;
        for (const Edit& edit : *edits) {
            changed = shoulderline::apply(*changed, edit);
            if (!changed) {
                break;
            }
        }
        return changed;
    });
}

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

PrintJob jobFor(const CommandLine& line,
                const Piece& piece,
                const ResolvedPiece& resolved,
                const Paper& paper,
                double scale,
                const std::string& day) {
    const LetteringMetrics metrics;
    // One sheet for many things has the scale at which they fit, unless another is asked for.
    const double fitting = line.isScaleGiven ? scale : 0.0;
    if (line.what == "set") {
        return setJob(piece, resolved, paper, day, metrics);
    }
    if (line.what == "patterns") {
        return patternsJob(piece, resolved, paper, {}, day, metrics);
    }
    if (line.what == "rods") {
        return rodsJob(piece, resolved, paper, {}, day, metrics);
    }
    if (line.what == "story") {
        return storyJob(piece, resolved, paper, {}, day, metrics);
    }
    if (line.what == "pictorial") {
        return pictorialJob(piece, resolved, paper, fitting, day, metrics);
    }
    const bool isParts = line.what == "parts";
    if (scale == 1.0) {
        return isParts ? fullSizeJob(piece, resolved, {}, paper, {}, day, metrics)
                       : fullSizePieceJob(piece, resolved, paper, {}, day, metrics);
    }
    return sheetJob(piece, resolved, isParts, paper, scale, day, metrics);
}

}  // namespace

Result<std::vector<Edit>> askedEdits(const CommandLine& line, const Piece& piece) {
    std::vector<Edit> edits;
    for (const auto& [name, expression] : line.with) {
        const Result<Edit> edit = measureEdit(piece, name, expression);
        if (!edit) {
            return tl::unexpected(edit.error());
        }
        edits.push_back(*edit);
    }
    for (const auto& [name, thickness] : line.stock) {
        const Result<Edit> edit = stockEdit(piece, name, thickness);
        if (!edit) {
            return tl::unexpected(edit.error());
        }
        edits.push_back(*edit);
    }
    return edits;
}

int runCheck(const CommandLine& line, const Resources& resources) {
    const Result<Piece> piece = readAsked(line);
    if (!piece) {
        return refuse(piece.error(), kUnreadable);
    }
    const ResolvedPiece resolved = resolve(*piece, resources.rules, resources.workshop);
    const std::vector<Finding> findings =
        check(*piece, resolved, resources.species, resources.strength);
    std::cout << (line.isJson ? findingsJson(findings, resolved) : findingsText(findings));
    const bool mustMend = std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
        return f.severity == Severity::MustMend;
    });
    return mustMend ? kMustMend : kDone;
}

int runSizes(const CommandLine& line, const Resources& resources) {
    const Result<Piece> piece = readAsked(line);
    if (!piece) {
        return refuse(piece.error(), kUnreadable);
    }
    const ResolvedPiece resolved = resolve(*piece, resources.rules, resources.workshop);
    std::cout << (line.isJson ? sizesJson(*piece, resolved) : sizesText(*piece, resolved));
    return kDone;
}

int runStrength(const CommandLine& line, const Resources& resources) {
    const Result<Piece> piece = readAsked(line);
    if (!piece) {
        return refuse(piece.error(), kUnreadable);
    }
    const ResolvedPiece resolved = resolve(*piece, resources.rules, resources.workshop);
    const StrengthReport report =
        strengthReport(*piece, resolved, resources.species, resources.strength);
    std::cout << (line.isJson ? strengthJson(resolved, report, resources.strength)
                              : strengthText(resolved, report, resources.strength));
    return kDone;
}

int runMovement(const CommandLine& line, const Resources& resources) {
    const Result<Piece> piece = readAsked(line);
    if (!piece) {
        return refuse(piece.error(), kUnreadable);
    }
    const ResolvedPiece resolved = resolve(*piece, resources.rules, resources.workshop);
    const MovementReport report = movementReport(*piece, resolved, resources.species);
    std::cout << (line.isJson ? movementJson(*piece, resolved, report)
                              : movementText(*piece, resolved, report));
    return kDone;
}

int runPrint(const CommandLine& line, const Resources& resources) {
    const Result<Piece> piece = readAsked(line);
    const Result<Paper> paper = findPaper(line.paper);
    const Result<double> scale = readScale(line.scale);
    if (!piece) {
        return refuse(piece.error(), kUnreadable);
    }
    if (!paper || !scale) {
        return refuse(paper ? scale.error() : paper.error(), kUnreadable);
    }
    const ResolvedPiece resolved = resolve(*piece, resources.rules, resources.workshop);
    const std::string day = dayOfLastChange(line.file);
    const PrintJob job = jobFor(line, *piece, resolved, *paper, *scale, day);
    if (job.pages.empty()) {
        return refuse(
            {ErrorCode::OutOfRange, "There is no part to print in this piece.", line.file, 0},
            kUnreadable);
    }
    if (const std::optional<std::string> tooLarge = runsOffPaper(job, LetteringMetrics())) {
        return refuse({ErrorCode::OutOfRange,
                       "'" + *tooLarge + "' does not fit on " + paper->name + " at " + line.scale +
                           "; a smaller scale, larger paper or --scale fit is expected.",
                       "--scale",
                       0},
                      kUnreadable);
    }
    const Result<std::vector<std::string>> written = writePages(job, line.out, day);
    if (!written) {
        return refuse(written.error(), kNotWritten);
    }
    std::cout << written->front() << (written->size() > 1 ? " to " + written->back() : "") << ": "
              << job.pages.size() << (job.pages.size() == 1 ? " page" : " pages") << " of "
              << paper->name << "\n";
    return kDone;
}

}  // namespace shoulderline
