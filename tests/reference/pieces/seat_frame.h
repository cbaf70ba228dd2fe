#pragma once

#include <ostream>
#include <string>

#include "core/piece/piece.h"

// Seat frames on leaning legs, for comparison with the geometry kernel.
namespace shoulderline::reference {

struct Stance {
    const char* rake;    // of the back legs
    const char* splay;   // of the back legs
    const char* behind;  // how much narrower each side is behind
    bool isSquareToPost;
    friend void PrintTo(const Stance& one, std::ostream* out) {
        *out << "rake " << one.rake << ", splay " << one.splay << ", narrower by " << one.behind
             << (one.isSquareToPost ? ", square to the post" : "");
    }
};

inline constexpr Stance kStances[] = {{"0", "0", "1 3/4 in", false},
                                      {"0", "0", "1 3/4 in", true},
                                      {"8 deg", "0", "0 in", false},
                                      {"8 deg", "0", "1 1/2 in", true},
                                      {"5 deg", "4 deg", "1 in", false},
                                      {"5 deg", "4 deg", "1 in", true},
                                      {"-7 deg", "6 deg", "1/2 in", false},
                                      {"10 deg", "2 deg", "2 in", true},
                                      {"3 deg", "9 deg", "1 in", false},
                                      {"12 deg", "-3 deg", "3/4 in", false}};

// A rail named `name` between two legs, angled, its top at `top`, set back by 3/8 in from `set`.
[[nodiscard]] Part railBetween(const std::string& name,
                               const std::string& from,
                               const std::string& to,
                               Side set,
                               const char* top);

// A seat frame on leaning legs, narrower behind: four rails into "front leg" and "back leg".
[[nodiscard]] Piece seatFrame(const Stance& stance);

}  // namespace shoulderline::reference
