// Strength of joints against the published tests in tests/reference/joint_strength.json, which
// names each source. The row SP-1, the share of a whole chair's moment that its seat rails' joints
// bear, is compared with nothing: it says so and why.

#include <cmath>
#include <map>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "core/check/strength_book.h"
#include "core/check/strength_model.h"
#include "core/check/tolerance_factor.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

const std::vector<nlohmann::json>& publishedRows() {
    static const std::vector<nlohmann::json> kRows =
        nlohmann::json::parse(testing::textOf("tests/reference/joint_strength.json"))
            .at("rows")
            .get<std::vector<nlohmann::json>>();
    return kRows;
}

const nlohmann::json& row(const std::string& id) {
    for (const nlohmann::json& one : publishedRows()) {
        if (one.at("id") == id) {
            return one;
        }
    }
    throw std::out_of_range(id);
}

double valueOf(const std::string& id) {
    return row(id).at("value").get<double>();
}

JointSection sectionOf(
    const std::string& species, double t, double w, double l, double railT, double railW) {
    const Species& wood = *testing::speciesTable().find(species);
    JointSection section;
    section.tenonThickness = t;
    section.tenonWidth = w;
    section.tenonLength = l;
    section.railThickness = railT;
    section.shoulder = (railW - w) / 2.0;
    section.ruptureMpa = *wood.ruptureKpa / 1000.0;
    section.shearMpa = *wood.shearKpa / 1000.0;
    section.widthThatCounts = testing::strengthBook().tJointWidth();
    return section;
}

JointSection testedJoint(const std::string& id) {
    const nlohmann::json& one = row(id);
    const std::string wood = one.at("species") == "red oak" ? "Northern red oak" : "White oak";
    JointSection section = sectionOf(wood,
                                     one.at("tenon_thickness_mm"),
                                     one.at("tenon_width_mm"),
                                     one.at("tenon_length_mm"),
                                     one.at("rail_section_mm")[0],
                                     one.at("rail_section_mm")[1]);
    section.runsOn = true;
    return section;
}

class PublishedMean : public ::testing::TestWithParam<const char*> {};
TEST_P(PublishedMean, LiesInsideTheEstimatedRange) {
    const Capacity capacity = bendingCapacity(testedJoint(GetParam()));

    EXPECT_LE(capacity.range.low, valueOf(GetParam()));
    EXPECT_GE(capacity.range.high, valueOf(GetParam()));
    EXPECT_LT(capacity.range.high / capacity.range.low, 2.0) << "a range that says nothing";
    EXPECT_EQ(capacity.governs, Mechanism::GlueFace);
}
INSTANTIATE_TEST_SUITE_P(Strength, PublishedMean, ::testing::Values("E16-RO-mean", "E16-WO-mean"));

class PublishedLimit : public ::testing::TestWithParam<std::tuple<const char*, const char*>> {};
TEST_P(PublishedLimit, IsMetWithinOnePerCent) {
    const auto& [wood, limit] = GetParam();
    const nlohmann::json& mean = row(std::string("E16-") + wood + "-mean");
    const std::string text = limit;
    const double confidence = std::stod(text.substr(0, 2)) / 100.0;
    const double proportion = std::stod(text.substr(3, 2)) / 100.0;

    const double k = toleranceFactor(mean.at("n"), confidence, proportion);

    const double published = valueOf(std::string("E16-") + wood + "-LTL" + limit);
    EXPECT_NEAR(mean.at("value").get<double>() - k * mean.at("sd").get<double>(),
                published,
                0.01 * published);
}
INSTANTIATE_TEST_SUITE_P(
    Strength,
    PublishedLimit,
    ::testing::Combine(::testing::Values("RO", "WO"),
                       ::testing::Values("75|75", "90|75", "75|90", "90|90", "95|95")));

TEST(ToleranceFactor, IsNoNumberOutsideItsRange) {
    EXPECT_TRUE(std::isnan(toleranceFactor(1, 0.75, 0.9)));
    EXPECT_TRUE(std::isnan(toleranceFactor(10, 1.0, 0.9)));
    EXPECT_TRUE(std::isnan(toleranceFactor(10, 0.75, 0.0)));
}

// Nine sizes of tenon, 30, 40 and 50 mm wide and long. Thickness and section of the rail were not
// read: the ranks must hold for any usual ones. Beech, with the figures of American beech.
struct Sizes {
    double width;
    double length;
};
template <class Strength>
void expectHighest(Sizes best, Strength strength) {
    for (const double w : {30.0, 40.0, 50.0}) {
        for (const double l : {30.0, 40.0, 50.0}) {
            EXPECT_LE(strength(w, l), strength(best.width, best.length) * (1.0 + 1e-12))
                << w << " x " << l << " against " << best.width << " x " << best.length;
        }
    }
}

