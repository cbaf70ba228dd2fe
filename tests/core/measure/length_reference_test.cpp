// Lengths against the table of exact conversions in tests/reference/lengths.json, whose header
// names its source.

#include <fstream>
#include <map>
#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "core/measure/length_text.h"

namespace shoulderline {
namespace {

nlohmann::json readTable(const char* name) {
    std::ifstream file(SHOULDERLINE_SOURCE_DIR "/tests/reference/lengths.json");
    return nlohmann::json::parse(file).at(name);
}

Unit unitNamed(const std::string& name) {
    return name == "mm" ? Unit::Millimetre : Unit::Inch;
}

std::string nameOf(ErrorCode code) {
    static const std::map<ErrorCode, std::string> kNames = {
        {ErrorCode::EmptyText, "EmptyText"},
        {ErrorCode::BadText, "BadText"},
        {ErrorCode::WrongDimension, "WrongDimension"},
        {ErrorCode::OutOfRange, "OutOfRange"}};
    return kNames.at(code);
}

class ReferenceRow : public testing::TestWithParam<nlohmann::json> {};

class ExactLength : public ReferenceRow {};
TEST_P(ExactLength, IsReadAsTheTableHasIt) {
    const auto& row = GetParam();

    const auto length = readLength(row.at("text").get<std::string>(), unitNamed(row.at("unit")));

    ASSERT_TRUE(length.has_value()) << row << ": " << length.error().message;
    EXPECT_NEAR(length->mm(), row.at("mm").get<double>(), row.at("tolerance_mm").get<double>())
        << row;
}
INSTANTIATE_TEST_SUITE_P(Lengths, ExactLength, testing::ValuesIn(readTable("lengths")));

class RefusedLength : public ReferenceRow {};
TEST_P(RefusedLength, IsRefusedWithItsCodeAndPlace) {
    const auto& row = GetParam();

    const auto length = readLength(row.at("text").get<std::string>(), unitNamed(row.at("unit")));

    ASSERT_FALSE(length.has_value()) << row << " was read as " << length->mm();
    EXPECT_EQ(nameOf(length.error().code), row.at("error").get<std::string>()) << row;
    EXPECT_FALSE(length.error().message.empty());
    EXPECT_EQ(length.error().position, row.value("position", length.error().position)) << row;
}
INSTANTIATE_TEST_SUITE_P(Lengths, RefusedLength, testing::ValuesIn(readTable("refused")));

}  // namespace
}  // namespace shoulderline
