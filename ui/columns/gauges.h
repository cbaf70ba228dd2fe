#pragma once

#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>
#include <vector>

#include "core/check/proportions.h"
#include "ui/document/document.h"
#include "ui/look/marks.h"

namespace shoulderline {

// The proportions of a joint as gauges, one below the other.
class Gauges final : public QWidget {
    Q_OBJECT
  public:
    explicit Gauges(Document& document, QWidget* parent = nullptr);
    void show(std::size_t joint);

  private:
    struct Row {
        QWidget* holder = nullptr;
        QLabel* subject = nullptr;
        QLabel* figure = nullptr;
        GaugeBar* bar = nullptr;
    };
    Row makeRow();

    Document& document_;
    QVBoxLayout* layout_;
    std::vector<Row> rows_;
};

}  // namespace shoulderline
