#include "core/drawing/narrow_mouths.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/sheets.h"
#include "core/geometry/convex_hull.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

// The back post of the raked chair has mouths 5/16 wide, two of them turned on its back side.
namespace shoulderline {
namespace {

using testing::kMetrics;
using testing::partNamed;
using testing::resolved;
using testing::sample;

int strokesOf(LineRole role, const Sheet& sheet) {
    return static_cast<int>(std::count_if(sheet.ops.begin(), sheet.ops.end(), [&](const Op& op) {
        const auto* stroke = std::get_if<Stroke>(&op);
        return stroke != nullptr && stroke->role == role;
    }));
}

Sheet drawnAt(double scale) {
    const Piece piece = sample("raked_chair");
    const ResolvedPiece made = resolved(piece);
    for (const PartKind& kind : partKinds(made)) {
        if (kind.name == "back post") {
            return partDrawing(piece, made, kind, scale, false, kMetrics);
        }
    }
    return {};
}

TEST(NarrowMouths, AreOutlinedInNarrowLineWhereWideOnesWouldFillThem) {
    EXPECT_GE(strokesOf(LineRole::Narrow, drawnAt(0.1)), 4 * 5) << "4 sides of 5 mouths";
    EXPECT_EQ(strokesOf(LineRole::Narrow, drawnAt(0.25)), 0) << "5/16 in at 1 : 4 is 2 mm";
}

TEST(NarrowMouths, HaveNoCentreLineAlongTheirInside) {
    const ResolvedPiece made = resolved(sample("raked_chair"));
    const ResolvedPart& post = partNamed(made, "back post, right");
    const PartView view = partView(post, Face::BackSide);
    const auto mouths = narrowMouths(post, view, 0.1, LineGroup::Bold);
    ASSERT_EQ(mouths.size(), 3u);
    EXPECT_TRUE(narrowMouths(post, view, 0.25, LineGroup::Bold).empty());

    for (const std::vector<Vec2>& mouth : mouths) {
        // Its longest side's way, through its middle.
        Vec2 middle;
        Vec2 along;
        for (std::size_t i = 0; i < mouth.size(); ++i) {
            const Vec2 side = mouth[(i + 1) % mouth.size()] - mouth[i];
            middle = middle + mouth[i] * (1.0 / static_cast<double>(mouth.size()));
            along = norm(side) > norm(along) ? side : along;
        }
        const std::vector<Op> lines = centreLineOutside(mouths, middle - along, middle + along);
        EXPECT_GE(lines.size(), 2u);
        for (const Op& op : lines) {
            const auto& stroke = std::get<Stroke>(op);
            EXPECT_FALSE(hullContains(mouth, (stroke.points[0] + stroke.points[1]) * 0.5, -0.01));
        }
        const Vec2 across{-along.y, along.x};
        EXPECT_EQ(centreLineOutside(mouths, middle - across, middle + across).size(), 1u)
            << "what only crosses it is drawn through";
    }
}

}  // namespace
}  // namespace shoulderline
