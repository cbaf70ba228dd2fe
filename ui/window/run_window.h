#pragma once

#include <QApplication>
#include <QString>

#include "ui/document/resources.h"

namespace shoulderline {

struct WindowOptions {
    Resources resources;
    QString file;  // to open at the start; empty for none
};

// Shows the window and runs the program until it is closed; gives the exit code.
int runWindow(QApplication& application, const WindowOptions& options);

// Sets the look of the whole program up: colours, type, and what assistive tools see of a canvas.
void prepareLook(QApplication& application);

}  // namespace shoulderline
