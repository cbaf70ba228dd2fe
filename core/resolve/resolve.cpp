#include "core/resolve/resolve.h"

#include <algorithm>

#include "core/resolve/evaluation.h"
#include "core/resolve/giving_way.h"
#include "core/resolve/holes.h"
#include "core/resolve/joining.h"
#include "core/resolve/known_solids.h"
#include "core/resolve/pegs.h"
#include "core/resolve/placing.h"

namespace shoulderline {

namespace {

MeasureTable workOutMeasures(const Piece& piece, ResolvedPiece& resolved) {
    std::vector<NamedExpression> named;
    named.reserve(piece.measures.size());
    for (const Measure& measure : piece.measures) {
        named.push_back({measure.name, measure.expression});
    }
    MeasureTable table = MeasureTable::evaluateAll(named, piece.unit);
    for (const MeasureResult& result : table.results()) {
        ResolvedMeasure measure;
        measure.name = result.name;
        measure.dependsOn = result.dependsOn;
        if (result.value) {
            measure.value = *result.value;
        } else {
            resolved.troubles.push_back({RuleId::PieceResolves,
                                         "measure '" + result.name + "'",
                                         result.value.error().message,
                                         std::nullopt,
                                         result.name});
        }
        resolved.measures.push_back(std::move(measure));
    }
    return table;
}

// Measures outside the limits that the maker set for them.
void checkLimits(const Piece& piece, Evaluation& evaluation, ResolvedPiece& resolved) {
    for (std::size_t i = 0; i < piece.measures.size() && i < resolved.measures.size(); ++i) {
        const Measure& measure = piece.measures[i];
        const std::optional<Value>& value = resolved.measures[i].value;
        if ((measure.least.empty() && measure.most.empty()) || !value) {
            continue;
        }
        const Result<Length> length = value->asLength();
        if (!length) {
            continue;
        }
        const Place place{"measure", measure.name, std::nullopt};
        const std::optional<Length> least =
            evaluation.length(measure.least, place, "least", *length);
        const std::optional<Length> most = evaluation.length(measure.most, place, "most", *length);
        const bool isUnder = least && *length < *least - kLengthTolerance;
        const bool isOver = most && *length > *most + kLengthTolerance;
        if (isUnder || isOver) {
            const Length limit = isUnder ? *least : *most;
            resolved.troubles.push_back(
                {RuleId::MeasureLimits,
                 "measure '" + measure.name + "'",
                 showLength(*length, piece.style) +
                     (isUnder ? " is under its least, " : " is over its most, ") +
                     showLength(limit, piece.style),
                 std::nullopt,
                 measure.name});
        }
    }
}

RuleBook withHouseRules(const Piece& piece, const RuleBook& rules, Evaluation& evaluation) {
    RuleBook book = rules;
    for (const HouseRule& house : piece.houseRules) {
        const Place place{"house rule", house.id, std::nullopt};
        const std::optional<RuleId> id = ruleIdFromText(house.id);
        if (!id || rules[*id].unit == RuleUnit::None) {
            evaluation.trouble(place,
                               id ? "this rule has no figure to set" : "there is no such rule");
            continue;
        }
        if (rules[*id].unit == RuleUnit::Length) {
            const std::optional<Length> value = evaluation.length(house.value, place, "value");
            if (value && value->mm() >= 0) {
                book = book.with(*id, value->mm());
            }
        } else if (const std::optional<double> value =
                       evaluation.ratio(house.value, place, "value")) {
            book = book.with(*id, *value);
        }
    }
    return book;
}

std::vector<Length> rackOf(const Piece& piece, const Workshop& workshop, Evaluation& evaluation) {
    std::vector<Length> rack;
    for (const Statement& chisel : piece.rack) {
        if (const std::optional<Length> width =
                evaluation.size(chisel, {"rack", chisel, std::nullopt}, "chisel")) {
            rack.push_back(*width);
        }
    }
    if (rack.empty()) {
        return piece.unit == Unit::Inch ? workshop.inchRack : workshop.millimetreRack;
    }
    std::sort(rack.begin(), rack.end());
    return rack;
}

Box boundsOf(const std::vector<ResolvedPart>& parts) {
    Box bounds;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        Box box = boundsOverTenons(parts[i]);
        for (const ResolvedCut& cut : parts[i].cuts) {
            if (cut.peg) {
                box = Box::around(box, parts[i].frame.outerBounds(pegIn(cut)));
            }
        }
        bounds = i == 0 ? box : Box::around(bounds, box);
    }
    return bounds;
}

template <class Item>
std::optional<std::size_t> findByName(const std::vector<Item>& items, std::string_view name) {
    const auto it = std::find_if(
        items.begin(), items.end(), [name](const Item& item) { return item.name == name; });
    return it == items.end() ? std::nullopt
                             : std::optional(static_cast<std::size_t>(it - items.begin()));
}

}  // namespace

std::optional<std::size_t> ResolvedPiece::findPart(std::string_view name) const {
    return findByName(parts, name);
}

std::optional<std::size_t> ResolvedPiece::findJoint(std::string_view name) const {
    return findByName(joints, name);
}

namespace {

ResolvedPiece resolveAsStated(const Piece& piece,
                              const RuleBook& rules,
                              const Workshop& workshop,
                              const ResolvedPiece* before) {
    ResolvedPiece resolved;
    const MeasureTable measures = workOutMeasures(piece, resolved);
    Evaluation evaluation(measures, piece.unit, piece.style, resolved.troubles);
    checkLimits(piece, evaluation, resolved);
    resolved.rules = withHouseRules(piece, rules, evaluation);
    resolved.rack = rackOf(piece, workshop, evaluation);

    const Length grid = piece.unit == Unit::Inch ? workshop.inchGrid : workshop.millimetreGrid;
    const std::vector<Length>& bits =
        piece.unit == Unit::Inch ? workshop.inchBits : workshop.millimetreBits;
    const SizingGuide guide{resolved.rules, resolved.rack, bits, grid};
    PlacedPiece placed = placeParts(piece, guide, KnownSolids(before), evaluation);
    resolved.parts = std::move(placed.parts);
    resolved.swings = std::move(placed.swings);
    joinParts(piece, placed.seeds, guide, evaluation, resolved);
    slotByRule(piece, guide, evaluation, resolved);
    resolved.bounds = boundsOf(resolved.parts);
    return resolved;
}

}  // namespace

ResolvedPiece resolve(const Piece& piece,
                      const RuleBook& rules,
                      const Workshop& workshop,
                      const ResolvedPiece* before) {
    constexpr int kMostRounds = 4;  // a rail moved may come to lie against the next
    ResolvedPiece resolved = resolveAsStated(piece, rules, workshop, before);
    std::optional<Piece> moved = withWayGiven(piece, resolved);
    for (int round = 0; moved && round < kMostRounds; ++round) {
        resolved = resolveAsStated(*moved, rules, workshop, &resolved);
        moved = withWayGiven(*moved, resolved);
    }
    return resolved;
}

}  // namespace shoulderline
