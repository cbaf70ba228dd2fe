#include "ui/columns/joint_panel.h"

#include <QEvent>
#include <QMenu>
#include <algorithm>
#include <iterator>

#include "core/joint/joint_sizing.h"
#include "core/resolve/end_words.h"
#include "core/resolve/found_sizes.h"
#include "core/resolve/joint_angles.h"
#include "ui/columns/section.h"
#include "ui/fields/choice_box.h"
#include "ui/look/label.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr int kSizeFieldWidth = 76;

// What a joint without a tenon is.
QString wordsWithoutTenon(JointKind kind) {
    switch (kind) {
        case JointKind::Dowelled:
            return JointPanel::tr("A butt held by dowels.");
        case JointKind::Screwed:
            return JointPanel::tr("A butt held by screws.");
        case JointKind::Grooved:
            return JointPanel::tr("The panel stands dry in its groove, free to move.");
        case JointKind::Tongued:
            return JointPanel::tr("The tongue stands dry in the next board, free to move.");
        case JointKind::CrossLap:
            return JointPanel::tr("Both run on; half is cut out of each.");
        case JointKind::Blind:
        case JointKind::Through:
        case JointKind::Stub:
        case JointKind::Loose:
        case JointKind::Round:
        case JointKind::LetIn:
        case JointKind::Housed:
        case JointKind::Bridle:
        case JointKind::Lap:
        case JointKind::Rests:
            break;
    }
    return JointPanel::tr("One part lies on the other; no wood joint.");
}

}  // namespace

JointPanel::JointPanel(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(6);
    title_ = new Label(this);
    title_->setWordWrap(true);
    QFont bold = title_->font();
    bold.setWeight(QFont::DemiBold);
    title_->setFont(bold);
    layout->addWidget(title_);
    grid_ = new QGridLayout;
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(6);
    grid_->setVerticalSpacing(3);
    grid_->setColumnStretch(0, 1);
    grid_->setColumnMinimumWidth(2, 54);
    layout->addLayout(grid_);
    auto* kindLabel = new Label(tr("kind"), this);
    kind_ = new ChoiceBox(this);
    kind_->setAccessibleName(tr("kind of joint"));
    kind_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    kind_->addItem(tr("as placed"));
    for (const JointKind kind : allWords<JointKind>()) {
        kind_->addItem(qt(wordFor(kind)));
    }
    kindLabel->setBuddy(kind_);
    connect(kind_, &QComboBox::activated, this, &JointPanel::chooseKind);
    grid_->addWidget(kindLabel, 0, 0);
    grid_->addWidget(kind_, 0, 1, 1, 2);
    features_ = new TextButton({}, TextButton::Kind::Quiet, this);
    features_->setFocusPolicy(Qt::StrongFocus);
    connect(features_, &TextButton::clicked, this, &JointPanel::openFeatures);
    grid_->addWidget(features_, 1, 0, 1, 3, Qt::AlignLeft | Qt::AlignVCenter);
    int at = 2;
    for (const SizeName size : allWords<SizeName>()) {
        addRow(size, at++);
    }
    stock_ = new JointStock(document_, this);
    layout->addWidget(stock_);
    others_ = makeSoftLabel({}, 0.92, this);
    others_->setWordWrap(true);
    layout->addWidget(others_);
    gauges_ = new Gauges(document_, this);
    layout->addWidget(gauges_);
    why_ = new WhyBox(document_, this);
    layout->addWidget(why_);
}

void JointPanel::addRow(SizeName size, int at) {
    Row row;
    row.size = size;
    row.label = new Label(qt(wordFor(size)), this);
    row.label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    row.field = new StatementField(
        document_,
        Dimension::Length,
        [this, size](const std::string& text, Document::Kind kind) -> Result<void> {
            // A sign before the size makes it an offset to what the rule gives.
            const bool isOffset =
                !text.empty() && (text[0] == '+' || text[0] == '-' || text.rfind("−", 0) == 0);
            const SizeStatement* now = statementOf(size);
            const bool isFound = now != nullptr && now->state == SizeState::AsFound;
            const SizeState state = isOffset  ? SizeState::RulePlusOffset
                                    : isFound ? SizeState::AsFound
                                              : SizeState::Stated;
            return setSize(size, {state, text}, kind);
        },
        this);
    row.field->setMayBeEmpty(true);
    row.field->setFixedWidth(kSizeFieldWidth);
    row.field->setAccessibleName(qt(wordFor(size)));
    row.field->setToolTip(
        tr("A size states it; + 1/16 adds to the rule; nothing goes back to the rule."));
    row.field->installEventFilter(this);
    row.label->setBuddy(row.field);
    row.state = new TextButton({}, TextButton::Kind::Quiet, this);
    QFont small = row.state->font();
    small.setPointSizeF(small.pointSizeF() * 0.88);
    row.state->setFont(small);
    row.state->setFocusPolicy(Qt::TabFocus);
    connect(row.state, &TextButton::clicked, this, [this, size, button = row.state] {
        openStates(size, *button);
    });
    grid_->addWidget(row.label, at, 0);
    grid_->addWidget(row.field, at, 1);
    grid_->addWidget(row.state, at, 2, Qt::AlignLeft | Qt::AlignVCenter);
    rows_.push_back(row);
}

