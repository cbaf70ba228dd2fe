#include "ui/window/starter_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/fields/statement_field.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

// What a measure comes to: a length, an angle or a number.
Dimension dimensionOf(const Document& document, const std::string& name) {
    for (const ResolvedMeasure& measure : document.resolved().measures) {
        if (measure.name == name && measure.value) {
            return measure.value->dimension();
        }
    }
    return Dimension::Length;
}

QString limitsOf(const Document& document, const Measure& measure, Dimension dimension) {
    const auto shown = [&](const std::string& limit) {
        return qt(document.shownValue(limit, dimension).value_or(limit));
    };
    if (measure.least.empty()) {
        return measure.most.empty() ? QString()
                                    : StarterDialog::tr("up to %1").arg(shown(measure.most));
    }
    return measure.most.empty()
               ? StarterDialog::tr("from %1").arg(shown(measure.least))
               : StarterDialog::tr("%1 to %2").arg(shown(measure.least), shown(measure.most));
}

}  // namespace

StarterDialog::StarterDialog(const Resources& resources, QWidget* parent)
    : QDialog(parent), document_(resources), glow_(false) {
    setWindowTitle(tr("New from a Starter"));
    resize(1180, 720);
    auto* across = new QHBoxLayout;
    starters_ = new QListWidget(this);
    starters_->setAccessibleName(tr("starters"));
    for (const Piece& starter : resources.starters) {
        auto* item = new QListWidgetItem(qt(starter.name), starters_);
        item->setToolTip(qt(starter.note));
    }
    starters_->setFixedWidth(starters_->sizeHintForColumn(0) + 24);
    auto* form = new QWidget(this);
    auto* down = new QVBoxLayout(form);
    name_ = new QLineEdit(form);
    name_->setAccessibleName(tr("name of the piece"));
    measures_ = new QFormLayout;
    measures_->addRow(tr("&Name"), name_);
    down->addLayout(measures_);
    down->addStretch();
    auto* scroll = new QScrollArea(this);
    scroll->setWidget(form);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFixedWidth(360);
    canvas_ = new PieceCanvas(document_, glow_, this);
    canvas_->setMinimumWidth(420);
    across->addWidget(starters_);
    across->addWidget(scroll);
    across->addWidget(canvas_, 1);
    findings_ = new QLabel(this);
    findings_->setWordWrap(true);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    begin_ = buttons->addButton(tr("&Begin"), QDialogButtonBox::AcceptRole);
    begin_->setDefault(true);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(across, 1);
    layout->addWidget(findings_);
    layout->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(starters_, &QListWidget::currentRowChanged, this, &StarterDialog::choose);
    connect(name_, &QLineEdit::textEdited, this, [this](const QString& text) {
        begin_->setEnabled(!text.simplified().isEmpty());
        if (begin_->isEnabled()) {
            document_.apply(SetPieceName{utf8(text.simplified())});
        }
    });
    connect(&document_, &Document::changed, this, &StarterDialog::showFindings);
    begin_->setEnabled(!resources.starters.empty());
    starters_->setCurrentRow(0);
    starters_->setFocus();
}

// The fields outlive the document that they state: one that is being typed in lets go of it first.
StarterDialog::~StarterDialog() {
    if (QWidget* typedIn = focusWidget(); typedIn != nullptr) {
        typedIn->clearFocus();
    }
}

void StarterDialog::choose(int starter) {
    const std::vector<Piece>& all = document_.resources().starters;
    if (starter < 0 || static_cast<std::size_t>(starter) >= all.size()) {
        return;
    }
    while (measures_->rowCount() > 1) {
        measures_->removeRow(measures_->rowCount() - 1);
    }
    document_.start(all[static_cast<std::size_t>(starter)], {});
    name_->setText(qt(document_.piece().name));
    begin_->setEnabled(true);
    for (const Measure& measure : document_.piece().measures) {
        if (!measure.least.empty() || !measure.most.empty()) {
            addMeasure(measure);
        }
    }
    showFindings();
}

void StarterDialog::addMeasure(const Measure& measure) {
    const std::string name = measure.name;
    const Dimension dimension = dimensionOf(document_, name);
    auto* field = new StatementField(
        document_,
        dimension,
        [this, name](const std::string& statement, Document::Kind kind) {
            return document_.apply(SetMeasure{name, statement}, kind);
        },
        this);
    field->setAccessibleName(tr("measure: %1").arg(qt(name)));
    field->setToolTip(qt(measure.note));
    field->setFixedWidth(130);
    auto* row = new QHBoxLayout;
    row->addWidget(field);
    row->addWidget(new QLabel(limitsOf(document_, measure, dimension), this), 1);
    measures_->addRow(qt(name), row);
    const auto show = [this, field, name] {
        for (const Measure& one : document_.piece().measures) {
            if (one.name == name) {
                field->setStatement(one.expression);
            }
        }
    };
    connect(&document_, &Document::changed, field, show);
    show();
}

// How many findings there are, the first in words: a start that cannot be made is seen at once.
void StarterDialog::showFindings() {
    const std::vector<Finding>& findings = document_.findings();
    std::size_t grave = 0;
    const Finding* first = nullptr;
    for (const Finding& finding : findings) {
        if (finding.severity != Severity::Note) {
            first = first == nullptr ? &finding : first;
            ++grave;
        }
    }
    findings_->setText(first == nullptr
                           ? tr("Nothing to mend.")
                           : tr("%n thing(s) to look at: %1", nullptr, static_cast<int>(grave))
                                 .arg(qt(first->message)));
}

}  // namespace shoulderline
