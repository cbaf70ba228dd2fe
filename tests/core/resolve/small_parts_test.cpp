#include "core/resolve/small_parts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/resolve/frames.h"
#include "core/storage/piece_text.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::jointNamed;
using testing::partNamed;
using testing::resolved;
using testing::sample;
using testing::twoPostsAndARail;

Piece joinedBy(JointKind kind, std::set<JointFeature> features) {
    Piece piece = twoPostsAndARail();
    JointStatement statement;
    statement.tenoned = "rail";
    statement.mortised = "post";
    statement.kind = kind;
    statement.features = std::move(features);
    piece.joints.push_back(std::move(statement));
    return piece;
}

std::vector<SmallPart> smallParts(const Piece& piece) {
    return smallPartsOf(piece, resolved(piece));
}

TEST(SmallParts, APlainMortiseAndTenonTakesNone) {
    EXPECT_TRUE(smallParts(twoPostsAndARail()).empty());
}

// Both mortises are bored 1/16 in deeper than the tenon goes in (common practice): worked from the
// hollows in the wood, not from the tenon's size.
TEST(SmallParts, ALooseTenonFillsBothMortisesButForTheRoomAtTheirBottoms) {
    const Piece piece = joinedBy(JointKind::Loose, {});
    const ResolvedPiece made = resolved(piece);
    const std::vector<SmallPart> parts = smallPartsOf(piece, made);

    ASSERT_EQ(parts.size(), 1u);
    EXPECT_EQ(parts[0].kind, SmallPartKind::LooseTenon);
    EXPECT_EQ(parts[0].quantity, 2);
    EXPECT_EQ(parts[0].stock, partNamed(made, "rail").stock);
    const MortiseSolid& own = partNamed(made, "rail").mortises.front();
    const MortiseSolid& inPost = partNamed(made, "post, left").mortises.front();
    const double hollows = own.box.volume() + inPost.box.volume();
    const double room = 2 * Length::inches(1.0 / 16).mm();
    EXPECT_NEAR(parts[0].length.mm() * parts[0].width.mm() * parts[0].thickness.mm(),
                hollows - room * parts[0].width.mm() * parts[0].thickness.mm(),
                1e-6);
}

TEST(SmallParts, TwinLooseTenonsAreTwoAtEachEnd) {
    const std::vector<SmallPart> parts =
        smallParts(joinedBy(JointKind::Loose, {JointFeature::Twin}));

    ASSERT_EQ(parts.size(), 1u);
    EXPECT_EQ(parts[0].quantity, 4);
}

TEST(SmallParts, TheMakerMayStateTheirStock) {
    Piece piece = joinedBy(JointKind::Loose, {});
    piece.joints.front().stock = "scrap of ash";

    EXPECT_EQ(smallParts(piece).front().stock, "scrap of ash");
}

TEST(SmallParts, StatedStockIsKeptInTheFile) {
    Piece piece = joinedBy(JointKind::Loose, {});
    piece.joints.front().stock = "scrap of ash";
    piece.stocks.front().isHeatTreated = true;

    const Result<Piece> back = readPiece(writePiece(piece));

    ASSERT_TRUE(back) << back.error().message;
    EXPECT_EQ(*back, piece);
}

// The wood of the pins fills their holes in the posts: a cylinder each.
TEST(SmallParts, PinsFillTheirHoles) {
    const Piece piece = joinedBy(JointKind::Blind, {JointFeature::Pinned});
    const ResolvedPiece made = resolved(piece);
    const std::vector<SmallPart> parts = smallPartsOf(piece, made);

    ASSERT_EQ(parts.size(), 1u);
    EXPECT_EQ(parts[0].kind, SmallPartKind::Pin);
    int holes = 0;
    for (const ResolvedCut& cut : partNamed(made, "post, left").cuts) {
        ++holes;
        const Vec3 size = cut.box.size();
        const double round = std::numbers::pi / 4 * size.x * size.y * size.z;
        EXPECT_NEAR(
            std::numbers::pi / 4 * parts[0].width.mm() * parts[0].width.mm() * parts[0].length.mm(),
            round,
            1e-6);
    }
    EXPECT_EQ(parts[0].quantity, 2 * holes);
}

// A flared mortise is a prism of a trapezium: what it has over the plain one is two wedges.
TEST(SmallParts, OutsideWedgesFillTheFlare) {
    const Piece piece = joinedBy(JointKind::Through, {JointFeature::WedgedOutside});
    const ResolvedPiece made = resolved(piece);
    const std::vector<SmallPart> parts = smallPartsOf(piece, made);

    ASSERT_EQ(parts.size(), 1u);
    EXPECT_EQ(parts[0].quantity, 4);
    const MortiseSolid& mortise = partNamed(made, "post, left").mortises.front();
    const ResolvedJoint& joint = made.joints.front();
    const double plain = joint.mortise.depth.value.mm() * joint.mortise.length.value.mm() *
                         joint.mortise.width.value.mm();
    const double wedge = parts[0].length.mm() * parts[0].width.mm() * parts[0].thickness.mm() / 2;
    EXPECT_NEAR(mortise.solid().volume() - plain, 2 * wedge, 1e-6);
}

