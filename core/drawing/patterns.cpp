#include "core/drawing/patterns.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/dimensioning.h"
#include "core/drawing/form_pattern.h"
#include "core/drawing/hatching.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/pattern_arcs.h"
#include "core/drawing/pattern_joints.h"
#include "core/drawing/strips.h"
#include "core/drawing/title_block.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kOverrun = 5.0;  // of a centre line past the blank
constexpr double kHeight = 2.5;
constexpr double kRowRoom = 16.0;  // for a row of figures that read upwards
constexpr double kMargin = 4.0;
constexpr double kSame = 0.005;  // mm that an edge may stray from straight

Stroke outlineOf(const Rect& rect, LineRole role) {
    std::vector<Vec2> points = ringOf(rect);
    points.push_back(points.front());
    return {std::move(points), role};
}

// One outline of a part and the plane that it lies in: x along the part, `across` the axis of its
// frame that runs down the sheet.
struct Plane {
    const Outline* outline = nullptr;
    Vec2 blank;
    int across = 1;
    Face seenOn = Face::FaceSide;
    std::string datum;  // the straight edge that offsets are taken from
};

class PatternMaker {
  public:
    PatternMaker(const Piece& piece,
                 const ResolvedPiece& resolved,
                 const ResolvedPart& part,
                 const Plane& plane,
                 const TextMetrics& metrics)
        : piece_(piece),
          resolved_(resolved),
          part_(part),
          plane_(plane),
          metrics_(metrics),
          flat_(plane.outline->flatten().points) {}

    [[nodiscard]] Sheet make() const;

  private:
    [[nodiscard]] std::string shown(double mm) const {
        return showLength(Length::mm(mm), piece_.style);
    }
    void addOutline(std::vector<Op>& ops) const;
    void addCentreLines(std::vector<Op>& ops) const;
    void addOffsets(std::vector<Op>& ops) const;
    void addSizes(std::vector<Op>& ops) const;

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const ResolvedPart& part_;
    const Plane& plane_;
    const TextMetrics& metrics_;
    std::vector<Vec2> flat_;
};

void PatternMaker::addOutline(std::vector<Op>& ops) const {
    ops.push_back(outlineOf({{0, 0}, plane_.blank}, LineRole::Neighbour));
    const std::vector<OutlineVertex>& ring = plane_.outline->vertices;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vec2 next = ring[(i + 1) % ring.size()].point;
        if (ring[i].bulge == 0.0) {
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
// All offsets are taken from the blank's upper edge.
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
            isUpperShaped = isUpperShaped || spans.front().from > kSame;
            isLowerShaped = isLowerShaped || spans.back().to < plane_.blank.y - kSame;
        }
    }
    const auto say = [&](double x, double y, const std::string& text, Align align) {
        ops.push_back(TextOp{{x + kHeight / 2.0, y}, text, kHeight, align, true, false});
    };
    const auto name = [&](double y, const std::string& text) {
        ops.push_back(TextOp{{-kOverrun - 6.0, y}, text, kHeight, Align::Right, false, false});
    };
    const double over = -kOverrun;
    const double alongRow = isUpperShaped ? over - kRowRoom : over;
    const double under = plane_.blank.y + kOverrun;
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
    name(alongRow - 3.0, "along");
    if (isUpperShaped) {
        name(over - 4.0, "upper line from the " + plane_.datum);
    }
    if (isLowerShaped) {
        name(under + 6.0, "lower line from the " + plane_.datum);
    }
}