const ResolvedJoint* JointPanel::joint() const {
    const std::optional<std::size_t> chosen = document_.chosenJoint();
    return chosen ? &document_.resolved().joints[*chosen] : nullptr;
}

const SizeStatement* JointPanel::statementOf(SizeName size) const {
    const ResolvedJoint* one = joint();
    if (one == nullptr) {
        return nullptr;
    }
    const std::vector<ResolvedPart>& parts = document_.resolved().parts;
    const JointStatement* stated =
        findJointStatement(document_.piece(), parts[one->tenoned].of, parts[one->mortised].of);
    if (stated == nullptr) {
        return nullptr;
    }
    const auto it = stated->sizes.find(size);
    return it == stated->sizes.end() ? nullptr : &it->second;
}

Result<void> JointPanel::setSize(SizeName size,
                                 const SizeStatement& statement,
                                 Document::Kind kind) {
    const ResolvedJoint* one = joint();
    if (one == nullptr) {
        return fail(ErrorCode::UnknownName, utf8(tr("That joint is gone.")));
    }
    const std::vector<ResolvedPart>& parts = document_.resolved().parts;
    return document_.apply(
        SetJointSize{parts[one->tenoned].of, parts[one->mortised].of, size, statement}, kind);
}

void JointPanel::refresh() {
    const ResolvedJoint* one = joint();
    if (one == nullptr) {
        return;
    }
    title_->setText(qt(one->name));
    const std::vector<ResolvedPart>& parts = document_.resolved().parts;
    const JointStatement* stated =
        findJointStatement(document_.piece(), parts[one->tenoned].of, parts[one->mortised].of);
    const bool isStated = stated != nullptr && stated->kind;
    kind_->setItemText(
        0, isStated ? tr("as placed") : tr("as placed: %1").arg(qt(wordFor(one->kind))));
    kind_->setCurrentIndex(isStated ? kind_->findText(qt(wordFor(*stated->kind))) : 0);
    showFeatures(*one);
    const bool isWood = one->hasTenon();
    for (Row& row : rows_) {
        const bool isThere = one->size(row.size) != nullptr;
        for (QWidget* widget : {static_cast<QWidget*>(row.label),
                                static_cast<QWidget*>(row.field),
                                static_cast<QWidget*>(row.state)}) {
            widget->setVisible(isThere);
        }
        if (isThere) {
            showRow(row, *one);
        }
    }
    stock_->refresh();
    others_->setVisible(true);
    gauges_->setVisible(isWood && gaugesShown_);
    showOthers(*one);
    if (isWood) {
        gauges_->show(*document_.chosenJoint());
    }
    showWhy(*one);
}

void JointPanel::showWhy(const ResolvedJoint& one) {
    const Size* size = one.size(whyOf_);
    why_->setVisible(size != nullptr);
    if (size != nullptr) {
        why_->show(qt(wordFor(whyOf_)), *size);
    }
}

void JointPanel::showFeatures(const ResolvedJoint& one) {
    QStringList words;
    for (const JointFeature feature : one.features) {
        words.append(qt(wordFor(feature)));
    }
    const QString text =
        tr("besides: %1").arg(words.isEmpty() ? tr("nothing") : words.join(u", "_s));
    features_->setText(text);
    features_->setAccessibleName(text);
    const std::vector<JointFeature> all = allWords<JointFeature>();
    features_->setEnabled(std::any_of(all.begin(), all.end(), [&](JointFeature feature) {
        return mayHave(one.kind, feature) || one.has(feature);
    }));
}

void JointPanel::openFeatures() {
    const ResolvedJoint* one = joint();
    if (one == nullptr) {
        return;
    }
    const std::vector<ResolvedPart>& parts = document_.resolved().parts;
    QMenu menu(this);
    for (const JointFeature feature : allWords<JointFeature>()) {
        if (!mayHave(one->kind, feature) && !one->has(feature)) {
            continue;
        }
        const SetJointFeature edit{
            parts[one->tenoned].of, parts[one->mortised].of, feature, !one->has(feature)};
        QAction* action = menu.addAction(
            qt(wordFor(feature)), this, [this, edit] { static_cast<void>(document_.apply(edit)); });
        action->setCheckable(true);
        action->setChecked(one->has(feature));
    }
    menu.exec(features_->mapToGlobal(QPoint(0, features_->height())));
}

