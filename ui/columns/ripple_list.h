#pragma once

#include <QGridLayout>
#include <QLabel>
#include <QWidget>
#include <vector>

#include "ui/columns/section.h"
#include "ui/document/document.h"

namespace shoulderline {

// What the last change moved: each size with what it was, struck through, and what it is.
class RippleList final : public QWidget {
    Q_OBJECT
  public:
    explicit RippleList(Document& document, QWidget* parent = nullptr);

  private:
    // The widgets of one size that moved; kept and filled anew with each change.
    struct Row {
        TextButton* subject;  // the part or joint it is of, where it is the first of that
        QLabel* size;
        QLabel* old;
        QLabel* now;
    };

    void refresh();
    [[nodiscard]] Row makeRow(std::size_t at);
    void showRow(const Row& row, const Moved& moved, bool isFirstOfSubject);
    void lead(const Moved& moved);

    Document& document_;
    SectionHeading* heading_;
    QGridLayout* grid_;
    std::vector<Row> rows_;
    QLabel* nothing_;
    TextButton* more_;
    TextButton* takeBack_;
    bool showsAll_ = false;
    int generation_ = -1;
};

}  // namespace shoulderline
