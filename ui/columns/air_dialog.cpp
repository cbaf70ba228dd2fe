#include "ui/columns/air_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QGroupBox>
#include <QVBoxLayout>

#include "core/check/figure_text.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

AirDialog::AirDialog(Document& document, QWidget* parent) : QDialog(parent), document_(document) {
    setObjectName(u"air"_s);
    setWindowTitle(tr("Air of the Room"));
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(8);
    const Climate& climate = document_.piece().use.climate;
    dry_ = addAir(*layout, tr("driest of the year"), climate.dry);
    damp_ = addAir(*layout, tr("dampest of the year"), climate.damp);
    told_ = new QLabel(this);
    told_->setWordWrap(true);
    told_->setAccessibleName(tr("what the air comes to"));
    layout->addWidget(told_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    take_ = buttons->addButton(tr("&State It"), QDialogButtonBox::AcceptRole);
    take_->setDefault(true);
    QPushButton* usual = buttons->addButton(tr("&Usual Air"), QDialogButtonBox::ResetRole);
    usual->setAutoDefault(false);
    connect(take_, &QPushButton::clicked, this, [this] { take(this->climate()); });
    connect(usual, &QPushButton::clicked, this, [this] { take({}); });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    layout->addWidget(buttons);
    resize(420, 400);
    foresee();
}

AirDialog::Fields AirDialog::addAir(QLayout& layout, const QString& title, const RoomAir& air) {
    auto* box = new QGroupBox(title, this);
    auto* form = new QFormLayout(box);
    const auto field = [&](const QString& label, const std::string& text, const QString& hint) {
        auto* line = new QLineEdit(qt(text), box);
        line->setPlaceholderText(hint);
        line->setAccessibleName(title + u", "_s + label);
        connect(line, &QLineEdit::textChanged, this, &AirDialog::foresee);
        form->addRow(label, line);
        return line;
    };
    Fields fields;
    fields.moisture = field(tr("moisture content, %"), air.moisture, tr("by the air below"));
    fields.celsius = field(tr("temperature, °C"), air.celsius, u"21"_s);
    fields.humidity = field(
        tr("relative humidity, %"), air.humidity, dry_.moisture == nullptr ? u"30"_s : u"60"_s);
    layout.addWidget(box);
    return fields;
}

RoomAir AirDialog::airIn(const Fields& fields) {
    const auto text = [](const QLineEdit* line) { return utf8(line->text().simplified()); };
    return {text(fields.moisture), text(fields.celsius), text(fields.humidity)};
}

void AirDialog::foresee() {
    if (damp_.humidity == nullptr || take_ == nullptr) {
        return;  // still being made
    }
    const Result<Piece> next = shoulderline::apply(document_.piece(), SetClimate{climate()});
    if (!next) {
        told_->setText(qt(next.error().message));
        take_->setEnabled(false);
        return;
    }
    const Season season = seasonOf(*next);
    take_->setEnabled(season.troubles.empty());
    told_->setText(season.troubles.empty()
                       ? tr("Wood goes from %1 to %2 % moisture content (Wood Handbook, "
                            "FPL-GTR-282 (2021), eq. (4-5)).")
                             .arg(qt(figureText(season.dry, 1)), qt(figureText(season.damp, 1)))
                       : qt(season.troubles.front()));
}

void AirDialog::take(const Climate& climate) {
    const Result<void> taken = document_.apply(SetClimate{climate});
    if (!taken) {
        told_->setText(qt(taken.error().message));
        return;
    }
    accept();
}

}  // namespace shoulderline
