#include <algorithm>
#include <cmath>

#include "core/resolve/box_placing.h"
#include "core/resolve/relations.h"
#include "core/resolve/shaped_face.h"
#include "core/resolve/spacing.h"
#include "core/resolve/stations.h"

namespace shoulderline {

namespace {

// A member's middle line and its other two directions, while it is being found.
struct Line {
    std::array<Vec3, 2> at;  // on the middle line, at each of the two parts
    Vec3 along;              // from the first to the second
    Vec3 width;
    Vec3 thickness;

    [[nodiscard]] Vec3 middle() const { return (at[0] + at[1]) * 0.5; }
};

// On a face that is curved under the end, the plane that touches it instead of where the middle
// line enters. `width` and `thickness` are half of the section.
void alongShape(const Neighbour& end, Vec3 way, Vec3 width, Vec3 thickness, EnteredFace& face) {
    constexpr double kCurved = 1e-3;  // millimetres off a plane
    const Vec3 corner = face.point - width - thickness;
    const std::optional<ShoulderOnFace> shoulder =
        shoulderOn({end.part, end.frame, corner, way, {width * 2.0, thickness * 2.0}});
    if (!shoulder || shoulder->open < kCurved) {
        return;
    }
    const Vec3 normal = end.frame.directionToOuter(shoulder->plane.normal);
    const double offset = shoulder->plane.offset + dot(normal, end.frame.origin);
    face.point = face.point + way * ((offset - dot(normal, face.point)) / dot(normal, way));
    face.outward = -normal;
}

class AngledSpan {
  public:
    AngledSpan(const Part& part,
               const Spans& spans,
               const Section& section,
               const std::array<Neighbour, 2>& ends,
               const Place& place,
               Evaluation& evaluation)
        : part_(part),
          spans_(spans),
          section_(section),
          ends_(ends),
          place_(place),
          evaluation_(evaluation) {}

    std::vector<PlacedMember> place(const std::optional<std::array<Neighbour, 2>>& between);

  private:
    bool findAxes();
    bool readLevels();
    std::optional<Vec3> anchorAlong(std::size_t end, double at, Vec3& postDirection);
    std::optional<Vec3> anchorAt(std::size_t end, double at, Vec3& postDirection);
    void turnAbout(Line& line, Vec3 leaning) const;
    std::optional<Line> lineThrough(const std::array<double, 2>& at, bool byMiddle);
    std::optional<PlacedMember> cutToFaces(const Line& line);
    bool layOutSet(const std::array<Neighbour, 2>& between,
                   std::array<std::vector<double>, 2>& middles,
                   Length& gap);
    void passesBy(std::size_t end);

