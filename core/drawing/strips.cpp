#include "core/drawing/strips.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/rod_labels.h"
#include "core/drawing/rods.h"
#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kStripWidth = 20.0;
constexpr double kLeadDown = 3.0;     // of a leader, straight on from its line
constexpr double kLeadAcross = 14.0;  // to the level of the labels
constexpr double kLabelHeight = 2.5;
constexpr double kLabelPitch = 4.5;
constexpr double kLongestLabel = 105.0;
constexpr double kStripNameHeight = 5.0;
constexpr double kRoundStrip = 5.0;
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

// What the rod's zero is.
std::string_view zeroOf(RodKind kind) {
    switch (kind) {
        case RodKind::Heights:
            return "floor";
        case RodKind::Widths:
            return "middle";
        case RodKind::Depths:
            return "front";
    }
    return "";
}

// "14 3/4 left": how far from the zero, and which way where it has two.
std::string placeOn(RodKind kind, double at, const LengthStyle& style) {
    const std::string figure = letterLength(Length::mm(std::abs(at)), style);
    if (std::abs(at) < kOneLine) {
        return figure;
    }
    switch (kind) {
        case RodKind::Heights:
            return figure + (at < 0.0 ? " below" : "");
        case RodKind::Widths:
            return figure + (at < 0.0 ? " left" : " right");
        case RodKind::Depths:
            return figure + (at < 0.0 ? " before" : "");
    }
    return figure;
}

// The lines of a rod with all that lies there, and its zero, from which it is hooked on.
std::vector<StripMark> marksOf(const Rod& rod, const LengthStyle& style) {
    std::vector<StripMark> marks;
    bool hasZero = false;
    for (const RodLine& line : rod.lines) {
        const bool isZero = std::abs(line.at) < kOneLine;
        std::string label = placeOn(rod.kind, line.at, style) + "  ";
        label += isZero ? std::string(zeroOf(rod.kind)) + "; " + line.name : line.name;
        for (const std::string& other : line.others) {
            label += "; " + other;
        }
        marks.push_back({line.at, std::move(label)});
        hasZero = hasZero || isZero;
    }
    if (!hasZero) {
        marks.push_back(
            {0.0, placeOn(rod.kind, 0.0, style) + "  " + std::string(zeroOf(rod.kind))});
    }
    return marks;
}

}  // namespace

std::vector<Op> titleOps(Vec2 at, const std::string& text, double height) {
    return {BeginGroup{{}, std::string(kTitleGroup)},
            TextOp{at, text, height, Align::Left, false, true},
            EndGroup{}};
}

std::vector<Op> wordsOps(Vec2 at,
                         const std::vector<std::string>& lines,
                         double height,
                         double row) {
    std::vector<Op> ops{BeginGroup{{}, std::string(kWordsGroup)}};
    for (const std::string& line : lines) {
        ops.push_back(TextOp{at, line, height, Align::Left, false, false});
        at.y += row;
    }
    ops.push_back(EndGroup{});
    return ops;
}

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
    append(ops, titleOps({from, -3.0}, title, kStripNameHeight));
    // As many rows for each label as it takes, beside one another.
    std::vector<std::vector<std::string>> labels;
    std::vector<double> rowsAt;
    for (const StripMark& mark : marks) {
        labels.push_back(wrapText(mark.label, kLongestLabel, kLabelHeight, metrics));
        rowsAt.insert(rowsAt.end(), labels.back().size(), mark.at);
    }
    constexpr double kFar = 1e6;
    const std::vector<double> places = spreadLabels(rowsAt, kLabelPitch, -kFar, kFar);
    const double level = kStripWidth + kLeadDown + kLeadAcross;
    std::size_t row = 0;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const double at = marks[i].at;
        ops.push_back(Stroke{{{at, 0.0}, {at, kStripWidth}}, LineRole::Visible});
        if (!labels[i].empty()) {
            ops.push_back(
                Stroke{{{at, kStripWidth}, {at, kStripWidth + kLeadDown}, {places[row], level}},
                       LineRole::Dimension});
        }
        for (const std::string& text : labels[i]) {
            ops.push_back(TextOp{{places[row++] + kLabelHeight / 2.0, level + 1.2},
                                 text,
                                 kLabelHeight,
                                 Align::Right,
                                 true,
                                 false});
        }
    }
    const Rect bounds = boundsOf(ops, metrics);
    move(ops, Vec2{kRoundStrip, kRoundStrip} - bounds.min);
    sheet.size = bounds.size() + Vec2{2.0 * kRoundStrip, 2.0 * kRoundStrip};
    return sheet;
}

PrintJob rodsJob(const Piece& piece,
                 const ResolvedPiece& resolved,
                 const Paper& paper,
                 const TileOptions& options,
                 const std::string& date,
                 const TextMetrics& metrics) {
    std::vector<FullSizeDrawing> drawings;
    for (const RodKind kind : {RodKind::Heights, RodKind::Widths, RodKind::Depths}) {
        const Rod rod = rodOf(piece, resolved, kind);
        if (rod.lines.empty()) {
            continue;
        }
        std::vector<StripMark> marks = marksOf(rod, piece.style);
        const double from = std::min(rod.from, 0.0);
        const double to = std::max(rod.to, 0.0);
        const std::string name(nameOf(kind));
        const std::string lines = std::to_string(marks.size()) + " lines";
        drawings.push_back({markedStrip(std::move(marks), from, to, "rod of " + name, metrics),
                            "rod of " + name,
                            lines,
                            "length over all " + letterLength(Length::mm(to - from), piece.style) +
                                " " + unitsOf(piece)});
    }
    return tiledJob(
        piece, piece.name + ", rods", std::move(drawings), paper, options, date, metrics);
}

}  // namespace shoulderline