struct RailSection {
    double tenonThickness;
    double thickness;
    double width;
};
// (An 8 mm tenon in a 22 x 60 mm rail would rank the chairs 40 x 50 and 50 x 40 the other way, by
// 1 %: there the tenon governs, which gains by width alone.)
constexpr RailSection kUsualRails[] = {
    {9.5, 22.2, 63.5}, {10, 22, 60}, {10, 22, 70}, {10, 25, 80}, {12, 28, 70}};

double middleOf(const RailSection& rail, double w, double l, bool runsOn) {
    JointSection section =
        sectionOf("American beech", rail.tenonThickness, w, l, rail.thickness, rail.width);
    section.runsOn = runsOn;
    section.endFactor = testing::strengthBook().roundEnds();
    return bendingCapacity(section).range.middle();
}

TEST(PublishedRanks, OfNineCornerJointsTheWidestAndLongestIsStrongest) {
    const nlohmann::json& best = row("K16-1");
    for (const RailSection& rail : kUsualRails) {
        expectHighest({best.at("tenon_width_mm"), best.at("tenon_length_mm")},
                      [&](double w, double l) { return middleOf(rail, w, l, false); });
    }
}

TEST(PublishedRanks, OfNineTJointsNoneIsStrongerThanFortyWideFiftyLong) {
    const nlohmann::json& best = row("K16-2");
    for (const RailSection& rail : kUsualRails) {
        expectHighest({best.at("tenon_width_mm"), best.at("tenon_length_mm")},
                      [&](double w, double l) { return middleOf(rail, w, l, true); });
        EXPECT_GT(middleOf(rail, 40, 50, true), middleOf(rail, 40, 40, true));
        EXPECT_GT(middleOf(rail, 40, 50, true), middleOf(rail, 30, 50, true));
    }
}

// Whole chairs: a corner joint and a T joint in each side. Only 50 x 50 came to the medium level
// and only 40 wide x 50 long besides it to the light one.
TEST(PublishedRanks, ChairsRankAsTheyWereTested) {
    ASSERT_EQ(row("SP-3").at("value"), "medium");
    ASSERT_EQ(row("SP-2").at("value"), "light");
    for (const RailSection& rail : kUsualRails) {
        const auto chair = [&](double w, double l) {
            return middleOf(rail, w, l, false) + middleOf(rail, w, l, true);
        };
        EXPECT_GT(chair(50, 50), chair(40, 50));
        for (const double w : {30.0, 40.0, 50.0}) {
            for (const double l : {30.0, 40.0, 50.0}) {
                if (l < 50.0 || w < 40.0) {
                    EXPECT_GT(chair(40, 50), chair(w, l)) << w << " x " << l;
                }
            }
        }
    }
}

TEST(PublishedFactors, AreThoseOfTheBook) {
    const StrengthBook& book = testing::strengthBook();

    EXPECT_NEAR(*book.adhesive("PU").momentFactor, valueOf("DE14-1"), 1e-9);
    EXPECT_NEAR(1.0 / book.roundEnds(), valueOf("TT05-1"), 1e-9);
    EXPECT_NEAR(*book.adhesive("PVA").fatigueShare, valueOf("RI13-1"), 1e-9);
    EXPECT_NEAR(*book.adhesive("UF").fatigueShare, valueOf("RI13-2"), 1e-9);
}

TEST(PublishedFactors, ShowInTheStrengthOfAJoint) {
    JointSection joint = testedJoint("E16-RO-mean");
    const double plain = bendingCapacity(joint).range.middle();

    joint.endFactor = testing::strengthBook().roundEnds();
    EXPECT_NEAR(plain / bendingCapacity(joint).range.middle(), valueOf("TT05-2"), 1e-6);
    joint.endFactor = 1.0;
    joint.glueFactor = *testing::strengthBook().adhesive("PU").momentFactor;
    EXPECT_NEAR(bendingCapacity(joint).range.middle() / plain, valueOf("DE14-1"), 0.01);
}

TEST(PublishedBonds, LieInsideTheRangeThatATenonIsDrawnOutBy) {
    const JointSection joint = testedJoint("E16-RO-mean");
    const double cheeks = 2.0 * joint.tenonWidth * joint.tenonLength;
    const Range force = withdrawalCapacity(joint, testing::strengthBook().bond()).range;
    int rows = 0;
    for (const nlohmann::json& one : publishedRows()) {
        if (one.at("id").get<std::string>().rfind("PO", 0) == 0) {
            EXPECT_GE(one.at("value").get<double>() * cheeks, force.low - 1e-6) << one;
            EXPECT_LE(one.at("value").get<double>() * cheeks, force.high + 1e-6) << one;
            ++rows;
        }
    }
    EXPECT_EQ(rows, 6);
}

