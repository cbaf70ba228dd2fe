#include "ui/columns/house_rule_dialog.h"

#include <QDialogButtonBox>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/columns/section.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

QString gradeText(Grade grade) {
    switch (grade) {
        case Grade::Published:
            return HouseRuleDialog::tr("published");
        case Grade::CommonPractice:
            return HouseRuleDialog::tr("common practice");
        case Grade::OurChoice:
            break;
    }
    return HouseRuleDialog::tr("our choice");
}

QString figureOf(const Document& document, const Rule& rule) {
    return rule.unit == RuleUnit::Length ? qt(document.shown(rule.length()))
                                         : QString::number(rule.value, 'g', 4);
}

// One line for a size that would move.
QString lineFor(const Document& document, const Moved& moved) {
    const auto shown = [&](const std::optional<Length>& length, const QString& none) {
        return length ? qt(document.shown(*length)) : none;
    };
    return HouseRuleDialog::tr("%1, %2: %3 → %4")
        .arg(qt(moved.subject),
             qt(moved.size),
             shown(moved.before, HouseRuleDialog::tr("new")),
             shown(moved.after, HouseRuleDialog::tr("gone")));
}

}  // namespace

HouseRuleDialog::HouseRuleDialog(Document& document, RuleId rule, QWidget* parent)
    : QDialog(parent), document_(document), rule_(rule) {
    const Rule& book = document_.resources().rules[rule];
    const Rule& now = document_.resolved().rules[rule];
    setObjectName(u"houseRule"_s);
    setWindowTitle(tr("House Rule"));
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(8);
    auto* subject = new QLabel(qt(book.subject), this);
    QFont bold = subject->font();
    bold.setWeight(QFont::DemiBold);
    subject->setFont(bold);
    layout->addWidget(subject);
    auto* source =
        makeSoftLabel(tr("The rule book has %1: %2 (%3)")
                          .arg(figureOf(document_, book), qt(book.source), gradeText(book.grade)),
                      0.92,
                      this);
    source->setWordWrap(true);
    layout->addWidget(source);
    auto* label = new QLabel(
        book.unit == RuleUnit::Length ? tr("&Your figure, a length") : tr("&Your figure, a ratio"),
        this);
    value_ = new QLineEdit(figureOf(document_, now), this);
    value_->setObjectName(u"houseRuleValue"_s);
    value_->selectAll();
    label->setBuddy(value_);
    layout->addWidget(label);
    layout->addWidget(value_);
    heading_ = new QLabel(this);
    heading_->setWordWrap(true);
    layout->addWidget(heading_);
    moved_ = new QPlainTextEdit(this);
    moved_->setObjectName(u"houseRuleMoves"_s);
    moved_->setReadOnly(true);
    moved_->setTabChangesFocus(true);
    moved_->setLineWrapMode(QPlainTextEdit::NoWrap);
    moved_->setAccessibleName(tr("what it would change"));
    layout->addWidget(moved_, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    take_ = buttons->addButton(tr("&Take It"), QDialogButtonBox::AcceptRole);
    take_->setDefault(true);
    connect(take_, &QPushButton::clicked, this, [this] { take(stated()); });
    if (now.isHouseRule) {
        QPushButton* back =
            buttons->addButton(tr("&Back to the Rule Book"), QDialogButtonBox::ResetRole);
        back->setAutoDefault(false);
        connect(back, &QPushButton::clicked, this, [this] { take({}); });
    }
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    layout->addWidget(buttons);
    connect(value_, &QLineEdit::textChanged, this, &HouseRuleDialog::foresee);
    resize(480, 420);
    foresee();
}

std::string HouseRuleDialog::stated() const {
    QString text = value_->text().simplified();
    text.replace(QChar(0x00a0), u' ');
    return utf8(text);
}

void HouseRuleDialog::foresee() {
    const Result<Foreseen> foreseen =
        document_.foresee(SetHouseRule{std::string(ruleIdText(rule_)), stated()});
    const bool isEmpty = stated().empty();
    take_->setEnabled(foreseen.has_value() && !isEmpty);
    if (!foreseen || isEmpty) {
        heading_->setText(isEmpty ? tr("A figure is expected.") : qt(foreseen.error().message));
        moved_->clear();
        return;
    }
    QStringList lines;
    for (const Moved& moved : foreseen->moved) {
        lines << lineFor(document_, moved);
    }
    for (const std::string& finding : foreseen->newFindings) {
        lines << tr("new finding: %1").arg(qt(finding));
    }
    for (const std::string& finding : foreseen->goneFindings) {
        lines << tr("no longer: %1").arg(qt(finding));
    }
    heading_->setText(lines.isEmpty() ? tr("It would change nothing in this piece.")
                                      : tr("It would change:"));
    moved_->setPlainText(lines.join(u"\n"_s));
}

void HouseRuleDialog::take(const std::string& value) {
    const Result<void> taken = document_.apply(SetHouseRule{std::string(ruleIdText(rule_)), value});
    if (!taken) {
        heading_->setText(qt(taken.error().message));
        return;
    }
    accept();
}

}  // namespace shoulderline
