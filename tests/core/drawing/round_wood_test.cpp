#include "core/drawing/round_wood.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/joint_hollows.h"
#include "core/drawing/joint_members.h"
#include "core/drawing/joint_pictures.h"
#include "core/drawing/part_cut_sizes.h"
#include "tests/support/pieces.h"

// The stool stands on turned legs, with turned stretchers bored into them and into one another.
namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;
using testing::sample;

TEST(RoundWood, NoHoleOfAJointReachesOutOfATurnedPart) {
    const ResolvedPiece made = resolved(sample("pilot_stool"));
    int looked = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedJoint& joint = made.joints[i];
        const ResolvedPart& mortised = made.parts[joint.mortised];
        if (mortised.section != SectionForm::Round) {
            continue;
        }
        const ConvexSolid wood = mortised.wood().pieces().front();
        const JointMembers members = membersOf(made, i);
        Frame frame = joint.frame;
        frame.z = members.isTurnedOver ? -frame.z : frame.z;
        for (const Hollow& hollow : members.hollows) {
            for (const Vec3& corner : hollow.solid.vertices) {
                EXPECT_TRUE(wood.contains(mortised.frame.toLocal(frame.toOuter(corner)), 1e-6))
                    << joint.name;
            }
            ++looked;
        }
    }
    EXPECT_GE(looked, 4);
}

// Seen from the stretcher, the mouth in a turned leg is as wide both ways as its bit: it is all in
// sight, though it does not lie in one plane.
TEST(RoundWood, AMouthInATurnedLegIsSeenWhole) {
    const ResolvedPiece made = resolved(sample("pilot_stool"));
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedJoint& joint = made.joints[i];
        if (made.parts[joint.mortised].section != SectionForm::Round) {
            continue;
        }
        const JointMembers members = membersOf(made, i);
        ASSERT_EQ(members.hollows.size(), 1u);
        std::optional<Rect> seen;
        for (const ViewEdge& line :
             linesOfHollow(members.hollows.front(), {members.postSolid}, kOnMouth.view)) {
            if (line.visible) {
                seen = seen ? *seen : Rect{line.a, line.a};
                seen->include(line.a);
                seen->include(line.b);
            }
        }
        ASSERT_TRUE(seen) << joint.name;
        const double bit = joint.mortise.width.value.mm();
        EXPECT_NEAR(seen->size().x, bit, 0.05) << joint.name;
        EXPECT_NEAR(seen->size().y, bit, 0.05) << joint.name;
    }
}

// A hole beside the middle of a leg begins where the wood is: R - sqrt(R^2 - a^2) under the blank's
// face, a being how near to the middle it comes.
TEST(RoundWood, AHoleBesideTheMiddleIsNotDrawnUpToTheBlank) {
    const ResolvedPiece made = resolved(sample("pilot_stool"));
    ResolvedPart leg = partNamed(made, "back leg");
    leg.cuts.clear();
    ResolvedCut bore;
    bore.kind = CutKind::Bore;
    bore.face = Face::FaceSide;
    bore.box = {{200, 1, 0}, {208, 9, 20}};
    leg.cuts.push_back(bore);
    std::vector<ViewEdge> edges;

    const PartView view = partView(leg, Face::FaceEdge);  // the face side lies at its bottom
    addCutEdges(leg, view, 0, edges);

    ASSERT_FALSE(edges.empty());
    const double radius = leg.width.value.mm() / 2.0;
    const double nearest = radius - 9.0;
    double from = 1e9;
    double to = 0.0;
    for (const ViewEdge& edge : edges) {
        from = std::min({from, view.size.y - edge.a.y, view.size.y - edge.b.y});
        to = std::max({to, view.size.y - edge.a.y, view.size.y - edge.b.y});
    }
    EXPECT_NEAR(from, radius - std::sqrt(radius * radius - nearest * nearest), 0.1);
    EXPECT_NEAR(to, 20.0, 1e-6);
}

TEST(RoundWood, AHoleInASquarePartOpensOnItsBlank) {
    const ResolvedPiece made = resolved(sample("armchair"));
    const ResolvedPart& stile = partNamed(made, "back stile, right");
    ASSERT_FALSE(stile.cuts.empty());
    EXPECT_FALSE(withinRound(stile, stile.cuts.front().solid()));
}

}  // namespace
}  // namespace shoulderline
