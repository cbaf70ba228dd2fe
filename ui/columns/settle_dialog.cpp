#include "ui/columns/settle_dialog.h"

#include <QApplication>
#include <QDialogButtonBox>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/columns/section.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

Settlement settled(const Document& document) {
    const Resources& resources = document.resources();
    QApplication::setOverrideCursor(Qt::WaitCursor);
    Settlement settlement =
        settle(document.piece(),
               {resources.rules, resources.workshop, resources.species, resources.strength});
    QApplication::restoreOverrideCursor();
    return settlement;
}

}  // namespace

SettleDialog::SettleDialog(Document& document, QWidget* parent)
    : QDialog(parent), document_(document), settlement_(settled(document)) {
    setObjectName(u"settle"_s);
    setWindowTitle(tr("Settle Joints"));
    auto* layout = new QVBoxLayout(this);
    auto* what = makeSoftLabel(
        tr("Chooses for all joints that meet inside a part together: mitred, shortened, haunched "
           "or double, so that none meet and the weakest is as strong as it can be. Where that is "
           "not enough, a rail is moved a little, within the rule book."),
        0.92,
        this);
    what->setWordWrap(true);
    layout->addWidget(what);
    auto* text = new QPlainTextEdit(qt(settlementText(settlement_)), this);
    text->setObjectName(u"settlement"_s);
    text->setReadOnly(true);
    text->setTabChangesFocus(true);
    text->setAccessibleName(tr("what it would choose"));
    layout->addWidget(text, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    QPushButton* take = buttons->addButton(tr("&Take It"), QDialogButtonBox::AcceptRole);
    take->setDefault(true);
    take->setEnabled(!settlement_.edit.all.empty() || !settlement_.edit.parts.empty());
    connect(take, &QPushButton::clicked, this, &SettleDialog::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    layout->addWidget(buttons);
    resize(560, 340);
}

void SettleDialog::take() {
    if (document_.apply(settlement_.edit)) {
        accept();
    }
}

}  // namespace shoulderline
