#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/resolve/end_words.h"
#include "core/resolve/part_set_up.h"
#include "core/resolve/set_up.h"
#include "core/resolve/tool_text.h"
#include "tests/support/pieces.h"

// What the set-ups say, and in which order: they are read at the machine, one line after the other.
namespace shoulderline {
namespace {

using testing::resolved;
using testing::sample;

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

// Bores a pitch apart, from 1 in on.
std::vector<shoulderline::SetUp> borings(int count, double pitchInches) {
    std::vector<shoulderline::SetUp> setUps;
    for (int i = 0; i < count; ++i) {
        shoulderline::SetUp one;
        one.tool = RuleId::SetUpBit;
        one.work = "pin";
        one.cutter = Length::inches(0.25);
        one.depth = Length::inches(0.5);
        one.from = one.to = Length::inches(1.0 + pitchInches * i);
        setUps.push_back(one);
    }
    return setUps;
}

// 4 times 1/64 in too much is 1/16 in at the last one.
TEST(PitchOfASet, IsToldOnlyWhereItAddsUp) {
    const ResolvedPiece made = resolved(testing::twoPostsAndARail());
    const LengthStyle style = LengthStyle::fractions(32);
    const double pitch = 3.0 + 9.0 / 64.0;

    const std::string uneven = setUpTexts(borings(5, pitch), made, style).front();
    const std::string even = setUpTexts(borings(5, 3.125), made, style).front();
    const std::string many = setUpTexts(borings(12, pitch), made, style).front();

    EXPECT_FALSE(has(uneven, "apart")) << uneven;
    EXPECT_TRUE(has(uneven, "13 9/16 from the foot")) << uneven;
    EXPECT_TRUE(has(even, "at 1 from the foot and 4 more, 3 1/8 apart")) << even;
    EXPECT_TRUE(has(many, "and 11 more, evenly stepped off to the last, \u224835 9/16")) << many;
}

TEST(SetUpInAPost, IsToldFromItsFoot) {
    const Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece made = resolved(piece);
    const ResolvedPart& post = made.parts[made.joints.front().mortised];
    const ResolvedPart& rail = made.parts[made.joints.front().tenoned];
    EXPECT_EQ(endWord(post, End::Start), "foot");
    EXPECT_EQ(endWord(post, End::Far), "top");
    EXPECT_EQ(endWord(rail, End::Start), "left end");
    EXPECT_EQ(placesFromWord(rail, End::Far), "right shoulder") << "a tenon stands out there";
    EXPECT_TRUE(has(setUpTexts(setUpsOf(made, 0), made, piece.style).front(), " from the foot"));
}

// The left side of the cabinet has its foot at the right as it is drawn: only words that hold for
// both hands can be used at the bench.
TEST(EndsOfAPair, AreNamedAlikeForBothHands) {
    const ResolvedPiece cabinet = resolved(sample("chart_cabinet"));
    const ResolvedPiece bench = resolved(sample("bench"));
    for (const char* hand : {", left", ", right"}) {
        const ResolvedPart& side = testing::partNamed(cabinet, std::string("side") + hand);
        const ResolvedPart& rail = testing::partNamed(bench, std::string("end rail") + hand);
        const bool isFrontFirst = rail.frame.x.y > 0.0;

        EXPECT_EQ(endWord(side, side.frame.x.z > 0.0 ? End::Start : End::Far), "foot");
        EXPECT_EQ(endWord(side, side.frame.x.z > 0.0 ? End::Far : End::Start), "top");
        EXPECT_EQ(endWord(rail, isFrontFirst ? End::Start : End::Far), "front end");
        EXPECT_EQ(placesFromWord(rail, isFrontFirst ? End::Far : End::Start), "back shoulder");
    }
    for (std::size_t joint = 0; joint < cabinet.joints.size(); ++joint) {
        for (const shoulderline::SetUp& one : setUpsOf(cabinet, joint)) {
            const std::string text = setUpText(one, cabinet, LengthStyle::millimetres(1));
            EXPECT_FALSE(has(text, ", side: ") && has(text, "left end")) << text;
        }
    }
}

TEST(Tool, IsToldWithTheSizeOfWhatCuts) {
    const RuleBook& rules = testing::ruleBook();
    EXPECT_EQ(toolText(rules, RuleId::SetUpMortiser, "3/8"), "3/8 hollow chisel, in the mortiser");
    EXPECT_EQ(toolText(rules, RuleId::SetUpMortiser), "hollow chisel, in the mortiser");
    EXPECT_EQ(toolText(rules, RuleId::SetUpBit, "10"), "bit 10, in the drill press or brace");
    EXPECT_EQ(toolText(rules, RuleId::SetUpBit), "bit, in the drill press or brace");
    EXPECT_FALSE(namesCutter(rules, RuleId::SetUpSaw));
}

// A through mortise is cut from both faces so that neither breaks out (common practice).
TEST(SetUpOfAThroughMortise, HasNoDepth) {
    const Piece piece = sample("bench");
    const ResolvedPiece made = resolved(piece);
    int seen = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        if (made.joints[i].kind == JointKind::Through) {
            const std::string text = setUpTexts(setUpsOf(made, i), made, piece.style).front();
            EXPECT_TRUE(has(text, "through, from both faces")) << text;
            EXPECT_FALSE(has(text, " deep")) << text;
            ++seen;
        }
    }
    EXPECT_GT(seen, 0);
}

// The raked chair's back post is sawn to a bend: its side stretcher enters the foot as sawn, askew
// to it, and the side rail where the blank's face is left.
TEST(OrderOfABentPost, TellsWhichMortiseComesAfterTheShaping) {
    const Piece piece = sample("raked_chair");
    const ResolvedPiece made = resolved(piece);
    int after = 0;
    int before = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedJoint& joint = made.joints[i];
        if (made.parts[joint.mortised].of != "back post" || !joint.hasTenon()) {
            continue;
        }
        const std::string first = setUpTexts(setUpsOf(made, i), made, piece.style).front();
        if (made.parts[joint.tenoned].of == "side stretcher") {
            EXPECT_TRUE(has(first, "order, back post: this mortise once it is shaped")) << first;
            EXPECT_TRUE(has(first, "sawn straight there, from 0 to 9 from the foot")) << first;
            ++after;
        } else if (made.parts[joint.tenoned].of == "side rail") {
            EXPECT_TRUE(has(first, "order, back post: cut while the blank is square")) << first;
            ++before;
        }
    }
    EXPECT_EQ(after, 2);
    EXPECT_EQ(before, 2);
}

