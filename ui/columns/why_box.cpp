#include "ui/columns/why_box.h"

#include <QPainter>
#include <QStringList>
#include <QVBoxLayout>

#include "ui/columns/section.h"
#include "ui/look/label.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

WhyBox::WhyBox(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(10, 8, 10, 8);
    layout->setSpacing(3);
    title_ = new Label(this);
    QFont bold = title_->font();
    bold.setWeight(QFont::DemiBold);
    title_->setFont(bold);
    title_->setWordWrap(true);
    chain_ = new Label(this);
    chain_->setWordWrap(true);
    source_ = makeSoftLabel({}, 0.86, this);
    source_->setWordWrap(true);
    layout->addWidget(title_);
    layout->addWidget(chain_);
    layout->addWidget(source_);
}

void WhyBox::show(const QString& sizeName, const Size& size) {
    QPalette teal = title_->palette();
    teal.setColor(QPalette::WindowText, Theme::of(palette()).teal);
    title_->setPalette(teal);
    title_->setText(tr("why %1: %2").arg(qt(document_.shown(size.value)), sizeName));
    QStringList lines;
    for (const Reason& reason : size.reasons) {
        lines << qt(reasonText(reason, document_.resolved().rules, document_.piece().style));
    }
    chain_->setText(lines.join(u"\n"_s));
    QStringList sources;
    for (const Reason& reason : size.reasons) {
        const QString source = qt(document_.resolved().rules[reason.rule].source);
        if (!source.isEmpty() && !sources.contains(source)) {
            sources << source;
        }
    }
    source_->setText(sources.join(u" · "_s));
    source_->setVisible(!sources.isEmpty());
}

void WhyBox::paintEvent(QPaintEvent*) {
    const Theme theme = Theme::of(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.isDark ? theme.field : QColor(0xf2, 0xef, 0xe6));
    painter.drawRoundedRect(rect(), 4, 4);
}

}  // namespace shoulderline
