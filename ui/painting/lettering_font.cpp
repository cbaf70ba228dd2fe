#include "ui/painting/lettering_font.h"

#include <QFontDatabase>
#include <QStringList>

namespace shoulderline {

QFont letteringFont() {
    const int id = QFontDatabase::addApplicationFont(QStringLiteral(":/fonts/routed-gothic.ttf"));
    const QStringList families = QFontDatabase::applicationFontFamilies(id);
    QFont font(families.isEmpty() ? QStringLiteral("Routed Gothic") : families.front());
    font.setPixelSize(kLetteringPixels);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setKerning(false);
    return font;
}

}  // namespace shoulderline
