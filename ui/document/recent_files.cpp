#include "ui/document/recent_files.h"

#include <QFileInfo>
#include <QSettings>

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr auto kKey = "recent/files"_L1;
constexpr int kMost = 9;

}  // namespace

QStringList recentFiles() {
    return QSettings().value(QString(kKey)).toStringList().mid(0, kMost);
}

void noteRecentFile(const QString& path) {
    QStringList files = recentFiles();
    const QString whole = QFileInfo(path).absoluteFilePath();
    files.removeAll(whole);
    files.prepend(whole);
    QSettings().setValue(QString(kKey), files.mid(0, kMost));
}

void dropRecentFile(const QString& path) {
    QStringList files = recentFiles();
    files.removeAll(path);
    QSettings().setValue(QString(kKey), files);
}

void clearRecentFiles() {
    QSettings().remove(QString(kKey));
}

}  // namespace shoulderline
