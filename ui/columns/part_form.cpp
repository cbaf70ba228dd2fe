#include "ui/columns/part_form.h"

#include <QCheckBox>
#include <QLabel>
#include <algorithm>
#include <utility>

#include "core/measure/expression.h"
#include "core/piece/roles.h"
#include "ui/columns/section.h"
#include "ui/fields/choice_box.h"
#include "ui/fields/statement_field.h"
#include "ui/look/text.h"
#include "ui/prompts/prompts.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr int kFieldWidth = 142;

constexpr Side kSides[] = {
    Side::Left, Side::Right, Side::Front, Side::Back, Side::Bottom, Side::Top, Side::Centre};
template <class Words>
QStringList wordsOf(const Words& words) {
    QStringList all;
    for (const auto& word : words) {
        all << qt(wordFor(word));
    }
    return all;
}

}  // namespace

QStringList PartForm::sideWords() {
    return wordsOf(kSides);
}

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
    std::string rows = std::to_string(stated) + ":" + std::to_string(now->relation.index()) +
                       (now->spacing ? "s" : "") + shapeKey(*now);
    for (const Part& other : document_.piece().parts) {
        rows += "," + other.name;
    }
    for (const Stock& stock : document_.piece().stocks) {
        rows += ";" + stock.name;
    }
    if (rows != rows_) {
        rows_ = rows;
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
    addChoice(
        tr("in section"),
        wordsOf(allWords<SectionForm>()),
        [](const Part& p) { return qt(wordFor(p.section)); },
        [](Part& p, const QString& word) {
            p.section = fromWord<SectionForm>(utf8(word)).value_or(p.section);
        });
    addCheck(tr("left and right pair"), [](Part& p) -> bool& { return p.pair; });
    if (std::holds_alternative<Stands>(part.relation)) {
        addStands();
    } else if (std::holds_alternative<Spans>(part.relation)) {
        addSpans();
    } else if (const auto* caps = std::get_if<Caps>(&part.relation)) {
        addCaps(*caps);
    } else if (std::holds_alternative<Fills>(part.relation)) {
        addFills();
    } else {
        addFree();
    }
    if (part.spacing) {
        addSpacing();
    }
    addShape(part);
    addBend(part);
    addCuts(part);
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
    auto* box = new ChoiceBox(this);
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
        sideWords(),
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
