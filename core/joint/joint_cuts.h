#pragma once

#include <optional>
#include <vector>

#include "core/geometry/convex_solid.h"

namespace shoulderline {

// A solid of a joint, before it is put into the parts. Its frame sits at the end of the tenoned
// part: x out of the shoulder into the mortised part, y along the width from the face edge, z along
// the thickness from the face side; millimetres.
struct JointSolid {
    Box box;                           // around it
    std::optional<ConvexSolid> exact;  // where it is not the box itself
    bool isHaunch = false;
};

// A round hole: the centre of its mouth, the way in as an axis (0 x, 1 y, 2 z) and a sign.
struct JointBore {
    Vec3 mouth;
    int axis = 2;
    double way = 1.0;
    double diameter = 0.0;
    double depth = 0.0;
    bool isPlug = false;  // where a plug covers the head of a screw

    // Around the hole.
    [[nodiscard]] Box box() const;
};

// What making a joint does to both parts.
struct JointCuts {
    std::vector<JointSolid> tenons;       // wood past the shoulder; the main one first
    std::vector<JointSolid> mortises;     // taken from the mortised part; the main one first
    std::vector<JointSolid> ownMortises;  // taken from the tenoned part's end, for a loose tenon
    std::vector<JointSolid> loose;        // what of each loose tenon stands past the shoulder
    std::vector<JointSolid> kerfs;        // sawn into the tenon
    std::vector<JointSolid> slots;        // cut through the tenon, for a wedge
    std::vector<JointBore> bores;         // in the mortised part
    std::vector<JointBore> ownBores;      // in the tenoned part or its tenon
};

}  // namespace shoulderline
