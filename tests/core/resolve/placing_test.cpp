#include <algorithm>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;
using testing::statedPart;
using testing::twoPostsAndARail;

double inches(double mm) {
    return mm / Length::kMmPerInch;
}

Box boxOf(const ResolvedPart& part) {
    const Box box = part.frame.outerBounds(part.bodyBox());
    return {box.min * (1 / Length::kMmPerInch), box.max * (1 / Length::kMmPerInch)};
}

TEST(Stands, PostStandsOnItsStatedFacesAndIsMirrored) {
    const ResolvedPiece piece = resolved(twoPostsAndARail());
    const Box right = boxOf(partNamed(piece, "post, right"));
    const Box left = boxOf(partNamed(piece, "post, left"));

    EXPECT_NEAR(right.max.x, 12, 1e-9);
    EXPECT_NEAR(right.min.x, 10, 1e-9);
    EXPECT_NEAR(right.min.y, 0, 1e-9);
    EXPECT_NEAR(right.max.z, 24, 1e-9);
    EXPECT_NEAR(left.min.x, -12, 1e-9);
    EXPECT_NEAR(left.max.x, -10, 1e-9);
}

TEST(Stands, LengthOfAPostRunsUpFromItsFoot) {
    const ResolvedPiece piece = resolved(testing::sample("armchair"));
    for (const char* name :
         {"front post, right", "front post, left", "back post, right", "back post, left"}) {
        EXPECT_NEAR(partNamed(piece, name).frame.x.z, 1.0, 1e-12) << name;
        EXPECT_NEAR(partNamed(piece, name).frame.origin.z, 0.0, 1e-9) << name;
    }
}

TEST(Stands, ReferenceFacesOfAPostLookOutwards) {
    const ResolvedPiece piece = resolved(testing::pieceAt("tests/pieces/upright_chair"));
    const ResolvedPart& front = partNamed(piece, "front post, right");
    const ResolvedPart& back = partNamed(piece, "back post, right");

    EXPECT_NEAR(front.frame.z.x, -1.0, 1e-12)
        << "the face side looks right, so the thickness runs left";
    EXPECT_NEAR(front.frame.y.y, 1.0, 1e-12) << "the face edge looks to the front";
    EXPECT_NEAR(back.frame.z.y, -1.0, 1e-12) << "the face side looks to the back";
    EXPECT_NEAR(back.frame.y.x, -1.0, 1e-12) << "the face edge looks right";
}

TEST(Spans, RailFillsTheClearBetweenItsPostsAtItsLevel) {
    const ResolvedPiece piece = resolved(twoPostsAndARail());
    const ResolvedPart& rail = partNamed(piece, "rail");
    const Box box = boxOf(rail);

    EXPECT_NEAR(inches(rail.shoulderLength.value.mm()), 20, 1e-9);
    EXPECT_EQ(rail.shoulderLength.reasons.front().rule, RuleId::ShoulderToShoulder);
    EXPECT_NEAR(box.min.x, -10, 1e-9);
    EXPECT_NEAR(box.max.z, 18, 1e-9);
    EXPECT_NEAR(box.min.z, 15, 1e-9);
    EXPECT_NEAR(box.min.y, 0, 1e-9) << "flush in front";
}

TEST(Spans, SetInMovesTheRailBehindTheFace) {
    Piece piece = twoPostsAndARail();
    std::get<Spans>(statedPart(piece, "rail").relation).set = {Side::Front, "1/4 in"};

    EXPECT_NEAR(boxOf(partNamed(resolved(piece), "rail")).min.y, 0.25, 1e-9);

    std::get<Spans>(statedPart(piece, "rail").relation).set = {Side::Back, "1/4 in"};

    EXPECT_NEAR(boxOf(partNamed(resolved(piece), "rail")).max.y, 1.75, 1e-9);

    std::get<Spans>(statedPart(piece, "rail").relation).set = {Side::Centre, ""};

    EXPECT_NEAR(boxOf(partNamed(resolved(piece), "rail")).min.y, 1 - 0.4375, 1e-9);
}

TEST(Spans, MeasuredStockTakesThePlaceOfTheStatedThickness) {
    Piece piece = twoPostsAndARail();
    piece.stocks[1].measuredThickness = "0.742 in";

    const ResolvedPart rail = partNamed(resolved(piece), "rail");

    EXPECT_NEAR(inches(rail.thickness.value.mm()), 0.742, 1e-12);
    EXPECT_EQ(rail.thickness.state, SizeState::AsFound);
}

