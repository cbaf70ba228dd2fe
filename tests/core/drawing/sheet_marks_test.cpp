// What a maker finds on a part's sheets besides its views: cutting marks, the sheet they are on,
// the joiner's marks and their legend, and what is told in notes.
#include <algorithm>
#include <cmath>
#include <limits>

#include <gtest/gtest.h>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/paper.h"
#include "core/drawing/part_sections.h"
#include "core/drawing/part_views.h"
#include "core/drawing/sheets.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::wordsOn;

using testing::kMetrics;

bool saysPart(const std::vector<Sheet>& sheets, const std::string& words) {
    return std::any_of(sheets.begin(), sheets.end(), [&](const Sheet& sheet) {
        const std::vector<std::string> all = wordsOn(sheet);
        return std::any_of(all.begin(), all.end(), [&](const std::string& one) {
            return one.find(words) != std::string::npos;
        });
    });
}

PartKind kindNamed(const ResolvedPiece& resolved, const std::string& name) {
    for (const PartKind& kind : partKinds(resolved)) {
        if (kind.name == name) {
            return kind;
        }
    }
    ADD_FAILURE() << "no kind " << name;
    return {};
}

std::vector<Sheet> sheetsOf(const char* sample, const std::string& kind, Vec2 paper) {
    const Piece piece = testing::sample(sample);
    const ResolvedPiece resolved = testing::resolved(piece);
    return partSheets(piece, resolved, kindNamed(resolved, kind), {paper, 0.0, "", 1, 9}, kMetrics);
}

// The body of the face side on a sheet; none where that is not there.
std::optional<Rect> faceSideOn(const Sheet& sheet) {
    const std::string word = ", face side";
    for (std::size_t i = 0; i + 1 < sheet.ops.size(); ++i) {
        const auto* group = std::get_if<BeginGroup>(&sheet.ops[i]);
        const auto* blank = std::get_if<Fill>(&sheet.ops[i + 1]);
        if (group != nullptr && blank != nullptr && group->name.size() > word.size() &&
            group->name.compare(group->name.size() - word.size(), word.size(), word) == 0) {
            return Rect{blank->points[0], blank->points[2]};
        }
    }
    return std::nullopt;
}

// The letters of cutting marks: larger than any other lettering of the drawing.
std::vector<Rect> lettersOn(const Sheet& sheet, const std::string& letter) {
    std::vector<Rect> found;
    for (const Op& op : sheet.ops) {
        const auto* text = std::get_if<TextOp>(&op);
        const bool isLetter = text != nullptr && text->text == letter &&
                              (std::abs(text->height - 1.4 * 3.5) < 1e-9 ||
                               std::abs(text->height - 1.4 * 2.5) < 1e-9);
        if (isLetter) {
            found.push_back(boundsOf(*text, kMetrics));
        }
    }
    return found;
}

class MarksOfSample : public ::testing::TestWithParam<const char*> {};

// ISO 128-3: a cutting plane is marked at both its ends, by what it cuts.
TEST_P(MarksOfSample, EverySectionIsMarkedOverAndUnderItsView) {
    constexpr double kNear = 36.0;  // mm, over the rows of dimensions that stand between
    const Piece piece = testing::sample(GetParam());
    const ResolvedPiece resolved = testing::resolved(piece);
    for (const PartKind& kind : partKinds(resolved)) {
        const SectionPlan plan(
            resolved, resolved.parts[kind.parts.front()], piece.unit == Unit::Inch);
        for (const Vec2 paper : {Vec2{297, 210}, Vec2{420, 297}}) {
            const std::vector<Sheet> sheets =
                partSheets(piece, resolved, kind, {paper, 0.0, "", 0, 0}, kMetrics);
            const auto marked = std::find_if(sheets.begin(), sheets.end(), [](const Sheet& sheet) {
                return faceSideOn(sheet).has_value();
            });
            ASSERT_NE(marked, sheets.end()) << kind.name;
            const Rect body = *faceSideOn(*marked);
            for (const PartSection& section : plan.sections()) {
                const std::vector<Rect> letters = lettersOn(*marked, section.letter);
                ASSERT_EQ(letters.size(), 2u) << kind.name << ", " << section.letter;
                const Rect& over = letters[0].min.y < letters[1].min.y ? letters[0] : letters[1];
                const Rect& under = letters[0].min.y < letters[1].min.y ? letters[1] : letters[0];
                EXPECT_LT(over.min.y, (body.min.y + body.max.y) / 2.0) << kind.name;
                EXPECT_GT(under.max.y, (body.min.y + body.max.y) / 2.0) << kind.name;
                EXPECT_LT(body.min.y - over.max.y, kNear) << kind.name << ", " << section.letter;
                EXPECT_LT(under.min.y - body.max.y, kNear) << kind.name << ", " << section.letter;
            }
        }
    }
}

