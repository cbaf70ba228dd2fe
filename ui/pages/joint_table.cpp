#include "ui/pages/joint_table.h"

#include <QFont>

#include "core/check/figure_text.h"
#include "core/check/strength_json.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

const Size* sizeIn(const ResolvedJoint& joint, int column) {
    if (!joint.hasTenon()) {
        return nullptr;
    }
    switch (column) {
        case JointTable::Thickness:
            return &joint.tenon.thickness;
        case JointTable::Width:
            return &joint.tenon.width;
        case JointTable::Length:
            return &joint.tenon.length;
        case JointTable::Depth:
            return &joint.mortise.depth;
        default:
            return nullptr;
    }
}

}  // namespace

JointTable::JointTable(Document& document, QObject* parent)
    : QAbstractTableModel(parent), document_(document) {
    rows_ = static_cast<int>(document_.resolved().joints.size());
    connect(&document_, &Document::changed, this, &JointTable::refresh);
}

void JointTable::refresh() {
    const int rows = static_cast<int>(document_.resolved().joints.size());
    if (rows != rows_) {
        beginResetModel();
        rows_ = rows;
        endResetModel();
    } else if (rows_ > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rows_ - 1, Count - 1));
    }
}

int JointTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : rows_;
}

int JointTable::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(Count);
}

QString JointTable::text(const ResolvedJoint& joint, int column) const {
    if (column == Name) {
        return qt(joint.name);
    }
    if (column == Kind) {
        // What it has besides is told where the joint is chosen.
        const QString kind = qt(wordFor(joint.kind));
        return joint.features.empty() ? kind
                                      : tr("%1 + %2").arg(kind).arg(joint.features.size());
    }
    if (column == Bears || column == Worked) {
        return strengthText(joint, column);
    }
    if (column == Own) {
        QStringList own;
        for (const SizeName name : allWords<SizeName>()) {
            const Size* size = joint.size(name);
            if (size != nullptr && size->state != SizeState::ByRule) {
                const QString word = qt(wordFor(size->state));
                if (!own.contains(word)) {
                    own << word;
                }
            }
        }
        return own.join(u", "_s);
    }
    const Size* size = sizeIn(joint, column);
    if (size == nullptr) {
        return u"–"_s;
    }
    const QString mark = size->state == SizeState::ByRule ? QString() : u"• "_s;
    return mark + qt(document_.shown(size->value));
}

// What the joint bears, or the hardest that a load works it; by its rank where it cannot be
// measured.
QString JointTable::strengthText(const ResolvedJoint& joint, int column) const {
    const auto index = static_cast<std::size_t>(&joint - document_.resolved().joints.data());
    const StrengthReport& report = document_.strength();
    const JointRating& rating = report.joints[index];
    if (!rating.strength.isEstimated()) {
        return u"–"_s;
    }
    if (column == Bears) {
        return rating.strength.isCovered ? qt(rangeText(rating.strength.bending.range, ""))
                                         : tr("not tested");
    }
    if (!rating.working) {
        return u"–"_s;
    }
    return rating.strength.isCovered ? qt(rangeText(rating.working->ratio, ""))
                                     : tr("rank %1").arg(static_cast<int>(report.ranks[index]));
}

QVariant JointTable::sortKey(const ResolvedJoint& joint, int column) const {
    const auto index = static_cast<std::size_t>(&joint - document_.resolved().joints.data());
    const JointRating& rating = document_.strength().joints[index];
    if (column == Bears) {
        return rating.strength.isEstimated() ? rating.strength.bending.range.middle() : 0.0;
    }
    if (column == Worked) {
        return static_cast<int>(document_.strength().ranks[index]);
    }
    const Size* size = sizeIn(joint, column);
    return size == nullptr ? QVariant(text(joint, column)) : QVariant(size->value.mm());
}

QVariant JointTable::data(const QModelIndex& index, int role) const {
    const std::vector<ResolvedJoint>& joints = document_.resolved().joints;
    const auto row = static_cast<std::size_t>(index.row());
    if (!index.isValid() || row >= joints.size()) {
        return {};
    }
    const ResolvedJoint& joint = joints[row];
    const Size* size = sizeIn(joint, index.column());
    switch (role) {
        case Qt::DisplayRole:
            return text(joint, index.column());
        case kSortRole:
            return sortKey(joint, index.column());
        case Qt::TextAlignmentRole:
            return static_cast<int>((index.column() >= Thickness && index.column() <= Worked
                                         ? Qt::AlignRight
                                         : Qt::AlignLeft) |
                                    Qt::AlignVCenter);
        case Qt::FontRole: {
            QFont font;
            if (size != nullptr && size->state != SizeState::ByRule) {
                font.setWeight(QFont::DemiBold);
            }
            return font;
        }
        case Qt::ToolTipRole:
            if (index.column() == Bears || index.column() == Worked) {
                return qt(strengthClause(document_.strength(), row));
            }
            return size == nullptr ? QVariant() : QVariant(qt(wordFor(size->state)));
        default:
            return {};
    }
}

QVariant JointTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::TextAlignmentRole) {
        return static_cast<int>(
            (section >= Thickness && section <= Worked ? Qt::AlignRight : Qt::AlignLeft) |
            Qt::AlignVCenter);
    }
    if (role == Qt::ToolTipRole && (section == Bears || section == Worked)) {
        return section == Bears
                   ? tr("estimated bending moment at which it would fail; for "
                        "comparing joints, no proof of safety")
                   : tr("what the hardest load asks, over what counts of its strength; "
                        "sort by it to see the hardest worked first");
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
        case Name:
            return tr("joint");
        case Kind:
            return tr("kind");
        case Thickness:
            return tr("thick");
        case Width:
            return tr("wide");
        case Length:
            return tr("long");
        case Depth:
            return tr("mortise");
        case Bears:
            return tr("bears, N m");
        case Worked:
            return tr("worked");
        case Own:
            return tr("not by rule");
        default:
            return {};
    }
}

}  // namespace shoulderline
