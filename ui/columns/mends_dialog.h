#pragma once

#include <QDialog>
#include <QRadioButton>
#include <vector>

#include "core/drawing/lettering_metrics.h"
#include "ui/document/document.h"

namespace shoulderline {

// The ways to mend one finding, each with the sizes and the estimated strength that it would give,
// before and after; the place where joints meet in section beside them. Nothing changes until one
// is taken.
class MendsDialog final : public QDialog {
    Q_OBJECT
  public:
    MendsDialog(Document& document, const Finding& finding, QWidget* parent = nullptr);

  private:
    [[nodiscard]] QWidget* makeMends();
    [[nodiscard]] QWidget* makeSection();
    void take();

    Document& document_;
    Finding finding_;  // its own: taking a mend makes other findings
    LetteringMetrics metrics_;
    std::vector<QRadioButton*> choices_;  // of mends that an edit does, with its place in mends
    std::vector<std::size_t> mendOf_;
    QPushButton* take_ = nullptr;
};

}  // namespace shoulderline
