#include "ui/columns/strength_panel.h"

#include <QFormLayout>
#include <QVBoxLayout>

#include "core/check/figure_text.h"
#include "core/check/strength_json.h"
#include "ui/columns/loads_dialog.h"
#include "ui/columns/section.h"
#include "ui/look/label.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr int kTestFieldWidth = 96;
constexpr double kSoft = 0.9;
const std::string kNewtonMetres = "N\u00a0m";

QLabel* makeWrapping(const QString& text, double scale, QWidget* parent) {
    QLabel* label = makeSoftLabel(text, scale, parent);
    label->setWordWrap(true);
    return label;
}

}  // namespace

StrengthPanel::StrengthPanel(Document& document, QWidget* parent)
    : QWidget(parent), document_(document) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 0, 12, 10);
    layout->setSpacing(5);
    auto* heading = new SectionHeading(tr("Strength, compared"), this);
    connect(heading->addCommand(tr("loads"), tr("loads that the piece is to bear")),
            &TextButton::clicked,
            this,
            [this] {
                LoadsDialog dialog(document_, window());
                dialog.exec();
            });
    layout->addWidget(heading);
    summary_ = new Label(this);
    summary_->setWordWrap(true);
    QFont bold = summary_->font();
    bold.setWeight(QFont::DemiBold);
    summary_->setFont(bold);
    layout->addWidget(summary_);
    figures_ = new QGridLayout;
    figures_->setHorizontalSpacing(12);
    figures_->setVerticalSpacing(1);
    figures_->setColumnStretch(0, 1);
    layout->addLayout(figures_);
    working_ = new Label(this);
    working_->setWordWrap(true);
    layout->addWidget(working_);
    gauge_ = new GaugeBar(this);
    layout->addWidget(gauge_);
    layout->addWidget(makeWrapping(qt(document_.resources().strength.caution()), kSoft, this));
    makeFields(*layout);
    assumptions_ = makeWrapping({}, kSoft, this);
    assumptions_->setAccessibleName(tr("what the estimate takes for granted"));
    assumptions_->setTextFormat(Qt::PlainText);
    layout->addWidget(assumptions_);
    layout->addStretch(1);
}

void StrengthPanel::makeFields(QLayout& layout) {
    auto* holder = new QWidget(this);
    auto* form = new QFormLayout(holder);
    form->setContentsMargins(0, 4, 0, 4);
    form->setVerticalSpacing(4);
    glue_ = new ChoiceBox(holder);
    glue_->setObjectName(u"glue"_s);
    glue_->setAccessibleName(tr("glue of the piece"));
    for (const Adhesive& one : document_.resources().strength.adhesives()) {
        glue_->addItem(qt(one.name));
        glue_->setItemData(glue_->count() - 1, qt(one.source), Qt::ToolTipRole);
    }
    connect(glue_, &QComboBox::activated, this, [this](int index) {
        static_cast<void>(document_.apply(SetAdhesive{utf8(glue_->itemText(index))}));
    });
    form->addRow(tr("glue"), glue_);
    test_ = new StatementField(
        document_,
        Dimension::Number,
        [this](const std::string& text, Document::Kind kind) -> Result<void> {
            const std::optional<std::size_t> joint = document_.chosenJoint();
            if (!joint) {
                return fail(ErrorCode::UnknownName, utf8(tr("That joint is gone.")));
            }
            const ResolvedPiece& resolved = document_.resolved();
            const ResolvedJoint& one = resolved.joints[*joint];
            StrengthTest test = statedTest() != nullptr ? *statedTest() : StrengthTest{};
            test.tenoned = resolved.parts[one.tenoned].of;
            test.mortised = resolved.parts[one.mortised].of;
            test.newtonMetres = text;
            return document_.apply(SetStrengthTest{std::move(test)}, kind);
        },
        holder);
    test_->setObjectName(u"ownTest"_s);
    test_->setMayBeEmpty(true);
    test_->setKeepsBare(true);
    test_->setCounts(false);
    test_->setFixedWidth(kTestFieldWidth);
    test_->setAccessibleName(tr("moment at which a joint like this one broke, in newton metres"));
    test_->setToolTip(
        tr("The moment at which joints of your own like this one broke; the estimate "
           "is brought to it. Nothing leaves it to the published tests."));
    form->addRow(tr("own test, N m"), test_);
    layout.addWidget(holder);
}

const StrengthTest* StrengthPanel::statedTest() const {
    const std::optional<std::size_t> joint = document_.chosenJoint();
    if (!joint) {
        return nullptr;
    }
    const ResolvedPiece& resolved = document_.resolved();
    const ResolvedJoint& one = resolved.joints[*joint];
    for (const StrengthTest& test : document_.piece().use.tests) {
        if (test.tenoned == resolved.parts[one.tenoned].of &&
            test.mortised == resolved.parts[one.mortised].of) {
            return &test;
        }
    }
    return nullptr;
}

