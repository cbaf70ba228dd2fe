#include "app/commands.h"

#include <algorithm>
#include <iostream>

#include "core/check/findings_json.h"
#include "core/resolve/resolve.h"
#include "core/resolve/sizes_json.h"
#include "core/storage/piece_file.h"

namespace shoulderline {

namespace {

int refuse(const Error& error, int exitCode) {
    std::cerr << "shoulderline: " << (error.where.empty() ? "" : error.where + ": ") << error.message << "\n";
    return exitCode;
}

Result<Piece> withMeasure(const Piece& piece, const std::string& name, const std::string& expression) {
    const bool isThere = std::any_of(piece.measures.begin(), piece.measures.end(),
                                     [&](const Measure& measure) { return measure.name == name; });
    if (!isThere) {
        return fail(ErrorCode::UnknownName, "There is no measure '" + name + "' in this piece.", "--with");
    }
    return apply(piece, SetMeasure{name, expression});
}

// A thickness stated so stands over one that was measured.
Result<Piece> withStock(const Piece& piece, const std::string& name, const std::string& thickness) {
    const auto it = std::find_if(piece.stocks.begin(), piece.stocks.end(),
                                 [&](const Stock& stock) { return stock.name == name; });
    if (it == piece.stocks.end()) {
        return fail(ErrorCode::UnknownName, "There is no stock '" + name + "' in this piece.", "--stock");
    }
    Stock changed = *it;
    changed.thickness = thickness;
    changed.measuredThickness.clear();
    return apply(piece, SetStock{changed});
}

Result<Piece> readAsked(const CommandLine& line) {
    Result<Piece> piece = loadPiece(line.file);
    for (const auto& [name, expression] : line.with) {
        piece = piece.and_then([&](const Piece& p) { return withMeasure(p, name, expression); });
    }
    for (const auto& [name, thickness] : line.stock) {
        piece = piece.and_then([&](const Piece& p) { return withStock(p, name, thickness); });
    }
    return piece;
}

}  // namespace

int runCheck(const CommandLine& line, const Resources& resources) {
    const Result<Piece> piece = readAsked(line);
    if (!piece) {
        return refuse(piece.error(), kUnreadable);
    }
    const ResolvedPiece resolved = resolve(*piece, resources.rules, resources.workshop);
    const std::vector<Finding> findings = check(*piece, resolved, resources.species);
    std::cout << (line.isJson ? findingsJson(findings, resolved) : findingsText(findings));
    const bool mustMend = std::any_of(findings.begin(), findings.end(),
                                      [](const Finding& f) { return f.severity == Severity::MustMend; });
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

}  // namespace shoulderline
