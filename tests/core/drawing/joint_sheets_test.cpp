#include "core/drawing/joint_sheets.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/parts_list.h"
#include "core/drawing/wrapped_text.h"
#include "core/resolve/small_parts.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

// What joint sheets, part drawings and the list of parts say of wedges, horns, loose tenons and how
// the tools are set.
namespace shoulderline {
namespace {

using testing::resolved;
using testing::sample;

using testing::kMetrics;

std::vector<std::string> textsOf(const std::vector<Op>& ops) {
    std::vector<std::string> texts;
    for (const Op& op : ops) {
        if (const auto* text = std::get_if<TextOp>(&op)) {
            texts.push_back(text->text);
        }
    }
    return texts;
}

bool says(const std::vector<Op>& ops, const std::string& words) {
    const std::vector<std::string> texts = textsOf(ops);
    return std::any_of(texts.begin(), texts.end(), [&](const std::string& text) {
        return text.find(words) != std::string::npos;
    });
}

// The true sizes that a drawing gives under a name.
std::vector<double> sizesOf(const Sheet& sheet, const std::string& of) {
    std::vector<double> sizes;
    for (const Op& op : sheet.ops) {
        if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
            if (dimension->of == of) {
                sizes.push_back(dimension->value);
            }
        }
    }
    return sizes;
}

std::vector<Op> opsOf(const std::vector<Sheet>& sheets) {
    std::vector<Op> ops;
    for (const Sheet& sheet : sheets) {
        ops.insert(ops.end(), sheet.ops.begin(), sheet.ops.end());
    }
    return ops;
}

std::size_t firstWith(const ResolvedPiece& piece, JointFeature feature) {
    for (std::size_t i = 0; i < piece.joints.size(); ++i) {
        if (piece.joints[i].has(feature)) {
            return i;
        }
    }
    ADD_FAILURE() << "no joint is " << wordFor(feature);
    return 0;
}

TEST(JointSheet, ATuskTenonIsDimensionedWithItsSlotAndItsWedge) {
    const Piece piece = sample("bed_frame");
    const ResolvedPiece made = resolved(piece);
    const std::size_t joint = firstWith(made, JointFeature::Tusked);
    const Sheet sheet = jointDrawing(piece, made, joint, kMetrics);
    const auto size = [&](SizeName name) { return made.joints[joint].size(name)->value.mm(); };

    ASSERT_EQ(sizesOf(sheet, "wedge length").size(), 1u);
    EXPECT_NEAR(sizesOf(sheet, "wedge length")[0], size(SizeName::TuskLength), 1e-9);
    ASSERT_EQ(sizesOf(sheet, "width of the slot").size(), 1u);
    EXPECT_NEAR(sizesOf(sheet, "width of the slot")[0], size(SizeName::TuskThickness), 1e-9);
    ASSERT_EQ(sizesOf(sheet, "length of the slot").size(), 1u);
    // Noyes, Handwork in Wood, joint No. 39: the slot begins 1/16 in inside the outer face.
    EXPECT_NEAR(sizesOf(sheet, "slot from the shoulder")[0],
                made.joints[joint].mortise.depth.value.mm() - Length::inches(1.0 / 16).mm(),
                1e-6);
    // The wedge's taper over its length, from end to end.
    EXPECT_NEAR(
        sizesOf(sheet, "wide end of the wedge")[0] - sizesOf(sheet, "narrow end of the wedge")[0],
        size(SizeName::TuskLength) * testing::ruleBook()[RuleId::TuskTaper].value,
        1e-6);
}

TEST(JointSheet, AHornIsDrawnDimensionedAndToldToBeCutOff) {
    const Piece piece = sample("luggage_stand");
    const ResolvedPiece made = resolved(piece);
    const std::size_t joint = firstWith(made, JointFeature::Horn);
    const Sheet sheet = jointDrawing(piece, made, joint, kMetrics);

    ASSERT_EQ(sizesOf(sheet, "horn").size(), 1u);
    EXPECT_NEAR(
        sizesOf(sheet, "horn")[0], made.joints[joint].size(SizeName::Horn)->value.mm(), 1e-9);
    EXPECT_TRUE(says(sheet.ops, "cut off after glue-up"));
}

TEST(JointSheet, APostWithoutAHornSaysNothingOfOne) {
    const Piece piece = testing::twoPostsAndARail();
    const Sheet sheet = jointDrawing(piece, resolved(piece), 0, kMetrics);

    EXPECT_TRUE(sizesOf(sheet, "horn").empty());
    EXPECT_FALSE(says(sheet.ops, "horn"));
}

// The figure and what is drawn are one: the outline of a loose tenon is as long as it is lettered.
TEST(JointSheet, ALooseTenonIsDrawnAsLongAsItIs) {
    const Piece piece = sample("chart_cabinet");
    const ResolvedPiece made = resolved(piece);
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        if (made.joints[i].kind != JointKind::Loose) {
            continue;
        }
        const Sheet sheet = jointDrawing(piece, made, i, kMetrics);
        int found = 0;
        for (const Op& op : sheet.ops) {
            const auto* dimension = std::get_if<DimensionOp>(&op);
            if (dimension != nullptr && dimension->of == "tenon length") {
                // All dimensions of a drawing have one scale; this one against the thickness.
                const double drawn = std::abs(dimension->to.x - dimension->from.x);
                for (const Op& other : sheet.ops) {
                    const auto* size = std::get_if<DimensionOp>(&other);
                    if (size != nullptr && size->of == "tenon width") {
                        EXPECT_NEAR(drawn / dimension->value,
                                    std::abs(size->to.y - size->from.y) / size->value,
                                    1e-6);
                        ++found;
                    }
                }
            }
        }
        EXPECT_GT(found, 0);
        return;
    }
    FAIL() << "no loose tenon";
}