// Static design share: the least of the published 75|90 limits over their means.
TEST(StaticShare, IsThePublishedLimitOverTheMean) {
    EXPECT_NEAR(testing::strengthBook().staticShare(),
                valueOf("E16-WO-LTL75|90") / valueOf("E16-WO-mean"),
                0.01);
}

// Worked examples on the tested red-oak joint: 105 N m many times over just passes, 196 N m once is
// well within.
TEST(StaticShare, JudgesTheWorkedExamples) {
    const double mean = valueOf("E16-RO-mean");

    EXPECT_NEAR(
        105.0 / (*testing::strengthBook().adhesive("PVA").fatigueShare * mean), 0.99, 0.005);
    EXPECT_NEAR(196.0 / valueOf("E16-RO-LTL75|90"), 0.68, 0.005);
}

TEST(GlueFace, TorsionIsThatOfSummedSmallSquares) {
    constexpr int kSteps = 400;
    const double a = 38.0;
    const double b = 32.0;
    double sum = 0.0;
    double polar = 0.0;
    for (int i = 0; i < kSteps; ++i) {
        for (int j = 0; j < kSteps; ++j) {
            const double r =
                std::hypot(a * ((i + 0.5) / kSteps - 0.5), b * ((j + 0.5) / kSteps - 0.5));
            sum += r * a * b / (kSteps * kSteps);
            polar += r * r * a * b / (kSteps * kSteps);
        }
    }
    const JointSection joint = testedJoint("E16-RO-mean");
    const Range face = *bendingCapacity(joint).each[static_cast<std::size_t>(Mechanism::GlueFace)];

    EXPECT_NEAR(distanceIntegral(a, b), sum, 1e-4 * sum);
    EXPECT_NEAR(face.high, 2.0 * joint.shearMpa * sum / 1000.0, 1e-4 * face.high);
    EXPECT_NEAR(face.low,
                2.0 * joint.shearMpa * polar / (std::hypot(a, b) / 2.0) / 1000.0,
                1e-4 * face.low);
}

TEST(TenonWithShoulder, WithoutAnyShoulderIsTheTenonAlone) {
    JointSection joint = testedJoint("E16-RO-mean");
    joint.railThickness = joint.tenonThickness;
    joint.shoulder = 0.0;

    const Range tenon =
        *bendingCapacity(joint).each[static_cast<std::size_t>(Mechanism::TenonWithShoulder)];

    EXPECT_NEAR(tenon.low, joint.ruptureMpa * 9.5 * 38.0 * 38.0 / 6.0 / 1000.0, 1e-6);
    EXPECT_NEAR(tenon.high, 1.5 * tenon.low, 1e-6) << "plastic over elastic of a rectangle";
}

// Derikvand, Ebrahimi and Eckelman, Bending moment capacity of mortise and loose-tenon joints, Wood
// and Fiber Science (abstract): wider shoulders and deeper embedment strengthen; tenon width less.
TEST(PublishedTrends, ShouldersAndEmbedmentStrengthen) {
    double last = 0.0;
    for (const double shoulder : {1.5, 5.0, 10.0, 15.0, 18.5}) {
        JointSection joint = sectionOf("American beech", 8, 30, 35, 22, 0);
        joint.shoulder = shoulder;
        const Range tenon =
            *bendingCapacity(joint).each[static_cast<std::size_t>(Mechanism::TenonWithShoulder)];
        EXPECT_GT(tenon.middle(), last);
        last = tenon.middle();
    }
    last = 0.0;
    for (const double embedment : {15.0, 20.0, 25.0, 30.0, 35.0}) {
        JointSection joint = sectionOf("American beech", 8, 30, embedment, 22, 60);
        const double now = bendingCapacity(joint).range.middle();
        EXPECT_GT(now, last);
        last = now;
    }
}

TEST(MortiseWall, ANearlyCutThroughPostGoverns) {
    JointSection joint = testedJoint("E16-WO-mean");
    joint.wall = MortisedSection{45.0, 45.0, 34.0, 9.5, joint.ruptureMpa};
    EXPECT_EQ(bendingCapacity(joint).governs, Mechanism::GlueFace);

    joint.wall = MortisedSection{36.0, 16.0, 34.0, 9.5, joint.ruptureMpa};
    const Capacity weak = bendingCapacity(joint);
    EXPECT_EQ(weak.governs, Mechanism::MortiseWall);
    EXPECT_LT(weak.range.high, bendingCapacity(testedJoint("E16-WO-mean")).range.high);

    joint.wall = MortisedSection{36.0, 16.0, 36.0, 9.5, joint.ruptureMpa};
    EXPECT_NEAR(
        bendingCapacity(joint).range.low, joint.ruptureMpa * 6.5 * 36.0 * 36.0 / 6.0 / 1000.0, 1e-6)
        << "through: two walls, each bent about its own middle";
}

}  // namespace
}  // namespace shoulderline