void JointPanel::setGaugesShown(bool shown) {
    gaugesShown_ = shown;
    refresh();
}

void JointPanel::showRow(Row& row, const ResolvedJoint& one) {
    const Size& size = *one.size(row.size);
    const SizeStatement* stated = statementOf(row.size);
    const bool isOwn = stated != nullptr && stated->state != SizeState::RulePlusOffset;
    row.field->setStatement(isOwn ? stated->expression : std::string(),
                            document_.shown(size.value));
    row.state->setText(qt(wordFor(size.state)));
    row.state->setAccessibleName(tr("%1: %2").arg(qt(wordFor(row.size)), qt(wordFor(size.state))));
    QFont font = row.label->font();
    font.setWeight(size.state == SizeState::ByRule ? QFont::Normal : QFont::DemiBold);
    row.label->setFont(font);
}

void JointPanel::showOthers(const ResolvedJoint& one) {
    if (!one.hasTenon()) {
        others_->setText(wordsWithoutTenon(one.kind));
        return;
    }
    const auto shown = [this](const Size& size) { return qt(document_.shown(size.value)); };
    const ResolvedPart& mortised = document_.resolved().parts[one.mortised];
    QStringList lines{tr("mortise in the %1; %2 from its %3, %4 from its %5")
                          .arg(qt(wordFor(one.mortise.face)),
                               shown(one.mortise.fromFace),
                               qt(wordFor(one.mortise.reference)),
                               shown(one.mortise.fromStart),
                               qt(placesFromWord(mortised, End::Start)))};
    for (const std::string& setting : outOfSquareSettings(document_.resolved(), one)) {
        lines << qt(setting);
    }
    const std::string found = foundText(foundBehind(document_.resolved(), *document_.chosenJoint()),
                                        [this](Length length) { return document_.shown(length); });
    if (!found.empty()) {
        lines << tr("follows what was found: %1").arg(qt(found));
    }
    others_->setText(lines.join(u'\n'));
}

void JointPanel::chooseKind(int index) {
    const ResolvedJoint* one = joint();
    if (one == nullptr) {
        return;
    }
    const std::optional<JointKind> kind =
        index == 0 ? std::nullopt : fromWord<JointKind>(utf8(kind_->itemText(index)));
    const std::vector<ResolvedPart>& parts = document_.resolved().parts;
    static_cast<void>(
        document_.apply(SetJointKind{parts[one->tenoned].of, parts[one->mortised].of, kind}));
    refresh();
}

void JointPanel::openStates(SizeName size, QWidget& under) {
    const ResolvedJoint* one = joint();
    if (one == nullptr) {
        return;
    }
    const Size* now = one->size(size);
    if (now == nullptr) {
        return;
    }
    const std::string value = showLength(now->value, LengthStyle::fractions(64), true);
    const std::string exact = value.rfind("≈", 0) == 0
                                  ? showLength(now->value, LengthStyle::decimalInches(4), true)
                                  : value;
    std::string stated = exact;
    for (std::size_t at = stated.find("\u00a0"); at != std::string::npos;
         at = stated.find("\u00a0")) {
        stated.replace(at, std::string_view("\u00a0").size(), " ");
    }
    QMenu menu(this);
    const auto setTo = [this, size](SizeState state, const std::string& text) {
        static_cast<void>(setSize(size, {state, text}, Document::Kind::Whole));
    };
    menu.addAction(tr("Back to the Rule"), this, [setTo] { setTo(SizeState::Stated, {}); });
    menu.addAction(
        tr("State %1").arg(qt(exact)), this, [setTo, stated] { setTo(SizeState::Stated, stated); });
    menu.addAction(tr("Came Out So at the Bench"), this, [setTo, stated] {
        setTo(SizeState::AsFound, stated);
    });
    menu.exec(under.mapToGlobal(QPoint(0, under.height())));
}

bool JointPanel::eventFilter(QObject* object, QEvent* event) {
    if (event->type() == QEvent::FocusIn) {
        for (const Row& row : rows_) {
            if (row.field == object && joint() != nullptr) {
                whyOf_ = row.size;
                showWhy(*joint());
            }
        }
    }
    return QWidget::eventFilter(object, event);
}

}  // namespace shoulderline
