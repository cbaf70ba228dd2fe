#include "core/measure/number_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace shoulderline {

std::string showDecimal(double value, int decimals) {
    std::array<char, 400> buffer = {};
    const int places = std::clamp(decimals, 0, 9);
    const auto written = std::to_chars(buffer.data(),
                                       buffer.data() + buffer.size(),
                                       std::abs(value),
                                       std::chars_format::fixed,
                                       places);
    std::string text(buffer.data(), written.ptr);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return value < 0 && text != "0" ? kMinusText + text : text;
}

bool takeSign(TextCursor& cursor) {
    cursor.skipSpaces();
    const bool isNegative = cursor.take(U'-') || cursor.take(kMinusSign);
    if (!isNegative) {
        cursor.take(U'+');
    }
    cursor.skipSpaces();
    return isNegative;
}

Result<void> expectEnd(TextCursor& cursor, const char* what, const char* units) {
    cursor.skipSpaces();
    if (cursor.atEnd()) {
        return {};
    }
    std::string message = "found " + cursor.describe();
    if (isLetter(cursor.peek())) {
        message += std::string(" where a unit was expected: ") + units;
    } else {
        message += std::string(" after ") + what + "; nothing may follow it";
    }
    return fail(ErrorCode::BadText, std::move(message), {}, cursor.position());
}

}  // namespace shoulderline
