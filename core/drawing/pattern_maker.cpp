#include "core/drawing/pattern_maker.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/dimensioning.h"
#include "core/drawing/hatching.h"
#include "core/drawing/pattern_arcs.h"
#include "core/drawing/pattern_holes.h"
#include "core/drawing/pattern_joints.h"
#include "core/drawing/patterns.h"
#include "core/drawing/smooth_runs.h"
#include "core/drawing/strips.h"
#include "core/drawing/wrapped_text.h"
#include "core/measure/length_text.h"
#include "core/resolve/end_plane.h"

namespace shoulderline {

namespace {

constexpr double kOverrun = 3.0;  // of a centre line past the blank
constexpr double kPatternHeight = 2.5;
constexpr double kToFigures = 4.0;          // from the blank
constexpr double kBetweenFigureRows = 2.0;  // of figures, and of their names
constexpr double kPatternNameHeight = 5.0;
constexpr double kRoundFigures = 0.5;
constexpr double kStraight = 0.005;  // mm that an edge may stray from straight

Stroke outlineOf(const Rect& rect, LineRole role) {
    std::vector<Vec2> points = ringOf(rect);
    points.push_back(points.front());
    return {std::move(points), role};
}

class PatternMaker {
  public:
    PatternMaker(const Piece& piece,
                 const ResolvedPiece& resolved,
                 const ResolvedPart& part,
                 const PatternPlane& plane,
                 const PatternLayout& layout,
                 const PatternWords& words,
                 const TextMetrics& metrics)
        : piece_(piece),
          resolved_(resolved),
          part_(part),
          plane_(plane),
          layout_(layout),
          words_(words),
          metrics_(metrics),
          flat_(plane.outline->flatten().points) {}

    [[nodiscard]] Sheet make() const;

