#include "core/drawing/pictorial.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/drawing/opened_wood.h"
#include "core/drawing/pulled_apart.h"
#include "core/drawing/round_wood.h"
#include "core/geometry/hidden_lines.h"
#include "core/geometry/seen_spots.h"
#include "core/resolve/frames.h"
#include "core/resolve/pegs.h"
#include "core/resolve/small_solids.h"

namespace shoulderline {

namespace {

// Thin enough that both faces draw one line, thick enough to lie in front of what it lies on.
constexpr double kSheetThickness = 5e-4;
constexpr double kThinEnd = 0.01;  // mm; what is shorter is an end of a thin solid

struct Scene {
    std::vector<Polyhedron> solids;
    std::vector<std::size_t> partOf;
    std::vector<PictureLineKind> kindOf;
    std::vector<bool> isMember;  // a body or tenon, no pin or wedge

    void add(Polyhedron solid, std::size_t part, PictureLineKind kind, bool isOfMember = false) {
        solids.push_back(std::move(solid));
        partOf.push_back(part);
        kindOf.push_back(kind);
        isMember.push_back(isOfMember);
    }
};

Frame movedBy(Frame frame, Vec3 by) {
    frame.origin = frame.origin + by;
    return frame;
}

// A polygon of the plane z = 0 of `frame` as a solid of next to no thickness on it.
void addFlat(const std::vector<Vec2>& points, const Frame& frame, std::vector<Polyhedron>& into) {
    double area = 0.0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        area += cross(points[i], points[(i + 1) % points.size()]) / 2.0;
    }
    if (std::abs(area) < 1e-3) {
        return;
    }
    const int n = static_cast<int>(points.size());
    Polyhedron flat;
    for (const double z : {0.0, kSheetThickness}) {
        for (int i = 0; i < n; ++i) {
            const Vec2 p = points[static_cast<std::size_t>(area > 0.0 ? i : n - 1 - i)];
            flat.vertices.push_back({p.x, p.y, z});
        }
    }
    Polyhedron::Face under;
    Polyhedron::Face over;
    for (int i = 0; i < n; ++i) {
        under.loop.push_back(n - 1 - i);
        over.loop.push_back(n + i);
        const int next = (i + 1) % n;
        flat.faces.push_back({{i, next, n + next, n + i}});
    }
    flat.faces.push_back(std::move(under));
    flat.faces.push_back(std::move(over));
    into.push_back(flat.transformed(frame));
}

// What is seen through a mouth `size` large (corner at the origin of `frame`, z out of the wood)
// whose walls go in by `way` as seen on its plane: up to two walls and the bottom.
void addInside(Vec2 size, Vec2 way, const Frame& frame, std::vector<Polyhedron>& into) {
    // Worked out as though the way ran to the upper right, then turned over.
    const auto turned = [&](std::vector<Vec2> points) {
        for (Vec2& p : points) {
            p = {way.x < 0.0 ? size.x - p.x : p.x, way.y < 0.0 ? size.y - p.y : p.y};
        }
        addFlat(points, frame, into);
    };
    const Vec2 w{std::abs(way.x), std::abs(way.y)};
    if (w.x < size.x && w.y < size.y) {
        turned({{0, 0}, w, {w.x, size.y}, {0, size.y}});
        turned({{0, 0}, {size.x, 0}, {size.x, w.y}, w});
        turned({w, {size.x, w.y}, size, {w.x, size.y}});
        return;
    }
    const double t = std::min(w.x > 0.0 ? size.x / w.x : 1e9, w.y > 0.0 ? size.y / w.y : 1e9);
    const Vec2 end = w * t;
    if (end.x >= size.x - 1e-9) {
        turned({{0, 0}, {size.x, 0}, end});
        turned({{0, 0}, end, {size.x, size.y}, {0, size.y}});
    } else {
        turned({{0, 0}, end, {0, size.y}});
        turned({{0, 0}, {size.x, 0}, {size.x, size.y}, end});
    }
}

// A bored mortise, or one in a turned part, as what would fill it up to the wood: of that the rim
// alone is in sight.
std::optional<ConvexSolid> fillingOf(const ResolvedPart& part,
                                     const MortiseSolid& mortise,
                                     const ResolvedJoint& joint) {
    const std::optional<ConvexSolid> inRound = withinRound(part, mortise.solid());
    return inRound || joint.kind != JointKind::Round ? inRound : mortise.solid();
}

// The mouths of a joint's mortise: the one entered, and where it goes through the one behind.
void addMouths(const ResolvedPart& part,
               const MortiseSolid& mortise,
               const ResolvedJoint& joint,
               Vec3 move,
               const View& view,
               std::vector<Polyhedron>& into) {
    const Frame placed = movedBy(part.frame, move);
    if (const std::optional<ConvexSolid> filling = fillingOf(part, mortise, joint)) {
        into.push_back(filling->toPolyhedron().transformed(placed));
        return;
    }
    // The mortise's box in the joint's axes: x into the wood.
    const Frame frame = movedBy(joint.frame, move);
    Vec3 corner[2] = {frame.toLocal(placed.toOuter(mortise.box.min)),
                      frame.toLocal(placed.toOuter(mortise.box.max))};
    Box box;
    for (int i = 0; i < 3; ++i) {
        box.min[i] = std::min(corner[0][i], corner[1][i]);
        box.max[i] = std::max(corner[0][i], corner[1][i]);
    }
    for (const bool isFar : {false, true}) {
        const Vec3 out = isFar ? frame.x : -frame.x;
        const double facing = dot(out, view.towardsViewer);
        if (facing < 1e-6 || (isFar && !mortise.isThrough)) {
            continue;
        }
        const Frame mouth{frame.toOuter({isFar ? box.max.x : box.min.x, box.min.y, box.min.z}),
                          frame.y,
                          frame.z,
                          out};
        const double depth = box.max.x - box.min.x;
        // A point `depth` in appears where its line of sight meets the mouth.
        const Vec3 seen = view.towardsViewer * (depth / facing) - out * depth;
        addInside({box.max.y - box.min.y, box.max.z - box.min.z},
                  {dot(seen, frame.y), dot(seen, frame.z)},
                  mouth,
                  into);
    }
}

// From the middle of a tenon's end to the middle of its mouth, once moved.
void addWay(const ResolvedPiece& resolved,
            std::size_t index,
            const std::vector<Vec3>& moves,
            Scene& scene) {
    const ResolvedJoint& joint = resolved.joints[index];
    const double entry = lengthOfEntry(resolved, index);
    const Vec3 from = joint.frame.origin + moves[joint.tenoned] + joint.frame.x * entry;
    const Vec3 to = joint.frame.origin + moves[joint.mortised];
    const double length = norm(to - from);
    if (entry <= 0.0 || length < 1.0) {
        return;
    }
    const Vec3 along = (to - from) * (1.0 / length);
    const Vec3 across =
        normalised(cross(along, std::abs(along.z) < 0.9 ? Vec3{0, 0, 1} : Vec3{1, 0, 0}));
    scene.add(Polyhedron::box({{0, 0, 0}, {length, kSheetThickness, kSheetThickness}},
                              {from, along, across, cross(along, across)}),
              joint.tenoned,
              PictureLineKind::Way);
}

// The pins, plugs and wedges of a joint: driven home, or drawn out the way that they come. One that
// ends flush stands out by next to nothing, so that its end is seen.
void addSmallSolids(const ResolvedPiece& resolved,
                    std::size_t index,
                    const std::vector<Vec3>& moves,
                    Scene& scene) {
    constexpr double kDrawnOut = 1.2;  // of its length, past where it goes in
    constexpr double kStarted = 0.6;   // a wedge that waits in its kerf
    const ResolvedJoint& joint = resolved.joints[index];
    for (const SmallSolid& small : smallSolidsOf(resolved, index)) {
        const Extent length = small.solid.extentAlong(small.outward);
        Frame frame = joint.frame;
        double out = kSheetThickness;
        if (!moves.empty()) {
            const bool isWithTenon = !small.isDrivenLast ||
                                     small.kind == SmallPartKind::TuskWedge ||
                                     small.kind == SmallPartKind::Plug;
            frame = movedBy(frame, moves[isWithTenon ? joint.tenoned : joint.mortised]);
            out = (small.isDrivenLast ? kDrawnOut : kStarted) * (length.max - length.min);
        }
        scene.add(small.solid.toPolyhedron().transformed(
                      movedBy(frame, frame.directionToOuter(small.outward * out))),
                  joint.tenoned,
                  PictureLineKind::Contour);
    }
}

// The slot of a tusk tenon's wedge, to be seen once the wedge is drawn out.
void addSlot(const ResolvedPiece& resolved,
             std::size_t index,
             const View& view,
             const std::vector<Vec3>& moves,
             Scene& scene) {
    const ResolvedJoint& joint = resolved.joints[index];
    const Frame moved = movedBy(joint.frame, moves[joint.tenoned]);
    const ResolvedPart& part = resolved.parts[joint.tenoned];
    std::vector<Polyhedron> flats;
    for (const ResolvedCut& cut : part.cuts) {
        if (cut.joint != index || cut.kind != CutKind::Notch || !cut.isThrough) {
            continue;
        }
        const Box slot = cut.solid().transformed(relativeFrame(joint.frame, part.frame)).bounds();
        for (const bool isHigh : {false, true}) {
            const Vec3 out = isHigh ? moved.z : -moved.z;
            const double facing = dot(out, view.towardsViewer);
            if (facing < 1e-6) {
                continue;
            }
            const Vec3 corner{slot.min.x, slot.min.y, isHigh ? slot.max.z : slot.min.z};
            const double depth = slot.size().z;
            const Vec3 seen = view.towardsViewer * (depth / facing) - out * depth;
            addInside({slot.size().x, slot.size().y},
                      {dot(seen, moved.x), dot(seen, moved.y)},
                      {moved.toOuter(corner), moved.x, moved.y, out},
                      flats);
        }
    }
    for (Polyhedron& flat : flats) {
        scene.add(std::move(flat), joint.tenoned, PictureLineKind::Edge);
    }
}

// The square pegs of a part: driven home, or drawn out in front of their mouths. One that ends
// flush stands out by next to nothing, so that its end is seen.
void addPegs(
    const ResolvedPart& part, std::size_t index, const Frame& placed, bool isApart, Scene& scene) {
    constexpr double kDrawnOut = 1.2;  // of its length
    for (const ResolvedCut& cut : part.cuts) {
        if (!cut.peg) {
            continue;
        }
        const Box peg = pegIn(cut);
        const auto [axis, way] = inwardOf(cut.face);
        Vec3 out;
        out[axis] = -way * (isApart ? kDrawnOut * peg.size()[axis] : kSheetThickness);
        scene.add(Polyhedron::box({peg.min + out, peg.max + out}, placed),
                  index,
                  PictureLineKind::Contour);
    }
}

Scene sceneOf(const ResolvedPiece& resolved, const View& view, const std::vector<Vec3>& moves) {
    Scene scene;
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        const ResolvedPart& part = resolved.parts[i];
        const Vec3 move = moves.empty() ? Vec3{} : moves[i];
        const Frame frame = movedBy(part.frame, move);
        const BodySolids body = part.wood();
        if (body.isEmpty()) {
            continue;
        }
        const std::optional<Polyhedron> opened = moves.empty() ? std::nullopt : openedWood(part);
        scene.add((opened ? *opened : body.whole()).transformed(frame),
                  i,
                  PictureLineKind::Contour,
                  true);
        for (const TenonSolid& tenon : part.tenons) {
            scene.add(polyhedronOf(tenon, frame), i, PictureLineKind::Contour, true);
        }
        addPegs(part, i, frame, !moves.empty(), scene);
        if (moves.empty()) {
            continue;
        }
        std::vector<Polyhedron> flats;
        for (const MortiseSolid& mortise : part.mortises) {
            if (!opened || !isOpenAcrossArris(part, mortise.box)) {
                addMouths(part, mortise, resolved.joints[mortise.joint], move, view, flats);
            }
        }
        for (Polyhedron& flat : flats) {
            scene.add(std::move(flat), i, PictureLineKind::Edge);
        }
    }
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        addSmallSolids(resolved, i, moves, scene);
        if (!moves.empty()) {
            if (resolved.joints[i].has(JointFeature::Tusked)) {
                addSlot(resolved, i, view, moves, scene);
            }
            addWay(resolved, i, moves, scene);
        }
    }
    return scene;
}

}  // namespace

