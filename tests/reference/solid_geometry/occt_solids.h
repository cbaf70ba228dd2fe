#pragma once

#include <memory>
#include <span>
#include <variant>
#include <vector>

#include "core/geometry/body.h"
#include "core/geometry/box.h"
#include "core/geometry/convex_solid.h"
#include "core/geometry/frame.h"
#include "core/geometry/view.h"

// Solids of the geometry kernel Open CASCADE Technology 7.6, as an independent second opinion for
// tests. Millimetres throughout. Arcs are true arcs here, not facets.
namespace shoulderline::reference {

// A volume stated in the frame of the solid that it is cut from or added to.
using Volume = std::variant<Box, ConvexSolid, Body>;

// What a solid is made of: a volume, what is added to it, then what is cut away, all in its own
// frame; and that frame in space, right-handed or left-handed.
struct SolidPlan {
    Volume volume;
    Frame frame;
    std::vector<Volume> cutAway;
    std::vector<Volume> added;
};

// One solid, or several where cutting has parted it; or nothing at all. Copies share it.
class Solid {
  public:
    struct Shape;  // the kernel's own, known to occt_solids.cpp alone

    // The plan's outlines must be proper. Aborts the test program where the kernel fails.
    explicit Solid(const SolidPlan& plan);
    explicit Solid(std::shared_ptr<const Shape> shape);

    [[nodiscard]] double volume() const;
    [[nodiscard]] const Shape& shape() const { return *shape_; }

  private:
    std::shared_ptr<const Shape> shape_;
};

[[nodiscard]] Solid common(const Solid& a, const Solid& b);
[[nodiscard]] Solid fuse(const Solid& a, const Solid& b);
[[nodiscard]] Solid cut(const Solid& a, const Solid& b);
// Shortest distance between the solids, 0 where they touch or overlap.
[[nodiscard]] double minimumDistance(const Solid& a, const Solid& b);

// Whether the kernel's hidden lines may be asked for. Not under AddressSanitizer: Open CASCADE 7.6
// reads past the end of its own tables there (TableauRejection::Set in libTKHLR, as Valgrind tells
// too), which passes unseen or ends the program as the memory beside them happens to lie.
#ifdef __SANITIZE_ADDRESS__
inline constexpr bool kHiddenLinesAreSound = false;
#else
inline constexpr bool kHiddenLinesAreSound = true;
#endif

// Total length in the view of the sharp edges and the silhouettes of curved faces.
struct SeenLengths {
    double visible = 0.0;
    double hidden = 0.0;
};
[[nodiscard]] SeenLengths seenLengths(std::span<const Solid> solids, const View& view);

// Ends in the view of each visible sharp edge; straight edges only.
struct SeenEdge {
    Vec2 a;
    Vec2 b;
};
[[nodiscard]] std::vector<SeenEdge> visibleEdges(std::span<const Solid> solids, const View& view);

}  // namespace shoulderline::reference
