#include <QApplication>
#include <QHashSeed>
#include <iostream>

#include "app/command_line.h"
#include "app/commands.h"
#include "app/read_resources.h"
#include "ui/window/run_window.h"

namespace {

using namespace shoulderline;

// A window needs a display; without one the toolkit would end the program with no word of its own.
bool hasDisplay() {
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

// The toolkit's remarks on the session are nothing to a maker who prints from a script.
void onlyGrave(QtMsgType type, const QMessageLogContext&, const QString& message) {
    if (type == QtCriticalMsg || type == QtFatalMsg) {
        std::cerr << "shoulderline: " << message.toStdString() << "\n";
    }
}

int runPrintWithoutDisplay(int argc,
                           char** argv,
                           const CommandLine& line,
                           const Resources& resources) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    qInstallMessageHandler(onlyGrave);
    const QGuiApplication application(argc, argv);
    return runPrint(line, resources);
}

}  // namespace

int main(int argc, char** argv) {
    // The order of a PDF's objects hangs on it: the same piece gives the same bytes.
    QHashSeed::setDeterministicGlobalSeed();
    int exitCode = 0;
    const std::optional<CommandLine> line = readCommandLine(argc, argv, exitCode);
    if (!line) {
        return exitCode;
    }
    const Result<Resources> resources = readResources();
    if (!resources) {
        std::cerr << "shoulderline: " << resources.error().message << "\n";
        return kUnreadable;
    }
    switch (line->command) {
        case Command::Check:
            return runCheck(*line, *resources);
        case Command::Sizes:
            return runSizes(*line, *resources);
        case Command::Strength:
            return runStrength(*line, *resources);
        case Command::Movement:
            return runMovement(*line, *resources);
        case Command::Settle:
            return runSettle(*line, *resources);
        case Command::Print:
            return runPrintWithoutDisplay(argc, argv, *line, *resources);
        case Command::Window:
            break;
    }
    if (!hasDisplay()) {
        std::cerr << "shoulderline: There is no display for the window; check, sizes, strength, "
                     "movement, settle and print need none.\n";
        return kUnreadable;
    }
    const auto edits = [line = *line](const Piece& piece) { return askedEdits(line, piece); };
    QApplication application(argc, argv);
    return runWindow(application, {*resources, QString::fromStdString(line->file), edits});
}