// The lengths of the arrows of a cutting plane's marks: each a thin level line from where a wide
// upright stroke ends, with its letter after it.
std::vector<double> arrowsOn(const Sheet& sheet, const std::string& letter) {
    std::vector<double> lengths;
    for (std::size_t i = 3; i < sheet.ops.size(); ++i) {
        const auto* text = std::get_if<TextOp>(&sheet.ops[i]);
        const auto* arrow = std::get_if<Stroke>(&sheet.ops[i - 2]);
        const auto* stroke = std::get_if<Stroke>(&sheet.ops[i - 3]);
        if (text != nullptr && text->text == letter && arrow != nullptr && stroke != nullptr &&
            std::holds_alternative<Fill>(sheet.ops[i - 1])) {
            EXPECT_EQ(stroke->points.back(), arrow->points.front());
            lengths.push_back(std::abs(arrow->points.back().x - arrow->points.front().x));
        }
    }
    return lengths;
}

// Both ends of one plane look the same way with like arrows (ISO 128-3 draws them so).
TEST_P(MarksOfSample, BothHalvesOfAMarkHaveArrowsOfOneLength) {
    const Piece piece = testing::sample(GetParam());
    const ResolvedPiece resolved = testing::resolved(piece);
    std::size_t marks = 0;
    for (const PartKind& kind : partKinds(resolved)) {
        const SectionPlan plan(
            resolved, resolved.parts[kind.parts.front()], piece.unit == Unit::Inch);
        for (const Sheet& sheet :
             partSheets(piece, resolved, kind, {{297, 210}, 0.0, "", 0, 0}, kMetrics)) {
            for (const PartSection& section : plan.sections()) {
                const std::vector<double> arrows = arrowsOn(sheet, section.letter);
                if (arrows.size() == 2) {
                    EXPECT_NEAR(arrows[0], arrows[1], 1e-6) << kind.name << ", " << section.letter;
                    ++marks;
                }
            }
        }
    }
    EXPECT_GT(marks, 0u);
}

