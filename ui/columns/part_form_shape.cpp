#include <QMenu>
#include <algorithm>

#include "ui/columns/part_form.h"
#include "ui/columns/section.h"
#include "ui/look/text.h"

// The rows of a part's form for its shaped sides and for its cuts.
namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

// A point of a side's outline, and a cut; made where they are not there, as on a copy whose row is
// about to go.
EdgePoint& pointOf(Part& part, Face face, std::size_t index) {
    ShapedEdge& edge = part.shape[face];
    edge.resize(std::max(edge.size(), index + 1));
    return edge[index];
}

CutStatement& cutOf(Part& part, std::size_t index) {
    part.cuts.resize(std::max(part.cuts.size(), index + 1));
    return part.cuts[index];
}

// A side as one begins to shape it: straight, with a point at either end.
ShapedEdge straightEdge() {
    EdgePoint far;
    far.from = Datum::Far;
    return {EdgePoint{}, far};
}

CutStatement usualCut(CutKind kind) {
    CutStatement cut;
    cut.kind = kind;
    if (kind == CutKind::Bore) {
        cut.alongFrom = cut.acrossFrom = Datum::Middle;
        cut.width = "3/8 in";
    } else if (kind == CutKind::ScrewHole) {
        cut.alongFrom = cut.acrossFrom = Datum::Middle;
        cut.width = "3/16 in";
    } else if (kind == CutKind::PegMortise) {
        cut.alongFrom = cut.acrossFrom = Datum::Middle;
        cut.width = "3/8 in";
        cut.depth = "1 in";
    } else {
        cut.width = "1/4 in";
        cut.depth = "1/4 in";
    }
    return cut;
}

}  // namespace

std::string PartForm::shapeKey(const Part& part) {
    std::string key;
    for (const auto& [face, points] : part.shape) {
        key += "|" + std::string(wordFor(face));
        for (const EdgePoint& point : points) {
            key += point.run == Run::Arc ? "a" : ".";
        }
    }
    if (part.bend) {
        key += "~" + std::string(wordFor(part.bend->method)) +
               std::to_string(part.bend->through.size());
    }
    for (const CutStatement& cut : part.cuts) {
        key += "/" + std::string(wordFor(cut.kind)) + std::string(wordFor(cut.head)) +
               std::string(wordFor(cut.slot));
    }
    for (const EasingStatement& easing : part.easings) {
        key += "\\" + std::string(wordFor(easing.kind)) + std::string(wordFor(easing.at));
    }
    return key;
}

void PartForm::addShape(const Part& part) {
    addHeading(tr("shape"), tr("shape a side"), [this](QWidget& under) {
        const Part* now = thing();
        QMenu menu(this);
        for (const Face face : allWords<Face>()) {
            if (now != nullptr && !now->shape.contains(face)) {
                menu.addAction(qt(wordFor(face)), this, [this, face] {
                    changeOrTell([face](Part& p) { p.shape[face] = straightEdge(); });
                });
            }
        }
        menu.exec(under.mapToGlobal(QPoint(0, under.height())));
    });
    for (const auto& [face, points] : part.shape) {
        const QString side = qt(wordFor(face));
        addHeading(side, tr("change"), [this, face = face](QWidget& under) {
            QMenu menu(this);
            menu.addAction(tr("Add a Point"), this, [this, face] {
                changeOrTell([face](Part& p) {
                    ShapedEdge& edge = p.shape[face];
                    EdgePoint middle;
                    middle.from = Datum::Middle;
                    edge.insert(edge.begin() + static_cast<std::ptrdiff_t>(edge.size() / 2),
                                middle);
                });
            });
            menu.addAction(tr("Take the Last Point Away"), this, [this, face] {
                changeOrTell([face](Part& p) {
                    if (p.shape[face].size() > 1) {
                        p.shape[face].pop_back();
                    }
                });
            });
            menu.addAction(tr("Make It Straight"), this, [this, face] {
                changeOrTell([face](Part& p) { p.shape.erase(face); });
            });
            menu.exec(under.mapToGlobal(QPoint(0, under.height())));
        });
        for (std::size_t i = 0; i < points.size(); ++i) {
            addPoint(face, i, points);
        }
    }
}

void PartForm::addPoint(Face face, std::size_t i, const ShapedEdge& points) {
    addWord<Datum>(tr("point %1 from the").arg(i + 1),
                   [face, i](Part& p) -> Datum& { return pointOf(p, face, i).from; });
    addStatement(
        tr("along"),
        Dimension::Length,
        true,
        [face, i](Part& p) -> Statement& { return pointOf(p, face, i).along; },
        tr("there"));
    addStatement(
        tr("in by"),
        Dimension::Length,
        true,
        [face, i](Part& p) -> Statement& { return pointOf(p, face, i).in; },
        tr("not"));
    if (i + 1 == points.size()) {
        return;
    }
    addWord<Run>(tr("then in a"), [face, i](Part& p) -> Run& { return pointOf(p, face, i).run; });
    if (points[i].run == Run::Arc) {
        addStatement(
            tr("bowed out by"),
            Dimension::Length,
            true,
            [face, i](Part& p) -> Statement& { return pointOf(p, face, i).bow; },
            tr("not"));
    }
}

