#pragma once

#include <string>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// An end of a part as its sheet and its set-ups name it: "foot" and "top" of one that stands; of a
// pair that lies "front end" and "back end", or across the piece "outer end" and "inner end", which
// hold for both of it; else "left end" and "right end", as the part is drawn with its face side in
// front and its face edge up.
[[nodiscard]] std::string endWord(const ResolvedPart& part, End end);

// What places along it are measured from: its end, or where tenons stand out there its shoulder,
// "left shoulder", of a slanted one with its outermost corners: "left shoulder at the face side".
// Of one that stands "foot", "shoulder at the foot".
[[nodiscard]] std::string placesFromWord(const ResolvedPart& part, End end);

// The word of a face, an end by its own.
[[nodiscard]] std::string faceWordOn(const ResolvedPart& part, Face face);

// The word of the arrises that are eased together, those around an end by its own.
[[nodiscard]] std::string arrisWordOn(const ResolvedPart& part, Arris arris);

}  // namespace shoulderline
