#pragma once

#include <string_view>

#include "core/measure/result.h"
#include "core/measure/text_cursor.h"
#include "core/measure/written_number.h"

namespace shoulderline {

// A number as a maker writes it, with its unit if one was written.
struct Literal {
    enum class Kind { Bare, Length, Angle };
    Kind kind = Kind::Bare;
    double amount = 0;        // bare: the number as written; length: millimetres; angle: degrees
    bool isFraction = false;  // a fraction with no whole number before it: 3/4, ⅝ in
};

// Reads one literal and steps over it. Never signed. Forms:
//   whole and decimal numbers    16   0.742   425,5   .5
//   fractions, slash unspaced    9/16   ⅝
//   mixed numbers                16 1/2   16-1/2 (unspaced hyphen)   16½   16 ½
//   each with a unit             in inch inches "   ft foot feet '   mm   cm   m   deg °
//   feet and inches              1 ft 4 1/2 in   1' 4 1/2"   1'-4 1/2"
//   degrees, minutes, seconds    12° 30'   12° 30' 15"
// Unit words may be in capitals; a space before a unit is optional. Refused: grouping separators, a
// comma that could be one (1,234), a zero denominator, a mixed number whose fraction is one or
// more, inches of 12 or more after feet, more digits than a size can need. Inch fractions whose
// denominator is a power of two are exact in inches; millimetres, centimetres and metres with
// decimals are rounded once, decimal inches once as inches and once as millimetres.
// Errors: BadText, OutOfRange (too many digits); position is the first wrong byte.
[[nodiscard]] Result<Literal> readLiteral(TextCursor& cursor, Comma comma);

// True if `word` names a unit that a number can carry, in small letters or capitals.
[[nodiscard]] bool isUnitWord(std::string_view word);

}  // namespace shoulderline
