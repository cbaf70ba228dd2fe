#include "core/resolve/outline_points.h"

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;
using testing::statedPart;

Piece taperedRail(const char* along, const char* in) {
    Piece piece = testing::twoPostsAndARail();
    statedPart(piece, "rail").shape = {{Face::BackEdge,
                                        {{Datum::Start, along, in, Run::Line, "", {}},
                                         {Datum::Far, "2 in", "1 in", Run::Line, "", {}}}}};
    return piece;
}

std::vector<OutlinePoint> pointsOf(const Piece& piece) {
    const ResolvedPiece made = resolved(piece);
    return outlinePointsOf(piece, made, partNamed(made, "rail"));
}

std::size_t indexOf(const Piece& piece, const std::string& name) {
    return static_cast<std::size_t>(
        std::find_if(piece.parts.begin(),
                     piece.parts.end(),
                     [&](const Part& part) { return part.name == name; }) -
        piece.parts.begin());
}

// The rail is 20 in long and 3 in wide.
TEST(OutlinePoints, LieWhereTheyAreStatedFromEitherEnd) {
    const std::vector<OutlinePoint> points = pointsOf(taperedRail("5 in", "1/2 in"));

    ASSERT_EQ(points.size(), 2U);
    EXPECT_NEAR(points[0].at.x, 5 * Length::kMmPerInch, 1e-9);
    EXPECT_NEAR(points[0].at.y, 2.5 * Length::kMmPerInch, 1e-9);
    EXPECT_NEAR(points[1].at.x, 18 * Length::kMmPerInch, 1e-9);
    EXPECT_NEAR(points[1].at.y, 2 * Length::kMmPerInch, 1e-9);
}

// Moving a point moves it as far as it is told to, whatever it is stated from.
TEST(OutlinePoints, AMovedPointLiesAsFarOffAsItWasMoved) {
    Piece piece = taperedRail("5 in", "1/2 in");
    const std::size_t rail = indexOf(piece, "rail");
    for (const std::size_t point : {0U, 1U}) {
        const Vec3 before = pointsOf(piece)[point].at;
        Piece moved = piece;
        moved.parts[rail] = withPointMoved(
            piece, rail, Face::BackEdge, point, Length::inches(0.5), Length::inches(-0.25));
        const Vec3 after = pointsOf(moved)[point].at;

        EXPECT_NEAR(after.x - before.x, 0.5 * Length::kMmPerInch, 1e-9);
        EXPECT_NEAR(after.y - before.y, 0.25 * Length::kMmPerInch, 1e-9);
    }
}

TEST(OutlinePoints, APlainLengthIsStatedAnewAndAnExpressionGetsAnOffset) {
    Piece piece = taperedRail("5 in", "drop / 2");
    piece.measures.push_back({"drop", "1 in", "", "", "", "", ""});
    const std::size_t rail = indexOf(piece, "rail");
    const auto moveIn = [&](double inches) {
        piece.parts[rail] = withPointMoved(
            piece, rail, Face::BackEdge, 0, Length::inches(inches), Length::inches(inches));
        return piece.parts[rail].shape.at(Face::BackEdge)[0];
    };

    EXPECT_EQ(moveIn(0.25).in, "drop / 2 + 1/4 in");
    EXPECT_EQ(moveIn(0.25).in, "drop / 2 + 1/2 in") << "one offset, not two";
    EXPECT_EQ(piece.parts[rail].shape.at(Face::BackEdge)[0].along, "5 1/2 in");
    EXPECT_EQ(moveIn(-0.5).in, "drop / 2") << "back where the measure has it";
}

}  // namespace
}  // namespace shoulderline
