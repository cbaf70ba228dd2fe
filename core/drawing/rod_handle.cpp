#include <algorithm>
#include <cmath>
#include <functional>

#include "core/drawing/overloaded.h"
#include "core/drawing/rods.h"
#include "core/measure/expression.h"
#include "core/measure/length_statement.h"
#include "core/measure/measure_name.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// A statement that puts a side of a part at a place along one axis, and how to state it anew.
struct Placing {
    Side side = Side::Centre;
    Statement at;
    std::function<void(Part&, const Statement&)> restate;
};

std::vector<Placing> placingsOf(const Part& part) {
    std::vector<Placing> placings;
    std::visit(
        Overloaded{
            [&](const Stands& stands) {
                placings.push_back({stands.x.face, stands.x.at, [](Part& p, const Statement& s) {
                                        std::get<Stands>(p.relation).x.at = s;
                                    }});
                placings.push_back({stands.y.face, stands.y.at, [](Part& p, const Statement& s) {
                                        std::get<Stands>(p.relation).y.at = s;
                                    }});
                placings.push_back({Side::Top, stands.height, [](Part& p, const Statement& s) {
                                        std::get<Stands>(p.relation).height = s;
                                    }});
                placings.push_back({Side::Bottom, stands.foot, [](Part& p, const Statement& s) {
                                        std::get<Stands>(p.relation).foot = s;
                                    }});
            },
            [&](const Spans& spans) {
                if (spans.level) {
                    placings.push_back(
                        {spans.level->face, spans.level->at, [](Part& p, const Statement& s) {
                             std::get<Spans>(p.relation).level->at = s;
                         }});
                }
            },
            [](const Caps&) {},
            [](const Fills&) {},
            [&](const Free& free) {
                if (!free.aboutX.empty() || !free.aboutY.empty() || !free.aboutZ.empty()) {
                    return;
                }
                placings.push_back({Side::Left, free.x, [](Part& p, const Statement& s) {
                                        std::get<Free>(p.relation).x = s;
                                    }});
                placings.push_back({Side::Front, free.y, [](Part& p, const Statement& s) {
                                        std::get<Free>(p.relation).y = s;
                                    }});
                placings.push_back({Side::Bottom, free.z, [](Part& p, const Statement& s) {
                                        std::get<Free>(p.relation).z = s;
                                    }});
            },
        },
        part.relation);
    return placings;
}

std::optional<double> valueOf(const Statement& statement,
                              const Piece& piece,
                              const ResolvedPiece& resolved) {
    const Lookup lookup = [&](std::string_view name) -> Result<Value> {
        for (const ResolvedMeasure& measure : resolved.measures) {
            if (measure.name == name && measure.value) {
                return *measure.value;
            }
        }
        return fail(ErrorCode::UnknownName, "no such measure");
    };
    const Result<Expression> expression = Expression::parse(statement, piece.unit);
    if (!expression) {
        return std::nullopt;
    }
    const Result<Length> length = expression->evaluateLength(lookup);
    return length ? std::optional(length->mm()) : std::nullopt;
}

// The measure that a statement is alone; null where it is none.
const Measure* measureNamed(const Piece& piece, const Statement& statement) {
    const std::string name = tidyName(statement);
    const auto it = std::find_if(piece.measures.begin(),
                                 piece.measures.end(),
                                 [&](const Measure& measure) { return measure.name == name; });
    return it == piece.measures.end() ? nullptr : &*it;
}

// A way to put the line elsewhere.
struct PossibleHandle {
    std::size_t part = 0;  // in ResolvedPiece::parts
    Placing placing;
    bool isNegated = false;  // the mirror twin of what is stated
};

bool liesAt(double a, double b) {
    return std::abs(a - b) <= kLengthTolerance.mm();
}

// Where a stated part is put along an axis: each place as stated, worked out.
struct StatedPlace {
    Placing placing;
    double at = 0.0;
};

std::vector<StatedPlace> statedPlaces(const Piece& piece,
                                      const ResolvedPiece& resolved,
                                      const Part& stated,
                                      int axis) {
    std::vector<StatedPlace> places;
    for (Placing& placing : placingsOf(stated)) {
        const std::optional<AxisWay> way = wayOf(placing.side);
        if (!way || way->axis != axis) {
            continue;
        }
        if (const std::optional<double> at = valueOf(placing.at, piece, resolved)) {
            places.push_back({std::move(placing), *at});
        }
    }
    return places;
}

// Whether a part is the mirror twin of what is stated along the axis.
bool isTwinAlong(const Piece& piece, const ResolvedPart& part, int axis) {
    return axis == 0 && piece.parts[part.stated].pair && part.hand == Hand::Left;
}

