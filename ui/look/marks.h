#pragma once

#include <QWidget>
#include <optional>

#include "core/check/finding.h"

namespace shoulderline {

// The shape of a severity: a full triangle, an open triangle, a ring.
class SeverityMark final : public QWidget {
  public:
    explicit SeverityMark(Severity severity, QWidget* parent = nullptr);
    void setSeverity(Severity severity);
    [[nodiscard]] QSize sizeHint() const override { return {14, 14}; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    Severity severity_;
};

// Where a figure stands: a thin bar over its whole range, the good part of it tinted, a tick at
// the figure. `low` and `high` bound the good part; either may be open.
class GaugeBar final : public QWidget {
  public:
    explicit GaugeBar(QWidget* parent = nullptr);
    void show(double value, std::optional<double> low, std::optional<double> high);
    [[nodiscard]] QSize sizeHint() const override { return {200, 16}; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    double value_ = 0.0;
    std::optional<double> low_;
    std::optional<double> high_;
};

}  // namespace shoulderline
