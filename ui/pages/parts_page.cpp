#include "ui/pages/parts_page.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "core/drawing/scales.h"
#include "core/drawing/sheets.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

// The scale that makes a part so many millimetres long on the sheet before it is fitted to the
// window: lettering then has a fair size beside it.
constexpr double kLengthOnSheet = 170.0;

}  // namespace

PartsPage::PartsPage(Document& document, QWidget* parent) : BoardPage(parent), document_(document) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(16, 8, 16, 4);
    title_ = new QLabel(this);
    QFont bold = title_->font();
    bold.setWeight(QFont::DemiBold);
    title_->setFont(bold);
    about_ = new QLabel(this);
    about_->setForegroundRole(QPalette::PlaceholderText);
    auto* before = new TextButton(tr("part before"), TextButton::Kind::Action, this);
    auto* next = new TextButton(tr("next part"), TextButton::Kind::Action, this);
    connect(before, &TextButton::clicked, this, [this] { step(-1); });
    connect(next, &TextButton::clicked, this, [this] { step(1); });
    head->addWidget(title_);
    head->addSpacing(10);
    head->addWidget(about_);
    head->addStretch(1);
    head->addWidget(before);
    head->addSpacing(8);
    head->addWidget(next);
    layout->addLayout(head);
    canvas_ = new PartCanvas(document_, this);
    canvas_->setAccessibleName(tr("part drawing"));
    canvas_->setHint(tr("Choose a part in the list to see it with its dimensions."));
    layout->addWidget(canvas_, 1);
    connect(canvas_, &Canvas::picked, this, [this](const Subject& subject) {
        if (subject.kind == SubjectKind::Joint) {
            document_.chooseJoint(subject.index);
        } else if (subject.kind == SubjectKind::Part) {
            document_.choosePart(subject.index);
        }
    });
    const auto refreshIfSeen = [this] {
        if (isVisible()) {
            refresh();
        }
    };
    connect(&document_, &Document::changed, this, refreshIfSeen);
    connect(&document_, &Document::chosenChanged, this, refreshIfSeen);
}

void PartsPage::showEvent(QShowEvent* event) {
    BoardPage::showEvent(event);
    if (!document_.chosenPart() && !document_.resolved().parts.empty()) {
        document_.choosePart(0);
    }
    refresh();
}

void PartsPage::refresh() {
    const std::optional<std::size_t> chosen = document_.chosenPart();
    const std::vector<PartKind> kinds = partKinds(document_.resolved());
    const auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const PartKind& one) {
        return chosen && std::find(one.parts.begin(), one.parts.end(), *chosen) != one.parts.end();
    });
    if (kind == kinds.end()) {
        title_->clear();
        about_->clear();
        canvas_->showNothing();
        return;
    }
    const ResolvedPart& part = document_.resolved().parts[kind->parts.front()];
    title_->setText(qt(kind->name));
    QString about = tr("%n off", nullptr, kind->quantity);
    if (kind->hasMirrorTwins) {
        about += u", "_s + tr("half of them the mirror image");
    }
    about_->setText(about);
    const double longest = std::max({part.length().mm(), part.width.value.mm(), 1.0});
    const double scale = scaleThatFits(longest, kLengthOnSheet, document_.piece().unit);
    canvas_->showPart(
        partDrawing(document_.piece(), document_.resolved(), *kind, scale, false, metrics_),
        kind->parts.front(),
        scale);
    std::vector<Subject> subjects;
    if (const std::optional<std::size_t> joint = document_.chosenJoint()) {
        subjects.push_back({SubjectKind::Joint, *joint});
    }
    canvas_->setChosen(std::move(subjects));
}

void PartsPage::step(int by) {
    const std::vector<PartKind> kinds = partKinds(document_.resolved());
    if (kinds.empty()) {
        return;
    }
    const std::optional<std::size_t> chosen = document_.chosenPart();
    std::size_t now = 0;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        if (chosen && std::find(kinds[i].parts.begin(), kinds[i].parts.end(), *chosen) !=
                          kinds[i].parts.end()) {
            now = i;
        }
    }
    const std::size_t next =
        by > 0 ? (now + 1) % kinds.size() : (now + kinds.size() - 1) % kinds.size();
    document_.choosePart(kinds[next].parts.front());
}

}  // namespace shoulderline
