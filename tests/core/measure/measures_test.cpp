#include "core/measure/measures.h"

#include <string>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

MeasureTable tableOf(const std::vector<NamedExpression>& measures) {
    return MeasureTable::evaluateAll(measures, Unit::Inch);
}

double inches(const MeasureTable& table, std::string_view name) {
    const auto length = table.lookup(name).and_then([](const Value& v) { return v.asLength(); });
    return length ? length->inches() : -12345.0;
}

const Error& errorAt(const MeasureTable& table, std::size_t index) {
    return table.results().at(index).value.error();
}

std::string numbered(int i) {
    std::string name = "m";
    return name += std::to_string(i);
}

TEST(MeasureTable, MeasuresMayStandInAnyOrder) {
    const auto table = tableOf({{"rail level", "seat height - cushion"},
                                {"seat height", "17 in"},
                                {"cushion", "seat height / 8.5"}});

    EXPECT_DOUBLE_EQ(inches(table, "rail level"), 15);
    ASSERT_EQ(table.results().size(), 3U);
    EXPECT_EQ(table.results()[0].name, "rail level");
    EXPECT_EQ(table.results()[0].dependsOn, (std::vector<std::string>{"cushion", "seat height"}));
}

TEST(MeasureTable, BareMeasureIsALengthAloneAndACountAsAFactor) {
    const auto table = tableOf({{"slats", "5"}, {"run", "slats * 2 in"}});

    EXPECT_DOUBLE_EQ(inches(table, "slats"), 5);
    EXPECT_EQ(table.lookup("slats")->asCount(), 5);
    EXPECT_DOUBLE_EQ(inches(table, "run"), 10);
}

TEST(MeasureTable, CycleNamesItsMembersInOrderFromEachOfThem) {
    const auto table = tableOf({{"seat height", "arm height - 9 in"},
                                {"arm height", "seat height + 9 in"},
                                {"depth", "20 in"}});

    EXPECT_EQ(errorAt(table, 0).code, ErrorCode::Cycle);
    EXPECT_EQ(errorAt(table, 0).message,
              "'seat height' hangs on 'arm height', which hangs on 'seat height'");
    EXPECT_EQ(errorAt(table, 1).message,
              "'arm height' hangs on 'seat height', which hangs on 'arm height'");
    EXPECT_EQ(errorAt(table, 1).where, "arm height");
    EXPECT_DOUBLE_EQ(inches(table, "depth"), 20);
}

TEST(MeasureTable, MeasureThatMentionsItselfIsACycleOfOne) {
    const auto table = tableOf({{"a", "a + 1"}});

    EXPECT_EQ(errorAt(table, 0).message, "'a' hangs on itself");
}

TEST(MeasureTable, MeasureBesideACycleIsNotNamedAsAMember) {
    const auto table = tableOf({{"x", "a"}, {"a", "b"}, {"b", "c"}, {"c", "b"}});

    EXPECT_EQ(errorAt(table, 2).message, "'b' hangs on 'c', which hangs on 'b'");
    EXPECT_EQ(errorAt(table, 1).message, "this hangs on 'b', which could not be worked out");
    EXPECT_EQ(errorAt(table, 0).message, "this hangs on 'a', which could not be worked out");
}

TEST(MeasureTable, OverlappingCyclesFailEveryMember) {
    const auto table = tableOf({{"a", "b"}, {"b", "a + c"}, {"c", "a"}, {"d", "1 in"}});

    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_EQ(errorAt(table, i).code, ErrorCode::Cycle) << i;
    }
    EXPECT_EQ(errorAt(table, 2).message,
              "'c' hangs on 'a', which hangs on 'b', which hangs on 'c'");
    EXPECT_TRUE(table.results()[3].value.has_value());
}

TEST(MeasureTable, FailureIsNamedByWhatHangsOnIt) {
    const auto table = tableOf({{"seat", "2 in *"}, {"arm", "1 in + seat"}});

    EXPECT_EQ(errorAt(table, 0).position, 6U);
    EXPECT_EQ(errorAt(table, 0).where, "seat");
    EXPECT_EQ(errorAt(table, 1).message, "this hangs on 'seat', which could not be worked out");
    EXPECT_EQ(errorAt(table, 1).where, "arm");
    EXPECT_EQ(errorAt(table, 1).position, 7U);
}

TEST(MeasureTable, UnknownNameIsAnErrorAtItsPlace) {
    const auto table = tableOf({{"arm", "1 in + seat"}});

    EXPECT_EQ(errorAt(table, 0).code, ErrorCode::UnknownName);
    EXPECT_EQ(errorAt(table, 0).message, "there is no measure 'seat'");
    EXPECT_EQ(table.lookup("nothing").error().code, ErrorCode::UnknownName);
}

TEST(MeasureTable, SecondMeasureOfANameIsRefusedAndTheFirstStands) {
    const auto table = tableOf({{"seat height", "17 in"}, {"seat  height", "18 in"}});

    EXPECT_EQ(errorAt(table, 1).code, ErrorCode::BadText);
    EXPECT_DOUBLE_EQ(inches(table, "seat height"), 17);
}

TEST(MeasureTable, TextThatIsNoNameIsRefused) {
    EXPECT_EQ(errorAt(tableOf({{"half-lap", "1 in"}}), 0).code, ErrorCode::BadText);
    EXPECT_EQ(errorAt(tableOf({{"mm", "1 in"}}), 0).code, ErrorCode::BadText);
}

TEST(MeasureTable, BareMeasureOverAKilometreIsOutOfRange) {
    EXPECT_EQ(errorAt(tableOf({{"a", "999999999"}}), 0).code, ErrorCode::OutOfRange);
}

TEST(MeasureTable, LookupFunctionServesLaterExpressions) {
    const auto table = tableOf({{"seat height", "17 in"}});
    const auto expression = Expression::parse("seat height / 2", Unit::Inch);

    EXPECT_EQ(expression->evaluateLength(table.lookupFunction()), Length::inches(8.5));
}

TEST(MeasureTable, LongChainsAndLongRingsAreWorkedOut) {
    std::vector<NamedExpression> chain;
    for (int i = 0; i < 10000; ++i) {
        chain.push_back({numbered(i), numbered(i + 1)});
    }
    chain.push_back({"m10000", "1 in"});

    EXPECT_DOUBLE_EQ(inches(tableOf(chain), "m0"), 1);

    chain.back().text = "m0";
    const auto ring = tableOf(chain);
    EXPECT_EQ(errorAt(ring, 5000).code, ErrorCode::Cycle);
    EXPECT_LT(errorAt(ring, 5000).message.size(), 400U);
}

}  // namespace
}  // namespace shoulderline
