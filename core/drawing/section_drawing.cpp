#include "core/drawing/section_drawing.h"

#include <algorithm>
#include <array>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/hatching.h"
#include "core/drawing/joint_section.h"
#include "core/drawing/mortise_rows.h"
#include "core/drawing/part_angles.h"
#include "core/drawing/part_views.h"
#include "core/drawing/round_wood.h"
#include "core/drawing/section_marks.h"
#include "core/geometry/convex_hull.h"
#include "core/resolve/shaped_face.h"
#include "core/resolve/stations.h"

namespace shoulderline {

namespace {

constexpr double kPastCorner = 2.0;

std::vector<Vec2> scaled(std::vector<Vec2> ring, double scale) {
    for (Vec2& p : ring) {
        p = p * scale;
    }
    return ring;
}

Stroke outlineOf(std::vector<Vec2> ring) {
    ring.push_back(ring.front());
    return {std::move(ring), LineRole::Visible};
}

// What of a hollow lies between the edges of the part: one in a shaped edge begins there, and not
// at the blank's.
ConvexSolid betweenEdges(const ResolvedPart& part, const ConvexSolid& hollow, double at) {
    if (!isShaped(part)) {
        return hollow;
    }
    const Extent wood = widthAt(part, at);
    std::optional<ConvexSolid> left = hollow.clipped({{0, 1, 0}, wood.max});
    left = left ? left->clipped({{0, -1, 0}, -wood.min}) : left;
    return left.value_or(hollow);
}

// Whether a tenon stands askew on its end, so that seen along the part it lies beside its foot.
bool isAskewOn(const ResolvedPart& part, const TenonSolid& tenon, const PartView& view) {
    constexpr double kSeen = 0.05;  // mm
    const Rect foot = view.toPlane(footOf(part, tenon));
    const std::vector<Vec2> seen = ringOf(tenon, view);
    return tenon.exact && std::any_of(seen.begin(), seen.end(), [&](Vec2 p) {
               return p.x < foot.min.x - kSeen || p.y < foot.min.y - kSeen ||
                      p.x > foot.max.x + kSeen || p.y > foot.max.y + kSeen;
           });
}

// What a section through a tenon shows cut: of one that stands askew its foot, whose sizes are the
// true ones.
std::vector<Vec2> cutRingOf(const ResolvedPart& part,
                            const TenonSolid& tenon,
                            const PartView& view) {
    return isAskewOn(part, tenon, view) ? ringOf(view.toPlane(footOf(part, tenon)))
                                        : ringOf(tenon, view);
}

// In place of all that is seen of a tenon that stands askew, its foot.
void showFoot(const ResolvedPart& part,
              const TenonSolid& tenon,
              const PartView& view,
              double scale,
              std::vector<Op>& ops) {
    constexpr double kOnLine = 0.01;
    const std::vector<Vec2> seen = convexHull(scaled(ringOf(tenon, view), scale));
    std::erase_if(ops, [&](const Op& op) {
        const auto* stroke = std::get_if<Stroke>(&op);
        return stroke != nullptr &&
               std::all_of(stroke->points.begin(), stroke->points.end(), [&](Vec2 p) {
                   return hullContains(seen, p, kOnLine);
               });
    });
    ops.push_back(BeginGroup{{SubjectKind::Joint, tenon.joint}, {}});
    ops.push_back(outlineOf(scaled(cutRingOf(part, tenon, view), scale)));
    ops.push_back(EndGroup{});
}

// The axis of a bored mortise, from before its mouth to past its bottom.
Stroke axisOf(const ResolvedPiece& resolved,
              const ResolvedPart& part,
              const MortiseSolid& mortise,
              double scale) {
    constexpr double kOverrun = 1.5;  // mm
    const Vec3 into = part.frame.directionToLocal(resolved.joints[mortise.joint].frame.x);
    const Vec3 mouth = mouthOf(mortise).centre();
    const Vec2 way{into.z, into.y};
    const Extent reach = mortise.solid().extentAlong(into);
    const Vec2 from = Vec2{mouth.z, mouth.y} * scale;
    const Vec2 over = way * (kOverrun / norm(way));
    return {{from - over, from + way * ((reach.max - dot(mouth, into)) * scale) + over},
            LineRole::Centre};
}

// Figures run past one corner only on each side, round the section, so that they never meet.
FigureRoom roomOn(Face side, Vec2 size) {
    FigureRoom room;
    switch (side) {
        case Face::FaceEdge:
            room.high = size.x + kPastCorner;
            break;
        case Face::FaceSide:
            room.low = 0.0;
            break;
        case Face::BackEdge:
            room.low = -kPastCorner;
            break;
        case Face::BackSide:
            room.high = size.y;
            break;
        case Face::StartEnd:
        case Face::FarEnd:
            break;
    }
    return room;
}

// A side of the section as placeSizes() has it, and how far it lies inside the blank.
struct Edge {
    Face face;
    DimensionSide side;
    double at;
    double inside;
};
std::array<Edge, 4> edgesOf(Vec2 blank, const Rect& wood) {
    return {{{Face::FaceEdge, DimensionSide::Above, wood.min.y, wood.min.y},
             {Face::FaceSide, DimensionSide::LeftOf, wood.min.x, wood.min.x},
             {Face::BackEdge, DimensionSide::Below, wood.max.y, blank.y - wood.max.y},
             {Face::BackSide, DimensionSide::RightOf, wood.max.x, blank.x - wood.max.x}}};
}

// Around all rings; the blank where there are none.
Rect boundsOfRings(const std::vector<std::vector<Vec2>>& rings, Vec2 blank) {
    if (rings.empty()) {
        return {{0.0, 0.0}, blank};
    }
    Rect wood{rings.front().front(), rings.front().front()};
    for (const std::vector<Vec2>& ring : rings) {
        for (const Vec2& p : ring) {
            wood.include(p);
        }
    }
    return wood;
}

// The faces of the blank that mortises of the section are as deep from as is told, and that the
// wood does not reach.
std::vector<Face> blankFacesOf(const PartSection& section,
                               const ResolvedPiece& resolved,
                               const ResolvedPart& part,
                               const Rect& wood,
                               Vec2 blank) {
    constexpr double kSeen = 0.3;  // mm on the sheet
    std::vector<Face> faces;
    for (const std::size_t m : section.mortises) {
        const MortiseSolid& mortise = part.mortises[m];
        if (mortise.isThrough || isDepthAlongIt(resolved, part, mortise)) {
            continue;
        }
        const auto [into, way] = inwardOf(mortise.face);
        const Box box = setOutBox(mortise);
        const double under = way > 0.0 ? box.min[into] : part.bodyBox().max[into] - box.max[into];
        for (const Edge& edge : edgesOf(blank, wood)) {
            if (edge.face == mortise.face && edge.inside > kSeen && under < kLengthTolerance.mm() &&
                std::find(faces.begin(), faces.end(), edge.face) == faces.end()) {
                faces.push_back(edge.face);
            }
        }
    }
    return faces;
}

// That face of the blank as it is seen in the section, as long as the wood is there.
Stroke blankLine(Face face, const Rect& wood, Vec2 blank) {
    const bool isLevel = face == Face::FaceEdge || face == Face::BackEdge;
    const double at = face == Face::BackEdge ? blank.y : face == Face::BackSide ? blank.x : 0.0;
    return {isLevel ? std::vector<Vec2>{{wood.min.x, at}, {wood.max.x, at}}
                    : std::vector<Vec2>{{at, wood.min.y}, {at, wood.max.y}},
            LineRole::Neighbour};
}

// Its name, beyond the end of the line that no depth is lettered at.
TextOp blankName(Face face, const Stroke& line, double height) {
    constexpr double kAir = 1.5;  // mm
    const Vec2 end = line.points.back();
    const bool isLevel = face == Face::FaceEdge || face == Face::BackEdge;
    const Vec2 at = isLevel ? end + Vec2{kAir, height / 2.0} : end + Vec2{0.0, kAir + height};
    return {at,
            isLevel ? "blank's edge" : "blank's side",
            height,
            isLevel ? Align::Left : Align::Centre,
            false,
            false};
}

std::vector<SizeToPlace> scaledSizes(const std::vector<SectionSize>& sizes,
                                     const Edge& edge,
                                     double scale) {
    std::vector<SizeToPlace> scaled;
    for (const SectionSize& s : sizes) {
        if (s.side == edge.face) {
            const NeededSize& n = s.size;
            scaled.push_back({n.from * scale,
                              n.to * scale,
                              std::max(0.0, n.fromDepth * scale - edge.inside),
                              std::max(0.0, n.toDepth * scale - edge.inside),
                              n.text,
                              n.value,
                              n.of,
                              n.subject,
                              n.rank});
        }
    }
    return scaled;
}

std::vector<Rect> figuresOf(const std::vector<Op>& ops, const TextMetrics& metrics) {
    std::vector<Rect> figures;
    for (const Op& op : ops) {
        if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
            constexpr double kAir = 0.5;  // mm round a figure
            const Rect figure = boundsOf(partsOf(*dimension, metrics).figure, metrics);
            figures.push_back({figure.min - Vec2{kAir, kAir}, figure.max + Vec2{kAir, kAir}});
        }
    }
    return figures;
}

bool areClear(const std::vector<Op>& a, const std::vector<Op>& b, const TextMetrics& metrics) {
    const auto isClearOf = [&](const std::vector<Op>& lines, const std::vector<Op>& figures) {
        const FreeSpace space(lines, metrics);
        const std::vector<Rect> boxes = figuresOf(figures, metrics);
        return std::all_of(
            boxes.begin(), boxes.end(), [&](const Rect& box) { return space.isFree(box); });
    };
    return isClearOf(a, b) && isClearOf(b, a);
}

}  // namespace

