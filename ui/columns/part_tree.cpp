#include "ui/columns/part_tree.h"

#include <QHeaderView>
#include <map>

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

void PartTree::rebuild() {
    isShowing_ = true;
    const Piece& piece = document_.piece();
    std::map<std::string, QTreeWidgetItem*> groups;
    clear();
    const auto groupOf = [&](const std::string& assembly) {
        QTreeWidgetItem*& group = groups[assembly];
        if (group == nullptr) {
            group = new QTreeWidgetItem(this, {assembly.empty() ? tr("on its own") : qt(assembly)});
            QFont bold = font();
            bold.setWeight(QFont::DemiBold);
            group->setFont(0, bold);
            group->setFlags(Qt::ItemIsEnabled);
            group->setExpanded(true);
        }
        return group;
    };
    for (std::size_t i = 0; i < piece.parts.size(); ++i) {
        const Part& part = piece.parts[i];
        auto* item = new QTreeWidgetItem(groupOf(part.assembly),
                                         {qt(part.name), countText(document_.resolved(), i)});
        item->setData(0, kIndexRole, static_cast<qulonglong>(i));
        item->setTextAlignment(1, Qt::AlignRight | Qt::AlignVCenter);
        item->setForeground(1, palette().placeholderText());
    }
    addSmallParts();
    expandAll();
    isShowing_ = false;
    updateGeometry();
    showChosen();
}

// What joints, and backs that swing, take besides their members: chosen, it leads to its joint or
// part.
void PartTree::addSmallParts() {
    const std::vector<SmallPart> all = smallPartsOf(document_.piece(), document_.resolved());
    if (all.empty()) {
        return;
    }
    auto* group = new QTreeWidgetItem(this, {tr("small parts")});
    QFont bold = font();
    bold.setWeight(QFont::DemiBold);
    group->setFont(0, bold);
    group->setFlags(Qt::ItemIsEnabled);
    for (const SmallPart& small : all) {
        auto* item =
            new QTreeWidgetItem(group, {qt(small.name()), QString::number(small.quantity)});
        if (small.part) {
            item->setData(0,
                          kIndexRole,
                          static_cast<qulonglong>(document_.resolved().parts[*small.part].stated));
        } else {
            item->setData(0, kJointRole, static_cast<qulonglong>(small.joints.front()));
        }
        item->setTextAlignment(1, Qt::AlignRight | Qt::AlignVCenter);
        item->setForeground(1, palette().placeholderText());
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
