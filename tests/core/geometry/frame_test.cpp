#include "core/geometry/frame.h"

#include <gtest/gtest.h>

namespace shoulderline {
namespace {

TEST(Frame, AQuarterTurnAboutZTakesXToY) {
    const Frame turned = Frame::turned({}, {}, {}, Angle::degrees(90));

    EXPECT_EQ(turned.x, (Vec3{0, 1, 0}));
    EXPECT_TRUE(turned.isRightHanded());
}

TEST(Frame, TheMirrorTwinIsLeftHandedAndMirrorsPoints) {
    const Frame frame = Frame::turned({10, 20, 30}, {}, {}, Angle::degrees(30));
    const Vec3 p = frame.toOuter({1, 2, 3});

    const Vec3 twin = frame.mirroredInX().toOuter({1, 2, 3});

    EXPECT_FALSE(frame.mirroredInX().isRightHanded());
    EXPECT_NEAR(twin.x, -p.x, 1e-12);
    EXPECT_NEAR(twin.y, p.y, 1e-12);
    EXPECT_NEAR(twin.z, p.z, 1e-12);
}

}  // namespace
}  // namespace shoulderline