TEST(SmallParts, KerfsTakeTwoWedgesToATenon) {
    const std::vector<SmallPart> parts =
        smallParts(joinedBy(JointKind::Through, {JointFeature::WedgedInKerfs}));

    ASSERT_EQ(parts.size(), 1u);
    EXPECT_EQ(parts[0].quantity, 4);
}

// In the slot and outside of it the wedge is a trapezium through and through; it is listed with the
// width of its thick end, so that it can be sawn from what the list says.
TEST(SmallParts, ATuskWedgeBearsOnThePostAndOnTheEndOfItsSlot) {
    const Piece piece = joinedBy(JointKind::Through, {JointFeature::Tusked});
    const ResolvedPiece made = resolved(piece);
    const std::vector<SmallPart> parts = smallPartsOf(piece, made);
    const std::optional<ConvexSolid> wedge = tuskWedge(made, 0);

    ASSERT_EQ(parts.size(), 1u);
    ASSERT_TRUE(wedge);
    const SmallPart& part = parts[0];
    EXPECT_EQ(part.quantity, 2);
    const double taper = testing::ruleBook()[RuleId::TuskTaper].value;
    EXPECT_NEAR(
        wedge->volume(),
        part.length.mm() * part.thickness.mm() * (part.width.mm() - taper * part.length.mm() / 2),
        1e-6);
    EXPECT_NEAR(wedge->bounds().size().x, part.width.mm(), 1e-9);
    // The post is 2 in deep behind the shoulder: the wedge's straight side lies on its far face.
    EXPECT_NEAR(wedge->bounds().min.x, 2 * Length::kMmPerInch, 1e-9);
    EXPECT_NEAR(wedge->bounds().size().z, part.length.mm(), 1e-9);
    EXPECT_NEAR(wedge->bounds().size().y, part.thickness.mm(), 1e-9);
}

TEST(SmallParts, ATuskWedgeMayBeStatedLonger) {
    Piece piece = joinedBy(JointKind::Through, {JointFeature::Tusked});
    piece.joints.front().sizes[SizeName::TuskLength] = {SizeState::Stated, "6 in"};

    EXPECT_NEAR(smallParts(piece).front().length.inches(), 6.0, 1e-9);
}

TEST(SmallParts, TheChartCabinetHasDowelsALooseTenonAndPlugs) {
    const std::vector<SmallPart> parts = smallParts(sample("chart_cabinet"));

    std::set<SmallPartKind> kinds;
    for (const SmallPart& part : parts) {
        kinds.insert(part.kind);
        EXPECT_GT(part.quantity, 0) << part.name();
    }
    EXPECT_EQ(kinds,
              (std::set{SmallPartKind::Dowel, SmallPartKind::LooseTenon, SmallPartKind::Plug}));
}

// In the shaped bracket a head's hole begins in the blank, whose wood there is sawn away: the plug
// is as long as the hole is in wood.
TEST(SmallParts, APlugIsAsLongAsItsHoleIsInWood) {
    const ResolvedPiece made = resolved(sample("armchair"));
    double deepest = 0.0;  // in wood, by many lines down each hole's wall and middle
    for (const ResolvedPart& part : made.parts) {
        for (const ResolvedCut& cut : part.cuts) {
            if (part.of != "back arm bracket" || cut.kind != CutKind::Bore || !cut.joint) {
                continue;
            }
            const ResolvedJoint& joint = made.joints[*cut.joint];
            const Size* plug = joint.size(SizeName::PlugDiameter);
            const int into = inwardOf(cut.face).axis;
            if (plug == nullptr ||
                !nearlyEqual(Length::mm(cut.box.size()[(into + 1) % 3]), plug->value)) {
                continue;
            }
            const BodySolids wood = part.wood();
            double least = 1e9;
            double most = -1e9;
            constexpr int kSteps = 24;
            for (int turn = 0; turn < kSteps; ++turn) {
                for (int step = 0; step <= 4000; ++step) {
                    Vec3 at = cut.box.centre();
                    at[into] = cut.box.min[into] + cut.box.size()[into] * step / 4000.0;
                    const double angle = 2 * M_PI * turn / kSteps;
                    const double radius = plug->value.mm() / 2 * 0.999;
                    at[(into + 1) % 3] += radius * std::cos(angle);
                    at[(into + 2) % 3] += radius * std::sin(angle);
                    const bool isWood = std::any_of(
                        wood.pieces().begin(), wood.pieces().end(), [&](const ConvexSolid& piece) {
                            return piece.contains(at);
                        });
                    least = isWood ? std::min(least, at[into]) : least;
                    most = isWood ? std::max(most, at[into]) : most;
                }
            }
            deepest = std::max(deepest, most - least);
        }
    }
    ASSERT_GT(deepest, 0.0);
    int plugs = 0;
    for (const SmallPart& small : smallParts(sample("armchair"))) {
        if (small.kind == SmallPartKind::Plug && small.of == "back arm bracket") {
            EXPECT_NEAR(small.length.mm(), deepest, 0.1);
            plugs += small.quantity;
        }
    }
    EXPECT_GT(plugs, 0);
}

