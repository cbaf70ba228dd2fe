#include <unordered_map>

#include "core/check/checks.h"
#include "core/resolve/bending_text.h"
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
    Evaluation evaluation(measures, context.piece.unit, context.piece.style, unused);
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

// A curve sawn out of the solid takes stock as thick as it is deep.
void judgeSawn(const CheckContext& context,
               std::size_t part,
               const std::optional<Length>& stock,
               std::vector<Finding>& findings) {
    const ResolvedPart& sawn = context.resolved.parts[part];
    const Length deep = bendWorkOf(sawn, context.resolved.rules).solidThickness;
    if (!stock || deep <= *stock + kLengthTolerance) {
        return;
    }
    Finding finding = context.finding(RuleId::BendInStock, Severity::MustMend);
    finding.parts = {part};
    finding.value = deep.mm();
    finding.limit = stock->mm();
    finding.unit = "mm";
    finding.message = "{part} is sawn to its bow out of " + context.shown(deep) + ", and " +
                      sawn.stock + " is " + context.shown(*stock) + " thick";
    const Length rise = sawn.bend->rise.value - (deep - *stock);
    Part laminated = context.stated(part);
    laminated.bend->method = BendMethod::Laminated;
    finding.mends.push_back({"laminate it of plies", SetPart{laminated.name, laminated}});
    finding.mends.push_back(
        {rise > Length() ? "or let it rise " + context.shown(rise) + " at the most"
                         : "or make it thinner than its stock: no bow goes into it as it is",
         std::nullopt});
    findings.push_back(std::move(finding));
}

}  // namespace

void checkStock(const CheckContext& context, std::vector<Finding>& findings) {
    const std::unordered_map<std::string_view, Limits> limits = limitsOf(context);
    for (std::size_t i = 0; i < context.resolved.parts.size(); ++i) {
        const ResolvedPart& part = context.resolved.parts[i];
        const auto it = limits.find(part.stock);
        if (it != limits.end()) {
            if (part.bend && part.bend->method == BendMethod::Sawn) {
                judgeSawn(context, i, it->second.thickness, findings);
            } else {
                judge(context, i, "thick", part.thickness.value, it->second.thickness, findings);
            }
            judge(context, i, "wide", part.width.value, it->second.width, findings);
            const Length length =
                part.bend ? bendWorkOf(part, context.resolved.rules).blankLength : part.length();
            judge(context, i, "long", length, it->second.length, findings);
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
