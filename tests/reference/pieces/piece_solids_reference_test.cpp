#include <algorithm>

#include <gtest/gtest.h>

#include "core/check/neighbours.h"
#include "core/geometry/hidden_lines.h"
#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"

// Every sample against Open CASCADE Technology 7.6, which builds the same solids by its own
// booleans from the stated sizes: volumes as made, what mortises share, and hidden lines.
namespace shoulderline {
namespace {

using reference::Solid;
using reference::SolidPlan;
using reference::Volume;

// The faulty pieces are compared too: there the mortises meet.
constexpr const char* kPieces[] = {"samples/armchair",
                                   "tests/pieces/upright_chair",
                                   "samples/bench",
                                   "samples/table",
                                   "samples/luggage_stand",
                                   "samples/chart_cabinet",
                                   "tests/pieces/stated_sizes",
                                   "tests/pieces/tenons_meet",
                                   "tests/pieces/thin_walls",
                                   "tests/pieces/runs_through"};

class PieceSolids : public ::testing::TestWithParam<const char*> {
  protected:
    ResolvedPiece piece = testing::resolved(testing::pieceAt(GetParam()));
};
INSTANTIATE_TEST_SUITE_P(OpenCascade, PieceSolids, ::testing::ValuesIn(kPieces));

// The mortise of a joint from its published sizes alone (position from the reference face and the
// end, width, length, depth), not from the box that the program keeps.
Box mortiseFromSizes(const ResolvedPart& part, const ResolvedJoint& joint) {
    const Mortise& m = joint.mortise;
    const Box wood = part.bodyBox();
    // Which way the long side of the mouth lies follows from the two members' directions.
    const double alongLength = std::abs(dot(joint.frame.y, part.frame.x));
    const double first = alongLength > 0.5 ? m.length.value.mm() : m.width.value.mm();
    const double second = alongLength > 0.5 ? m.width.value.mm() : m.length.value.mm();
    Box box = wood;
    const bool entersEnd = m.face == Face::StartEnd || m.face == Face::FarEnd;
    const int endAxis = entersEnd ? 1 : 0;
    const bool entersSide = m.face == Face::FaceSide || m.face == Face::BackSide;
    const int acrossAxis = entersSide ? 1 : 2;
    box.min[endAxis] = m.fromStart.value.mm();
    box.max[endAxis] = box.min[endAxis] + first;
    box.min[acrossAxis] = m.fromFace.value.mm();
    box.max[acrossAxis] = box.min[acrossAxis] + second;
    const int depthAxis = 3 - endAxis - acrossAxis;
    const bool fromLow =
        m.face == Face::StartEnd || m.face == Face::FaceEdge || m.face == Face::FaceSide;
    if (fromLow) {
        box.max[depthAxis] = wood.min[depthAxis] + m.depth.value.mm();
    } else {
        box.min[depthAxis] = wood.max[depthAxis] - m.depth.value.mm();
    }
    return box;
}

// The tenon of a joint from its sizes: shoulders, width, thickness, length.
Box tenonFromSizes(const ResolvedPart& part, const ResolvedJoint& joint) {
    const Tenon& t = joint.tenon;
    Box box;
    const double end = part.shoulderLength.value.mm();
    box.min = {joint.end == End::Start ? -t.length.value.mm() : end,
               t.shoulders.faceEdge.value.mm(),
               t.shoulders.faceSide.value.mm()};
    box.max = {joint.end == End::Start ? 0.0 : end + t.length.value.mm(),
               part.width.value.mm() - t.shoulders.backEdge.value.mm(),
               part.thickness.value.mm() - t.shoulders.backSide.value.mm()};
    return box;
}

// A joint whose one tenon and one mortise its published sizes tell whole.
bool isPlain(const ResolvedJoint& joint) {
    return (joint.kind == JointKind::Blind || joint.kind == JointKind::Through) &&
           !joint.has(JointFeature::Twin) && !joint.has(JointFeature::Double);
}

Volume volumeOf(const ResolvedPiece& piece, const ResolvedPart& part, const MortiseSolid& mortise) {
    const ResolvedJoint& joint = piece.joints[mortise.joint];
    if (isPlain(joint) && !mortise.exact && !mortise.isHaunch) {
        return mortiseFromSizes(part, joint);
    }
    return mortise.solid();
}

Volume volumeOf(const ResolvedPiece& piece, const ResolvedPart& part, const TenonSolid& tenon) {
    const ResolvedJoint& joint = piece.joints[tenon.joint];
    if (isPlain(joint) && !tenon.exact && !tenon.isHaunch) {
        return tenonFromSizes(part, joint);
    }
    return tenon.solid();
}

TEST_P(PieceSolids, VolumesAsMadeAreAlike) {
    for (const ResolvedPart& part : piece.parts) {
        SolidPlan plan{part.body, part.frame, {}, {}};
        // The wood first: bores and kerfs go through tenons too.
        for (const TenonSolid& tenon : part.tenons) {
            plan.added.push_back(volumeOf(piece, part, tenon));
        }
        for (const MortiseSolid& mortise : part.mortises) {
            plan.cutAway.push_back(volumeOf(piece, part, mortise));
        }
        for (const ResolvedCut& cut : part.cuts) {
            plan.cutAway.push_back(cut.solid());
        }
        const double theirs = Solid(plan).volume();
        // Where an arc runs through a mortise, or two outlines are shared, our facets come in.
        // Those of a bow's two faces, one gaining and one losing, nearly make up for one another.
        const double facets = part.body.isBox() ? 0.0
                              : part.bend       ? 1e-5 * theirs
                                                : 0.02 * part.thickness.value.mm();
        // Of a shaped side that a hole is bored through, facets within kArcSagitta go with it.
        double bored = 0.0;
        const auto bore = [&](const Box& hollow) {
            const Vec3 size = hollow.size();
            bored +=
                part.body.isBox()
                    ? 0.0
                    : kArcSagitta * std::min({size.x * size.y, size.y * size.z, size.x * size.z});
        };
        for (const ResolvedCut& cut : part.cuts) {
            bore(cut.box);
        }
        for (const MortiseSolid& mortise : part.mortises) {
            bore(mortise.box);
        }
        // Facets of a round-over lie within kEasingSagitta inside the kernel's fillet, those of a
        // cove in the hollow of its cylinder.
        double rounded = 0.0;
        for (const Easing& easing : part.body.easings) {
            const Vec3 size = part.bodyBox().max;
            const double along = easing.with ? size.x : 2 * (size.x + size.y);
            const bool isRound =
                easing.profile == EasingProfile::Round || easing.profile == EasingProfile::Cove;
            rounded += isRound ? kEasingSagitta * easing.onReach * M_PI / 2 * along : 0.0;
        }
        EXPECT_NEAR(volumeAsMade(part), theirs, 1e-6 * theirs + facets + bored + rounded)
            << part.name;
    }
}

TEST_P(PieceSolids, HollowsThatMeetShareTheSameVolumeAndOthersTheSameWall) {
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const ResolvedPart& part = piece.parts[p];
        const auto kernelSolid = [&](const Cavity& cavity) {
            const Volume volume = cavity.mortise != nullptr ? volumeOf(piece, part, *cavity.mortise)
                                                            : Volume(cavity.solid());
            return Solid(SolidPlan{volume, part.frame, {}, {}});
        };
        for (const Meeting& meeting : meetingsIn(piece, p)) {
            const Solid first = kernelSolid(meeting.first);
            const Solid second = kernelSolid(meeting.second);
            const double shared = reference::common(first, second).volume();
            EXPECT_NEAR(meeting.shared, shared, 1e-6 * std::max(shared, 1.0)) << part.name;
            EXPECT_NEAR(meeting.wall, reference::minimumDistance(first, second), 1e-6) << part.name;
        }
    }
}

// What is drawn of a tenon: in the wood, and what stands proud of it. Parted, since the kernel does
// not cut an edge where it comes out through a face of another solid.
std::vector<Box> partedTenon(const ResolvedJoint& joint, const Box& tenon) {
    const double proud = joint.tenon.projection.value.mm();
    if (proud <= 0) {
        return {tenon};
    }
    Box inside = tenon;
    Box outside = tenon;
    if (joint.end == End::Start) {
        inside.min.x += proud;
        outside.max.x = inside.min.x;
    } else {
        inside.max.x -= proud;
        outside.min.x = inside.max.x;
    }
    return {inside, outside};
}

// A round tenon as a true cylinder, not by our facets.
Solid roundTenon(const ResolvedPart& part, const TenonSolid& tenon) {
    const double radius = tenon.box.size().y / 2;
    const Body round{{{{{-radius, 0}, 1}, {{radius, 0}, 1}}}, tenon.box.size().x, {}};
    Vec3 start = tenon.box.centre();
    start.x = tenon.box.min.x;
    const Frame alongPart{start, {0, 1, 0}, {0, 0, 1}, {1, 0, 0}};
    return Solid(SolidPlan{round, part.frame.compose(alongPart), {}, {}});
}

// Bodies and tenons, as an elevation draws them: mortises are filled by what enters them. The piece
// whose parts run through one another is left out, for the reason above.
// Round-overs are left out too: the lines in which they run tangent into their faces are drawn, and
// the kernel does not give them.
class SeenEdges : public PieceSolids {
  protected:
    SeenEdges() {
        Piece stated = testing::pieceAt(GetParam());
        for (Part& part : stated.parts) {
            std::erase_if(part.easings, [](const EasingStatement& easing) {
                return easing.kind == EasingKind::RoundOver;
            });
        }
        piece = testing::resolved(stated);
    }
};
INSTANTIATE_TEST_SUITE_P(OpenCascade, SeenEdges, ::testing::ValuesIn(kPieces, kPieces + 9));
TEST_P(SeenEdges, AreAlikeInViewsFromThreeSides) {
    if (!reference::kHiddenLinesAreSound) {
        GTEST_SKIP() << "the kernel's hidden lines are not sound in this build";
    }
    std::vector<Polyhedron> ours;
    std::vector<Solid> theirs;
    const auto add = [&](const Box& box, const Frame& frame) {
        ours.push_back(Polyhedron::box(box, frame));
        theirs.emplace_back(SolidPlan{box, frame, {}, {}});
    };
    for (const ResolvedPart& part : piece.parts) {
        ours.push_back(part.body.toPolyhedron()->transformed(part.frame));
        if (!part.body.planes.empty()) {
            ours.back().smoothEdges.clear();  // the kernel has the facets of a round as planes
        }
        theirs.emplace_back(SolidPlan{part.body, part.frame, {}, {}});
        for (const TenonSolid& tenon : part.tenons) {
            if (tenon.exact) {
                if (piece.joints[tenon.joint].kind == JointKind::Round) {
                    ours.push_back(polyhedronOf(tenon, part.frame));
                    theirs.push_back(roundTenon(part, tenon));
                    continue;
                }
                for (const Box& box : partedTenon(piece.joints[tenon.joint], tenon.box)) {
                    const auto solid = intersection(tenon.solid(), ConvexSolid::box(box));
                    if (!solid) {
                        continue;
                    }
                    ours.push_back(solid->toPolyhedron().transformed(part.frame));
                    ours.back().smoothEdges.clear();  // the kernel has facets as planes
                    theirs.emplace_back(SolidPlan{*solid, part.frame, {}, {}});
                }
                continue;
            }
            for (const Box& box : partedTenon(piece.joints[tenon.joint], tenon.box)) {
                add(box, part.frame);
            }
        }
    }
    // A view from straight ahead sees many faces edge-on, where the kernel's verdict is not to be
    // relied on; turned a little, no face of the samples is near that.
    for (const View& view : {View::axonometric(Angle::degrees(11), Angle::degrees(9)),
                             View::axonometric(Angle::degrees(67), Angle::degrees(14)),
                             View::axonometric(Angle::degrees(31), Angle::degrees(52))}) {
        reference::SeenLengths mine;
        for (const ViewEdge& edge : hiddenLines(ours, view)) {
            (edge.visible ? mine.visible : mine.hidden) += norm(edge.b - edge.a);
        }
        const reference::SeenLengths kernel = reference::seenLengths(theirs, view);
        EXPECT_NEAR(mine.visible, kernel.visible, 1e-3 * kernel.visible);
        EXPECT_NEAR(mine.hidden, kernel.hidden, 1e-3 * kernel.hidden);
    }
}

}  // namespace
}  // namespace shoulderline