TEST(JointSheets, CarrySetUpsAndTheCautionsOfTheirTools) {
    for (const char* name : {"armchair", "raked_chair", "bed_frame"}) {
        const Piece piece = sample(name);
        const ResolvedPiece made = resolved(piece);
        SheetFrame frame;
        frame.paper = {420.0, 297.0};
        const std::vector<Op> ops = opsOf(jointSheets(piece, made, frame, kMetrics));
        EXPECT_TRUE(says(ops, "hollow chisel, in the mortiser")) << name;
        EXPECT_TRUE(says(ops, "from the face side")) << name;
        EXPECT_TRUE(says(ops, "keep hands clear of the chisel")) << name;
        EXPECT_TRUE(says(ops, "local rules come first")) << name;
    }
}

// An angled joint says how the saw and the mortiser are set, before its fences and after the order
// of shaping and joining.
TEST(JointSheets, CarryTheAnglesOfJointsOutOfSquare) {
    const Piece piece = sample("raked_chair");
    const ResolvedPiece made = resolved(piece);
    int angled = 0;
    for (const JointGroup& group : jointGroups(made)) {
        const std::vector<std::string> lines = setUpLines(piece, made, group);
        const auto first = std::find_if(lines.begin(), lines.end(), [](const std::string& line) {
            return line.rfind("order, ", 0) != 0;
        });
        angled += first != lines.end() && first->find("\u00b0") != std::string::npos ? 1 : 0;
    }
    EXPECT_GT(angled, 3);
}

// Head boards differ in their edges, and are joined to the rails alike.
TEST(JointSheets, DrawJointsThatAreAlikeOnce) {
    const ResolvedPiece made = resolved(sample("bed_frame"));
    std::size_t boards = 0;
    std::set<std::size_t> seen;
    for (const JointGroup& group : jointGroups(made)) {
        for (const std::size_t joint : group.joints) {
            EXPECT_TRUE(seen.insert(joint).second);
        }
        boards +=
            made.parts[made.joints[group.joints.front()].tenoned].of == "head board" ? 1u : 0u;
    }
    EXPECT_EQ(boards, 3u) << "into the lower rail, into the upper one, into the next board";
}

