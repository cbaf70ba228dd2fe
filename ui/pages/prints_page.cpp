#include "ui/pages/prints_page.h"

#include <QDate>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QLocale>
#include <QPrintDialog>
#include <QPrinter>
#include <QScrollArea>
#include <QSettings>
#include <QVBoxLayout>
#include <algorithm>

#include "core/drawing/sheets.h"
#include "ui/fields/choice_box.h"
#include "ui/look/text.h"
#include "ui/look/text_button.h"
#include "ui/printing/pdf_writer.h"
#include "ui/printing/printer.h"
#include "ui/prompts/prompts.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr double kLeastOverlap = 10.0;
constexpr double kMostOverlap = 40.0;

std::string today() {
    return utf8(QDate::currentDate().toString(Qt::ISODate));
}

}  // namespace

PrintsPage::PrintsPage(Document& document, Prompts& prompts, QWidget* parent)
    : BoardPage(parent), document_(document), prompts_(prompts) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    makeOptions();
    auto* what = new QHBoxLayout;
    what->setContentsMargins(14, 10, 14, 0);
    what->setSpacing(8);
    for (QWidget* widget : {what_, part_, paper_}) {
        what->addWidget(widget);
    }
    what->addStretch(1);
    layout->addLayout(what);
    makeCommands(*layout);
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setAccessibleName(tr("pages"));
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    preview_ = new PrintPreview;
    scroll->setWidget(preview_);
    layout->addWidget(scroll, 1);
    // The pages are laid out anew once the rest of the window shows the change.
    later_.setSingleShot(true);
    connect(&later_, &QTimer::timeout, this, &PrintsPage::refresh);
    connect(&document_, &Document::changed, this, [this] {
        if (isVisible()) {
            later_.start(0);
        }
    });
}

// Saving and printing, and the size of the preview.
void PrintsPage::makeCommands(QVBoxLayout& layout) {
    auto* how = new QHBoxLayout;
    how->setContentsMargins(14, 8, 14, 0);
    how->setSpacing(8);
    auto* pdf = new QPushButton(tr("Save PDF…"), this);
    auto* printer = new QPushButton(tr("Print…"), this);
    for (QWidget* widget : {static_cast<QWidget*>(pdf), static_cast<QWidget*>(printer)}) {
        how->addWidget(widget);
    }
    how->addStretch(1);
    how->addWidget(overlapLabel_);
    how->addWidget(overlap_);
    layout.addLayout(how);
    auto* foot = new QHBoxLayout;
    foot->setContentsMargins(14, 6, 14, 8);
    count_ = new QLabel(this);
    count_->setForegroundRole(QPalette::PlaceholderText);
    count_->setWordWrap(true);
    foot->addWidget(count_, 1);
    auto* smaller = new TextButton(tr("smaller"), TextButton::Kind::Action, this);
    auto* larger = new TextButton(tr("larger"), TextButton::Kind::Action, this);
    foot->addWidget(smaller);
    foot->addSpacing(8);
    foot->addWidget(larger);
    layout.addLayout(foot);
    connect(pdf, &QPushButton::clicked, this, &PrintsPage::savePdf);
    connect(printer, &QPushButton::clicked, this, &PrintsPage::print);
    connect(smaller, &TextButton::clicked, this, [this] {
        preview_->setPageWidth(preview_->pageWidth() * 3 / 4);
    });
    connect(larger, &TextButton::clicked, this, [this] {
        preview_->setPageWidth(preview_->pageWidth() * 4 / 3);
    });
}

void PrintsPage::makeOptions() {
    what_ = new ChoiceBox(this);
    what_->setAccessibleName(tr("what to print"));
    what_->addItems({tr("all parts, full size"),
                     tr("one part, full size"),
                     tr("part sheets, to scale"),
                     tr("piece sheet, to scale")});
    part_ = new ChoiceBox(this);
    part_->setAccessibleName(tr("part to print"));
    part_->setMinimumContentsLength(12);
    paper_ = new ChoiceBox(this);
    paper_->setAccessibleName(tr("paper"));
    paper_->setEditable(true);
    paper_->setInsertPolicy(QComboBox::NoInsert);
    paper_->lineEdit()->setAccessibleName(tr("paper"));
    paper_->setToolTip(tr("A paper of the list, or a size such as 300 x 1300 mm or 24 x 36 in"));
    paper_->setMinimumContentsLength(9);
    for (const Paper& paper : standardPapers()) {
        paper_->addItem(qt(paper.name));
    }
    const bool isMetric = QLocale().measurementSystem() == QLocale::MetricSystem;
    paper_->setCurrentText(
        QSettings().value(u"prints/paper"_s, isMetric ? u"A4"_s : u"Letter"_s).toString());
    overlapLabel_ = new QLabel(tr("overlap"), this);
    overlap_ = new LengthField(this);
    overlap_->setFixedWidth(84);
    overlap_->setAccessibleName(tr("overlap of pages"));
    overlap_->setLimits(
        Length::mm(kLeastOverlap),
        Length::mm(kMostOverlap),
        tr("Pages overlap by 10 mm to 40 mm: less cannot be glued, more wastes paper."));
    overlap_->setLength(Length::mm(TileOptions{}.overlap), LengthStyle::millimetres(1));
    overlapLabel_->setBuddy(overlap_);
    for (QComboBox* box : {what_, part_, paper_}) {
        connect(box, &QComboBox::activated, this, &PrintsPage::refresh);
    }
    connect(paper_->lineEdit(), &QLineEdit::editingFinished, this, &PrintsPage::refresh);
    connect(overlap_, &LengthField::lengthChanged, this, &PrintsPage::refresh);
}