TEST(Spans, FramesAreRightHandedAndTheirTwinsLeftHanded) {
    for (const char* name : testing::kSamples) {
        for (const ResolvedPart& part : resolved(testing::sample(name)).parts) {
            const bool isTwin = part.hand == Hand::Left;
            EXPECT_EQ(part.frame.isRightHanded(), !isTwin) << name << ": " << part.name;
        }
    }
}

TEST(Spaced, SlatsStandWithEqualGapsAlsoAtTheEnds) {
    const ResolvedPiece piece = resolved(testing::sample("armchair"));
    // 21 1/4 between the posts, six slats of 1 3/4: seven gaps.
    const double gap = (21.25 - 6 * 1.75) / 7;
    double edge = 2.125;
    for (int i = 1; i <= 6; ++i) {
        const ResolvedPart& slat = partNamed(piece, "side slat " + std::to_string(i) + ", right");
        EXPECT_NEAR(boxOf(slat).min.y - edge, gap, 1e-9) << slat.name;
        EXPECT_NEAR(inches(slat.gap.mm()), gap, 1e-9);
        edge = boxOf(slat).max.y;
    }
    EXPECT_NEAR(25.5 - 2.125 - edge, gap, 1e-9);
}

TEST(Spaced, GreatestGapGivesTheFewestSlatsThatKeepIt) {
    Piece piece = testing::pieceAt("tests/pieces/upright_chair");
    const auto gapFor = [&](const char* greatest) {
        statedPart(piece, "back slat").spacing->greatestGap = greatest;
        return resolved(piece);
    };
    const ResolvedPiece wide = gapFor("2 1/2 in");
    const ResolvedPart& slat = partNamed(wide, "back slat 1");
    int count = 0;
    for (const ResolvedPart& part : wide.parts) {
        count += part.of == "back slat" ? 1 : 0;
    }
    EXPECT_LE(inches(slat.gap.mm()), 2.5);
    const double clear = 17.5 - 2 * 1.625;
    EXPECT_GT((clear - (count - 1) * 1.75) / count, 2.5)
        << "one slat fewer would leave too wide a gap";
}

TEST(Spaced, PitchPutsTheSetInTheMiddle) {
    Piece piece = testing::sample("armchair");
    statedPart(piece, "side slat").spacing = Spacing{"front post", "back post", "3", "", "4 in"};

    const ResolvedPiece now = resolved(piece);

    const Box first = boxOf(partNamed(now, "side slat 1, right"));
    const Box last = boxOf(partNamed(now, "side slat 3, right"));
    EXPECT_NEAR(boxOf(partNamed(now, "side slat 2, right")).min.y - first.min.y, 4, 1e-9);
    EXPECT_NEAR(first.min.y - 2.125, 25.5 - 2.125 - last.max.y, 1e-9);
}

TEST(Caps, ArmLiesOnThePostsAndOverhangsThem) {
    const ResolvedPiece piece = resolved(testing::sample("armchair"));
    const Box arm = boxOf(partNamed(piece, "arm, right"));

    EXPECT_NEAR(arm.max.z, 23.25, 1e-9);
    EXPECT_NEAR(arm.min.z, 22.25, 1e-9);
    EXPECT_NEAR(arm.max.x, 14.75, 1e-9);
    EXPECT_NEAR(arm.min.y, -1.25, 1e-9);
    EXPECT_NEAR(arm.max.y, 30.75, 1e-9);
}

TEST(Caps, SupportsOfDifferentHeightAreTold) {
    Piece piece = testing::sample("armchair");
    std::get<Stands>(statedPart(piece, "back post").relation).height = "23 in";

    const ResolvedPiece now = resolved(piece);

    EXPECT_FALSE(now.findPart("arm, right"));
    ASSERT_FALSE(now.troubles.empty());
    EXPECT_EQ(now.troubles.front().place, "part 'arm'");
    EXPECT_TRUE(now.findPart("front rail")) << "the rest resolves";
}

TEST(Assembly, LeaningBackIsTurnedAsAWhole) {
    const ResolvedPiece piece = resolved(testing::sample("armchair"));
    const ResolvedPart& stile = partNamed(piece, "back stile, right");

    EXPECT_NEAR(stile.frame.x.z, std::cos(18 * std::numbers::pi / 180), 1e-12);
    EXPECT_NEAR(stile.frame.x.y, std::sin(18 * std::numbers::pi / 180), 1e-12)
        << "its top leans to the back";
}