std::vector<Op> placeClearOf(const std::vector<Op>& placed,
                             std::vector<SizeToPlace> sizes,
                             DimensionSide side,
                             double edge,
                             const DimensionStyle& style,
                             const TextMetrics& metrics,
                             const FigureRoom& room) {
    constexpr int kTries = 5;
    const double way = side == DimensionSide::Above || side == DimensionSide::LeftOf ? -1.0 : 1.0;
    const double step = 1.5 * style.height;
    std::vector<Op> ops;
    for (int i = 0; i < kTries; ++i) {
        ops = placeSizes(sizes, side, edge + way * step * i, style, metrics, room);
        if (areClear(ops, placed, metrics)) {
            break;
        }
        for (SizeToPlace& one : sizes) {
            one.fromDepth += step;
            one.toDepth += step;
        }
    }
    return ops;
}

std::vector<Op> sectionOps(const PartSection& section,
                           const Piece& piece,
                           const ResolvedPiece& resolved,
                           std::size_t index,
                           double scale,
                           const PartStyle& style,
                           const TextMetrics& metrics) {
    const ResolvedPart& part = resolved.parts[index];
    std::vector<Op> ops;
    ops.push_back(
        BeginGroup{{SubjectKind::Part, index}, part.name + ", section " + section.letter});
    CutFace cut;
    for (const std::vector<Vec2>& body : bodyAcross(part, section.at)) {
        cut.rings.push_back(scaled(body, scale));
        ops.push_back(outlineOf(cut.rings.back()));
    }
    std::vector<Subject> subjects;
    const auto addHollow = [&](const ConvexSolid& solid, const Subject& subject) {
        const std::optional<ConvexSolid> inRound = withinRound(part, solid);
        std::vector<Vec2> hollow = scaled(
            solidAcross(inRound ? *inRound : betweenEdges(part, solid, section.at), section.at),
            scale);
        if (hollow.size() > 2) {
            cut.hollows.push_back(std::move(hollow));
            subjects.push_back(subject);
        }
    };
    for (const MortiseSolid& mortise : part.mortises) {
        addHollow(mortise.solid(), {SubjectKind::Joint, mortise.joint});
    }
    for (const ResolvedCut& hollow : part.cuts) {
        addHollow(hollow.solid(), {SubjectKind::Part, index});
    }
    // No line of one hollow goes through another that meets it.
    for (std::size_t i = 0; i < cut.hollows.size(); ++i) {
        std::vector<Ring> others = cut.hollows;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        ops.push_back(BeginGroup{subjects[i], {}});
        for (const SectionLine& line : outlineOf({cut.hollows[i]}, others)) {
            ops.push_back(Stroke{{line.a, line.b}, LineRole::Visible});
        }
        ops.push_back(EndGroup{});
    }
    append(ops, hatch(cut, Angle::degrees(45.0), kHatchSpacing));
    for (const std::size_t m : section.mortises) {
        if (isBored(resolved, part.mortises[m]) && !isEnd(part.mortises[m].face)) {
            ops.push_back(axisOf(resolved, part, part.mortises[m], scale));
        }
    }
    ops.push_back(EndGroup{});
    const Vec2 size = Vec2{part.thickness.value.mm(), part.width.value.mm()} * scale;
    std::vector<SectionSize> sizes = sizesIn(section, piece, resolved, part);
    Rect wood = boundsOfRings(cut.rings, size);
    for (const Face face : blankFacesOf(section, resolved, part, wood, size)) {
        const Stroke line = blankLine(face, wood, size);
        ops.push_back(line);
        ops.push_back(blankName(face, line, style.dimensions.height));
        wood.include(line.points.front());
    }
    std::vector<Op> placed;
    for (const Edge& edge : edgesOf(size, wood)) {
        append(placed,
               placeClearOf(placed,
                            scaledSizes(sizes, edge, scale),
                            edge.side,
                            edge.at,
                            style.dimensions,
                            metrics,
                            roomOn(edge.face, size)));
    }
    append(ops, std::move(placed));
    FreeSpace space(ops, metrics);
    append(ops, faceMarksAcross(cut.rings, true, space, style.dimensions.height, metrics));
    return ops;
}

