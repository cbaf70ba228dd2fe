#include <algorithm>

#include "ui/columns/part_form.h"
#include "ui/look/text.h"

// The rows of a part's form for each way that a part can be placed.
namespace shoulderline {

namespace {

// The relation of a part whose form is for that relation.
template <class Kind>
Kind& relationOf(Part& part) {
    return std::get<Kind>(part.relation);
}

Spacing& spacingOf(Part& part) {
    if (!part.spacing) {
        part.spacing.emplace();
    }
    return *part.spacing;
}

}  // namespace

void PartForm::addStands() {
    addSide(tr("stands with its"), [](Part& p) -> Side& { return relationOf<Stands>(p).x.face; });
    addStatement(tr("at, from the middle"), Dimension::Length, false, [](Part& p) -> Statement& {
        return relationOf<Stands>(p).x.at;
    });
    addSide(tr("and its"), [](Part& p) -> Side& { return relationOf<Stands>(p).y.face; });
    addStatement(tr("at, from the front"), Dimension::Length, false, [](Part& p) -> Statement& {
        return relationOf<Stands>(p).y.at;
    });
    addStatement(
        tr("foot at"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return relationOf<Stands>(p).foot; },
        tr("the floor"));
    addStatement(tr("height"), Dimension::Length, false, [](Part& p) -> Statement& {
        return relationOf<Stands>(p).height;
    });
    addStatement(
        tr("leans back by (rake)"),
        Dimension::Angle,
        true,
        [](Part& p) -> Statement& { return relationOf<Stands>(p).rake; },
        tr("upright"));
    addStatement(
        tr("leans in by (splay)"),
        Dimension::Angle,
        true,
        [](Part& p) -> Statement& { return relationOf<Stands>(p).splay; },
        tr("upright"));
    addStatement(
        tr("placed at the level"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return relationOf<Stands>(p).atLevel; },
        tr("of its foot"));
}

void PartForm::addSpans() {
    addReference(tr("spans from"), [](Part& p) -> Statement& { return relationOf<Spans>(p).from; });
    addReference(tr("to"), [](Part& p) -> Statement& { return relationOf<Spans>(p).to; });
    addChoice(
        tr("placed by its"),
        sideWords() + QStringList{tr("spacing")},
        [](const Part& p) {
            const auto& level = std::get<Spans>(p.relation).level;
            return level ? qt(wordFor(level->face)) : tr("spacing");
        },
        [](Part& p, const QString& word) {
            auto& level = relationOf<Spans>(p).level;
            const std::optional<Side> side = fromWord<Side>(utf8(word));
            if (!side) {
                level.reset();
                return;
            }
            if (!level) {
                level.emplace(Position{*side, "0 in"});
            }
            level->face = *side;
        });
    addStatement(
        tr("at"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& {
            auto& level = relationOf<Spans>(p).level;
            if (!level) {
                level.emplace();
            }
            return level->at;
        },
        tr("where it is spaced"));
    addSide(tr("set in from"), [](Part& p) -> Side& { return relationOf<Spans>(p).set.from; });
    addStatement(
        tr("by"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return relationOf<Spans>(p).set.by; },
        tr("flush"));
    addCheck(tr("lies flat"), [](Part& p) -> bool& { return relationOf<Spans>(p).flat; });
    addCheck(tr("runs at an angle, straight from one to the other"),
             [](Part& p) -> bool& { return relationOf<Spans>(p).angled; });
    addCheck(tr("leans with what it joins"),
             [](Part& p) -> bool& { return relationOf<Spans>(p).leans; });
    addChoice(
        tr("on a shaped face"),
        {tr("shoulder follows"), tr("face cut level")},
        [this](const Part& p) {
            const Spans* spans = std::get_if<Spans>(&p.relation);
            const bool isLevel = spans != nullptr && spans->fit == ShoulderFit::Level;
            return isLevel ? tr("face cut level") : tr("shoulder follows");
        },
        [this](Part& p, const QString& word) {
            relationOf<Spans>(p).fit =
                word == tr("face cut level") ? ShoulderFit::Level : ShoulderFit::Follow;
        });
    addOtherLevel();
    addReference(tr("gives way to"),
                 [](Part& p) -> Statement& { return relationOf<Spans>(p).givesWay.to; });
    addSide(tr("moving towards"),
            [](Part& p) -> Side& { return relationOf<Spans>(p).givesWay.towards; });
}

// The level at the second part, where it is another.
void PartForm::addOtherLevel() {
    addStatement(
        tr("at the second part at"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& {
            Spans& spans = relationOf<Spans>(p);
            if (!spans.levelTo) {
                spans.levelTo = Position{spans.level ? spans.level->face : Side::Centre, {}};
            }
            return spans.levelTo->at;
        },
        tr("the same level"));
}

void PartForm::addCaps(const Caps& caps) {
    for (std::size_t i = 0; i < caps.on.size(); ++i) {
        addReference(i == 0 ? tr("lies on") : tr("and"), [i](Part& p) -> Statement& {
            auto& on = relationOf<Caps>(p).on;
            on.resize(std::max(on.size(), i + 1));
            return on[i];
        });
    }
    addSide(tr("runs to the"), [](Part& p) -> Side& { return relationOf<Caps>(p).runs; });
    for (const Side side : {Side::Left, Side::Right, Side::Front, Side::Back}) {
        addStatement(
            tr("overhang, %1").arg(qt(wordFor(side))),
            Dimension::Length,
            true,
            [side](Part& p) -> Statement& { return relationOf<Caps>(p).overhang[side]; },
            tr("none"));
    }
}

void PartForm::addFills() {
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
        addReference(i == 0 ? tr("fills from") : tr("to"),
                     [i](Part& p) -> Statement& { return relationOf<Fills>(p).edges[i]; });
    }
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
        addReference(i == 0 ? tr("its grain from") : tr("grain to"),
                     [i](Part& p) -> Statement& { return relationOf<Fills>(p).ends[i]; });
    }
    addSide(tr("grooves in from"), [](Part& p) -> Side& { return relationOf<Fills>(p).set.from; });
    addStatement(
        tr("by"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return relationOf<Fills>(p).set.by; },
        tr("in the middle"));
}

void PartForm::addFree() {
    addStatement(
        tr("at, across"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return relationOf<Free>(p).x; },
        tr("the middle"));
    addStatement(
        tr("at, in depth"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return relationOf<Free>(p).y; },
        tr("the front"));
    addStatement(
        tr("at, up"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return relationOf<Free>(p).z; },
        tr("the floor"));
    addStatement(
        tr("turned about x"),
        Dimension::Angle,
        true,
        [](Part& p) -> Statement& { return relationOf<Free>(p).aboutX; },
        tr("not"));
    addStatement(
        tr("turned about y"),
        Dimension::Angle,
        true,
        [](Part& p) -> Statement& { return relationOf<Free>(p).aboutY; },
        tr("not"));
    addStatement(
        tr("turned about z"),
        Dimension::Angle,
        true,
        [](Part& p) -> Statement& { return relationOf<Free>(p).aboutZ; },
        tr("not"));
    addStatement(tr("length"), Dimension::Length, false, [](Part& p) -> Statement& {
        return relationOf<Free>(p).length;
    });
}

void PartForm::addSpacing() {
    addReference(tr("spaced after"), [](Part& p) -> Statement& { return spacingOf(p).after; });
    addReference(tr("and before"), [](Part& p) -> Statement& { return spacingOf(p).before; });
    addStatement(
        tr("how many"),
        Dimension::Number,
        true,
        [](Part& p) -> Statement& { return spacingOf(p).count; },
        tr("as it follows"));
    addStatement(
        tr("gap at most"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return spacingOf(p).greatestGap; },
        tr("not stated"));
    addStatement(
        tr("pitch"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return spacingOf(p).pitch; },
        tr("not stated"));
}

}  // namespace shoulderline
