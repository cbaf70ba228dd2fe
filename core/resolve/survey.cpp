#include "core/resolve/survey.h"

#include <algorithm>
#include <cmath>

#include "core/measure/angle_text.h"
#include "core/measure/expression.h"
#include "core/measure/length_text.h"
#include "core/measure/measures.h"
#include "core/measure/number_text.h"

namespace shoulderline {

namespace {

std::optional<Value> valueOf(const MeasureTable& table, const std::string& name) {
    const Result<Value> value = table.lookup(name);
    return value ? std::optional(*value) : std::nullopt;
}

MeasureTable tableOf(const Piece& piece, const std::vector<Statement>& texts) {
    std::vector<NamedExpression> measures;
    for (std::size_t i = 0; i < piece.measures.size(); ++i) {
        measures.push_back({piece.measures[i].name, texts[i]});
    }
    return MeasureTable::evaluateAll(measures, piece.unit);
}

// What `a` is over `b`; none where they agree or are of different kinds.
std::optional<Value> difference(const Value& a, const Value& b) {
    constexpr double kLength = 0.01;  // mm
    constexpr double kAngle = 0.01;   // degrees
    constexpr double kNumber = 0.001;
    const Result<Value> apart = Value::difference(a, b);
    if (!apart) {
        return std::nullopt;
    }
    bool isSome = false;
    switch (apart->dimension()) {
        case Dimension::Length:
            isSome = std::abs(apart->asLength().value_or(Length()).mm()) > kLength;
            break;
        case Dimension::Angle:
            isSome = std::abs(apart->asAngle().value_or(Angle()).degrees()) > kAngle;
            break;
        case Dimension::Number:
            isSome = std::abs(apart->asNumber().value_or(0.0)) > kNumber;
            break;
    }
    return isSome ? std::optional(*apart) : std::nullopt;
}

std::string shown(const Piece& piece, const Value& value) {
    switch (value.dimension()) {
        case Dimension::Length:
            return showLength(value.asLength().value_or(Length()), piece.style, true);
        case Dimension::Angle:
            return showAngle(value.asAngle().value_or(Angle()));
        case Dimension::Number:
            return showDecimal(value.asNumber().value_or(0.0), 3);
    }
    return {};
}

// "1/4 in more", "1/4 in less".
std::string over(const Piece& piece, const Value& difference) {
    const bool isLess = difference.asLength().value_or(Length()) < Length() ||
                        difference.asAngle().value_or(Angle()) < Angle() ||
                        difference.asNumber().value_or(0.0) < 0.0;
    return shown(piece, isLess ? difference.negated() : difference) + (isLess ? " less" : " more");
}

}  // namespace

std::vector<SurveyRow> surveyOf(const Piece& piece) {
    std::vector<Statement> chosen;
    std::vector<Statement> found;
    for (const Measure& measure : piece.measures) {
        chosen.push_back(measure.expression);
        found.push_back(measure.found.empty() ? measure.expression : measure.found);
    }
    const MeasureTable asChosen = tableOf(piece, chosen);
    std::vector<SurveyRow> rows;
    for (std::size_t i = 0; i < piece.measures.size(); ++i) {
        const Measure& measure = piece.measures[i];
        const Result<Expression> text = Expression::parse(measure.found, piece.unit);
        if (measure.found.empty() || !text) {
            continue;
        }
        const std::optional<Value> value = valueOf(tableOf(piece, found), measure.name);
        if (!value) {
            continue;
        }
        SurveyRow row{measure.name, valueOf(asChosen, measure.name), *value, {}, {}, {}};
        row.apart = row.chosen ? difference(row.found, *row.chosen) : std::nullopt;
        // By its own expression, all else as it was found.
        const Result<Expression> own = Expression::parse(measure.expression, piece.unit);
        const auto wasFound = [&](const std::string& name) {
            return std::any_of(
                piece.measures.begin(), piece.measures.end(), [&](const Measure& other) {
                    return other.name == name && !other.found.empty();
                });
        };
        if (own && std::any_of(own->names().begin(), own->names().end(), wasFound)) {
            std::vector<Statement> mixed = found;
            mixed[i] = measure.expression;
            row.follows = valueOf(tableOf(piece, mixed), measure.name);
            row.open = row.follows ? difference(row.found, *row.follows) : std::nullopt;
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

SurveyWords inWords(const SurveyRow& row, const Piece& piece) {
    const auto shownOr = [&](const std::optional<Value>& value) {
        return value ? shown(piece, *value) : std::string();
    };
    const auto overOr = [&](const std::optional<Value>& value) {
        return value ? over(piece, *value) : std::string();
    };
    return {row.name,
            shown(piece, row.found),
            shownOr(row.chosen),
            overOr(row.apart),
            shownOr(row.follows),
            overOr(row.open)};
}

std::string surveyText(const Piece& piece) {
    std::string text;
    for (const SurveyRow& row : surveyOf(piece)) {
        const SurveyWords words = inWords(row, piece);
        text += "  " + words.name + ": found " + words.found;
        if (row.chosen) {
            text += row.apart ? ", chosen " + words.chosen + "; found is " + words.apart
                              : ", as chosen";
        }
        if (row.open) {
            text += "; the figures found for " + words.name +
                    " do not close: from the others it comes to " + words.follows + ", found is " +
                    words.open;
        }
        text += "\n";
    }
    return text;
}

}  // namespace shoulderline
