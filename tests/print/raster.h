#pragma once

#include <QImage>
#include <optional>
#include <string>
#include <vector>

namespace shoulderline::testing {

// A part of a page as poppler's pdftocairo draws it at 600 dots per inch in grey: from (x, y),
// `width` by `height`, all in millimetres of the page. Independent of the program's own painting.
struct Crop {
    QImage image;
    double x = 0.0;
    double y = 0.0;
};
[[nodiscard]] Crop rasterised(
    const std::string& pdf, int page, double x, double y, double width, double height);

// Where upright lines cross the level band from `top` to `bottom` (mm of the page): the middle of
// each dark run of the band's mean darkness, weighed by darkness, in mm of the page. A line counts
// when it is dark through most of the band.
[[nodiscard]] std::vector<double> uprightLines(const Crop& crop, double top, double bottom);
// Level lines crossing the upright band from `left` to `right`, likewise.
[[nodiscard]] std::vector<double> levelLines(const Crop& crop, double left, double right);

// The value nearest to `wanted`; fails the test where there is none within 2 mm.
[[nodiscard]] double nearest(const std::vector<double>& values, double wanted);

// What a program prints, and its exit code.
struct Output {
    std::string text;
    int code = -1;
};
[[nodiscard]] Output runProgram(const std::string& program,
                                const std::vector<std::string>& arguments);

}  // namespace shoulderline::testing
