#pragma once

#include <QTextBrowser>

#include "ui/document/resources.h"

namespace shoulderline {

// A page of the help. The pictures of joints are drawn as they are looked at, in the window's own
// colours.
class HelpText final : public QTextBrowser {
    Q_OBJECT
  public:
    // `folder` as of HelpPages.
    HelpText(const QString& folder, Resources resources, QWidget* parent = nullptr);

  protected:
    QVariant loadResource(int type, const QUrl& name) override;

  private:
    QString folder_;
    Resources resources_;
};

}  // namespace shoulderline
