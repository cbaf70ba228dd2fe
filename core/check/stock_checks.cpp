#include <unordered_map>

#include "core/check/checks.h"
#include "core/resolve/evaluation.h"

namespace shoulderline {

namespace {

// The limits of a stock, worked out once.
struct Limits {
    std::optional<Length> thickness;
    std::optional<Length> width;
    std::optional<Length> length;
};

std::unordered_map<std::string_view, Limits> limitsOf(const CheckContext& context) {
    std::vector<NamedExpression> named;
    for (const Measure& measure : context.piece.measures) {
        named.push_back({measure.name, measure.expression});
    }
    const MeasureTable measures = MeasureTable::evaluateAll(named, context.piece.unit);
    std::vector<Trouble> unused;  // resolve() has told of what cannot be worked out
    Evaluation evaluation(measures, context.piece.unit, unused);
    std::unordered_map<std::string_view, Limits> limits;
    for (const Stock& stock : context.piece.stocks) {
        const Place place{"stock", stock.name, std::nullopt};
        const auto optional = [&](const Statement& statement) {
            return statement.empty() ? std::nullopt : evaluation.length(statement, place, "limit");
        };
        limits[stock.name] = {
            optional(stock.measuredThickness.empty() ? stock.thickness : stock.measuredThickness),
            optional(stock.greatestWidth),
            optional(stock.greatestLength)};
    }
    return limits;
}

void judge(const CheckContext& context,
           std::size_t part,
           const char* what,
           Length size,
           const std::optional<Length>& limit,
           std::vector<Finding>& findings) {
    if (!limit || size <= *limit + kLengthTolerance) {
        return;
    }
    Finding finding = context.finding(RuleId::StockYields, Severity::MustMend);
    finding.parts = {part};
    finding.value = size.mm();
    finding.limit = limit->mm();
    finding.unit = "mm";
    const std::string& stock = context.resolved.parts[part].stock;
    finding.message = "{part} is " + context.shown(size) + " " + what + ", and " + stock +
                      " yields " + context.shown(*limit);
    Mend mend{std::string("bring its ") +
                  (what[0] == 't' ? "thickness" : (what[0] == 'w' ? "width" : "length")) + " to " +
                  context.shown(*limit) + ", or find stock of " + context.shown(size),
              std::nullopt};
    const Part& stated = context.stated(part);
    if (what[0] == 't' && !stated.thickness.empty()) {
        Part changed = stated;
        changed.thickness.clear();
        mend = {"make it as thick as its stock, " + context.shown(*limit),
                SetPart{stated.name, changed}};
    }
    finding.mends.push_back(std::move(mend));
    findings.push_back(std::move(finding));
}

}  // namespace

void checkStock(const CheckContext& context, std::vector<Finding>& findings) {
    const std::unordered_map<std::string_view, Limits> limits = limitsOf(context);
    for (std::size_t i = 0; i < context.resolved.parts.size(); ++i) {
        const ResolvedPart& part = context.resolved.parts[i];
        const auto it = limits.find(part.stock);
        if (it != limits.end()) {
            judge(context, i, "thick", part.thickness.value, it->second.thickness, findings);
            judge(context, i, "wide", part.width.value, it->second.width, findings);
            judge(context, i, "long", part.length(), it->second.length, findings);
        }
    }
    for (const Stock& stock : context.piece.stocks) {
        if (!stock.species.empty() && context.species.find(stock.species) == nullptr) {
            Finding finding = context.finding(RuleId::StockYields, Severity::Note);
            finding.message = "stock '" + stock.name +
                              "': there are no published figures for the species '" +
                              stock.species + "'";
            finding.mends.push_back({"choose a species from the table", std::nullopt});
            findings.push_back(std::move(finding));
        }
    }
}

}  // namespace shoulderline
