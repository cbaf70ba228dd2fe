#include "core/resolve/bending.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/smooth_curve.h"
#include "core/resolve/end_plane.h"
#include "core/timber/bending.h"

namespace shoulderline {

namespace {

constexpr int kMostPlies = 200;
constexpr double kSamePlace = 1e-6;  // millimetres

class BendReader {
  public:
    BendReader(const Bend& bend,
               const Vec3& size,
               const RuleBook& rules,
               const Place& place,
               Evaluation& evaluation)
        : bend_(bend), size_(size), rules_(rules), place_(place), evaluation_(evaluation) {}

    std::optional<ResolvedBend> read();

  private:
    bool readLine();
    bool readRise();
    bool readRadius();
    bool readThrough();
    bool readSpringback();
    bool readPlies();
    [[nodiscard]] int pliesByRule() const;
    bool setForm();
    bool refuse(std::string message) {
        evaluation_.trouble(place_, std::move(message));
        return false;
    }
    [[nodiscard]] std::string shown(double mm) const { return evaluation_.shown(Length::mm(mm)); }

    const Bend& bend_;
    const Vec3& size_;
    const RuleBook& rules_;
    const Place& place_;
    Evaluation& evaluation_;
    ResolvedBend resolved_;
};

std::optional<ResolvedBend> BendReader::read() {
    resolved_.method = bend_.method;
    resolved_.hollow = bend_.hollow;
    resolved_.shoulders = bend_.shoulders;
    if (!readLine()) {
        return std::nullopt;
    }
    const double half = size_.z / 2;
    if (resolved_.radius.value.mm() <= half + kSamePlace) {
        refuse("its bow turns at a radius of " + shown(resolved_.radius.value.mm()) +
               ", and with a thickness of " + shown(size_.z) +
               " its hollow face would cross itself; a radius of more than " + shown(half) +
               " is needed");
        return std::nullopt;
    }
    if (!readSpringback() || !readPlies() || !setForm()) {
        return std::nullopt;
    }
    return std::move(resolved_);
}

bool BendReader::readLine() {
    const int ways = (bend_.rise.empty() ? 0 : 1) + (bend_.radius.empty() ? 0 : 1) +
                     (bend_.through.empty() ? 0 : 1);
    if (ways != 1) {
        return refuse(
            "its bow is stated by one of: its rise, its radius, points that it runs "
            "through");
    }
    return bend_.through.empty() ? (bend_.radius.empty() ? readRise() : readRadius())
                                 : readThrough();
}

bool BendReader::readRise() {
    const std::optional<Length> rise = evaluation_.size(bend_.rise, place_, "rise of its bow");
    if (!rise) {
        return false;
    }
    if (rise->mm() > size_.x / 2 + kSamePlace) {
        return refuse("its bow rises " + shown(rise->mm()) + " over a chord of " + shown(size_.x) +
                      "; half the chord, " + shown(size_.x / 2) + ", is the most");
    }
    const ArcOverChord arc = arcOfRise(size_.x, rise->mm());
    resolved_.line = lineOf(arc);
    const Length radius = Length::mm(arc.radius);
    resolved_.rise = {*rise, SizeState::Stated, {{RuleId::Stated, {}, {}, *rise}}};
    resolved_.radius = {
        radius, SizeState::ByRule, {{RuleId::BendArc, Length::mm(size_.x), *rise, radius}}};
    return true;
}

bool BendReader::readRadius() {
    const std::optional<Length> radius =
        evaluation_.size(bend_.radius, place_, "radius of its bow");
    if (!radius) {
        return false;
    }
    if (radius->mm() < size_.x / 2 - kSamePlace) {
        return refuse("an arc of " + shown(radius->mm()) + " does not reach over a chord of " +
                      shown(size_.x) + "; a radius of " + shown(size_.x / 2) + " is the least");
    }
    const ArcOverChord arc = arcOfRadius(size_.x, radius->mm());
    resolved_.line = lineOf(arc);
    const Length rise = Length::mm(arc.rise);
    resolved_.rise = {
        rise, SizeState::ByRule, {{RuleId::BendArc, Length::mm(size_.x), rise, *radius}}};
    resolved_.radius = {*radius, SizeState::Stated, {{RuleId::Stated, {}, {}, *radius}}};
    return true;
}

bool BendReader::readThrough() {
    std::vector<Vec2> points{{0.0, 0.0}};
    for (const BowPoint& point : bend_.through) {
        const std::optional<Length> along =
            evaluation_.length(point.along, place_, "a point's place along its bow", Length());
        const std::optional<Length> rise =
            evaluation_.length(point.rise, place_, "a point's rise", Length());
        if (!along || !rise) {
            return false;
        }
        const double at = point.from == Datum::Start    ? along->mm()
                          : point.from == Datum::Middle ? size_.x / 2 + along->mm()
                                                        : size_.x - along->mm();
        if (at <= points.back().x + kSamePlace || at >= size_.x - kSamePlace) {
            return refuse(
                "the points of its bow follow one another from its start to its far "
                "end; one at " +
                shown(at) + " does not");
        }
        points.push_back({at, rise->mm()});
    }
    points.push_back({size_.x, 0.0});
    resolved_.line = smoothCurve(points);
    const Length rise = Length::mm(riseOf(resolved_.line));
    const double least = leastRadius(resolved_.line);
    if (!std::isfinite(least)) {
        return refuse("the points of its bow lie on a straight line; leave the bow out");
    }
    const Length radius = Length::mm(least);
    resolved_.rise = {rise, SizeState::ByRule, {{RuleId::BendAsDrawn, {}, {}, radius}}};
    resolved_.radius = resolved_.rise;
    resolved_.radius.value = radius;
    return true;
}

bool BendReader::readSpringback() {
    if (bend_.springback.empty()) {
        return true;
    }
    const std::optional<double> share =
        evaluation_.ratio(bend_.springback, place_, "springback as found");
    if (!share) {
        return false;
    }
    if (*share >= 1.0) {
        return refuse("its springback is the share of its rise that is lost on release, below 1");
    }
    resolved_.springback = *share;
    resolved_.isMeasured = true;
    return true;
}

// The fewest plies that bend to the form's radius at ease.
int BendReader::pliesByRule() const {
    const double ease = rules_[RuleId::BendPlyComfort].value;
    for (int plies = 2; plies < kMostPlies; ++plies) {
        const double springback =
            resolved_.isMeasured ? resolved_.springback : springbackShare(plies);
        const double radius = resolved_.radius.value.mm() * (1.0 - springback);
        if (radius >= ease * size_.z / plies) {
            return plies;
        }
    }
    return kMostPlies;
}

bool BendReader::readPlies() {
    const double whole = size_.z;
    resolved_.ply = {Length::mm(whole), SizeState::ByRule, {}};
    if (bend_.method != BendMethod::Laminated) {
        if (!bend_.plies.empty() || !bend_.ply.empty()) {
            return refuse("only a laminated part has plies");
        }
        return true;
    }
    std::optional<int> plies;
    std::optional<Length> ply;
    if (!bend_.plies.empty()) {
        plies = evaluation_.count(bend_.plies, place_, "number of its plies");
    }
    if (!bend_.ply.empty()) {
        ply = evaluation_.size(bend_.ply, place_, "thickness of a ply");
    }
    if ((!bend_.plies.empty() && !plies) || (!bend_.ply.empty() && !ply)) {
        return false;
    }
    resolved_.areStated = plies || ply;
    constexpr double kFit = 0.05;  // millimetres
    if (ply && !plies) {
        plies = std::clamp(static_cast<int>(std::lround(whole / ply->mm())), 1, kMostPlies);
    }
    resolved_.plies = plies.value_or(pliesByRule());
    if (ply && std::abs(resolved_.plies * ply->mm() - whole) > kFit) {
        return refuse(std::to_string(resolved_.plies) + " plies of " + shown(ply->mm()) + " make " +
                      shown(resolved_.plies * ply->mm()) + ", and it is " + shown(whole) +
                      " thick; plies of " + shown(whole / resolved_.plies) + " would do");
    }
    if (resolved_.plies < 2 || resolved_.plies > kMostPlies) {
        return refuse("a lamination has 2 plies at least and " + std::to_string(kMostPlies) +
                      " at most; one alone springs back straight");
    }
    const Length each = Length::mm(whole / resolved_.plies);
    resolved_.ply = {each,
                     resolved_.areStated ? SizeState::Stated : SizeState::ByRule,
                     {{resolved_.areStated ? RuleId::BendPlies : RuleId::BendPlyComfort,
                       Length::mm(whole),
                       {},
                       each}}};
    if (!resolved_.isMeasured) {
        resolved_.springback = springbackShare(resolved_.plies);
    }
    return true;
}

bool BendReader::setForm() {
    resolved_.formLine = bentAnew(resolved_.line, 1.0 / (1.0 - resolved_.springback));
    const Length radius = Length::mm(leastRadius(resolved_.formLine));
    resolved_.formRadius = {radius, SizeState::ByRule, resolved_.radius.reasons};
    if (resolved_.springback > 0.0) {
        resolved_.formRadius.reasons.push_back(
            {resolved_.isMeasured ? RuleId::BendMeasured : RuleId::BendSpringback,
             resolved_.radius.value,
             {},
             radius});
    }
    const double half = size_.z / 2;
    if (radius.mm() <= half + kSamePlace) {
        return refuse("its form would turn at " + shown(radius.mm()) +
                      ", and its hollow face would cross itself; thinner plies spring back less");
    }
    return true;
}

}  // namespace

std::optional<ResolvedBend> workOutBend(const Bend& bend,
                                        const Vec3& size,
                                        const RuleBook& rules,
                                        const Place& place,
                                        Evaluation& evaluation) {
    return BendReader(bend, size, rules, place, evaluation).read();
}

Outline bentEdge(const ResolvedBend& bend, double length, double thickness) {
    const double half = thickness / 2;
    const BentLine inner = between(beside(bend.line, -half), 0.0, length);
    const BentLine outer = between(beside(bend.line, half), 0.0, length);
    const bool bowsBack = bend.hollow == Face::FaceSide;
    const auto placed = [&](BentLine line) {
        for (OutlineVertex& vertex : line) {
            vertex.point.y = bowsBack ? half + vertex.point.y : half - vertex.point.y;
            vertex.bulge = bowsBack ? vertex.bulge : -vertex.bulge;
        }
        return line;
    };
    return bowsBack ? outlineBetween(placed(inner), placed(outer))
                    : outlineBetween(placed(outer), placed(inner));
}

namespace {

// How far one of the two bent faces, `by` off the middle line, lies off the chord at `x`.
double faceAt(const ResolvedBend& bend, double by, End end, double x, double length) {
    const BentLine face = beside(bend.line, by);
    return end == End::Start ? between(face, x, length).front().point.y
                             : between(face, 0.0, x).back().point.y;
}

}  // namespace

PlaneCut shoulderSquareToCurve(const ResolvedBend& bend, End end, double length, double thickness) {
    const double at = end == End::Start ? 0.0 : length;
    const double way = end == End::Start ? -1.0 : 1.0;
    const double heading = end == End::Start ? headingAtStart(bend.line) : headingAtEnd(bend.line);
    // Out of the end along the middle line; `off` the chord, towards the bow.
    const double out = way * std::cos(heading);
    const double off = way * std::sin(heading);
    const double hollow = faceAt(bend, -thickness / 2, end, at, length);
    const double bowed = faceAt(bend, thickness / 2, end, at, length);
    const double reach = out * at + std::min(off * hollow, off * bowed);
    const double bow = bend.hollow == Face::FaceSide ? 1.0 : -1.0;
    return {{{out, 0.0, bow * off}, reach + bow * off * thickness / 2}};
}

double openAtShoulder(const ResolvedPart& part, End end) {
    constexpr int kRounds = 30;  // each at least halves what is left
    if (!part.bend || part.bend->shoulders == BendShoulders::Chord) {
        return 0.0;
    }
    const double length = part.shoulderLength.value.mm();
    const double thickness = part.thickness.value.mm();
    const double start = end == End::Start ? 0.0 : length;
    const double bow = part.bend->hollow == Face::FaceSide ? 1.0 : -1.0;
    double most = 0.0;
    for (const double by : {-thickness / 2, thickness / 2}) {
        double x = start;
        for (int round = 0; round < kRounds; ++round) {
            const double z = thickness / 2 + bow * faceAt(*part.bend, by, end, x, length);
            x = endAt(part, end, 0.0, z);
        }
        most = std::max(most, std::abs(x - start));
    }
    return most;
}

}  // namespace shoulderline
