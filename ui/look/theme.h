#pragma once

#include <QColor>
#include <QPalette>
#include <QString>

namespace shoulderline {

// The colours of the window. Each has one meaning, in light and in dark: teal for what is chosen
// and what one may act on, amber for what has just changed, brick for what must be mended.
struct Theme {
    bool isDark = false;
    QColor ink;
    QColor softInk;
    QColor hairline;
    QColor fieldEdge;  // 3:1 against paper, as the edge of a control has to be
    QColor desk;
    QColor paper;
    QColor field;
    QColor ash;  // the wood of the rods
    QColor teal;
    QColor tealTint;
    QColor amber;
    QColor amberTint;
    QColor brick;

    [[nodiscard]] static Theme light();
    [[nodiscard]] static Theme dark();
    // The theme that goes with a palette: dark where its windows are darker than their text.
    [[nodiscard]] static Theme of(const QPalette& palette);

    [[nodiscard]] QPalette palette() const;
    // The style sheet of the whole window.
    [[nodiscard]] QString styleSheet() const;
};

}  // namespace shoulderline
