#include "core/drawing/notes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/fraction_text.h"
#include "core/drawing/trade_marks.h"

namespace shoulderline {

namespace {

constexpr double kBetweenNotes = 5.0;
constexpr double kBetweenLeaders = 2.5;
constexpr double kSameWidth = 1e-9;
constexpr double kUnderLine = 1.6;  // from the note's line to its lettering
constexpr double kOverLine = 0.6;   // of the height: room for a fraction's lower figures

// Where a note stands: in which row, from `low` on, its leader coming to the first row's line at
// `meets` and straight on from there.
struct Column {
    int row = 0;
    double low = 0.0;
    double width = 0.0;
    double meets = 0.0;

    [[nodiscard]] double high() const { return low + width; }
};

double widthOf(const Note& note, double height, const TextMetrics& metrics) {
    double width = 0.0;
    for (const std::string& line : note.lines) {
        width = std::max(width, metrics.width(line, height, false));
    }
    return width;
}

// Notes in turn in the first row, the second and so on, as near under their targets as those before
// them allow; leaders of farther rows pass between the notes of nearer ones.
class NoteColumns {
  public:
    NoteColumns(const std::vector<Note>& notes,
                double left,
                int rows,
                double height,
                const TextMetrics& metrics)
        : notes_(notes), left_(left), free_(static_cast<std::size_t>(rows), left) {
        for (std::size_t i = 0; i < notes.size(); ++i) {
            add(i, widthOf(notes[i], height, metrics));
        }
        finishRun();
    }

    [[nodiscard]] const std::vector<Column>& columns() const { return columns_; }
    // How far the leader that slants most goes aside.
    [[nodiscard]] double worst() const {
        double worst = 0.0;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            worst = std::max(worst, std::abs(asideOf(i)));
        }
        return worst;
    }

  private:
    [[nodiscard]] double asideOf(std::size_t i) const {
        return columns_[i].meets - notes_[i].target.x;
    }

    void add(std::size_t i, double width) {
        const double target = notes_[i].target.x;
        const auto row = i % free_.size();
        double meets = std::max({target, passed_ + kBetweenLeaders, left_});
        for (std::size_t k = i; k-- > 0 && i - k <= row;) {
            meets = std::max(meets, columns_[k].high() + kBetweenLeaders);
        }
        double low = std::max(free_[row], target - width / 2.0);
        low = std::max(low, meets - width);
        meets = std::max(meets, low);
        if (low <= target - width / 2.0 + kSameWidth && meets <= target + kSameWidth) {
            finishRun();
            first_ = i;
        }
        columns_.push_back({static_cast<int>(row), low, width, meets});
        passed_ = meets;
        free_[row] = low + width + kBetweenNotes;
        for (std::size_t q = 0; q < row; ++q) {
            free_[q] = std::max(free_[q], meets + kBetweenLeaders);
        }
    }

    // Notes that crowd one another share the push: all go back to the left as far as there is room.
    void finishRun() {
        if (first_ >= columns_.size()) {
            return;
        }
        double least = left_;
        for (std::size_t k = 0; k < first_; ++k) {
            least = std::max(least, columns_[k].high() + kBetweenNotes);
        }
        double room = std::numeric_limits<double>::infinity();
        double low = 0.0;
        double high = 0.0;
        for (std::size_t i = first_; i < columns_.size(); ++i) {
            room = std::min(room, columns_[i].low - least);
            low = std::min(low, asideOf(i));
            high = std::max(high, asideOf(i));
        }
        const double back = std::clamp((low + high) / 2.0, 0.0, std::max(0.0, room));
        for (std::size_t i = first_; i < columns_.size(); ++i) {
            columns_[i].low -= back;
            columns_[i].meets -= back;
        }
        passed_ -= back;
        for (double& free : free_) {
            free -= back;
        }
        first_ = columns_.size();
    }

