#include "core/drawing/rod_labels.h"

#include <algorithm>
#include <random>

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

TEST(LabelRows, CrowdedFiguresStepAsideInRows) {
    const auto rows = labelRows({{0, 20, 0}, {10, 20, 0}, {40, 20, 0}}, 3, 4);

    EXPECT_EQ(rows[0], 0);
    EXPECT_EQ(rows[1], 1);
    EXPECT_EQ(rows[2], 0);
}

TEST(LabelRows, ThoseOfLowerRankChooseFirst) {
    const auto rows = labelRows({{0, 20, 2}, {5, 20, 1}}, 1, 4);

    EXPECT_FALSE(rows[0]);
    EXPECT_EQ(rows[1], 0);
}

TEST(LabelRows, NoneOverlapsAnother) {
    std::mt19937 random(7);
    for (int round = 0; round < 200; ++round) {
        std::vector<LabelSpan> labels;
        for (int i = 0; i < 30; ++i) {
            labels.push_back({static_cast<double>(random() % 400),
                              10.0 + static_cast<double>(random() % 40),
                              static_cast<int>(random() % 3)});
        }
        const auto rows = labelRows(labels, 3, 5);
        for (std::size_t i = 0; i < labels.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                if (rows[i] && rows[i] == rows[j]) {
                    EXPECT_GE(std::abs(labels[i].at - labels[j].at),
                              (labels[i].size + labels[j].size) / 2 + 5);
                }
            }
        }
    }
}

TEST(SpreadLabels, StayAtTheirLinesWhereThereIsRoom) {
    EXPECT_EQ(spreadLabels({10, 40, 90}, 15, 0, 100), (std::vector<double>{10, 40, 90}));
}

TEST(SpreadLabels, TwoOfTheSamePlacePartEvenly) {
    EXPECT_EQ(spreadLabels({50, 50}, 10, 0, 100), (std::vector<double>{45, 55}));
}

TEST(SpreadLabels, KeepApartInOrderAndInside) {
    std::mt19937 random(11);
    for (int round = 0; round < 300; ++round) {
        std::vector<double> lines;
        for (int i = 0; i < 18; ++i) {
            lines.push_back(static_cast<double>(random() % 300));
        }
        std::sort(lines.begin(), lines.end());
        const std::vector<double> places = spreadLabels(lines, 14, 0, 300);
        ASSERT_EQ(places.size(), lines.size());
        for (std::size_t i = 0; i < places.size(); ++i) {
            EXPECT_GE(places[i], -1e-9);
            EXPECT_LE(places[i], 300 + 1e-9);
            if (i > 0) {
                EXPECT_GE(places[i] - places[i - 1], 14 - 1e-9);
            }
        }
    }
}

}  // namespace
}  // namespace shoulderline
