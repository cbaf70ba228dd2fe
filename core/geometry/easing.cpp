#include "core/geometry/easing.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/geometry/arris_chain.h"
#include "core/geometry/inset_line.h"
#include "core/geometry/outline.h"

namespace shoulderline {

namespace {

constexpr double kSameReach = 1e-6;  // millimetres
constexpr double kLeastAway = 0.02;  // an edge must lead away from the arris by this slope at least

using Points = std::vector<int>;  // of one corner of the chain across the easing, from `on` over

// The unit direction in the plane of `face` away from the wood past the arris that its plane makes
// with that of `other`.
Vec3 outwardIn(const Vec3& face, const Vec3& other) {
    return normalised(other - face * dot(face, other));
}

// The share of both reaches that a point of the profile is moved by, from (1, 0) to (0, 1).
std::vector<Vec2> profileShares(const Easing& easing) {
    const bool isCove = easing.profile == EasingProfile::Cove;
    if (!isCove && easing.profile != EasingProfile::Round) {
        return {{1, 0}, {0, 1}};
    }
    const int facets = easingFacets(std::max(easing.onReach, easing.otherReach));
    std::vector<Vec2> shares;
    for (int i = 0; i <= facets; ++i) {
        const double at = M_PI / 2 * i / facets;
        const Vec2 share{std::cos(at), std::sin(at)};
        shares.push_back(isCove ? share : Vec2{1.0 - share.y, 1.0 - share.x});
    }
    return shares;
}

// Takes one chain of arrises off a solid.
class Easer {
  public:
    Easer(ArrisChain& chain, const Easing& easing)
        : chain_(chain), solid_(chain.solid()), easing_(easing), shares_(profileShares(easing)) {}

    Result<void> ease(std::vector<EasedStretch>& stretches) {
        if (easing_.profile == EasingProfile::Pyramid) {
            apex_ = chain_.middleOfLoop();
        }
        for (std::size_t k = 0; k < chain_.corners().size(); ++k) {
            if (const Result<void> done = placeCorner(k); !done) {
                return done;
            }
        }
        if (const Result<void> mended = mendLine(); !mended) {
            return mended;
        }
        makePoints();
        const std::size_t before = stretches.size();
        for (std::size_t k = 0; k < chain_.segments(); ++k) {
            if (!addStretch(k, stretches)) {
                stretches.resize(before);
                return fail(ErrorCode::OutOfRange, "It reaches further than the arris bends.");
            }
        }
        mergeMet();
        replaceInLoops();
        keepSmooth();
        addFacets();
        return {};
    }

  private:
    [[nodiscard]] Vec3 at(int vertex) const {
        return solid_.vertices[static_cast<std::size_t>(vertex)];
    }
    // How far from the corner along `way` a reach comes, measured square to the arris; the way must
    // lead into the face.
    static std::optional<Vec3> along(Vec3 way, Vec3 out, double reach) {
        const double slope = -dot(way, out);
        return slope > kLeastAway ? std::optional(way * (reach / slope)) : std::nullopt;
    }

    // The way from a corner to its point on one of the faces. `own` is the face's plane on the
    // segment before and after, `across` that of the face across the arris.
    [[nodiscard]] std::optional<Vec3> offset(const ChainCorner& corner,
                                             bool isOn,
                                             double reach) const {
        const auto out = [&](const ChainSegment& s) {
            return outwardIn(isOn ? s.onNormal : s.otherNormal, isOn ? s.otherNormal : s.onNormal);
        };
        if (corner.before && corner.after) {
            const ChainSegment& first = chain_.segment(*corner.before);
            const ChainSegment& second = chain_.segment(*corner.after);
            const int a = isOn ? first.on : first.other;
            const int b = isOn ? second.on : second.other;
            if (a == b) {
                const Vec3 sum = out(first) + out(second);
                const double length = dot(sum, sum);
                return length > kLeastAway ? std::optional(sum * (-2.0 * reach / length))
                                           : std::nullopt;
            }
            const std::optional<int> to = chain_.edgeBetween(corner.vertex, a, b);
            return to ? clear(corner.vertex, *to, out(first) + out(second), 2.0 * reach)
                      : std::nullopt;
        }
        const ChainSegment& only = chain_.segment(corner.before ? *corner.before : *corner.after);
        const std::optional<int> to =
            chain_.edgeBetween(corner.vertex, isOn ? only.on : only.other, corner.endFace);
        return to ? clear(corner.vertex, *to, out(only), reach) : std::nullopt;
    }

