#pragma once

#include "tests/support/pieces.h"
#include "ui/document/document.h"
#include "ui/document/resources.h"

namespace shoulderline::testing {

[[nodiscard]] inline Resources resources() {
    return {ruleBook(), workshop(), speciesTable(), strengthBook()};
}

// What a measure of the document's piece comes to, in millimetres.
[[nodiscard]] inline double measureMm(const Document& document, const std::string& name) {
    for (const ResolvedMeasure& measure : document.resolved().measures) {
        if (measure.name == name && measure.value) {
            return measure.value->asLength()->mm();
        }
    }
    return -1.0;
}

}  // namespace shoulderline::testing