void PartForm::addCuts(const Part& part) {
    addHeading(tr("cuts"), tr("add a cut"), [this](QWidget& under) {
        QMenu menu(this);
        for (const CutKind kind : allWords<CutKind>()) {
            menu.addAction(qt(wordFor(kind)), this, [this, kind] {
                changeOrTell([kind](Part& p) { p.cuts.push_back(usualCut(kind)); });
            });
        }
        menu.exec(under.mapToGlobal(QPoint(0, under.height())));
    });
    for (std::size_t i = 0; i < part.cuts.size(); ++i) {
        const CutKind kind = part.cuts[i].kind;
        addHeading(
            tr("%1 %2").arg(qt(wordFor(kind))).arg(i + 1), tr("remove"), [this, i](QWidget&) {
                changeOrTell([i](Part& p) {
                    if (i < p.cuts.size()) {
                        p.cuts.erase(p.cuts.begin() + static_cast<std::ptrdiff_t>(i));
                    }
                });
            });
        addCut(kind, i);
        if (kind == CutKind::Bore) {
            addTilt(i);
        } else if (kind == CutKind::ScrewHole) {
            addScrewHole(part.cuts[i], i);
        } else if (kind == CutKind::PegMortise) {
            addStatement(
                tr("its peg stands proud"),
                Dimension::Length,
                true,
                [i](Part& p) -> Statement& { return cutOf(p, i).proud; },
                tr("flush"));
        }
    }
}

void PartForm::addCut(CutKind kind, std::size_t i) {
    const bool isSquare = kind == CutKind::PegMortise;
    const bool isHole = isSquare || kind == CutKind::Bore || kind == CutKind::ScrewHole;
    addWord<Face>(tr("in the"), [i](Part& p) -> Face& { return cutOf(p, i).face; });
    const auto add =
        [&](const QString& label, Statement CutStatement::*member, const QString& whenEmpty) {
            addStatement(
                label,
                Dimension::Length,
                true,
                [i, member](Part& p) -> Statement& { return cutOf(p, i).*member; },
                whenEmpty);
        };
    addWord<Datum>(tr("along from the"), [i](Part& p) -> Datum& { return cutOf(p, i).alongFrom; });
    add(isHole ? tr("to its centre") : tr("to it"), &CutStatement::along, tr("there"));
    if (!isHole) {
        add(tr("length"), &CutStatement::length, tr("to the end"));
    }
    addWord<Datum>(tr("across from the"),
                   [i](Part& p) -> Datum& { return cutOf(p, i).acrossFrom; });
    add(isHole ? tr("to its centre") : tr("to it"), &CutStatement::across, tr("there"));
    add(isSquare ? tr("side of the square")
        : isHole ? tr("diameter")
                 : tr("width"),
        &CutStatement::width,
        isHole ? QString() : tr("all across"));
    add(tr("depth"), &CutStatement::depth, tr("through"));
}

void PartForm::addTilt(std::size_t i) {
    const auto add = [&](const QString& label, Statement CutStatement::*member) {
        addStatement(
            label,
            Dimension::Angle,
            true,
            [i, member](Part& p) -> Statement& { return cutOf(p, i).*member; },
            tr("square"));
    };
    add(tr("tilts along by"), &CutStatement::tiltAlong);
    add(tr("tilts across by"), &CutStatement::tiltAcross);
}

void PartForm::addScrewHole(const CutStatement& cut, std::size_t i) {
    const auto add = [&](const QString& label, Statement CutStatement::*member) {
        addStatement(
            label,
            Dimension::Length,
            true,
            [i, member](Part& p) -> Statement& { return cutOf(p, i).*member; },
            tr("by rule"));
    };
    addWord<ScrewHead>(tr("head"), [i](Part& p) -> ScrewHead& { return cutOf(p, i).head; });
    if (cut.head != ScrewHead::Plain) {
        add(tr("head is wide"), &CutStatement::headWidth);
    }
    if (cut.head == ScrewHead::Counterbored || cut.head == ScrewHead::Plugged) {
        add(tr("head sunk by"), &CutStatement::headDepth);
    }
    addWord<SlotWay>(tr("slotted"), [i](Part& p) -> SlotWay& { return cutOf(p, i).slot; });
    if (cut.slot != SlotWay::Round) {
        add(tr("slot is long"), &CutStatement::length);
    }
}

}  // namespace shoulderline
