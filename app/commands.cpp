#include "app/commands.h"

#include <algorithm>
#include <iostream>

#include "core/check/findings_json.h"
#include "core/check/mend_effect.h"
#include "core/check/movement_json.h"
#include "core/check/settle.h"
#include "core/check/strength_json.h"
#include "core/resolve/resolve.h"
#include "core/resolve/sizes_json.h"
#include "core/resolve/sizes_text.h"
#include "core/storage/piece_file.h"

namespace shoulderline {

int refuse(const Error& error, int exitCode) {
    std::cerr << "shoulderline: " << (error.where.empty() ? "" : error.where + ": ")
              << error.message << "\n";
    return exitCode;
}

namespace {

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

int runCheck(const CommandLine& line, const Resources& resources) {
    const Result<Piece> piece = readAsked(line);
    if (!piece) {
        return refuse(piece.error(), kUnreadable);
    }
    const ResolvedPiece resolved = resolve(*piece, resources.rules, resources.workshop);
    const std::vector<Finding> findings =
        check(*piece, resolved, resources.species, resources.strength);
    if (line.isJson) {
        const Workbench bench{
            resources.rules, resources.workshop, resources.species, resources.strength};
        std::cout << findingsJson(findings, resolved, effectsOf(*piece, resolved, findings, bench));
    } else {
        std::cout << findingsText(findings);
    }
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

int runSettle(const CommandLine& line, const Resources& resources) {
    const Result<Piece> piece = readAsked(line);
    if (!piece) {
        return refuse(piece.error(), kUnreadable);
    }
    const Settlement settlement = settle(
        *piece, {resources.rules, resources.workshop, resources.species, resources.strength});
    if (!line.out.empty()) {
        const Result<Piece> settled = shoulderline::apply(*piece, settlement.edit);
        const Result<void> written =
            settled ? savePiece(line.out, *settled) : tl::unexpected(settled.error());
        if (!written) {
            return refuse(written.error(), kNotWritten);
        }
    }
    std::cout << (line.isJson ? settlementJson(settlement) : settlementText(settlement));
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

}  // namespace shoulderline
