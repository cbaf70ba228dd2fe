#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/dimensioning.h"
#include "core/drawing/scales.h"
#include "core/drawing/sheets.h"
#include "core/geometry/hidden_lines.h"
#include "core/measure/length_text.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kRoomForSizes = 34.0;  // mm of sheet between the members drawn apart
constexpr double kBetweenPictures = 16.0;
constexpr double kLabelHeight = 3.5;
constexpr double kLargest = 300.0;  // mm: the drawing is made to keep within about this width

// Both members near the joint, as boxes in its frame: x into the mortised part, y along the tenon's
// width, z along its thickness, the shoulder at x = 0.
struct Members {
    Box rail;  // the tenoned part, cut off short
    Box tenon;
    Box post;  // the mortised part, cut off on either side
    Box mortise;
    int postAxis = 1;        // which way of the joint's frame the mortised part runs
    double reference = 0.0;  // where its reference face lies, along `referenceAxis`
    int referenceAxis = 2;
};

Box inJoint(const ResolvedJoint& joint, const ResolvedPart& part, const Box& box) {
    return relativeFrame(joint.frame, part.frame).outerBounds(box);
}

Members membersOf(const ResolvedPiece& resolved, const ResolvedJoint& joint, std::size_t index) {
    const ResolvedPart& tenoned = resolved.parts[joint.tenoned];
    const ResolvedPart& mortised = resolved.parts[joint.mortised];
    Members m;
    m.rail = inJoint(joint, tenoned, tenoned.bodyBox());
    for (const TenonSolid& tenon : tenoned.tenons) {
        if (tenon.joint == index) {
            m.tenon = inJoint(joint, tenoned, tenon.box);
        }
    }
    m.post = inJoint(joint, mortised, mortised.bodyBox());
    const Frame relative = relativeFrame(joint.frame, mortised.frame);
    for (const MortiseSolid& mortise : mortised.mortises) {
        if (mortise.joint == index) {
            m.mortise = inJoint(joint, mortised, mortise.box);
        }
    }
    const auto mainAxis = [](Vec3 v) {
        return std::abs(v.x) > 0.5 ? 0 : (std::abs(v.y) > 0.5 ? 1 : 2);
    };
    m.postAxis = mainAxis(relative.x);
    m.referenceAxis = mainAxis(joint.mortise.reference == Face::FaceEdge ? relative.y : relative.z);
    m.reference = relative.origin[m.referenceAxis];

    const double reach = std::max(1.3 * m.tenon.size().x, 0.5 * m.rail.size().y);
    m.rail.min.x = std::max(m.rail.min.x, -reach);
    const double beyond = std::max(0.6 * m.mortise.size()[m.postAxis], 0.35 * m.post.size().x);
    const double low =
        std::min(m.mortise.min[m.postAxis], m.rail.min[m.postAxis] * (m.postAxis == 0 ? 0.0 : 1.0));
    const double high =
        std::max(m.mortise.max[m.postAxis], m.postAxis == 0 ? 0.0 : m.rail.max[m.postAxis]);
    m.post.min[m.postAxis] = std::max(m.post.min[m.postAxis], low - beyond);
    m.post.max[m.postAxis] = std::min(m.post.max[m.postAxis], high + beyond);
    return m;
}

// A way of looking at the joint: along its z (on the cheek) or along its y (on the tenon's edge).
struct Looking {
    View view;
    int downAxis = 1;      // the axis of the joint's frame that runs down or up the sheet
    double downWay = 1.0;  // +1 where it runs down
    std::string label;
};

class Pictures {
  public:
    Pictures(const Piece& piece,
             const ResolvedPiece& resolved,
             std::size_t index,
             const TextMetrics& metrics)
        : piece_(piece),
          joint_(resolved.joints[index]),
          subject_{SubjectKind::Joint, index},
          members_(membersOf(resolved, joint_, index)),
          metrics_(metrics) {
        scale_ = 1.0;
        const double long_ =
            members_.rail.size().x + 2.0 * members_.tenon.size().x + members_.post.size().x;
        for (const double scale : standardScales(piece.unit)) {
            scale_ = scale;
            if (2.0 * long_ * scale + 2.0 * kRoomForSizes <= kLargest) {
                break;
            }
        }
    }

    [[nodiscard]] double scale() const { return scale_; }
    // Members apart and together, seen one way; y = 0 is the middle of the tenon.
    [[nodiscard]] std::vector<Op> row(const Looking& looking) const;

