#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/value.h"
#include "core/piece/piece.h"

namespace shoulderline {

// A measure that holds a figure found on an original, beside the one chosen. Differences are found
// less the other, of the figure's own dimension; none where there is nothing to compare.
struct SurveyRow {
    std::string name;
    std::optional<Value> chosen;  // none where it cannot be worked out
    Value found;
    std::optional<Value> apart;    // from the chosen figure
    std::optional<Value> follows;  // what the found figures of the measures that it is worked out
                                   // from come to by its expression
    std::optional<Value> open;     // from that: the amount by which the found figures do not close
};

// One row for each measure whose found figure can be read, in the order stated. A measure that
// mentions no other, and one none of whose measures were found, follows from nothing. Figures that
// differ by less than 0.01 mm or 0.01 degrees (a thousandth, for numbers) agree.
[[nodiscard]] std::vector<SurveyRow> surveyOf(const Piece& piece);

// A row in words, each as the maker reads it; what there is nothing to say of is empty.
struct SurveyWords {
    std::string name;
    std::string found;
    std::string chosen;
    std::string apart;    // "1/4 in more": what the found figure is over the one chosen
    std::string follows;  // what it comes to from the other found figures
    std::string open;     // "1/4 in less": what the found figure is over that
};
[[nodiscard]] SurveyWords inWords(const SurveyRow& row, const Piece& piece);

// The rows in words, one line each; empty for a piece of which nothing was found.
[[nodiscard]] std::string surveyText(const Piece& piece);

}  // namespace shoulderline