    const std::vector<Note>& notes_;
    double left_;
    std::vector<double> free_;  // of each row, from where on
    std::vector<Column> columns_;
    std::size_t first_ = 0;  // of the notes that crowd one another
    double passed_ = -std::numeric_limits<double>::infinity();
};

// In the fewest rows that keep the leaders steep, or else in those that keep them steepest.
std::vector<Column> columnsFor(const std::vector<Note>& notes,
                               double left,
                               double height,
                               const TextMetrics& metrics) {
    constexpr int kMostRows = 3;
    constexpr double kSteep = 14.0;
    std::optional<NoteColumns> best;
    for (int rows = 1; rows <= kMostRows; ++rows) {
        NoteColumns columns(notes, left, rows, height, metrics);
        const double aside = columns.worst();
        if (!best || aside < 0.8 * best->worst()) {
            best.emplace(std::move(columns));
        }
        if (aside <= kSteep) {
            break;
        }
    }
    return best->columns();
}

// From a note's first line of lettering to its last.
double depthOf(const Note& note, double height) {
    return note.lines.empty() ? 0.0
                              : height * kLineSpacing * static_cast<double>(note.lines.size() - 1);
}

// How far out each row's line lies from the first.
std::vector<double> rowsOut(const std::vector<Note>& notes,
                            const std::vector<Column>& columns,
                            double height) {
    constexpr double kBetweenRows = 2.0;
    std::vector<double> outs{0.0};
    for (int row = 0;; ++row) {
        double depth = -1.0;
        for (std::size_t i = 0; i < notes.size(); ++i) {
            if (columns[i].row == row) {
                depth = std::max(depth, depthOf(notes[i], height));
            }
        }
        if (depth < 0.0) {
            return outs;
        }
        outs.push_back(outs.back() + kUnderLine + height * (1.0 + kOverLine) + depth +
                       kBetweenRows);
    }
}

}  // namespace

std::vector<Op> placeNotes(std::vector<Note> notes,
                           double left,
                           double top,
                           double height,
                           const TextMetrics& metrics,
                           NoteSide side) {
    if (notes.empty()) {
        return {};
    }
    // Of targets in one line the nearest comes first: its leader is the one that goes straight, and
    // those of the others pass it by.
    std::stable_sort(notes.begin(), notes.end(), [side](const Note& a, const Note& b) {
        constexpr double kPerMm = 1000.0;
        const auto ax = std::llround(a.target.x * kPerMm);
        const auto bx = std::llround(b.target.x * kPerMm);
        const bool isNearer =
            side == NoteSide::Under ? a.target.y > b.target.y : a.target.y < b.target.y;
        return ax != bx ? ax < bx : isNearer;
    });
    const std::vector<Column> columns = columnsFor(notes, left, height, metrics);
    const std::vector<double> outs = rowsOut(notes, columns, height);
    const double way = side == NoteSide::Under ? 1.0 : -1.0;
    std::vector<Op> ops;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const Note& note = notes[i];
        const Column& column = columns[i];
        const double line = top + way * outs[static_cast<std::size_t>(column.row)];
        ops.push_back(
            BeginGroup{note.subject, note.lines.empty() ? std::string() : note.lines.front()});
        Stroke leader{{note.target, {column.meets, top}}, LineRole::Dimension};
        if (column.row > 0) {
            leader.points.push_back({column.meets, line});
        }
        ops.push_back(std::move(leader));
        ops.push_back(Stroke{{{column.low, line}, {column.high(), line}}, LineRole::Dimension});
        ops.push_back(leaderDot(note.target));
        // Over the view the last line of lettering stands on the note's line.
        double baseline = side == NoteSide::Under
                              ? line + kUnderLine + height
                              : line - kOverLine * height - depthOf(note, height);
        for (const std::string& text : note.lines) {
            ops.push_back(TextOp{{column.low, baseline}, text, height, Align::Left, false, false});
            baseline += height * kLineSpacing;
        }
        ops.push_back(EndGroup{});
    }
    return ops;
}

}  // namespace shoulderline