// "marked on sheet 5" is said of sections whose letter stands on that sheet, and of all that stand
// on another than their mark.
TEST_P(MarksOfSample, ASectionOnAnotherSheetNamesTheSheetOfItsMark) {
    const Piece piece = testing::sample(GetParam());
    const ResolvedPiece resolved = testing::resolved(piece);
    const PrintJob job = setJob(piece, resolved, *findPaper("A4"), "", kMetrics);
    const std::string says = "marked on sheet ";
    for (std::size_t i = 0; i < job.pages.size(); ++i) {
        const Sheet& sheet = job.contents[job.pages[i].content];
        if (sheet.title.rfind("joints of", 0) == 0) {
            continue;
        }
        std::string before;
        for (const Op& op : sheet.ops) {
            const auto* text = std::get_if<TextOp>(&op);
            if (text == nullptr) {
                continue;
            }
            const bool isTold = text->text.rfind(says, 0) == 0;
            const std::size_t dash = before.find("\u2013");
            if (isTold) {
                ASSERT_NE(dash, std::string::npos) << sheet.title;
                const auto number =
                    static_cast<std::size_t>(std::stoi(text->text.substr(says.size())));
                ASSERT_NE(number, i + 1) << sheet.title;
                const Sheet& there = job.contents[job.pages[number - 1].content];
                EXPECT_EQ(lettersOn(there, before.substr(0, dash)).size(), 2u)
                    << sheet.title << ", " << before << " on " << there.title;
            }
            before = text->text;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Samples,
                         MarksOfSample,
                         ::testing::ValuesIn(testing::kSamples),
                         [](const auto& sampled) { return std::string(sampled.param); });

TEST(Legend, HasOnlyTheMarksOfItsSheet) {
    const std::vector<Sheet> plain = sheetsOf("armchair", "seat slat", {297, 210});
    EXPECT_TRUE(saysPart(plain, "face side: mark from here"));
    EXPECT_TRUE(saysPart(plain, "the grain"));
    EXPECT_FALSE(saysPart(plain, "blind mortise"));
    EXPECT_FALSE(saysPart(plain, "mortise right through"));

    const std::vector<Sheet> stretcher = sheetsOf("bench", "end stretcher", {420, 297});
    EXPECT_TRUE(saysPart(stretcher, "mortise right through"));
    EXPECT_FALSE(saysPart(stretcher, "blind mortise"));

    // Its second sheet has sections and the pair, but no arrow along the grain.
    const std::vector<Sheet> rail = sheetsOf("raked_chair", "side rail", {297, 210});
    ASSERT_EQ(rail.size(), 2u);
    const auto explainsGrain = [](const Sheet& sheet) {
        const std::vector<std::string> words = wordsOn(sheet);
        return std::find(words.begin(), words.end(), "the grain") != words.end();
    };
    EXPECT_TRUE(explainsGrain(rail[0]));
    EXPECT_FALSE(explainsGrain(rail[1]));
}

// A slat 17 1/2 long over all with a chord of 16 1/2 that rises 3/4: by hand its radius at the
// middle line is (8.25^2 + 0.75^2) / (2 x 0.75) = 45.75.
TEST(PartSheet, TellsTheBlankAndTheFormOfABentSlat) {
    const std::vector<Sheet> slat = sheetsOf("armchair", "back slat", {420, 297});
    EXPECT_TRUE(saysPart(slat, "radius there 45 3/4"));
    EXPECT_TRUE(saysPart(slat, "blank along the curve"));
    EXPECT_TRUE(saysPart(slat, "4 plies of 1/8"));
    EXPECT_TRUE(saysPart(slat, "on a form that rises"));
}

TEST(PartSheet, TellsTheScrewOfAHole) {
    // 7/8 held, 11/16 into the rail: 1 9/16, so 1 1/2 long; 3/16 clears a No. 10.
    EXPECT_TRUE(
        saysPart(sheetsOf("armchair", "front cleat", {297, 210}), "screw No. 10 \u00d7 1 1/2"));
    EXPECT_TRUE(
        saysPart(sheetsOf("armchair", "back rail", {297, 210}), "screw No. 10 \u00d7 1 1/2"));
    // The back bracket is shaped: its heads are sunk until 1/2 is left, and 25/32 goes into the
    // post: 1 9/32, so 1 1/4 long.
    EXPECT_TRUE(saysPart(sheetsOf("armchair", "back arm bracket", {297, 210}), "\u00d7 1 1/4"));
    // 22 held, 22.5 into the rail: 44.5, so 40 long.
    EXPECT_TRUE(saysPart(sheetsOf("bed_frame", "cleat", {297, 210}), "screw 4.5 \u00d7 40"));
}

TEST(PartSheet, TellsWhatIsSpecialOfATenonsEnd) {
    const std::vector<Sheet> post = sheetsOf("armchair", "front post", {420, 297});
    EXPECT_TRUE(saysPart(post, "stands 3/16 proud"));
    EXPECT_TRUE(saysPart(post, "end chamfered 1/8 \u00d7 45\u00b0 all round"));
    const std::vector<Sheet> rail = sheetsOf("luggage_stand", "front rail", {420, 297});
    EXPECT_TRUE(saysPart(rail, "haunch 3/8 at the tenon, sloping to"));
    EXPECT_TRUE(saysPart(rail, "nothing at the face edge"));
    EXPECT_TRUE(saysPart(rail, "end mitred 45\u00b0"));
    EXPECT_TRUE(saysPart(sheetsOf("luggage_stand", "lower end rail", {420, 297}),
                         "2 saw kerfs for wedges"));
    EXPECT_TRUE(
        saysPart(sheetsOf("bed_frame", "foot rail, lower", {420, 297}), "edges rounded R 4"));
}

// A bearer lapped over a rail: its notch is cut down from the face edge, through its thickness.
TEST(PartViews, ShowANotchOpenAtTheEdgeThatItIsCutFrom) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("bench"));
    const ResolvedPart& bearer = resolved.parts[kindNamed(resolved, "bearer").parts.front()];
    ASSERT_EQ(bearer.cuts.size(), 1u);
    const PartView view = partView(bearer, Face::FaceSide);
    const Rect notch = view.toPlane(bearer.cuts.front().box);
    double walls = 0.0;
    for (const PartLine& line : linesOf(bearer, view)) {
        const bool isLevel = std::abs(line.a.y - line.b.y) < 1e-6;
        const double low = std::min(line.a.x, line.b.x);
        const double high = std::max(line.a.x, line.b.x);
        const bool isOverIt = low < notch.max.x - 0.01 && high > notch.min.x + 0.01;
        EXPECT_FALSE(isLevel && std::abs(line.a.y) < 1e-6 && isOverIt) << "a line over the mouth";
        const bool isWall =
            !isLevel && line.isVisible &&
            (std::abs(line.a.x - notch.min.x) < 0.01 || std::abs(line.a.x - notch.max.x) < 0.01);
        walls += isWall ? std::abs(line.a.y - line.b.y) : 0.0;
    }
    EXPECT_NEAR(walls, 2.0 * notch.size().y, 0.01) << "both walls in sight";
}

