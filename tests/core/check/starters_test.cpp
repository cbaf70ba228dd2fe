#include <filesystem>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "core/piece/edit.h"
#include "tests/support/pieces.h"

// What new pieces begin from: sound as they are, and at either limit of each of their main
// measures.
namespace shoulderline {
namespace {

std::vector<std::string> starters() {
    std::vector<std::string> names;
    const std::filesystem::path folder =
        std::filesystem::path(SHOULDERLINE_SOURCE_DIR) / "resources/starters";
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        names.push_back(entry.path().stem().string());
    }
    return names;
}

void expectSound(const Piece& piece, const std::string& when) {
    for (const Finding& finding : testing::findings(piece)) {
        EXPECT_EQ(finding.severity, Severity::Note) << when << ": " << finding.message;
    }
}

class Starter : public ::testing::TestWithParam<std::string> {
  protected:
    Piece piece = testing::pieceAt("resources/starters/" + GetParam());
};
INSTANTIATE_TEST_SUITE_P(All, Starter, ::testing::ValuesIn(starters()));

TEST_P(Starter, IsSoundAndAsksSomeMeasures) {
    int asked = 0;
    for (const Measure& measure : piece.measures) {
        asked += measure.least.empty() && measure.most.empty() ? 0 : 1;
    }
    EXPECT_GE(asked, 3);
    EXPECT_LE(asked, 12) << "main measures, not all";
    expectSound(piece, "as it is");
}

TEST_P(Starter, IsSoundAtEveryLimitOfItsMeasures) {
    for (const Measure& measure : piece.measures) {
        for (const Statement& limit : {measure.least, measure.most}) {
            if (!limit.empty()) {
                expectSound(shoulderline::apply(piece, SetMeasure{measure.name, limit}).value(),
                            measure.name + " " + limit);
            }
        }
    }
}

// The eight that a maker may begin from.
TEST(Starters, AreThere) {
    EXPECT_GE(starters().size(), 8u);
}

}  // namespace
}  // namespace shoulderline
