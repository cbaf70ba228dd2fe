#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <span>

#include "core/check/checks.h"
#include "core/check/figure_text.h"
#include "core/geometry/spatial_index.h"
#include "core/measure/angle_text.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kTouch = 0.01;     // mm: nearer than this is a touch
constexpr double kLeastInto = 1.0;  // cubic millimetres: facets of an arc may share as much
constexpr int kMostBetween = 200;   // leans looked at from one station to the next

bool overlapBy(const Box& a, const Box& b, double least) {
    for (int k = 0; k < 3; ++k) {
        if (std::min(a.max[k], b.max[k]) - std::max(a.min[k], b.min[k]) < least) {
            return false;
        }
    }
    return true;
}

std::vector<ConvexSolid> solidsOf(const ResolvedPart& part) {
    std::vector<ConvexSolid> solids = part.wood().pieces();
    for (const TenonSolid& tenon : part.tenons) {
        solids.push_back(tenon.solid());
    }
    return solids;
}

// Around the body with its tenons, in the part's own frame.
Box ownBounds(const ResolvedPart& part) {
    Box bounds = part.overBox();
    for (const Box& piece : part.wood().boundsOfPieces()) {
        bounds = Box::around(bounds, piece);
    }
    return bounds;
}

// A part's wood in its own frame, with the box around each piece.
struct Wood {
    std::vector<ConvexSolid> solids;
    std::vector<Box> bounds;
};

Wood woodOf(const ResolvedPart& part) {
    Wood wood;
    wood.solids = solidsOf(part);
    for (const ConvexSolid& solid : wood.solids) {
        wood.bounds.push_back(solid.bounds());
    }
    return wood;
}

// Around each part with its tenons: in its own frame, and in the piece's space.
struct PartBounds {
    std::vector<Box> own;
    std::vector<Box> inSpace;
    SpatialIndex index;  // of inSpace
};

PartBounds boundsOf(const std::vector<ResolvedPart>& parts) {
    std::vector<Box> own;
    std::vector<Box> inSpace;
    for (const ResolvedPart& part : parts) {
        own.push_back(ownBounds(part));
        inSpace.push_back(part.frame.outerBounds(own.back()));
    }
    SpatialIndex index{std::span<const Box>(inSpace)};
    return {std::move(own), std::move(inSpace), std::move(index)};
}

// Volume that both share; `there` is the frame of `b` in that of `a`.
double shared(const Wood& a, const Wood& b, const Frame& there) {
    double volume = 0.0;
    for (std::size_t i = 0; i < b.solids.size(); ++i) {
        const Box around = there.outerBounds(b.bounds[i]);
        std::optional<ConvexSolid> moved;
        for (std::size_t k = 0; k < a.solids.size(); ++k) {
            if (!a.bounds[k].meets(around)) {
                continue;
            }
            if (!moved) {
                moved = b.solids[i].transformed(there);
            }
            if (const std::optional<ConvexSolid> both = intersection(a.solids[k], *moved)) {
                volume += both->volume();
            }
        }
    }
    return volume;
}

// The leans to look at, with the station that each lies at or next after.
struct Lean {
    Angle lean;
    std::size_t station = 0;
    bool isAtStation = true;
};
// All stations, and leans between them no further apart than `step` radians.
std::vector<Lean> leansOf(const ResolvedSwing& swing, double step) {
    std::vector<std::size_t> order(swing.positions.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return swing.positions[a].lean < swing.positions[b].lean;
    });
    std::vector<Lean> leans;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const double now = swing.positions[order[i]].lean.radians();
        leans.push_back({Angle::radians(now), order[i], true});
        if (i + 1 == order.size()) {
            break;
        }
        const double next = swing.positions[order[i + 1]].lean.radians();
        const int between =
            std::clamp(static_cast<int>(std::ceil((next - now) / step)), 1, kMostBetween);
        for (int k = 1; k < between; ++k) {
            leans.push_back(
                {Angle::radians(now + (next - now) * k / between), order[i + 1], false});
        }
    }
    return leans;
}

class SwingChecker {
  public:
    SwingChecker(const CheckContext& context,
                 const ResolvedSwing& swing,
                 const PartBounds& bounds,
                 std::vector<Finding>& findings)
        : context_(context),
          parts_(context.resolved.parts),
          swing_(swing),
          findings_(findings),
          own_(bounds.own),
          boxes_(bounds.inSpace),
          moving_(swing.moving.begin(), swing.moving.end()) {
        bounds.index.query(sweptBox(), [&](std::size_t i) {
            if (!moving_.contains(i) && i != swing.bar) {
                still_.push_back(i);
            }
        });
        std::sort(still_.begin(), still_.end());
    }

