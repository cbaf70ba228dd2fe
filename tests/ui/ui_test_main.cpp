#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include "ui/window/run_window.h"

namespace {

// What Qt warns of is a fault of the window; but for one thing that the offscreen platform lacks.
void failOnWarning(QtMsgType type, const QMessageLogContext&, const QString& message) {
    if (message.contains(QLatin1String("propagateSizeHints"))) {
        return;
    }
    if (type == QtWarningMsg || type == QtCriticalMsg || type == QtFatalMsg) {
        ADD_FAILURE() << "Qt warns: " << message.toStdString();
    }
}

}  // namespace

int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    const QTemporaryDir home;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("XDG_RUNTIME_DIR", home.path().toUtf8());
    qputenv("XDG_STATE_HOME", (home.path() + QStringLiteral("/state")).toUtf8());
    QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, home.path());
    QApplication application(argc, argv);
    QApplication::setOrganizationName(QStringLiteral("shoulderline"));
    QApplication::setApplicationName(QStringLiteral("shoulderline"));
    QApplication::setCursorFlashTime(0);
    shoulderline::prepareLook(application);
    qInstallMessageHandler(failOnWarning);
    return RUN_ALL_TESTS();
}
