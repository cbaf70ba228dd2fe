#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/geometry/easing.h"

namespace shoulderline {

namespace {

constexpr double kSameCorner = 1e-6;  // millimetres

bool isAmong(std::span<const HalfSpace> planes, const HalfSpace& plane) {
    return std::any_of(planes.begin(), planes.end(), [&](const HalfSpace& one) {
        return dot(one.normal, plane.normal) > 1.0 - 1e-9 &&
               std::abs(one.offset - plane.offset) < kSameCorner;
    });
}

// What of `piece` lies behind any of a hollow's planes, put into `left`. From the middle of the
// hollow outwards: the first plane leaves most of the wood whole and the rest as slivers beside the
// two faces, clear of other arrises.
void hollowOut(const EasedStretch& stretch, ConvexSolid piece, std::vector<ConvexSolid>& left) {
    std::optional<ConvexSolid> taken = piece;
    for (std::size_t i = 0; i < stretch.keeps.size() && taken; ++i) {
        taken = taken->clipped(stretch.keeps[i].opposite());
    }
    if (!taken) {
        left.push_back(std::move(piece));
        return;
    }
    std::vector<HalfSpace> keeps = stretch.keeps;
    const auto middle = static_cast<std::ptrdiff_t>(keeps.size() / 2);
    std::rotate(keeps.begin(), keeps.begin() + middle, keeps.end());
    std::reverse(keeps.begin() + (std::ssize(keeps) - middle), keeps.end());
    std::optional<ConvexSolid> inside = std::move(piece);
    for (std::size_t i = 0; i < keeps.size() && inside; ++i) {
        if (std::optional<ConvexSolid> behind = inside->clipped(keeps[i])) {
            left.push_back(std::move(*behind));
        }
        inside = inside->clipped(keeps[i].opposite());
    }
}

// What of `piece` the stretch leaves, put into `left`.
void clipTo(const EasedStretch& stretch, ConvexSolid piece, std::vector<ConvexSolid>& left) {
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
    if (inside && stretch.isHollow) {
        hollowOut(stretch, *std::move(inside), left);
        return;
    }
    for (std::size_t i = 0; i < stretch.keeps.size() && inside; ++i) {
        inside = inside->clipped(stretch.keeps[i]);
    }
    if (inside) {
        left.push_back(std::move(*inside));
    }
}

// One piece eased. A stretch is there where the piece had its faces, or earlier stretches made
// them, though what is left may be parted so that no one part has both. Along the facets of a
// hollow it is left out: its planes would go on into the wood beside them.
std::vector<ConvexSolid> easedPiece(ConvexSolid piece, std::span<const EasedStretch> stretches) {
    std::vector<HalfSpace> planes;
    std::vector<HalfSpace> hollows;
    for (const ConvexSolid::Face& face : piece.faces()) {
        planes.push_back(face.plane);
    }
    std::vector<ConvexSolid> left;
    left.push_back(std::move(piece));
    for (const EasedStretch& stretch : stretches) {
        const bool hasOn = isAmong(planes, stretch.on);
        const bool hasOther = isAmong(planes, stretch.other);
        const bool isThere = stretch.isAtEnd ? hasOn || hasOther : hasOn && hasOther;
        if (!isThere || isAmong(hollows, stretch.other)) {
            continue;
        }
        std::vector<ConvexSolid> eased;
        for (ConvexSolid& one : left) {
            clipTo(stretch, std::move(one), eased);
        }
        left = std::move(eased);
        std::vector<HalfSpace>& made = stretch.isHollow ? hollows : planes;
        made.insert(made.end(), stretch.keeps.begin(), stretch.keeps.end());
    }
    return left;
}

}  // namespace

std::vector<ConvexSolid> easedPieces(std::vector<ConvexSolid> pieces,
                                     std::span<const EasedStretch> stretches) {
    std::vector<ConvexSolid> all;
    for (ConvexSolid& piece : pieces) {
        std::vector<ConvexSolid> left = easedPiece(std::move(piece), stretches);
        std::move(left.begin(), left.end(), std::back_inserter(all));
    }
    return all;
}

}  // namespace shoulderline
