#pragma once

#include <QDialog>
#include <QLineEdit>
#include <QListWidget>

#include "ui/help/help_pages.h"
#include "ui/help/help_text.h"

namespace shoulderline {

// Reads the help on joints: what is sought at the top, the pages that have it on the left, the page
// on the right. Down goes from the search to the list, Alt+Left back; a window of its own that may
// stay open.
class HelpWindow final : public QDialog {
    Q_OBJECT
  public:
    HelpWindow(HelpPages pages, const Resources& resources, QWidget* parent = nullptr);

    // Shows the page of that name; the first where there is none.
    void showPage(const QString& name);
    // Shows the page of a kind of joint, or of what a joint has besides.
    void showWord(const QString& word) { showPage(pages_.pageOf(word)); }
    [[nodiscard]] QString shown() const { return shown_; }

  protected:
    bool eventFilter(QObject* object, QEvent* event) override;

  private:
    void search(const QString& wanted);
    void follow(const QUrl& link);
    void display();
    void goBack();

    HelpPages pages_;
    QLineEdit* search_;
    QListWidget* list_;
    HelpText* text_;
    QString shown_;
    QStringList before_;  // pages seen before this one
};

}  // namespace shoulderline
