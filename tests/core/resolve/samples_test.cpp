#include <set>

#include <gtest/gtest.h>

#include "core/resolve/resolve.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

// Every kind of joint, and everything that a joint may have besides, is in a sample.
TEST(Samples, HaveEveryKindOfJointAndEveryFeature) {
    std::set<JointKind> kinds;
    std::set<JointFeature> features;
    std::vector<std::string> names(std::begin(testing::kSamples), std::end(testing::kSamples));
    names.emplace_back("pilot_stool");
    for (const std::string& name : names) {
        for (const ResolvedJoint& joint : testing::resolved(testing::sample(name)).joints) {
            kinds.insert(joint.kind);
            features.insert(joint.features.begin(), joint.features.end());
        }
    }
    for (const JointKind kind : allWords<JointKind>()) {
        EXPECT_TRUE(kinds.contains(kind)) << wordFor(kind);
    }
    for (const JointFeature feature : allWords<JointFeature>()) {
        EXPECT_TRUE(features.contains(feature)) << wordFor(feature);
    }
}

// In a piece in millimetres no size by rule is left on the inch.
TEST(Samples, SizesByRuleAreOnTheGridOfTheirUnit) {
    for (const char* name : {"table", "chart_cabinet", "bed_frame"}) {
        for (const ResolvedJoint& joint : testing::resolved(testing::sample(name)).joints) {
            if (joint.kind != JointKind::Blind && joint.kind != JointKind::Loose &&
                joint.kind != JointKind::Housed) {
                continue;
            }
            for (const Size* size : {&joint.tenon.length, &joint.mortise.depth}) {
                if (size->state == SizeState::ByRule) {
                    const double steps = size->value.mm() * 4;  // quarters, of a shortened one
                    EXPECT_NEAR(steps, std::round(steps), 1e-6) << name << ": " << joint.name;
                }
            }
        }
    }
}

// All members of a frame are gauged from one side of it: a lap or a bridle set out from opposite
// faces comes out of line by what the thicknesses differ.
TEST(Samples, TheFramesOfTheCabinetHaveTheirFaceSidesOnOneSide) {
    int seen = 0;
    const ResolvedPiece made = testing::resolved(testing::sample("chart_cabinet"));
    for (const ResolvedJoint& joint : made.joints) {
        const ResolvedPart& one = made.parts[joint.tenoned];
        const ResolvedPart& other = made.parts[joint.mortised];
        const auto isOfFrame = [](const ResolvedPart& part) {
            return part.of.find("frame") != std::string::npos || part.of == "back stile";
        };
        if (joint.kind != JointKind::Rests && isOfFrame(one) && isOfFrame(other)) {
            ++seen;
            EXPECT_NEAR(dot(one.frame.z, other.frame.z), 1.0, 1e-9) << joint.name;
        }
    }
    EXPECT_GE(seen, 14);
}

// A chair worked out after a change by what it was before is the chair worked out afresh: its
// stretched parts have their own wood, the others that which they had.
TEST(Samples, WhatTheyWereBeforeMakesNoDifferenceToWhatTheyAre) {
    for (const char* name : testing::kSamples) {
        Piece piece = testing::sample(name);
        const ResolvedPiece before = testing::resolved(piece);
        for (Part& part : piece.parts) {
            if (auto* stands = std::get_if<Stands>(&part.relation)) {
                stands->height = "(" + stands->height + ") + 1 in";
            }
        }

        const ResolvedPiece after =
            resolve(piece, testing::ruleBook(), testing::workshop(), &before);

        const ResolvedPiece afresh = testing::resolved(piece);
        ASSERT_EQ(after.parts, afresh.parts) << name;
        for (std::size_t i = 0; i < after.parts.size(); ++i) {
            EXPECT_EQ(after.parts[i].solids.whole().vertices,
                      afresh.parts[i].solids.whole().vertices)
                << name << ": " << after.parts[i].name;
        }
    }
}

}  // namespace
}  // namespace shoulderline