TEST(Assembly, OneWithinAnotherIsPlacedByBoth) {
    Piece piece = testing::sample("armchair");
    piece.assemblies.push_back({"seat unit", "", "", "", "2 in", "", "", "", "", ""});
    piece.assemblies[1].parent = "seat unit";
    const double before =
        partNamed(resolved(testing::sample("armchair")), "crest rail").frame.origin.z;

    EXPECT_NEAR(partNamed(resolved(piece), "crest rail").frame.origin.z - before, 2 * 25.4, 1e-9);

    piece.assemblies.back().parent = "leaning back";
    const ResolvedPiece ring = resolved(piece);
    EXPECT_FALSE(ring.findPart("crest rail"))
        << "assemblies within one another in a ring place nothing";
    EXPECT_TRUE(ring.findPart("front rail"));
}

TEST(Free, PartIsPlacedByItsPointAndAngles) {
    Piece piece = twoPostsAndARail();
    Part stick;
    stick.name = "stick";
    stick.stock = "rail stock";
    stick.width = "1 in";
    stick.relation = Free{"1 in", "30 in", "0 in", "", "-90 deg", "", "10 in"};
    piece.parts.push_back(stick);

    const Box box = boxOf(partNamed(resolved(piece), "stick"));

    EXPECT_NEAR(box.min.z, 0, 1e-9);
    EXPECT_NEAR(box.max.z, 10, 1e-9);
    EXPECT_NEAR(box.min.x, 1 - 0.875, 1e-9);
}

// What cannot be worked out: the statement at fault, the place that is named, a word of the
// message.
struct Impossible {
    const char* what;
    void (*spoil)(Piece&);
    const char* place;
    const char* says;
};
void PrintTo(const Impossible& impossible, std::ostream* os) {
    *os << impossible.what;
}
class ImpossiblePiece : public ::testing::TestWithParam<Impossible> {};
TEST_P(ImpossiblePiece, IsToldAtItsPlaceAndTheRestResolves) {
    Piece piece = testing::pieceAt("tests/pieces/upright_chair");
    GetParam().spoil(piece);

    const ResolvedPiece now = resolved(piece);

    ASSERT_FALSE(now.troubles.empty()) << GetParam().what;
    const bool isTold =
        std::any_of(now.troubles.begin(), now.troubles.end(), [](const Trouble& trouble) {
            return trouble.place == GetParam().place &&
                   trouble.message.find(GetParam().says) != std::string::npos;
        });
    EXPECT_TRUE(isTold) << GetParam().what << ": " << now.troubles.front().place << ": "
                        << now.troubles.front().message;
    EXPECT_TRUE(now.findPart("back post, left"));
}
INSTANTIATE_TEST_SUITE_P(
    Stated,
    ImpossiblePiece,
    ::testing::Values(
        Impossible{"a ring of measures",
                   [](Piece& p) {
                       p.measures[0].expression = "seat thickness * 2";
                       p.measures[1].expression = "seat height / 2";
                   },
                   "measure 'seat height'",
                   "seat thickness"},
        Impossible{"an unknown measure",
                   [](Piece& p) { statedPart(p, "front rail").width = "keel depth"; },
                   "part 'front rail'",
                   "keel depth"},
        Impossible{"a length times a length",
                   [](Piece& p) { statedPart(p, "front rail").width = "1 in * 2 in"; },
                   "part 'front rail'",
                   "length times a length"},
        Impossible{"a width of zero",
                   [](Piece& p) { statedPart(p, "front rail").width = "0 in"; },
                   "part 'front rail'",
                   "not above zero"},
        Impossible{"a negative width",
                   [](Piece& p) { statedPart(p, "front rail").width = "-3 in"; },
                   "part 'front rail'",
                   "not above zero"},
        Impossible{"an enormous width",
                   [](Piece& p) { statedPart(p, "front rail").width = "99999999999999 in"; },
                   "part 'front rail'",
                   "width"},
        Impossible{"a division by zero",
                   [](Piece& p) { statedPart(p, "front rail").width = "1 in / 0"; },
                   "part 'front rail'",
                   "zero"},
        Impossible{"an unknown stock",
                   [](Piece& p) { statedPart(p, "front rail").stock = "driftwood"; },
                   "part 'front rail'",
                   "no stock 'driftwood'"},
        Impossible{
            "a missing part",
            [](Piece& p) { std::get<Spans>(statedPart(p, "front rail").relation).to = "mast"; },
            "part 'front rail'",
            "'mast'"},
        Impossible{"one of a pair left open",
                   [](Piece& p) {
                       std::get<Spans>(statedPart(p, "front rail").relation).to = "front post";
                   },
                   "part 'front rail'",
                   "is a pair"},
        Impossible{"a rail from a post to itself",
                   [](Piece& p) {
                       std::get<Spans>(statedPart(p, "front rail").relation).to =
                           "front post, left";
                   },
                   "part 'front rail'",
                   "do not face each other"},
        Impossible{"posts that do not face each other",
                   [](Piece& p) {
                       std::get<Spans>(statedPart(p, "front rail").relation).to =
                           "back post, right";
                   },
                   "part 'front rail'",
                   "do not face each other"},
        Impossible{"a rail above its post",
                   [](Piece& p) {
                       std::get<Spans>(statedPart(p, "front rail").relation).level->at = "60 in";
                   },
                   "part 'front rail'",
                   "passes by"},
        Impossible{"parts placed by one another",
                   [](Piece& p) {
                       std::get<Spans>(statedPart(p, "side stretcher").relation).from =
                           "cross stretcher";
                   },
                   "part 'cross stretcher'",
                   "ring"},
        Impossible{"an unknown assembly",
                   [](Piece& p) { statedPart(p, "front rail").assembly = "hull"; },
                   "part 'front rail'",
                   "no assembly 'hull'"},
        Impossible{"two parts of one name",
                   [](Piece& p) { p.parts.push_back(p.parts.front()); },
                   "part 'front post'",
                   "already has this name"},
        Impossible{"a set too large for its place",
                   [](Piece& p) {
                       statedPart(p, "back slat").spacing->greatestGap.clear();
                       statedPart(p, "back slat").spacing->count = "40";
                   },
                   "part 'back slat'",
                   "does not fit"},
        Impossible{"a set without a number",
                   [](Piece& p) { statedPart(p, "back slat").spacing->greatestGap.clear(); },
                   "part 'back slat'",
                   "needs a count"},
        Impossible{
            "a post upside down",
            [](Piece& p) { std::get<Stands>(statedPart(p, "front post").relation).foot = "30 in"; },
            "part 'front post'",
            "not above its foot"},
        Impossible{"a pair over the middle",
                   [](Piece& p) {
                       std::get<Stands>(statedPart(p, "front post").relation).x.at = "1/2 in";
                   },
                   "part 'front post'",
                   "over the middle"},
        Impossible{"an unknown house rule",
                   [](Piece& p) {
                       p.houseRules.push_back({"tenon.colour", "1", "", ""});
                   },
                   "house rule 'tenon.colour'",
                   "no such rule"},
        Impossible{"a joint of parts that are not there",
                   [](Piece& p) {
                       JointStatement j;
                       j.tenoned = "mast";
                       j.mortised = "keel";
                       p.joints.push_back(j);
                   },
                   "joint 'mast'",
                   "no joint between"}));