    // Along the edge to `to`, which must be longer than that.
    [[nodiscard]] std::optional<Vec3> clear(int from, int to, Vec3 out, double reach) const {
        const Vec3 edge = at(to) - at(from);
        const std::optional<Vec3> way = along(normalised(edge), out, reach);
        return way && norm(*way) < norm(edge) - kSameReach ? way : std::nullopt;
    }

    Result<void> placeCorner(std::size_t k) {
        const ChainCorner& corner = chain_.corners()[k];
        const double share = chain_.shareAt(corner.vertex);
        const bool isNothing = share <= 0.0;
        const std::optional<Vec3> on = isNothing ? std::optional(Vec3{})
                                       : easing_.profile == EasingProfile::Pyramid
                                           ? std::optional(apex_ - at(corner.vertex))
                                           : offset(corner, true, easing_.onReach * share);
        const std::optional<Vec3> other =
            isNothing ? std::optional(Vec3{}) : offset(corner, false, easing_.otherReach * share);
        if (!on || !other) {
            return fail(ErrorCode::OutOfRange, "It reaches further than the faces beside it do.");
        }
        onEnds_.push_back(at(corner.vertex) + *on);
        others_.push_back(*other);
        return {};
    }

    // In one plane face, what the eased line's neighbours overtake is dropped.
    Result<void> mendLine() {
        const auto isOnFirst = [&](std::size_t k) {
            return chain_.segment(k).on == chain_.segment(0).on;
        };
        std::vector<InsetSide> sides;
        for (std::size_t k = 0; k < chain_.segments(); ++k) {
            const ChainSegment& segment = chain_.segment(k);
            const std::size_t after = (k + 1) % chain_.corners().size();
            sides.push_back({at(chain_.corners()[k].vertex),
                             at(chain_.corners()[after].vertex),
                             outwardIn(segment.onNormal, segment.otherNormal),
                             easing_.onReach});
            if (!isOnFirst(k)) {
                return {};
            }
        }
        if (easing_.profile == EasingProfile::Pyramid || chain_.isStopped() ||
            dropOvertaken(sides, chain_.segment(0).onNormal, onEnds_)) {
            return {};
        }
        return fail(ErrorCode::OutOfRange, "It reaches further than the arris bends.");
    }

    void makePoints() {
        for (std::size_t k = 0; k < onEnds_.size(); ++k) {
            const int vertex = chain_.corners()[k].vertex;
            if (chain_.shareAt(vertex) <= 0.0) {
                points_.push_back(Points(shares_.size(), vertex));
                continue;
            }
            Points points;
            const Vec3 corner = at(vertex);
            for (const Vec2& s : shares_) {
                points.push_back(static_cast<int>(solid_.vertices.size()));
                solid_.vertices.push_back(corner + (onEnds_[k] - corner) * s.x + others_[k] * s.y);
            }
            points_.push_back(std::move(points));
        }
    }

    [[nodiscard]] const Points& pointsAt(std::size_t k) const {
        return points_[k % points_.size()];
    }

