#pragma once

#include <memory>
#include <vector>

#include "core/geometry/body.h"

namespace shoulderline {

// The solids of a body, in the body's frame, worked out once and shared by all who look at it: a
// copy shares them, and nothing can change them.
class BodySolids {
  public:
    // Of no body: both are empty.
    BodySolids() = default;
    // Both are empty for a body that gives no solid, see Body::toPolyhedron().
    [[nodiscard]] static BodySolids of(const Body& body);

    [[nodiscard]] bool isEmpty() const { return !made_; }
    [[nodiscard]] const Polyhedron& whole() const;
    // Convex, sharing no volume.
    [[nodiscard]] const std::vector<ConvexSolid>& pieces() const;
    [[nodiscard]] const std::vector<Box>& boundsOfPieces() const;
    // The body's outlines as its solids have them; `flatEdge` without points where it has none.
    [[nodiscard]] const FlatOutline& flatFace() const;
    [[nodiscard]] const FlatOutline& flatEdge() const;

    // They follow from the body, which whoever compares parts compares already.
    friend bool operator==(const BodySolids&, const BodySolids&) { return true; }

  private:
    struct Made {
        Polyhedron whole = {};
        std::vector<ConvexSolid> pieces = {};
        std::vector<Box> bounds = {};
        FlatOutline face = {};
        FlatOutline edge = {};
    };
    [[nodiscard]] const Made& made() const;

    std::shared_ptr<const Made> made_;
};

}  // namespace shoulderline
