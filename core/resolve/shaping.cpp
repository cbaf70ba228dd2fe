#include "core/resolve/shaping.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/cylinder.h"
#include "core/geometry/smooth_curve.h"
#include "core/measure/length_statement.h"

namespace shoulderline {

namespace {

constexpr double kSameEdge = 1e-6;  // millimetres

// One side of an outline in its own terms: x along it, y how far in; a positive bulge bows out of
// the wood when the side is walked with the wood to its left.
struct SidePoint {
    Vec2 at;
    double bulge = 0.0;
};
using SideLine = std::vector<SidePoint>;

// The sides of one elevation, by where their points lie in it.
struct ElevationSides {
    SideLine low;    // along the length, at the reference edge
    SideLine high;   // along the length, across from it
    SideLine start;  // the ends, from the reference edge across
    SideLine far;
};

class SideReader {
  public:
    SideReader(const Shape& shape, const Place& place, Evaluation& evaluation)
        : shape_(shape), place_(place), evaluation_(evaluation) {}

    // The points of one side, `whole` long; empty where it is not stated or cannot be worked out.
    SideLine read(Face face, double whole);

  private:
    void setArcs(const ShapedEdge& points, Face face, SideLine& line);
    void smooth(SideLine& line, const ShapedEdge& points) const;