  private:
    [[nodiscard]] Vec2 onSheet(Vec3 p, const Looking& looking) const {
        return {p.x * scale_, looking.downWay * p[looking.downAxis] * scale_};
    }
    [[nodiscard]] Rect onSheet(const Box& box, const Looking& looking) const {
        Rect rect{onSheet(box.min, looking), onSheet(box.min, looking)};
        rect.include(onSheet(box.max, looking));
        return rect;
    }
    void draw(const std::vector<Box>& solids,
              bool withMortise,
              const Looking& looking,
              std::vector<Op>& ops) const;
    void addBreaks(const Rect& rail,
                   const Rect& post,
                   const Looking& looking,
                   std::vector<Op>& ops) const;
    void addSizes(const Looking& looking, double apart, std::vector<Op>& ops) const;
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
    Members members_;
    const TextMetrics& metrics_;
    double scale_ = 1.0;
};

void append(std::vector<Op>& ops, std::vector<Op> more) {
    ops.insert(
        ops.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

void Pictures::draw(const std::vector<Box>& boxes,
                    bool withMortise,
                    const Looking& looking,
                    std::vector<Op>& ops) const {
    std::vector<Polyhedron> solids;
    for (const Box& box : boxes) {
        solids.push_back(Polyhedron::box(box));
    }
    std::vector<ViewEdge> edges = hiddenLines(solids, looking.view);
    if (withMortise) {
        const Polyhedron hollow = Polyhedron::box(members_.mortise);
        for (ViewEdge edge : hiddenLines({&hollow, 1}, looking.view)) {
            edge.visible = false;
            edge.solid = static_cast<int>(solids.size());
            edges.push_back(edge);
        }
    }
    // Sawn-off ends are drawn as breaks instead.
    const auto isCut = [&](const ViewEdge& edge) {
        const double left = members_.rail.min.x;
        return std::abs(edge.a.x - left) < 1e-6 && std::abs(edge.b.x - left) < 1e-6;
    };
    const double up = looking.view.up[looking.downAxis];
    const auto isPostCut = [&](const ViewEdge& edge) {
        if (members_.postAxis != looking.downAxis) {
            return false;
        }
        const auto liesAt = [&](double y) {
            return std::abs(edge.a.y - up * y) < 1e-6 && std::abs(edge.b.y - up * y) < 1e-6;
        };
        return liesAt(members_.post.min[looking.downAxis]) ||
               liesAt(members_.post.max[looking.downAxis]);
    };
    for (const ViewEdge& edge : mergeCoincident(edges)) {
        if (isCut(edge) || isPostCut(edge)) {
            continue;
        }
        const auto place = [&](Vec2 p) { return Vec2{p.x * scale_, -p.y * scale_}; };
        ops.push_back(Stroke{{place(edge.a), place(edge.b)},
                             edge.visible ? LineRole::Visible : LineRole::Hidden});
    }
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

void Pictures::addBreaks(const Rect& rail,
                         const Rect& post,
                         const Looking& looking,
                         std::vector<Op>& ops) const {
    ops.push_back(breakLine(rail.min, {rail.min.x, rail.max.y}));
    if (members_.postAxis == looking.downAxis) {
        ops.push_back(breakLine(post.min, {post.max.x, post.min.y}));
        ops.push_back(breakLine({post.min.x, post.max.y}, post.max));
    }
}

void Pictures::addSizes(const Looking& looking, double apart, std::vector<Op>& ops) const {
    const bool onCheek = looking.downAxis == 1;
    const Rect tenon = onSheet(members_.tenon, looking);
    const Rect rail = onSheet(members_.rail, looking);
    const Rect mortise = onSheet(members_.mortise, looking);
    const Rect post = onSheet(members_.post, looking);
    const Tenon& t = joint_.tenon;

    const double tip = tenon.max.x;
    std::vector<SizeToPlace> beside;
    const bool startIsTop = looking.downWay > 0.0;
    const Size& shoulder = onCheek ? t.shoulders.faceEdge : t.shoulders.faceSide;
    SizeToPlace shoulderSize =
        size(startIsTop ? rail.min.y : rail.max.y,
             startIsTop ? tenon.min.y : tenon.max.y,
             0.0,
             shoulder.value.mm(),
             onCheek ? "shoulder at the face edge" : "shoulder at the face side");
    (startIsTop ? shoulderSize.fromDepth : shoulderSize.toDepth) = tip - rail.max.x;
    beside.push_back(shoulderSize);
    const Size& across = onCheek ? t.width : t.thickness;
    beside.push_back(size(tenon.min.y,
                          tenon.max.y,
                          0.0,
                          across.value.mm(),
                          onCheek ? "tenon width" : "tenon thickness"));
    append(ops, placeSizes(std::move(beside), DimensionSide::RightOf, tip, {}, metrics_));

    std::vector<SizeToPlace> atPost;
    const double right = post.max.x + apart;
    const double mouthDepth = post.max.x - mortise.max.x;
    // The mortise is measured at its mouth's two sides; its width is that of the tenon, but lies in
    // the other member.
    atPost.push_back(size(mortise.min.y,
                          mortise.max.y,
                          mouthDepth,
                          mortise.size().y / scale_,
                          onCheek ? "mortise length" : "mortise width"));
    if (members_.referenceAxis == looking.downAxis) {
        const double face = looking.downWay * members_.reference * scale_;
        const double near = std::abs(face - mortise.min.y) < std::abs(face - mortise.max.y)
                                ? mortise.min.y
                                : mortise.max.y;
        SizeToPlace fromFace = size(face, near, 0.0, std::abs(face - near) / scale_, "from face");
        (face < near ? fromFace.toDepth : fromFace.fromDepth) = mouthDepth;
        atPost.push_back(fromFace);
    }
    append(ops, placeSizes(std::move(atPost), DimensionSide::RightOf, right, {}, metrics_));

    if (onCheek) {
        const double floor = std::max(rail.max.y, post.max.y);
        std::vector<SizeToPlace> below;
        below.push_back(size(0.0, tip, 0.0, t.length.value.mm(), "tenon length"));
        below.back().fromDepth = floor - rail.max.y;
        below.back().toDepth = floor - tenon.max.y;
        if (joint_.kind != JointKind::Through) {
            below.push_back(size(apart,
                                 apart + mortise.max.x,
                                 floor - post.max.y,
                                 mortise.max.x / scale_,
                                 "mortise depth"));
            below.back().toDepth = floor - mortise.max.y;
        }
        append(ops, placeSizes(std::move(below), DimensionSide::Below, floor, {}, metrics_));
    }
}

std::vector<Op> Pictures::row(const Looking& looking) const {
    const double apart = members_.tenon.size().x * scale_ + kRoomForSizes;
    std::vector<Op> post;
    draw({members_.post}, true, looking, post);
    const Rect railRect = onSheet(members_.rail, looking);
    const Rect postRect = onSheet(members_.post, looking);

    std::vector<Op> ops;
    draw({members_.rail, members_.tenon}, false, looking, ops);
    move(post, {apart, 0.0});
    append(ops, std::move(post));
    Rect shifted = postRect;
    shifted.min.x += apart;
    shifted.max.x += apart;
    addBreaks(railRect, shifted, looking, ops);
    addSizes(looking, apart, ops);

    std::vector<Op> together;
    draw({members_.rail, members_.tenon, members_.post}, true, looking, together);
    addBreaks(railRect, postRect, looking, together);
    const double right = boundsOf(ops, metrics_).max.x;
    move(together, {right + kBetweenPictures - boundsOf(together, metrics_).min.x, 0.0});
    append(ops, std::move(together));
    const Rect all = boundsOf(ops, metrics_);
    ops.push_back(TextOp{{all.min.x, all.max.y + 3.0 + kLabelHeight},
                         looking.label,
                         kLabelHeight,
                         Align::Left,
                         false,
                         false});
    return ops;
}

}  // namespace

Sheet jointDrawing(const Piece& piece,
                   const ResolvedPiece& resolved,
                   std::size_t joint,
                   const TextMetrics& metrics) {
    constexpr double kMargin = 4.0;
    Sheet sheet;
    sheet.title = resolved.joints[joint].name;
    if (resolved.joints[joint].kind == JointKind::Rests) {
        sheet.ops.push_back(
            TextOp{{0.0, 0.0}, "rests: no joint is cut", kLabelHeight, Align::Left, false, false});
    } else {
        const Pictures pictures(piece, resolved, joint, metrics);
        const bool isThird = piece.unit == Unit::Inch;
        const Looking onCheek{{{1, 0, 0}, {0, -1, 0}, {0, 0, -1}},
                              1,
                              1.0,
                              "on the cheek, " + scaleText(pictures.scale())};
        const Looking onEdge{{{1, 0, 0}, {0, 0, 1}, {0, -1, 0}},
                             2,
                             -1.0,
                             "on the edge, " + scaleText(pictures.scale())};
        std::vector<Op> first = pictures.row(isThird ? onEdge : onCheek);
        std::vector<Op> second = pictures.row(isThird ? onCheek : onEdge);
        move(second,
             {0.0, boundsOf(first, metrics).max.y + 12.0 - boundsOf(second, metrics).min.y});
        sheet.ops.push_back(BeginGroup{{SubjectKind::Joint, joint}, sheet.title});
        append(sheet.ops, std::move(first));
        append(sheet.ops, std::move(second));
        sheet.ops.push_back(EndGroup{});
    }
    const Rect bounds = boundsOf(sheet.ops, metrics);
    move(sheet.ops, Vec2{kMargin, kMargin} - bounds.min);
    sheet.size = bounds.size() + Vec2{2.0 * kMargin, 2.0 * kMargin};
    return sheet;
}

}  // namespace shoulderline