void PatternMaker::addSizes(std::vector<Op>& ops) const {
    const Rect drawn = boundsOf(ops, metrics_);
    const DimensionStyle style{2.5, 8.0, 6.0};
    const double floor = drawn.max.y;
    // Where figures stand under the ends, the lines of their stations lead down to here.
    const double depth = floor > plane_.blank.y + kOverrun + 0.5 ? 0.0 : floor - plane_.blank.y;
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

Sheet PatternMaker::make() const {
    Sheet sheet;
    sheet.lines = LineGroup::Fine;
    std::vector<Op>& ops = sheet.ops;
    ops.push_back(
        BeginGroup{{SubjectKind::Part, 0}, part_.of + ", " + std::string(wordFor(plane_.seenOn))});
    std::get<BeginGroup>(ops.back()).subject.index =
        static_cast<std::size_t>(std::find_if(resolved_.parts.begin(),
                                              resolved_.parts.end(),
                                              [&](const ResolvedPart& p) { return &p == &part_; }) -
                                 resolved_.parts.begin());
    addOutline(ops);
    append(ops, patternJoints(resolved_, part_, plane_.seenOn, flat_));
    addCentreLines(ops);
    ops.push_back(EndGroup{});
    addOffsets(ops);
    addSizes(ops);
    append(ops, arcNotes(*plane_.outline, plane_.datum, piece_.style, ops, metrics_));
    const Rect bounds = boundsOf(ops, metrics_);
    ops.push_back(TextOp{{bounds.min.x, bounds.min.y - 3.0},
                         part_.of + ", pattern of the " + std::string(wordFor(plane_.seenOn)),
                         5.0,
                         Align::Left,
                         false,
                         true});
    const Rect all = boundsOf(ops, metrics_);
    move(ops, Vec2{kMargin, kMargin} - all.min);
    sheet.size = all.size() + Vec2{2.0 * kMargin, 2.0 * kMargin};
    return sheet;
}

}  // namespace

std::vector<double> stationsAlong(double length, Unit unit) {
    constexpr double kMost = 32.0;
    const std::vector<double> steps =
        unit == Unit::Inch ? std::vector<double>{12.7, 25.4, 50.8, 76.2, 152.4, 304.8}
                           : std::vector<double>{10, 20, 25, 50, 100, 250};
    const auto step =
        std::find_if(steps.begin(), steps.end(), [&](double s) { return length / s <= kMost; });
    const double interval = step == steps.end() ? length / kMost : *step;
    std::vector<double> stations;
    // One that falls short of the end by less than its figure is high would run into the end's.
    for (int i = 0; i * interval < length - 2.0 * kHeight; ++i) {
        stations.push_back(i * interval);
    }
    stations.push_back(length);
    return stations;
}

std::vector<Pattern> patternsOf(const Piece& piece,
                                const ResolvedPiece& resolved,
                                const PartKind& kind,
                                const TextMetrics& metrics) {
    const ResolvedPart& part = resolved.parts[kind.parts.front()];
    const Vec3 blank = part.bodyBox().size();
    std::vector<Plane> planes;
    if (part.body.face != Outline::rectangle(blank.x, blank.y)) {
        planes.push_back({&part.body.face, {blank.x, blank.y}, 1, Face::FaceSide, "face edge"});
    }
    if (part.body.edge) {
        planes.push_back({&*part.body.edge, {blank.x, blank.z}, 2, Face::BackEdge, "face side"});
    }
    std::vector<Pattern> patterns;
    for (const Plane& plane : planes) {
        Sheet sheet = PatternMaker(piece, resolved, part, plane, metrics).make();
        sheet.title = kind.name + ", " + std::string(wordFor(plane.seenOn));
        patterns.push_back({sheet.title, std::move(sheet)});
    }
    if (part.bend && part.bend->method != BendMethod::Sawn) {
        Sheet sheet = formPattern(piece, resolved, part, metrics);
        sheet.title = kind.name + ", form";
        patterns.push_back({sheet.title, std::move(sheet)});
    }
    return patterns;
}

PrintJob patternsJob(const Piece& piece,
                     const ResolvedPiece& resolved,
                     const Paper& paper,
                     const TileOptions& options,
                     const std::string& date,
                     const TextMetrics& metrics) {
    std::vector<FullSizeDrawing> drawings;
    for (const PartKind& kind : partKinds(resolved)) {
        for (Pattern& pattern : patternsOf(piece, resolved, kind, metrics)) {
            drawings.push_back({std::move(pattern.drawing),
                                "pattern of " + pattern.name,
                                quantityText(resolved, kind),
                                "finished size over all " +
                                    finishedSize(piece, resolved.parts[kind.parts.front()]) + " " +
                                    unitsOf(piece)});
        }
    }
    return tiledJob(
        piece, piece.name + ", patterns", std::move(drawings), paper, options, date, metrics);
}

}  // namespace shoulderline
