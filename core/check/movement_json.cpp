#include "core/check/movement_json.h"

#include <cmath>
#include <set>

#include <nlohmann/json.hpp>

#include "core/check/figure_text.h"

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

ordered_json number(const std::optional<double>& value) {
    constexpr double kSteps = 1e3;
    return value ? ordered_json(std::round(*value * kSteps) / kSteps) : ordered_json();
}

const Stock* stockOf(const Piece& piece, const ResolvedPart& part) {
    for (const Stock& stock : piece.stocks) {
        if (stock.name == part.stock) {
            return &stock;
        }
    }
    return nullptr;
}

}  // namespace

std::string movementJson(const Piece& piece,
                         const ResolvedPiece& resolved,
                         const MovementReport& report) {
    ordered_json document{{"dry_percent", number(report.season.dry)},
                          {"damp_percent", number(report.season.damp)},
                          {"source", report.season.source},
                          {"troubles", report.season.troubles},
                          {"parts", ordered_json::array()}};
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        const ResolvedPart& part = resolved.parts[i];
        const Stock* stock = stockOf(piece, part);
        document["parts"].push_back(
            {{"name", part.name},
             {"species", stock != nullptr ? ordered_json(stock->species) : ordered_json()},
             {"cut", stock != nullptr ? ordered_json(wordFor(stock->cut)) : ordered_json()},
             {"width_mm", number(part.width.value.mm())},
             {"thickness_mm", number(part.thickness.value.mm())},
             {"width_change_mm", number(report.parts[i].width)},
             {"thickness_change_mm", number(report.parts[i].thickness)}});
    }
    return document.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

std::string movementText(const Piece& piece,
                         const ResolvedPiece& resolved,
                         const MovementReport& report) {
    std::string text =
        "From " + figureText(report.season.dry, 1) + " to " + figureText(report.season.damp, 1) +
        " % moisture content: " + report.season.source + "\n\nAcross the grain, dry to damp\n";
    std::set<std::string> told;
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        const ResolvedPart& part = resolved.parts[i];
        const Stock* stock = stockOf(piece, part);
        std::string line = part.of + ": ";
        if (!report.parts[i].width) {
            line += "no published figure for its wood";
        } else {
            line += "width " + showLength(part.width.value, piece.style, true) + " by " +
                    figureText(*report.parts[i].width, 2) + " mm";
            if (report.parts[i].thickness) {
                line += ", thickness " + showLength(part.thickness.value, piece.style, true) +
                        " by " + figureText(*report.parts[i].thickness, 2) + " mm";
            }
        }
        if (stock != nullptr) {
            line += " (" + stock->species + ", " + std::string(wordFor(stock->cut)) + ")";
        }
        if (told.insert(line).second) {
            text += "  " + line + "\n";
        }
    }
    text +=
        "\nAlong the grain wood hardly moves. Boards are seldom truly flat- or quartersawn: the "
        "width is more likely to move less than told, the thickness more (Wood Handbook, "
        "FPL-GTR-190 (2010), p. 13-17).\n";
    for (const std::string& trouble : report.season.troubles) {
        text += "\nnot counted: " + trouble + "\n";
    }
    return text;
}

}  // namespace shoulderline
