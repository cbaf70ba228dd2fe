// Holes, and values that cannot be, typed in the part's form as it stands in the window.

#include <QApplication>
#include <QLineEdit>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>
#include <regex>

#include <gtest/gtest.h>

#include "tests/ui/answering_prompts.h"
#include "tests/ui/ui_test_support.h"
#include "ui/fields/choice_box.h"
#include "ui/look/text_button.h"
#include "ui/pages/part_canvas.h"
#include "ui/window/main_window.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

// A rail between two posts with a hole in the middle of its face side.
Piece railWithAHole(CutKind kind, const Statement& diameter) {
    Piece piece = testing::twoPostsAndARail();
    CutStatement cut;
    cut.kind = kind;
    cut.alongFrom = cut.acrossFrom = Datum::Middle;
    cut.width = diameter;
    testing::statedPart(piece, "rail").cuts = {cut};
    return piece;
}

// The window with one part chosen, its drawing on the Parts page and its form in the column.
class FormInTheWindow : public ::testing::Test {
  protected:
    FormInTheWindow()
        : window_(testing::resources(), prompts_, QDir(home_.filePath(u"recovery"_s))) {
        window_.resize(1280, 800);
        window_.show();
        QApplication::setActiveWindow(&window_);
    }
    ~FormInTheWindow() override {
        prompts_.saveAnswer = Prompts::SaveAnswer::Discard;
        window_.close();
    }
    void open(Piece piece, const std::string& part) {
        document().start(std::move(piece), {});
        window_.showPage(MainWindow::PartsPageIndex);
        document().choosePart(document().resolved().findPart(part));
        QApplication::processEvents();
    }
    [[nodiscard]] Document& document() { return window_.document(); }
    // The visible field of that name; those with one name count from the top.
    template <class Field>
    Field* field(const QString& name, int which = 0) {
        for (Field* one : window_.findChildren<Field*>()) {
            if (one->isVisible() && one->accessibleName() == name && which-- == 0) {
                return one;
            }
        }
        ADD_FAILURE() << "no field " << name.toStdString();
        return nullptr;
    }
    void type(const QString& name, const QString& text, int which = 0) {
        auto* into = field<QLineEdit>(name, which);
        ASSERT_NE(into, nullptr);
        into->setFocus(Qt::TabFocusReason);
        QTest::keyClicks(into, text);
        QTest::keyClick(into, Qt::Key_Return);
        QApplication::processEvents();
    }
    // Chooses a word by typing it.
    void choose(const QString& name, const QString& word) {
        auto* box = field<ChoiceBox>(name);
        ASSERT_NE(box, nullptr);
        box->setFocus(Qt::TabFocusReason);
        QTest::keyClicks(box, word);
        QApplication::processEvents();
    }
    [[nodiscard]] std::vector<ResolvedHole> holesOf(const std::string& part) {
        std::vector<ResolvedHole> holes;
        const ResolvedPiece& piece = document().resolved();
        for (const ResolvedCut& cut : piece.parts[*piece.findPart(part)].cuts) {
            if (cut.hole) {
                holes.push_back(*cut.hole);
            }
        }
        return holes;
    }
    [[nodiscard]] bool drawingSays(const std::string& words) {
        const auto& canvas =
            static_cast<const PartCanvas&>(*window_.page(MainWindow::PartsPageIndex).canvas());
        return std::any_of(canvas.sheet().ops.begin(), canvas.sheet().ops.end(), [&](const Op& op) {
            const auto* text = std::get_if<TextOp>(&op);
            return text != nullptr && text->text.find(words) != std::string::npos;
        });
    }
    // The first finding on the strip that says `words`, figures and units with plain spaces.
    [[nodiscard]] std::string strip(const QString& words) {
        for (const TextButton* one : window_.findChildren<TextButton*>()) {
            const QString text = one->text().replace(QChar::Nbsp, u' ');
            if (one->isVisible() && text.contains(words)) {
                return text.toStdString();
            }
        }
        return {};
    }
    // What stands in the brackets of `pattern` in a finding: the nearest value that works.
    [[nodiscard]] static QString nearestIn(const std::string& told, const std::string& pattern) {
        std::smatch match;
        if (!std::regex_search(told, match, std::regex(pattern))) {
            ADD_FAILURE() << "no value as '" << pattern << "' in: " << told;
            return {};
        }
        return QString::fromStdString(match[1]).remove(u'≈');
    }

    QTemporaryDir home_;
    testing::AnsweringPrompts prompts_;
    MainWindow window_;
};

