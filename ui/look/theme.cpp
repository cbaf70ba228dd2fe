#include "ui/look/theme.h"

#include <QStringList>
#include <utility>

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

Theme Theme::light() {
    return {.isDark = false,
            .ink = QColor(0x24, 0x26, 0x2b),
            .softInk = QColor(0x66, 0x62, 0x5b),
            .hairline = QColor(0xc9, 0xc4, 0xb8),
            .fieldEdge = QColor(0x91, 0x8b, 0x7f),
            .desk = QColor(0xe6, 0xe2, 0xd9),
            .paper = QColor(0xfb, 0xf9, 0xf4),
            .field = QColor(0xff, 0xff, 0xff),
            .ash = QColor(0xef, 0xe1, 0xc3),
            .teal = QColor(0x0b, 0x66, 0x70),
            .tealTint = QColor(0xdc, 0xec, 0xec),
            .amber = QColor(0x9a, 0x5b, 0x00),
            .amberTint = QColor(0xfb, 0xec, 0xcf),
            .brick = QColor(0x9c, 0x2b, 0x22)};
}

Theme Theme::dark() {
    return {.isDark = true,
            .ink = QColor(0xea, 0xe7, 0xdf),
            .softInk = QColor(0xad, 0xa8, 0x9c),
            .hairline = QColor(0x4b, 0x49, 0x45),
            .fieldEdge = QColor(0x80, 0x7b, 0x72),
            .desk = QColor(0x1a, 0x1b, 0x1d),
            .paper = QColor(0x25, 0x26, 0x29),
            .field = QColor(0x1d, 0x1e, 0x20),
            .ash = QColor(0x51, 0x45, 0x2d),
            .teal = QColor(0x62, 0xc6, 0xd0),
            .tealTint = QColor(0x1b, 0x40, 0x44),
            .amber = QColor(0xf0, 0xb2, 0x50),
            .amberTint = QColor(0x47, 0x38, 0x1a),
            .brick = QColor(0xf2, 0x8d, 0x80)};
}

Theme Theme::of(const QPalette& palette) {
    const bool isDark = palette.color(QPalette::Window).lightness() <
                        palette.color(QPalette::WindowText).lightness();
    return isDark ? dark() : light();
}

QPalette Theme::palette() const {
    QPalette palette;
    const std::pair<QPalette::ColorRole, QColor> roles[] = {
        {QPalette::Window, paper},
        {QPalette::WindowText, ink},
        {QPalette::Base, field},
        {QPalette::AlternateBase, paper},
        {QPalette::Text, ink},
        {QPalette::PlaceholderText, softInk},
        {QPalette::Button, paper},
        {QPalette::ButtonText, ink},
        {QPalette::BrightText, brick},
        {QPalette::ToolTipBase, paper},
        {QPalette::ToolTipText, ink},
        {QPalette::Highlight, teal},
        {QPalette::HighlightedText, isDark ? desk : field},
        {QPalette::Link, teal},
        {QPalette::LinkVisited, teal},
        {QPalette::Light, field},
        {QPalette::Midlight, hairline},
        {QPalette::Mid, hairline},
        {QPalette::Dark, fieldEdge},
        {QPalette::Shadow, isDark ? QColor(Qt::black) : fieldEdge}};
    for (const auto& [role, colour] : roles) {
        palette.setColor(role, colour);
    }
    for (const QPalette::ColorRole role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, softInk);
    }
    return palette;
}

QString Theme::styleSheet() const {
    QString sheet =
        uR"(
QWidget#desk { background: @desk; }
QWidget#column, QScrollArea#column, QWidget#strip, QWidget#findings { background: @paper; }
QScrollArea { border: none; background: @paper; }
QScrollArea > QWidget > QWidget { background: @paper; }
QSplitter::handle { background: @hairline; }
QLineEdit {
    background: @field; color: @ink; border: 1px solid @fieldEdge; border-radius: 3px;
    padding: 2px 6px; min-height: 18px; selection-background-color: @teal;
}
QLineEdit:focus { border: 2px solid @teal; padding: 1px 5px; }
QLineEdit[changed="true"] { background: @amberTint; }
QComboBox QAbstractItemView { background: @field; color: @ink; border: 1px solid @fieldEdge; }
QTreeView, QTableView {
    background: @paper; color: @ink; border: none; outline: none;
    selection-background-color: @tealTint; selection-color: @ink; gridline-color: @hairline;
}
QTreeView::item { padding: 2px 0; }
QTreeView::item:selected, QTableView::item:selected { background: @tealTint; color: @ink; }
QHeaderView { background: @paper; }
QHeaderView::section {
    background: @paper; color: @softInk; border: none; border-bottom: 1px solid @hairline;
    padding: 5px 4px; font-weight: 500;
}
QMenuBar { background: @paper; color: @ink; border: none; padding: 1px 8px; }
QMenuBar::item { padding: 3px 9px; background: transparent; }
QMenuBar::item:selected { background: @tealTint; }
QMenu { background: @paper; color: @ink; border: 1px solid @fieldEdge; padding: 4px; }
QMenu::item { padding: 4px 26px 4px 22px; }
QMenu::item:selected { background: @tealTint; color: @ink; }
QMenu::item:disabled { color: @softInk; }
QMenu::separator { height: 1px; background: @hairline; margin: 4px 8px; }
QPushButton {
    background: @field; color: @teal; border: 1px solid @fieldEdge; border-radius: 3px;
    padding: 4px 14px; font-weight: 600;
}
QPushButton:hover { background: @tealTint; }
QPushButton:focus, QPushButton:default { border: 2px solid @teal; padding: 3px 13px; }
QPushButton:disabled { color: @softInk; border-color: @hairline; }
QScrollBar:vertical { background: transparent; width: 10px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 10px; margin: 0; }
QScrollBar::handle { background: @hairline; border-radius: 4px; min-height: 28px; min-width: 28px; }
QScrollBar::handle:hover { background: @fieldEdge; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QToolTip { background: @paper; color: @ink; border: 1px solid @fieldEdge; padding: 4px 6px; }
)"_s;
    const std::pair<QString, QColor> names[] = {{u"@hairline"_s, hairline},
                                                {u"@fieldEdge"_s, fieldEdge},
                                                {u"@softInk"_s, softInk},
                                                {u"@tealTint"_s, tealTint},
                                                {u"@amberTint"_s, amberTint},
                                                {u"@desk"_s, desk},
                                                {u"@paper"_s, paper},
                                                {u"@field"_s, field},
                                                {u"@ink"_s, ink},
                                                {u"@teal"_s, teal}};
    for (const auto& [name, colour] : names) {
        sheet.replace(name, colour.name());
    }
    return sheet;
}

}  // namespace shoulderline
