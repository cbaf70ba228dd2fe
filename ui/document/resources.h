#pragma once

#include <vector>

#include "core/check/strength_book.h"
#include "core/piece/piece.h"
#include "core/rules/rule_book.h"
#include "core/timber/species.h"

namespace shoulderline {

// The data that the planner goes by, read once at the start.
struct Resources {
    RuleBook rules;
    Workshop workshop;
    SpeciesTable species;
    StrengthBook strength;
    std::vector<Piece> starters = {};  // what new pieces begin from
};

}  // namespace shoulderline
