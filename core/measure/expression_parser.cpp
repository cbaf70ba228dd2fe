#include "core/measure/expression_parser.h"

#include <algorithm>
#include <utility>

#include "core/measure/literal.h"
#include "core/measure/measure_name.h"
#include "core/measure/text_cursor.h"
#include "core/measure/written_number.h"

namespace shoulderline {

namespace {

constexpr std::size_t kLongestExpression = 1000;  // bytes
constexpr int kDeepestNesting = 60;
constexpr std::size_t kMostValues = 200;  // of a function; a text holds no more than 500

using Kind = ExpressionStep::Kind;
using Done = Result<void>;

struct FunctionShape {
    Kind step;
    std::size_t fewest;
    std::size_t most;
    const char* wants;
};

FunctionShape shapeOf(Function function) {
    switch (function) {
        case Function::Min:
            return {Kind::Min, 2, kMostValues, "min takes two values or more"};
        case Function::Max:
            return {Kind::Max, 2, kMostValues, "max takes two values or more"};
        case Function::Round:
            return {Kind::Round, 2, 2, "round takes two values: what to round, and the step"};
        case Function::Sin:
            return {Kind::Sin, 1, 1, "sin takes one angle"};
        case Function::Cos:
            return {Kind::Cos, 1, 1, "cos takes one angle"};
        case Function::Tan:
            break;
    }
    return {Kind::Tan, 1, 1, "tan takes one angle"};
}

// A parser by recursive descent; each method reads one construct and appends its steps.
class Parser {
  public:
    Parser(std::string_view text, Unit bare) : cursor_(text), bare_(bare) {}

    Done whole();
    [[nodiscard]] ExpressionCode finish(std::string_view text);

  private:
    Done sum();
    Done product();
    Done factor(bool followsDivision);
    Done signedFactor() { return factor(false); }
    Done signedDivisor() { return factor(true); }
    Done bracketed();
    Done nameOrCall();
    Done call(Function function, std::size_t position);
    Done literal(bool followsDivision);
    Result<Literal> divisorLiteral();
    Done nested(Done (Parser::*construct)());

    void append(Kind kind, std::size_t position, std::size_t operand = 0, Value value = {}) {
        steps_.push_back({kind,
                          static_cast<std::uint16_t>(position),
                          static_cast<std::uint16_t>(operand),
                          value});
    }
    [[nodiscard]] tl::unexpected<Error> found(const std::string& expected) const {
        return fail(ErrorCode::BadText,
                    "found " + cursor_.describe() + " where " + expected + " was expected",
                    {},
                    cursor_.position());
    }

