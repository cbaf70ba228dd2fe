#include "core/storage/piece_text.h"

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::textOf;

class EverySample : public ::testing::TestWithParam<const char*> {};
TEST_P(EverySample, WritesTheSameBytesAfterReadingWhatWasWritten) {
    const Piece piece = testing::sample(GetParam());
    const std::string text = writePiece(piece);

    const Piece again = readPiece(text).value();

    EXPECT_EQ(again, piece);
    EXPECT_EQ(writePiece(again), text);
}
INSTANTIATE_TEST_SUITE_P(Storage, EverySample, ::testing::ValuesIn(testing::kSamples));

TEST(PieceText, UnknownMembersAreKeptAndWrittenBack) {
    const std::string text = R"({"format": "shoulderline piece", "version": 1, "name": "stool",
        "finish": {"kind": "oil", "coats": 3},
        "measures": [{"name": "height", "expression": "450 mm", "tape": [1, 2.5, null]}]})";

    const std::string written = writePiece(readPiece(text).value());

    EXPECT_NE(written.find("\"coats\": 3"), std::string::npos);
    EXPECT_NE(written.find("\"tape\""), std::string::npos);
    EXPECT_EQ(writePiece(readPiece(written).value()), written);
}

TEST(PieceText, UnknownMembersWithinRelationsAndSizesAreKeptToo) {
    const std::string text = R"({"format": "shoulderline piece", "version": 1,
        "parts": [{"name": "rail", "relation": {"kind": "spans", "from": "a", "to": "b", "level": {"face": "top", "at": "9 in", "drift": 1}, "slack": "1/8"},
                   "spacing": {"after": "a", "before": "b", "count": "2", "fan": true}}],
        "joints": [{"tenoned": "rail", "mortised": "a", "sizes": {"tenon length": {"state": "stated", "expression": "1 in", "by": "gauge"}}}]})";

    const std::string written = writePiece(readPiece(text).value());

    for (const char* kept :
         {"\"drift\": 1", "\"slack\": \"1/8\"", "\"fan\": true", "\"by\": \"gauge\""}) {
        EXPECT_NE(written.find(kept), std::string::npos) << kept;
    }
    EXPECT_EQ(writePiece(readPiece(written).value()), written);
}

TEST(PieceText, ShapesAndCutsAreKeptWithWhatIsUnknownInThem) {
    const std::string text = R"({"format": "shoulderline piece", "version": 1,
        "parts": [{"name": "rail", "relation": {"kind": "free", "length": "9 in"},
                   "shape": {"back edge": [{"from": "middle", "along": "1 in", "in": "1/2 in", "run": "arc", "bow": "-1/4 in", "gauge": 2}, {"from": "far", "run": "curve"}]},
                   "cuts": [{"kind": "bore", "face": "far end", "along_from": "far", "along": "1 in", "width": "3/8 in", "bit": "brad point"}]}]})";
    const Piece piece = readPiece(text).value();
    const Part& part = piece.parts.front();

    ASSERT_EQ(part.shape.at(Face::BackEdge).size(), 2U);
    EXPECT_EQ(part.shape.at(Face::BackEdge)[0].from, Datum::Middle);
    EXPECT_EQ(part.shape.at(Face::BackEdge)[0].run, Run::Arc);
    EXPECT_EQ(part.cuts.at(0).face, Face::FarEnd);
    EXPECT_EQ(part.cuts.at(0).alongFrom, Datum::Far);
    const std::string written = writePiece(piece);
    EXPECT_NE(written.find("\"gauge\": 2"), std::string::npos);
    EXPECT_NE(written.find("brad point"), std::string::npos);
    EXPECT_EQ(readPiece(written).value(), piece);
}

TEST(PieceText, WhatAWindowMayLeaveEmptyIsReadAgain) {
    Piece piece = testing::sample("table");
    piece.measures[0].expression.clear();
    piece.stocks[0].thickness.clear();
    std::get<Stands>(piece.parts[0].relation).x = {};
    std::get<Spans>(piece.parts[2].relation).from.clear();

    EXPECT_EQ(readPiece(writePiece(piece)).value(), piece);
}

