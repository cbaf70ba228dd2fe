#include "core/drawing/calibration.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/measure/length_text.h"
#include "core/measure/number_text.h"

namespace shoulderline {

namespace {

constexpr double kMostOff = 0.03;
constexpr double kInstructionHeight = 3.5;

TextOp calibrationWords(Vec2 at,
                        const std::string& text,
                        double height = kInstructionHeight,
                        bool isBold = false) {
    return {at, text, height, Align::Left, false, isBold};
}

// A line to be measured, with a fine mark across each end and a tick every centimetre.
void addRuler(Vec2 from, Vec2 way, double length, std::vector<Op>& ops) {
    const Vec2 across{way.y, -way.x};
    ops.push_back(Stroke{{from, from + way * length}, LineRole::Dimension});
    for (int i = 0; i <= static_cast<int>(std::lround(length / 10.0)); ++i) {
        const Vec2 at = from + way * (10.0 * i);
        const bool isEnd = i == 0 || i == static_cast<int>(std::lround(length / 10.0));
        const double tick = isEnd ? 6.0 : (i % 5 == 0 ? 3.0 : 1.5);
        ops.push_back(Stroke{{at - across * (isEnd ? 3.0 : 0.0), at + across * tick},
                             isEnd ? LineRole::Dimension : LineRole::Construction});
    }
}

std::string inBoth(double mm, bool inInches) {
    const std::string own = showDecimal(mm, 1) + " mm";
    return inInches ? own + " (" + showDecimal(mm / Length::kMmPerInch, 3) + " in)" : own;
}

// What makes a page come out so much too small or too large.
std::string causeOf(double ratio) {
    if (ratio > 0.6 && ratio < 0.72) {
        return "the page was made to fit a paper half as large";
    }
    if (ratio < 1.0 - kMostOff && ratio > 0.8) {
        return "the page was fitted to the printer's margins or to another paper";
    }
    return "the figures do not belong to this sheet";
}

}  // namespace

Vec2 calibrationLengths(const Paper& paper) {
    const Vec2 size = upright(paper);
    const auto whole = [](double mm) { return std::max(20.0, std::floor(mm / 10.0) * 10.0); };
    return {whole(size.x - 40.0), whole(size.y - 50.0)};
}

PrintJob calibrationJob(const Paper& paper,
                        bool inInches,
                        const std::string& date,
                        const TextMetrics& metrics) {
    const Vec2 lengths = calibrationLengths(paper);
    const Vec2 size = upright(paper);
    Page page;
    page.size = size;
    page.printable = {{0, 0}, size};
    page.name = "calibration sheet";
    page.furniture.title = page.name;
    page.furniture.size = size;
    page.furniture.lines = LineGroup::Fine;
    std::vector<Op>& ops = page.furniture.ops;
    const Vec2 corner{(size.x - lengths.x) / 2.0, (size.y - lengths.y) / 2.0};
    const Vec2 far = corner + lengths;
    addRuler({corner.x, far.y}, {1, 0}, lengths.x, ops);
    addRuler({corner.x, corner.y}, {0, 1}, lengths.y, ops);
    // The rest of the rectangle and its diagonals tell whether the paper ran askew.
    ops.push_back(Stroke{{corner, {far.x, corner.y}, far}, LineRole::Dimension});
    const double inset = std::min(lengths.x, lengths.y) / 6.0;
    for (const Vec2& at : {corner, far}) {
        const double way = at == corner ? 1.0 : -1.0;
        ops.push_back(Stroke{{at, at + Vec2{inset, inset} * way}, LineRole::Construction});
    }
    double y = corner.y + lengths.y * 0.24;
    const double x = corner.x + 14.0;
    const double width = lengths.x - 20.0;
    const std::string lines[] = {
        "Calibration sheet, " + paper.name + (date.empty() ? "" : ", " + date),
        "1.  Print this sheet at 100 %, actual size, on the printer that is to print full size.",
        "2.  Measure both lines from end mark to end mark, to a quarter of a millimetre.",
        "     Across the sheet it should be " + inBoth(lengths.x, inInches) +
            "; it is  ______________",
        "     Up the sheet it should be " + inBoth(lengths.y, inInches) + "; it is  ______________",
        "3.  Enter both figures under Prints, Correct a printer. Prints on this printer and paper",
        "     then come out true, and say that they are corrected.",
        "Both diagonals of the rectangle should be " +
            inBoth(std::hypot(lengths.x, lengths.y), inInches) + ".",
        "Where they differ by more than 1 mm, the paper ran askew: print the sheet again.",
        "Paper grows and shrinks with the air by a thousandth or more: measure soon after "
        "printing."};
    double height = kInstructionHeight;
    double titleHeight = 5.0;
    for (const std::string& line : lines) {
        const bool isFirst = &line == &lines[0];
        double& own = isFirst ? titleHeight : height;
        own = std::min(own, own * width / metrics.width(line, own, isFirst));
    }
    for (const std::string& line : lines) {
        const bool isFirst = &line == &lines[0];
        ops.push_back(calibrationWords({x, y}, line, isFirst ? titleHeight : height, isFirst));
        y += isFirst ? 12.0 : 8.0;
    }
    PrintJob job;
    job.title = "Calibration sheet";
    job.contents.emplace_back();
    job.pages.push_back(std::move(page));
    return job;
}

Result<ScaleCorrection> correctionFrom(const Paper& paper, Vec2 measured) {
    const Vec2 lengths = calibrationLengths(paper);
    for (const auto& [is, ought] :
         {std::pair{measured.x, lengths.x}, std::pair{measured.y, lengths.y}}) {
        if (!(std::abs(is / ought - 1.0) <= kMostOff)) {
            return fail(ErrorCode::OutOfRange,
                        showDecimal(is, 1) + " mm where " + showDecimal(ought, 1) +
                            " mm is expected is no printer's error: " + causeOf(is / ought) +
                            ". Print the sheet at 100 %, actual size, and measure again.");
        }
    }
    return ScaleCorrection{lengths.x / measured.x, lengths.y / measured.y};
}

PrintJob withCorrectionNoted(PrintJob job,
                             const ScaleCorrection& correction,
                             const std::string& printer) {
    if (correction.isNone()) {
        return job;
    }
    for (Page& page : job.pages) {
        const Vec2 by = correction.on(page);
        const std::string text = "corrected for " + printer + ": \u00d7 " + showDecimal(by.x, 4) +
                                 " across, \u00d7 " + showDecimal(by.y, 4) + " up the sheet";
        page.furniture.ops.push_back(
            TextOp{{page.size.x / 2.0, page.size.y - 5.4}, text, 2.5, Align::Centre, false, false});
    }
    return job;
}

}  // namespace shoulderline
