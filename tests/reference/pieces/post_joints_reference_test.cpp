#include <algorithm>
#include <iterator>
#include <random>

#include <gtest/gtest.h>

#include "core/check/neighbours.h"
#include "core/check/proportions.h"
#include "core/resolve/frames.h"
#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"

// Ten upright posts into which two, three and four rails run square from all sides, and ten that
// rake and splay into which they run at an angle in plan and elevation, their joints of changing
// kinds at levels that make them meet, against Open CASCADE Technology 7.6: what the hollows share,
// the walls that are left between them and beside them, and the wood that remains.
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

// How the posts lean, and whether the rails run at an angle between them.
struct Crossing {
    unsigned seed;
    int rails;
    const char* rake;
    const char* splay;
    bool isAngled;
    friend void PrintTo(const Crossing& one, std::ostream* out) {
        *out << one.rails << " rails, rake " << one.rake << ", splay " << one.splay;
    }
};

constexpr Crossing kSquare[] = {{100, 2, "0", "0", false},
                                {101, 3, "0", "0", false},
                                {102, 4, "0", "0", false},
                                {103, 2, "0", "0", false},
                                {104, 3, "0", "0", false},
                                {105, 4, "0", "0", false},
                                {106, 2, "0", "0", false},
                                {107, 3, "0", "0", false},
                                {108, 4, "0", "0", false},
                                {109, 2, "0", "0", false}};
constexpr Crossing kAngled[] = {{200, 2, "0", "0", true},
                                {201, 3, "8 deg", "0", true},
                                {202, 4, "0", "6 deg", true},
                                {203, 2, "5 deg", "4 deg", true},
                                {204, 3, "-7 deg", "5 deg", true},
                                {205, 4, "10 deg", "3 deg", true},
                                {206, 2, "3 deg", "9 deg", true},
                                {207, 3, "12 deg", "2 deg", true},
                                {208, 4, "4 deg", "-3 deg", true},
                                {209, 2, "-5 deg", "-6 deg", true}};

