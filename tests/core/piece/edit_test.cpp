#include "core/piece/edit.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "core/storage/piece_text.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::sample;
using testing::statedMeasure;
using testing::statedPart;

TEST(SetMeasure, ChangesTheExpressionAndNothingElse) {
    const Piece before = sample("armchair");
    Piece after = apply(before, SetMeasure{"rail thickness", "1 1/8 in"}).value();

    EXPECT_EQ(statedMeasure(after, "rail thickness").expression, "1 1/8 in");
    statedMeasure(after, "rail thickness").expression = "7/8 in";
    EXPECT_EQ(after, before);
}

TEST(SetMeasure, WhatIsNoExpressionIsRefusedAtTheCharacter) {
    const Result<Piece> after = apply(sample("armchair"), SetMeasure{"rail thickness", "7/8 in +"});

    ASSERT_FALSE(after);
    EXPECT_EQ(after.error().position, 8u);
}

TEST(SetMeasure, AddsAMeasureWithAProperNameOnly) {
    EXPECT_TRUE(apply(sample("bench"), SetMeasure{"plinth height", "2 in"}));
    EXPECT_FALSE(apply(sample("bench"), SetMeasure{"2 plinths", "2 in"}));
    EXPECT_FALSE(apply(sample("bench"), SetMeasure{"in", "2 in"}));
}

TEST(RenameMeasure, GoesThroughEveryExpressionThatMentionsIt) {
    const Piece before = sample("armchair");
    const Piece after =
        apply(before, RenameMeasure{"overall width", "width over the arms"}).value();

    const ResolvedPiece was = testing::resolved(before);
    const ResolvedPiece is = testing::resolved(after);
    EXPECT_TRUE(is.troubles.empty());
    EXPECT_EQ(was.parts, is.parts);
    EXPECT_EQ(writePiece(after).find("overall width"), std::string::npos);
}

TEST(RenameMeasure, LeavesALongerNameThatContainsItAlone) {
    Piece piece;
    piece.measures = {{"rail", "1 in", "", "", "", "", ""},
                      {"rail depth", "3 in", "", "", "", "", ""},
                      {"sum", "rail + rail depth", "", "", "", "", ""}};

    const Piece after = apply(piece, RenameMeasure{"rail", "stick"}).value();

    EXPECT_EQ(after.measures[2].expression, "stick + rail depth");
    EXPECT_EQ(after.measures[1].name, "rail depth");
}

TEST(RenameMeasure, ToANameThatIsTakenIsRefused) {
    EXPECT_FALSE(apply(sample("armchair"), RenameMeasure{"seat height", "arm height"}));
}

TEST(SetPart, RenamingAPartTakesReferencesAlong) {
    const Piece before = sample("armchair");
    Part part = before.parts[0];
    ASSERT_EQ(part.name, "front post");
    part.name = "fore post";

    Piece after = apply(before, SetPart{"front post", part}).value();

    EXPECT_TRUE(testing::resolved(after).troubles.empty());
    EXPECT_EQ(std::get<Spans>(statedPart(after, "front rail").relation).from, "fore post, left");
}

TEST(SetPart, RenamingWhatSwingsLeansOrIsBoredTakesTheSwingAlong) {
    const Piece before = sample("armchair");
    const auto swingOf = [](const Piece& piece) { return *piece.assemblies[1].swing; };
    Part bar = *std::find_if(before.parts.begin(), before.parts.end(), [&](const Part& part) {
        return part.name == swingOf(before).rest;
    });
    bar.name = "leaning bar";

    const Piece after = apply(before, SetPart{"rest bar", bar}).value();

    EXPECT_EQ(swingOf(after).rest, "leaning bar");
    EXPECT_EQ(testing::resolved(after).swings, testing::resolved(before).swings);
}

TEST(SetAssembly, ReplacesTheOneOfThatNameAlone) {
    const Piece before = sample("armchair");
    Assembly back = before.assemblies[1];
    back.swing->at = "resting";

    const Piece after = apply(before, SetAssembly{back}).value();

    EXPECT_EQ(after.assemblies[1], back);
    EXPECT_EQ(after.assemblies[0], before.assemblies[0]);
    EXPECT_EQ(nameOf(SetAssembly{back}), "leaning back");
    back.name = "keel";
    EXPECT_FALSE(apply(before, SetAssembly{back}));
}

