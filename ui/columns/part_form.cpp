#include "ui/columns/part_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <algorithm>
#include <utility>

#include "core/measure/expression.h"
#include "ui/columns/section.h"
#include "ui/fields/statement_field.h"
#include "ui/look/text.h"
#include "ui/prompts/prompts.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr int kFieldWidth = 142;

constexpr Side kSides[] = {
    Side::Left, Side::Right, Side::Front, Side::Back, Side::Bottom, Side::Top, Side::Centre};
constexpr Role kRoles[] = {Role::Post,
                           Role::Rail,
                           Role::Stretcher,
                           Role::Stile,
                           Role::Slat,
                           Role::Spindle,
                           Role::Arm,
                           Role::Seat,
                           Role::Panel,
                           Role::Bracket,
                           Role::Cleat};

template <class Words>
QStringList wordsOf(const Words& words) {
    QStringList all;
    for (const auto& word : words) {
        all << qt(wordFor(word));
    }
    return all;
}

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

PartForm::PartForm(Document& document, Prompts& prompts, QWidget* parent)
    : QWidget(parent), document_(document), prompts_(prompts) {
    grid_ = new QGridLayout(this);
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(8);
    grid_->setVerticalSpacing(3);
    grid_->setColumnStretch(0, 1);
}

const Part* PartForm::part() const {
    const std::vector<Part>& parts = document_.piece().parts;
    return stated_ < parts.size() ? &parts[stated_] : nullptr;
}

void PartForm::show(std::size_t stated) {
    stated_ = stated;
    const Part* now = part();
    if (now == nullptr) {
        return;
    }
    std::string shape = std::to_string(stated) + ":" + std::to_string(now->relation.index()) +
                        (now->spacing ? "s" : "");
    for (const Part& other : document_.piece().parts) {
        shape += "," + other.name;
    }
    for (const Stock& stock : document_.piece().stocks) {
        shape += ";" + stock.name;
    }
    if (shape != shape_) {
        shape_ = shape;
        rebuild(*now);
    }
    for (const auto& refresh : refreshers_) {
        refresh(*now);
    }
}

Result<void> PartForm::change(const Change& change, Document::Kind kind) {
    const Part* now = part();
    if (now == nullptr) {
        return fail(ErrorCode::UnknownName, utf8(tr("That part is gone.")));
    }
    Part next = *now;
    change(next);
    return document_.apply(SetPart{now->name, next}, kind);
}

void PartForm::changeOrTell(const Change& one) {
    if (const Result<void> done = change(one); !done) {
        prompts_.tell(this, qt(done.error().message));
    }
}

void PartForm::rebuild(const Part& part) {
    clearLayout(*grid_);
    refreshers_.clear();
    addName();
    addChoice(
        tr("role"),
        wordsOf(kRoles),
        [](const Part& p) { return qt(wordFor(p.role)); },
        [](Part& p, const QString& word) { p.role = fromWord<Role>(utf8(word)).value_or(p.role); });
    QStringList stocks;
    for (const Stock& stock : document_.piece().stocks) {
        stocks << qt(stock.name);
    }
    addChoice(
        tr("stock"),
        stocks,
        [](const Part& p) { return qt(p.stock); },
        [](Part& p, const QString& word) { p.stock = utf8(word); });
    addStatement(
        tr("width"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return p.width; },
        tr("as it follows"));
    addStatement(
        tr("thickness"),
        Dimension::Length,
        true,
        [](Part& p) -> Statement& { return p.thickness; },
        tr("as its stock"));
    addCheck(tr("left and right pair"), [](Part& p) -> bool& { return p.pair; });
    if (std::holds_alternative<Stands>(part.relation)) {
        addStands();
    } else if (std::holds_alternative<Spans>(part.relation)) {
        addSpans();
    } else if (const auto* caps = std::get_if<Caps>(&part.relation)) {
        addCaps(*caps);
    } else {
        addFree();
    }
    if (part.spacing) {
        addSpacing();
    }
}

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
}

