#pragma once

#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>
#include <vector>

#include "ui/document/document.h"

namespace shoulderline {

// How the tools are set for the chosen joint, with the caution that goes with each.
class SetUpList final : public QWidget {
    Q_OBJECT
  public:
    explicit SetUpList(Document& document, QWidget* parent = nullptr);
    void refresh();

  private:
    void showSettings(const QStringList& lines);

    Document& document_;
    QVBoxLayout* settings_;
    std::vector<QLabel*> rows_;  // one a setting, kept and lettered anew
    QLabel* cautions_;
};

}  // namespace shoulderline
