#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/dimensioning.h"
#include "core/drawing/key_heights.h"
#include "core/drawing/part_numbers.h"
#include "core/drawing/parts_list.h"
#include "core/drawing/piece_view.h"
#include "core/drawing/scales.h"
#include "core/drawing/sheets.h"
#include "core/drawing/smooth_runs.h"
#include "core/drawing/title_block.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kBetweenElevations = 14.0;
constexpr double kSameLevel = 0.001;  // mm
// Small, so that each has room for its word.
constexpr DimensionStyle kHeightsStyle{2.5, 8.0, 5.6};
class Composer {
  public:
    Composer(const Piece& piece, const ResolvedPiece& resolved, const TextMetrics& metrics)
        : piece_(piece),
          resolved_(resolved),
          metrics_(metrics),
          elevations_(elevationsOf(resolved, {false, true})),
          front_(elevations_[0]),
          side_(elevations_[1]),
          plan_(elevations_[2]),
          heights_(keyHeights(piece, resolved)) {}

    // All views at `scale` in projection, with the list of parts beside them or in the corner that
    // they leave. Tells the places on the parts in sight by `spots`.
    [[nodiscard]] std::vector<Op> compose(double scale,
                                          bool listBeside,
                                          bool withList,
                                          std::vector<PartSpot>& spots) const {
        const bool isThird = piece_.unit == Unit::Inch;
        const std::vector<Op> front = frontView(scale);
        const std::vector<Op> side = sideView(scale);
        const std::vector<Op> plan = planView(scale);
        const Rect f = boundsOf(front, metrics_);
        const Rect s = boundsOf(side, metrics_);
        const Rect p = boundsOf(plan, metrics_);

        std::vector<Op> ops = front;
        std::vector<Op> placed = side;
        const double sideX = isThird ? f.max.x + kBetweenElevations - s.min.x
                                     : f.min.x - kBetweenElevations - s.max.x;
        move(placed, {sideX, 0.0});
        append(ops, std::move(placed));
        placed = plan;
        const double planY = isThird ? f.min.y - kBetweenElevations - p.max.y
                                     : f.max.y + kBetweenElevations - p.min.y;
        move(placed, {0.0, planY});
        append(ops, std::move(placed));
        spots.clear();
        addSpots(front_, scale, {}, spots);
        addSpots(side_, scale, {sideX, 0.0}, spots);
        addSpots(plan_, scale, {0.0, planY}, spots);

        if (!withList) {
            return ops;
        }
        std::vector<Op> list = partsList(piece_, resolved_, metrics_);
        const Rect l = boundsOf(list, metrics_);
        const Rect all = boundsOf(ops, metrics_);
        if (listBeside) {
            move(list,
                 {isThird ? all.max.x + kBetweenElevations - l.min.x
                          : all.min.x - kBetweenElevations - l.max.x,
                  all.min.y - l.min.y});
        } else if (isThird) {
            move(list,
                 {std::max(f.max.x, p.max.x) + kBetweenElevations - l.min.x,
                  std::min(all.min.y, s.min.y - kBetweenElevations - l.size().y) - l.min.y});
        } else {
            move(list,
                 {std::min(f.min.x, p.min.x) - kBetweenElevations - l.max.x,
                  s.max.y + kBetweenElevations - l.min.y});
        }
        append(ops, std::move(list));
        return ops;
    }

  private:
    [[nodiscard]] std::string shown(double mm) const {
        return letterLength(Length::mm(mm), piece_.style);
    }

    // The piece's middle and floor at (0, 0), y down.
    [[nodiscard]] std::vector<Op> frontView(double scale) const {
        std::vector<Op> ops = elevationOps(resolved_, front_, scale);
        const double top = -front_.max.y * scale;
        const double floor = -front_.min.y * scale;
        const double left = front_.min.x * scale;
        const double right = front_.max.x * scale;
        append(ops,
               placeSizes({{left,
                            right,
                            0.0,
                            0.0,
                            shown(front_.max.x - front_.min.x),
                            front_.max.x - front_.min.x,
                            "width over all",
                            {},
                            0}},
                          DimensionSide::Below,
                          floor,
                          {},
                          metrics_));
        std::vector<SizeToPlace> sizes{{top,
                                        floor,
                                        0.0,
                                        0.0,
                                        overAll(scale),
                                        front_.max.y - front_.min.y,
                                        "height over all",
                                        {},
                                        1}};
        for (const KeyHeight& height : heights_) {
            if (!isTop(height) && front_.min.y > -kSameLevel) {
                sizes.push_back({-height.at * scale,
                                 floor,
                                 0.0,
                                 0.0,
                                 lettered(height, scale),
                                 height.at,
                                 height.name,
                                 {},
                                 0});
            }
        }
        append(ops,
               placeSizes(std::move(sizes), DimensionSide::LeftOf, left, kHeightsStyle, metrics_));
        return ops;
    }

    // The height over all, with the word of what it is the height of where it is a key one: a
    // stool's seat.
    [[nodiscard]] std::string overAll(double scale) const {
        const double high = front_.max.y - front_.min.y;
        const auto top = std::find_if(heights_.begin(), heights_.end(), [&](const KeyHeight& one) {
            return isTop(one) && front_.min.y > -kSameLevel;
        });
        return top == heights_.end() ? shown(high) : lettered(*top, scale);
    }
    [[nodiscard]] bool isTop(const KeyHeight& height) const {
        return std::abs(height.at - front_.max.y) <= kSameLevel;
    }

