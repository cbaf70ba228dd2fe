#include "core/resolve/stations.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

namespace {

constexpr double kStep = 0.5;  // millimetres over which the way a shaped part runs is taken

double middleOf(const Extent& extent) {
    return (extent.min + extent.max) / 2;
}

// What the line across at `x` shares with the outline; its ends run on beyond it.
Extent stretchAt(const FlatOutline& outline, double x) {
    double low = outline.points.front().x;
    double high = low;
    for (const Vec2 p : outline.points) {
        low = std::min(low, p.x);
        high = std::max(high, p.x);
    }
    const double at = std::clamp(x, low + 1e-9, high - 1e-9);
    Extent stretch{1e30, -1e30};
    for (std::size_t i = 0; i < outline.points.size(); ++i) {
        const Vec2 a = outline.points[i];
        const Vec2 b = outline.points[(i + 1) % outline.points.size()];
        if ((a.x <= at) == (b.x <= at)) {
            continue;
        }
        const double y = a.y + (b.y - a.y) * (at - a.x) / (b.x - a.x);
        stretch.min = std::min(stretch.min, y);
        stretch.max = std::max(stretch.max, y);
    }
    return stretch;
}

// The section of a body along its length.
class Sectioned {
  public:
    explicit Sectioned(const ResolvedPart& part)
        : size_(part.bodyBox().max),
          wood_(part.wood()),
          hasFace_(part.body.face != Outline::rectangle(size_.x, size_.y)),
          hasEdge_(part.body.edge.has_value()) {}

    [[nodiscard]] std::array<Extent, 2> at(double x) const {
        return {hasFace_ ? stretchAt(wood_.flatFace(), x) : Extent{0.0, size_.y},
                hasEdge_ ? stretchAt(wood_.flatEdge(), x) : Extent{0.0, size_.z}};
    }
    [[nodiscard]] Vec3 middle(double x) const {
        const std::array<Extent, 2> section = at(x);
        return {x, middleOf(section[0]), middleOf(section[1])};
    }
    [[nodiscard]] bool isShaped() const { return hasFace_ || hasEdge_; }

  private:
    Vec3 size_;
    BodySolids wood_;
    bool hasFace_;
    bool hasEdge_;
};

Station stationOf(const Sectioned& body, const Frame& frame, double x) {
    Station station;
    station.along = x;
    const std::array<Extent, 2> section = body.at(x);
    station.middle = frame.toOuter(body.middle(x));
    Vec3 along{1, 0, 0};
    if (body.isShaped()) {
        along = normalised(body.middle(x + kStep) - body.middle(x - kStep));
    }
    station.direction = frame.directionToOuter(along);
    for (std::size_t i = 0; i < 2; ++i) {
        Vec3 across{0, i == 0 ? 1.0 : 0.0, i == 0 ? 0.0 : 1.0};
        const double square = (section[i].max - section[i].min) / 2;
        across = across - along * dot(across, along);
        // Square to the way it runs the section is narrower than across the blank.
        station.half[i] = square * norm(across);
        station.across[i] = frame.directionToOuter(normalised(across));
    }
    return station;
}

// In the part's own frame: round parts are met on their round, not on a facet of it.
std::optional<EnteredFace> enterRound(const ResolvedPart& part, Vec3 through, Vec3 direction) {
    const double radius = part.thickness.value.mm() / 2;
    const Vec3 centre{0, radius, radius};
    const auto flat = [](Vec3 v) { return Vec3{0, v.y, v.z}; };
    const Vec3 from = flat(through - centre);
    const Vec3 way = flat(direction);
    const double a = dot(way, way);
    const double b = dot(from, way);
    const double under = b * b - a * (dot(from, from) - radius * radius);
    if (a < 1e-9 || under <= 0) {
        return std::nullopt;
    }
    const double t = (-b - std::sqrt(under)) / a;
    const Vec3 point = through + direction * t;
    return EnteredFace{point, normalised(flat(point - centre)), 2 * std::sqrt(under) / a};
}

// Where the line enters and leaves one convex solid.
std::optional<EnteredFace> enterPiece(const ConvexSolid& piece, Vec3 through, Vec3 direction) {
    double in = -1e30;
    double out = 1e30;
    Vec3 outward;
    for (const ConvexSolid::Face& face : piece.faces()) {
        const double height = face.plane.height(through);
        const double slope = dot(face.plane.normal, direction);
        if (std::abs(slope) < 1e-12) {
            if (height > 0) {
                return std::nullopt;
            }
            continue;
        }
        const double t = -height / slope;
        if (slope < 0 && t > in) {
            in = t;
            outward = face.plane.normal;
        } else if (slope > 0) {
            out = std::min(out, t);
        }
    }
    if (in >= out) {
        return std::nullopt;
    }
    return EnteredFace{through + direction * in, outward, out - in};
}

}  // namespace

Extent widthAt(const ResolvedPart& part, double x) {
    return Sectioned(part).at(x)[0];
}

Station stationAt(const ResolvedPart& part, const Frame& frame, double x) {
    return stationOf(Sectioned(part), frame, x);
}

std::optional<Station> stationOn(const ResolvedPart& part,
                                 const Frame& frame,
                                 int axis,
                                 double at) {
    constexpr double kLeastSlope = 0.1;
    constexpr int kMostSteps = 40;
    constexpr double kNear = 1e-10;
    const double slope = frame.x[axis];
    if (std::abs(slope) < kLeastSlope) {
        return std::nullopt;
    }
    const Sectioned body(part);
    double x = part.shoulderLength.value.mm() / 2;
    for (int i = 0; i < kMostSteps; ++i) {
        const double off = at - frame.toOuter(body.middle(x))[axis];
        if (std::abs(off) < kNear) {
            break;
        }
        x += off / slope;
    }
    return stationOf(body, frame, x);
}

std::optional<EnteredFace> enteredFace(const ResolvedPart& part,
                                       const Frame& frame,
                                       Vec3 through,
                                       Vec3 direction) {
    const Vec3 from = frame.toLocal(through);
    const Vec3 way = frame.directionToLocal(direction);
    const auto toSpace = [&](EnteredFace face) {
        face.point = frame.toOuter(face.point);
        face.outward = frame.directionToOuter(face.outward);
        return face;
    };
    if (part.section == SectionForm::Round) {
        const std::optional<EnteredFace> round = enterRound(part, from, way);
        if (round && dot(round->point - from, way) > -kLengthTolerance.mm()) {
            return toSpace(*round);
        }
    }
    std::optional<EnteredFace> first;
    double nearest = 1e30;
    const BodySolids wood = part.wood();
    for (const ConvexSolid& piece : wood.pieces()) {
        const std::optional<EnteredFace> here = enterPiece(piece, from, way);
        if (!here) {
            continue;
        }
        const double t = dot(here->point - from, way);
        if (t > -kLengthTolerance.mm() && t < nearest) {
            nearest = t;
            first = here;
        }
    }
    return first ? std::optional(toSpace(*first)) : std::nullopt;
}

}  // namespace shoulderline
