#pragma once

#include <QGridLayout>
#include <QLabel>
#include <QWidget>

#include "ui/columns/section.h"
#include "ui/document/document.h"

namespace shoulderline {

// What the last change moved: each size with what it was, struck through, and what it is.
class RippleList final : public QWidget {
    Q_OBJECT
  public:
    explicit RippleList(Document& document, QWidget* parent = nullptr);

  private:
    void refresh();
    void addSubject(const Moved& moved, int row);
    void addRow(const Moved& moved, int row);

    Document& document_;
    SectionHeading* heading_;
    QGridLayout* rows_;
    QLabel* nothing_;
    TextButton* more_;
    TextButton* takeBack_;
    bool showsAll_ = false;
    int generation_ = -1;
};

}  // namespace shoulderline
