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
    settings_ = new QVBoxLayout;
    settings_->setSpacing(0);
    layout->addLayout(settings_);
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
    showSettings(lines.isEmpty() ? QStringList(tr("Nothing is cut for it.")) : lines);
    cautions_->setText(cautions.join(u"\n"_s));
}

// A label for each, so that only those that changed are laid out anew.
void SetUpList::showSettings(const QStringList& lines) {
    while (rows_.size() < static_cast<std::size_t>(lines.size())) {
        auto* row = new Label(this);
        row->setWordWrap(true);
        row->setTextFormat(Qt::PlainText);
        settings_->addWidget(row);
        rows_.push_back(row);
    }
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        const auto at = static_cast<qsizetype>(i);
        const bool isThere = at < lines.size();
        rows_[i]->setText(isThere ? lines[at] : QString());
        rows_[i]->setVisible(isThere);
    }
}

}  // namespace shoulderline
