#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/geometry/easing.h"

namespace shoulderline {

// One straight arris of a chain: the numbers of the faces that meet there and their unit normals.
struct ChainSegment {
    int on = 0;
    int other = 0;
    Vec3 onNormal;
    Vec3 otherNormal;
};

// A corner of a chain: the segments before and after it, where there are such, and at an open end
// the third face that meets there (-1 for none).
struct ChainCorner {
    int vertex = 0;
    std::optional<std::size_t> before = std::nullopt;
    std::optional<std::size_t> after = std::nullopt;
    int endFace = -1;
};

// Arrises of a solid that run on one from the other, each with the eased face on its left as seen
// from outside; and the changes to the solid that taking them off wants. Numbers of faces and
// vertices hold until tidied() is called.
class ArrisChain {
  public:
    // The chains that an easing runs along; where it is stopped the solid gets corners at its stops
    // and the chain lies between them. Errors: OutOfRange where there is no such arris, where stops
    // leave nothing, where more than three faces meet at an open end.
    [[nodiscard]] static Result<std::vector<ArrisChain>> find(Polyhedron& solid,
                                                              std::span<const HalfSpace> ends,
                                                              const Easing& easing);

    [[nodiscard]] Polyhedron& solid() { return *solid_; }
    [[nodiscard]] const std::vector<ChainCorner>& corners() const { return corners_; }
    [[nodiscard]] std::size_t segments() const { return segments_.size(); }
    [[nodiscard]] const ChainSegment& segment(std::size_t k) const { return segments_[k]; }
    [[nodiscard]] bool isLoop() const { return segments_.size() == corners_.size(); }
    [[nodiscard]] bool isStopped() const { return easing_.from || easing_.to; }
    // The share of its reach that the easing has at a corner: 0 where it is stopped.
    [[nodiscard]] double shareAt(int vertex) const;
    // Of a chain all around: the middle of its corners.
    [[nodiscard]] Vec3 middleOfLoop() const;
    // The far corner of the edge that two faces share at `vertex`.
    [[nodiscard]] std::optional<int> edgeBetween(int vertex, int a, int b) const;
    // Puts `points` in the place of `vertex` in a face; nothing where it is not there any more.
    void replace(int face, int vertex, const std::vector<int>& points);

  private:
    ArrisChain(Polyhedron& solid, const Easing& easing) : solid_(&solid), easing_(easing) {}

    struct DirectedEdge {
        int from = 0;
        int to = 0;
        int on = 0;
        int other = 0;
    };
    class Finder;
    void stopAt(double x, std::vector<DirectedEdge>& edges);
    Result<void> take(std::vector<DirectedEdge> edges);
    Result<void> closeEnd(ChainCorner& corner);
    [[nodiscard]] Vec3 at(int vertex) const {
        return solid_->vertices[static_cast<std::size_t>(vertex)];
    }

    Polyhedron* solid_;
    Easing easing_;
    std::vector<ChainCorner> corners_;
    std::vector<ChainSegment> segments_;
};

// `solid` without corners that come twice running in a face, faces that went to nothing and corners
// that no face has.
[[nodiscard]] Polyhedron tidied(Polyhedron solid);

// Whether every edge lies between two faces.
[[nodiscard]] bool isClosed(const Polyhedron& solid);

}  // namespace shoulderline
