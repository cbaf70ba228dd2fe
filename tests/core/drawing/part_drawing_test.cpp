#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/sheets.h"
#include "core/measure/length_text.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::dimensionsOf;
using testing::overlapsOn;
using testing::wordsOn;

using testing::kMetrics;

// Every part kind of every sample.
struct Drawn {
    std::string name;
    const ResolvedPiece* resolved = nullptr;
    const ResolvedPart* part = nullptr;
    Sheet sheet;
};

class DrawingsOfSample : public ::testing::TestWithParam<const char*> {
  protected:
    DrawingsOfSample()
        : piece_(testing::sample(GetParam())),
          resolved_(testing::resolved(piece_)),
          kinds_(partKinds(resolved_)) {}

    [[nodiscard]] std::vector<Drawn> drawn(double scale) const {
        std::vector<Drawn> all;
        for (const PartKind& kind : kinds_) {
            all.push_back({kind.name,
                           &resolved_,
                           &resolved_.parts[kind.parts.front()],
                           partDrawing(piece_, resolved_, kind, scale, scale == 1.0, kMetrics)});
        }
        return all;
    }

    Piece piece_;
    ResolvedPiece resolved_;
    std::vector<PartKind> kinds_;
};

TEST_P(DrawingsOfSample, NothingOverlapsAtAnyScale) {
    for (const double scale : {1.0, 0.5, 0.25, 0.2, 0.125}) {
        for (const Drawn& d : drawn(scale)) {
            EXPECT_EQ(overlapsOn(d.sheet, kMetrics), std::vector<std::string>{})
                << d.name << " at " << scale;
        }
    }
}

TEST_P(DrawingsOfSample, NothingOverlapsOnSheetsOfAnyPaper) {
    for (const Vec2 paper : {Vec2{297, 210}, Vec2{279.4, 215.9}, Vec2{420, 297}, Vec2{841, 594}}) {
        int number = 0;
        for (const PartKind& kind : kinds_) {
            for (const Sheet& sheet :
                 partSheets(piece_,
                            resolved_,
                            kind,
                            {paper, 0.0, "2026-11-24", ++number, static_cast<int>(kinds_.size())},
                            kMetrics)) {
                EXPECT_EQ(overlapsOn(sheet, kMetrics), std::vector<std::string>{})
                    << sheet.title << " on " << paper.x << " x " << paper.y;
            }
        }
    }
}

TEST_P(DrawingsOfSample, OverallSizesAreThereOnce) {
    for (const Drawn& d : drawn(0.25)) {
        const bool hasTenons = !d.part->tenons.empty();
        const auto length = dimensionsOf(d.sheet, hasTenons ? "shoulder length" : "length");
        const bool isRound = d.part->section == SectionForm::Round;
        const auto width = dimensionsOf(d.sheet, isRound ? "diameter" : "width");
        const auto thickness = dimensionsOf(d.sheet, isRound ? "diameter" : "thickness");
        ASSERT_EQ(length.size(), 1u) << d.name;
        ASSERT_EQ(width.size(), 1u) << d.name;
        ASSERT_EQ(thickness.size(), 1u) << d.name;
        // On the arris that is knifed first, the face side's with the face edge, from the wood
        // itself; where corners lie off one another by less than a rule shows, over these.
        double start = d.part->shoulderLength.value.mm();
        double far = 0.0;
        for (const Vec3& corner : d.part->wood().whole().vertices) {
            if (std::abs(corner.y) < 1e-6 && std::abs(corner.z) < 1e-6) {
                start = std::min(start, corner.x);
                far = std::max(far, corner.x);
            }
        }
        const bool isSlanted = hasTenons && !d.part->body.planes.empty() && far > start;
        EXPECT_NEAR(length[0].value,
                    isSlanted ? far - start : d.part->shoulderLength.value.mm(),
                    isSlanted ? 0.8 : 1e-6)
            << d.name;
        EXPECT_NEAR(width[0].value, d.part->width.value.mm(), 1e-6) << d.name;
        EXPECT_NEAR(thickness[0].value, d.part->thickness.value.mm(), 1e-6) << d.name;
        EXPECT_EQ(dimensionsOf(d.sheet, "length over all").size(), hasTenons ? 1u : 0u) << d.name;
    }
}

// Two shoulders alike out of square: along any line of the rail they are one length apart, the way
// between the posts over the cosine of its angle, though their outermost corners are further apart.
TEST(ShoulderLength, OfARailBetweenSkewShouldersIsThatOnItsFaceSide) {
    const Piece piece = testing::sample("raked_chair");
    const ResolvedPiece chair = testing::resolved(piece);
    for (const PartKind& kind : partKinds(chair)) {
        if (kind.name != "side rail") {
            continue;
        }
        const ResolvedPart& rail = chair.parts[kind.parts.front()];
        const double askew = std::acos(std::abs(rail.frame.x.y));
        const double turned = rail.thickness.value.mm() * std::tan(askew);
        const Sheet sheet = partDrawing(piece, chair, kind, 0.25, false, kMetrics);
        const std::vector<DimensionOp> told = testing::dimensionsOf(sheet, "shoulder length");
        ASSERT_EQ(told.size(), 1u);
        EXPECT_NEAR(told[0].value, rail.shoulderLength.value.mm() - turned, 1e-6);
        EXPECT_NEAR(told[0].value / 25.4, 13.25 / std::cos(askew), 1e-3);
    }
}

