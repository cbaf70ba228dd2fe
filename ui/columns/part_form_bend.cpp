#include <QMenu>
#include <algorithm>

#include "ui/columns/part_form.h"
#include "ui/look/text.h"

// The rows of a part's form for its bow.
namespace shoulderline {

namespace {

// The bow of a part, and a point that it runs through; made where they are not there, as on a copy
// whose row is about to go.
Bend& bendOf(Part& part) {
    if (!part.bend) {
        part.bend.emplace();
    }
    return *part.bend;
}

BowPoint& bowPointOf(Part& part, std::size_t index) {
    std::vector<BowPoint>& through = bendOf(part).through;
    through.resize(std::max(through.size(), index + 1));
    return through[index];
}

// A bow as one begins with it.
Bend usualBend(BendMethod method) {
    Bend bend;
    bend.method = method;
    bend.rise = "1/2 in";
    return bend;
}

}  // namespace

void PartForm::addBend(const Part& part) {
    addHeading(tr("bow"), part.bend ? tr("change") : tr("bend it"), [this](QWidget& under) {
        const Part* now = thing();
        QMenu menu(this);
        if (now != nullptr && now->bend) {
            menu.addAction(tr("Add a Point That It Runs Through"), this, [this] {
                changeOrTell([](Part& p) {
                    Bend& bend = bendOf(p);
                    BowPoint middle;
                    middle.from = Datum::Middle;
                    middle.rise = bend.rise.empty() ? "1/2 in" : bend.rise;
                    bend.through.push_back(middle);
                    bend.rise.clear();
                    bend.radius.clear();
                });
            });
            menu.addAction(tr("Take the Last Point Away"), this, [this] {
                changeOrTell([](Part& p) {
                    if (!bendOf(p).through.empty()) {
                        bendOf(p).through.pop_back();
                    }
                });
            });
            menu.addAction(tr("Make It Straight"), this, [this] {
                changeOrTell([](Part& p) { p.bend.reset(); });
            });
        } else {
            for (const BendMethod method : allWords<BendMethod>()) {
                menu.addAction(qt(wordFor(method)), this, [this, method] {
                    changeOrTell([method](Part& p) { p.bend = usualBend(method); });
                });
            }
        }
        menu.exec(under.mapToGlobal(QPoint(0, under.height())));
    });
    if (part.bend) {
        addBow(*part.bend);
    }
}

void PartForm::addBow(const Bend& bend) {
    QStringList methods;
    for (const BendMethod method : allWords<BendMethod>()) {
        methods << qt(wordFor(method));
    }
    addChoice(
        tr("made"),
        methods,
        [](const Part& p) { return p.bend ? qt(wordFor(p.bend->method)) : QString(); },
        [](Part& p, const QString& word) {
            bendOf(p).method = fromWord<BendMethod>(utf8(word)).value_or(bendOf(p).method);
        });
    addChoice(
        tr("hollow on its"),
        {qt(wordFor(Face::FaceSide)), qt(wordFor(Face::BackSide))},
        [](const Part& p) { return p.bend ? qt(wordFor(p.bend->hollow)) : QString(); },
        [](Part& p, const QString& word) {
            bendOf(p).hollow = fromWord<Face>(utf8(word)).value_or(bendOf(p).hollow);
        });
    addChoice(
        tr("shoulders square to its"),
        {qt(wordFor(BendShoulders::Chord)), qt(wordFor(BendShoulders::Curve))},
        [](const Part& p) { return p.bend ? qt(wordFor(p.bend->shoulders)) : QString(); },
        [](Part& p, const QString& word) {
            bendOf(p).shoulders = fromWord<BendShoulders>(utf8(word)).value_or(bendOf(p).shoulders);
        });
    const auto add = [&](const QString& label,
                         Dimension dimension,
                         Statement Bend::*member,
                         const QString& whenEmpty) -> StatementField& {
        return addStatement(
            label,
            dimension,
            true,
            [member](Part& p) -> Statement& { return bendOf(p).*member; },
            whenEmpty);
    };
    if (bend.through.empty()) {
        add(tr("rises"), Dimension::Length, &Bend::rise, tr("by its radius"));
        add(tr("radius"), Dimension::Length, &Bend::radius, tr("by its rise"));
    }
    for (std::size_t i = 0; i < bend.through.size(); ++i) {
        addStatement(
            tr("point %1 along").arg(i + 1),
            Dimension::Length,
            true,
            [i](Part& p) -> Statement& { return bowPointOf(p, i).along; },
            tr("there"));
        addStatement(
            tr("rises"),
            Dimension::Length,
            true,
            [i](Part& p) -> Statement& { return bowPointOf(p, i).rise; },
            tr("not"));
    }
    if (bend.method == BendMethod::Laminated) {
        add(tr("plies"), Dimension::Number, &Bend::plies, tr("by rule"));
        add(tr("ply"), Dimension::Length, &Bend::ply, tr("as they share it"));
    }
    if (bend.method != BendMethod::Sawn) {
        StatementField& found =
            add(tr("springback found"), Dimension::Number, &Bend::springback, tr("by rule"));
        found.setCounts(false);
        found.setToolTip(
            tr("What a bend of your own lost on its form, as a share of the form's "
               "rise: a form that rises 13/16 and a slat that came off it rising 3/4 "
               "are (13/16 - 3/4) / (13/16)."));
        found.setAccessibleDescription(found.toolTip());
    }
}

}  // namespace shoulderline
