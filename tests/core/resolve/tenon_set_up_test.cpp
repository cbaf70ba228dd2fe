#include "core/resolve/tenon_set_up.h"

#include <algorithm>
#include <map>
#include <set>

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

// Common practice: a tenon is what is left when its cheeks are ripped to their fences and its
// shoulders cut in to the cheeks, each as deep as its own side asks.
namespace shoulderline {
namespace {

Piece railWith(std::set<JointFeature> features,
               std::map<SizeName, std::string> sizes,
               JointKind kind = JointKind::Blind) {
    Piece piece = testing::twoPostsAndARail();
    JointStatement joint;
    joint.tenoned = "rail";
    joint.mortised = "post";
    joint.kind = kind;
    joint.features = std::move(features);
    for (const auto& [name, text] : sizes) {
        joint.sizes[name] = {SizeState::Stated, text};
    }
    piece.joints = {joint};
    return piece;
}

const shoulderline::SetUp* named(const std::vector<shoulderline::SetUp>& all,
                                 const std::string& work) {
    const auto it = std::find_if(
        all.begin(), all.end(), [&](const shoulderline::SetUp& one) { return one.work == work; });
    return it == all.end() ? nullptr : &*it;
}

// What the tools leave of the end of a blank, cubic millimetres, from their settings alone.
double leftBy(const std::vector<shoulderline::SetUp>& all, const ResolvedPart& part) {
    const double width = part.width.value.mm();
    const double thickness = part.thickness.value.mm();
    const auto fence = [&](const char* cheek, double otherwise) {
        const shoulderline::SetUp* one = named(all, cheek);
        return one == nullptr ? otherwise : one->fence.mm();
    };
    const double thick =
        fence("cheek at the back side", thickness) - fence("cheek at the face side", 0.0);
    const shoulderline::SetUp* pared = named(all, "shoulders, pared");
    const double low = fence("cheek at the face edge", 0.0);
    const double high = fence("cheek at the back edge", width);
    double area = (high - low) * pared->to.mm();
    for (const char* edge : {"cheek at the face edge", "cheek at the back edge"}) {
        if (const shoulderline::SetUp* cheek = named(all, edge)) {
            const double wide = edge == std::string("cheek at the face edge") ? low : width - high;
            // What the cheek's saw does not reach; a slope takes half of it.
            const double stands = pared->to.mm() - cheek->depth.mm();
            area += wide * stands * (named(all, "slope of the haunch") != nullptr ? 0.5 : 1.0);
        }
    }
    return area * thick;
}

double volumeOfTenons(const ResolvedPiece& resolved, std::size_t joint) {
    double volume = 0.0;
    for (const TenonSolid& tenon : resolved.parts[resolved.joints[joint].tenoned].tenons) {
        volume += tenon.joint == joint ? tenon.solid().volume() : 0.0;
    }
    return volume;
}

TEST(TenonSetUp, LeavesTheTenon) {
    const std::vector<std::pair<std::set<JointFeature>, std::map<SizeName, std::string>>> made{
        {{}, {}},
        {{}, {{SizeName::ShoulderFaceEdge, "5/8 in"}, {SizeName::ShoulderBackEdge, "3/8 in"}}},
        {{JointFeature::BareFaced}, {}},
        {{JointFeature::Haunch}, {}},
        {{JointFeature::SlopingHaunch}, {}},
        {{JointFeature::Haunch}, {{SizeName::HaunchLength, "5/8 in"}}}};
    for (const auto& [features, sizes] : made) {
        const ResolvedPiece resolved = testing::resolved(railWith(features, sizes));
        ASSERT_TRUE(resolved.troubles.empty()) << resolved.troubles.front().message;
        const double volume = volumeOfTenons(resolved, 0);

        EXPECT_NEAR(leftBy(tenonSetUpsOf(resolved, 0), testing::partNamed(resolved, "rail")),
                    volume,
                    1e-6 * volume)
            << features.size() << " features, " << sizes.size() << " sizes";
    }
}

TEST(TenonSetUp, LeavesEveryPlainTenonOfTheSamples) {
    int count = 0;
    for (const char* name : testing::kSamples) {
        const ResolvedPiece resolved = testing::resolved(testing::sample(name));
        for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
            const ResolvedJoint& joint = resolved.joints[i];
            const ResolvedPart& part = resolved.parts[joint.tenoned];
            const bool isPlain =
                (joint.kind == JointKind::Blind || joint.kind == JointKind::Through) &&
                part.body.isBox() && !joint.has(JointFeature::Twin) &&
                !joint.has(JointFeature::Double) &&
                std::none_of(part.tenons.begin(), part.tenons.end(), [&](const TenonSolid& solid) {
                    return solid.joint == i && solid.exact && !solid.isHaunch;
                });
            if (!isPlain) {
                continue;
            }
            const double volume = volumeOfTenons(resolved, i);
            EXPECT_NEAR(leftBy(tenonSetUpsOf(resolved, i), part), volume, 1e-6 * volume)
                << name << ": " << part.name;
            ++count;
        }
    }
    EXPECT_GT(count, 20);
}

TEST(TenonSetUp, SawsEachShoulderAsDeepAsItsOwnSide) {
    const ResolvedPiece resolved = testing::resolved(railWith(
        {}, {{SizeName::ShoulderFaceEdge, "5/8 in"}, {SizeName::ShoulderBackEdge, "3/8 in"}}));
    const std::vector<shoulderline::SetUp> all = tenonSetUpsOf(resolved, 0);
    const Shoulders& s = resolved.joints.front().tenon.shoulders;

    const shoulderline::SetUp* sides = named(all, "shoulders at the face side and back side, sawn");
    const shoulderline::SetUp* low = named(all, "shoulder at the face edge, sawn");
    const shoulderline::SetUp* high = named(all, "shoulder at the back edge, sawn");
    ASSERT_NE(sides, nullptr);
    ASSERT_NE(low, nullptr);
    ASSERT_NE(high, nullptr);
    EXPECT_EQ(sides->depth, s.faceSide.value);
    EXPECT_NEAR(low->depth.inches(), 0.625, 1e-9);
    EXPECT_NEAR(high->depth.inches(), 0.375, 1e-9);
}

TEST(TenonSetUp, SaysWhereASlopingHaunchRunsOut) {
    const Piece piece =
        railWith({JointFeature::SlopingHaunch},
                 {{SizeName::HaunchLength, "1/2 in"}, {SizeName::TenonLength, "1 1/4 in"}});
    const ResolvedPiece resolved = testing::resolved(piece);
    int told = 0;
    for (const std::string& text : setUpTexts(setUpsOf(resolved, 0), resolved, piece.style)) {
        told +=
            text.find("stop 3/4 from the end at the tenon, 1 1/4 at the edge") != std::string::npos;
    }
    EXPECT_EQ(told, 1);
}

// Common practice: a saw kerf for a wedge is set in from the tenon's edge so that the strip outside
// it bends; the rule book has the place.
TEST(KerfSetUp, FencesEachKerfFromTheFaceEdge) {
    const ResolvedPiece resolved =
        testing::resolved(railWith({JointFeature::WedgedInKerfs}, {}, JointKind::Through));
    ASSERT_TRUE(resolved.troubles.empty()) << resolved.troubles.front().message;
    const ResolvedJoint& joint = resolved.joints.front();
    const double kerfPlace = testing::ruleBook()[RuleId::KerfPlace].length().mm();
    const double low = joint.tenon.shoulders.faceEdge.value.mm() + kerfPlace;
    const double high =
        joint.tenon.shoulders.faceEdge.value.mm() + joint.tenon.width.value.mm() - kerfPlace;
    std::vector<double> places;
    for (const shoulderline::SetUp& one : setUpsOf(resolved, 0)) {
        if (one.work.find("kerf") != std::string::npos) {
            EXPECT_EQ(one.reference, Face::FaceEdge);
            EXPECT_EQ(one.from, one.to) << "right across the tenon";
            EXPECT_NEAR(one.depth.mm(), joint.size(SizeName::KerfDepth)->value.mm(), 1e-9);
            places.push_back(one.fence.mm());
        }
    }
    ASSERT_EQ(places.size(), 2U);
    std::sort(places.begin(), places.end());
    constexpr double kKerf = 1.5;  // mm, a backsaw's
    EXPECT_NEAR(places.front(), low - kKerf / 2, 1e-9);
    EXPECT_NEAR(places.back(), high - kKerf / 2, 1e-9);
}

// Two tenons beside one another, or over one another, have cheeks between them, a gap apart.
TEST(TenonSetUp, SawsTheCheeksBetweenTwins) {
    int seen = 0;
    for (const char* name : testing::kSamples) {
        const ResolvedPiece resolved = testing::resolved(testing::sample(name));
        for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
            const ResolvedJoint& joint = resolved.joints[i];
            if (!joint.has(JointFeature::Twin) && !joint.has(JointFeature::Double)) {
                continue;
            }
            std::vector<Length> fences;
            for (const shoulderline::SetUp& one : tenonSetUpsOf(resolved, i)) {
                if (one.work == "inner cheeks") {
                    fences.push_back(one.fence);
                }
            }
            ASSERT_EQ(fences.size(), 2u) << joint.name;
            EXPECT_NEAR(
                (fences[1] - fences[0]).mm(), joint.size(SizeName::TenonGap)->value.mm(), 1e-6)
                << joint.name;
            ++seen;
        }
    }
    EXPECT_GT(seen, 0);
}

// At 45 degrees as much is sawn off the length as off the side: a half square along the tenon.
TEST(TenonSetUp, SawsTheMitreOfTheEnd) {
    int seen = 0;
    const ResolvedPiece resolved = testing::resolved(testing::sample("luggage_stand"));
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        if (!joint.has(JointFeature::Mitred)) {
            continue;
        }
        for (const shoulderline::SetUp& one : tenonSetUpsOf(resolved, i)) {
            if (one.work.rfind("mitre of the end, 45°", 0) != 0) {
                continue;
            }
            for (const TenonSolid& tenon : resolved.parts[joint.tenoned].tenons) {
                if (tenon.joint == i && !tenon.isHaunch && tenon.exact) {
                    const Vec3 box = tenon.exact->bounds().size();
                    const double off = box.x * box.y * box.z - tenon.exact->volume();
                    const double half = one.to.mm() * one.to.mm() / 2;
                    EXPECT_LT(std::min(std::abs(off - half * box.y), std::abs(off - half * box.z)),
                              1e-3)
                        << joint.name;
                    ++seen;
                }
            }
        }
    }
    EXPECT_GT(seen, 0);
}

}  // namespace
}  // namespace shoulderline