TEST_F(FormInTheWindow, APegMortiseIsTypedAndDrawn) {
    open(railWithAHole(CutKind::PegMortise, "3/8 in"), "rail");

    type(u"part: side of the square"_s, u"1/2"_s);
    type(u"part: depth"_s, u"5/8"_s);
    type(u"part: its peg stands proud"_s, u"1/16"_s);

    const ResolvedPiece& piece = document().resolved();
    const std::vector<ResolvedCut>& cuts = piece.parts[*piece.findPart("rail")].cuts;
    ASSERT_EQ(cuts.size(), 1U);
    ASSERT_TRUE(cuts.front().peg);
    EXPECT_NEAR(cuts.front().peg->side.inches(), 0.5, 1e-9);
    EXPECT_NEAR(cuts.front().peg->depth.inches(), 0.625, 1e-9);
    EXPECT_NEAR(cuts.front().peg->proud.inches(), 0.0625, 1e-9);
    EXPECT_TRUE(drawingSays("peg mortise 1/2 square, 5/8 deep"));
    EXPECT_TRUE(drawingSays("peg stands 1/16 proud"));
}

TEST_F(FormInTheWindow, APluggedScrewHoleIsTypedAndDrawn) {
    open(railWithAHole(CutKind::ScrewHole, "3/16 in"), "rail");

    type(u"part: diameter"_s, u"1/4"_s);
    choose(u"part: head"_s, u"plugged"_s);
    type(u"part: head is wide"_s, u"1/2"_s);
    type(u"part: head sunk by"_s, u"3/8"_s);

    const std::vector<ResolvedHole> holes = holesOf("rail");
    ASSERT_EQ(holes.size(), 2U) << "the one the screw slips through, and the one for its head";
    const bool isFirst = !holes[0].isForHead;
    const ResolvedHole& slips = holes[isFirst ? 0 : 1];
    EXPECT_NEAR(slips.diameter.inches(), 0.25, 1e-9);
    EXPECT_EQ(slips.head, ScrewHead::Plugged);
    EXPECT_NEAR(slips.headWidth.value.inches(), 0.5, 1e-9);
    EXPECT_NEAR(slips.headDepth.value.inches(), 0.375, 1e-9);
    EXPECT_TRUE(drawingSays("screw hole \u23001/4"));
    EXPECT_TRUE(drawingSays("counterbore \u23001/2, 3/8 deep, with a plug"));
}

TEST_F(FormInTheWindow, ASlotIsAsLongAsTyped) {
    open(railWithAHole(CutKind::ScrewHole, "3/16 in"), "rail");
    choose(u"part: slotted"_s, u"across"_s);

    type(u"part: slot is long"_s, u"7/16"_s);

    ASSERT_EQ(holesOf("rail").size(), 1U);
    EXPECT_EQ(holesOf("rail")[0].slot, SlotWay::Across);
    EXPECT_NEAR(holesOf("rail")[0].slotLength.value.inches(), 0.4375, 1e-9);
    EXPECT_TRUE(drawingSays("slot 3/16 \u00d7 7/16 across the part"));
    document().undoStack().undo();
    QApplication::processEvents();
    EXPECT_FALSE(drawingSays("7/16 across the part"));
}

// The rows that a choice brings lie below what the column shows; the choice keeps the focus, Tab
// goes on to them, and the column follows.
TEST_F(FormInTheWindow, TabGoesFromAChoiceToTheRowThatItBringsAndTheColumnFollows) {
    open(railWithAHole(CutKind::ScrewHole, "3/16 in"), "rail");

    choose(u"part: slotted"_s, u"across"_s);
    QWidget* focus = QApplication::focusWidget();
    ASSERT_NE(focus, nullptr);
    EXPECT_EQ(focus->accessibleName(), u"part: slotted"_s);
    QTest::keyClick(focus, Qt::Key_Tab);

    focus = QApplication::focusWidget();
    ASSERT_NE(focus, nullptr);
    EXPECT_EQ(focus->accessibleName(), u"part: slot is long"_s);
    EXPECT_EQ(focus->visibleRegion().boundingRect().height(), focus->height())
        << "all of it is in sight";
    QTest::keyClicks(focus, u"1/2"_s);
    QTest::keyClick(focus, Qt::Key_Return);
    EXPECT_NEAR(holesOf("rail").at(0).slotLength.value.inches(), 0.5, 1e-9);
}

// A field that is given the focus by any other way than Tab is brought into sight too.
TEST_F(FormInTheWindow, TheColumnFollowsTheFocusHoweverItComes) {
    open(railWithAHole(CutKind::ScrewHole, "3/16 in"), "rail");
    auto* depth = field<QLineEdit>(u"part: depth"_s);
    ASSERT_NE(depth, nullptr);
    ASSERT_TRUE(depth->visibleRegion().isEmpty()) << "it lies below what is shown";

    depth->setFocus(Qt::OtherFocusReason);
    QApplication::processEvents();

    EXPECT_EQ(depth->visibleRegion().boundingRect().height(), depth->height());
}

