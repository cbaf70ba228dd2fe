#include "ui/columns/findings_strip.h"

#include <QHBoxLayout>
#include <QMenu>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/columns/mends_dialog.h"
#include "ui/columns/section.h"
#include "ui/look/label.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"
#include "ui/prompts/prompts.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

QColor colourOf(Severity severity, const Theme& theme) {
    switch (severity) {
        case Severity::MustMend:
            return theme.brick;
        case Severity::LookAt:
            return theme.amber;
        case Severity::Note:
            return theme.softInk;
    }
    return theme.ink;
}

}  // namespace

FindingsStrip::FindingsStrip(Document& document, Prompts& prompts, QWidget* parent)
    : QWidget(parent), document_(document), prompts_(prompts) {
    setObjectName(u"findings"_s);
    setAttribute(Qt::WA_StyledBackground);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(18, 4, 8, 4);
    layout->setSpacing(0);
    auto* head = new QHBoxLayout;
    head->addWidget(new SectionHeading(tr("Findings"), this));
    head->addSpacing(10);
    summary_ = makeSoftLabel({}, 0.92, this);
    summary_->setContentsMargins(0, 10, 0, 4);
    head->addWidget(summary_);
    head->addStretch(1);
    layout->addLayout(head);
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    list_ = new QWidget;
    auto* column = new QVBoxLayout(list_);
    column->setContentsMargins(0, 0, 10, 4);
    grid_ = new QGridLayout;
    grid_->setHorizontalSpacing(10);
    grid_->setVerticalSpacing(2);
    grid_->setColumnMinimumWidth(1, 74);
    grid_->setColumnStretch(2, 1);
    column->addLayout(grid_);
    column->addStretch(1);
    scroll->setWidget(list_);
    layout->addWidget(scroll, 1);
    connect(&document_, &Document::changed, this, &FindingsStrip::refresh);
    refresh();
}

FindingsStrip::Row FindingsStrip::makeRow(int at) {
    Row row;
    row.mark = new SeverityMark(Severity::Note, list_);
    row.word = new Label(list_);
    QFont bold = row.word->font();
    bold.setWeight(QFont::DemiBold);
    row.word->setFont(bold);
    row.sentence = new TextButton({}, TextButton::Kind::Plain, list_);
    row.sentence->setWordWrap(true);
    row.mend = new TextButton({}, TextButton::Kind::Action, list_);
    const auto finding = [this, at]() -> const Finding& {
        return document_.findings()[static_cast<std::size_t>(at)];
    };
    connect(row.sentence, &TextButton::clicked, this, [this, finding] { lead(finding()); });
    connect(row.mend, &TextButton::clicked, this, [this, finding, button = row.mend] {
        mend(finding(), *button);
    });
    grid_->addWidget(row.mark, at, 0, Qt::AlignVCenter);
    grid_->addWidget(row.word, at, 1, Qt::AlignVCenter);
    grid_->addWidget(row.sentence, at, 2);
    grid_->addWidget(row.mend, at, 3, Qt::AlignRight | Qt::AlignVCenter);
    return row;
}

void FindingsStrip::refresh() {
    const std::vector<Finding>& findings = document_.findings();
    while (rows_.size() < findings.size()) {
        rows_.push_back(makeRow(static_cast<int>(rows_.size())));
    }
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        const bool isThere = i < findings.size();
        Row& row = rows_[i];
        for (QWidget* widget : {static_cast<QWidget*>(row.mark),
                                static_cast<QWidget*>(row.word),
                                static_cast<QWidget*>(row.sentence),
                                static_cast<QWidget*>(row.mend)}) {
            widget->setVisible(isThere);
        }
        if (isThere) {
            showRow(row, findings[i]);
        }
    }
    const auto count = [&](Severity severity) {
        return std::count_if(findings.begin(), findings.end(), [severity](const Finding& one) {
            return one.severity == severity;
        });
    };
    QStringList counts;
    for (const Severity severity : {Severity::MustMend, Severity::LookAt, Severity::Note}) {
        if (const auto n = count(severity); n > 0) {
            const bool areNotes = severity == Severity::Note && n > 1;
            counts << u"%1 %2"_s.arg(n).arg(areNotes ? tr("notes") : qt(wordFor(severity)));
        }
    }
    summary_->setText(counts.isEmpty() ? tr("nothing to mend") : counts.join(u" · "_s));
}

void FindingsStrip::showRow(Row& row, const Finding& finding) {
    row.mark->setSeverity(finding.severity);
    row.word->setText(qt(wordFor(finding.severity)));
    setInk(*row.word, colourOf(finding.severity, Theme::of(palette())));
    row.sentence->setText(qt(finding.message));
    row.sentence->setAccessibleName(row.word->text() + u": "_s + row.sentence->text());
    row.sentence->setToolTip(qt(finding.source));
    row.sentence->updateGeometry();
    // Where joints meet there is a section to look at, too.
    const bool isMeeting = finding.rule == RuleId::MortiseGapLeast && finding.joint;
    row.mend->setVisible(isMeeting || !finding.mends.empty());
    if (isMeeting && finding.mends.size() < 2) {
        row.mend->setText(tr("look inside"));
    } else if (finding.mends.size() == 1 && finding.mends.front().edit) {
        row.mend->setText(qt(finding.mends.front().text));
    } else if (!finding.mends.empty()) {
        row.mend->setText(finding.mends.size() == 1
                              ? tr("a way to mend")
                              : tr("%1 ways to mend").arg(finding.mends.size()));
    }
    row.mend->setAccessibleName(tr("%1: %2").arg(row.mend->text(), row.sentence->text()));
    row.mend->updateGeometry();
}

void FindingsStrip::lead(const Finding& finding) {
    if (finding.joint) {
        document_.chooseJoint(finding.joint);
    } else if (!finding.parts.empty()) {
        document_.choosePart(finding.parts.front());
    } else {
        return;
    }
    Q_EMIT led();
}

void FindingsStrip::applyMend(const Mend& mend) {
    if (!mend.edit) {
        return;
    }
    const Mend copy = mend;  // the change makes other findings
    if (const Result<void> done = document_.apply(*copy.edit); !done) {
        prompts_.tell(this, qt(done.error().message));
    }
}

void FindingsStrip::mend(const Finding& finding, QWidget& under) {
    const bool isMeeting = finding.rule == RuleId::MortiseGapLeast && finding.joint;
    if (!isMeeting && finding.mends.size() == 1 && finding.mends.front().edit) {
        applyMend(finding.mends.front());
        return;
    }
    if (isMeeting) {
        MendsDialog dialog(document_, finding, window());
        dialog.exec();
        return;
    }
    QMenu menu(this);
    for (const Mend& one : finding.mends) {
        QAction* action = menu.addAction(qt(one.text));
        action->setEnabled(one.edit.has_value());
        connect(action, &QAction::triggered, this, [this, one] { applyMend(one); });
    }
    menu.exec(under.mapToGlobal(QPoint(0, under.height())));
}

}  // namespace shoulderline
