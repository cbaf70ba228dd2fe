#include "tests/reference/solid_geometry/occt_easings.h"

#include <cmath>
#include <cstdlib>
#include <iostream>
#include <optional>
#include <vector>

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_MakeSolid.hxx>
#include <BRepBuilderAPI_Sewing.hxx>
#include <BRepFilletAPI_MakeChamfer.hxx>
#include <BRepFilletAPI_MakeFillet.hxx>
#include <BRepGProp_Face.hxx>
#include <BRepLib.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakeHalfSpace.hxx>
#include <BRep_Tool.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pln.hxx>

namespace shoulderline::reference {

namespace {

[[noreturn]] void giveUpEasing(const char* what) {
    std::cerr << "Open CASCADE failed: " << what << '\n';
    std::abort();
}

gp_Vec normalOf(const TopoDS_Face& face) {
    const BRepGProp_Face surface(face);
    Standard_Real u0 = 0, u1 = 0, v0 = 0, v1 = 0;
    surface.Bounds(u0, u1, v0, v1);
    gp_Pnt at;
    gp_Vec normal;
    surface.Normal((u0 + u1) / 2, (v0 + v1) / 2, at, normal);
    return normal.Normalized();
}

std::optional<BodyFace> classOf(const TopoDS_Face& face) {
    constexpr double kAlong = 1e-7;
    constexpr double kEnd = 0.9;
    const gp_Vec n = normalOf(face);
    const bool isPlane = BRepAdaptor_Surface(face).GetType() == GeomAbs_Plane;
    if (isPlane && std::abs(n.X()) > kEnd) {
        return n.X() < 0 ? BodyFace::StartEnd : BodyFace::FarEnd;
    }
    if (std::abs(n.Z()) < kAlong) {
        return n.Y() < 0 ? BodyFace::FaceEdge : BodyFace::BackEdge;
    }
    if (std::abs(n.Y()) < kAlong) {
        return n.Z() < 0 ? BodyFace::FaceSide : BodyFace::BackSide;
    }
    return std::nullopt;
}

struct KernelArris {
    TopoDS_Edge edge;
    TopoDS_Face on;
    TopoDS_Face other;
};

std::vector<KernelArris> arrisesOf(const TopoDS_Shape& shape, const Easing& easing) {
    TopTools_IndexedDataMapOfShapeListOfShape facesAt;
    TopExp::MapShapesAndAncestors(shape, TopAbs_EDGE, TopAbs_FACE, facesAt);
    std::vector<KernelArris> arrises;
    for (int i = 1; i <= facesAt.Extent(); ++i) {
        if (facesAt(i).Extent() != 2) {
            continue;
        }
        TopoDS_Face on = TopoDS::Face(facesAt(i).First());
        TopoDS_Face other = TopoDS::Face(facesAt(i).Last());
        if (classOf(on) != easing.on) {
            std::swap(on, other);
        }
        const bool isOther =
            easing.with ? classOf(other) == easing.with : classOf(other) != easing.on;
        if (classOf(on) == easing.on && isOther) {
            arrises.push_back({TopoDS::Edge(facesAt.FindKey(i)), on, other});
        }
    }
    if (arrises.empty()) {
        giveUpEasing("no such arris");
    }
    return arrises;
}

TopoDS_Shape solidFrom(const std::vector<std::vector<gp_Pnt>>& faces) {
    BRepBuilderAPI_Sewing sewing(1e-6);
    for (const std::vector<gp_Pnt>& face : faces) {
        BRepBuilderAPI_MakePolygon polygon;
        for (const gp_Pnt& p : face) {
            polygon.Add(p);
        }
        polygon.Close();
        sewing.Add(BRepBuilderAPI_MakeFace(polygon.Wire(), true).Shape());
    }
    sewing.Perform();
    if (sewing.SewedShape().ShapeType() != TopAbs_SHELL) {
        giveUpEasing("a wedge does not close");
    }
    TopoDS_Solid solid = BRepBuilderAPI_MakeSolid(TopoDS::Shell(sewing.SewedShape())).Solid();
    BRepLib::OrientClosedSolid(solid);
    return solid;
}

// The wedge that a stopped chamfer takes: full between its run-outs, nothing at its ends.
TopoDS_Shape wedgeOn(const KernelArris& arris, const Easing& easing) {
    gp_Pnt a = BRep_Tool::Pnt(TopExp::FirstVertex(arris.edge));
    gp_Pnt b = BRep_Tool::Pnt(TopExp::LastVertex(arris.edge));
    if (a.X() > b.X()) {
        std::swap(a, b);
    }
    const gp_Vec along = gp_Vec(a, b).Normalized();
    const auto at = [&](double x) { return a.Translated(along * ((x - a.X()) / along.X())); };
    const gp_Vec onNormal = normalOf(arris.on);
    const gp_Vec otherNormal = normalOf(arris.other);
    const gp_Vec intoOn = -(otherNormal - onNormal * onNormal.Dot(otherNormal)).Normalized();
    const gp_Vec intoOther = -(onNormal - otherNormal * onNormal.Dot(otherNormal)).Normalized();
    const bool stopsAtA = easing.from.has_value();
    const bool stopsAtB = easing.to.has_value();
    const double from = easing.from.value_or(a.X());
    const double to = easing.to.value_or(b.X());
    const gp_Pnt tipA = at(from);
    const gp_Pnt tipB = at(to);
    const gp_Pnt fullA = at(stopsAtA ? from + easing.runOut : from);
    const gp_Pnt fullB = at(stopsAtB ? to - easing.runOut : to);
    const gp_Pnt onA = fullA.Translated(intoOn * easing.onReach);
    const gp_Pnt onB = fullB.Translated(intoOn * easing.onReach);
    const gp_Pnt otherA = fullA.Translated(intoOther * easing.otherReach);
    const gp_Pnt otherB = fullB.Translated(intoOther * easing.otherReach);
    return solidFrom({{tipA, onA, onB, tipB},
                      {tipA, otherA, otherB, tipB},
                      {onA, otherA, otherB, onB},
                      {tipA, onA, otherA},
                      {tipB, onB, otherB}});
}

TopoDS_Shape stopped(TopoDS_Shape shape, const Easing& easing) {
    if (easing.profile != EasingProfile::Chamfer) {
        giveUpEasing("a stopped round-over is not asked of it");
    }
    for (const KernelArris& arris : arrisesOf(shape, easing)) {
        shape = BRepAlgoAPI_Cut(shape, wedgeOn(arris, easing)).Shape();
    }
    return shape;
}

// The half spaces through the middle of the end and each arris around it, moved down the sides.
TopoDS_Shape pyramid(TopoDS_Shape shape, const Easing& easing) {
    const std::vector<KernelArris> arrises = arrisesOf(shape, easing);
    gp_XYZ sum;
    for (const KernelArris& arris : arrises) {
        sum += BRep_Tool::Pnt(TopExp::FirstVertex(arris.edge)).XYZ() +
               BRep_Tool::Pnt(TopExp::LastVertex(arris.edge)).XYZ();
    }
    const gp_Pnt apex(sum / (2.0 * static_cast<double>(arrises.size())));
    for (const KernelArris& arris : arrises) {
        const gp_Vec down = -normalOf(arris.on) * easing.otherReach;
        const gp_Pnt a = BRep_Tool::Pnt(TopExp::FirstVertex(arris.edge)).Translated(down);
        const gp_Pnt b = BRep_Tool::Pnt(TopExp::LastVertex(arris.edge)).Translated(down);
        const gp_Vec normal = gp_Vec(a, b).Crossed(gp_Vec(a, apex));
        const gp_Pnt inside = apex.Translated(-normalOf(arris.on) * (2.0 * easing.otherReach));
        const TopoDS_Face face = BRepBuilderAPI_MakeFace(gp_Pln(a, gp_Dir(normal))).Face();
        shape = BRepAlgoAPI_Common(shape, BRepPrimAPI_MakeHalfSpace(face, inside).Solid()).Shape();
    }
    return shape;
}

// The cylinders about the arrises, each as long as its own, cut away.
TopoDS_Shape coved(TopoDS_Shape shape, const Easing& easing) {
    if (easing.onReach != easing.otherReach || easing.from || easing.to) {
        giveUpEasing("an elliptical or a stopped cove is not asked of it");
    }
    for (const KernelArris& arris : arrisesOf(shape, easing)) {
        if (BRepAdaptor_Curve(arris.edge).GetType() != GeomAbs_Line) {
            giveUpEasing("a cove along a curve is not asked of it");
        }
        const gp_Pnt a = BRep_Tool::Pnt(TopExp::FirstVertex(arris.edge));
        const gp_Pnt b = BRep_Tool::Pnt(TopExp::LastVertex(arris.edge));
        const gp_Ax2 axis(a, gp_Dir(gp_Vec(a, b)));
        shape = BRepAlgoAPI_Cut(
                    shape, BRepPrimAPI_MakeCylinder(axis, easing.onReach, a.Distance(b)).Shape())
                    .Shape();
    }
    return shape;
}

TopoDS_Shape through(const TopoDS_Shape& shape, const Easing& easing) {
    const std::vector<KernelArris> arrises = arrisesOf(shape, easing);
    if (easing.profile == EasingProfile::Chamfer) {
        BRepFilletAPI_MakeChamfer chamfer(shape);
        for (const KernelArris& arris : arrises) {
            chamfer.Add(easing.onReach, easing.otherReach, arris.edge, arris.on);
        }
        chamfer.Build();
        if (!chamfer.IsDone()) {
            giveUpEasing("a chamfer");
        }
        return chamfer.Shape();
    }
    if (easing.onReach != easing.otherReach) {
        giveUpEasing("an elliptical round-over is not asked of it");
    }
    BRepFilletAPI_MakeFillet fillet(shape);
    for (const KernelArris& arris : arrises) {
        fillet.Add(easing.onReach, arris.edge);
    }
    fillet.Build();
    if (!fillet.IsDone()) {
        giveUpEasing("a fillet");
    }
    return fillet.Shape();
}

}  // namespace

TopoDS_Shape easedByKernel(TopoDS_Shape shape, const Body& body) {
    for (const Easing& easing : body.easings) {
        if (easing.profile == EasingProfile::Pyramid) {
            shape = pyramid(shape, easing);
        } else if (easing.profile == EasingProfile::Cove) {
            shape = coved(shape, easing);
        } else if (easing.from || easing.to) {
            shape = stopped(shape, easing);
        } else {
            shape = through(shape, easing);
        }
    }
    return shape;
}

}  // namespace shoulderline::reference
