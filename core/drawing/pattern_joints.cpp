#include "core/drawing/pattern_joints.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/hatching.h"
#include "core/drawing/hole_views.h"
#include "core/drawing/mortise_rows.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/part_views.h"

namespace shoulderline {

namespace {

Stroke closed(std::vector<Vec2> ring, LineRole role) {
    ring.push_back(ring.front());
    return {std::move(ring), role};
}

class JointsDrawer {
  public:
    JointsDrawer(const ResolvedPiece& resolved,
                 const ResolvedPart& part,
                 Face face,
                 const std::vector<Vec2>& outline)
        : resolved_(resolved), part_(part), view_(partView(part, face)), outline_(outline) {}

    [[nodiscard]] std::vector<Op> make() {
        for (const TenonSolid& tenon : part_.tenons) {
            ops_.push_back(BeginGroup{{SubjectKind::Joint, tenon.joint}, "tenon"});
            addTenon(tenon);
            ops_.push_back(EndGroup{});
        }
        for (const MortiseSolid& mortise : part_.mortises) {
            ops_.push_back(BeginGroup{{SubjectKind::Joint, mortise.joint}, "mortise"});
            addMortise(mortise);
            ops_.push_back(EndGroup{});
        }
        for (const ResolvedCut& cut : part_.cuts) {
            addCut(cut);
        }
        return std::move(ops_);
    }

  private:
    void addTenon(const TenonSolid& tenon) {
        constexpr double kInside = 1e-4;  // the body's end is met just inside it
        ops_.push_back(closed(ringOf(tenon, view_), LineRole::Dimension));
        const bool isAtStart = tenon.box.min.x < 0.0;
        const double end = isAtStart ? 0.0 : view_.size.x;
        const double at = isAtStart ? kInside : end - kInside;
        for (const Span& span : spansInside({outline_}, {0, 1}, {1, 0}, at)) {
            ops_.push_back(Stroke{{{end, span.from}, {end, span.to}}, LineRole::Visible});
        }
    }

    // A mouth on the face seen, or the one behind it.
    void addMouth(const MortiseSolid& mortise, Face face) {
        const LineRole role = face == view_.face ? LineRole::Visible : LineRole::Hidden;
        PartView into = view_;
        into.face = face;
        if (!isBored(resolved_, mortise)) {
            ops_.push_back(closed(ringOf(part_, mortise, into), role));
            return;
        }
        std::vector<Vec2> ring = ringOf(part_, mortise, into);
        Rect mouth{ring.front(), ring.front()};
        for (const Vec2& p : ring) {
            mouth.include(p);
        }
        addCross(mouth);
        if (isSquareIn(mortise)) {
            addCircle(view_.toPlane(mortise.box), role);
        } else {
            ops_.push_back(closed(std::move(ring), role));
        }
    }

    void addMortise(const MortiseSolid& mortise) {
        const bool isSeen = opensOn(mortise, view_.face);
        const bool isBehind = opensOn(mortise, oppositeOf(view_.face));
        if (isSeen) {
            addMouth(mortise, view_.face);
        }
        if (isBehind && !(isSeen && isSquareIn(mortise))) {
            addMouth(mortise, oppositeOf(view_.face));
        }
        if (!isSeen && !isBehind) {
            ops_.push_back(closed(ringOf(part_, mortise, view_), LineRole::Hidden));
        }
    }

    // Whether both its mouths would lie behind one another: it goes in square and keeps its size.
    [[nodiscard]] bool isSquareIn(const MortiseSolid& mortise) const {
        constexpr double kSquare = 1e-9;
        if (!mortise.exact) {
            return true;
        }
        const std::vector<ConvexSolid::Face>& sides = mortise.exact->faces();
        return std::all_of(sides.begin(), sides.end(), [&](const ConvexSolid::Face& side) {
            const double towards = std::abs(dot(side.plane.normal, view_.view.towardsViewer));
            return towards < kSquare || towards > 1.0 - kSquare;
        });
    }

    void addCut(const ResolvedCut& cut) {
        const Rect rect = view_.toPlane(cut.box);
        const bool looksInto = cut.face == view_.face || cut.face == oppositeOf(view_.face);
        const bool isSeen = cut.face == view_.face || (cut.isThrough && looksInto);
        const LineRole role = isSeen ? LineRole::Visible : LineRole::Hidden;
        if (cut.hole && cut.exact) {
            addHole(cut);
            return;
        }
        if (cut.isSetOutByMiddle() && looksInto) {
            addCross(rect);
        }
        if (cut.kind == CutKind::Bore && looksInto) {
            addCircle(rect, role);
        } else if (cut.kind == CutKind::Bore) {
            const std::vector<Vec2> ring = ringOf(rect);
            std::vector<ViewEdge> edges;
            for (std::size_t i = 0; i < ring.size(); ++i) {
                edges.push_back({ring[i], ring[(i + 1) % ring.size()], isSeen});
            }
            addEdges(std::move(edges));
        } else {
            ops_.push_back(closed(ringOf(rect), role));
        }
    }

    // One that its box does not tell: its mouth with a cross on its middle, the rest hidden.
    void addHole(const ResolvedCut& cut) {
        std::vector<ViewEdge> edges;
        addHoleEdges(part_, cut, view_, 0, edges);
        addEdges(std::move(edges));
        if (cut.face == view_.face) {
            const Vec2 middle = view_.toPlane(cut.hole->mouth);
            const double radius = cut.hole->diameter.mm() / 2;
            addCross({middle - Vec2{radius, radius}, middle + Vec2{radius, radius}});
        }
    }

    void addEdges(std::vector<ViewEdge> edges) {
        keepToWood(part_, view_, 0, edges);
        for (const ViewEdge& edge : edges) {
            ops_.push_back(
                Stroke{{edge.a, edge.b}, edge.visible ? LineRole::Visible : LineRole::Hidden});
        }
    }

    void addCircle(const Rect& around, LineRole role) {
        ops_.push_back(ArcOp{(around.min + around.max) * 0.5,
                             around.size().x / 2.0,
                             {},
                             Angle::degrees(360.0),
                             role});
    }

    // The cross of a bore's centre.
    void addCross(const Rect& around) {
        constexpr double kPast = 3.0;
        const Vec2 middle = (around.min + around.max) * 0.5;
        const double reach = std::max(around.size().x, around.size().y) / 2.0 + kPast;
        for (const Vec2 way : {Vec2{reach, 0}, Vec2{0, reach}}) {
            ops_.push_back(Stroke{{middle - way, middle + way}, LineRole::Centre});
        }
    }

    const ResolvedPiece& resolved_;
    const ResolvedPart& part_;
    PartView view_;
    const std::vector<Vec2>& outline_;
    std::vector<Op> ops_;
};

}  // namespace

std::vector<Op> patternJoints(const ResolvedPiece& resolved,
                              const ResolvedPart& part,
                              Face face,
                              const std::vector<Vec2>& outline) {
    return JointsDrawer(resolved, part, face, outline).make();
}

}  // namespace shoulderline
