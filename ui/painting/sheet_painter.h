#pragma once

#include <QColor>
#include <QFont>
#include <QPainter>
#include <vector>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/sheet.h"

namespace shoulderline {

// The colours that a sheet is painted in. Tints left invalid are not painted.
struct SheetColours {
    QColor ink = Qt::black;      // visible edges, lettering
    QColor softInk = Qt::black;  // dimension, hidden, centre and construction lines
    QColor chosen = Qt::black;   // what is chosen
    QColor changed = Qt::black;  // what the last change moved
    QColor tint;                 // inside of parts
    QColor chosenTint;
    QColor changedTint;

    // Black line, no tints: for paper.
    [[nodiscard]] static SheetColours print() { return {}; }
};

// How a sheet is painted.
struct SheetLook {
    SheetColours colours;
    std::vector<Subject> chosen;
    std::vector<Subject> changed;
    // No line gets thinner than this (millimetres at the painter's scale): one device pixel on a
    // screen, 0 on paper.
    double leastWidth = 0.0;
};

// Paints sheets in true millimetres: the painter comes scaled so that one unit is one millimetre
// of the sheet, its origin at the sheet's top left corner. What is chosen or changed is drawn in
// its colour and wider, so that it shows without colour too.
class SheetPainter {
  public:
    // Needs a QGuiApplication for the lettering.
    SheetPainter();

    void paint(QPainter& painter, const Sheet& sheet, const SheetLook& look) const;

    // One line of lettering, as sheets have it, in the painter's present pen colour.
    void paintText(QPainter& painter, const TextOp& text) const;

  private:
    QFont font_;
    LetteringMetrics metrics_;
};

}  // namespace shoulderline