void removeCutOffEnds(const ResolvedPart& part,
                      const PartView& view,
                      double scale,
                      std::vector<Op>& ops) {
    constexpr double kOnLine = 0.01;
    for (const TenonSolid& tenon : part.tenons) {
        if ((tenon.box.min.x < 0.0) != (view.face == Face::StartEnd) || !tenon.exact) {
            continue;
        }
        if (isAskewOn(part, tenon, view)) {
            showFoot(part, tenon, view, scale, ops);
            continue;
        }
        const std::vector<Vec2> ring = convexHull(scaled(ringOf(tenon, view), scale));
        const Polyhedron solid = polyhedronOf(tenon, {});
        for (const PolyhedronEdge& edge : solid.edges()) {
            const auto place = [&](int end) {
                return view.toPlane(solid.vertices[static_cast<std::size_t>(end)]) * scale;
            };
            const Vec2 a = place(edge.ends.low);
            const Vec2 b = place(edge.ends.high);
            if (!hullContains(ring, (a + b) * 0.5, -kOnLine)) {
                continue;
            }
            const auto liesOnIt = [&](Vec2 p) {
                return std::abs(norm(p - a) + norm(p - b) - norm(b - a)) < kOnLine;
            };
            std::erase_if(ops, [&](const Op& op) {
                const auto* stroke = std::get_if<Stroke>(&op);
                return stroke != nullptr &&
                       std::all_of(stroke->points.begin(), stroke->points.end(), liesOnIt);
            });
        }
    }
}

std::vector<Op> tenonHatching(const ResolvedPart& part, const PartView& view, double scale) {
    CutFace cut;
    for (const TenonSolid& tenon : part.tenons) {
        if ((tenon.box.min.x < 0.0) == (view.face == Face::StartEnd)) {
            cut.rings.push_back(scaled(cutRingOf(part, tenon, view), scale));
        }
    }
    return hatch(cut, Angle::degrees(45.0), kHatchSpacing);
}

}  // namespace shoulderline
