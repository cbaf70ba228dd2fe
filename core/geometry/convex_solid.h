#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/geometry/box.h"
#include "core/geometry/frame.h"
#include "core/geometry/polyhedron.h"
#include "core/geometry/vec.h"

namespace shoulderline {

// Points nearer than this to a plane lie on it: 1e-7 mm, thousands of times the rounding of doubles
// on a 100 m scale and ten thousand times finer than kLengthTolerance. Solids thinner than this are
// taken as empty.
inline constexpr double kPlaneTolerance = 1e-7;

// The points p with dot(normal, p) <= offset. `normal` is a unit vector.
struct HalfSpace {
    Vec3 normal;
    double offset = 0.0;

    // Signed distance: negative inside.
    [[nodiscard]] constexpr double height(Vec3 p) const { return dot(normal, p) - offset; }
    [[nodiscard]] constexpr HalfSpace opposite() const { return {-normal, -offset}; }

    friend bool operator==(const HalfSpace&, const HalfSpace&) = default;
};

struct Extent {
    double min = 0.0;
    double max = 0.0;
};

// The shortest way between two solids.
struct ClosestPoints {
    double distance = 0.0;
    Vec3 onFirst;
    Vec3 onSecond;
};

// A closed convex solid with plane faces and some volume; millimetres, in any one frame. Set
// operations work in doubles: results are right to within kPlaneTolerance at their faces.
class ConvexSolid {
  public:
    // Facets with the same surface number >= 0 stand for one curved surface.
    static constexpr int kOwnSurface = -1;
    struct Face {
        HalfSpace plane;
        std::vector<int> loop;  // counter-clockwise seen from outside
        int surface = kOwnSurface;

        friend bool operator==(const Face&, const Face&) = default;
    };

    friend bool operator==(const ConvexSolid&, const ConvexSolid&) = default;

    // `box` (some size on each axis) stated in `frame`, given in the outer frame.
    [[nodiscard]] static ConvexSolid box(const Box& box, const Frame& frame = {});
    // A convex counter-clockwise polygon with at least three corners in the frame's x-y plane,
    // extruded from z0 to z1 > z0. `surfaces`, when not empty, gives the surface number of the side
    // that leaves each corner.
    [[nodiscard]] static ConvexSolid prism(std::span<const Vec2> polygon,
                                           double z0,
                                           double z1,
                                           const Frame& frame = {},
                                           std::span<const int> surfaces = {});

    // What lies in the half-space; empty when that is thinner than kPlaneTolerance. The new face
    // gets the surface number; so does a face without one that lies in the plane already.
    [[nodiscard]] std::optional<ConvexSolid> clipped(const HalfSpace& halfSpace,
                                                     int surface = kOwnSurface) const;

    [[nodiscard]] const std::vector<Vec3>& vertices() const { return vertices_; }
    [[nodiscard]] const std::vector<Face>& faces() const { return faces_; }
    [[nodiscard]] double volume() const;
    [[nodiscard]] Vec3 centroid() const;
    [[nodiscard]] Box bounds() const;
    // Least and greatest dot(direction, p) over the solid: lengths when `direction` is a unit
    // vector.
    [[nodiscard]] Extent extentAlong(Vec3 direction) const;
    // Inside, or outside by no more than `margin`, measured from the planes of the faces.
    [[nodiscard]] bool contains(Vec3 p, double margin = kPlaneTolerance) const;
    // The same solid for drawing; edges between facets of one surface are smooth.
    [[nodiscard]] Polyhedron toPolyhedron() const;
    // Restated in the outer frame of `frame`.
    [[nodiscard]] ConvexSolid transformed(const Frame& frame) const;

  private:
    ConvexSolid() = default;
    void dropUnusedVertices();

    std::vector<Vec3> vertices_;
    std::vector<Face> faces_;
};

// What both solids share; empty when they only touch.
[[nodiscard]] std::optional<ConvexSolid> intersection(const ConvexSolid& a, const ConvexSolid& b);
// What of `a` lies in `b` or outside it by no more than `margin`, measured from the planes of its
// faces.
[[nodiscard]] std::optional<ConvexSolid> within(const ConvexSolid& a,
                                                const ConvexSolid& b,
                                                double margin);
// What is left of `a` without `b`, in pieces that share no volume; none when b covers a.
[[nodiscard]] std::vector<ConvexSolid> difference(const ConvexSolid& a, const ConvexSolid& b);
// Volume covered by any of the solids.
[[nodiscard]] double unionVolume(std::span<const ConvexSolid> solids);
// Shortest distance and a pair of points that it lies between; 0 and one common point where the
// solids touch or overlap. Tries every corner against every face and every edge against every edge.
[[nodiscard]] ClosestPoints distance(const ConvexSolid& a, const ConvexSolid& b);

}  // namespace shoulderline
