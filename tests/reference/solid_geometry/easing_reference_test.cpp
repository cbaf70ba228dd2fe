// Against the fillets and chamfers of Open CASCADE Technology 7.6, on its own edges.

#include <gtest/gtest.h>

#include "tests/reference/solid_geometry/occt_solids.h"

namespace shoulderline {
namespace {

using reference::Solid;

Body rail(std::vector<Easing> easings) {
    return {Outline::rectangle(500, 70), 22, std::nullopt, {}, std::move(easings)};
}

// An arm: straight behind, round in front, with a hollow side.
Body arm(std::vector<Easing> easings) {
    return {{{{{60, 0}, -0.1}, {{420, 0}, 0}, {{500, 10}, 0}, {{500, 90}, 0}, {{60, 90}, 0.7}}},
            28,
            std::nullopt,
            {},
            std::move(easings)};
}

double theirs(const Body& body) {
    return Solid({body, {}, {}, {}}).volume();
}

TEST(EasingReference, ChamfersAgree) {
    const Easing even{EasingProfile::Chamfer, BodyFace::FaceSide, BodyFace::FaceEdge, 6, 6};
    const Easing uneven{EasingProfile::Chamfer, BodyFace::BackSide, BodyFace::BackEdge, 12, 5};
    const Easing around{EasingProfile::Chamfer, BodyFace::BackSide, std::nullopt, 4, 4};
    const Easing end{EasingProfile::Chamfer, BodyFace::FarEnd, std::nullopt, 3, 7};
    for (const std::vector<Easing>& easings :
         {std::vector{even}, {uneven}, {even, uneven}, {around}, {end}, {even, end}}) {
        const Body body = rail(easings);
        EXPECT_NEAR(body.volume().value(), theirs(body), 1e-7 * theirs(body));
    }
}

TEST(EasingReference, StoppedChamfersAgreeWithWedgesCutAway) {
    Easing stopped{EasingProfile::Chamfer, BodyFace::FaceSide, BodyFace::BackEdge, 7, 9};
    stopped.from = 60;
    stopped.to = 410;
    stopped.runOut = 15;
    const Body body = rail({stopped});
    EXPECT_NEAR(body.volume().value(), theirs(body), 1e-7 * theirs(body));
}

TEST(EasingReference, PyramidsAgreeWithHalfSpaces) {
    const Body body = rail({{EasingProfile::Pyramid, BodyFace::StartEnd, std::nullopt, 0, 14}});
    EXPECT_NEAR(body.volume().value(), theirs(body), 1e-7 * theirs(body));
}

// Of a round-over the facets lie within kEasingSagitta of the fillet, all to one side.
TEST(EasingReference, RoundOversAgreeWithFilletsWithinTheirFacets) {
    for (const double radius : {2.0, 5.0, 9.0}) {
        const Body body =
            rail({{EasingProfile::Round, BodyFace::FaceSide, BodyFace::FaceEdge, radius, radius}});
        const double arc = radius * 1.5707963 * 500;
        EXPECT_LT(body.volume().value(), theirs(body));
        EXPECT_GT(body.volume().value(), theirs(body) - kEasingSagitta * arc);
    }
}

// Of a cove they lie in the hollow of the cylinder, all to the other side.
TEST(EasingReference, CovesAgreeWithCylindersCutAwayWithinTheirFacets) {
    const Easing along{EasingProfile::Cove, BodyFace::BackSide, BodyFace::FaceEdge, 6, 6};
    const Easing other{EasingProfile::Cove, BodyFace::FaceSide, BodyFace::FaceEdge, 9, 9};
    const Easing around{EasingProfile::Cove, BodyFace::BackSide, std::nullopt, 5, 5};
    const Easing end{EasingProfile::Cove, BodyFace::FarEnd, std::nullopt, 4, 4};
    for (const std::vector<Easing>& easings :
         {std::vector{along}, {along, other}, {around}, {end}}) {
        const Body body = rail(easings);
        double arcs = 0.0;
        for (const Easing& easing : easings) {
            const double length = easing.with ? 500 : easing.on == BodyFace::FarEnd ? 184 : 1140;
            arcs += easing.onReach * 1.5707963 * length;
        }
        EXPECT_GT(body.volume().value(), theirs(body));
        EXPECT_LT(body.volume().value(), theirs(body) + kEasingSagitta * arcs);
    }
}

TEST(EasingReference, ArrisesOfShapedOutlinesAgreeWithinTheirFacets) {
    const Easing around{EasingProfile::Chamfer, BodyFace::BackSide, std::nullopt, 4, 4};
    const Easing along{EasingProfile::Chamfer, BodyFace::FaceSide, BodyFace::FaceEdge, 5, 5};
    Body hollow = rail({along});
    hollow.face.vertices.front().bulge = -0.12;
    for (const Body& body : {arm({around}), hollow}) {
        Body whole = body;
        whole.easings.clear();
        const double ours = whole.volume().value() - body.volume().value();
        const double kernel = theirs(whole) - theirs(body);
        EXPECT_NEAR(ours, kernel, 1e-4 * kernel);
    }
}

// The convex pieces, sewn together by the kernel, are the solid that it makes itself.
TEST(EasingReference, PiecesOfAnEasedRailAreWhatTheKernelMakes) {
    Easing stopped{EasingProfile::Chamfer, BodyFace::BackSide, BodyFace::FaceEdge, 6, 6};
    stopped.from = 40;
    stopped.runOut = 10;
    const Easing end{EasingProfile::Chamfer, BodyFace::FarEnd, std::nullopt, 3, 3};
    const Body body = rail({stopped, end});
    double shared = 0.0;
    for (const ConvexSolid& piece : body.pieces()) {
        shared += common(Solid({piece, {}, {}, {}}), Solid({body, {}, {}, {}})).volume();
    }
    EXPECT_NEAR(shared, theirs(body), 1e-6 * theirs(body));
}

}  // namespace
}  // namespace shoulderline
