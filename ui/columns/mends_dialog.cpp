#include "ui/columns/mends_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "core/check/mend_effect.h"
#include "core/drawing/meeting_drawing.h"
#include "ui/canvas/sheet_canvas.h"
#include "ui/columns/section.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

MendsDialog::MendsDialog(Document& document, const Finding& finding, QWidget* parent)
    : QDialog(parent), document_(document), finding_(finding) {
    setObjectName(u"mends"_s);
    setWindowTitle(tr("Ways to Mend"));
    auto* layout = new QVBoxLayout(this);
    auto* sentence = new QLabel(qt(finding_.message), this);
    sentence->setWordWrap(true);
    layout->addWidget(sentence);
    auto* beside = new QSplitter(Qt::Horizontal, this);
    beside->setChildrenCollapsible(false);
    beside->addWidget(makeMends());
    if (QWidget* section = makeSection()) {
        beside->addWidget(section);
    }
    layout->addWidget(beside, 1);
    auto* caution = makeSoftLabel(qt(document_.resources().strength.caution()), 0.9, this);
    caution->setWordWrap(true);
    layout->addWidget(caution);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    take_ = buttons->addButton(tr("&Take It"), QDialogButtonBox::AcceptRole);
    take_->setDefault(true);
    take_->setEnabled(!choices_.empty());
    connect(take_, &QPushButton::clicked, this, &MendsDialog::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    layout->addWidget(buttons);
    resize(860, 520);
    if (!choices_.empty()) {
        choices_.front()->setChecked(true);
        choices_.front()->setFocus();
    }
}

QWidget* MendsDialog::makeMends() {
    auto* area = new QScrollArea(this);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFocusPolicy(Qt::NoFocus);
    auto* list = new QWidget;
    auto* column = new QVBoxLayout(list);
    const Resources& resources = document_.resources();
    const Workbench bench{
        resources.rules, resources.workshop, resources.species, resources.strength};
    for (std::size_t i = 0; i < finding_.mends.size(); ++i) {
        const Mend& mend = finding_.mends[i];
        QStringList lines;
        if (const std::optional<MendEffect> effect =
                effectOf(document_.piece(), document_.resolved(), finding_, mend, bench)) {
            for (const std::string& line : effectLines(document_.piece(), *effect)) {
                lines << qt(line);
            }
        }
        if (mend.edit) {
            auto* choice = new QRadioButton(qt(mend.text), list);
            choice->setAccessibleDescription(lines.join(u"; "_s));
            column->addWidget(choice);
            choices_.push_back(choice);
            mendOf_.push_back(i);
        } else {
            column->addWidget(new QLabel(qt(mend.text), list));
        }
        auto* told = makeSoftLabel(lines.join(u"\n"_s), 0.92, list);
        told->setWordWrap(true);
        told->setContentsMargins(24, 0, 0, 6);
        column->addWidget(told);
    }
    column->addStretch(1);
    area->setWidget(list);
    area->setMinimumWidth(380);
    return area;
}

QWidget* MendsDialog::makeSection() {
    if (!finding_.joint || finding_.parts.empty()) {
        return nullptr;
    }
    Sheet sheet = meetingDrawing(document_.piece(),
                                 document_.resolved(),
                                 finding_.parts.front(),
                                 *finding_.joint,
                                 finding_.otherJoint,
                                 metrics_);
    if (sheet.ops.empty()) {
        return nullptr;
    }
    auto* canvas = new SheetCanvas(this);
    canvas->setAccessibleName(tr("section where they meet: %1").arg(qt(sheet.title)));
    canvas->setMinimumWidth(260);
    canvas->show(std::move(sheet));
    return canvas;
}

void MendsDialog::take() {
    for (std::size_t i = 0; i < choices_.size(); ++i) {
        if (!choices_[i]->isChecked()) {
            continue;
        }
        const Result<void> taken = document_.apply(*finding_.mends[mendOf_[i]].edit);
        if (!taken) {
            take_->setToolTip(qt(taken.error().message));
            return;
        }
        accept();
        return;
    }
}

}  // namespace shoulderline
