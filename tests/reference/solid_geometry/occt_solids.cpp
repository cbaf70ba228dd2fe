#include "tests/reference/solid_geometry/occt_solids.h"

#include <cstdlib>
#include <iostream>

#include "tests/reference/solid_geometry/occt_easings.h"

#include <BRepAdaptor_Curve.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_MakeSolid.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepBuilderAPI_Sewing.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRepGProp.hxx>
#include <BRepLib.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeHalfSpace.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <GC_MakeArcOfCircle.hxx>
#include <GProp_GProps.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <HLRBRep_HLRToShape.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pln.hxx>
#include <gp_Trsf.hxx>

namespace shoulderline::reference {

struct Solid::Shape {
    TopoDS_Shape shape;
};

namespace {

[[noreturn]] void giveUp(const char* what) {
    std::cerr << "Open CASCADE failed: " << what << '\n';
    std::abort();
}

gp_Pnt point(Vec3 p) {
    return {p.x, p.y, p.z};
}

gp_Dir direction(Vec3 d) {
    return {d.x, d.y, d.z};
}

TopoDS_Shape placed(const TopoDS_Shape& shape, const Frame& f) {
    gp_Trsf move;
    move.SetValues(f.x.x,
                   f.y.x,
                   f.z.x,
                   f.origin.x,
                   f.x.y,
                   f.y.y,
                   f.z.y,
                   f.origin.y,
                   f.x.z,
                   f.y.z,
                   f.z.z,
                   f.origin.z);
    return BRepBuilderAPI_Transform(shape, move, true).Shape();
}

// The outline in the plane through the origin along u and v, extruded by `sweep`.
TopoDS_Shape extruded(const Outline& outline, Vec3 u, Vec3 v, Vec3 sweep) {
    BRepBuilderAPI_MakeWire wire;
    const auto at = [&](Vec2 p) { return point(u * p.x + v * p.y); };
    for (std::size_t i = 0; i < outline.vertices.size(); ++i) {
        const OutlineVertex& from = outline.vertices[i];
        const Vec2 to = outline.vertices[(i + 1) % outline.vertices.size()].point;
        if (from.bulge == 0.0) {
            wire.Add(BRepBuilderAPI_MakeEdge(at(from.point), at(to)).Edge());
            continue;
        }
        // The middle of the arc stands bulge times half the chord off the chord, to its right.
        const Vec2 chord = to - from.point;
        const Vec2 middle = (from.point + to) * 0.5 + Vec2{chord.y, -chord.x} * (0.5 * from.bulge);
        const Handle(Geom_TrimmedCurve) arc =
            GC_MakeArcOfCircle(at(from.point), at(middle), at(to)).Value();
        wire.Add(BRepBuilderAPI_MakeEdge(arc).Edge());
    }
    if (!wire.IsDone()) {
        giveUp("an outline does not close");
    }
    const TopoDS_Face face = BRepBuilderAPI_MakeFace(wire.Wire(), true).Face();
    return BRepPrimAPI_MakePrism(face, gp_Vec(sweep.x, sweep.y, sweep.z)).Shape();
}

double volumeOf(const TopoDS_Shape& shape) {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(shape, properties, 1e-9);
    return properties.Mass();
}

TopoDS_Shape make(const Box& box) {
    return BRepPrimAPI_MakeBox(point(box.min), point(box.max)).Shape();
}

TopoDS_Shape make(const ConvexSolid& solid) {
    BRepBuilderAPI_Sewing sewing(1e-6);
    for (const ConvexSolid::Face& face : solid.faces()) {
        BRepBuilderAPI_MakePolygon polygon;
        for (const int i : face.loop) {
            polygon.Add(point(solid.vertices()[static_cast<std::size_t>(i)]));
        }
        polygon.Close();
        sewing.Add(BRepBuilderAPI_MakeFace(polygon.Wire(), true).Shape());
    }
    sewing.Perform();
    if (sewing.SewedShape().ShapeType() != TopAbs_SHELL) {
        giveUp("a convex solid does not close");
    }
    TopoDS_Solid result = BRepBuilderAPI_MakeSolid(TopoDS::Shell(sewing.SewedShape())).Solid();
    BRepLib::OrientClosedSolid(result);
    return result;
}

TopoDS_Shape cutToPlanes(TopoDS_Shape shape, const std::vector<PlaneCut>& planes) {
    for (const PlaneCut& plane : planes) {
        const gp_Pnt on = point(plane.keeps.normal * plane.keeps.offset);
        const Vec3 inside = plane.keeps.normal * (plane.keeps.offset - 1.0);
        const TopoDS_Face face =
            BRepBuilderAPI_MakeFace(gp_Pln(on, direction(plane.keeps.normal))).Face();
        const TopoDS_Shape half = BRepPrimAPI_MakeHalfSpace(face, point(inside)).Solid();
        shape = BRepAlgoAPI_Common(shape, half).Shape();
    }
    return shape;
}

TopoDS_Shape madeToPlanes(const Body& body) {
    if (!body.edge) {
        return cutToPlanes(extruded(body.face, {1, 0, 0}, {0, 1, 0}, {0, 0, body.thickness}),
                           body.planes);
    }
    // Each outline through more than the other reaches; an edge outline may go beyond the
    // thickness.
    const Rect inFace = body.face.bounds();
    const Rect inEdge = body.edge->bounds();
    const auto through = [](double low, double high) {
        return std::pair(low - 1.0, high - low + 2.0);
    };
    const auto [below, deep] = through(inEdge.min.y, inEdge.max.y);
    const auto [low, wide] = through(inFace.min.y, inFace.max.y);
    const TopoDS_Shape faceOn = extruded(body.face, {1, 0, 0}, {0, 1, 0}, {0, 0, deep});
    const TopoDS_Shape edgeOn = extruded(*body.edge, {1, 0, 0}, {0, 0, 1}, {0, wide, 0});
    return cutToPlanes(
        BRepAlgoAPI_Common(placed(faceOn, {{0, 0, below}}), placed(edgeOn, {{0, low, 0}})).Shape(),
        body.planes);
}

TopoDS_Shape make(const Body& body) {
    return easedByKernel(madeToPlanes(body), body);
}

TopoDS_Shape make(const Volume& volume) {
    return std::visit([](const auto& v) { return make(v); }, volume);
}

template <class Operation>
TopoDS_Shape operate(const TopoDS_Shape& a, const TopoDS_Shape& b) {
    Operation operation(a, b);
    if (!operation.IsDone() || operation.HasErrors()) {
        giveUp("a set operation");
    }
    return operation.Shape();
}

Solid solidOf(const TopoDS_Shape& shape) {
    return Solid(std::make_shared<const Solid::Shape>(Solid::Shape{shape}));
}

// Edges that the hidden line algorithm gives have no curve in space until they are given one.
double lengthOf(const TopoDS_Shape& edges) {
    if (edges.IsNull()) {
        return 0.0;
    }
    BRepLib::BuildCurves3d(edges);
    GProp_GProps properties;
    BRepGProp::LinearProperties(edges, properties);
    return properties.Mass();
}

Handle(HLRBRep_Algo) hidden(std::span<const Solid> solids, const View& view) {
    const Handle(HLRBRep_Algo) algorithm = new HLRBRep_Algo;
    for (const Solid& solid : solids) {
        algorithm->Add(solid.shape().shape);
    }
    algorithm->Projector(HLRAlgo_Projector(
        gp_Ax2(gp_Pnt(0, 0, 0), direction(view.towardsViewer), direction(view.right))));
    algorithm->Update();
    algorithm->Hide();
    return algorithm;
}

}  // namespace

Solid::Solid(const SolidPlan& plan) {
    TopoDS_Shape shape = make(plan.volume);
    for (const Volume& volume : plan.added) {
        shape = operate<BRepAlgoAPI_Fuse>(shape, make(volume));
    }
    for (const Volume& volume : plan.cutAway) {
        shape = operate<BRepAlgoAPI_Cut>(shape, make(volume));
    }
    shape_ = std::make_shared<const Shape>(Shape{placed(shape, plan.frame)});
}

Solid::Solid(std::shared_ptr<const Shape> shape) : shape_(std::move(shape)) {}

double Solid::volume() const {
    return volumeOf(shape_->shape);
}

Solid common(const Solid& a, const Solid& b) {
    return solidOf(operate<BRepAlgoAPI_Common>(a.shape().shape, b.shape().shape));
}

Solid fuse(const Solid& a, const Solid& b) {
    return solidOf(operate<BRepAlgoAPI_Fuse>(a.shape().shape, b.shape().shape));
}

Solid cut(const Solid& a, const Solid& b) {
    return solidOf(operate<BRepAlgoAPI_Cut>(a.shape().shape, b.shape().shape));
}

double minimumDistance(const Solid& a, const Solid& b) {
    const BRepExtrema_DistShapeShape search(a.shape().shape, b.shape().shape);
    if (!search.IsDone()) {
        giveUp("a distance");
    }
    return search.Value();
}

SeenLengths seenLengths(std::span<const Solid> solids, const View& view) {
    HLRBRep_HLRToShape edges(hidden(solids, view));
    return {lengthOf(edges.VCompound()) + lengthOf(edges.OutLineVCompound()),
            lengthOf(edges.HCompound()) + lengthOf(edges.OutLineHCompound())};
}

std::vector<SeenEdge> visibleEdges(std::span<const Solid> solids, const View& view) {
    HLRBRep_HLRToShape edges(hidden(solids, view));
    const TopoDS_Shape visible = edges.VCompound();
    std::vector<SeenEdge> result;
    if (visible.IsNull()) {
        return result;
    }
    BRepLib::BuildCurves3d(visible);
    for (TopExp_Explorer at(visible, TopAbs_EDGE); at.More(); at.Next()) {
        const BRepAdaptor_Curve curve(TopoDS::Edge(at.Current()));
        const gp_Pnt a = curve.Value(curve.FirstParameter());
        const gp_Pnt b = curve.Value(curve.LastParameter());
        result.push_back({{a.X(), a.Y()}, {b.X(), b.Y()}});
    }
    return result;
}

}  // namespace shoulderline::reference
