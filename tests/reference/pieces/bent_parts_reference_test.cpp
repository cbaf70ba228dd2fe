#include <gtest/gtest.h>

#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"

// Bent parts against Open CASCADE Technology 7.6, whose arcs are true arcs.
namespace shoulderline {
namespace {

using reference::Solid;
using reference::SolidPlan;
using reference::Volume;

TEST(BentPartsAgainstOcct, VolumesAgree) {
    for (const char* rise : {"1/4 in", "1 in", "3 in"}) {
        for (const Face hollow : {Face::FaceSide, Face::BackSide}) {
            Piece piece = testing::twoPostsAndARail();
            Part& rail = testing::statedPart(piece, "rail");
            rail.bend.emplace();
            rail.bend->rise = rise;
            rail.bend->hollow = hollow;
            const ResolvedPiece resolved = testing::resolved(piece);
            const ResolvedPart& bent = testing::partNamed(resolved, "rail");
            ASSERT_TRUE(bent.bend) << rise;
            SolidPlan plan{bent.body, bent.frame, {}, {}};
            for (const TenonSolid& tenon : bent.tenons) {
                plan.added.push_back(tenon.exact ? Volume(*tenon.exact) : Volume(tenon.box));
            }

            // Facets keep within kArcSagitta of either face.
            const double facets =
                2 * kArcSagitta * bent.shoulderLength.value.mm() * bent.width.value.mm();
            EXPECT_NEAR(volumeAsMade(bent), Solid(plan).volume(), facets) << rise;
        }
    }
}

}  // namespace
}  // namespace shoulderline
