#include <functional>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "core/check/findings_json.h"
#include "core/check/neighbours.h"
#include "core/check/settle.h"
#include "core/resolve/frames.h"
#include "core/resolve/resolve.h"
#include "tests/core/check/stand_of_rails.h"
#include "tests/support/pieces.h"

// Each kind of mend that is offered where mortises meet: that it is offered, that it cures what it
// is offered for, that it goes on doing so as sizes change, and what is told of its effects.
namespace shoulderline {
namespace {

using testing::bench;
using testing::Corner;
using testing::findings;
using testing::jointNamed;
using testing::meetingsOf;
using testing::offered;
using testing::Offered;
using testing::resolved;
using testing::standOf;
using testing::statedPart;

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
        Case{"move", {"1 in", "2 in", "stand height - 1/2 in", "", "3/8 in"}, kThicknesses}));

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
