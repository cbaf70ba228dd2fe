#include "core/drawing/part_numbers.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/overloaded.h"
#include "core/drawing/pictorial.h"
#include "core/drawing/trade_marks.h"

namespace shoulderline {

namespace {

constexpr double kRadius = 3.2;
constexpr double kNumberHeight = 2.5;
constexpr double kRoundCircle = 0.8;  // round a circle
constexpr double kArrow = 2.0;
constexpr double kRoundSpot = 0.7;    // of a dot's middle from any line
constexpr double kBetweenTips = 2.5;  // so that no two leaders seem to meet
constexpr double kShortestPointedAt = 0.8;
constexpr double kShortestOfAny = 0.2;  // where a kind has none as long as that
constexpr double kForEdge =
    6.0;  // an edge inside the outline is pointed at only for want of others
constexpr double kForHidden = 100.0;  // and a hidden one where the kind has no other
constexpr double kAround = 11.0;      // how far outside the picture the middle of a circle may lie

// Which places of the paper are taken, in squares of half a millimetre, and how many of them are in
// any rectangle.
class TakenPlaces {
  public:
    explicit TakenPlaces(const Rect& area)
        : corner_(area.min),
          columns_(static_cast<std::size_t>(std::ceil(area.size().x / kCell)) + 1),
          rows_(static_cast<std::size_t>(std::ceil(area.size().y / kCell)) + 1),
          taken_(columns_ * rows_, 0),
          sums_((columns_ + 1) * (rows_ + 1), 0) {}

    void takeLine(Vec2 a, Vec2 b) {
        const int steps = static_cast<int>(norm(b - a) / (kCell / 2.0)) + 1;
        for (int i = 0; i <= steps; ++i) {
            const Vec2 p = a + (b - a) * (static_cast<double>(i) / steps);
            if (const std::optional<std::size_t> cell = cellAt(p)) {
                taken_[*cell] = 1;
            }
        }
    }
    void takeSquare(Vec2 centre, double half) {
        take(Rect{centre - Vec2{half, half}, centre + Vec2{half, half}});
    }
    void take(const Rect& rect) {
        for (double y = rect.min.y; y <= rect.max.y + kCell / 2.0; y += kCell / 2.0) {
            takeLine({rect.min.x, std::min(y, rect.max.y)}, {rect.max.x, std::min(y, rect.max.y)});
        }
    }
    void take(const std::vector<Vec2>& points) {
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            takeLine(points[i], points[i + 1]);
        }
    }
    void take(const std::vector<Op>& ops, const TextMetrics& metrics) {
        for (const Op& op : ops) {
            std::visit(Overloaded{
                           [&](const Stroke& stroke) { take(stroke.points); },
                           [](const Fill&) {},
                           [&](const ArcOp& arc) { takeSquare(arc.centre, arc.radius); },
                           [&](const TextOp& text) { takeWords(boundsOf(text, metrics)); },
                           [&](const DimensionOp& dimension) {
                               const DimensionParts parts = partsOf(dimension, metrics);
                               for (const Stroke& stroke : parts.strokes) {
                                   take(stroke.points);
                               }
                               takeWords(boundsOf(parts.figure, metrics));
                           },
                           [](const BeginGroup&) {},
                           [](const EndGroup&) {},
                       },
                       op);
        }
    }
    // Lettering, which no leader may strike out.
    void takeWords(const Rect& rect) {
        take(rect);
        words_.push_back(rect);
    }
    [[nodiscard]] bool isOverWords(Vec2 a, Vec2 b) const {
        constexpr double kRoundWords = 0.5;
        return std::any_of(words_.begin(), words_.end(), [&](const Rect& rect) {
            double from = 0.0;
            double to = 1.0;
            const auto narrow = [&](double start, double way, double low, double high) {
                if (std::abs(way) < 1e-9) {
                    to = start < low || start > high ? -1.0 : to;
                    return;
                }
                const double p = (low - start) / way;
                const double q = (high - start) / way;
                from = std::max(from, std::min(p, q));
                to = std::min(to, std::max(p, q));
            };
            narrow(a.x, b.x - a.x, rect.min.x - kRoundWords, rect.max.x + kRoundWords);
            narrow(a.y, b.y - a.y, rect.min.y - kRoundWords, rect.max.y + kRoundWords);
            return from <= to;
        });
    }
    // To be called once lines have been taken, before isFree() is asked.
    void sumUp() {
        for (std::size_t r = 0; r < rows_; ++r) {
            int row = 0;
            for (std::size_t c = 0; c < columns_; ++c) {
                row += taken_[r * columns_ + c];
                sums_[(r + 1) * (columns_ + 1) + c + 1] = sums_[r * (columns_ + 1) + c + 1] + row;
            }
        }
    }
    [[nodiscard]] bool isFree(Vec2 centre, double half) const {
        const double left = (centre.x - half - corner_.x) / kCell;
        const double top = (centre.y - half - corner_.y) / kCell;
        const double right = (centre.x + half - corner_.x) / kCell;
        const double bottom = (centre.y + half - corner_.y) / kCell;
        if (left < 0.0 || top < 0.0 || right >= static_cast<double>(columns_) ||
            bottom >= static_cast<double>(rows_)) {
            return false;
        }
        const auto at = [&](double row, double column) {
            return sums_[static_cast<std::size_t>(row) * (columns_ + 1) +
                         static_cast<std::size_t>(column)];
        };
        const double r = std::floor(right) + 1.0;
        const double b = std::floor(bottom) + 1.0;
        return at(b, r) - at(b, left) - at(top, r) + at(top, left) == 0;
    }
    // How many taken squares a line meets.
    [[nodiscard]] int takenAlong(Vec2 a, Vec2 b) const {
        const int steps = static_cast<int>(norm(b - a) / kCell) + 1;
        int count = 0;
        for (int i = 0; i <= steps; ++i) {
            const std::optional<std::size_t> cell =
                cellAt(a + (b - a) * (static_cast<double>(i) / steps));
            count += cell ? taken_[*cell] : 0;
        }
        return count;
    }

