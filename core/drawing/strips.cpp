#include "core/drawing/strips.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/rod_labels.h"
#include "core/drawing/rods.h"
#include "core/drawing/title_block.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kStripWidth = 20.0;
constexpr double kLeadDown = 3.0;     // of a leader, straight on from its line
constexpr double kLeadAcross = 14.0;  // to the level of the labels
constexpr double kLabelHeight = 2.5;
constexpr double kLabelPitch = 4.5;
constexpr double kLongestLabel = 105.0;
constexpr double kNameHeight = 5.0;
constexpr double kMargin = 5.0;
constexpr double kOneLine = 0.01;

void mergeMarks(std::vector<StripMark>& marks) {
    std::stable_sort(marks.begin(), marks.end(), [](const StripMark& a, const StripMark& b) {
        return a.at < b.at;
    });
    std::vector<StripMark> merged;
    for (StripMark& mark : marks) {
        if (!merged.empty() && mark.at - merged.back().at < kOneLine) {
            if (merged.back().label.find(mark.label) == std::string::npos) {
                merged.back().label += "; " + mark.label;
            }
        } else {
            merged.push_back(std::move(mark));
        }
    }
    marks = std::move(merged);
}

std::string_view nameOf(RodKind kind) {
    switch (kind) {
        case RodKind::Heights:
            return "heights, from the floor";
        case RodKind::Widths:
            return "widths, from the middle";
        case RodKind::Depths:
            return "depths, from the front";
    }
    return "";
}

// The place, what lies there first, and as many of the others as there is room for.
std::string labelOf(const RodLine& line, const std::string& place, const TextMetrics& metrics) {
    constexpr double kRoomForMore = 14.0;
    std::string label = place + "  " + line.name;
    for (std::size_t i = 0; i < line.others.size(); ++i) {
        const std::string longer = label + "; " + line.others[i];
        if (metrics.width(longer, kLabelHeight, false) > kLongestLabel - kRoomForMore) {
            return label + "; " + std::to_string(line.others.size() - i) + " more";
        }
        label = longer;
    }
    return label;
}

}  // namespace

Sheet markedStrip(std::vector<StripMark> marks,
                  double from,
                  double to,
                  const std::string& title,
                  const TextMetrics& metrics) {
    mergeMarks(marks);
    Sheet sheet;
    sheet.title = title;
    sheet.lines = LineGroup::Fine;
    std::vector<Op>& ops = sheet.ops;
    for (const double y : {0.0, kStripWidth}) {
        ops.push_back(Stroke{{{from, y}, {to, y}}, LineRole::Visible});
    }
    ops.push_back(TextOp{{from, -3.0}, title, kNameHeight, Align::Left, false, true});
    std::vector<double> lines;
    std::transform(marks.begin(), marks.end(), std::back_inserter(lines), [](const StripMark& m) {
        return m.at;
    });
    constexpr double kFar = 1e6;
    const std::vector<double> places = spreadLabels(lines, kLabelPitch, -kFar, kFar);
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const double labels = kStripWidth + kLeadDown + kLeadAcross;
        ops.push_back(Stroke{{{marks[i].at, 0.0}, {marks[i].at, kStripWidth}}, LineRole::Visible});
        ops.push_back(Stroke{{{marks[i].at, kStripWidth},
                              {marks[i].at, kStripWidth + kLeadDown},
                              {places[i], labels}},
                             LineRole::Dimension});
        const FittedText label = fitText(marks[i].label, kLabelHeight, kLongestLabel, metrics);
        ops.push_back(TextOp{{places[i] + label.height / 2.0, labels + 1.2},
                             label.text,
                             label.height,
                             Align::Right,
                             true,
                             false});
    }
    const Rect bounds = boundsOf(ops, metrics);
    move(ops, Vec2{kMargin, kMargin} - bounds.min);
    sheet.size = bounds.size() + Vec2{2.0 * kMargin, 2.0 * kMargin};
    return sheet;
}

PrintJob rodsJob(const Piece& piece,
                 const ResolvedPiece& resolved,
                 const Paper& paper,
                 const TileOptions& options,
                 const std::string& date,
                 const TextMetrics& metrics) {
    std::vector<FullSizeDrawing> drawings;
    const auto shown = [&](double mm) { return showLength(Length::mm(mm), piece.style); };
    for (const RodKind kind : {RodKind::Heights, RodKind::Widths, RodKind::Depths}) {
        const Rod rod = rodOf(piece, resolved, kind);
        if (rod.lines.empty()) {
            continue;
        }
        std::vector<StripMark> marks;
        for (const RodLine& line : rod.lines) {
            marks.push_back({line.at, labelOf(line, shown(line.at), metrics)});
        }
        const std::string name(nameOf(kind));
        drawings.push_back(
            {markedStrip(std::move(marks), rod.from, rod.to, "rod of " + name, metrics),
             "rod of " + name,
             std::to_string(rod.lines.size()) + " lines",
             "length over all " + shown(rod.to - rod.from) + " " + unitsOf(piece)});
    }
    return tiledJob(
        piece, piece.name + ", rods", std::move(drawings), paper, options, date, metrics);
}

}  // namespace shoulderline
