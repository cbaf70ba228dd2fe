#pragma once

#include <optional>
#include <string>

#include "core/check/settle.h"

// Posts in which the mortises of rails meet, for the tests of what mends them.
namespace shoulderline::testing {

[[nodiscard]] Workbench bench();

// A stand of four posts 3 in square, a rail into each face of each; sizes as given.
struct Corner {
    std::string endWidth = "4 1/2 in";
    std::string frontWidth = "4 1/2 in";
    std::string endTop = "stand height";  // level of the upper edge of the end rails
    std::string endLength;                // of the end rails' tenons; empty for the rule
    std::string frontSet = "3/8 in";      // of the front and back rails behind the outer faces
};
[[nodiscard]] Piece standOf(const Corner& corner);

// The same with twin tenons that go through the posts: they can be neither mitred nor shortened,
// haunched nor split; their mortises overlap a little in height.
[[nodiscard]] Piece throughRails();

[[nodiscard]] std::size_t meetingsOf(const Piece& piece);

struct Offered {
    Finding finding;
    Mend mend;
};
// The first mend that begins so, of any place where two mortises meet.
[[nodiscard]] std::optional<Offered> offered(const Piece& piece, const std::string& begins);

}  // namespace shoulderline::testing
