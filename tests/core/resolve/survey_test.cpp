#include "core/resolve/survey.h"

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

Measure measured(const char* name, const char* expression, const char* found) {
    Measure measure;
    measure.name = name;
    measure.expression = expression;
    measure.found = found;
    return measure;
}

// An original's height in two parts, each taken with a tape: 16 3/4 and 24 1/8 make 40 7/8, and the
// whole was found to be 41.
Piece surveyed() {
    Piece piece;
    piece.measures = {measured("seat height", "17 in", "16 3/4 in"),
                      measured("back above the seat", "24 1/8 in", "24 1/8 in"),
                      measured("height", "seat height + back above the seat", "41 in"),
                      measured("lean", "12 deg", "14 deg"),
                      measured("slats", "5", ""),
                      measured("half height", "height / 2", "20 1/2 in")};
    return piece;
}

double inches(const std::optional<Value>& value) {
    return value ? value->asLength().value().inches() : 999.0;
}

TEST(Survey, TellsFoundBesideChosen) {
    const std::vector<SurveyRow> rows = surveyOf(surveyed());

    ASSERT_EQ(rows.size(), 5u) << "one for each that was found";
    EXPECT_NEAR(inches(rows[0].apart), -0.25, 1e-9);
    EXPECT_FALSE(rows[1].apart);
    EXPECT_NEAR(rows[3].apart->asAngle().value().degrees(), 2.0, 1e-9);
}

TEST(Survey, TellsByHowMuchASumDoesNotClose) {
    const std::vector<SurveyRow> rows = surveyOf(surveyed());

    EXPECT_FALSE(rows[0].follows) << "it follows from nothing";
    EXPECT_NEAR(inches(rows[2].follows), 40.875, 1e-9);
    EXPECT_NEAR(inches(rows[2].open), 0.125, 1e-9);
    EXPECT_FALSE(rows[4].open) << "half of what was found";
}

TEST(Survey, IsToldInWords) {
    const std::string text = surveyText(surveyed());

    EXPECT_NE(text.find("less"), std::string::npos);
    EXPECT_NE(text.find("height do not close"), std::string::npos) << text;
    EXPECT_TRUE(surveyText(testing::sample("bench")).empty());
}

TEST(Survey, AFigureThatCannotBeReadIsLeftOut) {
    Piece piece = surveyed();
    piece.measures[0].found = "16 3/4 in +";

    EXPECT_EQ(surveyOf(piece).size(), 4u);
}

}  // namespace
}  // namespace shoulderline