View pictorialView() {
    return View::axonometric(Angle::degrees(32.0), Angle::degrees(24.0));
}

Picture pictureOf(const ResolvedPiece& resolved, const View& view, const std::vector<Vec3>& moves) {
    const Scene scene = sceneOf(resolved, view, moves);
    std::vector<std::vector<PolyhedronEdge>> edges(scene.solids.size());
    for (std::size_t i = 0; i < scene.solids.size(); ++i) {
        collectEdges(scene.solids[i], edges[i]);
    }
    Picture picture;
    std::optional<Rect> bounds;
    for (const ViewEdge& edge : mergeCoincident(hiddenLines(scene.solids, view))) {
        if (!edge.visible || norm(edge.b - edge.a) < kThinEnd) {
            continue;
        }
        const auto s = static_cast<std::size_t>(edge.solid);
        PictureLineKind kind = scene.kindOf[s];
        if (kind == PictureLineKind::Contour) {
            const PolyhedronEdge& between = edges[s][static_cast<std::size_t>(edge.edge)];
            const auto isFacing = [&](int face) {
                return dot(scene.solids[s].areaVector(face), view.towardsViewer) > 0.0;
            };
            if (isFacing(between.left) && isFacing(between.right)) {
                kind = PictureLineKind::Edge;
            }
        }
        picture.lines.push_back({edge.a, edge.b, kind, scene.partOf[s]});
        bounds = bounds.value_or(Rect{edge.a, edge.a});
        bounds->include(edge.a);
        bounds->include(edge.b);
    }
    picture.bounds = bounds.value_or(Rect{});
    for (const SeenSpot& spot : seenSpots(scene.solids, view)) {
        const auto s = static_cast<std::size_t>(spot.solid);
        if (scene.isMember[s]) {
            picture.spots.push_back({spot.at, scene.partOf[s]});
        }
    }
    return picture;
}

std::vector<Op> pictureOps(const ResolvedPiece& resolved, const Picture& picture, double scale) {
    std::vector<PictureLine> lines = picture.lines;
    std::stable_sort(lines.begin(), lines.end(), [](const PictureLine& a, const PictureLine& b) {
        return a.part < b.part;
    });
    const auto roleOf = [](PictureLineKind kind) {
        return kind == PictureLineKind::Contour
                   ? LineRole::Visible
                   : (kind == PictureLineKind::Edge ? LineRole::Construction : LineRole::Centre);
    };
    std::vector<Op> ops;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i == 0 || lines[i].part != lines[i - 1].part) {
            ops.push_back(
                BeginGroup{{SubjectKind::Part, lines[i].part}, resolved.parts[lines[i].part].name});
        }
        ops.push_back(Stroke{{{lines[i].a.x * scale, -lines[i].a.y * scale},
                              {lines[i].b.x * scale, -lines[i].b.y * scale}},
                             roleOf(lines[i].kind)});
        if (i + 1 == lines.size() || lines[i + 1].part != lines[i].part) {
            ops.push_back(EndGroup{});
        }
    }
    return ops;
}

}  // namespace shoulderline