  private:
    static constexpr double kCell = 0.5;

    [[nodiscard]] std::optional<std::size_t> cellAt(Vec2 p) const {
        const double column = std::floor((p.x - corner_.x) / kCell);
        const double row = std::floor((p.y - corner_.y) / kCell);
        if (column < 0.0 || row < 0.0 || column >= static_cast<double>(columns_) ||
            row >= static_cast<double>(rows_)) {
            return std::nullopt;
        }
        return static_cast<std::size_t>(row) * columns_ + static_cast<std::size_t>(column);
    }

    Vec2 corner_;
    std::size_t columns_;
    std::size_t rows_;
    std::vector<int> taken_;
    std::vector<int> sums_;
    std::vector<Rect> words_;
};

struct PlacedNumber {
    Vec2 tip;
    Vec2 centre;
    double cost = 1e18;
    bool isOnFace = false;
};

// What has been placed already.
struct PlacedSoFar {
    std::vector<Vec2> numbers;  // by their middles
    std::vector<Vec2> tips;

    [[nodiscard]] bool hasTipBy(Vec2 p) const {
        return std::any_of(
            tips.begin(), tips.end(), [p](Vec2 tip) { return norm(p - tip) < kBetweenTips; });
    }
};

// The best place for a circle that points at `tip`, its leader clear of the numbers that stand
// already. `across` is a way that the leader may not run along, or zero.
void tryPlacesAt(Vec2 tip,
                 Vec2 across,
                 double dearer,
                 const TakenPlaces& places,
                 const PlacedSoFar& placed,
                 PlacedNumber& best) {
    constexpr int kWays = 16;
    constexpr std::array<double, 10> kDistances{
        5.0, 7.0, 9.5, 12.5, 16.0, 20.0, 25.0, 32.0, 40.0, 50.0};
    constexpr double kLeastSlant = 0.35;
    constexpr double kPerCrossing = 3.0;
    constexpr double kOverWords = 1e4;  // a leader through a number or a figure strikes it out
    const bool isOnFace = norm(across) < 0.5;
    for (int i = 0; i < kWays; ++i) {
        const double angle = 2.0 * 3.14159265358979 * (i + 0.5) / kWays;
        const Vec2 way{std::cos(angle), std::sin(angle)};
        if (!isOnFace && std::abs(cross(way, across)) < kLeastSlant) {
            continue;
        }
        for (const double distance : kDistances) {
            const Vec2 centre = tip + way * distance;
            const double cost = dearer + distance;
            if (cost >= best.cost || !places.isFree(centre, kRadius + kRoundCircle)) {
                continue;
            }
            const bool isOverNumber =
                std::any_of(placed.numbers.begin(), placed.numbers.end(), [&](Vec2 number) {
                    const double nearest = std::clamp(dot(number - tip, way), 0.0, distance);
                    return norm(number - (tip + way * nearest)) < kRadius + kRoundCircle / 2.0;
                });
            const bool isStriking = isOverNumber || places.isOverWords(tip, centre);
            const double crossed = cost +
                                   kPerCrossing * places.takenAlong(tip + way * 1.0, centre) +
                                   (isStriking ? kOverWords : 0.0);
            if (crossed < best.cost) {
                best = {tip, centre, crossed, isOnFace};
            }
        }
    }
}

void addNumber(const PlacedNumber& placed, std::size_t number, std::vector<Op>& ops) {
    const Vec2 way = (placed.centre - placed.tip) * (1.0 / norm(placed.centre - placed.tip));
    ops.push_back(Stroke{{placed.tip, placed.centre - way * kRadius}, LineRole::Dimension});
    ops.push_back(placed.isOnFace ? Op{leaderDot(placed.tip)}
                                  : Op{arrowhead(placed.tip, placed.centre, kArrow)});
    ops.push_back(ArcOp{placed.centre, kRadius, {}, Angle::degrees(360.0), LineRole::Dimension});
    ops.push_back(TextOp{placed.centre + Vec2{0.0, kNumberHeight / 2.0},
                         std::to_string(number),
                         kNumberHeight,
                         Align::Centre,
                         false,
                         false});
}

}  // namespace

