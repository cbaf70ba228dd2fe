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

enum Column { Name, Found, Chosen, Apart, Follows, Open, Count };

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
    table_->setColumnCount(Count);
    table_->setHorizontalHeaderLabels(headings());
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->horizontalHeader()->setSectionResizeMode(Name, QHeaderView::Stretch);
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
    resize(720, 460);
    refresh();
    table_->setCurrentCell(0, Found);
    table_->setFocus();
}

void SurveyDialog::refresh() {
    const QSignalBlocker quiet(table_);
    const Piece& piece = document_.piece();
    const std::vector<SurveyRow> rows = surveyOf(piece);
    table_->setRowCount(static_cast<int>(piece.measures.size()));
    std::size_t open = 0;
    for (std::size_t i = 0; i < piece.measures.size(); ++i) {
        const Measure& measure = piece.measures[i];
        const auto row = std::find_if(
            rows.begin(), rows.end(), [&](const SurveyRow& r) { return r.name == measure.name; });
        const SurveyWords words = row == rows.end() ? SurveyWords{} : inWords(*row, piece);
        open += words.open.empty() ? 0 : 1;
        const std::string texts[Count] = {measure.name,
                                          measure.found,
                                          words.chosen.empty() ? measure.expression : words.chosen,
                                          words.apart,
                                          words.follows,
                                          words.open};
        for (int column = 0; column < Count; ++column) {
            const bool isMark = column == Apart || column == Open;
            QString text = qt(texts[column]);
            if (column == Apart && row != rows.end() && text.isEmpty()) {
                text = tr("as chosen");
            }
            const int at = static_cast<int>(i);
            if (table_->item(at, column) == nullptr) {
                table_->setItem(at, column, new QTableWidgetItem);
            }
            QTableWidgetItem* item = table_->item(at, column);
            item->setText(text);
            item->setFlags(column == Found
                               ? Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsEditable
                               : Qt::ItemIsEnabled | Qt::ItemIsSelectable);
            QFont font = table_->font();
            font.setBold(isMark && !texts[column].empty());
            item->setFont(font);
        }
    }
    told_->setText(open == 0
                       ? QString()
                       : tr("Where figures do not close, one of them was read wrongly, or the "
                            "original is out by as much."));
}

void SurveyDialog::state(const QTableWidgetItem& item) {
    const auto row = static_cast<std::size_t>(item.row());
    const std::vector<Measure>& measures = document_.piece().measures;
    if (item.column() != Found || row >= measures.size()) {
        return;
    }
    const Result<void> done =
        document_.apply(SetMeasureFound{measures[row].name, utf8(item.text().simplified())});
    if (!done) {
        told_->setText(qt(done.error().message));
    }
}

}  // namespace shoulderline
