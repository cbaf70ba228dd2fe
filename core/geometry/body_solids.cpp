#include "core/geometry/body_solids.h"

#include <utility>

#include "core/geometry/eased_body.h"

namespace shoulderline {

BodySolids BodySolids::of(const Body& body) {
    std::vector<ConvexSolid> pieces;
    if (body.easings.empty() && isTurned(body)) {
        pieces = quickPieces(body);
    }
    Result<Polyhedron> whole = pieces.size() == 1
                                   ? Result<Polyhedron>(pieces.front().toPolyhedron())
                                   : body.toPolyhedron();
    if (!whole) {
        return {};
    }
    if (pieces.empty()) {
        pieces = quickPieces(body);
    }
    Made made{std::move(*whole), std::move(pieces)};
    made.bounds.reserve(made.pieces.size());
    for (const ConvexSolid& piece : made.pieces) {
        made.bounds.push_back(piece.bounds());
    }
    made.face = body.face.flatten();
    if (body.edge) {
        made.edge = body.edge->flatten();
    }
    BodySolids solids;
    solids.made_ = std::make_shared<const Made>(std::move(made));
    return solids;
}

const BodySolids::Made& BodySolids::made() const {
    static const Made none;
    return made_ ? *made_ : none;
}

const Polyhedron& BodySolids::whole() const {
    return made().whole;
}

const std::vector<ConvexSolid>& BodySolids::pieces() const {
    return made().pieces;
}

const std::vector<Box>& BodySolids::boundsOfPieces() const {
    return made().bounds;
}

const FlatOutline& BodySolids::flatFace() const {
    return made().face;
}

const FlatOutline& BodySolids::flatEdge() const {
    return made().edge;
}

}  // namespace shoulderline