// Where a group's joints are cut at several places, or from several fences, each is told.
TEST(JointSheets, TellTheSettingsOfEveryJointOfAGroup) {
    for (const char* name : testing::kSamples) {
        const ResolvedPiece made = resolved(sample(name));
        for (const JointGroup& group : jointGroups(made)) {
            const std::vector<shoulderline::SetUp> all = setUpsOf(made, group);
            for (const std::size_t joint : group.joints) {
                for (const shoulderline::SetUp& own : setUpsOf(made, joint)) {
                    EXPECT_EQ(std::count_if(all.begin(),
                                            all.end(),
                                            [&](const shoulderline::SetUp& one) {
                                                return one.work == own.work &&
                                                       made.parts[one.part].stated ==
                                                           made.parts[own.part].stated &&
                                                       one.reference == own.reference &&
                                                       nearlyEqual(one.fence, own.fence) &&
                                                       nearlyEqual(one.depth, own.depth) &&
                                                       nearlyEqual(one.from, own.from) &&
                                                       nearlyEqual(one.to, own.to);
                                            }),
                              1)
                        << name << ", " << made.joints[joint].name << ": " << own.work;
                }
            }
        }
    }
}

// Its tongues go into the stiles at both edges, and each is rabbeted from its own.
TEST(JointSheets, APanelIsRabbetedAtBothEdges) {
    const ResolvedPiece made = resolved(sample("chart_cabinet"));
    std::set<Face> edges;
    for (const JointGroup& group : jointGroups(made)) {
        const ResolvedJoint& joint = made.joints[group.joints.front()];
        if (made.parts[joint.tenoned].name == "upper panel" &&
            made.parts[joint.mortised].of == "back stile") {
            for (const shoulderline::SetUp& one : setUpsOf(made, group)) {
                if (one.part == joint.tenoned) {
                    edges.insert(one.reference);
                }
            }
        }
    }
    EXPECT_EQ(edges, (std::set<Face>{Face::FaceEdge, Face::BackEdge}));
}

// The rabbet along the end of a panel is as wide as its groove is deep, and is fenced from that
// end.
TEST(SetUps, ARabbetAlongAnEndIsFencedFromTheEnd) {
    const ResolvedPiece made = resolved(sample("chart_cabinet"));
    int ends = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        if (made.joints[i].kind != JointKind::Grooved) {
            continue;
        }
        for (const shoulderline::SetUp& one : setUpsOf(made, i)) {
            if (one.part == made.joints[i].tenoned) {
                EXPECT_NEAR(
                    one.cutter.mm(), made.joints[i].size(SizeName::GrooveDepth)->value.mm(), 1e-6)
                    << made.joints[i].name;
                ends += one.reference == Face::StartEnd || one.reference == Face::FarEnd ? 1 : 0;
            }
        }
    }
    EXPECT_EQ(ends, 4) << "two panels";
}

TEST(SetUpTexts, SayOnceWhatDiffersInItsPlaceOnly) {
    const ResolvedPiece made = resolved(testing::twoPostsAndARail());
    std::vector<shoulderline::SetUp> setUps;
    for (const double at : {1.0, 3.0, 5.0, 7.0, 9.0}) {
        shoulderline::SetUp one;
        one.tool = RuleId::SetUpBit;
        one.work = "pin";
        one.cutter = Length::inches(0.25);
        one.from = one.to = Length::inches(at);
        setUps.push_back(one);
    }
    const LengthStyle style = LengthStyle::fractions(16);

    const std::vector<std::string> even = setUpTexts(setUps, made, style);
    setUps.resize(3);
    const std::vector<std::string> three = setUpTexts(setUps, made, style);

    ASSERT_EQ(even.size(), 1u);
    EXPECT_NE(even[0].find("at 1 from the foot and 4 more, 2 apart"), std::string::npos) << even[0];
    ASSERT_EQ(three.size(), 1u);
    EXPECT_NE(three[0].find("at 1, 3 and 5 from the foot"), std::string::npos) << three[0];
}

// Both cheeks are sawn with one depth, from one face: one line with both fences.
TEST(SetUpTexts, TellBothCheeksInOneLine) {
    const Piece piece = testing::twoPostsAndARail();
    const ResolvedPiece made = resolved(piece);
    const Tenon& tenon = made.joints.front().tenon;
    const auto shown = [&](Length length) { return showLength(length, piece.style); };

    int lines = 0;
    for (const std::string& text : setUpTexts(setUpsOf(made, 0), made, piece.style)) {
        if (text.find("cheeks at the face side and back side") == 0) {
            const Length near = tenon.shoulders.faceSide.value;
            EXPECT_NE(text.find("fence " + shown(near) + " and " +
                                shown(near + tenon.thickness.value) + " from the face side"),
                      std::string::npos)
                << text;
            ++lines;
        }
    }
    EXPECT_EQ(lines, 1);
}