namespace {

// A line that a number may point at.
struct Target {
    Vec2 a;
    Vec2 b;
    std::size_t part = 0;
    double dearer = 0.0;
};

std::vector<Op> placeNumbers(const ResolvedPiece& resolved,
                             const std::vector<Target>& targets,
                             const std::vector<PartSpot>& spots,
                             TakenPlaces places) {
    constexpr double kForLength = 0.15;
    std::vector<Op> ops;
    PlacedSoFar placed;
    const TakenPlaces drawn = [&] {
        TakenPlaces all = places;
        all.sumUp();
        return all;
    }();
    const std::vector<PartKind> kinds = partKinds(resolved);
    for (std::size_t k = 0; k < kinds.size(); ++k) {
        places.sumUp();
        PlacedNumber best;
        const auto isOfKind = [&](std::size_t part) {
            return std::find(kinds[k].parts.begin(), kinds[k].parts.end(), part) !=
                   kinds[k].parts.end();
        };
        for (const PartSpot& spot : spots) {
            if (isOfKind(spot.part) && drawn.isFree(spot.at, kRoundSpot) &&
                !placed.hasTipBy(spot.at)) {
                tryPlacesAt(spot.at, {}, 0.0, places, placed, best);
            }
        }
        const auto tryLongerThan = [&](double least) {
            for (const Target& target : targets) {
                const double length = norm(target.b - target.a);
                const Vec2 middle = (target.a + target.b) * 0.5;
                if (isOfKind(target.part) && length > least) {
                    tryPlacesAt(middle,
                                (target.b - target.a) * (1.0 / length),
                                target.dearer - kForLength * std::min(length, 30.0) +
                                    (placed.hasTipBy(middle) ? kForHidden : 0.0),
                                places,
                                placed,
                                best);
                }
            }
        };
        for (const double least : {kShortestPointedAt, kShortestOfAny}) {
            if (best.cost >= 1e17) {
                tryLongerThan(least);
            }
        }
        if (best.cost < 1e17) {
            ops.push_back(BeginGroup{{SubjectKind::Part, kinds[k].parts.front()}, kinds[k].name});
            addNumber(best, k + 1, ops);
            ops.push_back(EndGroup{});
            places.takeSquare(best.centre, kRadius);
            placed.numbers.push_back(best.centre);
            placed.tips.push_back(best.tip);
            places.takeLine(best.tip, best.centre);
        }
    }
    return ops;
}

}  // namespace