// A round leg has no corners: it is as long as its wood reaches between floor and seat. For a leg
// of radius r that leans by t, a level cut reaches r tan t along the leg to either side of the
// middle.
TEST(Placing, ARoundLegThatSplaysIsAsLongAsItsWood) {
    const ResolvedPiece stool = testing::resolved(testing::sample("pilot_stool"));
    int round = 0;
    for (const ResolvedPart& part : stool.parts) {
        if (part.section != SectionForm::Round) {
            continue;
        }
        Extent reach{1e9, -1e9};
        const BodySolids wood = part.wood();
        for (const ConvexSolid& piece : wood.pieces()) {
            const Extent along = piece.extentAlong({1, 0, 0});
            reach = {std::min(reach.min, along.min), std::max(reach.max, along.max)};
        }
        constexpr double kFacets = 0.05;  // millimetres, facets within the round
        EXPECT_NEAR(reach.min, 0.0, kFacets) << part.name;
        EXPECT_NEAR(reach.max, part.shoulderLength.value.mm(), kFacets) << part.name;
        if (part.role == Role::Post) {
            const double lean = std::acos(std::abs(part.frame.x.z));
            const double middle =
                16.625 / std::cos(lean);  // from the floor to the seat's underside
            EXPECT_NEAR(part.shoulderLength.value.inches(),
                        middle + part.width.value.inches() * std::tan(lean),
                        1e-6)
                << part.name;
        }
        ++round;
    }
    EXPECT_EQ(round, 5);
}

}  // namespace
}  // namespace shoulderline
