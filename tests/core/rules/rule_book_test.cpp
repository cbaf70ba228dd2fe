#include "core/rules/rule_book.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "core/rules/reason.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::ruleBook;
using testing::textOf;

TEST(RuleBook, EveryRuleHasASourceAndASentence) {
    for (std::size_t i = 0; i < kRuleCount; ++i) {
        const Rule& rule = ruleBook()[static_cast<RuleId>(i)];
        EXPECT_EQ(rule.id, ruleIdText(static_cast<RuleId>(i)));
        EXPECT_FALSE(rule.source.empty()) << rule.id;
        EXPECT_FALSE(rule.sentence.empty()) << rule.id;
        EXPECT_FALSE(rule.subject.empty()) << rule.id;
    }
}

TEST(RuleBook, DefaultLiesWithinItsRange) {
    for (std::size_t i = 0; i < kRuleCount; ++i) {
        const Rule& rule = ruleBook()[static_cast<RuleId>(i)];
        EXPECT_LE(rule.low.value_or(rule.value), rule.value) << rule.id;
        EXPECT_GE(rule.high.value_or(rule.value), rule.value) << rule.id;
    }
}

TEST(RuleBook, IdsReadBackAsTheyAreWritten) {
    for (std::size_t i = 0; i < kRuleCount; ++i) {
        EXPECT_EQ(ruleIdFromText(ruleIdText(static_cast<RuleId>(i))), static_cast<RuleId>(i));
    }
    EXPECT_FALSE(ruleIdFromText("no.such.rule"));
}

TEST(RuleBook, HouseRuleTakesThePlaceOfTheFigureAndWidensTheRange) {
    const RuleBook book = ruleBook().with(RuleId::TenonThicknessShare, 0.6);

    EXPECT_DOUBLE_EQ(book[RuleId::TenonThicknessShare].value, 0.6);
    EXPECT_DOUBLE_EQ(*book[RuleId::TenonThicknessShare].high, 0.6);
    EXPECT_TRUE(book[RuleId::TenonThicknessShare].isHouseRule);
    EXPECT_FALSE(ruleBook()[RuleId::TenonThicknessShare].isHouseRule);
}

TEST(RuleBook, MissingRuleIsNamed) {
    std::string text = textOf("resources/rules/rule_book.json");
    text.replace(text.find("\"shoulder.least\""), 16, "\"shoulder.leest\"");

    const Result<RuleBook> book = RuleBook::read(text);

    ASSERT_FALSE(book);
    EXPECT_NE(book.error().message.find("shoulder.leest"), std::string::npos);
}

TEST(RuleBook, TextThatIsNoRuleBookIsRefused) {
    EXPECT_FALSE(RuleBook::read(""));
    EXPECT_FALSE(RuleBook::read("[]"));
    EXPECT_FALSE(RuleBook::read("{\"rules\": 3}"));
    EXPECT_FALSE(RuleBook::read("{\"rules\": [3]}"));
}

TEST(ReasonText, PutsLengthsIntoTheSentenceInTheMakersStyle) {
    const Reason reason{
        RuleId::TenonThicknessShare, Length::inches(1.125), {}, Length::inches(0.375)};

    EXPECT_EQ(reasonText(reason, ruleBook(), LengthStyle::fractions(32)),
              "one third of the 1 1/8 thick part is 3/8");
    EXPECT_EQ(reasonText(reason, ruleBook(), LengthStyle::millimetres(1)),
              "one third of the 28.6 thick part is 9.5");
}

TEST(Workshop, RacksAscend) {
    EXPECT_TRUE(
        std::is_sorted(testing::workshop().inchRack.begin(), testing::workshop().inchRack.end()));
    EXPECT_TRUE(std::is_sorted(testing::workshop().millimetreRack.begin(),
                               testing::workshop().millimetreRack.end()));
    EXPECT_FALSE(Workshop::read("{}"));
    EXPECT_FALSE(Workshop::read("{\"rack_in\": [0]}"));
}

}  // namespace
}  // namespace shoulderline
