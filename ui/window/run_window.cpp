#include "ui/window/run_window.h"

#include <QAccessible>
#include <QFont>
#include <QProxyStyle>
#include <QSettings>
#include <QTimer>
#include <algorithm>

#include "ui/canvas/canvas_accessible.h"
#include "ui/look/theme.h"
#include "ui/window/main_window.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

// Commands are words here: dialogs show no icons on their buttons.
class BoardStyle final : public QProxyStyle {
  public:
    BoardStyle() : QProxyStyle(u"Fusion"_s) {}
    int styleHint(StyleHint hint,
                  const QStyleOption* option,
                  const QWidget* widget,
                  QStyleHintReturn* data) const override {
        return hint == SH_DialogButtonBox_ButtonsHaveIcons
                   ? 0
                   : QProxyStyle::styleHint(hint, option, widget, data);
    }
};

// The changes asked for at the start; the first that cannot be made is told, and the rest are left.
void makeEdits(Document& document, const WindowOptions& options, Prompts& prompts) {
    const Result<std::vector<Edit>> edits = options.edits(document.piece());
    if (!edits) {
        prompts.tell(nullptr, QString::fromStdString(edits.error().message));
        return;
    }
    for (const Edit& edit : *edits) {
        const Result<void> done = document.apply(edit);
        if (!done) {
            prompts.tell(nullptr, QString::fromStdString(done.error().message));
            return;
        }
    }
}

}  // namespace

void prepareLook(QApplication& application) {
    const bool isSystemDark = Theme::of(QApplication::palette()).isDark;
    application.setProperty("systemIsDark", isSystemDark);
    const QString colours = QSettings().value(u"window/colours"_s, u"system"_s).toString();
    const bool isDark = colours == u"dark"_s || (colours == u"system"_s && isSystemDark);
    const Theme theme = isDark ? Theme::dark() : Theme::light();
    QApplication::setStyle(new BoardStyle);
    QApplication::setPalette(theme.palette());
    QFont font(u"Inter"_s);
    font.setPointSizeF(std::max(9.5, QApplication::font().pointSizeF()));
    QApplication::setFont(font);
    application.setStyleSheet(theme.styleSheet());
    QAccessible::installFactory(makeCanvasAccessible);
}

int runWindow(QApplication& application, const WindowOptions& options) {
    QApplication::setOrganizationName(u"shoulderline"_s);
    QApplication::setApplicationName(u"shoulderline"_s);
    QApplication::setApplicationDisplayName(QString());
    QGuiApplication::setDesktopFileName(u"shoulderline"_s);
    prepareLook(application);
    DialogPrompts prompts;
    MainWindow window(options.resources, prompts, recoveryFolder());
    if (!options.file.isEmpty()) {
        // A file that cannot be read is told of once the window is there.
        QTimer::singleShot(0, &window, [&] {
            if (!window.offerLostWork() && window.openFile(options.file) && options.edits) {
                makeEdits(window.document(), options, prompts);
            }
        });
    } else {
        QTimer::singleShot(0, &window, [&] { window.offerLostWork(); });
    }
    window.show();
    return QApplication::exec();
}

}  // namespace shoulderline
