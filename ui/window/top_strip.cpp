#include "ui/window/top_strip.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMenu>

#include "ui/columns/section.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

QString nameOf(const LengthStyle& style) {
    switch (style.kind) {
        case LengthStyle::Kind::Fractions:
            return TopStrip::tr("inches, to 1/%1").arg(style.denominator);
        case LengthStyle::Kind::DecimalInches:
            return TopStrip::tr("inches, %1 decimals").arg(style.decimals);
        case LengthStyle::Kind::Millimetres:
            return style.decimals == 0 ? TopStrip::tr("millimetres")
                                       : TopStrip::tr("millimetres, to a tenth");
    }
    return {};
}

QString notSaved() {
    return TopStrip::tr("· not saved");
}

}  // namespace

TopStrip::TopStrip(Document& document, const QStringList& pages, QWidget* parent)
    : QWidget(parent), document_(document) {
    setObjectName(u"strip"_s);
    setAttribute(Qt::WA_StyledBackground);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 0, 16, 0);
    layout->setSpacing(4);
    name_ = new TextButton({}, TextButton::Kind::Plain, this);
    QFont bold = name_->font();
    bold.setPointSizeF(bold.pointSizeF() * 1.12);
    name_->setFont(bold);
    name_->setBold(true);
    name_->setToolTip(tr("Rename the piece"));
    connect(name_, &TextButton::clicked, this, &TopStrip::renameAsked);
    saved_ = makeSoftLabel({}, 0.92, this);
    // Room for its words at all times, so that the pages stay where they are with the first change.
    saved_->setText(notSaved());
    saved_->setMinimumWidth(saved_->sizeHint().width());
    layout->addWidget(name_);
    layout->addWidget(saved_);
    layout->addSpacing(28);
    int page = 0;
    for (const QString& text : pages) {
        auto* button = new TextButton(text, TextButton::Kind::Page, this);
        button->setToolTip(tr("Ctrl+%1").arg(page + 1));
        button->installEventFilter(this);
        pages_.addButton(button, page++);
        layout->addWidget(button);
    }
    pages_.setExclusive(true);
    connect(&pages_, &QButtonGroup::idClicked, this, &TopStrip::pageChosen);
    layout->addStretch(1);
    scale_ = makeSoftLabel({}, 0.92, this);
    layout->addWidget(scale_);
    layout->addSpacing(14);
    units_ = new TextButton({}, TextButton::Kind::Quiet, this);
    QFont small = units_->font();
    small.setPointSizeF(small.pointSizeF() * 0.96);
    units_->setFont(small);
    connect(units_, &TextButton::clicked, this, &TopStrip::openUnits);
    layout->addWidget(units_);
    connect(&document_, &Document::changed, this, &TopStrip::refresh);
    connect(&document_, &Document::fileChanged, this, &TopStrip::refresh);
    refresh();
}

void TopStrip::setPage(int page) {
    pages_.button(page)->setChecked(true);
}

void TopStrip::setScaleText(const QString& text) {
    scale_->setText(text);
}

void TopStrip::refresh() {
    const QString name = qt(document_.piece().name);
    name_->setText(name.isEmpty() ? tr("Untitled piece") : name);
    name_->setAccessibleName(tr("piece: %1").arg(name_->text()));
    saved_->setText(document_.isModified() ? notSaved() : QString());
    units_->setText(nameOf(document_.piece().style));
    units_->setAccessibleName(tr("lengths in %1").arg(units_->text()));
}

void TopStrip::openUnits() {
    QMenu menu(this);
    const auto add = [&](const LengthStyle& style) {
        QAction* action = menu.addAction(nameOf(style), this, [this, style] {
            static_cast<void>(document_.apply(SetStyle{style}));
        });
        action->setCheckable(true);
        action->setChecked(style == document_.piece().style);
    };
    for (const int denominator : {8, 16, 32, 64}) {
        add(LengthStyle::fractions(denominator));
    }
    menu.addSeparator();
    add(LengthStyle::decimalInches(3));
    menu.addSeparator();
    add(LengthStyle::millimetres(0));
    add(LengthStyle::millimetres(1));
    menu.exec(units_->mapToGlobal(QPoint(0, units_->height())));
}

bool TopStrip::eventFilter(QObject* object, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        const int by = key == Qt::Key_Right ? 1 : key == Qt::Key_Left ? -1 : 0;
        auto* button = qobject_cast<QAbstractButton*>(object);
        if (by != 0 && button != nullptr) {
            const auto count = static_cast<int>(pages_.buttons().size());
            const int next = (pages_.id(button) + by + count) % count;
            pages_.button(next)->setFocus();
            pages_.button(next)->click();
            return true;
        }
    }
    return QWidget::eventFilter(object, event);
}

}  // namespace shoulderline
