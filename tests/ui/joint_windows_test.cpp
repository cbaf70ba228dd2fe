// The windows that mend and settle joints, and the fields that state how a part stands.

#include <QAbstractButton>
#include <QCheckBox>
#include <QDialogButtonBox>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QTest>

#include <gtest/gtest.h>

#include "core/check/neighbours.h"
#include "core/resolve/small_parts.h"
#include "tests/ui/answering_prompts.h"
#include "tests/ui/ui_test_support.h"
#include "ui/columns/joint_stock.h"
#include "ui/columns/mends_dialog.h"
#include "ui/columns/part_form.h"
#include "ui/columns/part_tree.h"
#include "ui/columns/settle_dialog.h"
#include "ui/fields/choice_box.h"
#include "ui/fields/statement_field.h"
#include "ui/look/text.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

QPushButton* takeButton(const QDialog& dialog) {
    for (QPushButton* one : dialog.findChildren<QPushButton*>()) {
        if (one->text().remove(u'&') == u"Take It"_s) {
            return one;
        }
    }
    ADD_FAILURE() << "no button to take it";
    return nullptr;
}

class JointWindowsTest : public ::testing::Test {
  protected:
    JointWindowsTest() : document_(testing::resources()) {
        document_.start(testing::sample("armchair"), {});
        // So thick that the tenons meet in the posts.
        EXPECT_TRUE(document_.apply(SetMeasure{"rail thickness", "1 1/8 in"}));
    }
    [[nodiscard]] std::size_t meetings() const { return allMeetings(document_.resolved()).size(); }
    [[nodiscard]] Finding meeting() const {
        for (const Finding& one : document_.findings()) {
            if (one.rule == RuleId::MortiseGapLeast && one.otherJoint && one.mends.size() > 2) {
                return one;
            }
        }
        ADD_FAILURE() << "nothing meets";
        return {};
    }

    Document document_;
};

TEST_F(JointWindowsTest, EachMendTellsWhatItDoesAndTheFirstIsChosen) {
    const Finding finding = meeting();
    MendsDialog dialog(document_, finding);

    const QList<QRadioButton*> choices = dialog.findChildren<QRadioButton*>();
    int withEdit = 0;
    for (const Mend& mend : finding.mends) {
        withEdit += mend.edit ? 1 : 0;
    }
    ASSERT_EQ(choices.size(), withEdit);
    EXPECT_TRUE(choices.front()->isChecked());
    for (const QRadioButton* choice : choices) {
        EXPECT_TRUE(choice->accessibleDescription().contains(u"must be mended then"_s) ||
                    choice->accessibleDescription().contains(u"nothing must be mended"_s))
            << choice->text().toStdString();
    }
}

TEST_F(JointWindowsTest, TheMendChosenIsTakenInOneStepAndUndone) {
    const std::size_t before = meetings();
    const Piece held = document_.piece();
    MendsDialog dialog(document_, meeting());
    for (QRadioButton* choice : dialog.findChildren<QRadioButton*>()) {
        if (choice->text().startsWith(u"shorten"_s)) {
            choice->click();
            break;
        }
    }

    QTest::mouseClick(takeButton(dialog), Qt::LeftButton);

    EXPECT_EQ(dialog.result(), QDialog::Accepted);
    EXPECT_LT(meetings(), before);
    document_.undoStack().undo();
    EXPECT_EQ(document_.piece(), held);
}

TEST_F(JointWindowsTest, CancelLeavesThePieceAlone) {
    const Piece held = document_.piece();
    MendsDialog dialog(document_, meeting());

    QTest::keyClick(&dialog, Qt::Key_Escape);

    EXPECT_EQ(document_.piece(), held);
    EXPECT_EQ(dialog.result(), QDialog::Rejected);
}

TEST_F(JointWindowsTest, SettleTellsWhatItWouldChooseAndTakesItInOneStep) {
    const Piece held = document_.piece();
    SettleDialog dialog(document_);
    const auto* text = dialog.findChild<QPlainTextEdit*>(u"settlement"_s);
    EXPECT_TRUE(text->toPlainText().contains(u"Places where mortises meet"_s))
        << text->toPlainText().toStdString();
    EXPECT_TRUE(text->toPlainText().contains(u"no proof that it is safe"_s));
    EXPECT_EQ(document_.piece(), held) << "nothing is changed yet";

    QTest::mouseClick(takeButton(dialog), Qt::LeftButton);

    EXPECT_EQ(meetings(), 0u);
    document_.undoStack().undo();
    EXPECT_EQ(document_.piece(), held);
}

TEST_F(JointWindowsTest, SettleHasNothingToTakeWhereNothingMeets) {
    document_.start(testing::twoPostsAndARail(), {});
    const SettleDialog dialog(document_);

    EXPECT_FALSE(takeButton(dialog)->isEnabled());
}

TEST(PartTreeTest, SmallPartsAreListedAndLeadToTheirJoint) {
    Document document(testing::resources());
    document.start(testing::sample("bed_frame"), {});
    PartTree tree(document);
    const QList<QTreeWidgetItem*> found =
        tree.findItems(u"wedge of a tusk tenon, side rail"_s, Qt::MatchRecursive);
    ASSERT_EQ(found.size(), 1);
    EXPECT_EQ(found.front()->text(1), u"4"_s);

    tree.setCurrentItem(found.front());

    ASSERT_TRUE(document.chosenJoint());
    EXPECT_TRUE(document.resolved().joints[*document.chosenJoint()].has(JointFeature::Tusked));
}

