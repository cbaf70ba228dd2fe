#include "ui/columns/survey_dialog.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "core/resolve/survey.h"
#include "ui/columns/section.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

enum Column {
    NameColumn,
    FoundColumn,
    ChosenColumn,
    ApartColumn,
    FollowsColumn,
    OpenColumn,
    ColumnCount
};

QStringList headings() {
    return {SurveyDialog::tr("measure"),
            SurveyDialog::tr("found"),
            SurveyDialog::tr("chosen"),
            SurveyDialog::tr("found is"),
            SurveyDialog::tr("from the other figures"),
            SurveyDialog::tr("does not close by")};
}

}  // namespace

SurveyDialog::SurveyDialog(Document& document, QWidget* parent)
    : QDialog(parent), document_(document) {
    setObjectName(u"survey"_s);
    setWindowTitle(tr("Survey of an Original"));
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(8);
    auto* hint = makeSoftLabel(
        tr("Type what was measured on the original; the piece keeps the figures chosen. A measure "
           "that is worked out from others is compared with what their found figures come to."),
        0.92,
        this);
    hint->setWordWrap(true);
    layout->addWidget(hint);
    table_ = new QTableWidget(this);
    table_->setObjectName(u"surveyTable"_s);
    table_->setAccessibleName(tr("figures found and chosen"));
    table_->setColumnCount(ColumnCount);
    table_->setHorizontalHeaderLabels(headings());
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->horizontalHeader()->setStretchLastSection(true);
    table_->setTabKeyNavigation(false);
    layout->addWidget(table_, 1);
    told_ = new QLabel(this);
    told_->setObjectName(u"surveyTold"_s);
    told_->setWordWrap(true);
    layout->addWidget(told_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    layout->addWidget(buttons);
    connect(table_, &QTableWidget::itemChanged, this, [this](const QTableWidgetItem* item) {
        state(*item);
    });
    connect(&document_, &Document::changed, this, &SurveyDialog::refresh);
    resize(760, 560);
    refresh();
    table_->setCurrentCell(0, FoundColumn);
    table_->setFocus();
}

void SurveyDialog::refresh() {
    const QSignalBlocker quiet(table_);
    const Piece& piece = document_.piece();
    const std::vector<SurveyRow> rows = surveyOf(piece);
    table_->setRowCount(static_cast<int>(piece.measures.size()));
    int at = 0;
    for (const Measure& measure : piece.measures) {
        const auto row = std::find_if(
            rows.begin(), rows.end(), [&](const SurveyRow& r) { return r.name == measure.name; });
        const bool isFound = row != rows.end();
        const SurveyWords words = isFound ? inWords(*row, piece) : SurveyWords{};
        showCell(at, NameColumn, qt(measure.name));
        showCell(at, FoundColumn, qt(measure.found));
        showCell(at, ChosenColumn, isFound ? qt(words.chosen) : chosen(measure.name));
        showCell(
            at, ApartColumn, isFound && words.apart.empty() ? tr("as chosen") : qt(words.apart));
        showCell(at, FollowsColumn, qt(words.follows));
        showCell(at, OpenColumn, qt(words.open));
        ++at;
    }
    const bool isAnyOpen = std::any_of(
        rows.begin(), rows.end(), [](const SurveyRow& row) { return row.open.has_value(); });
    told_->setText(isAnyOpen
                       ? tr("Where figures do not close, one of them was read wrongly, or the "
                            "original is out by as much.")
                       : QString());
}

// What a measure comes to; as it is stated where that is no length.
QString SurveyDialog::chosen(const std::string& name) const {
    for (const ResolvedMeasure& measure : document_.resolved().measures) {
        if (measure.name == name && measure.value && !measure.value->isBare()) {
            const Result<Length> length = measure.value->asLength();
            if (length) {
                return qt(showLength(*length, document_.piece().style, true));
            }
        }
    }
    for (const Measure& measure : document_.piece().measures) {
        if (measure.name == name) {
            return qt(measure.expression);
        }
    }
    return {};
}

void SurveyDialog::showCell(int row, int column, const QString& text) {
    if (table_->item(row, column) == nullptr) {
        table_->setItem(row, column, new QTableWidgetItem);
    }
    QTableWidgetItem* item = table_->item(row, column);
    item->setText(text);
    const Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    item->setFlags(column == FoundColumn ? flags | Qt::ItemIsEditable : flags);
    QFont font = table_->font();
    font.setBold(column == OpenColumn);
    item->setFont(font);
}

void SurveyDialog::state(const QTableWidgetItem& item) {
    const auto row = static_cast<std::size_t>(item.row());
    const std::vector<Measure>& measures = document_.piece().measures;
    if (item.column() != FoundColumn || row >= measures.size()) {
        return;
    }
    const Result<void> done =
        document_.apply(SetMeasureFound{measures[row].name, utf8(item.text().simplified())});
    if (!done) {
        told_->setText(qt(done.error().message));
    }
}

}  // namespace shoulderline
