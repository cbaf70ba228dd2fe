#pragma once

#include <string>

#include "core/drawing/paper.h"

namespace shoulderline {

// How much a printer's pages must be stretched so that they come out true: along the short and the
// long side of its paper, whichever way up a page is printed. 1 is as it is.
struct ScaleCorrection {
    double shortSide = 1.0;
    double longSide = 1.0;

    [[nodiscard]] bool isNone() const { return shortSide == 1.0 && longSide == 1.0; }
    // Along x and y of a page.
    [[nodiscard]] Vec2 on(const Page& page) const {
        return page.size.x > page.size.y ? Vec2{longSide, shortSide} : Vec2{shortSide, longSide};
    }
    friend bool operator==(const ScaleCorrection&, const ScaleCorrection&) = default;
};

// The lines to measure on a paper's calibration sheet: as long as they ought to be, in whole
// centimetres; x along the short side, y along the long side.
[[nodiscard]] Vec2 calibrationLengths(const Paper& paper);

// One page, the paper upright: both lines with their lengths, both diagonals of the rectangle they
// span, room to write what they measure, and what to do with it. No piece is needed.
[[nodiscard]] PrintJob calibrationJob(const Paper& paper,
                                      bool inInches,
                                      const std::string& date,
                                      const TextMetrics& metrics);

// The correction that follows from what the lines measured, in millimetres. Errors: OutOfRange for
// figures that no printer is off by (more than 3 in 100), with what is likely to have happened:
// pages fitted to the printer's margins or to another paper.
[[nodiscard]] Result<ScaleCorrection> correctionFrom(const Paper& paper, Vec2 measured);

// The job with a line at the foot of every page that says it is corrected, and by how much.
[[nodiscard]] PrintJob withCorrectionNoted(PrintJob job,
                                           const ScaleCorrection& correction,
                                           const std::string& printer);

}  // namespace shoulderline