std::vector<Op> partNumbers(const ResolvedPiece& resolved,
                            const Picture& picture,
                            double scale,
                            const TextMetrics&) {
    const auto onSheet = [&](Vec2 p) { return Vec2{p.x * scale, -p.y * scale}; };
    const double around = kAround + kRadius + kRoundCircle + 1.0;
    TakenPlaces places(
        {Vec2{picture.bounds.min.x * scale, -picture.bounds.max.y * scale} - Vec2{around, around},
         Vec2{picture.bounds.max.x * scale, -picture.bounds.min.y * scale} + Vec2{around, around}});
    std::vector<Target> targets;
    for (const PictureLine& line : picture.lines) {
        places.takeLine(onSheet(line.a), onSheet(line.b));
        if (line.kind != PictureLineKind::Way) {
            targets.push_back({onSheet(line.a),
                               onSheet(line.b),
                               line.part,
                               line.kind == PictureLineKind::Edge ? kForEdge : 0.0});
        }
    }
    std::vector<PartSpot> spots = picture.spots;
    for (PartSpot& spot : spots) {
        spot.at = onSheet(spot.at);
    }
    return placeNumbers(resolved, targets, spots, std::move(places));
}

std::vector<Op> partNumbersOn(const ResolvedPiece& resolved,
                              const std::vector<Op>& drawn,
                              const std::vector<PartSpot>& spots,
                              const Rect& area,
                              const TextMetrics& metrics) {
    TakenPlaces places(area);
    places.take(drawn, metrics);
    std::vector<Target> targets;
    std::vector<Subject> open;
    for (const Op& op : drawn) {
        if (const auto* group = std::get_if<BeginGroup>(&op)) {
            open.push_back(group->subject);
        } else if (std::holds_alternative<EndGroup>(op)) {
            open.pop_back();
        } else if (const auto* stroke = std::get_if<Stroke>(&op);
                   stroke != nullptr && !open.empty() && open.back().kind == SubjectKind::Part &&
                   (stroke->role == LineRole::Visible || stroke->role == LineRole::Hidden)) {
            const double dearer = stroke->role == LineRole::Visible ? 0.0 : kForHidden;
            for (std::size_t i = 0; i + 1 < stroke->points.size(); ++i) {
                targets.push_back(
                    {stroke->points[i], stroke->points[i + 1], open.back().index, dearer});
            }
        }
    }
    return placeNumbers(resolved, targets, spots, std::move(places));
}

void addInMiddle(std::vector<Op> drawing,
                 const Rect& bounds,
                 const ResolvedPiece& resolved,
                 std::vector<PartSpot> spots,
                 const Rect& space,
                 const TextMetrics& metrics,
                 std::vector<Op>& ops) {
    const Vec2 by = (space.min + space.max) * 0.5 - (bounds.min + bounds.max) * 0.5;
    move(drawing, by);
    for (PartSpot& spot : spots) {
        spot.at = spot.at + by;
    }
    const Rect area{space.min + Vec2{1.0, 1.0}, space.max - Vec2{1.0, 1.0}};
    append(drawing, partNumbersOn(resolved, drawing, spots, area, metrics));
    append(ops, std::move(drawing));
}

}  // namespace shoulderline