  private:
    [[nodiscard]] std::string shown(double mm) const {
        return letterLength(Length::mm(mm), piece_.style);
    }
    [[nodiscard]] std::optional<HalfSpace> slantsAt(double x) const;
    void addSlantedEnd(double x, std::vector<Op>& ops) const;
    void addOutline(std::vector<Op>& ops) const;
    void addCentreLines(std::vector<Op>& ops) const;
    void addOffsets(std::vector<Op>& ops) const;
    void addSizes(std::vector<Op>& ops) const;
    void addWords(std::vector<Op>& ops) const;

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const ResolvedPart& part_;
    const PatternPlane& plane_;
    const PatternLayout& layout_;
    const PatternWords& words_;
    const TextMetrics& metrics_;
    std::vector<Vec2> flat_;
};

// The end at one of the blank's, where it is cut to a plane that is out of square in this view.
std::optional<HalfSpace> PatternMaker::slantsAt(double x) const {
    constexpr double kSquare = 1e-7;
    const bool isFar = x > plane_.blank.x / 2;
    const std::optional<HalfSpace> plane = endPlaneOf(part_.body, isFar ? End::Far : End::Start);
    return plane && std::abs(plane->normal[plane_.across]) > kSquare ? plane : std::nullopt;
}

// From one line of the outline to the other.
void PatternMaker::addSlantedEnd(double x, std::vector<Op>& ops) const {
    const HalfSpace plane = *slantsAt(x);
    const Vec2 normal{plane.normal.x, plane.normal[plane_.across]};
    const double size = norm(normal);
    const Vec2 along = Vec2{-normal.y, normal.x} * (1.0 / size);
    for (const Span& span :
         spansInside({flat_}, along, normal * (1.0 / size), plane.offset / size)) {
        const Vec2 foot = normal * (plane.offset / (size * size));
        ops.push_back(
            Stroke{{foot + along * span.from, foot + along * span.to}, LineRole::Visible});
    }
}

void PatternMaker::addOutline(std::vector<Op>& ops) const {
    ops.push_back(outlineOf({{0, 0}, plane_.blank}, LineRole::Neighbour));
    const std::vector<OutlineVertex>& ring = plane_.outline->vertices;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vec2 next = ring[(i + 1) % ring.size()].point;
        if (ring[i].bulge == 0.0 && ring[i].point.x == next.x && slantsAt(next.x)) {
            addSlantedEnd(next.x, ops);
        } else if (ring[i].bulge == 0.0) {
            ops.push_back(Stroke{{ring[i].point, next}, LineRole::Visible});
        } else {
            const OutlineArc arc = arcOf(ring[i], next);
            ops.push_back(ArcOp{arc.centre,
                                arc.radius,
                                Angle::radians(arc.start),
                                Angle::radians(arc.sweep),
                                LineRole::Visible});
        }
    }
}

void PatternMaker::addCentreLines(std::vector<Op>& ops) const {
    const Vec2 middle = plane_.blank * 0.5;
    ops.push_back(
        Stroke{{{-kOverrun, middle.y}, {plane_.blank.x + kOverrun, middle.y}}, LineRole::Centre});
    ops.push_back(Stroke{{{middle.x, -kOverrun / 2.0}, {middle.x, plane_.blank.y + kOverrun / 2.0}},
                         LineRole::Centre});
}

// At every station a fine line across, over it the distance along and, where the upper line is not
// straight, the offset of that; under it the offset of the lower line, where that is not straight.
// All offsets are taken from the blank's upper edge; below zero where the line lies beyond it.
void PatternMaker::addOffsets(std::vector<Op>& ops) const {
    struct Station {
        double along;
        double upper;
        double lower;
    };
    std::vector<Station> stations;
    bool isUpperShaped = false;
    bool isLowerShaped = false;
    for (const double along : stationsAlong(plane_.blank.x, unitOf(piece_.style))) {
        constexpr double kInside = 1e-4;  // an end is met just inside it
        const double at = std::clamp(along, kInside, plane_.blank.x - kInside);
        const std::vector<Span> spans = spansInside({flat_}, {0, 1}, {1, 0}, at);
        if (!spans.empty()) {
            stations.push_back({along, spans.front().from, spans.back().to});
            isUpperShaped = isUpperShaped || std::abs(spans.front().from) > kStraight;
            isLowerShaped = isLowerShaped || std::abs(spans.back().to - plane_.blank.y) > kStraight;
        }
    }
    const auto say = [&](double x, double y, const std::string& text, Align align) {
        ops.push_back(
            TextOp{{x + kPatternHeight / 2.0, y}, text, kPatternHeight, align, true, false});
    };
    // A row's name over its first figures, or under them, or before it: gives the room it takes up
    // or down.
    const auto name = [&](double edge, double length, double way, const std::string& text) {
        if (!layout_.areNamesOver) {
            const double middle = edge + way * std::min(length, 2.0 * kPatternHeight) / 2.0;
            ops.push_back(TextOp{{-kOverrun - 3.0, middle + kPatternHeight / 2.0},
                                 text,
                                 kPatternHeight,
                                 Align::Right,
                                 false,
                                 false});
            return 0.0;
        }
        const double baseline = edge + way * (length + 1.0) + (way > 0.0 ? kPatternHeight : 0.0);
        ops.push_back(TextOp{{0.0, baseline}, text, kPatternHeight, Align::Left, false, false});
        return kPatternHeight + 1.5;
    };
    const auto longest = [&](double Station::*figure) {
        double width = 0.0;
        for (const Station& station : stations) {
            width = std::max(width, metrics_.width(shown(station.*figure), kPatternHeight, false));
        }
        return width;
    };
    // Clear of an outline that goes beyond the blank, as a bow does.
    double top = 0.0;
    double bottom = plane_.blank.y;
    for (const Vec2 p : flat_) {
        top = std::min(top, p.y);
        bottom = std::max(bottom, p.y);
    }
    const double over = top - kToFigures;
    const double under = bottom + kToFigures;
    double alongRow = over;
    if (isUpperShaped) {
        const double length = longest(&Station::upper);
        alongRow -= length + kBetweenFigureRows +
                    name(over, length, -1.0, "upper line from the " + words_.datum);
    }
    for (const Station& station : stations) {
        ops.push_back(Stroke{{{station.along, over + 1.0},
                              {station.along, isLowerShaped ? under - 1.0 : station.lower}},
                             LineRole::Construction});
        say(station.along, alongRow, shown(station.along), Align::Left);
        if (isUpperShaped) {
            say(station.along, over, shown(station.upper), Align::Left);
        }
        if (isLowerShaped) {
            say(station.along, under, shown(station.lower), Align::Right);
        }
    }
    name(alongRow, longest(&Station::along), -1.0, "along");
    if (isLowerShaped) {
        name(under, longest(&Station::lower), 1.0, "lower line from the " + words_.datum);
    }
}

void PatternMaker::addSizes(std::vector<Op>& ops) const {
    const Rect drawn = boundsOf(ops, metrics_);
    const DimensionStyle style{2.5, 8.0, 6.0};
    const double floor = drawn.max.y;
    // Where figures stand under the ends, the lines of their stations lead down to here.
    const double depth = floor > plane_.blank.y + kToFigures + 0.5 ? 0.0 : floor - plane_.blank.y;
    if (layout_.hasLength) {
        append(ops,
               placeSizes({{0.0,
                            plane_.blank.x,
                            depth,
                            depth,
                            shown(plane_.blank.x),
                            plane_.blank.x,
                            part_.tenons.empty() ? "length" : "shoulder length",
                            {},
                            0}},
                          DimensionSide::Below,
                          floor,
                          style,
                          metrics_));
    }
    const double right = std::max(drawn.max.x, plane_.blank.x);
    FigureRoom room;
    room.high = plane_.blank.y;
    append(ops,
           placeSizes({{0.0,
                        plane_.blank.y,
                        right - plane_.blank.x,
                        right - plane_.blank.x,
                        shown(plane_.blank.y),
                        plane_.blank.y,
                        plane_.across == 1 ? "width" : "thickness",
                        {},
                        0}},
                      DimensionSide::RightOf,
                      right,
                      style,
                      metrics_,
                      room));
}

void PatternMaker::addWords(std::vector<Op>& ops) const {
    constexpr double kBeside = 8.0;
    constexpr double kOverTitle = 3.0;
    constexpr double kTitleRow = 1.6 * kPatternNameHeight;
    constexpr double kRow = 1.8 * kPatternHeight;
    const Rect drawn = boundsOf(ops, metrics_);
    std::vector<std::string> lines = words_.notes;
    for (std::string& line :
         addArcLetters(*plane_.outline, words_.datum, piece_.style, metrics_, ops)) {
        lines.push_back(std::move(line));
    }
    if (words_.withJoints) {
        const PartView view = partView(part_, plane_.seenOn);
        for (std::string& line : holeWordsOf(part_, view, words_.datum, piece_.style)) {
            lines.push_back(std::move(line));
        }
    }
    const Rect lettered = boundsOf(ops, metrics_);
    const auto addLines = [&](Vec2 at, double width) {
        std::vector<std::string> all;
        for (const std::string& text : lines) {
            for (std::string& line : wrapText(text, width, kPatternHeight, metrics_, "  ")) {
                all.push_back(std::move(line));
            }
        }
        append(ops, wordsOps(at, all, kPatternHeight, kRow));
    };
    const auto titleWithin = [&](double width) {
        // Titles are bold: a little wider than wrapped.
        return wrapText(words_.title, 0.9 * width, kPatternNameHeight, metrics_);
    };
    const auto addTitle = [&](Vec2 at, const std::vector<std::string>& rows) {
        for (const std::string& row : rows) {
            append(ops, titleOps(at, row, kPatternNameHeight));
            at.y += kTitleRow;
        }
    };
    switch (layout_.words) {
        case PatternWordsPlace::Around: {
            addLines({0.0, lettered.max.y + 4.0 + kPatternHeight}, layout_.widest);
            const std::vector<std::string> rows = titleWithin(layout_.widest);
            const double over = kOverTitle + kTitleRow * static_cast<double>(rows.size() - 1);
            addTitle({lettered.min.x, lettered.min.y - over}, rows);
            return;
        }
        case PatternWordsPlace::Beside: {
            const Vec2 at{drawn.max.x + kBeside, drawn.min.y + kPatternNameHeight};
            const std::vector<std::string> rows = titleWithin(layout_.widest);
            const double under = kTitleRow * static_cast<double>(rows.size() - 1);
            addLines(at + Vec2{0.0, under + kBetweenFigureRows + 2.0 * kPatternHeight},
                     layout_.widest);
            addTitle(at, rows);
            return;
        }
        case PatternWordsPlace::Margin: {
            const double width = -kOverrun - 3.0 - drawn.min.x;
            const Vec2 at{drawn.min.x, kToFigures + 2.0 * kPatternNameHeight};
            const std::vector<std::string> rows = titleWithin(width);
            addTitle(at, rows);
            addLines(at + Vec2{0.0, kTitleRow * static_cast<double>(rows.size())}, width);
            return;
        }
    }
}

Sheet PatternMaker::make() const {
    Sheet sheet;
    sheet.lines = LineGroup::Fine;
    std::vector<Op>& ops = sheet.ops;
    const auto index = std::find_if(resolved_.parts.begin(),
                                    resolved_.parts.end(),
                                    [&](const ResolvedPart& p) { return &p == &part_; });
    ops.push_back(
        BeginGroup{{SubjectKind::Part, static_cast<std::size_t>(index - resolved_.parts.begin())},
                   part_.of + ", " + std::string(wordFor(plane_.seenOn))});
    addOutline(ops);
    if (words_.withJoints) {
        append(ops, patternJoints(resolved_, part_, plane_.seenOn, flat_));
    }
    addCentreLines(ops);
    ops.push_back(EndGroup{});
    ops = withHiddenRunsJoined(std::move(ops));
    addOffsets(ops);
    addSizes(ops);
    addWords(ops);
    const Rect all = boundsOf(ops, metrics_);
    move(ops, Vec2{kRoundFigures, kRoundFigures} - all.min);
    sheet.size = all.size() + Vec2{2.0 * kRoundFigures, 2.0 * kRoundFigures};
    return sheet;
}

}  // namespace

std::vector<PatternPlane> patternPlanes(const ResolvedPart& part) {
    const Vec3 blank = part.bodyBox().size();
    std::vector<PatternPlane> planes;
    if (part.body.face != Outline::rectangle(blank.x, blank.y)) {
        planes.push_back({&part.body.face, {blank.x, blank.y}, 1, Face::FaceSide});
    }
    if (part.body.edge) {
        planes.push_back({&*part.body.edge, {blank.x, blank.z}, 2, Face::BackEdge});
    }
    return planes;
}

Sheet makePattern(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const ResolvedPart& part,
                  const PatternPlane& plane,
                  const PatternLayout& layout,
                  const PatternWords& words,
                  const TextMetrics& metrics) {
    return PatternMaker(piece, resolved, part, plane, layout, words, metrics).make();
}

}  // namespace shoulderline
