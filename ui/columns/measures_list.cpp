#include "ui/columns/measures_list.h"

#include <QContextMenuEvent>
#include <QEvent>
#include <QMenu>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>

#include "core/measure/measure_name.h"
#include "ui/columns/section.h"
#include "ui/look/label.h"
#include "ui/look/text.h"
#include "ui/look/theme.h"
#include "ui/prompts/prompts.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr int kMeasureFieldWidth = 80;

// What kind of figure a measure's field takes: what it comes to now.
Dimension dimensionOf(const ResolvedMeasure& measure) {
    return measure.value ? measure.value->dimension() : Dimension::Length;
}

bool isCount(const ResolvedMeasure& measure) {
    return measure.value && measure.value->isBare();
}

}  // namespace

MeasuresList::MeasuresList(Document& document, Afterglow& glow, Prompts& prompts, QWidget* parent)
    : QWidget(parent), document_(document), glow_(glow), prompts_(prompts) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    auto* heading = new SectionHeading(tr("Measures"), this);
    connect(heading->addCommand(tr("add"), tr("add a measure")),
            &TextButton::clicked,
            this,
            &MeasuresList::add);
    layout->addWidget(heading);
    rows_ = new QGridLayout;
    rows_->setContentsMargins(0, 0, 0, 0);
    rows_->setHorizontalSpacing(8);
    rows_->setVerticalSpacing(4);
    rows_->setColumnStretch(0, 1);
    layout->addLayout(rows_);
    connect(&document_, &Document::changed, this, &MeasuresList::refresh);
    connect(&glow_, &Afterglow::levelChanged, this, &MeasuresList::repaintTint);
    rebuild();
    refresh();
}

void MeasuresList::refresh() {
    const std::vector<Measure>& measures = document_.piece().measures;
    const bool isSame =
        std::equal(all_.begin(),
                   all_.end(),
                   measures.begin(),
                   measures.end(),
                   [](const Row& row, const Measure& measure) { return row.name == measure.name; });
    if (!isSame) {
        rebuild();
    }
    const std::vector<ResolvedMeasure>& resolved = document_.resolved().measures;
    for (std::size_t i = 0; i < measures.size() && i < resolved.size(); ++i) {
        show(all_[i], measures[i], resolved[i]);
    }
    repaintTint();
}

// Only the row that is tinted and the one that was: all the others stay as they are.
void MeasuresList::repaintTint() {
    update(tinted_);
    tinted_ = tintNow();
    update(tinted_);
}

// Around the row of the last change, while its mark is there.
QRect MeasuresList::tintNow() const {
    const LastChange& last = document_.lastChange();
    const auto row = std::find_if(
        all_.begin(), all_.end(), [&](const Row& one) { return qt(one.name) == last.name; });
    if (glow_.level() <= 0.0 || last.name.isEmpty() || row == all_.end()) {
        return {};
    }
    return {-4, row->field->y() - 2, width() + 8, row->field->height() + 4};
}

void MeasuresList::rebuild() {
    clearLayout(*rows_);
    all_.clear();
    int at = 0;
    for (const Measure& measure : document_.piece().measures) {
        Row row;
        row.name = measure.name;
        row.label = new Label(qt(measure.name), this);
        row.label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
        row.field = new StatementField(
            document_,
            Dimension::Length,
            [this, name = measure.name](const std::string& statement, Document::Kind kind) {
                return document_.apply(SetMeasure{name, statement}, kind);
            },
            this);
        row.field->setObjectName(u"measure:"_s + qt(measure.name));
        row.field->setAccessibleName(qt(measure.name));
        row.field->setFixedWidth(kMeasureFieldWidth);
        row.label->setBuddy(row.field);
        for (QWidget* widget :
             {static_cast<QWidget*>(row.label), static_cast<QWidget*>(row.field)}) {
            widget->installEventFilter(this);
            widget->setProperty("measure", qt(measure.name));
        }
        rows_->addWidget(row.label, at, 0);
        rows_->addWidget(row.field, at, 1);
        row.label->show();
        row.field->show();
        all_.push_back(row);
        ++at;
    }
    if (all_.empty()) {
        auto* hint =
            makeSoftLabel(tr("Sizes that the whole piece goes by: seat height, width, depth."));
        hint->setWordWrap(true);
        rows_->addWidget(hint, 0, 0, 1, 2);
    }
}