// As seen from the side it leans 20 degrees, as seen along the part 10: of its axis,
// tan 20 and tan 10 to 1.
TEST_F(FormInTheWindow, ABoreTiltedBothWaysIsTypedAndDrawn) {
    open(railWithAHole(CutKind::Bore, "3/8 in"), "rail");

    type(u"part: depth"_s, u"1/2"_s);
    type(u"part: tilts along by"_s, u"20"_s);
    type(u"part: tilts across by"_s, u"10"_s);

    ASSERT_EQ(holesOf("rail").size(), 1U);
    const Vec3 into = holesOf("rail")[0].into;
    EXPECT_NEAR(into.x / std::abs(into.z), 0.36397, 1e-5);
    EXPECT_NEAR(std::abs(into.y / into.z), 0.17633, 1e-5);
    EXPECT_TRUE(drawingSays("leans 20\u00b0, 1 in 2.7, towards the right end"));
    EXPECT_TRUE(drawingSays("10\u00b0, 1 in 5.7"));
}

TEST_F(FormInTheWindow, ShouldersAreSetSquareToTheCurveAndTheDrawingHasTheirAngle) {
    open(testing::sample("armchair"), "back slat 1");
    EXPECT_FALSE(drawingSays("from square"));

    choose(u"part: shoulders square to its"_s, u"curve"_s);

    EXPECT_TRUE(drawingSays("from square"));
    EXPECT_NE(strip(u"square to its curve"_s), "");
    document().undoStack().undo();
    QApplication::processEvents();
    EXPECT_FALSE(drawingSays("from square"));
    EXPECT_EQ(strip(u"square to its curve"_s), "");
}

TEST_F(FormInTheWindow, AShapedFaceIsCutLevelOrFollowed) {
    open(testing::sample("luggage_stand"), "end spindle 1, right");
    const auto levels = [&] {
        const ResolvedPiece& piece = document().resolved();
        const std::vector<ResolvedCut>& cuts = piece.parts[*piece.findPart("end rail, right")].cuts;
        return std::count_if(cuts.begin(), cuts.end(), [](const ResolvedCut& cut) {
            return cut.kind == CutKind::Notch;
        });
    };
    EXPECT_EQ(levels(), 4);

    choose(u"part: on a shaped face"_s, u"shoulder"_s);

    EXPECT_EQ(levels(), 0);
}

constexpr const char* kLength = "([^;,]*? in)";

TEST_F(FormInTheWindow, ABowTooDeepIsToldWithTheDeepestWhichWorks) {
    open(testing::sample("armchair"), "back slat 1");

    type(u"part: rises"_s, u"30 in"_s);
    const std::string told = strip(u"half the chord"_s);
    ASSERT_FALSE(told.empty());
    type(u"part: rises"_s, nearestIn(told, std::string("half the chord, ") + kLength));

    EXPECT_EQ(strip(u"half the chord"_s), "");
}

TEST_F(FormInTheWindow, ARadiusTooSmallIsToldWithTheLeastWhichWorks) {
    open(testing::sample("armchair"), "back slat 1");

    type(u"part: radius"_s, u"1/4 in"_s);
    EXPECT_TRUE(field<QLineEdit>(u"part: rises"_s)->text().isEmpty()) << "the one or the other";
    const std::string told = strip(u"does not reach over a chord"_s);
    ASSERT_FALSE(told.empty());
    type(u"part: radius"_s,
         nearestIn(told, std::string("a radius of ") + kLength + " is the least"));

    EXPECT_EQ(strip(u"does not reach over a chord"_s), "");
}

TEST_F(FormInTheWindow, AStationOutOfReachIsToldWithTheNearestWhichIsReached) {
    open(testing::sample("armchair"), "back stile, right");

    type(u"swing: bar behind the pivot"_s, u"40 in"_s);
    const std::string told = strip(u"past its end"_s);
    ASSERT_FALSE(told.empty());
    type(u"swing: bar behind the pivot"_s,
         nearestIn(told, std::string("the bar ") + kLength + " behind the pivot"));

    EXPECT_EQ(strip(u"past its end"_s), "");
}

TEST_F(FormInTheWindow, AnOutlineThatCrossesItselfIsToldHowFarInItsPointMayLie) {
    Piece piece = testing::twoPostsAndARail();
    testing::statedPart(piece, "rail").shape = {{Face::BackEdge,
                                                 {{Datum::Start, "", "1/2 in", Run::Line, "", {}},
                                                  {Datum::Far, "", "0", Run::Line, "", {}}}}};
    open(std::move(piece), "rail");

    type(u"part: in by"_s, u"4 in"_s);
    const std::string told = strip(u"cannot be made"_s);
    ASSERT_FALSE(told.empty());
    type(u"part: in by"_s,
         nearestIn(told, std::string("can be set in by up to ") + kLength + "\\."));

    EXPECT_EQ(strip(u"cannot be made"_s), "");
}

}  // namespace
}  // namespace shoulderline
