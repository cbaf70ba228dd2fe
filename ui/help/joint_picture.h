#pragma once

#include <QColor>
#include <QDir>
#include <QImage>
#include <QUrl>

#include "ui/document/resources.h"

namespace shoulderline {

// The picture that a page on a joint asks for, "rail_and_posts?kind=through&feature=tusked": the
// piece of that name in the folder of examples, its joints made so, taken apart, as wide as asked.
// `ratio`: pixels of the screen to one of the page. Null where there is no such example or what it
// asks for cannot be made.
[[nodiscard]] QImage jointPicture(const QUrl& what,
                                  const QDir& examples,
                                  const Resources& resources,
                                  const QColor& ink,
                                  int width,
                                  double ratio);

}  // namespace shoulderline