    TextCursor cursor_;
    Unit bare_;
    int depth_ = 0;
    int functionDepth_ = 0;
    std::vector<ExpressionStep> steps_;
    std::vector<std::string> names_;  // in order of mention, with repeats
};

Done Parser::whole() {
    if (Done done = sum(); !done) {
        return done;
    }
    if (!cursor_.atEnd()) {
        return found("an operator or the end");
    }
    return {};
}

ExpressionCode Parser::finish(std::string_view text) {
    ExpressionCode code;
    code.text = text;
    code.names = names_;
    std::sort(code.names.begin(), code.names.end());
    code.names.erase(std::unique(code.names.begin(), code.names.end()), code.names.end());
    for (ExpressionStep& step : steps_) {
        if (step.kind == Kind::Name) {
            const auto place =
                std::lower_bound(code.names.begin(), code.names.end(), names_[step.operand]);
            step.operand = static_cast<std::uint16_t>(place - code.names.begin());
        }
    }
    code.steps = std::move(steps_);
    return code;
}

Done Parser::nested(Done (Parser::*construct)()) {
    if (depth_ >= kDeepestNesting) {
        return fail(ErrorCode::BadText,
                    "brackets or signs nest more than 60 deep here",
                    {},
                    cursor_.position());
    }
    ++depth_;
    Done done = (this->*construct)();
    --depth_;
    return done;
}

Done Parser::sum() {
    if (Done done = product(); !done) {
        return done;
    }
    while (true) {
        cursor_.skipSpaces();
        const std::size_t position = cursor_.position();
        const bool isAddition = cursor_.take(U'+');
        if (!isAddition && !cursor_.take(U'-') && !cursor_.take(kMinusSign)) {
            return {};
        }
        if (Done done = product(); !done) {
            return done;
        }
        append(isAddition ? Kind::Add : Kind::Subtract, position);
    }
}

Done Parser::product() {
    if (Done done = factor(false); !done) {
        return done;
    }
    while (true) {
        cursor_.skipSpaces();
        const std::size_t position = cursor_.position();
        const bool isProduct = cursor_.take(U'*');
        if (!isProduct && !cursor_.take(U'/') && !cursor_.take(kDivisionSign)) {
            return {};
        }
        if (Done done = factor(!isProduct); !done) {
            return done;
        }
        append(isProduct ? Kind::Multiply : Kind::Divide, position);
    }
}

Done Parser::factor(bool followsDivision) {
    cursor_.skipSpaces();
    const std::size_t position = cursor_.position();
    const bool isNegative = cursor_.take(U'-') || cursor_.take(kMinusSign);
    if (isNegative || cursor_.take(U'+')) {
        Done done = nested(followsDivision ? &Parser::signedDivisor : &Parser::signedFactor);
        if (done && isNegative) {
            append(Kind::Negate, position);
        }
        return done;
    }
    if (cursor_.peek() == U'(') {
        return nested(&Parser::bracketed);
    }
    if (isLetter(cursor_.peek())) {
        return nameOrCall();
    }
    if (startsNumber(cursor_)) {
        return literal(followsDivision);
    }
    return found("a length, a number, a measure or an opening bracket");
}

Done Parser::bracketed() {
    cursor_.take(U'(');
    if (Done done = sum(); !done) {
        return done;
    }
    if (!cursor_.take(U')')) {
        return found("an operator or a closing bracket");
    }
    return {};
}

Done Parser::nameOrCall() {
    const std::size_t position = cursor_.position();
    std::string name = takeName(cursor_);
    const std::size_t end = cursor_.position();
    cursor_.skipSpaces();
    const bool isCall = cursor_.peek() == U'(';
    const auto function = findFunction(name);
    if (isCall && function) {
        ++functionDepth_;
        Done done = call(*function, position);
        --functionDepth_;
        return done;
    }
    if (isCall) {
        return fail(ErrorCode::BadText,
                    "'" + name + "' is no function; there are min, max, round, sin, cos and tan",
                    {},
                    position);
    }
    if (function) {
        return fail(ErrorCode::BadText,
                    "the function " + name + " needs its values in brackets",
                    {},
                    position);
    }
    if (isUnitWord(name)) {
        return fail(ErrorCode::BadText,
                    "the unit '" + name + "' stands without a number before it",
                    {},
                    position);
    }
    cursor_.moveTo(end);
    append(Kind::Name, position, names_.size());
    names_.push_back(std::move(name));
    return {};
}

Done Parser::call(Function function, std::size_t position) {
    const FunctionShape shape = shapeOf(function);
    cursor_.take(U'(');
    std::size_t count = 0;
    do {
        if (Done done = nested(&Parser::sum); !done) {
            return done;
        }
        ++count;
    } while (cursor_.take(U','));
    if (!cursor_.take(U')')) {
        return found("a comma or a closing bracket");
    }
    if (count < shape.fewest || count > shape.most) {
        return fail(ErrorCode::BadText, shape.wants, {}, position);
    }
    append(shape.step, position, count);
    return {};
}

// After a division sign `3/4` would read as a fraction in a fraction: with no unit its slash is the
// next division, with one it is refused. The single characters ¾ are never in doubt.
Result<Literal> Parser::divisorLiteral() {
    const std::size_t start = cursor_.position();
    const bool isOneCharacter = vulgarFraction(cursor_.peek()).has_value();
    const Comma comma = functionDepth_ > 0 ? Comma::Ambiguous : Comma::Decimal;
    auto literal = readLiteral(cursor_, comma);
    if (!literal || !literal->isFraction || isOneCharacter) {
        return literal;
    }
    if (literal->kind != Literal::Kind::Bare) {
        return fail(ErrorCode::BadText,
                    "a fraction right after a division sign is ambiguous; put it in brackets",
                    {},
                    start);
    }
    cursor_.moveTo(start);
    TextCursor numerator(cursor_.takeDigits());
    return readLiteral(numerator, comma);
}

Done Parser::literal(bool followsDivision) {
    const std::size_t position = cursor_.position();
    const Comma comma = functionDepth_ > 0 ? Comma::Ambiguous : Comma::Decimal;
    const auto read = followsDivision ? divisorLiteral() : readLiteral(cursor_, comma);
    if (!read) {
        return tl::unexpected(read.error());
    }
    Value value = Value::bare(read->amount, bare_);
    if (read->kind == Literal::Kind::Length) {
        value = Value::length(Length::mm(read->amount));
    } else if (read->kind == Literal::Kind::Angle) {
        value = Value::angle(Angle::degrees(read->amount));
    }
    if (const auto checked = value.checked(); !checked) {
        return fail(checked.error().code, checked.error().message, {}, position);
    }
    append(Kind::Literal, position, 0, value);

    const std::size_t end = cursor_.position();
    cursor_.skipSpaces();
    if (read->kind == Literal::Kind::Bare && isLetter(cursor_.peek())) {
        return found("a unit (in, ft, mm, cm, m, deg) or an operator");
    }
    if (startsNumber(cursor_) && cursor_.peek() != U',') {
        return found("an operator between two numbers");
    }
    cursor_.moveTo(end);
    return {};
}

}  // namespace

Result<ExpressionCode> parseExpression(std::string_view text, Unit bare) {
    TextCursor start(text);
    start.skipSpaces();
    if (start.atEnd()) {
        return fail(ErrorCode::EmptyText, "nothing is written where an expression was expected");
    }
    if (text.size() > kLongestExpression) {
        return fail(
            ErrorCode::BadText, "the expression is longer than 1000 bytes", {}, kLongestExpression);
    }
    Parser parser(text, bare);
    if (const Done done = parser.whole(); !done) {
        return tl::unexpected(done.error());
    }
    return parser.finish(text);
}

}  // namespace shoulderline
