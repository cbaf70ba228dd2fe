#include <random>

#include <gtest/gtest.h>

#include "core/check/neighbours.h"
#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"

// Ten posts into which two, three and four rails run from all sides, their joints of changing kinds
// at levels that make them meet, against Open CASCADE Technology 7.6: what the hollows share, the
// walls that are left, and the wood that remains.
namespace shoulderline {
namespace {

using reference::Solid;
using reference::SolidPlan;

class Dice {
  public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    int upTo(int most) { return static_cast<int>(engine_() % static_cast<unsigned>(most + 1)); }
    std::string sixteenths(int least, int most) {
        return std::to_string(least + upTo(most - least)) + "/16 in";
    }

  private:
    std::minstd_rand engine_;
};

Part postAt(const std::string& name, const char* x, const char* y) {
    Part post;
    post.name = name;
    post.role = Role::Post;
    post.stock = "post stock";
    Stands stands;
    stands.x = {Side::Centre, x};
    stands.y = {Side::Centre, y};
    stands.height = "24 in";
    post.relation = stands;
    return post;
}

// The features that the n-th rail has; together they take in every one that a post sees.
JointStatement jointOf(const std::string& rail, int n, Dice& dice) {
    JointStatement joint;
    joint.tenoned = rail;
    joint.mortised = "post";
    switch ((n + dice.upTo(6)) % 7) {
        case 0:
            joint.features = {JointFeature::Haunch};
            break;
        case 1:
            joint.features = {JointFeature::SlopingHaunch, JointFeature::Pinned};
            break;
        case 2:
            joint.features = {JointFeature::Twin};
            break;
        case 3:
            joint.features = {JointFeature::Double};
            break;
        case 4:
            joint.kind = JointKind::Through;
            joint.features = {JointFeature::WedgedInKerfs};
            break;
        case 5:
            joint.features = {JointFeature::Drawbored, JointFeature::BareFaced};
            break;
        default:
            joint.kind = JointKind::Round;
            break;
    }
    joint.sizes[SizeName::TenonLength] = {SizeState::Stated, dice.sixteenths(16, 28)};
    if (joint.kind == JointKind::Through) {
        joint.sizes.clear();
    }
    return joint;
}

Piece crossing(unsigned seed, int rails) {
    Dice dice(seed);
    Piece piece;
    piece.stocks = {
        {"post stock", "White oak", Cut::Rift, dice.sixteenths(36, 48), "", "", "", ""},
        {"rail stock", "White oak", Cut::Quarter, dice.sixteenths(14, 24), "", "", "", ""}};
    piece.parts = {postAt("post", "0", "0"),
                   postAt("east", "20 in", "0"),
                   postAt("north", "0", "20 in"),
                   postAt("west", "-20 in", "0"),
                   postAt("south", "0", "-20 in")};
    const std::string ways[] = {"east", "north", "west", "south"};
    for (int i = 0; i < rails; ++i) {
        Part rail;
        rail.name = ways[i] + " rail";
        rail.stock = "rail stock";
        rail.width = dice.sixteenths(40, 72);
        Spans spans;
        spans.from = "post";
        spans.to = ways[i];
        spans.level = Position{Side::Top, "18 in + " + dice.sixteenths(0, 24)};
        rail.relation = spans;
        piece.joints.push_back(jointOf(rail.name, i, dice));
        piece.parts.push_back(std::move(rail));
    }
    return piece;
}

class PostJoints : public ::testing::TestWithParam<unsigned> {};
INSTANTIATE_TEST_SUITE_P(OpenCascade, PostJoints, ::testing::Range(0u, 10u));

TEST_P(PostJoints, ShareAndLeaveWhatTheKernelSays) {
    const ResolvedPiece piece =
        testing::resolved(crossing(100 + GetParam(), 2 + static_cast<int>(GetParam() % 3)));
    const ResolvedPart& post = piece.parts.front();
    ASSERT_GE(post.mortises.size(), 2u);
    const auto kernel = [&](const ConvexSolid& solid) {
        return Solid(SolidPlan{solid, post.frame, {}, {}});
    };
    const std::vector<Meeting> meetings = meetingsIn(piece, 0);
    for (const Meeting& meeting : meetings) {
        const Solid first = kernel(meeting.first.solid());
        const Solid second = kernel(meeting.second.solid());
        const double shared = reference::common(first, second).volume();
        EXPECT_NEAR(meeting.shared, shared, 1e-6 * std::max(shared, 1.0));
        EXPECT_NEAR(meeting.wall, reference::minimumDistance(first, second), 1e-6);
    }
    SolidPlan plan{post.body, post.frame, {}, {}};
    for (const MortiseSolid& mortise : post.mortises) {
        plan.cutAway.push_back(mortise.solid());
    }
    for (const ResolvedCut& cut : post.cuts) {
        plan.cutAway.push_back(cut.solid());
    }
    const double left = Solid(plan).volume();
    EXPECT_NEAR(volumeAsMade(post), left, 1e-6 * left);
}

TEST(PostJoints, MeetInMostOfTheTen) {
    int meetings = 0;
    for (unsigned i = 0; i < 10; ++i) {
        meetings +=
            meetingsIn(testing::resolved(crossing(100 + i, 2 + static_cast<int>(i % 3))), 0).empty()
                ? 0
                : 1;
    }
    EXPECT_GE(meetings, 8);
}

}  // namespace
}  // namespace shoulderline
