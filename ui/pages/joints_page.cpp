#include "ui/pages/joints_page.h"

#include <QHeaderView>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "core/drawing/sheets.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr int kRoomForOwn = 620;
constexpr int kRoomForKind = 500;
constexpr int kRoomForStrength = 560;

}  // namespace

JointsPage::JointsPage(Document& document, QWidget* parent)
    : BoardPage(parent), document_(document) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* splitter = new QSplitter(Qt::Vertical, this);
    splitter->setObjectName(u"jointsSplitter"_s);
    splitter->setHandleWidth(1);
    splitter->setChildrenCollapsible(false);
    table_ = new JointTable(document_, this);
    sorted_ = new QSortFilterProxyModel(this);
    sorted_->setSourceModel(table_);
    sorted_->setSortRole(JointTable::kSortRole);
    view_ = new QTableView(splitter);
    view_->setAccessibleName(tr("joints"));
    view_->setModel(sorted_);
    view_->setSelectionBehavior(QAbstractItemView::SelectRows);
    view_->setSelectionMode(QAbstractItemView::SingleSelection);
    view_->setSortingEnabled(true);
    view_->sortByColumn(-1, Qt::AscendingOrder);
    view_->setShowGrid(false);
    view_->setWordWrap(false);
    view_->setTabKeyNavigation(false);
    view_->verticalHeader()->hide();
    view_->verticalHeader()->setDefaultSectionSize(view_->fontMetrics().height() + 8);
    view_->horizontalHeader()->setHighlightSections(false);
    view_->horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    const int figure = view_->fontMetrics().horizontalAdvance(u"• 12 15/16"_s);
    for (int column = JointTable::Kind; column < JointTable::Count; ++column) {
        view_->setColumnWidth(column, column >= JointTable::Bears ? figure * 3 / 2 : figure);
    }
    view_->setColumnWidth(JointTable::Kind, figure * 5 / 4);  // "through + 2"
    view_->setTextElideMode(Qt::ElideMiddle);
    view_->horizontalHeader()->setSectionResizeMode(JointTable::Name, QHeaderView::Stretch);
    view_->setMinimumHeight(110);
    canvas_ = new SheetCanvas(splitter);
    canvas_->setAccessibleName(tr("joint drawing"));
    canvas_->setHint(tr("Choose a joint in the table to see it large."));
    splitter->addWidget(makeJudgement());
    splitter->setSizes({170, 330, 260});
    splitter->setStretchFactor(0, 0);
    splitter->setStretchFactor(1, 1);
    splitter->setStretchFactor(2, 0);
    layout->addWidget(splitter);
    connect(view_->selectionModel(),
            &QItemSelectionModel::currentRowChanged,
            this,
            &JointsPage::chooseCurrent);
    connect(view_, &QTableView::clicked, this, &JointsPage::chooseCurrent);
    connect(canvas_, &Canvas::picked, this, [this](const Subject& subject) {
        if (subject.kind == SubjectKind::Joint) {
            document_.chooseJoint(subject.index);
        }
    });
    const auto refreshIfSeen = [this] {
        if (isVisible()) {
            refresh();
        }
    };
    connect(&document_, &Document::changed, this, refreshIfSeen);
    connect(&document_, &Document::chosenChanged, this, refreshIfSeen);
}

// Proportions beside strength and, under it, set-ups; each side scrolling by itself.
QWidget* JointsPage::makeJudgement() {
    auto* beside = new QSplitter(Qt::Horizontal, this);
    beside->setObjectName(u"judgementSplitter"_s);
    beside->setHandleWidth(1);
    beside->setChildrenCollapsible(false);
    beside->setMinimumHeight(120);
    proportions_ = new ProportionList(document_);
    strength_ = new StrengthPanel(document_);
    setUps_ = new SetUpList(document_);
    auto* bench = new QWidget;
    auto* column = new QVBoxLayout(bench);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(strength_);
    column->addWidget(setUps_);
    column->addStretch(1);
    for (QWidget* inside : {static_cast<QWidget*>(proportions_), bench}) {
        auto* area = new QScrollArea(beside);
        area->setWidgetResizable(true);
        area->setFrameShape(QFrame::NoFrame);
        area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        area->setFocusPolicy(Qt::NoFocus);
        area->setWidget(inside);
    }
    constexpr int kAlike = 400;
    beside->setSizes({kAlike, kAlike});
    return beside;
}

void JointsPage::showEvent(QShowEvent* event) {
    BoardPage::showEvent(event);
    const ResolvedPiece& resolved = document_.resolved();
    if (!document_.chosenJoint() && !resolved.joints.empty()) {
        std::size_t first = 0;
        const std::optional<std::size_t> part = document_.chosenPart();
        for (std::size_t i = resolved.joints.size(); part && i > 0; --i) {
            if (resolved.joints[i - 1].tenoned == *part ||
                resolved.joints[i - 1].mortised == *part) {
                first = i - 1;
            }
        }
        document_.chooseJoint(first);
    }
    refresh();
}

void JointsPage::refresh() {
    isShowing_ = true;
    const std::optional<std::size_t> joint = document_.chosenJoint();
    bool hasOwn = false;
    for (int row = 0; row < table_->rowCount(); ++row) {
        hasOwn = hasOwn || !table_->index(row, JointTable::Own).data().toString().isEmpty();
    }
    view_->setColumnHidden(JointTable::Kind, view_->width() < kRoomForKind);
    for (const int column : {JointTable::Bears, JointTable::Worked}) {
        view_->setColumnHidden(column, view_->width() < kRoomForStrength);
    }
    view_->setColumnHidden(JointTable::Own, !hasOwn || view_->width() < kRoomForOwn);
    if (joint) {
        const QModelIndex row = sorted_->mapFromSource(table_->index(static_cast<int>(*joint), 0));
        if (row != view_->currentIndex().siblingAtColumn(0)) {
            view_->setCurrentIndex(row);
        }
        view_->scrollTo(row);
        canvas_->show(jointDrawing(document_.piece(), document_.resolved(), *joint, metrics_));
        canvas_->setChosen({});
    } else {
        view_->clearSelection();
        canvas_->show({});
    }
    proportions_->refresh();
    strength_->refresh();
    setUps_->refresh();
    isShowing_ = false;
}

void JointsPage::chooseCurrent(const QModelIndex& index) {
    if (!isShowing_ && index.isValid()) {
        document_.chooseJoint(static_cast<std::size_t>(sorted_->mapToSource(index).row()));
    }
}

}  // namespace shoulderline
