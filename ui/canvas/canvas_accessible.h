#pragma once

#include <QAccessible>
#include <QString>

namespace shoulderline {

// Lets assistive tools see the things on a Canvas: install with QAccessible::installFactory.
QAccessibleInterface* makeCanvasAccessible(const QString& className, QObject* object);

}  // namespace shoulderline
