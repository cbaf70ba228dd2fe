#pragma once

#include <string>
#include <vector>

#include "core/drawing/dimensioning.h"
#include "core/drawing/joint_drawing.h"
#include "core/drawing/joint_section.h"
#include "core/geometry/hidden_lines.h"

namespace shoulderline {

// A way of looking at the joint. On the cheek: along its z; on the edge: along its y; at the ends:
// along its x, at the tenon's end from the mortised part, at the mouth from the tenoned one.
struct JointLooking {
    View view;
    int downAxis = 1;      // the axis of the joint's frame that runs down or up the sheet
    double downWay = 1.0;  // +1 where it runs down
};
inline constexpr JointLooking kOnCheek{{{1, 0, 0}, {0, -1, 0}, {0, 0, -1}}, 1, 1.0};
inline constexpr JointLooking kOnEdge{{{1, 0, 0}, {0, 0, 1}, {0, -1, 0}}, 2, -1.0};
inline constexpr JointLooking kOnMouth{{{0, 0, -1}, {0, -1, 0}, {-1, 0, 0}}, 1, 1.0};
inline constexpr JointLooking kOnTenon{{{0, 0, 1}, {0, -1, 0}, {1, 0, 0}}, 1, 1.0};

// The pictures of one joint, and how they are set out together.
class JointPictures {
  public:
    JointPictures(const Piece& piece,
                  const ResolvedPiece& resolved,
                  std::size_t index,
                  const JointStyle& style,
                  const TextMetrics& metrics)
        : piece_(piece),
          joint_(resolved.joints[index]),
          subject_{SubjectKind::Joint, index},
          members_(membersOf(resolved, index)),
          style_(style),
          scale_(style.scale),
          metrics_(metrics) {}

    // Everything in projection, the edge over the cheek in third angle.
    [[nodiscard]] std::vector<Op> compose(bool isThirdAngle) const;

  private:
    [[nodiscard]] Vec2 onSheet(Vec3 p, const JointLooking& looking) const {
        const Vec2 seen = looking.view.project(p);
        return {seen.x * scale_, -seen.y * scale_};
    }
    [[nodiscard]] Rect onSheet(const Box& box, const JointLooking& looking) const {
        Rect rect{onSheet(box.min, looking), onSheet(box.min, looking)};
        rect.include(onSheet(box.max, looking));
        return rect;
    }
    [[nodiscard]] bool liesInCut(const ViewEdge& edge, const JointLooking& looking) const;
    void draw(std::vector<Polyhedron> solids,
              const std::vector<Hollow>& hollows,
              const JointLooking& looking,
              std::vector<Op>& ops) const;
    // The rail with its tenons, which a loose one is not a part of.
    [[nodiscard]] std::vector<Polyhedron> railSolids(bool withLoose) const;
    // Where one of the two members is sawn off in the view.
    [[nodiscard]] std::vector<Stroke> breakLines(bool ofRail, const JointLooking& looking) const;
    void addRailBreak(const JointLooking& looking, std::vector<Op>& ops) const;
    void addPostBreaks(const JointLooking& looking, std::vector<Op>& ops) const;
    void addBlankLines(const JointLooking& looking, std::vector<Op>& ops) const;
    void addTenonBlank(const JointLooking& looking, std::vector<Op>& ops) const;
    [[nodiscard]] std::vector<Op> rail(const JointLooking& looking) const;
    [[nodiscard]] std::vector<Op> post(const JointLooking& looking) const;
    void addReferenceLine(const JointLooking& looking, std::vector<Op>& ops) const;
    void addRailMark(const JointLooking& looking, std::vector<Op>& ops) const;
    void addPostMarks(const JointLooking& looking, std::vector<Op>& ops) const;
    // What is seen of the tenoned part from its end.
    [[nodiscard]] std::string tenonWord() const;
    [[nodiscard]] std::string hornText(const JointLooking& looking) const;
    void addHornLines(const JointLooking& looking, std::vector<Op>& ops) const;
    [[nodiscard]] std::vector<Op> wedge() const;
    [[nodiscard]] std::vector<Op> together() const;
    [[nodiscard]] std::vector<Op> section() const;
    void addCuttingPlane(const Rect& bounds, std::vector<Op>& ops) const;
    void addLabel(const std::string& text, std::vector<Op>& ops) const;
    [[nodiscard]] SizeToPlace size(
        double from, double to, double depth, double value, std::string of) const {
        return {std::min(from, to),
                std::max(from, to),
                depth,
                depth,
                letterLength(Length::mm(value), piece_.style),
                value,
                std::move(of),
                subject_,
                0};
    }

    const Piece& piece_;
    const ResolvedJoint& joint_;
    Subject subject_;
    JointMembers members_;
    JointStyle style_;
    double scale_;
    const TextMetrics& metrics_;
};

}  // namespace shoulderline