void StrengthPanel::addFigure(const QString& name, const QString& figure, bool isBold) {
    // Rows are kept and lettered anew: making labels takes longer than all that they tell.
    if (figuresShown_ == rows_.size()) {
        const FigureRow row{makeSoftLabel({}, 1.0, this), new Label(this)};
        const int at = static_cast<int>(rows_.size());
        figures_->addWidget(row.name, at, 0);
        figures_->addWidget(row.figure, at, 1, Qt::AlignRight);
        rows_.push_back(row);
    }
    const FigureRow& row = rows_[figuresShown_++];
    row.name->setText(name);
    row.figure->setText(figure);
    row.figure->setAccessibleName(name + u": "_s + figure);
    for (QLabel* label : {row.name, row.figure}) {
        QFont font = label->font();
        font.setWeight(isBold ? QFont::DemiBold : QFont::Normal);
        label->setFont(font);
        label->show();
    }
}

void StrengthPanel::hideFiguresOver() {
    for (std::size_t i = figuresShown_; i < rows_.size(); ++i) {
        rows_[i].name->hide();
        rows_[i].figure->hide();
    }
}

void StrengthPanel::refresh() {
    figuresShown_ = 0;
    showJoint();
    hideFiguresOver();
}

void StrengthPanel::showJoint() {
    const std::optional<std::size_t> joint = document_.chosenJoint();
    const bool isEstimated = joint && document_.strength().joints[*joint].strength.isEstimated();
    for (QWidget* widget : {static_cast<QWidget*>(working_),
                            static_cast<QWidget*>(gauge_),
                            static_cast<QWidget*>(test_->parentWidget()),
                            static_cast<QWidget*>(assumptions_)}) {
        widget->setVisible(isEstimated);
    }
    if (!joint) {
        summary_->setText(tr("No joint is chosen."));
        return;
    }
    summary_->setText(qt(strengthClause(document_.strength(), *joint)));
    if (!isEstimated) {
        summary_->setText(tr("No estimate: %1.").arg(summary_->text()));
        return;
    }
    const std::string& glue = document_.piece().use.adhesive;
    const Adhesive& used = document_.resources().strength.adhesive(glue);
    glue_->setCurrentText(qt(used.name));
    const StrengthTest* own = statedTest();
    test_->setStatement(own != nullptr ? own->newtonMetres : std::string());
    showFigures(*joint);
    showWorking(*joint);
    showAssumptions(document_.strength().joints[*joint].strength);
}

void StrengthPanel::showFigures(std::size_t joint) {
    const JointStrength& strength = document_.strength().joints[joint].strength;
    if (!strength.isCovered) {
        addFigure(tr("would fail first by"), qt(wordFor(strength.bending.governs)), false);
        return;
    }
    for (std::size_t i = 0; i < kMechanismCount; ++i) {
        const auto mechanism = static_cast<Mechanism>(i);
        if (strength.bending.each[i]) {
            addFigure(tr("bent, %1").arg(qt(wordFor(mechanism))),
                      qt(rangeText(*strength.bending.each[i], kNewtonMetres)),
                      mechanism == strength.bending.governs);
        }
    }
    if (strength.ownTest) {
        addFigure(tr("bent, by your own test"),
                  qt(rangeText(strength.bending.range, kNewtonMetres)),
                  true);
    }
    addFigure(tr("drawn out"), qt(rangeText(strength.withdrawal.range, "N")), false);
    addFigure(tr("pushed across"), qt(rangeText(strength.shear.range, "N")), false);
}

void StrengthPanel::showWorking(std::size_t joint) {
    const JointRating& rating = document_.strength().joints[joint];
    gauge_->setVisible(rating.working && rating.strength.isCovered);
    if (!rating.working) {
        working_->setText(tr("None of the loads reaches this joint."));
        return;
    }
    const Working& working = *rating.working;
    const Load& load = document_.strength().loads[working.demand.load];
    const QString name = qt(load.name);
    if (!rating.strength.isCovered) {
        working_->setText(tr("Worked hardest by ‘%1’.").arg(name));
        return;
    }
    const QString asked = working.isByShear
                              ? qt(estimateText(working.demand.shearNewtons)) + u"\u00a0N"_s
                              : qt(estimateText(working.demand.newtonMetres)) + u"\u00a0N\u00a0m"_s;
    working_->setText(tr("Worked hardest by ‘%1’: %2, %3 of what counts of its strength (%4 %).")
                          .arg(name,
                               asked,
                               qt(rangeText(working.ratio, "")),
                               QString::number(working.allowable * 100.0, 'f', 0)));
    working_->setToolTip(qt(load.source));
    gauge_->show(working.ratio.high, std::nullopt, 1.0);
    gauge_->setAccessibleName(
        tr("load to strength: %1, at most 1").arg(qt(rangeText(working.ratio, ""))));
}

void StrengthPanel::showAssumptions(const JointStrength& strength) {
    QStringList lines{tr("Taken for granted:")};
    for (const AssumptionText* one :
         assumptionTexts(strength.assumptions, document_.resources().strength)) {
        lines << tr("• %1 (%2)").arg(qt(one->text), qt(one->source));
    }
    assumptions_->setText(lines.join(u"\n"_s));
}

}  // namespace shoulderline