// The stock of pins is chosen with the keys, told by the list of small parts, and undone.
TEST(JointStockTest, IsChosenWithTheKeysAndUndone) {
    Document document(testing::resources());
    document.start(testing::sample("luggage_stand"), {});
    const Piece held = document.piece();
    document.chooseJoint(*document.resolved().findJoint("end rail, left into front post, left"));
    JointStock field(document);
    field.show();
    field.refresh();
    auto* stock = field.findChild<QComboBox*>(u"smallPartStock"_s);
    ASSERT_NE(stock, nullptr);
    EXPECT_EQ(stock->accessibleName(), u"stock of the pin"_s);
    ASSERT_EQ(stock->count(), static_cast<int>(held.stocks.size()) + 1);

    stock->setFocus();
    QTest::keyClick(stock, Qt::Key_End);

    const std::string& wanted = held.stocks.back().name;
    int pins = 0;
    for (const SmallPart& small : smallPartsOf(document.piece(), document.resolved())) {
        const bool isChosen = small.kind == SmallPartKind::Pin && small.stock == wanted;
        pins += isChosen ? small.quantity : 0;
    }
    EXPECT_GE(pins, 2) << "left and right";
    EXPECT_NE(document.piece(), held);
    document.undoStack().undo();
    EXPECT_EQ(document.piece(), held);
}

TEST(JointStockTest, IsHiddenForAJointThatTakesNothing) {
    Document document(testing::resources());
    document.start(testing::twoPostsAndARail(), {});
    document.chooseJoint(0);
    JointStock field(document);
    field.refresh();

    EXPECT_TRUE(field.isHidden());
}

class StanceFieldsTest : public ::testing::Test {
  protected:
    StanceFieldsTest() : document_(testing::resources()), form_(document_, prompts_) {
        document_.start(testing::sample("raked_chair"), {});
        form_.resize(320, 900);
    }
    std::size_t show(const std::string& name) {
        const std::vector<Part>& parts = document_.piece().parts;
        const auto it = std::find_if(
            parts.begin(), parts.end(), [&](const Part& part) { return part.name == name; });
        const auto index = static_cast<std::size_t>(it - parts.begin());
        form_.show(index);
        form_.QWidget::show();
        return index;
    }
    // Typed as a maker does, and taken with Return.
    void type(const QString& label, const QString& text) {
        for (StatementField* field : form_.findChildren<StatementField*>()) {
            if (field->accessibleName() == u"part: "_s + label) {
                field->setFocus();
                field->selectAll();
                QTest::keyClicks(field, text);
                QTest::keyClick(field, Qt::Key_Return);
                return;
            }
        }
        FAIL() << "no field " << label.toStdString();
    }
    void tick(const QString& label) {
        for (QCheckBox* box : form_.findChildren<QCheckBox*>()) {
            if (box->text() == label) {
                box->click();
                return;
            }
        }
        FAIL() << "no box " << label.toStdString();
    }
    template <class Relation>
    const Relation& relation(std::size_t part) {
        return std::get<Relation>(document_.piece().parts[part].relation);
    }

    Document document_;
    testing::AnsweringPrompts prompts_;
    PartForm form_;
};

TEST_F(StanceFieldsTest, RakeAndSplayAreTypedAndThePostLeans) {
    const std::size_t post = show("front post");

    type(u"leans back by (rake)"_s, u"3 deg"_s);
    type(u"leans in by (splay)"_s, u"2 deg"_s);

    EXPECT_EQ(relation<Stands>(post).rake, "3 deg");
    EXPECT_EQ(relation<Stands>(post).splay, "2 deg");
    const ResolvedPart& leaning = testing::partNamed(document_.resolved(), "front post, right");
    EXPECT_NEAR(leaning.frame.x.y / leaning.frame.x.z, std::tan(Angle::degrees(3).radians()), 1e-9);
}

TEST_F(StanceFieldsTest, TheOtherLevelIsTypedAndThePartSlopes) {
    const std::size_t stretcher = show("side stretcher");

    type(u"at the second part at"_s, u"stretcher height + 1 in"_s);

    ASSERT_TRUE(relation<Spans>(stretcher).levelTo);
    EXPECT_EQ(relation<Spans>(stretcher).levelTo->at, "stretcher height + 1 in");
}

TEST_F(StanceFieldsTest, AngledAndLeaningAreTickedAndUnticked) {
    const std::size_t rail = show("crest rail");
    const bool wasAngled = relation<Spans>(rail).angled;
    const bool wasLeaning = relation<Spans>(rail).leans;

    tick(u"runs at an angle, straight from one to the other"_s);
    tick(u"leans with what it joins"_s);

    EXPECT_NE(relation<Spans>(rail).angled, wasAngled);
    EXPECT_NE(relation<Spans>(rail).leans, wasLeaning);
}

TEST_F(StanceFieldsTest, TheSectionIsChosen) {
    const std::size_t post = show("front post");
    ChoiceBox* section = nullptr;
    for (ChoiceBox* box : form_.findChildren<ChoiceBox*>()) {
        section = box->accessibleName() == u"part: in section"_s ? box : section;
    }
    ASSERT_NE(section, nullptr);

    section->setFocus();
    QTest::keyClick(section, Qt::Key_Down);

    EXPECT_NE(document_.piece().parts[post].section, SectionForm::Square);
}

}  // namespace
}  // namespace shoulderline