TEST(PieceText, ARailThatGivesWayIsReadBack) {
    const std::string text = R"({"format": "shoulderline piece", "version": 1,
        "parts": [{"name": "rail", "relation": {"kind": "spans", "from": "a", "to": "b", "gives_way": {"to": "stretcher", "towards": "top"}}}]})";
    const Piece piece = readPiece(text).value();

    EXPECT_EQ(std::get<Spans>(piece.parts.front().relation).givesWay,
              (GivesWay{"stretcher", Side::Top}));
    EXPECT_EQ(readPiece(writePiece(piece)).value(), piece);
}

TEST(PieceText, LoadsTestsAirAndGlueAreReadBackAsStated) {
    Piece piece = testing::sample("bench");
    piece.use.loads = {{"leaning sailor", "back rail", Side::Back, "450", "30 in", true, "", ""}};
    piece.use.tests = {{"front rail", "post", "310", "two broken on the vice", ""}};
    piece.use.climate = {{"7", "", ""}, {"", "18", "65"}};
    piece.use.adhesive = "PU";

    EXPECT_EQ(readPiece(writePiece(piece)).value(), piece);
}

TEST(PieceText, UnknownMembersOfLoadsAndAirAreKeptToo) {
    const std::string text = R"({"format": "shoulderline piece", "version": 1,
        "loads": [{"name": "lean", "towards": "back", "newtons": "450", "seen": "on deck"}],
        "climate": {"dry": {"moisture": "6", "month": "February"}}})";

    const std::string written = writePiece(readPiece(text).value());

    EXPECT_NE(written.find("\"seen\": \"on deck\""), std::string::npos);
    EXPECT_NE(written.find("\"month\": \"February\""), std::string::npos);
    EXPECT_EQ(writePiece(readPiece(written).value()), written);
}

TEST(PieceText, ANewerVersionIsRefusedWithAClearWord) {
    const Result<Piece> piece = readPiece(R"({"format": "shoulderline piece", "version": 2})");

    ASSERT_FALSE(piece);
    EXPECT_EQ(piece.error().code, ErrorCode::NewerFile);
    EXPECT_EQ(piece.error().where, "/version");
}