    const Shape& shape_;
    const Place& place_;
    Evaluation& evaluation_;
};

SideLine SideReader::read(Face face, double whole) {
    SideLine line;
    const auto it = shape_.find(face);
    if (it == shape_.end()) {
        return line;
    }
    const std::string name(wordFor(face));
    for (const EdgePoint& point : it->second) {
        const std::optional<Length> along =
            evaluation_.length(point.along, place_, name + ": a point's place along it", Length());
        const std::optional<Length> in =
            evaluation_.length(point.in, place_, name + ": how far in a point lies", Length());
        if (!along || !in) {
            return {};
        }
        const double at = point.from == Datum::Start    ? along->mm()
                          : point.from == Datum::Middle ? whole / 2 + along->mm()
                                                        : whole - along->mm();
        line.push_back({{at, in->mm()}, 0.0});
    }
    setArcs(it->second, face, line);
    smooth(line, it->second);
    return line;
}

void SideReader::setArcs(const ShapedEdge& points, Face face, SideLine& line) {
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        if (points[i].run != Run::Arc) {
            continue;
        }
        const std::optional<Length> bow = evaluation_.length(
            points[i].bow, place_, std::string(wordFor(face)) + ": the bow of an arc");
        const double chord = norm(line[i + 1].at - line[i].at);
        if (bow && chord > kSameEdge) {
            line[i].bulge = 2.0 * bow->mm() / chord;
        }
    }
}

// Replaces each stretch of points that a curve runs through by the arcs of that curve.
void SideReader::smooth(SideLine& line, const ShapedEdge& points) const {
    SideLine smoothed;
    for (std::size_t i = 0; i < line.size();) {
        std::size_t end = i;
        while (end + 1 < line.size() && points[end].run == Run::Curve) {
            ++end;
        }
        if (end == i) {
            smoothed.push_back(line[i++]);
            continue;
        }
        std::vector<Vec2> through;
        for (std::size_t k = i; k <= end; ++k) {
            if (through.empty() || norm(line[k].at - through.back()) > kSameEdge) {
                through.push_back(line[k].at);
            }
        }
        // y runs into the wood, to the left of the walk: bulges mean the same.
        for (const OutlineVertex& vertex : smoothCurve(through)) {
            smoothed.push_back({vertex.point, vertex.bulge});
        }
        smoothed.back().bulge = line[end].bulge;
        i = end;
        if (end + 1 == line.size()) {
            break;
        }
        smoothed.pop_back();  // the curve's last point starts the next stretch
    }
    line = std::move(smoothed);
}

// Runs an edge straight on to both ends of the part, or to where a shaped end begins.
void runOut(SideLine& line, double length, double startIn, double farIn) {
    const double first = line.empty() ? 0.0 : line.front().at.y;
    const double last = line.empty() ? 0.0 : line.back().at.y;
    if (line.empty() || line.front().at.x > startIn + kSameEdge) {
        line.insert(line.begin(), {{startIn, first}, 0.0});
    }
    if (line.back().at.x < length - farIn - kSameEdge) {
        line.back().bulge = 0.0;
        line.push_back({{length - farIn, last}, 0.0});
    }
}

double inAt(const SideLine& end, bool atHighEdge) {
    return end.empty() ? 0.0 : (atHighEdge ? end.back() : end.front()).at.y;
}

// Counter-clockwise around: along the low edge, up the far end, back along the high edge, down the
// start. `toPlane` takes a side's own point into the elevation; a side walked against its own order
// keeps what bows out.
Outline outlineOf(ElevationSides sides, double length, double across) {
    Outline outline;
    const auto add = [&](Vec2 point, double bulge) {
        if (!outline.vertices.empty() && norm(outline.vertices.back().point - point) <= kSameEdge) {
            outline.vertices.back().bulge = bulge;
            return;
        }
        outline.vertices.push_back({point, bulge});
    };
    const auto addForward = [&](const SideLine& line, const auto& toPlane) {
        for (const SidePoint& p : line) {
            add(toPlane(p.at), p.bulge);
        }
    };
    const auto addBackward = [&](const SideLine& line, const auto& toPlane) {
        for (std::size_t i = line.size(); i-- > 0;) {
            add(toPlane(line[i].at), i > 0 ? line[i - 1].bulge : 0.0);
        }
    };
    runOut(sides.low, length, inAt(sides.start, false), inAt(sides.far, false));
    runOut(sides.high, length, inAt(sides.start, true), inAt(sides.far, true));
    addForward(sides.low, [](Vec2 p) { return p; });
    addForward(sides.far, [&](Vec2 p) { return Vec2{length - p.y, p.x}; });
    addBackward(sides.high, [&](Vec2 p) { return Vec2{p.x, across - p.y}; });
    addBackward(sides.start, [](Vec2 p) { return Vec2{p.y, p.x}; });
    if (outline.vertices.size() > 1 &&
        norm(outline.vertices.back().point - outline.vertices.front().point) <= kSameEdge) {
        outline.vertices.pop_back();
    }
    return outline;
}

bool statesAny(const Shape& shape, std::initializer_list<Face> faces) {
    return std::any_of(faces.begin(), faces.end(), [&](Face face) { return shape.contains(face); });
}

// The planes around a part that is not square in section.
std::vector<PlaneCut> sectionPlanes(SectionForm section,
                                    const Vec3& size,
                                    const Place& place,
                                    Evaluation& evaluation) {
    if (section == SectionForm::Square) {
        return {};
    }
    if (std::abs(size.y - size.z) > kSameEdge) {
        evaluation.trouble(place,
                           "a part that is " + std::string(wordFor(section)) +
                               " in section is as wide as it is thick");
        return {};
    }
    const double radius = size.z / 2;
    const bool isRound = section == SectionForm::Round;
    const int facets = isRound ? circleFacets(radius) : 8;
    // Facets of a round lie inside it; the sides of an eight-sided part lie on its blank.
    const double off = isRound ? radius * std::cos(M_PI / facets) : radius;
    std::vector<PlaneCut> planes;
    for (int i = 0; i < facets; ++i) {
        const double at = 2 * M_PI * i / facets;
        const Vec3 normal{0, std::cos(at), std::sin(at)};
        const bool isOnBlank = !isRound && i % 2 == 0;
        if (!isOnBlank) {
            planes.push_back({{normal, off + (normal.y + normal.z) * radius},
                              isRound ? 0 : ConvexSolid::kOwnSurface});
        }
    }
    return planes;
}

// The body that `shape` makes, or what is wrong with it. Statements that cannot be worked out are
// troubles at `place`.
Result<Body> bodyOf(const Shape& shape,
                    const Body& blank,
                    const Vec3& size,
                    const Place& place,
                    Evaluation& evaluation) {
    SideReader reader(shape, place, evaluation);
    Body body = blank;
    if (statesAny(shape, {Face::FaceEdge, Face::BackEdge, Face::StartEnd, Face::FarEnd})) {
        body.face = outlineOf({reader.read(Face::FaceEdge, size.x),
                               reader.read(Face::BackEdge, size.x),
                               reader.read(Face::StartEnd, size.y),
                               reader.read(Face::FarEnd, size.y)},
                              size.x,
                              size.y);
    }
    if (statesAny(shape, {Face::FaceSide, Face::BackSide})) {
        body.edge = outlineOf(
            {reader.read(Face::FaceSide, size.x), reader.read(Face::BackSide, size.x), {}, {}},
            size.x,
            size.z);
        const Rect inEdge = body.edge->bounds();
        if (inEdge.min.y < -kPlaneTolerance || inEdge.max.y > size.z + kPlaneTolerance) {
            return fail(ErrorCode::OutOfRange,
                        "The outline of its edge goes beyond its thickness.");
        }
    }
    if (const Result<Polyhedron> solid = body.toPolyhedron(); !solid) {
        return tl::unexpected<Error>(solid.error());
    }
    return body;
}

// Of a shape that cannot be made: a point that alone is at fault, and how far in it may lie.
class NearestShape {
  public:
    NearestShape(const Shape& shape,
                 const Body& blank,
                 const Vec3& size,
                 const Place& place,
                 Evaluation& evaluation)
        : shape_(shape), blank_(blank), size_(size), place_(place), evaluation_(evaluation) {}