Part postAt(const std::string& name, const char* x, const char* y, const Crossing& crossing) {
    Part post;
    post.name = name;
    post.role = Role::Post;
    post.stock = "post stock";
    Stands stands;
    stands.x = {Side::Centre, x};
    stands.y = {Side::Centre, y};
    stands.height = "24 in";
    stands.atLevel = "18 in";
    stands.rake = crossing.rake;
    stands.splay = crossing.splay;
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

Piece crossing(const Crossing& plan) {
    Dice dice(plan.seed);
    Piece piece;
    piece.stocks = {
        {"post stock", "White oak", Cut::Rift, dice.sixteenths(36, 48), "", "", "", ""},
        {"rail stock", "White oak", Cut::Quarter, dice.sixteenths(14, 24), "", "", "", ""}};
    piece.parts = {postAt("post", "0", "0", plan),
                   postAt("east", "20 in", plan.isAngled ? "2 in" : "0", plan),
                   postAt("north", plan.isAngled ? "-3 in" : "0", "20 in", plan),
                   postAt("west", "-20 in", plan.isAngled ? "1 in" : "0", plan),
                   postAt("south", plan.isAngled ? "2 1/2 in" : "0", "-20 in", plan)};
    const std::string ways[] = {"east", "north", "west", "south"};
    for (int i = 0; i < plan.rails; ++i) {
        Part rail;
        rail.name = ways[i] + " rail";
        rail.stock = "rail stock";
        rail.width = dice.sixteenths(40, 72);
        Spans spans;
        spans.from = "post";
        spans.to = ways[i];
        spans.level = Position{Side::Top, "18 in + " + dice.sixteenths(0, 24)};
        spans.angled = plan.isAngled;
        rail.relation = spans;
        piece.joints.push_back(jointOf(rail.name, i, dice));
        piece.parts.push_back(std::move(rail));
    }
    return piece;
}

class PostJoints : public ::testing::TestWithParam<Crossing> {};
INSTANTIATE_TEST_SUITE_P(OpenCascadeSquare, PostJoints, ::testing::ValuesIn(kSquare));
INSTANTIATE_TEST_SUITE_P(OpenCascadeAngled, PostJoints, ::testing::ValuesIn(kAngled));

TEST_P(PostJoints, ShareAndLeaveWhatTheKernelSays) {
    const ResolvedPiece piece = testing::resolved(crossing(GetParam()));
    ASSERT_TRUE(piece.troubles.empty()) << piece.troubles.front().message;
    const ResolvedPart& post = piece.parts.front();
    ASSERT_GE(post.mortises.size(), static_cast<std::size_t>(GetParam().rails));
    const auto kernel = [&](const ConvexSolid& solid) {
        return Solid(SolidPlan{solid, post.frame, {}, {}});
    };
    const std::vector<Meeting> meetings = meetingsIn(piece, 0);
    for (const Meeting& meeting : meetings) {
        const Solid first = kernel(meeting.first.solid());
        const Solid second = kernel(meeting.second.solid());
        const double shared = reference::common(first, second).volume();
        EXPECT_NEAR(meeting.shared, shared, 1e-6 * std::max(shared, 1.0));
        const double wall = reference::minimumDistance(first, second);
        EXPECT_NEAR(meeting.wall, wall, 1e-6 * std::max(wall, 1.0));
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

// The walls between a mortise and the two sides of the post beside it: how far the kernel has it
// from a block that lies against each side.
TEST_P(PostJoints, LeaveTheWallsToTheSidesThatTheKernelMeasures) {
    constexpr double kBlock = 100.0;
    const ResolvedPiece piece = testing::resolved(crossing(GetParam()));
    const ResolvedPart& post = piece.parts.front();
    int seen = 0;
    for (std::size_t j = 0; j < piece.joints.size(); ++j) {
        if (piece.joints[j].mortised != 0) {
            continue;
        }
        const auto mine = std::find_if(post.mortises.begin(),
                                       post.mortises.end(),
                                       [&](const MortiseSolid& m) { return m.joint == j; });
        ASSERT_NE(mine, post.mortises.end());
        const Solid hollow(SolidPlan{mine->solid(), post.frame, {}, {}});
        const int across = inwardOf(mine->face).axis == 2 ? 1 : 2;
        double theirs = 1e9;
        for (const bool isHigh : {false, true}) {
            Box block = post.bodyBox();
            const double side = isHigh ? block.max[across] : block.min[across];
            block.min[across] = isHigh ? side : side - kBlock;
            block.max[across] = isHigh ? side + kBlock : side;
            theirs = std::min(
                theirs,
                reference::minimumDistance(hollow, Solid(SolidPlan{block, post.frame, {}, {}})));
        }
        const double ours = wallBeside(piece, piece.joints[j]);
        EXPECT_NEAR(std::max(ours, 0.0), theirs, 1e-6 * std::max(theirs, 1.0))
            << piece.joints[j].name;
        ++seen;
    }
    EXPECT_EQ(seen, GetParam().rails);
}

// The back posts of the raked chair are sawn to a bend, and its rails come into their flat sides at
// all angles: the wall is how far the kernel has the hollow from what is sawn off.
TEST(PostJoints, LeaveTheWallsInABentPostThatTheKernelMeasures) {
    constexpr double kMore = 100.0;
    const ResolvedPiece piece = testing::resolved(testing::sample("raked_chair"));
    int seen = 0;
    for (std::size_t j = 0; j < piece.joints.size(); ++j) {
        const ResolvedPart& post = piece.parts[piece.joints[j].mortised];
        const auto mine = std::find_if(post.mortises.begin(),
                                       post.mortises.end(),
                                       [&](const MortiseSolid& m) { return m.joint == j; });
        if (post.of != "back post" || inwardOf(mine->face).axis != 2) {
            continue;
        }
        Box outside = post.bodyBox();
        outside.min.y -= kMore;
        outside.max.y += kMore;
        const Solid sawnOff(SolidPlan{outside, post.frame, {post.body}, {}});
        const Solid hollow(SolidPlan{mine->solid(), post.frame, {}, {}});
        const double theirs = reference::minimumDistance(hollow, sawnOff);
        EXPECT_NEAR(wallBeside(piece, piece.joints[j]), theirs, 1e-6 * std::max(theirs, 1.0))
            << piece.joints[j].name;
        ++seen;
    }
    EXPECT_GE(seen, 4);
}

TEST(PostJoints, MeetInMostOfTheTenSquareAndOfTheTenAngled) {
    const auto meeting = [](const auto& plans) {
        return std::count_if(std::begin(plans), std::end(plans), [](const Crossing& plan) {
            return !meetingsIn(testing::resolved(crossing(plan)), 0).empty();
        });
    };
    EXPECT_GE(meeting(kSquare), 8);
    EXPECT_GE(meeting(kAngled), 8);
}

}  // namespace
}  // namespace shoulderline