// A horn is sawn off after glue-up: the blank is longer than the part by it.
TEST(Horns, TheBlankIsLongerByThem) {
    const ResolvedPiece piece = resolved(sample("luggage_stand"));
    const ResolvedPart& post = partNamed(piece, "front post, left");

    EXPECT_GT(post.startHorn + post.farHorn, Length());
    EXPECT_NEAR(
        post.blankLength().mm() - post.length().mm(), (post.startHorn + post.farHorn).mm(), 1e-9);
}

TEST(Horns, ABridleAndALapHaveOneToo) {
    for (const JointKind kind : {JointKind::Bridle, JointKind::Lap}) {
        Piece piece = joinedBy(kind, {JointFeature::Horn});
        Spans& spans = std::get<Spans>(piece.parts[1].relation);
        spans.level = Position{Side::Top, "24 in"};
        const ResolvedPiece made = resolved(piece);

        const Size* horn = made.joints.front().size(SizeName::Horn);
        ASSERT_NE(horn, nullptr) << wordFor(kind);
        EXPECT_NEAR(horn->value.inches(), 1.0, 1e-9);
        const ResolvedPart& post = partNamed(made, "post, left");
        EXPECT_NEAR((post.startHorn + post.farHorn).inches(), 1.0, 1e-9) << wordFor(kind);
    }
}

// Nine boards of 92 mm at a pitch of 84 lap by 8: the tongue. Volumes against Open CASCADE are with
// the samples.
TEST(Tongued, BoardsStandInTheNextAsFarAsTheyLap) {
    const ResolvedPiece piece = resolved(sample("bed_frame"));
    int tongues = 0;
    for (const ResolvedJoint& joint : piece.joints) {
        if (joint.kind != JointKind::Tongued) {
            continue;
        }
        ++tongues;
        EXPECT_NEAR(joint.size(SizeName::TongueLength)->value.mm(), 8.0, 1e-9);
        const Length room = joint.size(SizeName::Room)->value;
        EXPECT_NEAR(joint.size(SizeName::GrooveDepth)->value.mm(), 8.0 + room.mm(), 1e-9);
        EXPECT_EQ(joint.mortise.face, Face::FaceEdge);
        EXPECT_EQ(joint.mortise.reference, Face::BackEdge);
    }
    EXPECT_EQ(tongues, 8);
}

// What is left of both boards nowhere fills the same place: the wood of two neighbours together is
// what they would be edge to edge less the room about the tongue.
TEST(Tongued, TongueAndGrooveKeepClearOfOneAnother) {
    const ResolvedPiece piece = resolved(sample("bed_frame"));
    const ResolvedPart& second = partNamed(piece, "head board 2");
    const double length = second.shoulderLength.value.mm();
    double cut = 0.0;
    for (const ResolvedCut& one : second.cuts) {
        cut += one.box.volume();
    }
    const ResolvedJoint& joint = jointNamed(piece, "head board 2 into head board 3");
    const double depth = joint.size(SizeName::GrooveDepth)->value.mm();
    const double tongue = joint.size(SizeName::TongueThickness)->value.mm();
    const double groove = joint.size(SizeName::GrooveWidth)->value.mm();
    EXPECT_NEAR(cut, length * depth * (14.0 - tongue + groove), 1e-6);
}

TEST(Tongued, BoardsThatDoNotLapAreTold) {
    Piece piece = sample("bed_frame");
    testing::statedMeasure(piece, "board lap").expression = "0 mm";

    const ResolvedPiece made = resolved(piece);

    ASSERT_EQ(made.troubles.size(), 1u);
    EXPECT_NE(made.troubles[0].message.find("do not lap"), std::string::npos);
}

TEST(Tongued, AStatedTongueLengthIsTold) {
    Piece piece = sample("bed_frame");
    for (JointStatement& joint : piece.joints) {
        if (joint.kind == JointKind::Tongued) {
            joint.sizes[SizeName::TongueLength] = {SizeState::Stated, "5 mm"};
        }
    }

    EXPECT_FALSE(resolved(piece).troubles.empty());
}

}  // namespace
}  // namespace shoulderline