TEST(RemovePart, TakesWhatIsStatedOfItsJointsAlong) {
    const Piece after = apply(sample("armchair"), RemovePart{"front rail"}).value();

    EXPECT_EQ(findJointStatement(after, "front rail", "front post"), nullptr);
    EXPECT_FALSE(apply(sample("armchair"), RemovePart{"keel"}));
}

TEST(SetJointSize, AnEmptyExpressionGoesBackToTheRule) {
    const Piece before = testing::pieceAt("tests/pieces/upright_chair");
    const Piece stated =
        apply(before,
              SetJointSize{
                  "side rail", "back post", SizeName::TenonLength, {SizeState::Stated, "1 in"}})
            .value();
    ASSERT_NE(findJointStatement(stated, "side rail", "back post"), nullptr);

    const Piece back =
        apply(stated, SetJointSize{"side rail", "back post", SizeName::TenonLength, {}}).value();

    EXPECT_EQ(back, before);
}

TEST(SetStyle, ChangesNoSize) {
    const Piece before = sample("armchair");
    const Piece after = apply(before, SetStyle{LengthStyle::millimetres(0)}).value();

    EXPECT_EQ(testing::resolved(before).parts, testing::resolved(after).parts);
}

TEST(SplitReference, OnlyAHandAtTheEndIsTakenForOne) {
    EXPECT_EQ(splitReference("side rail, upper, left").name, "side rail, upper");
    EXPECT_EQ(splitReference("side rail, upper, left").hand, Hand::Left);
    EXPECT_EQ(splitReference("side rail, upper").name, "side rail, upper");
    EXPECT_EQ(splitReference("side rail, upper").hand, Hand::None);
}

TEST(SetLoad, AddsRenamesAndReplacesByName) {
    StatedLoad load{"lean", "crest rail", Side::Back, "450", "", false, "", ""};
    Piece piece = apply(sample("armchair"), SetLoad{"lean", load}).value();
    load.name = "hard lean";
    load.newtons = "600";

    piece = apply(piece, SetLoad{"lean", load}).value();

    ASSERT_EQ(piece.use.loads.size(), 1u);
    EXPECT_EQ(piece.use.loads.front(), load);
    EXPECT_FALSE(apply(piece, SetLoad{"other", load})) << "the name is taken";
    EXPECT_FALSE(
        apply(piece, SetLoad{"lean", {"lean", "", Side::Back, "450 +", "", false, "", ""}}));
    EXPECT_TRUE(apply(piece, RemoveLoad{"hard lean"}).value().use.loads.empty());
    EXPECT_FALSE(apply(piece, RemoveLoad{"lean"}));
}

TEST(SetStrengthTest, StandsForItsTwoPartsAndGoesWithThem) {
    Piece piece =
        apply(sample("armchair"), SetStrengthTest{{"front rail", "front post", "310", "", ""}})
            .value();
    Part renamed = statedPart(piece, "front post");
    renamed.name = "fore post";

    EXPECT_EQ(apply(piece, SetPart{"front post", renamed}).value().use.tests.front().mortised,
              "fore post");
    EXPECT_TRUE(apply(piece, RemovePart{"front rail"}).value().use.tests.empty());
    EXPECT_TRUE(apply(piece, SetStrengthTest{{"front rail", "front post", "", "", ""}})
                    .value()
                    .use.tests.empty());
}

TEST(SetClimate, MeasuresMayBeUsedInWhatIsStatedOfUse) {
    Piece piece = apply(sample("armchair"), SetMeasure{"winter air", "30"}).value();
    piece = apply(piece, SetClimate{{{"", "20", "winter air"}, {}}}).value();
    piece = apply(piece, RenameMeasure{"winter air", "January air"}).value();

    EXPECT_EQ(piece.use.climate.dry.humidity, "January air");
    EXPECT_FALSE(apply(piece, SetClimate{{{"6 6", "", ""}, {}}}));
    EXPECT_EQ(apply(piece, SetAdhesive{"PU"}).value().use.adhesive, "PU");
}

}  // namespace
}  // namespace shoulderline
