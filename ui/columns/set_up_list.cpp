#include "ui/columns/set_up_list.h"

#include <QVBoxLayout>

#include "core/resolve/set_up.h"
#include "ui/columns/section.h"
#include "ui/look/label.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

SetUpList::SetUpList(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 0, 12, 10);
    layout->setSpacing(5);
    layout->addWidget(new SectionHeading(tr("Set-ups"), this));
    settings_ = new Label(this);
    settings_->setWordWrap(true);
    settings_->setTextFormat(Qt::PlainText);
    settings_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    layout->addWidget(settings_);
    cautions_ = makeSoftLabel({}, 0.9, this);
    cautions_->setWordWrap(true);
    cautions_->setTextFormat(Qt::PlainText);
    cautions_->setAccessibleName(tr("cautions"));
    layout->addWidget(cautions_);
    layout->addStretch(1);
}

void SetUpList::refresh() {
    const std::optional<std::size_t> joint = document_.chosenJoint();
    QStringList lines;
    QStringList cautions;
    if (joint) {
        const ResolvedPiece& resolved = document_.resolved();
        const std::vector<SetUp> setUps = setUpsOf(resolved, *joint);
        for (const std::string& text : setUpTexts(setUps, resolved, document_.piece().style)) {
            lines << qt(text);
        }
        for (const std::string& caution : cautionsFor(setUps, resolved.rules)) {
            cautions << qt(caution);
        }
    }
    settings_->setText(lines.isEmpty() ? tr("Nothing is cut for it.") : lines.join(u"\n"_s));
    settings_->setAccessibleName(settings_->text());
    cautions_->setText(cautions.join(u"\n"_s));
}

}  // namespace shoulderline
