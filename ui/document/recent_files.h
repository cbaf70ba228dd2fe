#pragma once

#include <QStringList>

namespace shoulderline {

// The files opened or saved last, newest first, at most nine; kept in the person's settings.
[[nodiscard]] QStringList recentFiles();
void noteRecentFile(const QString& path);
void dropRecentFile(const QString& path);
void clearRecentFiles();

}  // namespace shoulderline