    const Part& part_;
    const Spans& spans_;
    const Section& section_;
    const std::array<Neighbour, 2>& ends_;
    const Place& place_;
    Evaluation& evaluation_;
    MemberAxes axes_;
    std::array<Position, 2> level_;
    std::array<double, 2> levelAt_{};
    Length by_;
};

Vec3 unit(int axis) {
    Vec3 direction;
    direction[axis] = 1.0;
    return direction;
}

// What is left of `v` square to the unit vector `along`.
Vec3 squareTo(Vec3 v, Vec3 along) {
    return normalised(v - along * dot(v, along));
}

void AngledSpan::passesBy(std::size_t end) {
    evaluation_.trouble(
        place_,
        "it passes by '" + (end == 0 ? spans_.from : spans_.to) + "' instead of meeting it",
        RuleId::FacesSquarely);
}

// Which way it runs, mostly, and so which way its width and its thickness lie.
bool AngledSpan::findAxes() {
    const Vec3 between = ends_[1].box.centre() - ends_[0].box.centre();
    const int upright = longestAxis(ends_[0].lengthDirection);
    Vec3 level = between;
    level[upright] = 0.0;  // the two parts it joins lie beside one another
    axes_ = axesOf(spans_, longestAxis(level), ends_[0]);
    if (spans_.fit == ShoulderFit::Level) {
        evaluation_.trouble(place_,
                            "a face is cut level only for a member that meets it square; here the "
                            "shoulder follows the face");
    }
    if (spans_.flat && part_.spacing) {
        evaluation_.trouble(place_,
                            "a set that meets the parts it joins at an angle lies with its "
                            "width along them; leave out that it lies flat");
        return false;
    }
    return true;
}

bool AngledSpan::readLevels() {
    level_[0] = spans_.level.value_or(Position{});
    const bool isAnother = spans_.levelTo && !spans_.levelTo->at.empty();
    level_[1] = isAnother ? *spans_.levelTo : level_[0];
    for (std::size_t e = 0; e < 2; ++e) {
        if (level_[e].face != Side::Centre && !liesOn(level_[e].face, axes_.width)) {
            evaluation_.trouble(place_,
                                "its level names its " + std::string(wordFor(level_[e].face)) +
                                    ", which is not across its width");
            return false;
        }
        if (level_[e].at.empty()) {
            levelAt_[e] = ends_[e].box.centre()[axes_.width];
            continue;
        }
        const std::optional<Length> at = evaluation_.length(level_[e].at, place_, "level");
        if (!at) {
            return false;
        }
        levelAt_[e] = at->mm();
    }
    const std::optional<Length> by = evaluation_.length(spans_.set.by, place_, "set by", Length());
    if (!by) {
        return false;
    }
    if (spans_.set.from != Side::Centre && !liesOn(spans_.set.from, axes_.thickness)) {
        evaluation_.trouble(place_,
                            "it cannot be set in from the " +
                                std::string(wordFor(spans_.set.from)) +
                                ", along which it runs or its width lies");
        return false;
    }
    by_ = *by;
    return true;
}

// On a part that runs across the member's thickness (a stretcher between stretchers, a board laid
// flat between posts), it is the setting that tells where along it; the level is its own, or in the
// middle of the part.
std::optional<Vec3> AngledSpan::anchorAlong(std::size_t e, double at, Vec3& postDirection) {
    const Neighbour& end = ends_[e];
    const int along = axes_.thickness;
    double place = end.box.centre()[along] + by_.mm();
    if (const std::optional<AxisWay> way = wayOf(spans_.set.from)) {
        place = (way->way > 0 ? end.box.max : end.box.min)[along] - way->way * by_.mm();
    }
    const std::optional<Station> station = stationOn(*end.part, end.frame, along, place);
    if (!station) {
        evaluation_.trouble(place_,
                            "'" + end.part->of + "' does not run the way that its place is stated");
        return std::nullopt;
    }
    postDirection = spans_.flat ? station->direction : unit(axes_.width);
    Vec3 anchor = station->middle;
    if (!level_[e].at.empty() || part_.spacing) {
        anchor[axes_.width] = at;
    }
    return anchor;
}

// Where the member's reference side lies on one of the two parts, `at` along it.
std::optional<Vec3> AngledSpan::anchorAt(std::size_t e, double at, Vec3& postDirection) {
    const Neighbour& end = ends_[e];
    if (longestAxis(end.lengthDirection) != axes_.width) {
        return anchorAlong(e, at, postDirection);
    }
    const std::optional<Station> station = stationOn(*end.part, end.frame, axes_.width, at);
    if (!station) {
        evaluation_.trouble(place_,
                            "'" + end.part->of + "' does not run the way that its level is stated");
        return std::nullopt;
    }
    postDirection = station->direction;
    if (spans_.set.from == Side::Centre) {
        return station->middle + unit(axes_.thickness) * by_.mm();
    }
    const Vec3 side = directionOf(spans_.set.from);
    const std::size_t i =
        std::abs(dot(side, station->across[0])) > std::abs(dot(side, station->across[1])) ? 0 : 1;
    Vec3 outwards = station->across[i];
    outwards = dot(outwards, side) > 0 ? outwards : -outwards;
    return station->middle + outwards * (station->half[i] - by_.mm());
}

// Which way its width and its thickness lie about its length. One that leans has the one of them
// along the parts it joins that runs with them; `leaning` is the way that they run.
void AngledSpan::turnAbout(Line& line, Vec3 leaning) const {
    const auto towards = [](Vec3 v, int axis) { return v[axis] < 0 ? -v : v; };
    const bool isAcrossThickness = longestAxis(leaning) == axes_.thickness;
    if (spans_.leans && isAcrossThickness) {
        line.thickness = squareTo(leaning, line.along);
        line.width = towards(cross(line.along, line.thickness), axes_.width);
        return;
    }
    line.width = squareTo(spans_.leans ? leaning : unit(axes_.width), line.along);
    line.thickness = towards(cross(line.along, line.width), axes_.thickness);
}

// The member whose stated side or middle is at the two levels. How far its middle is from its top
// depends on how it leans, and that on where its middle is: a few rounds settle it.
std::optional<Line> AngledSpan::lineThrough(const std::array<double, 2>& at, bool byMiddle) {
    constexpr int kMostRounds = 40;
    constexpr double kSettled = 1e-10;
    const double width = section_.width.value.mm();
    const double thickness = section_.thickness.value.mm();
    Line line;
    line.width = unit(axes_.width);
    line.thickness = unit(axes_.thickness);
    Vec3 before[2];
    for (int round = 0; round < kMostRounds; ++round) {
        const double half = std::abs(line.width[axes_.width]) * width / 2 +
                            std::abs(line.thickness[axes_.width]) * thickness / 2;
        std::array<Vec3, 2> anchors;
        Vec3 leaning;
        for (std::size_t e = 0; e < 2; ++e) {
            double middle = at[e];
            if (const std::optional<AxisWay> way = wayOf(level_[e].face); way && !byMiddle) {
                middle -= way->way * half;
            }
            Vec3 direction;
            const std::optional<Vec3> anchor = anchorAt(e, middle, direction);
            if (!anchor) {
                return std::nullopt;
            }
            anchors[e] = *anchor;
            leaning = leaning + (direction[longestAxis(direction)] < 0 ? -direction : direction);
        }
        line.along = normalised(anchors[1] - anchors[0]);
        turnAbout(line, leaning);
        Vec3 toMiddle;
        if (const std::optional<AxisWay> way = wayOf(spans_.set.from)) {
            toMiddle = line.thickness * (-way->way * thickness / 2);
        }
        line.at = {anchors[0] + toMiddle, anchors[1] + toMiddle};
        if (norm(line.at[0] - before[0]) + norm(line.at[1] - before[1]) < kSettled) {
            break;
        }
        before[0] = line.at[0];
        before[1] = line.at[1];
    }
    return line;
}

// Ends the member on the faces that its middle line meets.
std::optional<PlacedMember> AngledSpan::cutToFaces(const Line& line) {
    constexpr double kSteepest = 0.2;  // of the face to the member: about 78 degrees from square
    const Vec3 width = line.width * (section_.width.value.mm() / 2);
    const Vec3 thickness = line.thickness * (section_.thickness.value.mm() / 2);
    const Vec3 middle = line.middle();
    std::array<EnteredFace, 2> faces;
    std::array<double, 2> reach{};  // of the ends, along the member from its middle
    for (std::size_t e = 0; e < 2; ++e) {
        const Vec3 way = e == 0 ? -line.along : line.along;
        std::optional<EnteredFace> face = enteredFace(*ends_[e].part, ends_[e].frame, middle, way);
        if (!face || dot(face->outward, way) > -kSteepest) {
            passesBy(e);
            return std::nullopt;
        }
        alongShape(ends_[e], way, width, thickness, *face);
        faces[e] = *face;
        const double lean = dot(face->outward, line.along);
        const double middleAt = dot(face->outward, face->point - middle) / lean;
        const double over = std::abs(
            reachOf(part_.section, dot(face->outward, width), dot(face->outward, thickness)) /
            lean);
        reach[e] = e == 0 ? middleAt - over : middleAt + over;
    }
    if (reach[1] - reach[0] < kApart) {
        passesBy(1);
        return std::nullopt;
    }
    PlacedMember member = spanningMember(part_, spans_, section_, axes_);
    Frame frame;
    frame.z = line.thickness * -wayOf(member.faceSide)->way;
    frame.y = line.width * -wayOf(member.faceEdge)->way;
    frame.x = cross(frame.y, frame.z);
    const bool runsOn = dot(frame.x, line.along) > 0;
    frame.origin = middle + line.along * (runsOn ? reach[0] : reach[1]) -
                   frame.y * (section_.width.value.mm() / 2) -
                   frame.z * (section_.thickness.value.mm() / 2);
    const Length length = Length::mm(reach[1] - reach[0]);
    member.length = sizeFrom(RuleId::ShoulderToShoulder, length);
    member.turned = frame;
    member.box = {{}, {length.mm(), section_.width.value.mm(), section_.thickness.value.mm()}};
    for (const EnteredFace& face : faces) {
        const Vec3 normal = frame.directionToLocal(-face.outward);
        if (std::abs(std::abs(normal.x) - 1.0) > kSquareTolerance) {
            member.ends.push_back({{normal, dot(normal, frame.toLocal(face.point))}});
        }
    }
    return member;
}

// The middles of the members along each of the two parts, between the faces of the two parts that
// the set lies between.
bool AngledSpan::layOutSet(const std::array<Neighbour, 2>& between,
                           std::array<std::vector<double>, 2>& middles,
                           Length& gap) {
    for (std::size_t e = 0; e < 2; ++e) {
        const Neighbour& along = ends_[e];
        const Station middle =
            stationAt(*along.part, along.frame, along.part->shoulderLength.value.mm() / 2);
        std::array<double, 2> free{};  // from that middle along the part
        for (std::size_t b = 0; b < 2; ++b) {
            const Vec3 to = between[b].box.centre() - middle.middle;
            const Vec3 way = dot(to, middle.direction) > 0 ? middle.direction : -middle.direction;
            const std::optional<EnteredFace> face =
                enteredFace(*between[b].part, between[b].frame, middle.middle, way);
            if (!face) {
                evaluation_.trouble(place_,
                                    "'" + along.part->of + "' does not run to '" +
                                        between[b].part->of + "', which the set lies next to");
                return false;
            }
            free[b] = dot(face->point - middle.middle, middle.direction);
        }
        const SetLayout layout = layOut(*part_.spacing,
                                        std::min(free[0], free[1]),
                                        std::max(free[0], free[1]),
                                        section_.width.value,
                                        place_,
                                        evaluation_);
        if (e == 0) {
            gap = layout.gap;
        }
        for (const double low : layout.lows) {
            const Vec3 at =
                middle.middle + middle.direction * (low + section_.width.value.mm() / 2);
            middles[e].push_back(at[axes_.width]);
        }
        if (middle.direction[axes_.width] < 0) {
            std::reverse(middles[e].begin(), middles[e].end());
        }
    }
    return !middles[0].empty() && middles[0].size() == middles[1].size();
}

std::vector<PlacedMember> AngledSpan::place(
    const std::optional<std::array<Neighbour, 2>>& between) {
    if (!findAxes() || !readLevels()) {
        return {};
    }
    std::array<std::vector<double>, 2> at{std::vector{levelAt_[0]}, std::vector{levelAt_[1]}};
    Length gap;
    if (between) {
        at = {};
        if (!layOutSet(*between, at, gap)) {
            return {};
        }
    }
    std::vector<PlacedMember> members;
    for (std::size_t i = 0; i < at[0].size(); ++i) {
        const std::optional<Line> line = lineThrough({at[0][i], at[1][i]}, between.has_value());
        std::optional<PlacedMember> member = line ? cutToFaces(*line) : std::nullopt;
        if (!member) {
            return {};
        }
        member->gap = gap;
        members.push_back(std::move(*member));
    }
    return members;
}

}  // namespace

std::vector<PlacedMember> placeAngled(const Part& part,
                                      const Spans& spans,
                                      const Section& section,
                                      const std::array<Neighbour, 2>& ends,
                                      const std::optional<std::array<Neighbour, 2>>& between,
                                      const Place& place,
                                      Evaluation& evaluation) {
    return AngledSpan(part, spans, section, ends, place, evaluation).place(between);
}

}  // namespace shoulderline
