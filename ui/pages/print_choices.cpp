#include "ui/pages/print_choices.h"

#include <QDate>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QLocale>
#include <QSettings>
#include <QVBoxLayout>
#include <algorithm>

#include "core/drawing/scales.h"
#include "ui/fields/choice_box.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr double kLeastOverlap = 10.0;
constexpr double kMostOverlap = 40.0;

// The day of the last change: of the file, or today where it was changed since.
std::string dayOfLastChange(const Document& document) {
    const bool isSaved = !document.isModified() && !document.path().isEmpty();
    const QDate day = isSaved ? QFileInfo(document.path()).lastModified().date() : QDate();
    return utf8((day.isValid() ? day : QDate::currentDate()).toString(Qt::ISODate));
}

}  // namespace

PrintChoices::PrintChoices(Document& document, QWidget* parent)
    : QWidget(parent), document_(document) {
    makeWhat();
    makePaper();
    makeHow();
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(14, 10, 14, 0);
    rows->setSpacing(8);
    auto* first = new QHBoxLayout;
    auto* second = new QHBoxLayout;
    for (QHBoxLayout* row : {first, second}) {
        row->setSpacing(8);
        rows->addLayout(row);
    }
    for (QWidget* widget : {what_, part_, paper_, held_}) {
        first->addWidget(widget);
    }
    first->addStretch(1);
    for (QWidget* widget :
         std::initializer_list<QWidget*>{scale_, units_, overlapLabel_, overlap_, leaveOut_}) {
        second->addWidget(widget);
    }
    second->addStretch(1);
    for (QComboBox* box : {what_, part_, paper_, held_, scale_, units_}) {
        connect(box, &QComboBox::activated, this, [this] {
            showWhatCounts();
            Q_EMIT chosen();
        });
    }
    connect(paper_->lineEdit(), &QLineEdit::editingFinished, this, &PrintChoices::chosen);
    connect(overlap_, &LengthField::lengthChanged, this, &PrintChoices::chosen);
    connect(leaveOut_, &QCheckBox::toggled, this, &PrintChoices::chosen);
}

void PrintChoices::makeWhat() {
    what_ = new ChoiceBox(this);
    what_->setAccessibleName(tr("what to print"));
    // In the order of kPrintKinds.
    what_->addItems({tr("parts, full size"),
                     tr("part sheets, to scale"),
                     tr("whole piece, full size"),
                     tr("piece sheet, to scale"),
                     tr("piece assembled and pulled apart"),
                     tr("assemblies, to scale"),
                     tr("set of all drawings"),
                     tr("patterns of shaped parts"),
                     tr("rods"),
                     tr("story sticks")});
    part_ = new ChoiceBox(this);
    part_->setAccessibleName(tr("part to print"));
    part_->setMinimumContentsLength(12);
}

void PrintChoices::makePaper() {
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
    held_ = new ChoiceBox(this);
    held_->setAccessibleName(tr("which way up"));
    held_->addItems({tr("either way up"), tr("upright"), tr("lying")});
}

void PrintChoices::makeHow() {
    scale_ = new ChoiceBox(this);
    scale_->setAccessibleName(tr("scale"));
    units_ = new ChoiceBox(this);
    units_->setAccessibleName(tr("units of the prints"));
    // In the order of PrintUnits.
    units_->addItems({tr("units of the piece"),
                      tr("inch fractions"),
                      tr("decimal inches"),
                      tr("millimetres"),
                      tr("inches [millimetres]"),
                      tr("millimetres [inches]")});
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
    leaveOut_ = new QCheckBox(tr("leave out plain stretches"), this);
    leaveOut_->setToolTip(
        tr("Long stretches in which nothing happens are left out where that saves sheets"));
}

PrintKind PrintChoices::kind() const {
    return kPrintKinds[std::max(0, what_->currentIndex())];
}

void PrintChoices::fillParts() {
    const QString now = part_->currentText();
    const bool isFirst = part_->count() == 0;
    part_->clear();
    part_->addItem(tr("all parts"));
    const std::optional<std::size_t> chosen = document_.chosenPart();
    QString wanted = now;
    for (const PartKind& kind : partKinds(document_.resolved())) {
        part_->addItem(qt(kind.name));
        if (isFirst && chosen &&
            std::find(kind.parts.begin(), kind.parts.end(), *chosen) != kind.parts.end()) {
            wanted = qt(kind.name);
        }
    }
    part_->setCurrentIndex(std::max(0, part_->findText(wanted)));
}

void PrintChoices::fillScales() {
    const double now = scale_->currentData().toDouble();
    scale_->clear();
    scale_->addItem(tr("largest scale that fits"), 0.0);
    for (const double scale : standardScales(document_.piece().unit)) {
        scale_->addItem(qt(scaleText(scale)), scale);
    }
    scale_->setCurrentIndex(std::max(0, scale_->findData(now)));
}

void PrintChoices::showWhatCounts() {
    const bool isTiled = isFullSize(kind());
    part_->setVisible(kind() == PrintKind::PartsFullSize);
    scale_->setVisible(hasScale(kind()));
    overlap_->setVisible(isTiled);
    overlapLabel_->setVisible(isTiled);
    leaveOut_->setVisible(isTiled && kind() != PrintKind::Story);
}

void PrintChoices::refresh() {
    if (generation_ != document_.generation()) {
        generation_ = document_.generation();
        fillParts();
        fillScales();
    }
    showWhatCounts();
}

Result<PrintOrder> PrintChoices::order() const {
    const Result<Paper> paper = findPaper(utf8(paper_->currentText()));
    if (!paper) {
        return tl::unexpected(paper.error());
    }
    QSettings().setValue(u"prints/paper"_s, paper_->currentText());
    PrintOrder order;
    order.kind = kind();
    if (part_->currentIndex() > 0) {
        order.parts = {static_cast<std::size_t>(part_->currentIndex() - 1)};
    }
    order.paper = *paper;
    order.scale = scale_->currentData().toDouble();
    order.tiles.overlap = overlap_->length().mm();
    order.tiles.leavesOutPlain = leaveOut_->isVisibleTo(this) && leaveOut_->isChecked();
    order.tiles.held = static_cast<Held>(std::max(0, held_->currentIndex()));
    order.units = static_cast<PrintUnits>(std::max(0, units_->currentIndex()));
    order.date = dayOfLastChange(document_);
    return order;
}

}  // namespace shoulderline
