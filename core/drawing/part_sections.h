#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/part_sizes.h"
#include "core/drawing/sheet.h"
#include "core/geometry/rect.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Where a part is cut across for its drawing: at `at` along it, through the mortises named (in
// ResolvedPart::mortises), or through the tenons of one end. The plane may lie anywhere from `low`
// to `high`. Millimetres of the part's frame.
struct PartSection {
    std::string letter;  // "A"; empty for none
    double at = 0.0;
    double low = 0.0;
    double high = 0.0;
    std::vector<std::size_t> mortises;
    std::optional<End> tenonsAt;
    bool isAtDeepEnd = false;  // of a haunch that slopes, where its mortise is as deep as lettered
};

// One section through every kind of mortise in the sides of the part, mortises of several faces in
// one where they lie beside one another, and one through the tenons of each end that differs;
// lettered from the start end: A to Z without I and O, then AA. Sections that would look alike are
// taken once.
class SectionPlan {
  public:
    SectionPlan() = default;
    // In third angle projection or first: as the ends are shown.
    SectionPlan(const ResolvedPiece& resolved, const ResolvedPart& part, bool isThirdAngle);

    [[nodiscard]] const std::vector<PartSection>& sections() const { return sections_; }
    // Of the section that shows the mortise of this joint, or one alike, or that for its haunch;
    // empty for none.
    [[nodiscard]] std::string letterOf(std::size_t joint, bool ofHaunch) const;
    // Of the section through the tenons of an end.
    [[nodiscard]] std::string letterOf(End end) const;

  private:
    std::vector<PartSection> sections_;
    struct Shown {
        std::size_t joint;
        bool isHaunch;
        std::string letter;
    };
    std::vector<Shown> shown_;
};

// The body cut across at `at` along it: rings in (z, y), in the frame of the part; none past its
// ends.
[[nodiscard]] std::vector<std::vector<Vec2>> bodyAcross(const ResolvedPart& part, double at);
// The same before its arrises are eased, which takes a small part of the time.
[[nodiscard]] std::vector<std::vector<Vec2>> uneasedAcross(const ResolvedPart& part, double at);
// A solid in the frame of the part cut across there: its ring in (z, y), empty where it does not
// reach.
[[nodiscard]] std::vector<Vec2> solidAcross(const ConvexSolid& solid, double at);

// What is dimensioned in the section: of every mortise in it its width, its place across, and its
// depth where it is blind; in the coordinates of the view of the far end. `side` is where the
// dimension stands.
struct SectionSize {
    NeededSize size;
    Face side =
        Face::FaceSide;  // FaceSide: left, BackSide: right, FaceEdge: above, BackEdge: under
};
[[nodiscard]] std::vector<SectionSize> sizesIn(const PartSection& section,
                                               const Piece& piece,
                                               const ResolvedPiece& resolved,
                                               const ResolvedPart& part);

}  // namespace shoulderline
