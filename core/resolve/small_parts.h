#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// What a joint, or a back that swings, takes besides its members, and is a piece of its own.
enum class SmallPartKind {
    LooseTenon,
    Wedge,
    TuskWedge,
    Pin,
    Dowel,
    Plug,
    PivotPin,
    Peg,
    SquarePeg
};

// "loose tenon", "wedge", "wedge of a tusk tenon", "pin", "dowel", "plug", "pivot pin", "peg",
// "square peg".
[[nodiscard]] std::string_view wordFor(SmallPartKind);

// Pieces that are made alike. Length along the grain. A wedge's width is across the cheeks of its
// tenon, its thickness that of its thick end; of a tusk tenon's wedge, the width is what stands
// against the mortised part where it leaves the slot's wider end. Round: width and thickness are
// both the diameter.
struct SmallPart {
    SmallPartKind kind = SmallPartKind::LooseTenon;
    std::string of;  // stated name of the tenoned part; of what leans, or of the bar
    std::string stock;
    Length length;
    Length width;
    Length thickness;
    int quantity = 0;
    std::vector<std::size_t> joints;  // indices in ResolvedPiece::joints, each once; none for a
                                      // back that swings or a part's own plugs
    std::optional<std::size_t> part = std::nullopt;  // then: the part it belongs to, in
                                                     // ResolvedPiece::parts

    [[nodiscard]] bool isRound() const {
        return kind == SmallPartKind::Pin || kind == SmallPartKind::Dowel ||
               kind == SmallPartKind::Plug || kind == SmallPartKind::PivotPin ||
               kind == SmallPartKind::Peg;
    }
    // "loose tenon, plinth rail".
    [[nodiscard]] std::string name() const { return std::string(wordFor(kind)) + ", " + of; }
    friend bool operator==(const SmallPart&, const SmallPart&) = default;
};

// All of a piece, in the order of its joints, then the plugs over screws whose holes a part has by
// itself and the square pegs of its peg mortises, then of what swings. Stock: what the maker states
// of the joint, else the tenoned part's. A pin and a plug are as long as their holes are deep, a
// dowel as both of its holes less the room that a mortise has past its tenon; a loose tenon is as
// long as what stands in both members; a wedge in a kerf as its kerf, its thick end filling kerf
// and flare; one outside as the mortise is deep. A pivot pin reaches from end to end of its holes
// and what lies between; a square peg fills its mortise and stands proud; a peg fills its hole and
// stands as high as the bar. They are of the stock of what leans and of the bar.
[[nodiscard]] std::vector<SmallPart> smallPartsOf(const Piece& piece,
                                                  const ResolvedPiece& resolved);

// The wedge of a tusk tenon driven home, in the joint's frame: its straight side on the mortised
// part, its sloping one on the end of the slot, as far out of both cheeks; wide end past the face
// side. None for another joint.
[[nodiscard]] std::optional<ConvexSolid> tuskWedge(const ResolvedPiece& resolved,
                                                   std::size_t joint);

}  // namespace shoulderline
