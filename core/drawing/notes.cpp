#include "core/drawing/notes.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"

namespace shoulderline {

namespace {

constexpr double kBetweenNotes = 5.0;
constexpr double kDotRadius = 0.5;
constexpr double kUnderLine = 1.4;     // from the note's line to its lettering
constexpr double kOverLine = 0.6;      // of the height: room for a fraction's lower figures
constexpr double kLineSpacing = 1.75;  // of the height: a fraction over a fraction stays clear

struct Column {
    double low = 0.0;
    double width = 0.0;
};

double widthOf(const Note& note, double height, const TextMetrics& metrics) {
    double width = 0.0;
    for (const std::string& line : note.lines) {
        width = std::max(width, metrics.width(line, height, false));
    }
    return width;
}

// Columns as near under their targets as their order and widths allow: pushed to the right, then
// the whole run back to the left where it went too far.
std::vector<Column> columnsFor(const std::vector<Note>& notes,
                               double left,
                               double height,
                               const TextMetrics& metrics) {
    std::vector<Column> columns;
    double free = left;
    for (const Note& note : notes) {
        const double width = widthOf(note, height, metrics);
        const double low = std::max(free, note.target.x - width / 2.0);
        columns.push_back({low, width});
        free = low + width + kBetweenNotes;
    }
    for (std::size_t i = columns.size(); i-- > 0;) {
        const double wanted = notes[i].target.x - columns[i].width / 2.0;
        const double least =
            i == 0 ? left : columns[i - 1].low + columns[i - 1].width + kBetweenNotes;
        if (columns[i].low > wanted) {
            // Share the push among those that crowd it: each gives way by half.
            double give = (columns[i].low - wanted) / 2.0;
            for (std::size_t k = i; k-- > 0 && give > 0.0;) {
                const double room =
                    k == 0 ? columns[0].low - left
                           : columns[k].low -
                                 (columns[k - 1].low + columns[k - 1].width + kBetweenNotes);
                const double move = std::clamp(give, 0.0, std::max(0.0, room));
                columns[k].low -= move;
                if (room > 0.0) {
                    give = move;
                }
            }
            const double nowLeast =
                i == 0 ? left : columns[i - 1].low + columns[i - 1].width + kBetweenNotes;
            columns[i].low = std::max({wanted, std::min(least, nowLeast)});
        }
    }
    return columns;
}

Fill dotAt(Vec2 centre) {
    Fill fill;
    for (int i = 0; i < 12; ++i) {
        const Angle angle = Angle::degrees(30.0 * i);
        fill.points.push_back(centre + Vec2{angle.cos(), angle.sin()} * kDotRadius);
    }
    return fill;
}

}  // namespace

std::vector<Op> placeNotes(std::vector<Note> notes,
                           double left,
                           double top,
                           double height,
                           const TextMetrics& metrics,
                           NoteSide side) {
    std::stable_sort(notes.begin(), notes.end(), [](const Note& a, const Note& b) {
        return a.target.x < b.target.x;
    });
    const std::vector<Column> columns = columnsFor(notes, left, height, metrics);
    std::vector<Op> ops;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const Note& note = notes[i];
        const Column& column = columns[i];
        ops.push_back(
            BeginGroup{note.subject, note.lines.empty() ? std::string() : note.lines.front()});
        const double meets = std::clamp(note.target.x, column.low, column.low + column.width);
        ops.push_back(Stroke{{note.target, {meets, top}}, LineRole::Dimension});
        ops.push_back(
            Stroke{{{column.low, top}, {column.low + column.width, top}}, LineRole::Dimension});
        ops.push_back(dotAt(note.target));
        // Over the view the last line of lettering stands on the note's line.
        double baseline =
            side == NoteSide::Under
                ? top + kUnderLine + height
                : top - kOverLine * height -
                      height * kLineSpacing * static_cast<double>(note.lines.size() - 1);
        for (const std::string& line : note.lines) {
            baseline += &line == &note.lines.front() ? 0.0 : height * kLineSpacing;
            ops.push_back(TextOp{{column.low, baseline}, line, height, Align::Left, false, false});
        }
        ops.push_back(EndGroup{});
    }
    return ops;
}

}  // namespace shoulderline
