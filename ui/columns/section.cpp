#include "ui/columns/section.h"

#include <QHBoxLayout>

#include "ui/look/label.h"
#include "ui/look/theme.h"

namespace shoulderline {

SectionHeading::SectionHeading(const QString& title, QWidget* parent) : QWidget(parent) {
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 10, 0, 4);
    auto* heading = makeSoftLabel(title.toUpper(), 0.84, this);
    QFont font = heading->font();
    font.setWeight(QFont::DemiBold);
    font.setLetterSpacing(QFont::PercentageSpacing, 104);
    heading->setFont(font);
    layout->addWidget(heading);
    spacer_ = new QWidget(this);
    layout->addWidget(spacer_, 1);
    aside_ = new Label(this);
    aside_->setWordWrap(true);
    aside_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    QFont asideFont = aside_->font();
    asideFont.setWeight(QFont::DemiBold);
    asideFont.setPointSizeF(asideFont.pointSizeF() * 0.92);
    aside_->setFont(asideFont);
    aside_->hide();
    layout->addWidget(aside_, 1);
}

TextButton* SectionHeading::addCommand(const QString& text, const QString& accessibleName) {
    auto* button = new TextButton(text, TextButton::Kind::Action, this);
    QFont small = button->font();
    small.setPointSizeF(small.pointSizeF() * 0.92);
    button->setFont(small);
    button->setAccessibleName(accessibleName);
    layout()->addWidget(button);
    return button;
}

void SectionHeading::setAside(const QString& text) {
    setInk(*aside_, Theme::of(palette()).amber);
    aside_->setText(text);
    aside_->setVisible(!text.isEmpty());
    spacer_->setVisible(text.isEmpty());
}

QLabel* makeSoftLabel(const QString& text, double scale, QWidget* parent) {
    auto* label = new Label(text, parent);
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * scale);
    label->setFont(font);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

void clearLayout(QLayout& layout) {
    while (QLayoutItem* item = layout.takeAt(0)) {
        if (item->widget() != nullptr) {
            item->widget()->hide();
            item->widget()->deleteLater();
        }
        if (item->layout() != nullptr) {
            clearLayout(*item->layout());
        }
        delete item;
    }
}

}  // namespace shoulderline
