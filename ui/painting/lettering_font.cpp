#include "ui/painting/lettering_font.h"

#include <QFile>
#include <QFontDatabase>
#include <QStringList>

namespace shoulderline {

namespace {

QString fontPath() {
    return QStringLiteral(":/fonts/routed-gothic.ttf");
}

}  // namespace

QFont letteringFont() {
    const int id = QFontDatabase::addApplicationFont(fontPath());
    const QStringList families = QFontDatabase::applicationFontFamilies(id);
    QFont font(families.isEmpty() ? QStringLiteral("Routed Gothic") : families.front());
    font.setPixelSize(kLetteringPixels);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setKerning(false);
    return font;
}

std::string letteringFontFile() {
    QFile file(fontPath());
    return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

}  // namespace shoulderline
