#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include <gtest/gtest.h>

#include "core/resolve/outline_points.h"
#include "tests/ui/answering_prompts.h"
#include "tests/ui/ui_test_support.h"
#include "ui/columns/part_form.h"
#include "ui/columns/survey_dialog.h"
#include "ui/pages/part_canvas.h"
#include "ui/pages/parts_page.h"

namespace shoulderline {
namespace {

using namespace Qt::Literals::StringLiterals;

Piece railWithAShapedEdge() {
    Piece piece = testing::twoPostsAndARail();
    testing::statedPart(piece, "rail").shape = {
        {Face::BackEdge,
         {{Datum::Start, "5 in", "1/2 in", Run::Line, "", {}},
          {Datum::Far, "2 in", "1 in", Run::Line, "", {}}}}};
    return piece;
}

// The Parts page with the rail on it.
class OutlineHandles : public ::testing::Test {
  protected:
    OutlineHandles() : document_(testing::resources()), page_(document_) {
        document_.start(railWithAShapedEdge(), {});
        page_.resize(1000, 700);
        page_.show();
        document_.choosePart(document_.resolved().findPart("rail"));
        QApplication::setActiveWindow(&page_);
        QApplication::processEvents();
    }
    PartCanvas& canvas() { return *static_cast<PartCanvas*>(page_.canvas()); }
    [[nodiscard]] const EdgePoint& point(std::size_t i) const {
        const auto& parts = document_.piece().parts;
        const auto rail = std::find_if(
            parts.begin(), parts.end(), [](const Part& part) { return part.name == "rail"; });
        return rail->shape.at(Face::BackEdge).at(i);
    }
    void drag(QPointF from, QPointF to) {
        QTest::mousePress(&canvas(), Qt::LeftButton, {}, from.toPoint());
        QTest::mouseMove(&canvas(), ((from + to) / 2).toPoint());
        QTest::mouseMove(&canvas(), to.toPoint());
        QTest::mouseRelease(&canvas(), Qt::LeftButton, {}, to.toPoint());
    }

