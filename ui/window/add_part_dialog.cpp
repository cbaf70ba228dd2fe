#include "ui/window/add_part_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <algorithm>

#include "core/piece/roles.h"
#include "ui/look/text.h"

namespace shoulderline {

namespace {

enum Placed { StandsIndex, SpansIndex, CapsIndex, FillsIndex, FreeIndex };

}  // namespace

AddPartDialog::AddPartDialog(const Piece& piece, QWidget* parent) : QDialog(parent), piece_(piece) {
    setWindowTitle(tr("Add Part"));
    auto* form = new QFormLayout(this);
    name_ = new QLineEdit(this);
    role_ = new QComboBox(this);
    for (const Role role : kRoles) {
        role_->addItem(qt(wordFor(role)));
    }
    stock_ = new QComboBox(this);
    for (const Stock& stock : piece_.stocks) {
        stock_->addItem(qt(stock.name));
    }
    placed_ = new QComboBox(this);
    placed_->addItems({tr("stands on the floor"),
                       tr("spans between two parts"),
                       tr("caps other parts"),
                       tr("fills a frame of four"),
                       tr("free, at a point")});
    pair_ = new QCheckBox(tr("left and right &pair"), this);
    form->addRow(tr("&Name"), name_);
    form->addRow(tr("&Role"), role_);
    form->addRow(tr("&Stock"), stock_);
    form->addRow(tr("P&laced"), placed_);
    form->addRow(QString(), pair_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    add_ = buttons->addButton(tr("&Add"), QDialogButtonBox::AcceptRole);
    add_->setEnabled(false);
    form->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(name_, &QLineEdit::textChanged, this, [this](const QString& text) {
        const std::string name = utf8(text.simplified());
        const bool isTaken = std::any_of(piece_.parts.begin(),
                                         piece_.parts.end(),
                                         [&](const Part& part) { return part.name == name; });
        add_->setEnabled(!name.empty() && !isTaken);
    });
    if (piece_.parts.size() >= 2) {
        role_->setCurrentText(qt(wordFor(Role::Rail)));
        placed_->setCurrentIndex(SpansIndex);
    }
}

Relation AddPartDialog::relation() const {
    const std::string first = piece_.parts.empty() ? std::string() : piece_.parts.front().name;
    const std::string second = piece_.parts.size() < 2 ? first : piece_.parts[1].name;
    const bool isInch = piece_.unit == Unit::Inch;
    const std::string zero = isInch ? "0 in" : "0 mm";
    const std::string high = isInch ? "12 in" : "300 mm";
    switch (placed_->currentIndex()) {
        case StandsIndex: {
            Stands stands;
            stands.x = {Side::Right, high};
            stands.y = {Side::Front, zero};
            stands.height = high;
            return stands;
        }
        case SpansIndex: {
            Spans spans;
            spans.from = first;
            spans.to = second;
            spans.level = Position{Side::Top, high};
            return spans;
        }
        case CapsIndex: {
            Caps caps;
            caps.on = {first, second};
            return caps;
        }
        case FillsIndex: {
            Fills fills;
            fills.edges = {first, second};
            fills.ends = {second, first};
            return fills;
        }
        default: {
            Free free;
            free.length = high;
            return free;
        }
    }
}

Part AddPartDialog::part() const {
    Part part;
    part.name = utf8(name_->text().simplified());
    part.role = fromWord<Role>(utf8(role_->currentText())).value_or(Role::Rail);
    part.stock = utf8(stock_->currentText());
    part.pair = pair_->isChecked();
    if (placed_->currentIndex() != FillsIndex) {  // as wide as what it fills
        part.width = piece_.unit == Unit::Inch ? "3 in" : "75 mm";
    }
    part.relation = relation();
    return part;
}

}  // namespace shoulderline
