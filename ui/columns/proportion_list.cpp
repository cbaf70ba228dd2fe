#include "ui/columns/proportion_list.h"

#include <QHBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/columns/house_rule_dialog.h"
#include "ui/columns/section.h"
#include "ui/look/label.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr double kSmall = 0.9;

QString proportionText(const Document& document, double value, bool isLength) {
    return isLength ? qt(document.shown(Length::mm(value))) : QString::number(value, 'f', 2);
}

QString rangeText(const Document& document, const Proportion& one) {
    const auto figure = [&](double value) { return proportionText(document, value, one.isLength); };
    if (one.low && one.high) {
        return ProportionList::tr("%1 to %2").arg(figure(*one.low), figure(*one.high));
    }
    if (one.low) {
        return ProportionList::tr("at least %1").arg(figure(*one.low));
    }
    return one.high ? ProportionList::tr("at most %1").arg(figure(*one.high))
                    : ProportionList::tr("any");
}

const Size& smallestShoulder(const Shoulders& shoulders, bool isBareFaced) {
    const Size* least = &shoulders.faceSide;
    for (const Size* one : {&shoulders.backSide, &shoulders.faceEdge, &shoulders.backEdge}) {
        const bool isMeantToBeNone = isBareFaced && one == &shoulders.backSide;
        if (!isMeantToBeNone && one->value < least->value) {
            least = one;
        }
    }
    return *least;
}

// The size that a proportion is about, and its name.
std::pair<QString, const Size*> sizeBehind(const ResolvedJoint& joint, RuleId rule) {
    const Tenon& tenon = joint.tenon;
    if (rule == RuleId::TenonThicknessShare) {
        return {ProportionList::tr("tenon thickness"), &tenon.thickness};
    }
    if (rule == RuleId::TenonWidthRatio) {
        return {ProportionList::tr("tenon width"), &tenon.width};
    }
    if (rule == RuleId::TenonLengthShare || rule == RuleId::TenonLengthRatioLeast) {
        return {ProportionList::tr("tenon length"), &tenon.length};
    }
    if (rule == RuleId::ThroughProjection) {
        return {ProportionList::tr("projection"), &tenon.projection};
    }
    if (rule == RuleId::MortiseFloorLeast) {
        return {ProportionList::tr("mortise depth"), &joint.mortise.depth};
    }
    if (rule == RuleId::MortiseWallLeast) {
        return {ProportionList::tr("mortise from %1").arg(qt(wordFor(joint.mortise.reference))),
                &joint.mortise.fromFace};
    }
    if (rule == RuleId::MortiseEndLeast) {
        return {ProportionList::tr("mortise from the end"), &joint.mortise.fromStart};
    }
    return {ProportionList::tr("smallest shoulder"),
            &smallestShoulder(tenon.shoulders, joint.has(JointFeature::BareFaced))};
}

}  // namespace

ProportionList::ProportionList(Document& document, QWidget* parent)
    : QWidget(parent), document_(document) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 0, 12, 10);
    layout->setSpacing(4);
    layout->addWidget(new SectionHeading(tr("Proportions"), this));
    nothing_ = makeSoftLabel(tr("No wood joint is chosen."), 0.92, this);
    layout->addWidget(nothing_);
    rowsLayout_ = new QVBoxLayout;
    rowsLayout_->setSpacing(7);
    layout->addLayout(rowsLayout_);
    why_ = new WhyBox(document_, this);
    layout->addWidget(why_);
    layout->addStretch(1);
}

