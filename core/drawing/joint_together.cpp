#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/break_line.h"
#include "core/drawing/dimension_parts.h"
#include "core/drawing/hatching.h"
#include "core/drawing/joint_pictures.h"

namespace shoulderline {

namespace {

constexpr double kBetweenColumns = 5.0;
constexpr double kBetweenRows = 3.0;

}  // namespace

// The ends of the line along which the section is taken, with arrows that look the way it does.
void JointPictures::addCuttingPlane(const Rect& bounds, std::vector<Op>& ops) const {
    constexpr double kStroke = 3.0;
    constexpr double kArrow = 3.75;
    const double letter = 1.4 * style_.dimensions.height;
    const double y = -members_.tenon.centre().z * scale_;
    for (const double way : {-1.0, 1.0}) {
        const double inner = (way < 0.0 ? bounds.min.x : bounds.max.x) + way * 2.0;
        const Vec2 outer{inner + way * kStroke, y};
        ops.push_back(Stroke{{{inner, y}, outer}, LineRole::Visible});
        ops.push_back(Stroke{{outer, outer - Vec2{0.0, kArrow + 2.0}}, LineRole::Dimension});
        Fill head = arrowhead(outer - Vec2{0.0, kArrow + 2.0}, outer, kArrow);
        ops.push_back(std::move(head));
        ops.push_back(TextOp{outer - Vec2{way * kStroke * 0.5, -1.5 - letter},
                             "A",
                             letter,
                             Align::Centre,
                             false,
                             false});
    }
}

std::vector<Op> JointPictures::together() const {
    std::vector<Op> ops;
    std::vector<Polyhedron> both = railSolids(true);
    both.push_back(members_.postSolid);
    both.insert(both.end(), members_.smalls.begin(), members_.smalls.end());
    draw(std::move(both), members_.hollows, kOnEdge, ops);
    addHornLines(kOnEdge, ops);
    addRailBreak(kOnEdge, ops);
    addPostBreaks(kOnEdge, ops);
    addCuttingPlane(boundsOf(ops, metrics_), ops);
    return ops;
}

// Both members cut through the middle of the tenon: along the grain hatched with it, across it at
// 45 degrees.
std::vector<Op> JointPictures::section() const {
    const SectionedJoint cut = sectionOf(members_, scale_);
    std::vector<Op> ops;
    const auto add = [&](const std::vector<Ring>& rings,
                         const auto& isSawn,
                         const std::vector<Ring>& under = {}) {
        for (const SectionLine& line : outlineOf(rings, under)) {
            if (!isSawn(line)) {
                ops.push_back(Stroke{{line.a, line.b}, LineRole::Visible});
            }
        }
    };
    const auto liesAt = [](const SectionLine& line, int axis, double at) {
        const double a = axis == 0 ? line.a.x : line.a.y;
        const double b = axis == 0 ? line.b.x : line.b.y;
        return std::abs(a - at) < 1e-6 && std::abs(b - at) < 1e-6;
    };
    std::vector<Ring> wood{cut.rail};
    if (!members_.isLoose) {
        wood.insert(wood.end(), cut.tenons.begin(), cut.tenons.end());
    }
    add(wood, [&](const SectionLine& line) {
        return members_.railIsCut && liesAt(line, 0, members_.rail.min.x * scale_);
    });
    // No line of the mouth goes through the tenon and the wedges that fill it.
    std::vector<Ring> filling{cut.rail};
    filling.insert(filling.end(), cut.tenons.begin(), cut.tenons.end());
    filling.insert(filling.end(), cut.smalls.begin(), cut.smalls.end());
    const auto isPostSawn = [&](const SectionLine& line) {
        return std::any_of(
            members_.postSawn.begin(), members_.postSawn.end(), [&](const auto& sawn) {
                return sawn.axis != 2 && liesAt(line, sawn.axis, members_.at(sawn) * scale_);
            });
    };
    const auto nothing = [](const SectionLine&) { return false; };
    add(cut.post, isPostSawn, filling);
    add(cut.hollows, nothing, filling);
    add(cut.ownHollows, nothing);
    if (members_.isLoose) {
        add(cut.tenons, nothing);
    }
    addRailBreak(kOnCheek, ops);
    addPostBreaks(kOnCheek, ops);
    if (members_.isLoose) {
        append(ops, hatch({cut.tenons, {}}, Angle(), kHatchSpacing));
    }
    for (const Ring& small : cut.smalls) {
        add({small}, nothing);
        append(ops, hatch({{small}, {}}, Angle::degrees(-45.0), kHatchSpacing));
    }
    addHornLines(kOnCheek, ops);
    // A wedge in a kerf has pushed the wood beside it out.
    std::vector<Ring> notWood = cut.ownHollows;
    notWood.insert(notWood.end(), cut.smalls.begin(), cut.smalls.end());
    // Hatching ends where the wood is broken off.
    for (const Stroke& line : breakLines(true, kOnCheek)) {
        wood.front() = brokenOff(wood.front(), line);
    }
    std::vector<Ring> post = cut.post;
    for (const Stroke& line : breakLines(false, kOnCheek)) {
        for (Ring& ring : post) {
            ring = brokenOff(ring, line);
        }
    }
    append(ops, hatch({wood, notWood}, Angle(), kHatchSpacing));
    const Angle grain =
        Angle::degrees(members_.postAxis == 1 ? 90.0 : (members_.postAxis == 0 ? 0.0 : 45.0));
    append(ops, hatch({std::move(post), cut.hollows}, grain, kHatchSpacing));
    const Rect all = boundsOf(ops, metrics_);
    const double letter = 1.4 * style_.dimensions.height;
    ops.push_back(TextOp{{(all.min.x + all.max.x) / 2.0, all.max.y + 2.0 + letter},
                         "A\u2013A",
                         letter,
                         Align::Centre,
                         false,
                         false});
    return ops;
}

std::vector<Op> JointPictures::compose(bool isThirdAngle) const {
    // Columns: the tenoned member, the mortised one, both together; rows: on the edge, on the
    // cheek.
    std::array<std::array<std::vector<Op>, 2>, 3> grid{{{rail(kOnEdge), rail(kOnCheek)},
                                                        {post(kOnEdge), post(kOnCheek)},
                                                        {together(), section()}}};
    addLabel("on the edge", grid[0][0]);
    addLabel("on the cheek", grid[0][1]);
    std::array<double, 2> top{1e18, 1e18};
    std::array<double, 2> bottom{-1e18, -1e18};
    double x = 0.0;
    for (auto& column : grid) {
        double left = 1e18;
        double right = -1e18;
        for (const std::vector<Op>& ops : column) {
            const Rect bounds = boundsOf(ops, metrics_);
            left = std::min(left, bounds.min.x);
            right = std::max(right, bounds.max.x);
        }
        for (std::vector<Op>& ops : column) {
            move(ops, {x - left, 0.0});
        }
        x += right - left + kBetweenColumns;
    }
    std::vector<Op> mouth;
    draw({members_.postSolid}, members_.hollows, kOnMouth, mouth);
    addPostBreaks(kOnMouth, mouth);
    addPostMarks(kOnMouth, mouth);
    addLabel("mouth", mouth);
    std::vector<Op> tenon;
    draw(railSolids(false), members_.ownHollows, kOnTenon, tenon);
    addLabel(tenonWord(), tenon);
    std::vector<std::vector<Op>*> beside{&mouth, &tenon};
    std::vector<Op> ownWedge;
    if (members_.wedge) {
        ownWedge = wedge();
        beside.push_back(&ownWedge);
    }
    std::vector<Op> ends;
    double endsRight = 0.0;
    for (std::vector<Op>* ops : beside) {
        const Rect bounds = boundsOf(*ops, metrics_);
        move(*ops, {endsRight - bounds.min.x, 0.0});
        endsRight += bounds.size().x + kBetweenColumns;
        append(ends, std::move(*ops));
    }
    if (!style_.areEndsBelow) {
        move(ends, {x, 0.0});
        append(grid[2][1], std::move(ends));
    }
    for (const auto& column : grid) {
        for (std::size_t row = 0; row < 2; ++row) {
            const Rect bounds = boundsOf(column[row], metrics_);
            top[row] = std::min(top[row], bounds.min.y);
            bottom[row] = std::max(bottom[row], bounds.max.y);
        }
    }
    std::vector<Op> all;
    const std::size_t upper = isThirdAngle ? 0 : 1;
    const double down = bottom[upper] + kBetweenRows - top[1 - upper];
    for (auto& column : grid) {
        move(column[1 - upper], {0.0, down});
        append(all, std::move(column[0]));
        append(all, std::move(column[1]));
    }
    if (style_.areEndsBelow) {
        const Rect above = boundsOf(all, metrics_);
        move(ends, {above.min.x, above.max.y + kBetweenRows - boundsOf(ends, metrics_).min.y});
        append(all, std::move(ends));
    }
    return all;
}

}  // namespace shoulderline
