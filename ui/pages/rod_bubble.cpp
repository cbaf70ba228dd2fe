#include "ui/pages/rod_bubble.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <algorithm>
#include <variant>

#include "ui/look/text.h"
#include "ui/look/theme.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

RodBubble::RodBubble(Document& document, QWidget* parent) : QFrame(parent), document_(document) {
    setObjectName(u"bubble"_s);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(10, 6, 8, 6);
    name_ = new QLabel(this);
    follows_ = new QLabel(this);
    follows_->setForegroundRole(QPalette::PlaceholderText);
    field_ = new StatementField(
        document_,
        Dimension::Length,
        [this](const std::string& statement, Document::Kind kind) -> Result<void> {
            const RodHandle handle =
                handleOf(document_.piece(), document_.resolved(), rod_, line_, statement);
            if (!handle.edit) {
                return fail(ErrorCode::BadText, handle.follows);
            }
            return document_.apply(*handle.edit, kind);
        },
        this);
    field_->setFixedWidth(110);
    field_->installEventFilter(this);
    layout->addWidget(name_);
    layout->addWidget(follows_);
    layout->addWidget(field_);
    hide();
}

// What is stated now of what the line drives.
std::string RodBubble::statementNow(const RodHandle& handle) const {
    if (const auto* set = std::get_if<SetMeasure>(&*handle.edit)) {
        for (const Measure& measure : document_.piece().measures) {
            if (measure.name == set->name) {
                return measure.expression;
            }
        }
    }
    const double at = rod_.lines[line_].at;
    std::string text = showLength(Length::mm(at), document_.piece().style, true);
    return text;
}

void RodBubble::open(const Rod& rod, std::size_t line, QPoint at) {
    rod_ = rod;
    line_ = line;
    const RodHandle handle = handleOf(document_.piece(), document_.resolved(), rod_, line_, "0 in");
    const QString name = qt(rod_.lines[line_].name);
    const QString drives = qt(handle.drives);
    name_->setText(drives.isEmpty() || drives == name ? name : name + u" · "_s + drives);
    // The widths are told from the left end, but stated from the middle, in which pairs are
    // mirrored.
    const bool isFromMiddle = rod.kind == RodKind::Widths && handle.edit &&
                              !std::holds_alternative<SetMeasure>(*handle.edit);
    if (isFromMiddle) {
        name_->setText(tr("%1, from the middle").arg(name_->text()));
    }
    field_->setVisible(handle.edit.has_value());
    field_->setAccessibleName(drives.isEmpty() ? name : drives);
    follows_->setVisible(!handle.edit);
    follows_->setText(tr("follows from %1").arg(qt(handle.follows)));
    if (handle.edit) {
        field_->setStatement(statementNow(handle));
    }
    adjustSize();
    const QWidget* parent = parentWidget();
    move(std::clamp(at.x(), 4, std::max(4, parent->width() - width() - 4)),
         std::clamp(at.y() - height() / 2, 4, std::max(4, parent->height() - height() - 4)));
    show();
    raise();
    if (handle.edit) {
        field_->setFocus(Qt::OtherFocusReason);
        field_->selectAll();
    }
}

bool RodBubble::eventFilter(QObject* object, QEvent* event) {
    if (event->type() == QEvent::FocusOut &&
        static_cast<QFocusEvent*>(event)->reason() != Qt::PopupFocusReason &&
        static_cast<QFocusEvent*>(event)->reason() != Qt::ActiveWindowFocusReason) {
        QMetaObject::invokeMethod(this, &QWidget::hide, Qt::QueuedConnection);
    }
    return QFrame::eventFilter(object, event);
}

void RodBubble::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        hide();
        parentWidget()->setFocus();
        return;
    }
    QFrame::keyPressEvent(event);
}

void RodBubble::paintEvent(QPaintEvent*) {
    const Theme theme = Theme::of(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(theme.teal, 1.4));
    painter.setBrush(theme.paper);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 4, 4);
}

}  // namespace shoulderline
