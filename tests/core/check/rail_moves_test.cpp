#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/check/neighbours.h"
#include "core/resolve/frames.h"
#include "core/resolve/giving_way.h"
#include "tests/core/check/stand_of_rails.h"
#include "tests/support/pieces.h"

// Rails that are moved to pass the mortises of others: no further than it takes, as long as it
// takes, and against trying every move there is.
namespace shoulderline {
namespace {

using testing::bench;
using testing::meetingsOf;
using testing::offered;
using testing::resolved;
using testing::standOf;
using testing::statedPart;
using testing::throughRails;

TEST(Settle, MovesARailWhereEndsAloneDoNot) {
    const Piece piece = throughRails();
    ASSERT_GT(meetingsOf(piece), 0u);

    const Settlement settlement = settle(piece, bench());

    ASSERT_FALSE(settlement.rails.empty()) << settlementText(settlement);
    const Piece settled = *shoulderline::apply(piece, settlement.edit);
    EXPECT_EQ(meetingsOf(settled), 0u);
    EXPECT_EQ(settlement.meetingsAfter, 0u);
    for (const SettledRail& rail : settlement.rails) {
        EXPECT_LE(rail.by.mm(), testing::ruleBook()[RuleId::SettleMoveMost].value + 1e-9);
    }
}

// Every level of the end rail within the allowance, by thirty-seconds: none that keeps the mortises
// clear is nearer to where the maker stated it.
TEST(Settle, MovesARailNoFurtherThanItMust) {
    const Piece piece = throughRails();
    const Settlement settlement = settle(piece, bench());
    ASSERT_EQ(settlement.rails.size(), 1u) << settlementText(settlement);

    for (int step = -16; step <= 16; ++step) {
        Piece tried = piece;
        Part& rail = statedPart(tried, settlement.rails[0].rail);
        Position& level = *std::get<Spans>(rail.relation).level;
        level.at = "(" + level.at + ") + (" + std::to_string(step) + "/32) * 1 in";
        ASSERT_TRUE(resolved(tried).troubles.empty());
        if (meetingsOf(tried) == 0) {
            EXPECT_GE(std::abs(step) / 32.0, settlement.rails[0].by.inches() - 1e-9);
        }
    }
}

TEST(Settle, MovesNothingWhereAHouseRuleForbidsIt) {
    Piece piece = throughRails();
    piece.houseRules.push_back({"settle.move.most", "0 in", "", ""});

    EXPECT_TRUE(settle(piece, bench()).rails.empty());
}

// The level of a part's middle.
double levelOf(const Piece& piece, const std::string& name) {
    const ResolvedPiece made = resolved(piece);
    for (const ResolvedPart& part : made.parts) {
        if (part.of == name) {
            return boundsInSpace(part).centre().z;
        }
    }
    return 0.0;
}

// Places where a mortise of the rail meets another.
std::ptrdiff_t meetingsOfRail(const Piece& piece, const std::string& name) {
    const ResolvedPiece made = resolved(piece);
    const auto isOfRail = [&](const Cavity& cavity) {
        return cavity.joint && made.parts[made.joints[*cavity.joint].tenoned].of == name;
    };
    const std::vector<Meeting> all = allMeetings(made);
    return std::count_if(all.begin(), all.end(), [&](const Meeting& one) {
        return isOfRail(one.first) || isOfRail(one.second);
    });
}

Piece withMend(const Piece& piece, const std::string& begins, std::string& moved) {
    const std::optional<testing::Offered> one = offered(piece, begins);
    if (!one) {
        ADD_FAILURE() << begins << " is not offered";
        return piece;
    }
    moved = std::get<SetPart>(*one->mend.edit).name;
    return *shoulderline::apply(piece, *one->mend.edit);
}

const testing::Corner kOverlapsALittle{"2 in", "2 in", "stand height - 1 1/4 in", "", "3/8 in"};

TEST(GivesWay, IsMovedByThirtySecondsAsFarAsItTakesAndNoFurther) {
    const Piece piece = standOf(kOverlapsALittle);
    std::string moved;
    const Piece mended = withMend(piece, "raise", moved);
    ASSERT_EQ(meetingsOfRail(mended, moved), 0);

    const double by = levelOf(mended, moved) - levelOf(piece, moved);

    EXPECT_GT(by, 0.0);
    EXPECT_NEAR(std::remainder(by, 25.4 / 32), 0.0, 1e-9);
    Piece less = piece;
    Position& level = *std::get<Spans>(statedPart(less, moved).relation).level;
    level.at = "(" + level.at + ") + " + std::to_string(std::lround(by / 25.4 * 32) - 1) + "/32 in";
    EXPECT_GT(meetingsOfRail(less, moved), 0) << "a thirty-second less leaves them meeting";
}

TEST(GivesWay, LiesAsStatedAgainOnceNothingIsInItsWay) {
    const Piece piece = standOf(kOverlapsALittle);
    std::string moved;
    const Piece mended = withMend(piece, "raise", moved);
    ASSERT_GT(levelOf(mended, moved), levelOf(piece, moved) + 0.5);
    Piece freed = mended;
    const std::string other = std::get<Spans>(statedPart(freed, moved).relation).givesWay.to;
    Position& level = *std::get<Spans>(statedPart(freed, other).relation).level;
    level.at = "(" + level.at + ") - 6 in";

    EXPECT_NEAR(levelOf(freed, moved), levelOf(piece, moved), 1e-9);
}

// The cause comes back and grows: the other rail is made wider, step by step.
TEST(GivesWay, MovesFurtherAsTheOtherRailGrowsWider) {
    const Piece piece = standOf(kOverlapsALittle);
    std::string moved;
    Piece mended = withMend(piece, "raise", moved);
    const std::string other = std::get<Spans>(statedPart(mended, moved).relation).givesWay.to;
    double last = levelOf(mended, moved);
    int further = 0;
    for (const char* width : {"2 in", "2 1/8 in", "2 1/4 in", "2 3/8 in"}) {
        statedPart(mended, other).width = width;
        Position& level = *std::get<Spans>(statedPart(mended, other).relation).level;
        level.face = Side::Bottom;
        level.at = "stand height - 2 in";
        EXPECT_EQ(meetingsOfRail(mended, moved), 0) << width;
        further += levelOf(mended, moved) > last + 0.5 ? 1 : 0;
        last = levelOf(mended, moved);
    }
    EXPECT_GE(further, 2);
}

// Both of a pair keep to their own sides: towards the right for the one is towards the left for its
// twin.
TEST(GivesWay, IsMirroredForAPair) {
    Piece piece = standOf({"1 in", "2 in", "stand height - 1/2 in", "", "3/8 in"});
    std::get<Spans>(statedPart(piece, "end rail").relation).givesWay = {"front rail", Side::Left};
    const ResolvedPiece made = resolved(piece);
    const Box right = boundsInSpace(testing::partNamed(made, "end rail, right"));
    const Box left = boundsInSpace(testing::partNamed(made, "end rail, left"));

    EXPECT_NEAR(right.centre().x, -left.centre().x, 1e-9);
}

TEST(GivesWay, FollowsANewName) {
    Piece piece = standOf(kOverlapsALittle);
    std::get<Spans>(statedPart(piece, "end rail").relation).givesWay = {"front rail", Side::Top};
    Part renamed = statedPart(piece, "front rail");
    renamed.name = "apron";

    const Piece after = *shoulderline::apply(piece, SetPart{"front rail", renamed});

    Piece named = after;
    EXPECT_EQ(std::get<Spans>(statedPart(named, "end rail").relation).givesWay.to, "apron");
}

// Ends and moves together: one rail's tenons must go through as twins, the other's ends are free.
// Every way of its ends at every level within the allowance, by thirty-seconds, judged from the
// resolved piece alone.
TEST(Settle, IsAsGoodAsTryingEveryWayAtEveryLevel) {
    using enum JointFeature;
    Piece piece = throughRails();
    std::erase_if(piece.joints,
                  [](const JointStatement& one) { return one.tenoned == "end rail"; });
    for (Part& part : piece.parts) {
        if (part.name == "end rail") {
            part.width = "2 1/2 in";
        }
    }
    ASSERT_GT(meetingsOf(piece), 0u);
    const auto weakestOf = [](const Piece& tried) -> std::optional<double> {
        const ResolvedPiece made = resolved(tried);
        if (!made.troubles.empty() || !allMeetings(made).empty()) {
            return std::nullopt;
        }
        const StrengthEstimator estimator(
            tried, made, testing::speciesTable(), testing::strengthBook());
        double weakest = 1e18;
        for (std::size_t i = 0; i < made.joints.size(); ++i) {
            const JointStrength strength = estimator.strengthOf(i);
            weakest = strength.isEstimated() ? std::min(weakest, strength.bending.range.middle())
                                             : weakest;
        }
        return weakest;
    };

    const Piece settled = *shoulderline::apply(piece, settle(piece, bench()).edit);

    const std::optional<double> ours = weakestOf(settled);
    ASSERT_TRUE(ours) << "nothing meets once settled";
    const bool isMoved = levelOf(settled, "end rail") != levelOf(piece, "end rail");
    double best = 0.0;
    int clear = 0;
    for (const JointFeatures& way : std::vector<JointFeatures>{{},
                                                               {Mitred},
                                                               {Shortened},
                                                               {Haunch},
                                                               {Haunch, Mitred},
                                                               {Haunch, Shortened},
                                                               {Double}}) {
        for (int step = isMoved ? -16 : 0; step <= (isMoved ? 16 : 0); ++step) {
            Piece tried = piece;
            Position& level = *std::get<Spans>(statedPart(tried, "end rail").relation).level;
            level.at = "(" + level.at + ") + (" + std::to_string(step) + "/32) * 1 in";
            for (const char* post : {"front post", "back post"}) {
                JointStatement joint;
                joint.tenoned = "end rail";
                joint.mortised = post;
                joint.features = way;
                tried.joints.push_back(joint);
            }
            if (const std::optional<double> weakest = weakestOf(tried)) {
                best = std::max(best, *weakest);
                ++clear;
            }
        }
    }
    EXPECT_GT(clear, 0);
    EXPECT_GE(*ours, best * (1.0 - 1e-9)) << (isMoved ? "moved" : "not moved");
}

}  // namespace
}  // namespace shoulderline
