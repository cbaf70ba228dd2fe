#pragma once

#include <QAbstractTableModel>

#include "ui/document/document.h"

namespace shoulderline {

// Every joint with its sizes, one to a row; a figure that is not by rule carries a mark.
class JointTable final : public QAbstractTableModel {
    Q_OBJECT
  public:
    // Sort by this role: figures by size, words by alphabet.
    static constexpr int kSortRole = Qt::UserRole;
    enum Column { Name, Kind, Thickness, Width, Length, Depth, Bears, Worked, Own, Count };

    explicit JointTable(Document& document, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section,
                                      Qt::Orientation orientation,
                                      int role) const override;

  private:
    [[nodiscard]] QString text(const ResolvedJoint& joint, int column) const;
    [[nodiscard]] QString strengthText(const ResolvedJoint& joint, int column) const;
    [[nodiscard]] QVariant sortKey(const ResolvedJoint& joint, int column) const;
    void refresh();

    Document& document_;
    int rows_ = 0;
};

}  // namespace shoulderline