    // " Point 2 of the back edge can be set in by up to 2 1/2 in." or how far along it, " The arc
    // after point 1 of the face edge can be bowed up to 1 in."; empty where no one figure mends it.
    [[nodiscard]] std::string told() {
        for (const auto& [face, points] : shape_) {
            for (std::size_t i = 0; i < points.size(); ++i) {
                const std::string told = toldOf(face, i);
                if (!told.empty()) {
                    return told;
                }
            }
        }
        return {};
    }

  private:
    [[nodiscard]] std::string toldOf(Face face, std::size_t i) {
        const EdgePoint& point = shape_.at(face)[i];
        const std::string of =
            "oint " + std::to_string(i + 1) + " of the " + std::string(wordFor(face));
        const auto stated = [&](const Statement& statement) {
            return evaluation_.length(statement, place_, "a point of the shape", Length())
                .value_or(Length())
                .mm();
        };
        const auto in = [](EdgePoint& p, Statement s) { p.in = std::move(s); };
        const auto bow = [](EdgePoint& p, Statement s) { p.bow = std::move(s); };
        const auto along = [](EdgePoint& p, Statement s) {
            p.from = Datum::Start;
            p.along = std::move(s);
        };
        if (const auto most = furthest(face, i, 0.0, stated(point.in), in)) {
            return " P" + of + " can be set in by up to " + evaluation_.shown(*most) + ".";
        }
        if (point.run == Run::Arc) {
            if (const auto most = furthest(face, i, 0.0, stated(point.bow), bow)) {
                return " The arc after p" + of + " can be bowed up to " + evaluation_.shown(*most) +
                       ".";
            }
        }
        if (i > 0 && i + 1 < shape_.at(face).size()) {
            const double between = (placeOf(face, i - 1) + placeOf(face, i + 1)) / 2;
            if (const auto most = furthest(face, i, between, placeOf(face, i), along)) {
                return " P" + of + " can lie up to " + evaluation_.shown(*most) +
                       " along from its start.";
            }
        }
        return {};
    }

    // Along the side from its start.
    [[nodiscard]] double placeOf(Face face, std::size_t i) {
        const EdgePoint& point = shape_.at(face)[i];
        const double whole = face == Face::StartEnd || face == Face::FarEnd ? size_.y : size_.x;
        const double at = evaluation_.length(point.along, place_, "a point of the shape", Length())
                              .value_or(Length())
                              .mm();
        return point.from == Datum::Start    ? at
               : point.from == Datum::Middle ? whole / 2 + at
                                             : whole - at;
    }

    // From `right` towards `wrong`, which does not work, in whole steps on the side of `right`;
    // none where `right` does not work either or both are one.
    template <class Put>
    [[nodiscard]] std::optional<Length> furthest(
        Face face, std::size_t point, double right, double wrong, const Put& put) {
        const auto works = [&](double mm) {
            Shape tried = shape_;
            put(tried[face][point], lengthStatement(Length::mm(mm), Unit::Millimetre));
            return bodyOf(tried, blank_, size_, place_, evaluation_).has_value();
        };
        if (std::abs(wrong - right) < kSameEdge || !works(right)) {
            return std::nullopt;
        }
        constexpr int kHalvings = 12;
        double good = right;
        double bad = wrong;
        for (int i = 0; i < kHalvings; ++i) {
            const double middle = (good + bad) / 2;
            (works(middle) ? good : bad) = middle;
        }
        const double step = evaluation_.step().mm();
        const double steps = good / step;
        return Length::mm(step * (wrong > right ? std::floor(steps) : std::ceil(steps)));
    }

    const Shape& shape_;
    const Body& blank_;
    const Vec3& size_;
    const Place& place_;
    Evaluation& evaluation_;
};

}  // namespace

Body shapedBody(const Shape& shape,
                SectionForm section,
                const Vec3& size,
                const Place& place,
                Evaluation& evaluation) {
    const Body blank{Outline::rectangle(size.x, size.y),
                     size.z,
                     std::nullopt,
                     sectionPlanes(section, size, place, evaluation)};
    if (shape.empty()) {
        return blank;
    }
    const std::size_t before = evaluation.troubleCount();
    Result<Body> body = bodyOf(shape, blank, size, place, evaluation);
    if (!body) {
        const bool isRead = evaluation.troubleCount() == before;
        evaluation.trouble(
            place,
            "its shape cannot be made and is left out: " + body.error().message +
                (isRead ? NearestShape(shape, blank, size, place, evaluation).told() : ""));
        return blank;
    }
    return std::move(*body);
}

}  // namespace shoulderline