std::vector<PossibleHandle> candidatesFor(const Piece& piece,
                                          const ResolvedPiece& resolved,
                                          const RodLine& line,
                                          int axis) {
    std::vector<PossibleHandle> candidates;
    for (const std::size_t index : line.parts) {
        const ResolvedPart& part = resolved.parts[index];
        const bool isTwin = isTwinAlong(piece, part, axis);
        for (StatedPlace& place : statedPlaces(piece, resolved, piece.parts[part.stated], axis)) {
            if (liesAt(isTwin ? -place.at : place.at, line.at)) {
                candidates.push_back({index, std::move(place.placing), isTwin});
            }
        }
    }
    return candidates;
}

std::string listOf(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += (i == 0 ? "" : (i + 1 == names.size() ? " and " : ", ")) + names[i];
    }
    return text;
}

std::string reasonFor(const Piece& piece,
                      const ResolvedPiece& resolved,
                      const RodLine& line,
                      int axis) {
    const ResolvedPart& part = resolved.parts[line.parts.front()];
    const Part& stated = piece.parts[part.stated];
    if (stated.spacing) {
        return "the spacing between " + stated.spacing->after + " and " + stated.spacing->before;
    }
    const bool runsAlong = std::abs(part.frame.x[axis]) > 0.5;
    return std::visit(
        Overloaded{
            [&](const Stands&) { return "where " + stated.name + " stands, and its own size"; },
            [&](const Spans& spans) {
                return runsAlong ? spans.from + " and " + spans.to
                                 : "how " + stated.name + " lies between " + spans.from + " and " +
                                       spans.to + ", and its own size";
            },
            [&](const Caps& caps) {
                return listOf(caps.on) + ", and the overhangs of " + stated.name;
            },
            [&](const Fills& fills) {
                return listOf({fills.edges[0], fills.edges[1], fills.ends[0], fills.ends[1]}) +
                       ", and its room in their grooves";
            },
            [&](const Free&) { return "where " + stated.name + " is placed, and its own size"; },
        },
        stated.relation);
}

// How what is stated now is stated anew, for the part itself or for its mirror twin.
using Restating = std::function<Statement(const Statement& now, bool isNegated)>;

RodHandle handleBy(const Piece& piece,
                   const ResolvedPiece& resolved,
                   const Rod& rod,
                   std::size_t index,
                   const Restating& restating) {
    const RodLine& line = rod.lines[index];
    const int axis = axisOf(rod.kind);
    if (line.parts.empty()) {
        return {};
    }
    const std::vector<PossibleHandle> candidates = candidatesFor(piece, resolved, line, axis);
    for (const PossibleHandle& candidate : candidates) {
        if (const Measure* measure = measureNamed(piece, candidate.placing.at)) {
            return {measure->name,
                    SetMeasure{measure->name, restating(measure->expression, candidate.isNegated)},
                    {}};
        }
    }
    if (!candidates.empty()) {
        const PossibleHandle& candidate = candidates.front();
        const Part& stated = piece.parts[resolved.parts[candidate.part].stated];
        Part part = stated;
        candidate.placing.restate(part, restating(candidate.placing.at, candidate.isNegated));
        return {stated.name + ", " + std::string(wordFor(candidate.placing.side)),
                SetPart{stated.name, std::move(part)},
                {}};
    }
    return {line.name, std::nullopt, reasonFor(piece, resolved, line, axis)};
}

}  // namespace

RodHandle handleOf(const Piece& piece,
                   const ResolvedPiece& resolved,
                   const Rod& rod,
                   std::size_t line,
                   const Statement& value) {
    return handleBy(piece, resolved, rod, line, [&](const Statement&, bool isNegated) {
        return isNegated ? "-(" + value + ")" : value;
    });
}

std::vector<bool> takingValues(const Piece& piece, const ResolvedPiece& resolved, const Rod& rod) {
    const int axis = axisOf(rod.kind);
    // Each stated part's places once, for all lines that its parts are on.
    std::vector<std::vector<double>> places;
    for (const Part& stated : piece.parts) {
        places.emplace_back();
        for (const StatedPlace& place : statedPlaces(piece, resolved, stated, axis)) {
            places.back().push_back(place.at);
        }
    }
    std::vector<bool> takes;
    for (const RodLine& line : rod.lines) {
        takes.push_back(std::any_of(line.parts.begin(), line.parts.end(), [&](std::size_t index) {
            const ResolvedPart& part = resolved.parts[index];
            const double way = isTwinAlong(piece, part, axis) ? -1.0 : 1.0;
            const std::vector<double>& at = places[part.stated];
            return std::any_of(
                at.begin(), at.end(), [&](double one) { return liesAt(way * one, line.at); });
        }));
    }
    return takes;
}

RodHandle handleMovedBy(const Piece& piece,
                        const ResolvedPiece& resolved,
                        const Rod& rod,
                        std::size_t line,
                        Length by) {
    return handleBy(piece, resolved, rod, line, [&](const Statement& now, bool isNegated) {
        return offsetStatement(now, isNegated ? -by : by, piece.unit);
    });
}

}  // namespace shoulderline
