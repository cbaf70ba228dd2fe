#include "ui/columns/part_form.h"

#include "core/piece/roles.h"

namespace shoulderline {

namespace {

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

// A bow is stated by its rise or by its radius: who states the one takes the other back.
void keepOneOfBow(const Bend& before, Bend& bend) {
    if (bend.rise.empty() || bend.radius.empty()) {
        return;
    }
    (bend.rise != before.rise ? bend.radius : bend.rise).clear();
}

}  // namespace

QStringList PartForm::sideWords() {
    return wordsOf(kSides);
}

PartForm::PartForm(Document& document, Prompts& prompts, QWidget* parent)
    : FormRows(document, prompts, tr("part"), parent) {}

const Part* PartForm::thing() const {
    const std::vector<Part>& parts = document_.piece().parts;
    return stated_ < parts.size() ? &parts[stated_] : nullptr;
}

void PartForm::show(std::size_t stated) {
    stated_ = stated;
    const Part* now = thing();
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
        remakeRows(*now, [&] { addRows(*now); });
    } else {
        refreshRows(*now);
    }
}

Result<void> PartForm::change(const Change& change, Document::Kind kind) {
    const Part* now = thing();
    if (now == nullptr) {
        return fail(ErrorCode::UnknownName, utf8(tr("That part is gone.")));
    }
    Part next = *now;
    change(next);
    if (now->bend && next.bend) {
        keepOneOfBow(*now->bend, *next.bend);
    }
    return document_.apply(SetPart{now->name, next}, kind);
}

void PartForm::addRows(const Part& part) {
    addText(tr("name"), [](Part& p) -> std::string& { return p.name; });
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
    for (const auto& [label, member] : {std::pair{tr("width, found"), &Part::foundWidth},
                                        std::pair{tr("thickness, found"), &Part::foundThickness}}) {
        addStatement(
            label,
            Dimension::Length,
            true,
            [member = member](Part& p) -> Statement& { return p.*member; },
            tr("not measured"));
    }
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
    addEasings(part);
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

}  // namespace shoulderline
