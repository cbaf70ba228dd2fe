#include "ui/columns/loads_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "core/check/figure_text.h"
#include "ui/columns/section.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr Side kLoadSides[] = {Side::Back, Side::Front, Side::Left, Side::Right, Side::Bottom};

QString forceText(const Load& load) {
    QStringList forces;
    if (load.newtons > 0.0) {
        forces << qt(estimateText(load.newtons)) + u" N"_s +
                      (load.isTipping ? LoadsDialog::tr(", all that does not tip it") : QString());
    }
    if (load.seatNewtons > 0.0) {
        forces << LoadsDialog::tr("%1 N on the seat").arg(qt(estimateText(load.seatNewtons)));
    }
    return forces.join(u", "_s);
}

}  // namespace

LoadsDialog::LoadsDialog(Document& document, QWidget* parent)
    : QDialog(parent), document_(document) {
    setObjectName(u"loads"_s);
    setWindowTitle(tr("Loads"));
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(8);
    auto* caution = makeSoftLabel(qt(document_.resources().strength.caution()), 0.92, this);
    caution->setWordWrap(true);
    layout->addWidget(caution);
    auto* label = new QLabel(tr("&Loads that reach a joint"), this);
    list_ = new QListWidget(this);
    list_->setObjectName(u"loadList"_s);
    list_->setWordWrap(true);
    list_->setSpacing(3);
    label->setBuddy(list_);
    layout->addWidget(label);
    layout->addWidget(list_, 1);
    makeForm(*layout);
    told_ = new QLabel(this);
    told_->setWordWrap(true);
    layout->addWidget(told_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    state_ = buttons->addButton(tr("&State It"), QDialogButtonBox::ActionRole);
    remove_ = buttons->addButton(tr("Take &Away"), QDialogButtonBox::ActionRole);
    state_->setDefault(true);
    buttons->button(QDialogButtonBox::Close)->setAutoDefault(false);
    remove_->setAutoDefault(false);
    connect(state_, &QPushButton::clicked, this, &LoadsDialog::state);
    connect(remove_, &QPushButton::clicked, this, &LoadsDialog::remove);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    layout->addWidget(buttons);
    connect(list_, &QListWidget::currentRowChanged, this, &LoadsDialog::showChosen);
    resize(560, 600);
    refresh();
    name_->setFocus();
}

void LoadsDialog::makeForm(QLayout& layout) {
    auto* holder = new QWidget(this);
    auto* form = new QFormLayout(holder);
    form->setContentsMargins(0, 0, 0, 0);
    name_ = new QLineEdit(holder);
    name_->setObjectName(u"loadName"_s);
    on_ = new QComboBox(holder);
    for (const Part& part : document_.piece().parts) {
        on_->addItem(qt(part.name));
    }
    towards_ = new QComboBox(holder);
    for (const Side side : kLoadSides) {
        towards_->addItem(side == Side::Bottom ? tr("down")
                                               : tr("to the %1").arg(qt(wordFor(side))));
    }
    newtons_ = new QLineEdit(holder);
    newtons_->setObjectName(u"loadNewtons"_s);
    height_ = new QLineEdit(holder);
    height_->setPlaceholderText(tr("the middle of the part"));
    repeated_ = new QCheckBox(tr("many times &over, as in use"), holder);
    form->addRow(tr("&Name of your load"), name_);
    form->addRow(tr("On &part"), on_);
    form->addRow(tr("&Towards"), towards_);
    form->addRow(tr("&Force, newtons"), newtons_);
    form->addRow(tr("&Height above the floor"), height_);
    form->addRow(QString(), repeated_);
    layout.addWidget(holder);
}

void LoadsDialog::refresh() {
    const QString kept = name_->text();
    list_->clear();
    for (const Load& load : document_.strength().loads) {
        const bool isOwn = load.kind == LoadKind::Stated;
        auto* item = new QListWidgetItem(
            tr("%1: %2\n%3").arg(qt(load.name), forceText(load), qt(load.source)), list_);
        item->setData(Qt::UserRole, isOwn ? qt(load.name) : QString());
        if (isOwn && qt(load.name) == kept) {
            list_->setCurrentItem(item);
        }
    }
    QStringList troubles;
    for (const std::string& trouble : document_.strength().troubles) {
        troubles << tr("not counted: %1").arg(qt(trouble));
    }
    told_->setText(troubles.join(u"\n"_s));
    showChosen();
}

// The maker's own load that is chosen, in the fields; others are only to read.
void LoadsDialog::showChosen() {
    const QListWidgetItem* item = list_->currentItem();
    const QString name = item != nullptr ? item->data(Qt::UserRole).toString() : QString();
    const std::vector<StatedLoad>& loads = document_.piece().use.loads;
    const auto it = std::find_if(loads.begin(), loads.end(), [&](const StatedLoad& load) {
        return load.name == utf8(name);
    });
    remove_->setEnabled(!loads.empty());
    if (name.isEmpty() || it == loads.end()) {
        return;
    }
    name_->setText(name);
    on_->setCurrentText(qt(it->on));
    const auto* side = std::find(std::begin(kLoadSides), std::end(kLoadSides), it->towards);
    towards_->setCurrentIndex(static_cast<int>(side - std::begin(kLoadSides)));
    newtons_->setText(qt(it->newtons));
    height_->setText(qt(it->height));
    repeated_->setChecked(it->isRepeated);
}

StatedLoad LoadsDialog::load() const {
    StatedLoad load;
    const std::vector<StatedLoad>& loads = document_.piece().use.loads;
    const std::string name = utf8(name_->text().simplified());
    const auto it = std::find_if(
        loads.begin(), loads.end(), [&](const StatedLoad& one) { return one.name == name; });
    if (it != loads.end()) {
        load = *it;  // its note, and what this version does not know
    }
    load.name = name;
    load.on = utf8(on_->currentText());
    load.towards = kLoadSides[std::max(0, towards_->currentIndex())];
    load.newtons = utf8(newtons_->text().simplified());
    load.height = utf8(height_->text().simplified());
    load.isRepeated = repeated_->isChecked();
    return load;
}

void LoadsDialog::state() {
    const StatedLoad stated = load();
    const Result<void> done = document_.apply(SetLoad{stated.name, stated});
    if (!done) {
        told_->setText(qt(done.error().message));
        return;
    }
    refresh();
}

void LoadsDialog::remove() {
    const Result<void> done = document_.apply(RemoveLoad{utf8(name_->text().simplified())});
    if (!done) {
        told_->setText(qt(done.error().message));
        return;
    }
    refresh();
}

}  // namespace shoulderline
