#include "ui/columns/gauges.h"

#include <QGridLayout>

#include "ui/look/text.h"
#include "ui/look/theme.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

QString figureText(const Document& document, double value, bool isLength) {
    return isLength ? qt(document.shown(Length::mm(value))) : QString::number(value, 'f', 2);
}

}  // namespace

Gauges::Gauges(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
    layout_ = new QVBoxLayout(this);
    layout_->setContentsMargins(0, 0, 0, 0);
    layout_->setSpacing(3);
}

Gauges::Row Gauges::makeRow() {
    Row row;
    row.holder = new QWidget(this);
    auto* grid = new QGridLayout(row.holder);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(0);
    row.subject = new QLabel(row.holder);
    row.figure = new QLabel(row.holder);
    QFont small = row.subject->font();
    small.setPointSizeF(small.pointSizeF() * 0.94);
    row.subject->setFont(small);
    row.figure->setFont(small);
    row.bar = new GaugeBar(row.holder);
    grid->addWidget(row.subject, 0, 0);
    grid->addWidget(row.figure, 0, 1, Qt::AlignRight);
    grid->addWidget(row.bar, 1, 0, 1, 2);
    layout_->addWidget(row.holder);
    return row;
}

void Gauges::show(std::size_t joint) {
    const std::vector<Proportion> all = proportionsOf(document_.resolved(), joint);
    while (rows_.size() < all.size()) {
        rows_.push_back(makeRow());
    }
    const Theme theme = Theme::of(palette());
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        Row& row = rows_[i];
        row.holder->setVisible(i < all.size());
        if (i >= all.size()) {
            continue;
        }
        const Proportion& one = all[i];
        row.subject->setText(qt(one.subject));
        const QString word = one.isLow() ? tr("low") : one.isHigh() ? tr("high") : QString();
        setInk(*row.figure, word.isEmpty() ? theme.ink : theme.amber);
        const QString figure = figureText(document_, one.value, one.isLength);
        row.figure->setText(word.isEmpty() ? figure : word + u"  "_s + figure);
        QString range = tr("any");
        if (one.low && one.high) {
            range = tr("%1 to %2")
                        .arg(figureText(document_, *one.low, one.isLength),
                             figureText(document_, *one.high, one.isLength));
        } else if (one.low) {
            range = tr("at least %1").arg(figureText(document_, *one.low, one.isLength));
        } else if (one.high) {
            range = tr("at most %1").arg(figureText(document_, *one.high, one.isLength));
        }
        row.holder->setToolTip(
            tr("%1 (%2)").arg(range, qt(document_.resolved().rules[one.rule].source)));
        row.bar->setAccessibleName(
            tr("%1: %2; %3").arg(row.subject->text(), row.figure->text(), range));
        row.bar->show(one.value, one.low, one.high);
    }
}

}  // namespace shoulderline
