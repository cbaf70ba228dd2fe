#pragma once

#include <QString>
#include <optional>

#include "core/drawing/calibration.h"

namespace shoulderline {

// What the calibration sheet of one paper measured on one printer, in millimetres, and when; kept
// in the user's settings.
struct Measured {
    Vec2 lengths;  // along the short side, along the long side
    QString date;  // ISO 8601
};
[[nodiscard]] std::optional<Measured> measuredFor(const QString& printer, const Paper& paper);
void keepMeasured(const QString& printer, const Paper& paper, const Measured& measured);
void forgetMeasured(const QString& printer, const Paper& paper);

// The correction that follows; none where nothing was measured, or what is kept makes no sense.
[[nodiscard]] ScaleCorrection correctionFor(const QString& printer, const Paper& paper);

}  // namespace shoulderline
