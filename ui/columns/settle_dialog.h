#pragma once

#include <QDialog>

#include "core/check/settle.h"
#include "ui/document/document.h"

namespace shoulderline {

// What 'settle' would choose for the joints that meet, and what is gained; nothing changes until it
// is taken, which is one step to take back.
class SettleDialog final : public QDialog {
    Q_OBJECT
  public:
    explicit SettleDialog(Document& document, QWidget* parent = nullptr);

  private:
    void take();

    Document& document_;
    Settlement settlement_;
};

}  // namespace shoulderline
