#pragma once

#include <map>
#include <optional>
#include <vector>

#include "core/geometry/view.h"
#include "core/resolve/frames.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// A part seen straight on one of its faces. Coordinates of the view are millimetres of the part
// from the top left corner of the body as it is seen: x to the right, y DOWN. Seen on its sides the
// part lies with its length to the right; seen from an end, its face edge is up.
struct PartView {
    Face face = Face::FaceSide;
    View view;    // in the part's frame
    Vec2 size;    // of the body
    Vec2 corner;  // of the body's top left, in the own plane of `view`

    // Where a point of the part's frame appears.
    [[nodiscard]] Vec2 toPlane(Vec3 p) const {
        const Vec2 seen = view.project(p);
        return {seen.x - corner.x, corner.y - seen.y};
    }
    // What a box of the part's frame covers.
    [[nodiscard]] Rect toPlane(const Box& box) const;
};
[[nodiscard]] PartView partView(const ResolvedPart& part, Face face);

// A line of the view; `joint` where it belongs to a tenon or mortise, `isShoulder` where it is one
// of the body or a tenon across an end of the body.
struct PartLine {
    Vec2 a;
    Vec2 b;
    bool isVisible = true;
    std::optional<std::size_t> joint;
    bool isShoulder = false;
};

// The edges of one part as its faces show them, worked out once for each face.
class PartLines {
  public:
    // The part stays where it is as long as this lives.
    explicit PartLines(const ResolvedPart& part) : part_(part) {}
    [[nodiscard]] const std::vector<PartLine>& of(const PartView& view);

  private:
    const ResolvedPart& part_;
    std::map<Face, std::vector<PartLine>> lines_;
};

// The edges of the part as made: body, tenons, mouths; what lies behind wood is hidden. Seen from
// an end, mortises in the sides are left out.
[[nodiscard]] std::vector<PartLine> linesOf(const ResolvedPart& part, const PartView& view);

// What a mortise covers in the view, corner by corner: its mouth where it enters on the face seen
// or comes out there, else its outermost lines.
[[nodiscard]] std::vector<Vec2> ringOf(const ResolvedPart& part,
                                       const MortiseSolid& mortise,
                                       const PartView& view);

// The smallest convex ring around corners of the part's frame as they are seen.
[[nodiscard]] std::vector<Vec2> hullOf(const std::vector<Vec3>& corners, const PartView& view);

// What a tenon covers, seen from the end that it stands on: its foot there.
[[nodiscard]] std::vector<Vec2> ringOf(const TenonSolid& tenon, const PartView& view);

// Whether the mortise opens on `face`: enters there, or comes out there.
[[nodiscard]] bool opensOn(const MortiseSolid& mortise, Face face);

[[nodiscard]] constexpr bool isEnd(Face face) {
    return face == Face::StartEnd || face == Face::FarEnd;
}

}  // namespace shoulderline
