#pragma once

#include <string>
#include <vector>

#include "core/piece/words.h"

namespace shoulderline {

// What a piece has to bear, the air it stands in and what its glue is, as the maker states them.
// Statements are texts of expressions, as in core/piece/piece.h.

// A force that the piece is to bear. `newtons` is a plain number.
struct StatedLoad {
    std::string name;
    std::string on;  // a part ("crest rail"; "arm, left")
    Side towards = Side::Back;
    std::string newtons;
    std::string height;       // level above the floor at which it acts; empty: the part's middle
    bool isRepeated = false;  // many times over, as in use, instead of once
    std::string note;
    std::string extras;
    friend bool operator==(const StatedLoad&, const StatedLoad&) = default;
};

// A joint of the maker's own that was broken: the moment, in newton metres, at which it did. It
// counts for the joints between these two parts as they are stated.
struct StrengthTest {
    std::string tenoned;
    std::string mortised;
    std::string newtonMetres;
    std::string note;
    std::string extras;
    friend bool operator==(const StrengthTest&, const StrengthTest&) = default;
};

// The air of a room as wood meets it: the moisture content that it brings wood to, in percent; or
// the temperature in degrees Celsius and the relative humidity in percent, from which it follows.
// Where a moisture content is stated, that counts.
struct RoomAir {
    std::string moisture;
    std::string celsius;
    std::string humidity;
    friend bool operator==(const RoomAir&, const RoomAir&) = default;
};

// The driest and the dampest air of the year. An air of which nothing is stated is the usual one.
struct Climate {
    RoomAir dry;
    RoomAir damp;
    friend bool operator==(const Climate&, const Climate&) = default;
};

struct Use {
    std::vector<StatedLoad> loads;
    std::vector<StrengthTest> tests;
    Climate climate;
    std::string adhesive;  // by the names of the strength book; empty for the first of them
    friend bool operator==(const Use&, const Use&) = default;
};

}  // namespace shoulderline
