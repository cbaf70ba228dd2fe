#pragma once

#include <QButtonGroup>
#include <QLabel>
#include <QWidget>

#include "ui/document/document.h"
#include "ui/look/text_button.h"

namespace shoulderline {

// The strip at the top: the piece's name and whether it is saved, the names of the pages, and at
// the right how lengths are shown.
class TopStrip final : public QWidget {
    Q_OBJECT
  public:
    TopStrip(Document& document, const QStringList& pages, QWidget* parent = nullptr);
    void setPage(int page);
    void setScaleText(const QString& text);

  Q_SIGNALS:
    void pageChosen(int page);
    void renameAsked();

  protected:
    bool eventFilter(QObject* object, QEvent* event) override;

  private:
    void refresh();
    void openUnits();

    Document& document_;
    TextButton* name_;
    QLabel* saved_;
    QButtonGroup pages_;
    QLabel* scale_;
    TextButton* units_;
};

}  // namespace shoulderline
