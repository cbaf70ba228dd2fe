#include "ui/columns/part_tree.h"

#include <QEvent>
#include <QHeaderView>
#include <map>
#include <utility>

#include "core/resolve/small_parts.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr int kIndexRole = Qt::UserRole;      // of a stated part
constexpr int kJointRole = Qt::UserRole + 1;  // of a small part, its first joint

// "L R" for a pair, "5 + 5" for sets left and right, else the number there are.
QString countText(const ResolvedPiece& resolved, std::size_t stated) {
    int left = 0;
    int right = 0;
    int alone = 0;
    for (const ResolvedPart& part : resolved.parts) {
        if (part.stated == stated) {
            ++(part.hand == Hand::Left ? left : part.hand == Hand::Right ? right : alone);
        }
    }
    if (left == 1 && right == 1) {
        return u"L R"_s;
    }
    if (left + right > 0) {
        return u"%1 + %2"_s.arg(left).arg(right);
    }
    return QString::number(alone);
}

}  // namespace

PartTree::PartTree(Document& document, QWidget* parent) : QTreeWidget(parent), document_(document) {
    setAccessibleName(tr("parts"));
    setObjectName(u"parts"_s);
    setColumnCount(2);
    setHeaderHidden(true);
    setRootIsDecorated(false);
    setItemsExpandable(false);
    setIndentation(14);
    setUniformRowHeights(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    header()->setStretchLastSection(false);
    header()->setSectionResizeMode(0, QHeaderView::Stretch);
    header()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
    connect(&document_, &Document::changed, this, &PartTree::rebuild);
    connect(&document_, &Document::chosenChanged, this, &PartTree::showChosen);
    connect(this, &QTreeWidget::currentItemChanged, this, &PartTree::chooseCurrent);
    connect(this, &QTreeWidget::itemClicked, this, &PartTree::chooseCurrent);
    rebuild();
}

QSize PartTree::sizeHint() const {
    const QTreeWidgetItem* first = topLevelItem(0);
    const int row = first == nullptr ? 0 : visualItemRect(first).height();
    int rows = topLevelItemCount();
    for (int i = 0; i < topLevelItemCount(); ++i) {
        rows += topLevelItem(i)->childCount();
    }
    return {200, rows * row + 4};
}

// The stated parts, then what joints, and backs that swing, take besides their members: chosen, it
// leads to its joint or part.
std::vector<PartTree::Row> PartTree::rowsNow() const {
    const Piece& piece = document_.piece();
    const ResolvedPiece& resolved = document_.resolved();
    std::vector<Row> rows;
    for (std::size_t i = 0; i < piece.parts.size(); ++i) {
        const Part& part = piece.parts[i];
        rows.push_back({part.assembly.empty() ? tr("on its own") : qt(part.assembly),
                        qt(part.name),
                        countText(resolved, i),
                        i,
                        {}});
    }
    for (const SmallPart& small : smallPartsOf(piece, resolved)) {
        Row row{tr("small parts"), qt(small.name()), QString::number(small.quantity), {}, {}};
        if (small.part) {
            row.stated = resolved.parts[*small.part].stated;
        } else {
            row.joint = small.joints.front();
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

// Rows are made anew only where they are others: most changes move sizes, not parts.
void PartTree::rebuild() {
    std::vector<Row> rows = rowsNow();
    if (rows == rows_) {
        showChosen();
        return;
    }
    rows_ = std::move(rows);
    isShowing_ = true;
    std::map<QString, QTreeWidgetItem*> groups;
    clear();
    for (const Row& row : rows_) {
        QTreeWidgetItem*& group = groups[row.group];
        if (group == nullptr) {
            group = new QTreeWidgetItem(this, {row.group});
            QFont bold = font();
            bold.setWeight(QFont::DemiBold);
            group->setFont(0, bold);
            group->setFlags(Qt::ItemIsEnabled);
        }
        auto* item = new QTreeWidgetItem(group, {row.name, row.count});
        if (row.stated) {
            item->setData(0, kIndexRole, static_cast<qulonglong>(*row.stated));
        } else if (row.joint) {
            item->setData(0, kJointRole, static_cast<qulonglong>(*row.joint));
        }
        item->setTextAlignment(1, Qt::AlignRight | Qt::AlignVCenter);
        item->setForeground(1, palette().placeholderText());
    }
    expandAll();
    isShowing_ = false;
    updateGeometry();
    showChosen();
}

// Rows have the colours of the palette that they were made under.
void PartTree::changeEvent(QEvent* event) {
    QTreeWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && !rows_.empty()) {
        rows_.clear();
        rebuild();
    }
}

void PartTree::showChosen() {
    isShowing_ = true;
    const std::optional<std::size_t> chosen = document_.chosenPart();
    QTreeWidgetItem* wanted = nullptr;
    for (int i = 0; chosen && i < topLevelItemCount(); ++i) {
        for (int j = 0; j < topLevelItem(i)->childCount(); ++j) {
            QTreeWidgetItem* item = topLevelItem(i)->child(j);
            const QVariant stated = item->data(0, kIndexRole);
            if (wanted == nullptr && stated.isValid() &&
                stated.toULongLong() == document_.resolved().parts[*chosen].stated) {
                wanted = item;
            }
        }
    }
    setCurrentItem(wanted);
    if (wanted == nullptr) {
        clearSelection();
    }
    isShowing_ = false;
}

void PartTree::chooseCurrent() {
    const QTreeWidgetItem* item = currentItem();
    if (isShowing_ || item == nullptr || item->parent() == nullptr) {
        return;
    }
    if (const QVariant joint = item->data(0, kJointRole); joint.isValid()) {
        document_.chooseJoint(joint.toULongLong());
        return;
    }
    const std::size_t stated = item->data(0, kIndexRole).toULongLong();
    const std::vector<ResolvedPart>& parts = document_.resolved().parts;
    const std::optional<std::size_t> now = document_.chosenPart();
    if (now && parts[*now].stated == stated && !document_.chosenJoint()) {
        return;
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (parts[i].stated == stated) {
            document_.choosePart(i);
            return;
        }
    }
}

}  // namespace shoulderline
