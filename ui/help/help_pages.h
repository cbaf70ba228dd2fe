#pragma once

#include <QDir>
#include <QString>
#include <QStringList>

namespace shoulderline {

// The help as pages: on the program's matters, and under joints/ one for each word that the file
// format has for a kind of joint or for what a joint may have besides. A page is named by its place
// without ending ("rods", "joints/let_in").
class HelpPages {
  public:
    explicit HelpPages(const QString& folder = QStringLiteral(":/help"));

    [[nodiscard]] QString folder() const { return folder_.path(); }
    // All pages, those on the program's matters first, each in order of the alphabet.
    [[nodiscard]] const QStringList& names() const { return names_; }
    // Those whose title or text has `wanted` in it; all for nothing wanted.
    [[nodiscard]] QStringList found(const QString& wanted) const;
    // The page as HTML; empty where there is none.
    [[nodiscard]] QString page(const QString& name) const;
    // How it is listed: "let in".
    [[nodiscard]] static QString titleOf(const QString& name);
    // The page of a joint's word; empty where there is none.
    [[nodiscard]] QString pageOf(const QString& word) const;
    // The page that a link in `from` leads to; empty where it leads nowhere.
    [[nodiscard]] QString linked(const QString& from, const QString& link) const;

  private:
    QDir folder_;
    QStringList names_;
};

}  // namespace shoulderline
