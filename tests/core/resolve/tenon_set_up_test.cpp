#include "core/resolve/tenon_set_up.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include <gtest/gtest.h>

#include "core/resolve/end_plane.h"
#include "core/resolve/joint_angles.h"
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
    const double low = fence("edge cheek at the face edge", 0.0);
    const double high = fence("edge cheek at the back edge", width);
    double area = (high - low) * pared->to.mm();
    for (const char* edge : {"edge cheek at the face edge", "edge cheek at the back edge"}) {
        if (const shoulderline::SetUp* cheek = named(all, edge)) {
            const double wide =
                edge == std::string("edge cheek at the face edge") ? low : width - high;
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
                    const double by = (one.to - one.from).mm();
                    const double half = by * by / 2;
                    EXPECT_LT(std::min(std::abs(off - half * box.y), std::abs(off - half * box.z)),
                              1e-3)
                        << joint.name;
                    EXPECT_NEAR(one.to.mm(), box.x, 1e-6) << "as long as the wood that is left";
                    ++seen;
                }
            }
        }
    }
    EXPECT_GT(seen, 0);
}

// The corners of a shoulder square to nothing lie at as many distances from the tenon's end: on the
// middle of a side that is where its line's two ends lie on average.
TEST(TenonSetUp, StopsEachSideAtItsOwnShoulder) {
    int seen = 0;
    for (const char* name : {"side_chair", "raked_chair", "bed_frame"}) {
        const ResolvedPiece made = testing::resolved(testing::sample(name));
        for (std::size_t i = 0; i < made.joints.size(); ++i) {
            const ResolvedJoint& joint = made.joints[i];
            const ResolvedPart& part = made.parts[joint.tenoned];
            if (joint.kind != JointKind::Blind || joint.has(JointFeature::SquareToPost) ||
                endAnglesOf(part, joint.end).isSquare) {
                continue;
            }
            double end = 0.0;
            for (const TenonSolid& tenon : part.tenons) {
                if (tenon.joint == i && tenon.exact) {
                    const Box bounds = tenon.exact->bounds();
                    end = joint.end == End::Start ? bounds.min.x : bounds.max.x;
                }
            }
            const double width = part.width.value.mm();
            const double thickness = part.thickness.value.mm();
            for (const auto& [words, z] :
                 {std::pair{"shoulder at the face side, sawn", 0.0},
                  std::pair{"shoulder at the back side, sawn", thickness}}) {
                const double line =
                    (endAt(part, joint.end, 0.0, z) + endAt(part, joint.end, width, z)) / 2;
                if (const std::vector<shoulderline::SetUp> all = tenonSetUpsOf(made, i);
                    named(all, words) != nullptr) {
                    EXPECT_NEAR(named(all, words)->to.mm(), std::abs(end - line), 1e-6)
                        << joint.name << ", " << words;
                    ++seen;
                }
            }
        }
    }
    EXPECT_GT(seen, 8);
}

// A rail of 22 mm whose blade leans by 3.8 degrees: 22 tan 3.8 = 1.5 mm from one side's line to the
// other's.
TEST(TenonSetUp, TellsAStopForEachSideOfALeaningShoulder) {
    const Piece piece = testing::sample("side_chair");
    const ResolvedPiece made = testing::resolved(piece);
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedPart& rail = made.parts[made.joints[i].tenoned];
        if (rail.of != "side rail" || made.joints[i].kind != JointKind::Blind) {
            continue;
        }
        const std::vector<shoulderline::SetUp> all = tenonSetUpsOf(made, i);
        const shoulderline::SetUp* face = named(all, "shoulder at the face side, sawn");
        const shoulderline::SetUp* back = named(all, "shoulder at the back side, sawn");
        ASSERT_TRUE(face != nullptr && back != nullptr);
        EXPECT_NEAR(std::abs((face->to - back->to).mm()),
                    rail.thickness.value.mm() *
                        std::tan(std::abs(endAnglesOf(rail, made.joints[i].end).tilt.radians())),
                    1e-6);
        EXPECT_FALSE(face->isByMiddle) << "square across the face side";
        return;
    }
    FAIL() << "no side rail";
}

// Common practice: where a groove has run out through the end, the edge has no cheek left to saw.
TEST(TenonSetUp, SawsNoCheekThatAGrooveHasTakenAway) {
    const ResolvedPiece made = testing::resolved(testing::sample("chart_cabinet"));
    int seen = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedPart& rail = made.parts[made.joints[i].tenoned];
        if (rail.name != "back frame rail, middle" || !made.joints[i].hasTenon()) {
            continue;
        }
        for (const shoulderline::SetUp& one : tenonSetUpsOf(made, i)) {
            EXPECT_EQ(one.work.find("edge"), std::string::npos) << one.work;
            ++seen;
        }
    }
    EXPECT_GT(seen, 0);
}

}  // namespace
}  // namespace shoulderline