    // With its word where the line has room for it between its arrows.
    [[nodiscard]] std::string lettered(const KeyHeight& height, double scale) const {
        const std::string figure = shown(height.at);
        const std::string full = height.word.empty() ? figure : height.word + " " + figure;
        const double wide = metrics_.width(full, kHeightsStyle.height, false);
        return wide + 2.0 * kHeightsStyle.height <= height.at * scale ? full : figure;
    }

    [[nodiscard]] std::vector<Op> sideView(double scale) const {
        std::vector<Op> ops = elevationOps(resolved_, side_, scale);
        append(ops, stationLabels(side_.stations, scale, metrics_));
        const double depth = side_.max.x - side_.min.x;
        append(ops,
               placeSizes({{side_.min.x * scale,
                            side_.max.x * scale,
                            0.0,
                            0.0,
                            shown(depth),
                            depth,
                            "depth over all",
                            {},
                            0}},
                          DimensionSide::Below,
                          -side_.min.y * scale,
                          {},
                          metrics_));
        return ops;
    }

    [[nodiscard]] std::vector<Op> planView(double scale) const {
        return elevationOps(resolved_, plan_, scale);
    }

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const TextMetrics& metrics_;
    std::array<Elevation, 3> elevations_;
    const Elevation& front_;
    const Elevation& side_;
    const Elevation& plan_;
    std::vector<KeyHeight> heights_;
};

}  // namespace

std::vector<Op> elevationOps(const ResolvedPiece& resolved,
                             const Elevation& elevation,
                             double scale) {
    const auto onSheet = [&](Vec2 p) { return Vec2{p.x * scale, -p.y * scale}; };
    std::vector<Op> ops;
    // What is nearer is painted over what is farther.
    for (auto it = elevation.nearestFirst.rbegin(); it != elevation.nearestFirst.rend(); ++it) {
        const std::vector<Vec2>& outline = elevation.outlines[*it];
        if (outline.empty()) {
            continue;
        }
        Fill fill;
        fill.tint = true;
        for (const Vec2& p : outline) {
            fill.points.push_back(onSheet(p));
        }
        ops.push_back(BeginGroup{{SubjectKind::Part, *it}, resolved.parts[*it].name});
        ops.push_back(std::move(fill));
        ops.push_back(EndGroup{});
    }
    std::vector<ElevationLine> lines = elevation.lines;
    std::stable_sort(
        lines.begin(), lines.end(), [](const ElevationLine& a, const ElevationLine& b) {
            return a.part < b.part;
        });
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i == 0 || lines[i].part != lines[i - 1].part) {
            ops.push_back(
                BeginGroup{{SubjectKind::Part, lines[i].part}, resolved.parts[lines[i].part].name});
        }
        ops.push_back(Stroke{{onSheet(lines[i].a), onSheet(lines[i].b)},
                             lines[i].isVisible ? LineRole::Visible : LineRole::Hidden});
        if (i + 1 == lines.size() || lines[i + 1].part != lines[i].part) {
            ops.push_back(EndGroup{});
        }
    }
    ops = withHiddenRunsJoined(std::move(ops));
    append(ops, swungOps(resolved, elevation.stations, scale));
    return ops;
}

Sheet pieceSheet(const Piece& piece,
                 const ResolvedPiece& resolved,
                 const SheetFrame& frame,
                 const TextMetrics& metrics) {
    const Rect space = drawingSpace(frame.paper);
    constexpr double kClear = 4.0;
    const Vec2 room = space.size() - Vec2{2.0 * kClear, 2.0 * kClear};
    const Composer composer(piece, resolved, metrics);
    double scale = frame.scale;
    std::vector<Op> drawing;
    std::vector<PartSpot> spots;
    Rect bounds;
    const Vec2 list = boundsOf(partsList(piece, resolved, metrics), metrics).size();
    const bool withList = frame.withList && list.x <= room.x && list.y <= room.y;
    const auto fitsAt = [&](double candidate) {
        for (const bool listBeside : {false, true}) {
            scale = candidate;
            drawing = composer.compose(candidate, listBeside, withList, spots);
            bounds = boundsOf(drawing, metrics);
            if (bounds.size().x <= room.x && bounds.size().y <= room.y) {
                return true;
            }
        }
        return false;
    };
    const std::vector<double> scales =
        scale > 0.0 ? std::vector<double>{scale} : viewScales(piece.unit);
    for (const double candidate : scales) {
        if (fitsAt(candidate)) {
            break;
        }
    }
    Sheet sheet;
    sheet.title = piece.name;
    sheet.size = frame.paper;
    sheet.lines = LineGroup::Medium;
    TitleBlock block = titleBlock("front, side and plan", piece, frame);
    const std::size_t kinds = partKinds(resolved).size();
    block.quantity = std::to_string(resolved.parts.size()) + " parts of " + std::to_string(kinds) +
                     " kinds, " + std::to_string(resolved.joints.size()) + " joints";
    block.material = "see the list of parts";
    const Vec3 over = resolved.bounds.size();
    setSizeOverAll(block, over, piece);
    block.scale = scaleText(scale);
    sheet.ops = frameAndTitle(frame.paper, block, metrics);
    addInMiddle(std::move(drawing), bounds, resolved, std::move(spots), space, metrics, sheet.ops);
    return sheet;
}

}  // namespace shoulderline
