#pragma once

#include <vector>

#include "core/drawing/piece_view.h"
#include "core/drawing/sheets.h"
#include "core/geometry/rect.h"
#include "core/geometry/view.h"

namespace shoulderline {

// The way pictures of a piece are seen: from the right hand, 32 degrees round from the front and 24
// degrees above the level, so that no two axes look alike and square posts do not hide their back
// edges behind their front ones, as they do where all axes are shortened alike.
[[nodiscard]] View pictorialView();

// What a line of a picture is: the outline of a part (drawn wide), an edge between two faces in
// sight or of a mortise (narrow), the way a tenon takes to its mortise (chain line).
enum class PictureLineKind { Contour, Edge, Way };
struct PictureLine {
    Vec2 a;
    Vec2 b;
    PictureLineKind kind = PictureLineKind::Contour;
    std::size_t part = 0;
};
// Only what is in sight; true millimetres of the view's plane, x right, y UP.
struct Picture {
    std::vector<PictureLine> lines;
    Rect bounds;
    std::vector<PartSpot> spots = {};  // on faces of bodies and tenons in sight
};

// The piece in parallel projection, hidden lines removed. With `moves` (by part, see pulledApart())
// each part is drawn where it moves to, with its mortises and the ways of the tenons. The wedges of
// tusk tenons are drawn with their rails, driven home or drawn out.
[[nodiscard]] Picture pictureOf(const ResolvedPiece& resolved,
                                const View& view,
                                const std::vector<Vec3>& moves = {});

// The picture as ops at `scale`, its origin at (0, 0), y DOWN; each part's lines in a group.
[[nodiscard]] std::vector<Op> pictureOps(const ResolvedPiece& resolved,
                                         const Picture& picture,
                                         double scale);

// Numbers in circles beside a picture's ops, one for each kind (1 for the first of partKinds()),
// with a leader to a dot on a face in sight of a part of that kind, else to a line of it. None lies
// on a line or on another; kinds of which nothing is in sight have none.
[[nodiscard]] std::vector<Op> partNumbers(const ResolvedPiece& resolved,
                                          const Picture& picture,
                                          double scale,
                                          const TextMetrics& metrics);

// The piece assembled and pulled apart on one sheet, with numbers that the list of parts explains,
// and title block.
[[nodiscard]] Sheet pictorialSheet(const Piece&,
                                   const ResolvedPiece&,
                                   const SheetFrame&,
                                   const TextMetrics&);

}  // namespace shoulderline