    // False where the eased line runs back against its arris.
    [[nodiscard]] bool addStretch(std::size_t k, std::vector<EasedStretch>& stretches) const {
        const ChainSegment& segment = chain_.segment(k);
        const Points& from = pointsAt(k);
        const Points& to = pointsAt(k + 1);
        const int a = chain_.corners()[k].vertex;
        const int b = chain_.corners()[(k + 1) % points_.size()].vertex;
        EasedStretch stretch;
        stretch.on = {segment.onNormal, dot(segment.onNormal, at(a))};
        stretch.other = {segment.otherNormal, dot(segment.otherNormal, at(a))};
        stretch.along = {std::min(at(a).x, at(b).x), std::max(at(a).x, at(b).x)};
        stretch.isHollow = easing_.profile == EasingProfile::Cove;
        stretch.isStopped = chain_.isStopped();
        stretch.isAtEnd = easing_.on == BodyFace::StartEnd || easing_.on == BodyFace::FarEnd;
        const Vec3 way = at(b) - at(a);
        for (std::size_t i = 0; i < shares_.size(); ++i) {
            const bool mayVanish = i == 0;
            const double ahead = dot(at(to[i]) - at(from[i]), way);
            if (ahead < (mayVanish ? -kSameReach : kSameReach) * norm(way)) {
                return false;
            }
        }
        for (std::size_t i = 0; i + 1 < shares_.size(); ++i) {
            const Vec3 across = at(from[i + 1]) + at(to[i + 1]) - at(from[i]) - at(to[i]);
            const Vec3 normal = normalised(
                cross(across, at(to[i]) + at(to[i + 1]) - at(from[i]) - at(from[i + 1])));
            const Vec3 middle = (at(from[i]) + at(to[i]) + at(from[i + 1]) + at(to[i + 1])) * 0.25;
            const bool looksOut = dot(normal, segment.onNormal + segment.otherNormal) > 0;
            const Vec3 outward = looksOut ? normal : -normal;
            stretch.keeps.push_back({outward, dot(outward, middle)});
        }
        stretches.push_back(std::move(stretch));
        return true;
    }

    // Where the eased face goes to nothing its corners meet: each place once.
    void mergeMet() {
        std::vector<int> known;
        for (Points& points : points_) {
            const auto same = std::find_if(known.begin(), known.end(), [&](int v) {
                return norm(at(v) - at(points.front())) < kSameReach;
            });
            if (same == known.end()) {
                known.push_back(points.front());
            } else {
                points.front() = *same;
            }
        }
    }

    void replaceInLoops() {
        for (std::size_t k = 0; k < points_.size(); ++k) {
            const ChainCorner& corner = chain_.corners()[k];
            for (const std::optional<std::size_t>& s : {corner.before, corner.after}) {
                if (s) {
                    chain_.replace(chain_.segment(*s).on, corner.vertex, {points_[k].front()});
                    chain_.replace(chain_.segment(*s).other, corner.vertex, {points_[k].back()});
                }
            }
            if (corner.endFace >= 0) {
                Points across = points_[k];
                if (!corner.before) {
                    std::reverse(across.begin(), across.end());
                }
                chain_.replace(corner.endFace, corner.vertex, across);
            }
        }
    }

    // Edges that led away from a corner now lead away from its points.
    void keepSmooth() {
        std::map<int, std::size_t> cornerOf;
        for (std::size_t k = 0; k < points_.size(); ++k) {
            cornerOf[chain_.corners()[k].vertex] = k;
        }
        const std::vector<VertexPair> smooth = std::move(solid_.smoothEdges);
        solid_.smoothEdges.clear();
        for (const VertexPair& edge : smooth) {
            const auto low = cornerOf.find(edge.low);
            const auto high = cornerOf.find(edge.high);
            if (low == cornerOf.end() && high == cornerOf.end()) {
                solid_.smoothEdges.push_back(edge);
                continue;
            }
            if (low != cornerOf.end() && high != cornerOf.end()) {
                continue;  // an arris of the chain itself, or one over a thin part: drawn
            }
            const std::size_t k = low != cornerOf.end() ? low->second : high->second;
            const int far = low != cornerOf.end() ? edge.high : edge.low;
            for (const int end : {points_[k].front(), points_[k].back()}) {
                solid_.smoothEdges.push_back(vertexPair(end, far));
            }
            for (std::size_t i = 0; i + 1 < shares_.size(); ++i) {
                solid_.smoothEdges.push_back(vertexPair(points_[k][i], points_[k][i + 1]));
            }
        }
    }

