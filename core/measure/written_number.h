#pragma once

#include <string_view>

#include "core/measure/result.h"
#include "core/measure/text_cursor.h"

namespace shoulderline {

// What a comma between two digits means where a number stands: the decimal sign, or, among the
// values of a function, something too ambiguous to read.
enum class Comma { Decimal, Ambiguous };

// A number as written, before its unit is known. The digits are views of the text read.
struct WrittenNumber {
    enum class Form { Whole, Decimal, Fraction, Mixed };
    Form form = Form::Whole;
    std::string_view wholeDigits;
    std::string_view decimalDigits;
    double numerator = 0;  // of a fraction; of a mixed number, the whole taken in
    double denominator = 1;
    std::size_t position = 0;
};

// True where a number can begin: a digit, a fraction character, or a decimal sign before a digit.
[[nodiscard]] bool startsNumber(const TextCursor& cursor);

// Reads one number, never signed, and steps over it; literal.h states the forms and what is
// refused. Errors: BadText, OutOfRange (too many digits).
[[nodiscard]] Result<WrittenNumber> readNumber(TextCursor& cursor, Comma comma);

// The number times ten to the `shift` (0 to 3). Whole and decimal numbers are rounded once: 41.9
// with shift 1 is 419 to the last bit.
[[nodiscard]] double numberValue(const WrittenNumber& number, int shift = 0);

}  // namespace shoulderline
