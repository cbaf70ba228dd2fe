#pragma once

#include "core/geometry/body.h"

#include <TopoDS_Shape.hxx>

namespace shoulderline::reference {

// The body's easings by the kernel's own fillets and chamfers on its own edges; pyramids by half
// spaces, stopped chamfers by a wedge cut away, coves by the cylinders about their arrises. Aborts
// the test program where the kernel fails, and for stopped round-overs and coves and for coves
// along a curve, which it is not asked for.
[[nodiscard]] TopoDS_Shape easedByKernel(TopoDS_Shape shape, const Body& body);

}  // namespace shoulderline::reference
