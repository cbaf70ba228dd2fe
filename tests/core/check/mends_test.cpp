#include <functional>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "core/check/findings_json.h"
#include "core/check/neighbours.h"
#include "core/check/settle.h"
#include "core/resolve/frames.h"
#include "core/resolve/resolve.h"
#include "tests/support/pieces.h"

// Each kind of mend that is offered where mortises meet: that it is offered, that it cures what it
// is offered for, that it goes on doing so as sizes change, and what is told of its effects.
namespace shoulderline {
namespace {

using testing::findings;
using testing::jointNamed;
using testing::resolved;
using testing::statedPart;

Workbench bench() {
    return {
        testing::ruleBook(), testing::workshop(), testing::speciesTable(), testing::strengthBook()};
}

// A stand of four posts 3 in square, a rail into each face of each; sizes as given.
struct Corner {
    std::string endWidth = "4 1/2 in";
    std::string frontWidth = "4 1/2 in";
    std::string endTop = "stand height";  // level of the upper edge of the end rails
    std::string endLength;                // of the end rails' tenons; empty for the rule
    std::string frontSet = "3/8 in";      // of the front and back rails behind the outer faces
};

Piece standOf(const Corner& corner) {
    Piece piece = testing::sample("luggage_stand");
    std::erase_if(piece.parts, [](const Part& part) {
        return part.name != "front post" && part.name != "back post" && part.name != "end rail" &&
               part.name != "front rail" && part.name != "back rail";
    });
    piece.joints.clear();
    for (Stock& stock : piece.stocks) {
        if (stock.name == "post stock") {
            stock.thickness = "3 in";
        }
        if (stock.name == "rail stock") {
            stock.thickness = "1 1/8 in";
        }
    }
    for (Part& part : piece.parts) {
        if (part.name == "end rail") {
            part.width = corner.endWidth;
            std::get<Spans>(part.relation).level = Position{Side::Top, corner.endTop};
        } else if (part.name == "front rail" || part.name == "back rail") {
            part.width = corner.frontWidth;
            std::get<Spans>(part.relation).set.by = corner.frontSet;
        }
    }
    if (!corner.endLength.empty()) {
        for (const char* post : {"front post", "back post"}) {
            JointStatement joint;
            joint.tenoned = "end rail";
            joint.mortised = post;
            joint.sizes[SizeName::TenonLength] = {SizeState::Stated, corner.endLength};
            piece.joints.push_back(joint);
        }
    }
    return piece;
}

std::size_t meetingsOf(const Piece& piece) {
    return allMeetings(resolved(piece)).size();
}

struct Offered {
    Finding finding;
    Mend mend;
};

// The first mend that begins so, of any place where two mortises meet.
std::optional<Offered> offered(const Piece& piece, const std::string& begins) {
    for (const Finding& finding : findings(piece)) {
        for (const Mend& mend : finding.mends) {
            if (finding.rule == RuleId::MortiseGapLeast && finding.otherJoint && mend.edit &&
                mend.text.rfind(begins, 0) == 0) {
                return Offered{finding, mend};
            }
        }
    }
    return std::nullopt;
}

// Whether the two joints of the finding meet in the post that it is about.
bool doMeet(const Piece& before, const Finding& finding, const Piece& after) {
    const ResolvedPiece was = resolved(before);
    const ResolvedPiece is = resolved(after);
    const auto one = is.findJoint(was.joints[*finding.joint].name);
    const auto other = is.findJoint(was.joints[*finding.otherJoint].name);
    for (const Meeting& meeting : allMeetings(is)) {
        if ((meeting.first.joint == one && meeting.second.joint == other) ||
            (meeting.first.joint == other && meeting.second.joint == one)) {
            return true;
        }
    }
    return false;
}

struct Case {
    const char* mend;
    Corner corner;
    std::vector<const char*> railThickness;  // that it must hold for
};

void PrintTo(const Case& one, std::ostream* out) {
    *out << one.mend;
}

// A rail that is moved stays where it is moved to: that holds for tenons no thicker than those it
// was moved for.
class MendOf : public ::testing::TestWithParam<Case> {};

TEST_P(MendOf, IsOfferedCuresAndStaysAppliedAsSizesChange) {
    const Piece piece = standOf(GetParam().corner);
    const std::optional<Offered> one = offered(piece, GetParam().mend);
    ASSERT_TRUE(one) << GetParam().mend << " is not offered";

    const Piece mended = *shoulderline::apply(piece, *one->mend.edit);

    EXPECT_FALSE(doMeet(piece, one->finding, mended));
    for (const char* thickness : GetParam().railThickness) {
        Piece changed = mended;
        for (Stock& stock : changed.stocks) {
            if (stock.name == "rail stock") {
                stock.thickness = thickness;
            }
        }
        EXPECT_FALSE(doMeet(piece, one->finding, changed)) << "rails " << thickness;
    }
}

const std::vector<const char*> kThicknesses{"1 in", "1 1/8 in", "1 1/4 in"};
INSTANTIATE_TEST_SUITE_P(
    Mends,
    MendOf,
    ::testing::Values(
        Case{"mitre", {}, kThicknesses},
        Case{"shorten", {}, kThicknesses},
        Case{"raise", {"2 in", "2 in", "stand height - 1 1/4 in", "", "3/8 in"}, kThicknesses},
        Case{"lower", {"2 in", "2 in", "stand height - 1 1/2 in", "", "3/8 in"}, kThicknesses},
        Case{"haunch", {"1 1/4 in", "6 in", "stand height - 5/8 in", "", "3/8 in"}, kThicknesses},
        Case{"split", {"1 in", "6 in", "stand height - 2 1/2 in", "", "3/8 in"}, kThicknesses},
        Case{"move",
             {"1 in", "2 in", "stand height - 1/2 in", "", "3/8 in"},
             {"1 in", "1 1/8 in"}}));

// Moved across, the two lie beside one another with the wood that the rule book asks between them.
TEST(MoveAcross, LeavesTheWallBesideTheMortiseAndTheGapBetween) {
    const Piece piece = standOf({"1 in", "2 in", "stand height - 1/2 in", "", "3/8 in"});
    const std::optional<Offered> one = offered(piece, "move");
    ASSERT_TRUE(one);
    const ResolvedPiece was = resolved(piece);
    const ResolvedPiece is = resolved(*shoulderline::apply(piece, *one->mend.edit));

    const std::string moved = std::get<SetPart>(*one->mend.edit).name;
    int tried = 0;
    for (std::size_t i = 0; i < is.joints.size(); ++i) {
        if (is.parts[is.joints[i].tenoned].of != moved) {
            continue;
        }
        EXPECT_GT(
            std::abs(
                (is.joints[i].mortise.fromFace.value - was.joints[i].mortise.fromFace.value).mm()),
            0.5);
        EXPECT_NEAR(
            (is.joints[i].mortise.fromStart.value - was.joints[i].mortise.fromStart.value).mm(),
            0.0,
            1e-9);
        const ResolvedPart& post = is.parts[is.joints[i].mortised];
        for (const MortiseSolid& mortise : post.mortises) {
            if (mortise.joint == i) {
                const int across = inwardOf(mortise.face).axis == 2 ? 1 : 2;
                const double wall = std::min(mortise.box.min[across],
                                             post.bodyBox().max[across] - mortise.box.max[across]);
                EXPECT_GE(wall, testing::ruleBook()[RuleId::MortiseWallLeast].value - 1e-6);
            }
        }
        ++tried;
    }
    EXPECT_GT(tried, 0);
}

// 'check --json' tells of each mend what trying it tells.
TEST(CheckJson, CarriesWhatEachMendWouldDo) {
    const Piece piece = standOf({});
    const ResolvedPiece made = resolved(piece);
    const std::vector<Finding> all = findings(piece);

    const auto document =
        nlohmann::json::parse(findingsJson(all, made, effectsOf(piece, made, all, bench())));

    std::size_t compared = 0;
    for (std::size_t f = 0; f < all.size(); ++f) {
        const auto& effects = document["findings"][f]["effects"];
        std::size_t at = 0;
        for (const Mend& mend : all[f].mends) {
            if (!all[f].joint || !mend.edit) {
                continue;
            }
            const std::optional<MendEffect> effect = effectOf(piece, made, all[f], mend, bench());
            ASSERT_TRUE(effect);
            const auto& told = effects.at(at++);
            EXPECT_EQ(told["mend"], mend.text);
            EXPECT_EQ(told["must_mend_after"], effect->mustMendAfter);
            ASSERT_EQ(told["joints"].size(), effect->joints.size());
            for (std::size_t j = 0; j < effect->joints.size(); ++j) {
                EXPECT_EQ(told["joints"][j]["name"], effect->joints[j].name);
                ASSERT_EQ(told["joints"][j]["sizes"].size(), effect->joints[j].sizes.size());
                for (std::size_t s = 0; s < effect->joints[j].sizes.size(); ++s) {
                    EXPECT_NEAR(told["joints"][j]["sizes"][s]["after_mm"].get<double>(),
                                effect->joints[j].sizes[s].after.mm(),
                                1e-5);
                    ++compared;
                }
            }
        }
        EXPECT_EQ(at, effects.size());
    }
    EXPECT_GT(compared, 4u);
}

// Twin tenons that go through the post can be neither mitred nor shortened, haunched nor split;
// their mortises overlap a little in height.
Piece throughRails() {
    Piece piece = standOf({"2 in", "2 in", "stand height - 1 3/8 in", "", "3/8 in"});
    for (const char* rail : {"end rail", "front rail", "back rail"}) {
        for (const char* post : {"front post", "back post"}) {
            const bool isThere = std::string(rail) == "end rail" ||
                                 std::string(rail).substr(0, 4) == std::string(post).substr(0, 4);
            if (isThere) {
                JointStatement joint;
                joint.tenoned = rail;
                joint.mortised = post;
                joint.kind = JointKind::Through;
                joint.features = {JointFeature::Twin};
                piece.joints.push_back(joint);
            }
        }
    }
    return piece;
}

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

// Diler et al. (2017) BioResources 12(4) 7466-7478: withdrawal of heat-treated wood 0.75 of the
// untreated.
TEST(Strength, HeatTreatedWoodHoldsThreeQuartersWhenDrawnOut) {
    Piece piece = testing::twoPostsAndARail();
    const auto strength = [&] {
        const ResolvedPiece made = resolved(piece);
        return StrengthEstimator(piece, made, testing::speciesTable(), testing::strengthBook())
            .strengthOf(0);
    };
    const JointStrength plain = strength();
    const std::string stock = statedPart(piece, "rail").stock;
    for (Stock& one : piece.stocks) {
        one.isHeatTreated = one.name == stock;
    }
    const JointStrength treated = strength();

    EXPECT_NEAR(treated.withdrawal.range.low / plain.withdrawal.range.low, 0.75, 1e-9);
    EXPECT_NEAR(treated.withdrawal.range.high / plain.withdrawal.range.high, 0.75, 1e-9);
    EXPECT_NEAR(treated.bending.range.middle(), plain.bending.range.middle(), 1e-9);
    EXPECT_FALSE(treated.isCovered) << "no figure for bending was read";
    EXPECT_TRUE(treated.assumptions[static_cast<std::size_t>(Assumption::HeatTreated)]);
}

}  // namespace
}  // namespace shoulderline