    void checkClear();
    void checkSpacers();
    void checkBearing();

  private:
    // Whether a pivot pin goes into that part.
    [[nodiscard]] bool isPinned(std::size_t part) const {
        return std::any_of(swing_.holes.begin(), swing_.holes.end(), [part](const SwingHole& hole) {
            return hole.part == part && !hole.station;
        });
    }
    [[nodiscard]] double step() const;
    const Wood& wood(std::size_t part) {
        const auto known = wood_.find(part);
        return known != wood_.end() ? known->second
                                    : wood_.emplace(part, woodOf(parts_[part])).first->second;
    }
    [[nodiscard]] double farthest() const;
    [[nodiscard]] Box sweptBox() const;
    void lookAt(const Lean& lean, std::set<std::pair<std::size_t, std::size_t>>& told);
    void tellInTheWay(std::size_t moving, std::size_t other, const Lean& lean, double volume);

    const CheckContext& context_;
    const std::vector<ResolvedPart>& parts_;
    const ResolvedSwing& swing_;
    std::vector<Finding>& findings_;
    const std::vector<Box>& own_;    // around each part, in its own frame
    const std::vector<Box>& boxes_;  // the same in the piece's space
    std::set<std::size_t> moving_;
    std::vector<std::size_t> still_;    // that what swings may come near to
    std::map<std::size_t, Wood> wood_;  // of what was looked at
};

// "95.6 cm³", "40 mm³": never a nought for wood that is in the way.
std::string volumeText(double cubicMillimetres) {
    return cubicMillimetres < 100.0 ? figureText(std::max(cubicMillimetres, 1.0), 0) + " mm\u00b3"
                                    : figureText(cubicMillimetres / 1000.0, 1) + " cm\u00b3";
}

void SwingChecker::tellInTheWay(std::size_t moving,
                                std::size_t other,
                                const Lean& lean,
                                double volume) {
    Finding finding = context_.finding(RuleId::SwingClear, Severity::MustMend);
    finding.parts = {moving, other};
    finding.value = lean.lean.degrees();
    finding.unit = "deg";
    const std::string& station = swing_.positions[lean.station].name;
    finding.message = "{other} is in the way of {part} at a lean of " + showAngle(lean.lean) +
                      (lean.isAtStation ? ", station '" + station + "'"
                                        : ", on the way to station '" + station + "'") +
                      ": they would share " + volumeText(volume);
    finding.mends.push_back(
        {"move the pivot or the station, or make one of them narrower or "
         "thinner",
         std::nullopt});
    findings_.push_back(std::move(finding));
}

void SwingChecker::lookAt(const Lean& lean, std::set<std::pair<std::size_t, std::size_t>>& told) {
    std::vector<std::size_t> others = still_;
    const Frame barFrame = swing_.barAt(parts_[swing_.bar].frame, swing_.positions[lean.station]);
    const Box barBox = barFrame.outerBounds(own_[swing_.bar]);
    if (lean.isAtStation) {
        others.push_back(swing_.bar);
    }
    for (const std::size_t i : swing_.moving) {
        const Frame frame = swing_.swungTo(parts_[i].frame, lean.lean);
        const Box box = frame.outerBounds(own_[i]);
        for (const std::size_t k : others) {
            const bool isBar = k == swing_.bar;
            if (told.contains({i, k}) || !overlapBy(box, isBar ? barBox : boxes_[k], kTouch)) {
                continue;
            }
            const Frame there = relativeFrame(frame, isBar ? barFrame : parts_[k].frame);
            const double volume = shared(wood(i), wood(k), there);
            if (volume > kLeastInto) {
                told.insert({i, k});
                tellInTheWay(i, k, lean, volume);
            }
        }
    }
}

// How far from the pivot's line what swings reaches.
double SwingChecker::farthest() const {
    double far = 1.0;
    for (const std::size_t i : swing_.moving) {
        const Box& box = boxes_[i];
        for (const double y : {box.min.y, box.max.y}) {
            for (const double z : {box.min.z, box.max.z}) {
                far = std::max(far, std::hypot(y - swing_.pivot.y, z - swing_.pivot.z));
            }
        }
    }
    return far;
}

