#include "core/drawing/joint_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/hatching.h"
#include "core/drawing/joint_section.h"
#include "core/drawing/scales.h"
#include "core/geometry/hidden_lines.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kBetweenColumns = 5.0;
constexpr double kBetweenRows = 3.0;
constexpr double kLargest = 300.0;  // mm: on screen the drawing keeps within about this width

void append(std::vector<Op>& ops, std::vector<Op> more) {
    ops.insert(
        ops.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

// A break: a straight line with a zigzag in its middle, running over the outline at both ends (ISO
// 128-2, 01.1).
Stroke breakLine(Vec2 a, Vec2 b) {
    constexpr double kOverrun = 3.0;
    const double length = norm(b - a);
    const Vec2 along = (b - a) * (length > 0.0 ? 1.0 / length : 0.0);
    const Vec2 across{-along.y, along.x};
    const Vec2 middle = (a + b) * 0.5;
    const double zig = std::min(2.5, length / 6.0);
    return {{a - along * kOverrun,
             middle - along * zig,
             middle - along * (zig * 0.5) + across * zig,
             middle + along * (zig * 0.5) - across * zig,
             middle + along * zig,
             b + along * kOverrun},
            LineRole::Dimension};
}

// A way of looking at the joint. On the cheek: along its z; on the edge: along its y; at the ends:
// along its x, at the tenon's end from the mortised part, at the mouth from the tenoned one.
struct Looking {
    View view;
    int downAxis = 1;      // the axis of the joint's frame that runs down or up the sheet
    double downWay = 1.0;  // +1 where it runs down
};
constexpr Looking kOnCheek{{{1, 0, 0}, {0, -1, 0}, {0, 0, -1}}, 1, 1.0};
constexpr Looking kOnEdge{{{1, 0, 0}, {0, 0, 1}, {0, -1, 0}}, 2, -1.0};
constexpr Looking kOnMouth{{{0, 0, -1}, {0, -1, 0}, {-1, 0, 0}}, 1, 1.0};
constexpr Looking kOnTenon{{{0, 0, 1}, {0, -1, 0}, {1, 0, 0}}, 1, 1.0};

class Pictures {
  public:
    Pictures(const Piece& piece,
             const ResolvedPiece& resolved,
             std::size_t index,
             const JointStyle& style,
             const TextMetrics& metrics)
        : piece_(piece),
          joint_(resolved.joints[index]),
          subject_{SubjectKind::Joint, index},
          members_(membersOf(resolved, index)),
          style_(style),
          scale_(style.scale),
          metrics_(metrics) {}

    // Everything in projection, the edge over the cheek in third angle.
    [[nodiscard]] std::vector<Op> compose(bool isThirdAngle) const;

  private:
    [[nodiscard]] Vec2 onSheet(Vec3 p, const Looking& looking) const {
        const Vec2 seen = looking.view.project(p);
        return {seen.x * scale_, -seen.y * scale_};
    }
    [[nodiscard]] Rect onSheet(const Box& box, const Looking& looking) const {
        Rect rect{onSheet(box.min, looking), onSheet(box.min, looking)};
        rect.include(onSheet(box.max, looking));
        return rect;
    }
    [[nodiscard]] bool liesInCut(const ViewEdge& edge, const Looking& looking) const;
    void draw(std::vector<Polyhedron> solids,
              const std::vector<Hollow>& hollows,
              const Looking& looking,
              std::vector<Op>& ops) const;
    // The rail with its tenons, which a loose one is not a part of.
    [[nodiscard]] std::vector<Polyhedron> railSolids(bool withLoose) const;
    void addRailBreak(const Looking& looking, std::vector<Op>& ops) const;
    void addPostBreaks(const Looking& looking, std::vector<Op>& ops) const;
    [[nodiscard]] std::vector<Op> rail(const Looking& looking) const;
    [[nodiscard]] std::vector<Op> post(const Looking& looking) const;
    [[nodiscard]] std::vector<Op> together() const;
    [[nodiscard]] std::vector<Op> section() const;
    void addCuttingPlane(const Rect& bounds, std::vector<Op>& ops) const;
    void addLabel(const std::string& text, std::vector<Op>& ops) const;
    [[nodiscard]] SizeToPlace size(
        double from, double to, double depth, double value, std::string of) const {
        return {std::min(from, to),
                std::max(from, to),
                depth,
                depth,
                showLength(Length::mm(value), piece_.style),
                value,
                std::move(of),
                subject_,
                0};
    }

    const Piece& piece_;
    const ResolvedJoint& joint_;
    Subject subject_;
    JointMembers members_;
    JointStyle style_;
    double scale_;
    const TextMetrics& metrics_;
};

// Sawn-off ends are drawn as breaks instead.
bool Pictures::liesInCut(const ViewEdge& edge, const Looking& looking) const {
    const auto liesAt = [&](int axis, double at) {
        Vec3 direction;
        direction[axis] = 1.0;
        const Vec2 seen = looking.view.project(direction);
        const auto offset = [&](Vec2 p) { return dot(p, seen) - at * dot(seen, seen); };
        return norm(seen) > 0.5 && std::abs(offset(edge.a)) < 1e-6 &&
               std::abs(offset(edge.b)) < 1e-6;
    };
    const int axis = members_.postAxis;
    return (members_.railIsCut && liesAt(0, members_.rail.min.x)) ||
           (members_.postIsCutLow && liesAt(axis, members_.post.min[axis])) ||
           (members_.postIsCutHigh && liesAt(axis, members_.post.max[axis]));
}

std::vector<Polyhedron> Pictures::railSolids(bool withLoose) const {
    std::vector<Polyhedron> solids{Polyhedron::box(members_.rail)};
    if (!members_.isLoose || withLoose) {
        solids.insert(solids.end(), members_.tenons.begin(), members_.tenons.end());
    }
    return solids;
}

void Pictures::draw(std::vector<Polyhedron> solids,
                    const std::vector<Hollow>& hollows,
                    const Looking& looking,
                    std::vector<Op>& ops) const {
    std::vector<ViewEdge> edges = hiddenLines(solids, looking.view);
    int number = static_cast<int>(solids.size());
    for (const Hollow& hollow : hollows) {
        const bool isMouthSeen = dot(hollow.outward, looking.view.towardsViewer) > 0.5;
        for (ViewEdge edge : hiddenLines({&hollow.solid, 1}, looking.view)) {
            edge.visible = isMouthSeen;
            edge.solid = number;
            edges.push_back(edge);
        }
        ++number;
    }
    for (const ViewEdge& edge : mergeCoincident(edges)) {
        if (!liesInCut(edge, looking)) {
            const auto place = [&](Vec2 p) { return Vec2{p.x * scale_, -p.y * scale_}; };
            ops.push_back(Stroke{{place(edge.a), place(edge.b)},
                                 edge.visible ? LineRole::Visible : LineRole::Hidden});
        }
    }
}

void Pictures::addRailBreak(const Looking& looking, std::vector<Op>& ops) const {
    if (members_.railIsCut) {
        const Rect rail = onSheet(members_.rail, looking);
        ops.push_back(breakLine(rail.min, {rail.min.x, rail.max.y}));
    }
}

void Pictures::addPostBreaks(const Looking& looking, std::vector<Op>& ops) const {
    const int axis = members_.postAxis;
    Vec3 direction;
    direction[axis] = 1.0;
    const Vec2 seen = looking.view.project(direction);
    if (norm(seen) < 0.5) {
        return;
    }
    for (const bool isLow : {true, false}) {
        if (!(isLow ? members_.postIsCutLow : members_.postIsCutHigh)) {
            continue;
        }
        Box end = members_.post;
        (isLow ? end.max : end.min)[axis] = isLow ? end.min[axis] : end.max[axis];
        const Rect line = onSheet(end, looking);
        ops.push_back(breakLine(line.min, line.max));
    }
}

void Pictures::addLabel(const std::string& text, std::vector<Op>& ops) const {
    const Rect all = boundsOf(ops, metrics_);
    const double height = style_.dimensions.height;
    ops.push_back(
        TextOp{{all.min.x, all.max.y + 2.0 + height}, text, height, Align::Left, false, false});
}

// The tenoned member by itself, with the sizes of its tenon.
std::vector<Op> Pictures::rail(const Looking& looking) const {
    std::vector<Op> ops;
    draw(railSolids(false), members_.ownHollows, looking, ops);
    addRailBreak(looking, ops);
    const bool onCheek = looking.downAxis == 1;
    const Rect tenon = onSheet(members_.tenon, looking);
    const Rect rail = onSheet(members_.rail, looking);
    const Tenon& t = joint_.tenon;
    const bool startIsTop = looking.downWay > 0.0;
    const Size& shoulder = onCheek ? t.shoulders.faceEdge : t.shoulders.faceSide;
    SizeToPlace shoulderSize =
        size(startIsTop ? rail.min.y : rail.max.y,
             startIsTop ? tenon.min.y : tenon.max.y,
             0.0,
             shoulder.value.mm(),
             onCheek ? "shoulder at the face edge" : "shoulder at the face side");
    (startIsTop ? shoulderSize.fromDepth : shoulderSize.toDepth) = tenon.max.x - rail.max.x;
    append(ops,
           placeSizes({shoulderSize,
                       size(tenon.min.y,
                            tenon.max.y,
                            0.0,
                            (onCheek ? t.width : t.thickness).value.mm(),
                            onCheek ? "tenon width" : "tenon thickness")},
                      DimensionSide::RightOf,
                      tenon.max.x,
                      style_.dimensions,
                      metrics_));
    if (onCheek) {
        SizeToPlace length = size(0.0, tenon.max.x, 0.0, t.length.value.mm(), "tenon length");
        length.toDepth = rail.max.y - tenon.max.y;
        append(ops,
               placeSizes({length}, DimensionSide::Below, rail.max.y, style_.dimensions, metrics_));
    }
    return ops;
}

// The mortised member by itself, with the sizes of its mortise.
std::vector<Op> Pictures::post(const Looking& looking) const {
    std::vector<Op> ops;
    draw({Polyhedron::box(members_.post)}, members_.hollows, looking, ops);
    addPostBreaks(looking, ops);
    // Clear of the breaks, whose zigzags and ends stand out a little.
    const Rect drawn = boundsOf(ops, metrics_);
    const bool onCheek = looking.downAxis == 1;
    const Rect mortise = onSheet(members_.mortise, looking);
    const Rect post = onSheet(members_.post, looking);
    const double depth = drawn.max.x - mortise.max.x;
    std::vector<SizeToPlace> sizes{size(mortise.min.y,
                                        mortise.max.y,
                                        depth,
                                        mortise.size().y / scale_,
                                        onCheek ? "mortise length" : "mortise width")};
    if (members_.referenceAxis == looking.downAxis) {
        const double face = looking.downWay * members_.reference * scale_;
        const double near = std::abs(face - mortise.min.y) < std::abs(face - mortise.max.y)
                                ? mortise.min.y
                                : mortise.max.y;
        SizeToPlace fromFace =
            size(face, near, drawn.max.x - post.max.x, std::abs(face - near) / scale_, "from face");
        (face < near ? fromFace.toDepth : fromFace.fromDepth) = depth;
        sizes.push_back(fromFace);
    }
    append(ops,
           placeSizes(
               std::move(sizes), DimensionSide::RightOf, drawn.max.x, style_.dimensions, metrics_));
    if (onCheek && !joint_.isThrough()) {
        SizeToPlace deep = size(
            0.0, mortise.max.x, drawn.max.y - post.max.y, mortise.max.x / scale_, "mortise depth");
        deep.toDepth = drawn.max.y - mortise.max.y;
        append(ops,
               placeSizes({deep}, DimensionSide::Below, drawn.max.y, style_.dimensions, metrics_));
    }
    return ops;
}

// The ends of the line along which the section is taken, with arrows that look the way it does.
void Pictures::addCuttingPlane(const Rect& bounds, std::vector<Op>& ops) const {
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

std::vector<Op> Pictures::together() const {
    std::vector<Op> ops;
    std::vector<Polyhedron> both = railSolids(true);
    both.push_back(Polyhedron::box(members_.post));
    draw(std::move(both), members_.hollows, kOnEdge, ops);
    addRailBreak(kOnEdge, ops);
    addPostBreaks(kOnEdge, ops);
    addCuttingPlane(boundsOf(ops, metrics_), ops);
    return ops;
}

// Both members cut through the middle of the tenon: along the grain hatched with it, across it at
// 45 degrees.
std::vector<Op> Pictures::section() const {
    const JointSection cut = sectionOf(members_, scale_);
    std::vector<Op> ops;
    const auto add = [&](const std::vector<Ring>& rings, const auto& isSawn) {
        for (const SectionLine& line : outlineOf(rings)) {
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
    const int axis = members_.postAxis;
    add(wood, [&](const SectionLine& line) {
        return members_.railIsCut && liesAt(line, 0, members_.rail.min.x * scale_);
    });
    add({cut.post}, [&](const SectionLine& line) {
        return axis != 2 &&
               ((members_.postIsCutLow && liesAt(line, axis, members_.post.min[axis] * scale_)) ||
                (members_.postIsCutHigh && liesAt(line, axis, members_.post.max[axis] * scale_)));
    });
    const auto nothing = [](const SectionLine&) { return false; };
    add(cut.hollows, nothing);
    add(cut.ownHollows, nothing);
    if (members_.isLoose) {
        add(cut.tenons, nothing);
    }
    addRailBreak(kOnCheek, ops);
    addPostBreaks(kOnCheek, ops);
    if (members_.isLoose) {
        append(ops, hatch({cut.tenons, {}}, Angle(), kHatchSpacing));
    }
    append(ops, hatch({wood, cut.ownHollows}, Angle(), kHatchSpacing));
    const Angle grain = Angle::degrees(axis == 1 ? 90.0 : (axis == 0 ? 0.0 : 45.0));
    append(ops, hatch({{cut.post}, cut.hollows}, grain, kHatchSpacing));
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

std::vector<Op> Pictures::compose(bool isThirdAngle) const {
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
    draw({Polyhedron::box(members_.post)}, members_.hollows, kOnMouth, mouth);
    addPostBreaks(kOnMouth, mouth);
    addLabel("mouth", mouth);
    std::vector<Op> tenon;
    draw(railSolids(false), members_.ownHollows, kOnTenon, tenon);
    addLabel("tenon", tenon);
    for (std::vector<Op>* ops : {&mouth, &tenon}) {
        const Rect bounds = boundsOf(*ops, metrics_);
        move(*ops, {x - bounds.min.x, 0.0});
        x += bounds.size().x + kBetweenColumns;
        append(grid[2][1], std::move(*ops));
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
    return all;
}

// The largest standard scale at which the drawing keeps to about the width of a screen.
double scaleForScreen(const JointMembers& members, Unit unit) {
    const double long_ = members.rail.size().x + 2.0 * members.tenon.size().x +
                         2.0 * members.post.size().x + members.post.size().z;
    constexpr double kSizes = 80.0;
    return scaleThatFits(2.0 * long_, 2.0 * (kLargest - kSizes), unit);
}

}  // namespace

Sheet drawJoint(const Piece& piece,
                const ResolvedPiece& resolved,
                std::size_t joint,
                const JointStyle& style,
                const TextMetrics& metrics) {
    constexpr double kMargin = 2.0;
    Sheet sheet;
    sheet.title = resolved.joints[joint].name;
    sheet.ops.push_back(BeginGroup{{SubjectKind::Joint, joint}, sheet.title});
    append(sheet.ops,
           Pictures(piece, resolved, joint, style, metrics).compose(piece.unit == Unit::Inch));
    sheet.ops.push_back(EndGroup{});
    const Rect bounds = boundsOf(sheet.ops, metrics);
    move(sheet.ops, Vec2{kMargin, kMargin} - bounds.min);
    sheet.size = bounds.size() + Vec2{2.0 * kMargin, 2.0 * kMargin};
    return sheet;
}

Sheet jointDrawing(const Piece& piece,
                   const ResolvedPiece& resolved,
                   std::size_t joint,
                   const TextMetrics& metrics) {
    if (!resolved.joints[joint].hasTenon()) {
        constexpr double kHeight = 3.5;
        Sheet sheet;
        sheet.title = resolved.joints[joint].name;
        sheet.ops.push_back(TextOp{
            {4.0, 4.0 + kHeight}, "rests: no joint is cut", kHeight, Align::Left, false, false});
        sheet.size = boundsOf(sheet.ops, metrics).max + Vec2{4.0, 4.0};
        return sheet;
    }
    JointStyle style;
    style.scale = scaleForScreen(membersOf(resolved, joint), piece.unit);
    Sheet sheet = drawJoint(piece, resolved, joint, style, metrics);
    constexpr double kHeight = 3.5;
    sheet.ops.push_back(TextOp{{2.0, sheet.size.y + kHeight},
                               "scale " + scaleText(style.scale),
                               kHeight,
                               Align::Left,
                               false,
                               false});
    sheet.size.y += 2.0 * kHeight;
    return sheet;
}

}  // namespace shoulderline
