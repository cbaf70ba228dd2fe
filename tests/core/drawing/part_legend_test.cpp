#include "core/drawing/part_legend.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/sheets.h"
#include "core/drawing/trade_marks.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;

// The sheets of all samples, upright and lying: each mark is explained where it stands, and nowhere
// else.
TEST(Legend, FollowsFromWhatIsDrawn) {
    const std::vector<std::pair<std::string, std::string>> marks{
        {kFaceSideGroup, "face side: mark from here"},
        {kFaceEdgeGroup, "face edge: and from here"},
        {kThroughGroup, "mortise right through"},
        {kBlindGroup, "blind mortise"},
        {kGrainGroup, "the grain"}};
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece made = testing::resolved(piece);
        for (const PartKind& kind : partKinds(made)) {
            for (const Vec2 paper : {Vec2{210, 297}, Vec2{297, 210}}) {
                for (const Sheet& sheet :
                     partSheets(piece, made, kind, {paper, 0.0, "", 0, 0}, kMetrics)) {
                    const std::vector<std::string> words = testing::wordsOn(sheet);
                    for (const auto& [group, text] : marks) {
                        const bool isDrawn = std::any_of(
                            sheet.ops.begin(), sheet.ops.end(), [&, g = group](const Op& op) {
                                const auto* begin = std::get_if<BeginGroup>(&op);
                                return begin != nullptr && begin->name == g;
                            });
                        const bool isTold =
                            std::find(words.begin(), words.end(), text) != words.end();
                        EXPECT_EQ(isTold, isDrawn) << name << ", " << sheet.title << ": " << text;
                    }
                }
            }
        }
    }
}

}  // namespace
}  // namespace shoulderline