void PrintsPage::showEvent(QShowEvent* event) {
    BoardPage::showEvent(event);
    refresh();
}

void PrintsPage::fillParts() {
    const QString now = part_->currentText();
    part_->clear();
    const std::optional<std::size_t> chosen = document_.chosenPart();
    QString wanted = now;
    for (const PartKind& kind : partKinds(document_.resolved())) {
        part_->addItem(qt(kind.name));
        if (wanted.isEmpty() && chosen &&
            std::find(kind.parts.begin(), kind.parts.end(), *chosen) != kind.parts.end()) {
            wanted = qt(kind.name);
        }
    }
    part_->setCurrentIndex(std::max(0, part_->findText(wanted)));
}

Paper PrintsPage::paper() const {
    const Result<Paper> found = findPaper(utf8(paper_->currentText()));
    return found ? *found : standardPapers().front();
}

PrintJob PrintsPage::makeJob() const {
    const std::string date = today();
    TileOptions options;
    options.overlap = overlap_->length().mm();
    switch (what_->currentIndex()) {
        case OneFullSize:
            return fullSizeJob(document_.piece(),
                               document_.resolved(),
                               {static_cast<std::size_t>(std::max(0, part_->currentIndex()))},
                               paper(),
                               options,
                               date,
                               metrics_);
        case PartSheets:
            return sheetJob(
                document_.piece(), document_.resolved(), true, paper(), 0.0, date, metrics_);
        case PieceSheet:
            return sheetJob(
                document_.piece(), document_.resolved(), false, paper(), 0.0, date, metrics_);
        default:
            return fullSizeJob(
                document_.piece(), document_.resolved(), {}, paper(), options, date, metrics_);
    }
}

void PrintsPage::refresh() {
    if (generation_ != document_.generation() || part_->count() == 0) {
        generation_ = document_.generation();
        fillParts();
    }
    const bool isTiled =
        what_->currentIndex() == AllFullSize || what_->currentIndex() == OneFullSize;
    part_->setVisible(what_->currentIndex() == OneFullSize);
    overlap_->setVisible(isTiled);
    overlapLabel_->setVisible(isTiled);
    if (const Result<Paper> found = findPaper(utf8(paper_->currentText())); !found) {
        count_->setText(qt(found.error().message));
        return;
    }
    QSettings().setValue(u"prints/paper"_s, paper_->currentText());
    if (document_.resolved().parts.empty()) {
        job_ = {};
        count_->setText(tr("There is nothing to print yet."));
    } else {
        job_ = makeJob();
        const QString pages = tr("%n pages", nullptr, static_cast<int>(job_.pages.size()));
        count_->setText(isTiled ? tr("%1 of %2, full size. Print at 100 %, then check the bar and "
                                     "square with a rule.")
                                      .arg(pages, qt(paper().name))
                                : tr("%1 of %2").arg(pages, qt(paper().name)));
    }
    preview_->show(job_);
}

void PrintsPage::savePdf() {
    refresh();
    if (job_.pages.empty()) {
        prompts_.tell(this, tr("There is nothing to print yet."));
        return;
    }
    const QString name = qt(document_.piece().name).simplified().replace(u'/', u'-');
    const QString path = prompts_.pdfPath(this, name + u".pdf"_s);
    if (path.isEmpty()) {
        return;
    }
    if (const Result<void> written = writePdf(job_, utf8(path), today()); !written) {
        prompts_.tell(this, qt(written.error().message));
        return;
    }
    count_->setText(tr("Saved %n pages", nullptr, static_cast<int>(job_.pages.size())) + u": "_s +
                    path);
}

void PrintsPage::print() {
    refresh();
    if (job_.pages.empty()) {
        prompts_.tell(this, tr("There is nothing to print yet."));
        return;
    }
    if (const Result<void> found = findPrinter(); !found) {
        prompts_.tell(this, tr("%1 Save PDF works without one.").arg(qt(found.error().message)));
        return;
    }
    QPrinter printer;
    printer.setDocName(qt(document_.piece().name));
    QPrintDialog dialog(&printer, this);
    if (dialog.exec() != QDialog::Accepted) {
        return;
    }
    if (const Result<void> printed = shoulderline::print(job_, printer); !printed) {
        prompts_.tell(this, qt(printed.error().message));
    }
}

}  // namespace shoulderline
