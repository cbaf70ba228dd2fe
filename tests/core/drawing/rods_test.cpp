#include "core/drawing/rods.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

struct Rodded {
    Piece piece;
    ResolvedPiece resolved;
    Rod rod;
};

Rodded rodded(const Piece& piece, RodKind kind) {
    ResolvedPiece resolved = testing::resolved(piece);
    Rod rod = rodOf(piece, resolved, kind);
    return {piece, std::move(resolved), std::move(rod)};
}

std::size_t lineAt(const Rod& rod, Length at) {
    for (std::size_t i = 0; i < rod.lines.size(); ++i) {
        if (nearlyEqual(Length::mm(rod.lines[i].at), at)) {
            return i;
        }
    }
    ADD_FAILURE() << "no line at " << at.inches() << " in";
    return 0;
}

TEST(Rods, LinesAscendAndEachPlaceIsThereOnce) {
    for (const char* name : testing::kSamples) {
        for (const RodKind kind : {RodKind::Heights, RodKind::Widths, RodKind::Depths}) {
            const Rodded r = rodded(testing::sample(name), kind);
            for (std::size_t i = 0; i + 1 < r.rod.lines.size(); ++i) {
                EXPECT_GT(r.rod.lines[i + 1].at - r.rod.lines[i].at, kLengthTolerance.mm()) << name;
            }
        }
    }
}

TEST(Rods, SeatHeightIsOneLineForEveryRailThatHangsOnIt) {
    const Rodded r = rodded(testing::sample("armchair"), RodKind::Heights);
    const RodLine& line = r.rod.lines[lineAt(r.rod, Length::inches(16.75))];

    EXPECT_GE(line.parts.size(), 4u);
    EXPECT_NE(line.name.find("rail"), std::string::npos) << line.name;
}

TEST(Rods, AMeasureAloneIsSetByItsLine) {
    const Rodded r = rodded(testing::sample("armchair"), RodKind::Heights);

    const RodHandle handle =
        handleOf(r.piece, r.resolved, r.rod, lineAt(r.rod, Length::inches(16.75)), "17 1/4");

    EXPECT_EQ(handle.drives, "seat height");
    ASSERT_TRUE(handle.edit.has_value());
    const ResolvedPiece after = testing::resolved(*apply(r.piece, *handle.edit));
    EXPECT_NEAR(testing::partNamed(after, "front rail")
                    .frame.outerBounds(testing::partNamed(after, "front rail").bodyBox())
                    .max.z,
                17.25 * 25.4,
                1e-6);
}

TEST(Rods, ALineThatFollowsSaysFromWhat) {
    const Rodded r = rodded(testing::twoPostsAndARail(), RodKind::Heights);
    const Box rail = testing::partNamed(r.resolved, "rail")
                         .frame.outerBounds(testing::partNamed(r.resolved, "rail").bodyBox());
    std::size_t followers = 0;
    for (std::size_t i = 0; i < r.rod.lines.size(); ++i) {
        const RodHandle handle = handleOf(r.piece, r.resolved, r.rod, i, "1");
        EXPECT_NE(handle.edit.has_value(), !handle.follows.empty());
        followers += handle.edit ? 0u : 1u;
    }
    EXPECT_GE(followers, 1u);
    EXPECT_GT(rail.max.z, rail.min.z);
}

// Whatever line can be moved is where it was told to be once the edit is made.
TEST(Rods, EveryHandlePutsItsLineWhereItIsTold) {
    for (const char* name : testing::kSamples) {
        for (const RodKind kind : {RodKind::Heights, RodKind::Widths, RodKind::Depths}) {
            const Rodded r = rodded(testing::sample(name), kind);
            for (std::size_t i = 0; i < r.rod.lines.size(); ++i) {
                const double wanted = r.rod.lines[i].at + 3.175;
                const RodHandle handle =
                    handleOf(r.piece, r.resolved, r.rod, i, std::to_string(wanted) + " mm");
                EXPECT_EQ(takingValues(r.piece, r.resolved, r.rod)[i], handle.edit.has_value())
                    << name << ": " << r.rod.lines[i].name;
                if (!handle.edit) {
                    continue;
                }
                const Result<Piece> after = apply(r.piece, *handle.edit);
                ASSERT_TRUE(after) << after.error().message;
                const Rod rod = rodOf(*after, testing::resolved(*after), kind);
                const bool isThere =
                    std::any_of(rod.lines.begin(), rod.lines.end(), [&](const RodLine& line) {
                        return std::abs(line.at - wanted) < 0.001;
                    });
                EXPECT_TRUE(isThere)
                    << name << ": " << r.rod.lines[i].name << " by " << handle.drives;
            }
        }
    }
}

// Dragged by 1/8 in, each is 1/8 in on, whether a length, an expression or the mirror twin of what
// is stated makes its place.
TEST(Rods, EveryLineThatIsMovedLiesThatFarOn) {
    for (const char* name : testing::kSamples) {
        for (const RodKind kind : {RodKind::Heights, RodKind::Widths, RodKind::Depths}) {
            const Rodded r = rodded(testing::sample(name), kind);
            for (std::size_t i = 0; i < r.rod.lines.size(); ++i) {
                const RodHandle handle =
                    handleMovedBy(r.piece, r.resolved, r.rod, i, Length::inches(0.125));
                if (!handle.edit) {
                    continue;
                }
                const Result<Piece> after = apply(r.piece, *handle.edit);
                ASSERT_TRUE(after) << after.error().message;
                const Rod rod = rodOf(*after, testing::resolved(*after), kind);
                const double wanted = r.rod.lines[i].at + 3.175;
                EXPECT_TRUE(std::any_of(
                    rod.lines.begin(),
                    rod.lines.end(),
                    [&](const RodLine& line) { return std::abs(line.at - wanted) < 0.001; }))
                    << name << ": " << r.rod.lines[i].name << " by " << handle.drives;
            }
        }
    }
}

TEST(Rods, AMovedLineKeepsTheExpressionThatItFollows) {
    Piece piece = testing::twoPostsAndARail();
    piece.measures = {{"reach", "10 in", "", "", "", "", ""}};
    Stands& stands = std::get<Stands>(testing::statedPart(piece, "post").relation);
    stands.height = "reach * 3";
    const Rodded r = rodded(piece, RodKind::Heights);

    const RodHandle handle = handleMovedBy(
        r.piece, r.resolved, r.rod, lineAt(r.rod, Length::inches(30)), Length::inches(0.5));

    ASSERT_TRUE(handle.edit.has_value());
    const Part& moved = std::get<SetPart>(*handle.edit).part;
    EXPECT_EQ(std::get<Stands>(moved.relation).height, "reach * 3 + 1/2 in");
}

}  // namespace
}  // namespace shoulderline