void MeasuresList::show(Row& row, const Measure& measure, const ResolvedMeasure& resolved) {
    row.field->setDimension(dimensionOf(resolved));
    row.field->setKeepsBare(isCount(resolved));
    // A bare measure may be a count: it is shown as it is written.
    const bool isPlain = isCount(resolved) && resolved.dependsOn.empty();
    row.field->setDimension(isPlain ? Dimension::Number : dimensionOf(resolved));
    row.field->setStatement(measure.expression);
    row.field->setStateWord(resolved.dependsOn.empty() ? QString() : u"ƒ"_s);
    QString note = qt(measure.note);
    if (!measure.found.empty()) {
        note += (note.isEmpty() ? u""_s : u"\n"_s) +
                tr("found on an original: %1").arg(qt(measure.found));
    }
    row.label->setToolTip(resolved.dependsOn.empty() ? note
                                                     : (note.isEmpty() ? u""_s : note + u"\n"_s) +
                                                           u"= "_s + qt(measure.expression));
    row.field->setAccessibleDescription(row.label->toolTip());
}

void MeasuresList::paintEvent(QPaintEvent*) {
    const QRect area = tintNow();
    if (area.isEmpty()) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    QColor tint = Theme::of(palette()).amberTint;
    tint.setAlphaF(static_cast<float>(glow_.level()));
    painter.setPen(Qt::NoPen);
    painter.setBrush(tint);
    painter.drawRoundedRect(area, 3, 3);
}

bool MeasuresList::eventFilter(QObject* object, QEvent* event) {
    if (event->type() == QEvent::FocusIn) {
        current_ = utf8(object->property("measure").toString());
    } else if (event->type() == QEvent::ContextMenu && qobject_cast<QLabel*>(object) != nullptr) {
        openMenu(utf8(object->property("measure").toString()),
                 static_cast<QContextMenuEvent*>(event)->globalPos());
        return true;
    }
    return QWidget::eventFilter(object, event);
}

void MeasuresList::openMenu(const std::string& name, QPoint at) {
    current_ = name;
    QMenu menu(this);
    menu.addAction(tr("Rename…"), this, &MeasuresList::renameCurrent);
    menu.addAction(tr("Note…"), this, &MeasuresList::noteCurrent);
    menu.addAction(tr("Remove"), this, &MeasuresList::removeCurrent);
    menu.exec(at);
}

void MeasuresList::renameCurrent() {
    if (current_.empty()) {
        return;
    }
    const std::optional<QString> name =
        prompts_.askText(this, tr("Rename %1").arg(qt(current_)), tr("New name"), qt(current_));
    if (!name) {
        return;
    }
    const std::string tidy = tidyName(utf8(*name));
    if (const Result<void> done = document_.apply(RenameMeasure{current_, tidy}); !done) {
        prompts_.tell(this, qt(done.error().message));
    } else {
        current_ = tidy;
    }
}

void MeasuresList::noteCurrent() {
    const std::vector<Measure>& measures = document_.piece().measures;
    const auto measure = std::find_if(
        measures.begin(), measures.end(), [&](const Measure& one) { return one.name == current_; });
    if (measure == measures.end()) {
        return;
    }
    const std::optional<QString> note =
        prompts_.askText(this, tr("Note on %1").arg(qt(current_)), tr("Note"), qt(measure->note));
    if (note) {
        static_cast<void>(document_.apply(SetMeasureNote{current_, utf8(*note)}));
    }
}

void MeasuresList::removeCurrent() {
    if (!current_.empty() && document_.apply(RemoveMeasure{current_})) {
        current_.clear();
    }
}

void MeasuresList::add() {
    const std::optional<QString> text = prompts_.askText(
        this, tr("Add a measure"), tr("Name = value, such as: seat height = 16 3/4 in"), {});
    if (!text) {
        return;
    }
    const QString name = text->section(u'=', 0, 0).trimmed();
    const QString value = text->section(u'=', 1).trimmed();
    const std::string tidy = tidyName(utf8(name));
    const auto& measures = document_.piece().measures;
    if (std::any_of(measures.begin(), measures.end(), [&](const Measure& one) {
            return one.name == tidy;
        })) {
        prompts_.tell(this, tr("There is a measure '%1' already.").arg(name));
        return;
    }
    if (value.isEmpty()) {
        prompts_.tell(this, tr("A measure needs a value: seat height = 16 3/4 in"));
        return;
    }
    if (const Result<void> done = document_.apply(SetMeasure{tidy, utf8(value)}); !done) {
        prompts_.tell(this, qt(done.error().message));
    }
}

}  // namespace shoulderline
