#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/part_views.h"
#include "core/drawing/patterns.h"
#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"

// What is pricked through from full-size patterns, against the hidden lines of Open CASCADE
// Technology 7.6 over the part with its mortises cut by its own booleans.
namespace shoulderline {
namespace {

using reference::SeenEdge;
using reference::Solid;
using reference::SolidPlan;

const LetteringMetrics kMetrics;

Solid solidOf(const ResolvedPart& part) {
    SolidPlan plan{part.body, {}, {}, {}};
    for (const MortiseSolid& mortise : part.mortises) {
        plan.cutAway.emplace_back(mortise.solid());
    }
    return Solid(plan);
}

double distanceTo(const SeenEdge& edge, Vec2 p) {
    const Vec2 along = edge.b - edge.a;
    const double squared = dot(along, along);
    const double t = squared > 0.0 ? std::clamp(dot(p - edge.a, along) / squared, 0.0, 1.0) : 0.0;
    return norm(p - (edge.a + along * t));
}

// Places along a drawn line that lie on no edge that Open CASCADE sees.
int strays(Vec2 a, Vec2 b, const std::vector<SeenEdge>& edges) {
    constexpr double kOnEdge = 0.01;
    int count = 0;
    for (const double t : {0.0, 0.25, 0.5, 0.75, 1.0}) {
        const Vec2 p = a + (b - a) * t;
        count += std::none_of(edges.begin(),
                              edges.end(),
                              [&](const SeenEdge& edge) { return distanceTo(edge, p) < kOnEdge; })
                     ? 1
                     : 0;
    }
    return count;
}

// The edges seen on a face, on the pattern's own coordinates, whose face is `drawn`.
std::vector<SeenEdge> edgesOn(const Solid& solid, const PartView& drawn, Face face) {
    PartView view = drawn;
    const bool isBehind = face != drawn.face;
    if (isBehind) {
        view.view.up = -view.view.up;
        view.view.towardsViewer = -view.view.towardsViewer;
    }
    std::vector<SeenEdge> edges = reference::visibleEdges({&solid, 1}, view.view);
    const auto place = [&](Vec2& p) {
        p = {p.x - drawn.corner.x, drawn.corner.y + (isBehind ? p.y : -p.y)};
    };
    for (SeenEdge& edge : edges) {
        place(edge.a);
        place(edge.b);
    }
    return edges;
}

// A mouth that the solid has whole: no haunch opens into it.
bool hasWholeMouth(const ResolvedPart& part, std::size_t joint) {
    return std::count_if(part.mortises.begin(), part.mortises.end(), [&](const MortiseSolid& m) {
               return m.joint == joint;
           }) == 1;
}

struct Checked {
    int lines = 0;
    int circles = 0;
};

// Walks the mortises on a pattern.
void compare(const ResolvedPiece& resolved,
             const ResolvedPart& part,
             Face face,
             const Sheet& pattern,
             Checked& checked) {
    const PartView view = partView(part, face);
    const Solid solid = solidOf(part);
    const std::vector<SeenEdge> seen = edgesOn(solid, view, face);
    const std::vector<SeenEdge> behind = edgesOn(solid, view, oppositeOf(face));
    std::optional<Vec2> origin;
    std::size_t joint = 0;
    bool isInMortise = false;
    for (const Op& op : pattern.ops) {
        const auto* group = std::get_if<BeginGroup>(&op);
        const auto* stroke = std::get_if<Stroke>(&op);
        const auto* arc = std::get_if<ArcOp>(&op);
        if (group != nullptr) {
            joint = group->subject.index;
            isInMortise = group->name == "mortise";
        } else if (std::holds_alternative<EndGroup>(op)) {
            isInMortise = false;
        } else if (stroke != nullptr && stroke->role == LineRole::Neighbour && !origin) {
            origin = stroke->points.front();
        } else if (isInMortise && stroke != nullptr) {
            const bool isSeen = stroke->role == LineRole::Visible;
            const MortiseSolid& mortise = *std::find_if(
                part.mortises.begin(), part.mortises.end(), [&](const MortiseSolid& m) {
                    return m.joint == joint;
                });
            const bool isMouth = isSeen || opensOn(mortise, oppositeOf(face));
            if (stroke->role == LineRole::Centre || !isMouth || !hasWholeMouth(part, joint) ||
                resolved.joints[joint].kind == JointKind::Round) {
                continue;
            }
            for (std::size_t i = 0; i + 1 < stroke->points.size(); ++i) {
                EXPECT_EQ(strays(stroke->points[i] - *origin,
                                 stroke->points[i + 1] - *origin,
                                 isSeen ? seen : behind),
                          0)
                    << resolved.joints[joint].name << ", side " << i;
                ++checked.lines;
            }
        } else if (isInMortise && arc != nullptr) {
            const Vec3 middle = part.frame.toLocal(resolved.joints[joint].frame.origin);
            EXPECT_NEAR(norm(arc->centre - *origin - view.toPlane(middle)), 0.0, 1e-6);
            EXPECT_NEAR(2 * arc->radius, resolved.joints[joint].mortise.width.value.mm(), 1e-6);
            ++checked.circles;
        }
    }
}

TEST(PatternMouths, LieOnTheEdgesOfTheSolid) {
    Checked checked;
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const PartKind& kind : partKinds(resolved)) {
            const ResolvedPart& part = resolved.parts[kind.parts.front()];
            if (part.bend) {
                continue;  // its patterns show its form, without mortises
            }
            for (const Pattern& pattern : patternsOf(piece, resolved, kind, kMetrics)) {
                SCOPED_TRACE(std::string(name) + ": " + pattern.name);
                const bool isOnEdge =
                    pattern.name.find(wordFor(Face::BackEdge)) != std::string::npos;
                compare(resolved,
                        part,
                        isOnEdge ? Face::BackEdge : Face::FaceSide,
                        pattern.drawing,
                        checked);
            }
        }
    }
    EXPECT_GT(checked.lines, 40);
}

}  // namespace
}  // namespace shoulderline