    void addFacets() {
        for (std::size_t k = 0; k < chain_.segments(); ++k) {
            const Points& from = pointsAt(k);
            const Points& to = pointsAt(k + 1);
            for (std::size_t i = 0; i + 1 < shares_.size(); ++i) {
                addFacet({to[i], from[i], from[i + 1], to[i + 1]});
                if (i > 0) {
                    solid_.smoothEdges.push_back(vertexPair(from[i], to[i]));
                }
            }
        }
    }

    void addFacet(const std::vector<int>& loop) {
        const Vec3 normal = normalised(cross(at(loop[2]) - at(loop[0]), at(loop[3]) - at(loop[1])));
        if (std::abs(dot(normal, at(loop[1]) - at(loop[0]))) < kPlaneTolerance) {
            solid_.faces.push_back({loop});
            return;
        }
        solid_.faces.push_back({{loop[0], loop[1], loop[2]}});
        solid_.faces.push_back({{loop[0], loop[2], loop[3]}});
        solid_.smoothEdges.push_back(vertexPair(loop[0], loop[2]));
    }

    ArrisChain& chain_;
    Polyhedron& solid_;
    const Easing& easing_;
    std::vector<Vec2> shares_;
    std::vector<Vec3> onEnds_;  // of each corner, where the easing ends on `on`
    std::vector<Vec3> others_;  // and the way from it to where it ends on the other face
    std::vector<Points> points_;
    Vec3 apex_;
};

// Whether no face has turned over or crosses itself: every face still bounds an area, and the whole
// some wood.
bool isSound(const Polyhedron& solid) {
    for (std::size_t f = 0; f < solid.faces.size(); ++f) {
        const std::vector<int>& loop = solid.faces[f].loop;
        if (loop.size() <= 4) {
            continue;
        }
        const Vec3 normal = normalised(solid.areaVector(static_cast<int>(f)));
        const int axis = std::abs(normal.z) > 0.6 ? 2 : (std::abs(normal.y) > 0.6 ? 1 : 0);
        std::vector<Vec2> flat;
        for (const int v : loop) {
            const Vec3 p = solid.vertices[static_cast<std::size_t>(v)];
            flat.push_back({p[(axis + 1) % 3], p[(axis + 2) % 3]});
        }
        if (!Outline::polygon(flat).isSimple()) {
            return false;
        }
    }
    return solid.volume() > 0.0;
}

}  // namespace

int easingFacets(double reach) {
    constexpr int kFewest = 3;
    constexpr int kMost = 12;
    const double half = std::acos(std::max(0.0, 1.0 - kEasingSagitta / reach));
    return std::clamp(static_cast<int>(std::ceil(M_PI / 4 / half)), kFewest, kMost);
}

Result<EasedSolid> eased(Polyhedron solid,
                         std::span<const HalfSpace> ends,
                         std::span<const Easing> easings) {
    EasedSolid made{std::move(solid), {}};
    for (const Easing& easing : easings) {
        Result<std::vector<ArrisChain>> chains = ArrisChain::find(made.solid, ends, easing);
        if (!chains) {
            return tl::unexpected<Error>(chains.error());
        }
        for (ArrisChain& chain : *chains) {
            if (const Result<void> done = Easer(chain, easing).ease(made.stretches); !done) {
                return tl::unexpected<Error>(done.error());
            }
        }
        made.solid = tidied(std::move(made.solid));
        if (!isSound(made.solid)) {
            return fail(ErrorCode::OutOfRange, "It reaches further than the faces beside it do.");
        }
    }
    if (!isClosed(made.solid)) {
        return fail(ErrorCode::OutOfRange, "It cannot be taken off there.");
    }
    return made;
}

}  // namespace shoulderline