TEST(PartSheet, DimensionsAHornAndTheBlankWithIt) {
    const std::vector<Sheet> post = sheetsOf("luggage_stand", "front post", {420, 297});
    std::vector<DimensionOp> horns;
    std::vector<DimensionOp> whole;
    for (const Sheet& sheet : post) {
        for (DimensionOp& horn : testing::dimensionsOf(sheet, "horn")) {
            horns.push_back(std::move(horn));
        }
        for (DimensionOp& all : testing::dimensionsOf(sheet, "length with horns")) {
            whole.push_back(std::move(all));
        }
    }
    ASSERT_EQ(horns.size(), 1u);
    ASSERT_EQ(whole.size(), 1u);
    EXPECT_EQ(horns[0].text, "1");
    EXPECT_EQ(whole[0].text, "(21)") << "20 and the horn";
}

TEST(PartSheet, ServesPartsThatAreMadeAlikeTogether) {
    const Piece piece = testing::sample("armchair");
    const PrintJob job =
        sheetJob(piece, testing::resolved(piece), true, *findPaper("A4"), 0.0, "", kMetrics);
    const auto shared = std::find_if(job.pages.begin(), job.pages.end(), [](const Page& page) {
        return page.name == "front cleat and back cleat";
    });
    ASSERT_NE(shared, job.pages.end());
    EXPECT_TRUE(saysPart({job.contents[shared->content]}, "make 2: 1 front cleat, 1 back cleat"));
}

// A flat block turned over is its own mirror image, and so is a turned one; a part with mortises in
// one of its sides is not.
TEST(PartKinds, AreAPairOnlyWhereLeftAndRightDiffer) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("armchair"));
    EXPECT_FALSE(kindNamed(resolved, "front corner block").hasMirrorTwins);
    EXPECT_FALSE(kindNamed(resolved, "pivot spacer").hasMirrorTwins);
    EXPECT_TRUE(kindNamed(resolved, "arm").hasMirrorTwins);
    EXPECT_TRUE(kindNamed(resolved, "back post").hasMirrorTwins);
    const ResolvedPiece raked = testing::resolved(testing::sample("raked_chair"));
    EXPECT_TRUE(kindNamed(raked, "side rail").hasMirrorTwins);
    EXPECT_TRUE(kindNamed(raked, "back post").hasMirrorTwins);
}

TEST(PartKinds, OfOneStatedPartHaveNamesThatTellThemApart) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("bed_frame"));
    std::vector<std::string> boards;
    for (const PartKind& kind : partKinds(resolved)) {
        if (resolved.parts[kind.parts.front()].of == "head board") {
            boards.push_back(kind.name);
        }
    }
    EXPECT_EQ(boards,
              (std::vector<std::string>{"head board 1", "head board 2 to 8", "head board 9"}));
}

double levelOf(const Sheet& sheet, const std::string& words) {
    for (const Op& op : sheet.ops) {
        const auto* text = std::get_if<TextOp>(&op);
        if (text != nullptr && text->text == words) {
            return text->at.y;
        }
    }
    return std::numeric_limits<double>::quiet_NaN();
}

// ISO 5456-2: in third angle the view from above stands over the view from the front, in first
// angle the view from below; so too where a part takes several sheets.
TEST(PartSheet, SidesThatShareASheetStandAsInProjection) {
    const Sheet post = sheetsOf("armchair", "back post", {297, 210}).front();
    EXPECT_LT(levelOf(post, "face edge"), levelOf(post, "face side"));
    const Sheet head = sheetsOf("bed_frame", "head post", {297, 210}).front();
    EXPECT_LT(levelOf(head, "back edge"), levelOf(head, "face side"));
}

// The middle of words on the sheet; none where they are not there.
std::optional<Vec2> middleOfWords(const Sheet& sheet, const std::string& begin) {
    for (const Op& op : sheet.ops) {
        const auto* text = std::get_if<TextOp>(&op);
        if (text != nullptr && text->text.rfind(begin, 0) == 0) {
            const Rect bounds = boundsOf(*text, kMetrics);
            return (bounds.min + bounds.max) * 0.5;
        }
    }
    return std::nullopt;
}

// ISO 5456-2: in first angle the right end stands at the left, and what has no room there goes
// over or under the side, never beside it at the right.
TEST(PartSheet, AnEndNeverStandsBesideASideWhereTheOtherBelongs) {
    const Sheet sheet = sheetsOf("chart_cabinet", "plinth rail", {297, 210}).front();
    const std::optional<Vec2> right = middleOfWords(sheet, "right end");
    const Rect side = *faceSideOn(sheet);

    ASSERT_TRUE(right);
    EXPECT_TRUE(right->x < side.min.x || right->y > side.max.y) << right->x << ", " << right->y;
}

// Both long edges of a panel are rabbeted alike: one note tells both.
TEST(PartSheet, RabbetsAtBothEdgesAreToldTogether) {
    const std::vector<Sheet> sheets = sheetsOf("chart_cabinet", "upper panel", {297, 210});

    EXPECT_TRUE(saysPart(sheets, "one at each edge"));
    EXPECT_FALSE(saysPart(sheets, "at the face edge"));
}

}  // namespace
}  // namespace shoulderline
