#include "core/measure/angle_text.h"

#include "core/measure/literal.h"
#include "core/measure/number_text.h"
#include "core/measure/text_cursor.h"

namespace shoulderline {

namespace {
constexpr std::size_t kLongestAngle = 200;  // bytes
}

Result<Angle> readAngle(std::string_view text) {
    TextCursor cursor(text);
    cursor.skipSpaces();
    if (cursor.atEnd()) {
        return fail(ErrorCode::EmptyText, "nothing is written where an angle was expected");
    }
    if (text.size() > kLongestAngle) {
        return fail(ErrorCode::BadText, "the text is too long for an angle", {}, kLongestAngle);
    }
    const bool isNegative = takeSign(cursor);
    const std::size_t start = cursor.position();
    const auto literal = readLiteral(cursor, Comma::Decimal);
    if (!literal) {
        return tl::unexpected(literal.error());
    }
    if (auto rest = expectEnd(cursor, "an angle", "deg or °"); !rest) {
        return tl::unexpected(rest.error());
    }
    if (literal->kind == Literal::Kind::Length) {
        return fail(
            ErrorCode::WrongDimension, "this is a length where an angle was expected", {}, start);
    }
    const Angle angle = Angle::degrees(literal->amount);
    if (angle > kWidestAngle) {
        return fail(ErrorCode::OutOfRange, "the angle is over ten turns", {}, start);
    }
    return isNegative ? -angle : angle;
}

std::string showAngle(Angle angle) {
    return showDecimal(angle.degrees(), 1) + "°";
}

}  // namespace shoulderline