ProportionList::Row ProportionList::makeRow() {
    Row row;
    row.holder = new QWidget(this);
    auto* grid = new QGridLayout(row.holder);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(8);
    grid->setVerticalSpacing(0);
    row.subject = new TextButton({}, TextButton::Kind::Plain, row.holder);
    row.subject->setToolTip(tr("why this size is what it is"));
    row.figure = new Label(row.holder);
    row.bar = new GaugeBar(row.holder);
    row.range = makeSoftLabel({}, kSmall, row.holder);
    row.range->setWordWrap(true);
    row.house = new TextButton({}, TextButton::Kind::Action, row.holder);
    row.house->setBold(false);
    QFont small = row.house->font();
    small.setPointSizeF(small.pointSizeF() * kSmall);
    row.house->setFont(small);
    QFont bold = row.figure->font();
    bold.setWeight(QFont::DemiBold);
    row.figure->setFont(bold);
    grid->addWidget(row.subject, 0, 0);
    grid->addWidget(row.figure, 0, 1, Qt::AlignRight);
    grid->addWidget(row.bar, 1, 0, 1, 2);
    grid->addWidget(row.range, 2, 0);
    grid->addWidget(row.house, 2, 1, Qt::AlignRight | Qt::AlignTop);
    grid->setColumnStretch(0, 1);
    rowsLayout_->addWidget(row.holder);
    const std::size_t index = rows_.size();
    connect(row.subject, &TextButton::clicked, this, [this, index] { openWhy(rows_[index].rule); });
    connect(
        row.house, &TextButton::clicked, this, [this, index] { openHouseRule(rows_[index].rule); });
    return row;
}

void ProportionList::showRow(Row& row, const Proportion& one) {
    const Rule& rule = document_.resolved().rules[one.rule];
    const Theme theme = Theme::of(palette());
    row.rule = one.rule;
    row.subject->setText(qt(one.subject));
    const QString word = one.isLow() ? tr("low") : one.isHigh() ? tr("high") : QString();
    const QString figure = proportionText(document_, one.value, one.isLength);
    row.figure->setText(word.isEmpty() ? figure : word + u"  "_s + figure);
    setInk(*row.figure, word.isEmpty() ? theme.ink : theme.amber);
    const QString range = rangeText(document_, one);
    row.range->setText(
        range + u" · "_s +
        (rule.isHouseRule ? tr("house rule over: %1").arg(qt(rule.source)) : qt(rule.source)));
    row.house->setText(rule.isHouseRule ? tr("your rule") : tr("house rule"));
    row.house->setAccessibleName(
        (rule.isHouseRule ? tr("your house rule for %1") : tr("house rule for %1"))
            .arg(qt(one.subject)));
    row.house->setToolTip(tr("sets a house rule in the place of this one"));
    row.bar->setAccessibleName(tr("%1: %2; %3").arg(qt(one.subject), row.figure->text(), range));
    row.bar->show(one.value, one.low, one.high);
}

void ProportionList::refresh() {
    const std::optional<std::size_t> joint = document_.chosenJoint();
    const std::vector<Proportion> all =
        joint ? proportionsOf(document_.resolved(), *joint) : std::vector<Proportion>();
    while (rows_.size() < all.size()) {
        rows_.push_back(makeRow());
    }
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        rows_[i].holder->setVisible(i < all.size());
        if (i < all.size()) {
            showRow(rows_[i], all[i]);
        }
    }
    nothing_->setVisible(all.empty());
    const bool hasWhy = whyOf_ && std::any_of(all.begin(), all.end(), [this](const Proportion& p) {
                            return p.rule == *whyOf_;
                        });
    why_->setVisible(hasWhy);
    if (hasWhy) {
        openWhy(*whyOf_);
    }
}

void ProportionList::openWhy(RuleId rule) {
    const std::optional<std::size_t> joint = document_.chosenJoint();
    if (!joint) {
        return;
    }
    whyOf_ = rule;
    const auto& [name, size] = sizeBehind(document_.resolved().joints[*joint], rule);
    // Beneath the gauge that it was asked of.
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (rows_[i].holder->isVisibleTo(this) && rows_[i].rule == rule) {
            rowsLayout_->removeWidget(why_);
            rowsLayout_->insertWidget(rowsLayout_->indexOf(rows_[i].holder) + 1, why_);
        }
    }
    why_->show(name, *size);
    why_->setVisible(true);
}

void ProportionList::openHouseRule(RuleId rule) {
    HouseRuleDialog dialog(document_, rule, window());
    dialog.exec();
}

}  // namespace shoulderline