void PartForm::addSpans() {
    addReference(tr("spans from"), [](Part& p) -> Statement& { return relationOf<Spans>(p).from; });
    addReference(tr("to"), [](Part& p) -> Statement& { return relationOf<Spans>(p).to; });
    addChoice(
        tr("placed by its"),
        wordsOf(kSides) + QStringList{tr("spacing")},
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

void PartForm::addName() {
    auto* field = new QLineEdit(this);
    addRow(tr("name"), field);
    connect(field, &QLineEdit::editingFinished, this, [this, field] {
        if (!field->isModified()) {
            return;
        }
        field->setModified(false);
        changeOrTell([name = utf8(field->text().simplified())](Part& p) { p.name = name; });
        if (const Part* now = part()) {
            field->setText(qt(now->name));
        }
    });
    refreshers_.push_back([field](const Part& part) {
        if (!field->isModified()) {
            field->setText(qt(part.name));
        }
    });
}

void PartForm::addStatement(const QString& label,
                            Dimension dimension,
                            bool mayBeEmpty,
                            Text text,
                            const QString& whenEmpty) {
    auto* field = new StatementField(
        document_,
        dimension,
        [this, text](const std::string& statement, Document::Kind kind) {
            return change([&](Part& p) { text(p) = statement; }, kind);
        },
        this);
    field->setMayBeEmpty(mayBeEmpty);
    field->setPlaceholderText(whenEmpty);
    addRow(label, field);
    refreshers_.push_back([this, field, text](const Part& part) {
        Part copy = part;  // the accessor may make what it points at
        const Statement statement = text(copy);
        field->setStatement(statement);
        const Result<Expression> expression = Expression::parse(statement, document_.piece().unit);
        field->setStateWord(expression && !expression->names().empty() ? u"ƒ"_s : QString());
    });
}

void PartForm::addChoice(const QString& label,
                         const QStringList& choices,
                         std::function<QString(const Part&)> now,
                         std::function<void(Part&, const QString&)> choose) {
    auto* box = new QComboBox(this);
    box->setFocusPolicy(Qt::StrongFocus);
    box->addItems(choices);
    addRow(label, box);
    connect(box, &QComboBox::textActivated, this, [this, choose](const QString& word) {
        changeOrTell([&](Part& p) { choose(p, word); });
    });
    refreshers_.push_back([box, now = std::move(now)](const Part& part) {
        const QString word = now(part);
        if (box->findText(word) < 0) {
            box->addItem(word);
        }
        box->setCurrentText(word);
    });
}

QStringList PartForm::referenceNames() const {
    QStringList names;
    for (const Part& other : document_.piece().parts) {
        names << qt(other.name);
        if (other.pair) {
            names << qt(other.name) + u", left"_s << qt(other.name) + u", right"_s;
        }
    }
    return names;
}

void PartForm::addReference(const QString& label, Text text) {
    addChoice(
        label,
        referenceNames(),
        [text](const Part& part) {
            Part copy = part;
            return qt(text(copy));
        },
        [text](Part& part, const QString& word) { text(part) = utf8(word); });
}

void PartForm::addSide(const QString& label, std::function<Side&(Part&)> side) {
    addChoice(
        label,
        wordsOf(kSides),
        [side](const Part& part) {
            Part copy = part;
            return qt(wordFor(side(copy)));
        },
        [side](Part& part, const QString& word) {
            side(part) = fromWord<Side>(utf8(word)).value_or(side(part));
        });
}

void PartForm::addCheck(const QString& label, std::function<bool&(Part&)> flag) {
    auto* box = new QCheckBox(label, this);
    const int row = grid_->rowCount();
    grid_->addWidget(box, row, 0, 1, 2);
    box->show();
    connect(box, &QCheckBox::clicked, this, [this, flag](bool isOn) {
        changeOrTell([&](Part& p) { flag(p) = isOn; });
    });
    refreshers_.push_back([box, flag](const Part& part) {
        Part copy = part;
        box->setChecked(flag(copy));
    });
}

void PartForm::addRow(const QString& label, QWidget* field) {
    auto* name = new QLabel(label, this);
    name->setBuddy(field);
    field->setAccessibleName(tr("part: %1").arg(label));
    field->setFixedWidth(kFieldWidth);
    const int row = grid_->rowCount();
    grid_->addWidget(name, row, 0);
    grid_->addWidget(field, row, 1);
    name->show();
    field->show();
}

}  // namespace shoulderline