// The rule book has how long a part may be to stand on end at a machine.
TEST(LongPart, IsNotStoodOnEndAtAMachine) {
    const RuleBook& rules = testing::ruleBook();
    int lying = 0;
    int inEnds = 0;
    for (const char* name : {"bed_frame", "bench", "chart_cabinet", "side_chair"}) {
        const ResolvedPiece made = resolved(sample(name));
        for (std::size_t i = 0; i < made.joints.size(); ++i) {
            for (const shoulderline::SetUp& one : setUpsOf(made, i)) {
                const Length length = made.parts[one.part].length();
                if (one.tool == RuleId::SetUpSaw) {
                    EXPECT_LE(length, rules[RuleId::SetUpLongSaw].length()) << made.joints[i].name;
                }
                lying += one.tool == RuleId::SetUpLongSaw ? 1 : 0;
                inEnds += one.tool == RuleId::SetUpEndMortise ? 1 : 0;
                const bool isInEnd = one.work == "mortise" && one.along != Face::StartEnd;
                EXPECT_FALSE(isInEnd && one.tool == RuleId::SetUpMortiser &&
                             length > rules[RuleId::SetUpEndMortise].length())
                    << made.joints[i].name;
            }
        }
    }
    EXPECT_GT(lying, 0);
    EXPECT_EQ(inEnds, 2) << "the plinth rail's loose tenons";
}

