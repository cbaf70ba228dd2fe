#include "ui/fields/statement_field.h"

#include <utility>

#include "core/measure/angle_text.h"
#include "core/measure/expression.h"
#include "ui/fields/length_field.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr auto kAlmost = "≈";

}  // namespace

StatementField::StatementField(Document& document,
                               Dimension dimension,
                               Commit commit,
                               QWidget* parent)
    : MeasureField(parent),
      document_(document),
      dimension_(dimension),
      commit_(std::move(commit)) {}

void StatementField::setStatement(const std::string& statement, const std::string& resting) {
    statement_ = statement;
    resting_ = resting;
    refresh();
}

bool StatementField::isLiteral() const {
    const Unit unit = document_.piece().unit;
    switch (dimension_) {
        case Dimension::Length:
            return readLength(statement_, unit).has_value();
        case Dimension::Angle:
            return readAngle(statement_).has_value();
        case Dimension::Number:
            break;
    }
    const Result<Expression> expression = Expression::parse(statement_, unit);
    return expression && expression->names().empty();
}

// A length typed without a unit takes the unit that lengths are shown in, which need not be the
// one that the piece is stated in; the statement then says which.
std::string StatementField::withUnit(const std::string& text) const {
    const Result<Length> asInches = readLength(text, Unit::Inch);
    const Result<Length> asMillimetres = readLength(text, Unit::Millimetre);
    const bool isBare =
        asInches && asMillimetres && !nearlyEqual(*asInches, *asMillimetres, Length());
    if (dimension_ != Dimension::Length || keepsBare_ || !isBare) {
        return text;
    }
    return text + (unitOf(document_.piece().style) == Unit::Inch ? " in" : " mm");
}

Result<void> StatementField::commitText(const QString& text, Manner manner) {
    std::string typed = utf8(text.trimmed().replace(QChar::Nbsp, u' '));
    if (typed.rfind(kAlmost, 0) == 0) {
        typed.erase(0, std::string_view(kAlmost).size());
    }
    if (typed.empty() && !mayBeEmpty_) {
        return fail(ErrorCode::EmptyText,
                    utf8(tr("A value belongs here; Esc brings the old one back.")));
    }
    if (!typed.empty()) {
        typed = withUnit(typed);
        if (const Result<std::string> value = document_.shownValue(typed, dimension_); !value) {
            return tl::unexpected(value.error());
        }
        if (dimension_ == Dimension::Number && counts_) {
            if (const Result<int> count = document_.countOf(typed); !count) {
                return tl::unexpected(count.error());
            }
        }
    }
    return commit_(typed, manner == Manner::Step ? Document::Kind::Step : Document::Kind::Whole);
}

QString StatementField::restingText() const {
    if (statement_.empty() || !resting_.empty()) {
        return qt(resting_);
    }
    const Result<std::string> value = document_.shownValue(statement_, dimension_);
    return qt(value ? *value : statement_);
}

QString StatementField::editingText() const {
    const QString resting = restingText();
    if (statement_.empty()) {
        return resting;
    }
    const bool isRounded = resting.startsWith(qt(kAlmost));
    return isLiteral() && !isRounded ? resting : qt(statement_);
}

Result<QString> StatementField::stepped(int steps) const {
    if (!statement_.empty() && !isLiteral()) {
        return fail(ErrorCode::BadText,
                    utf8(tr("It follows from %1; type to state it anew.").arg(qt(statement_))));
    }
    const std::string text = statement_.empty() ? resting_ : statement_;
    if (dimension_ == Dimension::Length) {
        const Result<Length> length = document_.lengthOf(withUnit(text));
        if (!length) {
            return tl::unexpected(length.error());
        }
        const LengthStyle& style = document_.piece().style;
        const Length step = stepOf(style);
        return qt(showLength(snapNearest(*length + step * steps, step), style, !keepsBare_));
    }
    if (dimension_ == Dimension::Angle) {
        return readAngle(text).map(
            [&](Angle angle) { return qt(showAngle(angle + Angle::degrees(steps))); });
    }
    bool isNumber = false;
    const int count = qt(text).toInt(&isNumber);
    if (!isNumber || count + steps < 0) {
        return fail(ErrorCode::OutOfRange, utf8(tr("A whole number belongs here.")));
    }
    return QString::number(count + steps);
}

QString StatementField::preview(const QString& text) const {
    const Result<Expression> expression =
        Expression::parse(utf8(text.trimmed()), document_.piece().unit);
    const bool isWorthIt =
        expression && (!expression->names().empty() || text.contains(u'*') ||
                       text.contains(u" / "_s) || text.contains(u" - "_s) || text.contains(u'+'));
    if (!isWorthIt) {
        return {};
    }
    const Result<std::string> value = document_.shownValue(expression->text(), dimension_);
    return value ? tr("= %1").arg(qt(*value)) : QString();
}

}  // namespace shoulderline