// The same feature twice: two dimensions of one kind between the same two points.
TEST_P(DrawingsOfSample, NothingIsDimensionedTwice) {
    for (const Drawn& d : drawn(0.25)) {
        std::vector<DimensionOp> all;
        for (const Op& op : d.sheet.ops) {
            if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
                all.push_back(*dimension);
            }
        }
        for (std::size_t i = 0; i < all.size(); ++i) {
            for (std::size_t k = i + 1; k < all.size(); ++k) {
                const bool isSame =
                    norm(all[i].from - all[k].from) < 1e-6 && norm(all[i].to - all[k].to) < 1e-6;
                EXPECT_FALSE(isSame) << d.name << ": " << all[i].of << " and " << all[k].of;
            }
        }
    }
}

TEST_P(DrawingsOfSample, DimensionsAreAsLongAsTheySay) {
    for (const Drawn& d : drawn(1.0)) {
        for (const Op& op : d.sheet.ops) {
            if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
                EXPECT_NEAR(norm(dimension->lineTo - dimension->lineFrom), dimension->value, 1e-6)
                    << d.name << ": " << dimension->of;
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Samples,
                         DrawingsOfSample,
                         ::testing::ValuesIn(testing::kSamples),
                         [](const auto& sampled) { return std::string(sampled.param); });

TEST(PartSheet, SaysWhichAreMirrored) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    const std::vector<PartKind> kinds = partKinds(resolved);
    const auto post = std::find_if(
        kinds.begin(), kinds.end(), [](const PartKind& k) { return k.name == "front post"; });
    ASSERT_NE(post, kinds.end());

    const std::vector<std::string> words =
        wordsOn(partSheets(piece, resolved, *post, {{420, 297}, 0.0, "", 0, 0}, kMetrics).front());

    EXPECT_EQ(std::count(words.begin(), words.end(), "make 2: 1 right as drawn, 1 left mirrored"),
              1);
}

TEST(PartKinds, EachPartIsInOneKind) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("armchair"));
    std::vector<std::size_t> all;
    for (const PartKind& kind : partKinds(resolved)) {
        EXPECT_EQ(kind.parts.size(), static_cast<std::size_t>(kind.quantity));
        all.insert(all.end(), kind.parts.begin(), kind.parts.end());
    }
    std::sort(all.begin(), all.end());

    ASSERT_EQ(all.size(), resolved.parts.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        EXPECT_EQ(all[i], i);
    }
}

TEST(PartKinds, ASlatIsItsOwnMirrorImageAndAPostIsNot) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("armchair"));
    for (const PartKind& kind : partKinds(resolved)) {
        if (kind.name == "side slat") {
            EXPECT_EQ(kind.quantity, 12);
            EXPECT_FALSE(kind.hasMirrorTwins);
        }
        if (kind.name == "front post") {
            EXPECT_EQ(kind.quantity, 2);
            EXPECT_TRUE(kind.hasMirrorTwins);
        }
    }
}

TEST(PieceSheet, NothingOverlapsOnAnySample) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        for (const Vec2 paper : {Vec2{297, 210}, Vec2{420, 297}, Vec2{841, 594}}) {
            const Sheet sheet = pieceSheet(
                piece, testing::resolved(piece), {paper, 0.0, "2026-11-24", 0, 0}, kMetrics);
            EXPECT_EQ(overlapsOn(sheet, kMetrics), std::vector<std::string>{})
                << name << " on " << paper.x;
        }
    }
}

// Each number of the list of parts stands once more, in a circle among the views.
TEST(PieceSheet, NumbersEveryKindOfPartInTheViews) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const Vec2 paper : {Vec2{297, 210}, Vec2{420, 297}}) {
            const Sheet sheet =
                pieceSheet(piece, resolved, {paper, 0.0, "2026-11-24", 0, 0}, kMetrics);
            std::vector<std::string> ringed;
            for (std::size_t i = 1; i < sheet.ops.size(); ++i) {
                const auto* text = std::get_if<TextOp>(&sheet.ops[i]);
                if (text != nullptr && std::holds_alternative<ArcOp>(sheet.ops[i - 1])) {
                    ringed.push_back(text->text);
                }
            }
            std::vector<std::string> expected;
            for (std::size_t k = 1; k <= partKinds(resolved).size(); ++k) {
                expected.push_back(std::to_string(k));
            }
            EXPECT_EQ(ringed, expected) << name << " on " << paper.x;
        }
    }
}

TEST(JointDrawing, NothingOverlapsOnAnyJointOfAnySample) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
            EXPECT_EQ(overlapsOn(jointDrawing(piece, resolved, i, kMetrics), kMetrics),
                      std::vector<std::string>{})
                << resolved.joints[i].name;
        }
    }
}

TEST(JointDrawing, TellsTheSizesOfBothMembersOnce) {
    const Piece piece = testing::sample("armchair");
    const ResolvedPiece resolved = testing::resolved(piece);
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        if (!joint.hasTenon()) {
            continue;
        }
        const Sheet sheet = jointDrawing(piece, resolved, i, kMetrics);
        const auto one = [&](const std::string& of, Length value) {
            const auto all = dimensionsOf(sheet, of);
            ASSERT_EQ(all.size(), 1u) << joint.name << ": " << of;
            EXPECT_NEAR(all[0].value, value.mm(), 1e-6) << joint.name << ": " << of;
        };
        one("tenon length", joint.tenon.length.value);
        one("tenon width", joint.tenon.width.value);
        one("tenon thickness", joint.tenon.thickness.value);
        one("mortise length", joint.mortise.length.value);
        one("mortise width", joint.mortise.width.value);
        one("from face", joint.mortise.fromFace.value);
    }
}

}  // namespace
}  // namespace shoulderline
