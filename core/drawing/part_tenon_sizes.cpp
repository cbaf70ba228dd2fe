#include <algorithm>
#include <cmath>

#include "core/drawing/part_angles.h"
#include "core/drawing/part_sizing.h"

namespace shoulderline {

namespace {

// Writes what the tenons on one end need, as seen from there.
class TenonWriter {
  public:
    explicit TenonWriter(SizeWriter& writer) : to_(writer) {}

    void write(const TenonSolid& tenon) {
        const Rect rect = to_.view.toPlane(footOf(to_.part, tenon));
        const bool isRound = to_.resolved.joints[tenon.joint].kind == JointKind::Round;
        const Vec2 middle = (rect.min + rect.max) * 0.5;
        const bool isCentred = isRound && to_.part.section == SectionForm::Round &&
                               isSameSize(middle.x, to_.view.size.x / 2.0) &&
                               isSameSize(middle.y, to_.view.size.y / 2.0);
        if (!isCentred) {
            shoulders(rect, tenon);
        }
        const Vec2 size = rect.size();
        if (!isSameSize(size.x, to_.view.size.x)) {
            const double below = belowDepth(rect);
            to_.along({rect.min.x,
                       rect.max.x,
                       isRound ? to_.view.size.y - middle.y : below,
                       isRound ? to_.view.size.y - middle.y : below,
                       isRound ? to_.shownDiameter(diameterOf(tenon)) : to_.shown(size.x),
                       size.x,
                       isRound ? "tenon diameter" : "tenon thickness",
                       subjectOfJoint(tenon.joint)});
        }
        if (!isRound && !isSameSize(size.y, to_.view.size.y)) {
            const double beside = besideDepth(rect);
            to_.down({rect.min.y,
                      rect.max.y,
                      beside,
                      beside,
                      {},
                      size.y,
                      "tenon width",
                      subjectOfJoint(tenon.joint)});
        }
    }

  private:
    // As stated: its facets lie inside the round.
    [[nodiscard]] double diameterOf(const TenonSolid& tenon) const {
        return to_.resolved.joints[tenon.joint].tenon.thickness.value.mm();
    }
    // Where dimensions that stand to the right (far end) or left (start end) of an end view begin.
    [[nodiscard]] double besideDepth(const Rect& rect) const {
        return to_.view.face == Face::FarEnd ? to_.view.size.x - rect.max.x : rect.min.x;
    }
    [[nodiscard]] double belowDepth(const Rect& rect) const { return to_.view.size.y - rect.max.y; }

    void shoulders(const Rect& rect, const TenonSolid& tenon) {
        // The face side is at the left of a far end and at the right of a start end.
        const bool isFar = to_.view.face == Face::FarEnd;
        const double below = belowDepth(rect);
        to_.along({isFar ? 0.0 : rect.max.x,
                   isFar ? rect.min.x : to_.view.size.x,
                   isFar ? 0.0 : below,
                   isFar ? below : 0.0,
                   {},
                   0.0,
                   "shoulder at the face side",
                   subjectOfJoint(tenon.joint)});
        to_.down({0.0,
                  rect.min.y,
                  0.0,
                  besideDepth(rect),
                  {},
                  0.0,
                  "shoulder at the face edge",
                  subjectOfJoint(tenon.joint)});
    }

    SizeWriter& to_;
};

}  // namespace

void addTenonSizes(SizeWriter& writer) {
    for (const TenonSolid& tenon : writer.part.tenons) {
        if ((writer.view.face == Face::StartEnd) == (tenon.box.min.x < 0.0)) {
            TenonWriter(writer).write(tenon);
        }
    }
}

}  // namespace shoulderline
