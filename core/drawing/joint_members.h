#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "core/geometry/polyhedron.h"
#include "core/geometry/rect.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Something hollow: its solid, the way that its mouth looks, and where that does not lie in one
// plane its corners.
struct Hollow {
    Polyhedron solid;
    Vec3 outward;
    std::vector<Vec3> mouth = {};
    bool isWedged = false;  // a kerf that a wedge fills once the joint is together
};

// Both members near a joint, as boxes in its frame: x into the mortised part, y along the tenon's
// width, z along its thickness, the shoulder at x = 0; millimetres. The frame is right-handed, so
// that a view shows the joint and not its mirror twin. Members are cut off where they run on beyond
// what a drawing of the joint needs.
struct JointMembers {
    bool isTurnedOver = false;  // z runs from the back side to the face side
    Box rail;                   // around the tenoned part
    Box tenon;
    Box post;              // around the mortised part
    Polyhedron railSolid;  // both as they are drawn: their boxes, where they meet square
    Polyhedron postSolid;
    std::vector<Polyhedron> postPieces;  // the same in convex pieces, for a section
    bool railIsSquare = true;            // with the joint's frame
    Box mortise;
    Box mouth;  // of the mortise on the face it enters, where all lies square; else `mortise`
    int postAxis = 1;  // which way of the joint's frame the mortised part runs
    // Where its reference face lies along `referenceAxis`: of one that is out of square the wood as
    // it is beside the mortise; none where that does not lie along the mortise.
    std::optional<double> reference;
    int referenceAxis = 2;
    // From where to where along `postAxis` the blank's line is drawn there, where the wood has been
    // shaped away from it.
    std::optional<std::pair<double, double>> referenceLine;
    // The ways that the face side and the face edge of each look, where it lies square.
    struct MarkedFaces {
        Vec3 side;
        Vec3 edge;
    };
    std::optional<MarkedFaces> railFaces;
    std::optional<MarkedFaces> postFaces;
    bool postIsBox = false;  // as it is drawn, but for grooves
    // All solids of the joint, `tenon` and `mortise` among them; a loose tenon runs on into the
    // rail.
    std::vector<Polyhedron> tenons;
    std::vector<Hollow> hollows;       // in the mortised part: mortises and bores
    std::vector<Hollow> ownHollows;    // in the tenoned one
    std::vector<Box> slots;            // for wedges, through the cheeks of the tenon
    std::optional<ConvexSolid> wedge;  // of a tusk tenon, driven home
    std::vector<Polyhedron> smalls;    // that wedge, and pins, plugs and other wedges likewise
    std::vector<Polyhedron> spread;    // the tenons in pieces, where wedges in kerfs spread them
    // Where a horn begins and ends, along `postAxis`; it is sawn off at its beginning.
    struct Horn {
        double from = 0.0;
        double to = 0.0;
    };
    std::vector<Horn> horns;
    bool isLoose = false;
    bool isLetInWhole = false;  // `railSolid` runs on as the tenon
    Box railBlank;          // the tenoned part before it was shaped: shoulders are gauged from it
    Box atShoulder;         // the wood of it at the shoulder
    bool railIsCut = true;  // it runs on past rail.min.x
    // Where the mortised part runs on past `post`: along which axis, at its high side or its low
    // one.
    struct Sawn {
        int axis = 1;
        bool isHigh = false;
    };
    std::vector<Sawn> postSawn;
    [[nodiscard]] double at(const Sawn& sawn) const {
        return (sawn.isHigh ? post.max : post.min)[sawn.axis];
    }
};
[[nodiscard]] JointMembers membersOf(const ResolvedPiece& resolved, std::size_t joint);

}  // namespace shoulderline