// What is wrong with a file, and the place that the message names.
struct BadFile {
    const char* what;
    const char* text;
    const char* where;
    const char* says;
};
void PrintTo(const BadFile& file, std::ostream* os) {
    *os << file.what;
}
class BadPiece : public ::testing::TestWithParam<BadFile> {};
TEST_P(BadPiece, IsRefusedAtItsPlaceInOneSentence) {
    const Result<Piece> piece = readPiece(GetParam().text);

    ASSERT_FALSE(piece) << GetParam().what;
    EXPECT_EQ(piece.error().code, ErrorCode::BadFile);
    EXPECT_EQ(piece.error().where, GetParam().where) << piece.error().message;
    EXPECT_NE(piece.error().message.find(GetParam().says), std::string::npos)
        << piece.error().message;
    EXPECT_EQ(piece.error().message.back(), '.');
}
INSTANTIATE_TEST_SUITE_P(
    Storage,
    BadPiece,
    ::testing::Values(
        BadFile{"empty", "", "line 1, column 1", "ends in the middle"},
        BadFile{"not JSON", "hello", "line 1, column 1", "not JSON text"},
        BadFile{"cut short",
                "{\"format\": \"shoulderline piece\",\n \"vers",
                "line 2, column 6",
                "ends in the middle"},
        BadFile{"a list", "[]", "", "An object is expected"},
        BadFile{"another format",
                R"({"format": "letter", "version": 1})",
                "/format",
                "shoulderline piece"},
        BadFile{"no version",
                R"({"format": "shoulderline piece"})",
                "/version",
                "A version is expected"},
        BadFile{"version as text",
                R"({"format": "shoulderline piece", "version": "1"})",
                "/version",
                "whole number"},
        BadFile{
            "a load towards nowhere",
            R"({"format": "shoulderline piece", "version": 1, "loads": [{"name": "a", "towards": "up"}]})",
            "/loads/0/towards",
            "is not one of"},
        BadFile{
            "a test of nothing",
            R"({"format": "shoulderline piece", "version": 1, "strength_tests": [{"tenoned": "a"}]})",
            "/strength_tests/0/mortised",
            "A text is expected"},
        BadFile{"parts as object",
                R"({"format": "shoulderline piece", "version": 1, "parts": {}})",
                "/parts",
                "A list is expected"},
        BadFile{"part as number",
                R"({"format": "shoulderline piece", "version": 1, "parts": [3]})",
                "/parts/0",
                "An object is expected"},
        BadFile{
            "width as number",
            R"({"format": "shoulderline piece", "version": 1, "parts": [{"name": "rail", "width": 3}]})",
            "/parts/0/width",
            "A text is expected, and a number was found"},
        BadFile{
            "unknown role",
            R"({"format": "shoulderline piece", "version": 1, "parts": [{"name": "keel", "role": "keel"}]})",
            "/parts/0/role",
            "'keel' is not one of: post, rail"},
        BadFile{"no relation",
                R"({"format": "shoulderline piece", "version": 1, "parts": [{"name": "rail"}]})",
                "/parts/0/relation",
                "A relation is expected"},
        BadFile{
            "a side that is none",
            R"({"format": "shoulderline piece", "version": 1, "parts": [{"name": "a", "relation": {"kind": "free"}, "shape": {"top": []}}]})",
            "/parts/0/shape/top",
            "back edge",
        },
        BadFile{
            "unknown relation",
            R"({"format": "shoulderline piece", "version": 1, "parts": [{"name": "rail", "relation": {"kind": "floats"}}]})",
            "/parts/0/relation/kind",
            "stands, spans, caps, fills, free"},
        BadFile{
            "duplicate name",
            R"({"format": "shoulderline piece", "version": 1, "style": {"kind": "fractions", "kind": "millimetres"}})",
            "/style",
            "stands twice"},
        BadFile{
            "denominator",
            R"({"format": "shoulderline piece", "version": 1, "style": {"kind": "fractions", "denominator": 12}})",
            "/style/denominator",
            "8, 16, 32 or 64"},
        BadFile{
            "size by rule",
            R"({"format": "shoulderline piece", "version": 1, "joints": [{"tenoned": "a", "mortised": "b", "sizes": {"tenon length": {"state": "by rule", "expression": "1 in"}}}]})",
            "/joints/0/sizes/tenon length",
            "by rule"},
        BadFile{"not UTF-8",
                "{\"format\": \"shoulderline piece\", \"name\": \"\xff\"}",
                "line 1, column 43",
                "UTF-8"}));

TEST(BadPieceText, DeepNestingIsRefusedBeforeAnythingIsBuilt) {
    const std::string deep = std::string(100000, '[') + std::string(100000, ']');

    const Result<Piece> piece = readPiece(deep);

    ASSERT_FALSE(piece);
    EXPECT_NE(piece.error().message.find("nested"), std::string::npos);
}

// They are kept once, where they stood, so that they go with what they stood in.
TEST(PieceText, UnknownMembersOfABowAndASwingBelongToThemAlone) {
    Piece piece = testing::sample("armchair");
    Part& slat = testing::statedPart(piece, "back slat");
    slat.bend->extras = R"({"later":1})";
    piece.assemblies[1].swing->extras = R"({"later":[1,2]})";
    piece.assemblies[1].swing->stations[0].extras = R"({"later":{"a":true}})";

    Piece back = readPiece(writePiece(piece)).value();

    EXPECT_EQ(back, piece);
    back.assemblies[1].swing.reset();
    EXPECT_FALSE(readPiece(writePiece(back)).value().assemblies[1].swing);
}

TEST(BadPieceText, EveryCutOfASampleIsRefusedAndNothingCrashes) {
    const std::string text = textOf("samples/side_chair.shoulder");
    const std::size_t whole = text.find_last_of('}') + 1;
    for (std::size_t length = 0; length < whole; length += 7) {
        EXPECT_FALSE(readPiece(text.substr(0, length))) << "cut at " << length;
    }
}

TEST(BadPieceText, ATextOfManyMegabytesInOneFieldIsRefused) {
    const std::string text = R"({"format": "shoulderline piece", "version": 1, "name": ")" +
                             std::string(5'000'000, 'x') + "\"}";

    const Result<Piece> piece = readPiece(text);

    ASSERT_FALSE(piece);
    EXPECT_EQ(piece.error().where, "/name");
}

}  // namespace
}  // namespace shoulderline
