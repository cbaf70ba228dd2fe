#pragma once

#include <QApplication>
#include <QString>
#include <functional>
#include <vector>

#include "core/piece/edit.h"
#include "ui/document/resources.h"

namespace shoulderline {

struct WindowOptions {
    Resources resources;
    QString file;  // to open at the start; empty for none
    // Changes to make to the piece of the file once it is open, as undoable as any; may be empty.
    // An error is told, and the piece stays as it is.
    std::function<Result<std::vector<Edit>>(const Piece&)> edits;
};

// Shows the window and runs the program until it is closed; gives the exit code.
int runWindow(QApplication& application, const WindowOptions& options);

// Sets the look of the whole program up: colours, type, and what assistive tools see of a canvas.
void prepareLook(QApplication& application);

}  // namespace shoulderline
