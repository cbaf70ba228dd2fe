#include <QMenu>
#include <algorithm>

#include "core/resolve/resolved_easing.h"
#include "ui/columns/part_form.h"
#include "ui/look/text.h"

// The rows of a part's form for its eased arrises.
namespace shoulderline {

namespace {

// Made where it is not there, as on a copy whose row is about to go.
EasingStatement& easingOf(Part& part, std::size_t index) {
    part.easings.resize(std::max(part.easings.size(), index + 1));
    return part.easings[index];
}

// An easing as one begins with it; a pyramid goes on an end.
EasingStatement usualEasing(EasingKind kind) {
    EasingStatement easing;
    easing.kind = kind;
    easing.at = kind == EasingKind::Pyramid ? Arris::FarEnd : Arris::AllAlong;
    easing.size = kind == EasingKind::Pyramid ? "1/2 in" : "1/8 in";
    return easing;
}

bool isAtEnd(Arris at) {
    return at == Arris::StartEnd || at == Arris::FarEnd;
}

}  // namespace

void PartForm::addEasings(const Part& part) {
    addHeading(tr("arrises"), tr("ease one"), [this](QWidget& under) {
        QMenu menu(this);
        for (const EasingKind kind : allWords<EasingKind>()) {
            menu.addAction(qt(wordFor(kind)), this, [this, kind] {
                changeOrTell([kind](Part& p) { p.easings.push_back(usualEasing(kind)); });
            });
        }
        menu.exec(under.mapToGlobal(QPoint(0, under.height())));
    });
    for (std::size_t i = 0; i < part.easings.size(); ++i) {
        addHeading(tr("%1 %2").arg(qt(wordFor(part.easings[i].kind))).arg(i + 1),
                   tr("remove"),
                   [this, i](QWidget&) {
                       changeOrTell([i](Part& p) {
                           if (i < p.easings.size()) {
                               p.easings.erase(p.easings.begin() + static_cast<std::ptrdiff_t>(i));
                           }
                       });
                   });
        addEasing(part.easings[i], i);
    }
}

void PartForm::addEasing(const EasingStatement& easing, std::size_t i) {
    const auto add =
        [&](const QString& label, Statement EasingStatement::*member, const QString& whenEmpty) {
            addStatement(
                label,
                Dimension::Length,
                member != &EasingStatement::size,
                [i, member](Part& p) -> Statement& { return easingOf(p, i).*member; },
                whenEmpty);
        };
    addWord<Arris>(tr("where"), [i](Part& p) -> Arris& { return easingOf(p, i).at; });
    const bool isPyramid = easing.kind == EasingKind::Pyramid;
    const bool hasRadius = easing.kind == EasingKind::RoundOver || easing.kind == EasingKind::Cove;
    add(isPyramid ? tr("height") : (hasRadius ? tr("radius") : tr("size")),
        &EasingStatement::size,
        QString());
    if (!isPyramid) {
        add(isAtEnd(easing.at) ? tr("along the length") : tr("on the other face"),
            &EasingStatement::second,
            tr("as much"));
    }
    if (isAlong(easing.at)) {
        add(tr("begins from the start"), &EasingStatement::fromStart, tr("runs through"));
        add(tr("ends from the far end"), &EasingStatement::fromFar, tr("runs through"));
        add(tr("runs out over"), &EasingStatement::runOut, tr("its size"));
    }
}

}  // namespace shoulderline
