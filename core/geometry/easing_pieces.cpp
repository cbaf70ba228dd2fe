#include <algorithm>
#include <cmath>

#include "core/geometry/easing.h"

namespace shoulderline {

namespace {

constexpr double kSameCorner = 1e-6;  // millimetres

bool hasFaceIn(const ConvexSolid& piece, const HalfSpace& plane) {
    return std::any_of(
        piece.faces().begin(), piece.faces().end(), [&](const ConvexSolid::Face& face) {
            return dot(face.plane.normal, plane.normal) > 1.0 - 1e-9 &&
                   std::abs(face.plane.offset - plane.offset) < kSameCorner;
        });
}

// What of `piece` the stretch leaves, put into `left`.
void clipTo(const EasedStretch& stretch, ConvexSolid piece, std::vector<ConvexSolid>& left) {
    const bool hasOn = hasFaceIn(piece, stretch.on);
    const bool hasOther = hasFaceIn(piece, stretch.other);
    const bool isThere = stretch.isAtEnd ? hasOn || hasOther : hasOn && hasOther;
    if (!isThere) {
        left.push_back(std::move(piece));
        return;
    }
    std::optional<ConvexSolid> inside = std::move(piece);
    if (stretch.isStopped) {
        const HalfSpace before{{1, 0, 0}, stretch.along.min};
        const HalfSpace after{{-1, 0, 0}, -stretch.along.max};
        for (const HalfSpace& beyond : {before, after}) {
            if (!inside) {
                break;
            }
            if (std::optional<ConvexSolid> out = inside->clipped(beyond)) {
                left.push_back(std::move(*out));
            }
            inside = inside->clipped(beyond.opposite());
        }
    }
    for (const HalfSpace& keeps : stretch.keeps) {
        if (inside) {
            inside = inside->clipped(keeps);
        }
    }
    if (inside) {
        left.push_back(std::move(*inside));
    }
}

}  // namespace

std::vector<ConvexSolid> easedPieces(std::vector<ConvexSolid> pieces,
                                     std::span<const EasedStretch> stretches) {
    for (const EasedStretch& stretch : stretches) {
        std::vector<ConvexSolid> left;
        for (ConvexSolid& piece : pieces) {
            clipTo(stretch, std::move(piece), left);
        }
        pieces = std::move(left);
    }
    return pieces;
}

}  // namespace shoulderline