// Common practice: a rabbet is worked from the edge that it lies along.
TEST(RabbetOfAPanel, IsWorkedFromTheNearerEdge) {
    const Piece piece = sample("chart_cabinet");
    const ResolvedPiece made = resolved(piece);
    int far = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        for (const shoulderline::SetUp& one : setUpsOf(made, i)) {
            if (one.tool != RuleId::SetUpRabbet) {
                continue;
            }
            EXPECT_EQ(one.fence, Length()) << one.work;
            const std::string text = setUpText(one, made, piece.style);
            EXPECT_TRUE(has(text, "rabbet in the face side, leaving the tongue")) << text;
            far += one.reference == Face::BackEdge ? 1 : 0;
        }
    }
    EXPECT_EQ(far, 2) << "one for each panel";
}

// A shelf in stopped housings runs past their ends at its front corners, which are notched.
TEST(ShelfInAStoppedHousing, HasItsCornersNotched) {
    const ResolvedPiece made = resolved(sample("chart_cabinet"));
    int seen = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const Size* stopped = made.joints[i].size(SizeName::StoppedBy);
        for (const shoulderline::SetUp& one : setUpsOf(made, i)) {
            if (has(one.work, "corner notched")) {
                ASSERT_NE(stopped, nullptr);
                EXPECT_EQ(one.fence, stopped->value);
                EXPECT_EQ(one.depth, made.joints[i].mortise.depth.value);
                ++seen;
            }
        }
    }
    EXPECT_EQ(seen, 4);
}

// The two rabbets that leave a board's tongue differ in their faces only.
TEST(RabbetsOfATongue, AreToldTogetherByTheirFaces) {
    const Piece piece = sample("bed_frame");
    const ResolvedPiece berth = resolved(piece);
    bool isTold = false;
    for (std::size_t joint = 0; joint < berth.joints.size(); ++joint) {
        for (const std::string& text : setUpTexts(setUpsOf(berth, joint), berth, piece.style)) {
            isTold = isTold || has(text,
                                   "rabbet, each board but the last, in the face side and back "
                                   "side, leaving the tongue, head board: ");
            EXPECT_FALSE(has(text, "tongue and rabbet")) << text;
        }
    }
    EXPECT_TRUE(isTold);
}

// A mortise as found is there already: no chisel is set for it, the saw is set for its tenon.
TEST(SetUpsOfAJoint, LeaveOutAMortiseThatIsCutAlready) {
    const Piece piece = sample("side_chair");
    const ResolvedPiece chair = resolved(piece);
    const auto joint =
        std::find_if(chair.joints.begin(), chair.joints.end(), [](const ResolvedJoint& one) {
            return one.mortise.width.state == SizeState::AsFound;
        });
    ASSERT_NE(joint, chair.joints.end());
    bool hasCheek = false;
    for (const shoulderline::SetUp& one :
         setUpsOf(chair, static_cast<std::size_t>(joint - chair.joints.begin()))) {
        EXPECT_EQ(one.work.find("mortise"), std::string::npos) << one.work;
        hasCheek = hasCheek || has(one.work, "cheek");
    }
    EXPECT_TRUE(hasCheek);
}

// The arm's edge is shaped away where the pegs stand: they are set out from the blank, before it
// is.
TEST(SetUpsOfAnArm, SetOutItsPegsFromTheBlanksEdge) {
    const Piece piece = sample("armchair");
    const ResolvedPiece chair = resolved(piece);
    int pegs = 0;
    for (const PartSetUp& one :
         partSetUpsOf(testing::partNamed(chair, "arm, right"), piece.style)) {
        const std::string text = partSetUpText(one, chair.rules);
        if (has(text, "peg")) {
            ++pegs;
            EXPECT_TRUE(has(text, "centre 1 3/8 from the blank's edge")) << text;
            EXPECT_TRUE(has(text, "before the blank is shaped")) << text;
        }
    }
    EXPECT_EQ(pegs, 3);
}

// A leg that leans has a foot sawn aslant: what is measured from it is from its longest point.
TEST(SetUpsOfALeaningLeg, MeasureFromTheLongSideOfItsFoot) {
    const ResolvedPiece stool = resolved(sample("pilot_stool"));
    EXPECT_EQ(placesFromWord(testing::partNamed(stool, "back leg"), End::Start),
              "foot on its long side");
    const ResolvedPiece bench = resolved(sample("bench"));
    EXPECT_EQ(placesFromWord(testing::partNamed(bench, "front post, right"), End::Start), "foot");
}

}  // namespace
}  // namespace shoulderline