    Document document_;
    PartsPage page_;
};

TEST_F(OutlineHandles, EachPointOfAShapedSideHasOne) {
    EXPECT_EQ(canvas().handleCount(), 2U);
    EXPECT_EQ(canvas().items().front().name, u"back edge, point 1"_s);
}

TEST_F(OutlineHandles, ADragMovesThePointAndIsOneStepToUndo) {
    const QPointF at = canvas().handleAt(0);
    const int steps = document_.undoStack().count();

    drag(at, at + QPointF(80, 0));

    EXPECT_NE(point(0).along, "5 in");
    EXPECT_EQ(point(0).in, "1/2 in") << "dragged along, not across";
    EXPECT_EQ(document_.undoStack().count(), steps + 1);
    document_.undoStack().undo();
    EXPECT_EQ(point(0).along, "5 in");
}

TEST_F(OutlineHandles, AHandleIsUnderThePointerWhereTheDragEnds) {
    const QPointF to = canvas().handleAt(0) + QPointF(60, -20);
    QTest::mousePress(&canvas(), Qt::LeftButton, {}, canvas().handleAt(0).toPoint());
    QTest::mouseMove(&canvas(), to.toPoint());
    const QPointF off = canvas().handleAt(0) - to;
    QTest::mouseRelease(&canvas(), Qt::LeftButton, {}, to.toPoint());

    // Within the step that points are moved by, 1/16 in, and the pixel pressed on.
    const double step = outlineStep(Unit::Inch).mm() * canvas().scale();
    EXPECT_LE(std::abs(off.x()), step / 2 + 1.5);
    EXPECT_LE(std::abs(off.y()), step / 2 + 1.5);
}

TEST_F(OutlineHandles, EscapeTakesADragBack) {
    const QPointF at = canvas().handleAt(0);
    QTest::mousePress(&canvas(), Qt::LeftButton, {}, at.toPoint());
    QTest::mouseMove(&canvas(), (at + QPointF(50, 0)).toPoint());
    ASSERT_NE(point(0).along, "5 in");

    QTest::keyClick(&canvas(), Qt::Key_Escape);

    EXPECT_EQ(point(0).along, "5 in");
}

TEST_F(OutlineHandles, ArrowKeysMoveTheChosenPointAStepAtATime) {
    canvas().setFocus(Qt::TabFocusReason);
    ASSERT_EQ(canvas().currentItem(), 0U);
    const int steps = document_.undoStack().count();

    QTest::keyClick(&canvas(), Qt::Key_Right);
    QTest::keyClick(&canvas(), Qt::Key_Right);
    EXPECT_EQ(point(0).along, "5 1/8 in");
    QTest::keyClick(&canvas(), Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_EQ(point(0).along, "5 3/4 in");
    QTest::keyClick(&canvas(), Qt::Key_Up);
    EXPECT_EQ(point(0).in, "9/16 in") << "up is into the wood, for the back edge is below";
    EXPECT_EQ(document_.undoStack().count(), steps + 1) << "one run, one step";
}

TEST_F(OutlineHandles, APartWithoutShapedSidesHasNone) {
    document_.choosePart(document_.resolved().findPart("post, left"));
    QApplication::processEvents();

    EXPECT_EQ(canvas().handleCount(), 0U);
}

// The form of one part of a piece.
class PartRows : public ::testing::Test {
  protected:
    PartRows() : document_(testing::resources()), form_(document_, prompts_) {}
    void start(const Piece& piece, const std::string& part) {
        document_.start(piece, {});
        const std::vector<Part>& parts = document_.piece().parts;
        const auto found = std::find_if(
            parts.begin(), parts.end(), [&](const Part& one) { return one.name == part; });
        index_ = static_cast<std::size_t>(found - parts.begin());
        QObject::connect(&document_, &Document::changed, &form_, [this] { form_.show(index_); });
        form_.show(index_);
        form_.resize(400, 900);
        QApplication::setActiveWindow(&form_);
    }
    QLineEdit* field(const QString& label) {
        for (QLineEdit* one : form_.findChildren<QLineEdit*>()) {
            if (one->accessibleName() == u"part: "_s + label) {
                return one;
            }
        }
        ADD_FAILURE() << "no field " << label.toStdString();
        return nullptr;
    }
    void type(const QString& label, const QString& text) {
        QLineEdit* one = field(label);
        ASSERT_NE(one, nullptr);
        one->setFocus();
        one->selectAll();
        QTest::keyClicks(one, text);
        QTest::keyClick(one, Qt::Key_Return);
        QApplication::processEvents();
    }

    Document document_;
    testing::AnsweringPrompts prompts_;
    PartForm form_;
    std::size_t index_ = 0;
};

// A form that rises 13/16 gave slats that rise 3/4: 1/13 of the rise is lost, and a rise of 3/4 is
// to be had from a form of 13/16. Two such figures are typed as the maker has them.
TEST_F(PartRows, SpringbackFoundOnOnesOwnFormIsTypedAsAShare) {
    start(testing::sample("armchair"), "back slat");
    const auto formRise = [&] {
        const ResolvedPiece& piece = document_.resolved();
        const auto slat = std::find_if(piece.parts.begin(), piece.parts.end(), [](const auto& one) {
            return one.of == "back slat";
        });
        return slat->bend->formRise().inches();
    };
    type(u"springback found"_s, u"(13/16 - 3/4) / (13/16)"_s);
    EXPECT_NEAR(formRise(), 0.8125, 2e-3);
    EXPECT_EQ(field(u"springback found"_s)->text(), u"0.07692"_s);

    type(u"springback found"_s, u"0.25"_s);
    EXPECT_NEAR(formRise(), 1.0, 1e-2);

    type(u"plies"_s, u"2.5"_s);
    EXPECT_EQ(document_.piece().parts[index_].bend->plies, "4") << "plies are whole";
}

// Planed too far: the rail's joints are worked out for what is there, and say so.
TEST_F(PartRows, AThicknessFoundAtTheBenchIsTypedAndTheJointsFollow) {
    start(testing::twoPostsAndARail(), "rail");
    type(u"thickness, found"_s, u"3/4"_s);

    const ResolvedPiece& piece = document_.resolved();
    EXPECT_NEAR(piece.parts[*piece.findPart("rail")].thickness.value.inches(), 0.75, 1e-12);
    EXPECT_NEAR(piece.joints.at(0).tenon.thickness.value.inches(), 0.25, 1e-12);
    document_.undoStack().undo();
    EXPECT_TRUE(document_.piece().parts[index_].foundThickness.empty());
}

class EasingRows : public PartRows {
  protected:
    EasingRows() {
        Piece piece = testing::twoPostsAndARail();
        EasingStatement chamfer;
        chamfer.size = "1/4 in";
        testing::statedPart(piece, "rail").easings = {chamfer};
        start(piece, "rail");
    }
    [[nodiscard]] const EasingStatement& easing() const {
        return document_.piece().parts[index_].easings.at(0);
    }
};

TEST_F(EasingRows, SizesAndStopsAreTyped) {
    type(u"size"_s, u"3/8"_s);
    type(u"begins from the start"_s, u"2"_s);
    type(u"ends from the far end"_s, u"3"_s);

    const ResolvedPiece& piece = document_.resolved();
    const ResolvedEasing& made = piece.parts[*piece.findPart("rail")].easings.at(0);
    EXPECT_NEAR(made.size.inches(), 0.375, 1e-9);
    EXPECT_NEAR(made.from->inches(), 2.0, 1e-9);
    EXPECT_NEAR(made.to->inches(), 17.0, 1e-9);
    document_.undoStack().undo();
    EXPECT_TRUE(easing().fromFar.empty());
}

TEST_F(EasingRows, ASizeThatCannotBeMadeIsTakenAndToldInTheFindings) {
    type(u"size"_s, u"1 in"_s);

    EXPECT_EQ(easing().size, "1 in");
    EXPECT_TRUE(std::any_of(
        document_.findings().begin(), document_.findings().end(), [](const Finding& finding) {
            return finding.message.find("can be made") != std::string::npos;
        }));
}

class SurveyTable : public ::testing::Test {
  protected:
    SurveyTable() : document_(testing::resources()) {
        Piece piece = testing::twoPostsAndARail();
        piece.measures = {{"front width", "20 in", "", "", "", "", ""},
                          {"back width", "front width - 3 in", "", "", "", "", ""}};
        document_.start(piece, {});
        dialog_ = std::make_unique<SurveyDialog>(document_);
        table_ = dialog_->findChild<QTableWidget*>(u"surveyTable"_s);
    }
    [[nodiscard]] QString cell(int row, int column) const {
        return table_->item(row, column)->text();
    }

    Document document_;
    std::unique_ptr<SurveyDialog> dialog_;
    QTableWidget* table_ = nullptr;
};

// 20 1/4 - 3 = 17 1/4, and 17 was found: 1/4 in less.
TEST_F(SurveyTable, TellsWhereFiguresDifferAndByHowMuchTheyDoNotClose) {
    table_->item(0, 1)->setText(u"20 1/4 in"_s);
    table_->item(1, 1)->setText(u"17 in"_s);

    EXPECT_EQ(cell(0, 3), u"1/4\u00A0in more"_s);
    EXPECT_EQ(cell(1, 3), u"as chosen"_s);
    EXPECT_EQ(cell(1, 4), u"17 1/4\u00A0in"_s);
    EXPECT_EQ(cell(1, 5), u"1/4\u00A0in less"_s);
    document_.undoStack().undo();
    EXPECT_EQ(cell(1, 5), QString());
}

TEST_F(SurveyTable, WhatCannotBeReadIsToldAndTakenBack) {
    table_->item(0, 1)->setText(u"20 boats"_s);

    EXPECT_TRUE(document_.piece().measures.front().found.empty());
    EXPECT_FALSE(dialog_->findChild<QLabel*>(u"surveyTold"_s)->text().isEmpty());
}

}  // namespace
}  // namespace shoulderline
