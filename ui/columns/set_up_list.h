#pragma once

#include <QLabel>
#include <QWidget>

#include "ui/document/document.h"

namespace shoulderline {

// How the tools are set for the chosen joint, with the caution that goes with each.
class SetUpList final : public QWidget {
    Q_OBJECT
  public:
    explicit SetUpList(Document& document, QWidget* parent = nullptr);
    void refresh();

  private:
    Document& document_;
    QLabel* settings_;
    QLabel* cautions_;
};

}  // namespace shoulderline