TEST(PartsList, HasARowForEachSmallPartAndTheHornInTheLength) {
    const Piece piece = sample("luggage_stand");
    const ResolvedPiece made = resolved(piece);
    const std::vector<Op> ops = partsList(piece, made, kMetrics);

    for (const SmallPart& small : smallPartsOf(piece, made)) {
        EXPECT_TRUE(says(ops, small.name())) << small.name();
    }
    EXPECT_TRUE(says(ops, "front post, with horn 1"));
    const ResolvedPart& post = testing::partNamed(made, "front post, left");
    EXPECT_TRUE(says(ops, showLength(post.blankLength(), piece.style)));
}

TEST(PartDrawing, NotesTheHorn) {
    const Piece piece = sample("luggage_stand");
    const ResolvedPiece made = resolved(piece);
    for (const PartKind& kind : partKinds(made)) {
        const Sheet sheet = partDrawing(piece, made, kind, 0.25, false, kMetrics);
        const ResolvedPart& part = made.parts[kind.parts.front()];
        EXPECT_EQ(says(sheet.ops, "cut off after glue-up"), part.blankLength() > part.length())
            << kind.name;
    }
}

TEST(PartDrawing, DimensionsTheSlotInATenonFromItsShoulder) {
    const Piece piece = sample("bed_frame");
    const ResolvedPiece made = resolved(piece);
    for (const PartKind& kind : partKinds(made)) {
        if (kind.name != "side rail") {
            continue;
        }
        const Sheet sheet = partDrawing(piece, made, kind, 0.2, false, kMetrics);
        const std::vector<double> from = sizesOf(sheet, "cut from the shoulder");
        ASSERT_EQ(from.size(), 2u) << "one at each end";
        for (const double one : from) {
            EXPECT_NEAR(one, 65.0 - Length::inches(1.0 / 16).mm(), 1e-6);
        }
        EXPECT_EQ(sizesOf(sheet, "cut length").size(), 2u);
    }
}

// ISO 128: what stands on another sheet is looked for by its number.
TEST(JointSheets, ADrawingWhoseSetUpsStandElsewhereNamesTheirSheet) {
    const std::string alone = ": set-ups";
    const std::string on = "; set-ups on sheet ";
    int count = 0;
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        constexpr int kFirst = 21;
        const std::vector<Sheet> sheets =
            jointSheets(piece, resolved, {Vec2{297.0, 210.0}, 0.0, "", kFirst, 60}, kMetrics);
        std::map<std::string, int> told;                // by the joint's name
        std::map<std::string, int> named;               // as its drawing says
        std::map<std::string, std::vector<int>> drawn;  // two kinds may have one name
        for (std::size_t i = 0; i < sheets.size(); ++i) {
            std::string joint;
            for (const Op& op : sheets[i].ops) {
                const auto* text = std::get_if<TextOp>(&op);
                if (text == nullptr) {
                    continue;
                }
                const int number = kFirst + static_cast<int>(i);
                if (text->isBold && text->text.find(" into ") != std::string::npos) {
                    joint = text->text;
                    if (joint.size() > alone.size() &&
                        joint.substr(joint.size() - alone.size()) == alone) {
                        told.emplace(joint.substr(0, joint.size() - alone.size()), number);
                    } else {
                        drawn[joint].push_back(number);
                    }
                } else if (const std::size_t at = text->text.find(on); at != std::string::npos) {
                    named[joint] = std::stoi(text->text.substr(at + on.size()));
                }
            }
        }
        for (const auto& [joint, number] : told) {
            if (drawn[joint].size() == 1 && drawn[joint].front() != number) {
                EXPECT_EQ(named[joint], number) << name << ": " << joint;
                ++count;
            }
        }
    }
    EXPECT_GT(count, 0);
}

}  // namespace
}  // namespace shoulderline
