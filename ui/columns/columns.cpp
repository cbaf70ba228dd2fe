#include "ui/columns/columns.h"

#include <QApplication>
#include <QScrollBar>
#include <QVBoxLayout>

#include "core/resolve/sitting.h"
#include "ui/columns/section.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

QVBoxLayout* makeColumn(QScrollArea& area) {
    area.setObjectName(u"column"_s);
    area.setWidgetResizable(true);
    area.setFrameShape(QFrame::NoFrame);
    area.setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area.setFocusPolicy(Qt::NoFocus);
    auto* inside = new QWidget;
    auto* layout = new QVBoxLayout(inside);
    layout->setContentsMargins(16, 2, 12, 12);
    layout->setSpacing(2);
    area.setWidget(inside);
    // The column follows the focus, also to a row that has just been made and lies nowhere yet; but
    // nothing moves away from under a button of the mouse.
    QObject::connect(qApp, &QApplication::focusChanged, &area, [&area](QWidget*, QWidget* now) {
        const bool isByMouse = QApplication::mouseButtons() != Qt::NoButton;
        if (now != nullptr && !isByMouse && area.widget()->isAncestorOf(now)) {
            QMetaObject::invokeMethod(
                now, [&area, now] { area.ensureWidgetVisible(now); }, Qt::QueuedConnection);
        }
    });
    return layout;
}

}  // namespace

StatedColumn::StatedColumn(Document& document, Afterglow& glow, Prompts& prompts, QWidget* parent)
    : QScrollArea(parent) {
    QVBoxLayout* layout = makeColumn(*this);
    measures_ = new MeasuresList(document, glow, prompts, widget());
    layout->addWidget(measures_);
    auto* heading = new SectionHeading(tr("Parts"), widget());
    connect(heading->addCommand(tr("add"), tr("add a part")),
            &TextButton::clicked,
            this,
            &StatedColumn::addPartAsked);
    layout->addWidget(heading);
    parts_ = new PartTree(document, widget());
    layout->addWidget(parts_);
    stocks_ = new StockList(document, prompts, widget());
    layout->addWidget(stocks_);
    layout->addStretch(1);
}

FollowingColumn::FollowingColumn(Document& document, Prompts& prompts, QWidget* parent)
    : QScrollArea(parent), document_(document) {
    QVBoxLayout* layout = makeColumn(*this);
    layout->addWidget(new RippleList(document, widget()));
    auto* line = new QFrame(widget());
    line->setFrameShape(QFrame::HLine);
    line->setForegroundRole(QPalette::Midlight);
    line->setContentsMargins(0, 8, 0, 0);
    layout->addSpacing(10);
    layout->addWidget(line);
    layout->addWidget(new SectionHeading(tr("Chosen"), widget()));
    nothing_ = makeSoftLabel(tr("Choose a part in a drawing or in the list: its sizes, where each "
                                "comes from, and why, are told here."),
                             0.92,
                             widget());
    nothing_->setWordWrap(true);
    sitting_ = new QLabel(widget());
    sitting_->setObjectName(u"sitting"_s);
    sitting_->setWordWrap(true);
    toPart_ = new TextButton({}, TextButton::Kind::Action, widget());
    toPart_->setBold(false);
    connect(toPart_, &TextButton::clicked, this, [this] {
        document_.choosePart(document_.chosenPart());
    });
    part_ = new PartPanel(document, prompts, widget());
    joint_ = new JointPanel(document, widget());
    layout->addWidget(nothing_);
    layout->addWidget(sitting_);
    layout->addWidget(part_);
    layout->addWidget(joint_);
    layout->addWidget(toPart_, 0, Qt::AlignLeft);
    layout->addStretch(1);
    connect(&document_, &Document::changed, this, &FollowingColumn::refresh);
    connect(&document_, &Document::chosenChanged, this, &FollowingColumn::refresh);
    refresh();
}

void FollowingColumn::refresh() {
    const bool hasJoint = document_.chosenJoint().has_value();
    const std::optional<std::size_t> part = document_.chosenPart();
    nothing_->setVisible(!part && !hasJoint);
    showSitting(!part && !hasJoint);
    part_->setVisible(part && !hasJoint);
    joint_->setVisible(hasJoint);
    toPart_->setVisible(hasJoint && part);
    if (hasJoint) {
        joint_->refresh();
        if (part) {
            toPart_->setText(tr("to %1").arg(qt(document_.resolved().parts[*part].name)));
        }
    } else if (part) {
        part_->refresh();
    }
}

void FollowingColumn::showSitting(bool isWanted) {
    const std::optional<Sitting> sitting =
        isWanted ? sittingOn(document_.resolved()) : std::nullopt;
    sitting_->setVisible(sitting.has_value());
    if (sitting) {
        sitting_->setText(
            tr("Sitting: %1.").arg(qt(sittingText(*sitting, document_.piece().style))));
    }
}

}  // namespace shoulderline