// Around all that swings, wherever it stands.
Box SwingChecker::sweptBox() const {
    const double far = farthest();
    Box swept{{1e9, swing_.pivot.y - far, swing_.pivot.z - far},
              {-1e9, swing_.pivot.y + far, swing_.pivot.z + far}};
    for (const std::size_t i : swing_.moving) {
        swept.min.x = std::min(swept.min.x, boxes_[i].min.x);
        swept.max.x = std::max(swept.max.x, boxes_[i].max.x);
    }
    return swept;
}

// So far apart that nothing slips through between two leans: what is furthest from the pivot goes
// on by half of the thinnest part that swings.
double SwingChecker::step() const {
    double thin = 1e9;
    for (const std::size_t i : swing_.moving) {
        thin = std::min(thin, parts_[i].thickness.value.mm());
    }
    return thin / 2.0 / farthest();
}

void SwingChecker::checkClear() {
    std::set<std::pair<std::size_t, std::size_t>> told;
    for (const Lean& lean : leansOf(swing_, step())) {
        lookAt(lean, told);
    }
}

// Between what swings and what its pins go into there is room for the spacers.
void SwingChecker::checkSpacers() {
    if (swing_.spacer <= Length()) {
        return;
    }
    for (const std::size_t i : swing_.moving) {
        if (!isPinned(i)) {
            continue;
        }
        for (const SwingHole& hole : swing_.holes) {
            const std::size_t k = hole.part;
            const bool sameSide = boxes_[i].centre().x * boxes_[k].centre().x > 0.0;
            if (!sameSide || hole.station || moving_.contains(k)) {
                continue;
            }
            const double room =
                std::max(boxes_[k].min.x - boxes_[i].max.x, boxes_[i].min.x - boxes_[k].max.x);
            if (room >= swing_.spacer.mm() - kTouch) {
                continue;
            }
            Finding finding = context_.finding(RuleId::SwingSpacer, Severity::MustMend);
            finding.parts = {i, k};
            finding.value = room;
            finding.limit = swing_.spacer.mm();
            finding.unit = "mm";
            finding.message = "between {part} and {other} there is " + context_.shownMm(room) +
                              " for a spacer of " + context_.shown(swing_.spacer);
            finding.mends.push_back({"make the spacer " + context_.shownMm(std::max(room, 0.0)) +
                                         " thick, or what swings narrower",
                                     std::nullopt});
            findings_.push_back(std::move(finding));
        }
    }
}

// How far the bar lies on what carries it.
void SwingChecker::checkBearing() {
    const Caps* caps = std::get_if<Caps>(&context_.stated(swing_.bar).relation);
    const double least = context_.resolved.rules[RuleId::SwingBearing].value;
    if (caps == nullptr) {
        return;
    }
    for (const ResolvedJoint& joint : context_.resolved.joints) {
        const bool isBar = joint.mortised == swing_.bar || joint.tenoned == swing_.bar;
        if (!isBar || joint.kind != JointKind::Rests) {
            continue;
        }
        const std::size_t under = joint.mortised == swing_.bar ? joint.tenoned : joint.mortised;
        const Box& bar = boxes_[swing_.bar];
        const Box& carrier = boxes_[under];
        const double bears =
            std::min(bar.max.x, carrier.max.x) - std::max(bar.min.x, carrier.min.x);
        if (bears >= least - kTouch) {
            continue;
        }
        Finding finding = context_.finding(RuleId::SwingBearing, Severity::LookAt);
        finding.parts = {swing_.bar, under};
        finding.value = bears;
        finding.limit = least;
        finding.unit = "mm";
        finding.message = "{part} lies on {other} for " + context_.shownMm(bears) +
                          "; the rule book asks " + context_.shownMm(least);
        finding.mends.push_back(
            {"make the bar " + context_.shownMm(least - bears) + " longer at each end",
             std::nullopt});
        findings_.push_back(std::move(finding));
    }
}

}  // namespace

void checkSwings(const CheckContext& context, std::vector<Finding>& findings) {
    if (context.resolved.swings.empty()) {
        return;
    }
    const PartBounds bounds = boundsOf(context.resolved.parts);
    for (const ResolvedSwing& swing : context.resolved.swings) {
        SwingChecker checker(context, swing, bounds, findings);
        checker.checkClear();
        checker.checkSpacers();
        checker.checkBearing();
    }
}

}  // namespace shoulderline
