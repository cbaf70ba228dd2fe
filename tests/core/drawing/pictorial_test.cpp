#include "core/drawing/pictorial.h"

#include <algorithm>
#include <cmath>
#include <set>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/opened_wood.h"
#include "core/drawing/paper.h"
#include "core/drawing/piece_view.h"
#include "core/drawing/pulled_apart.h"
#include "core/geometry/convex_hull.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::kMetrics;
constexpr double kClearance = 40.0;

TEST(PulledApart, EveryTenonOfTheSamplesIsOutOfItsMortise) {
    for (const char* name : testing::kSamples) {
        const ResolvedPiece resolved = testing::resolved(testing::sample(name));
        const std::vector<Vec3> moves = pulledApart(resolved, kClearance);
        for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
            const ResolvedJoint& joint = resolved.joints[i];
            const Vec3 apart = moves[joint.mortised] - moves[joint.tenoned];
            if (joint.kind == JointKind::Rests) {
                // It goes into nothing; what lies in a corner is drawn off two parts at once.
                EXPECT_GT(dot(apart, joint.frame.x), 0.0) << name << ": " << joint.name;
                continue;
            }
            const double least = lengthOfEntry(resolved, i) + kClearance;
            // Joints askew move along the axis nearest to them.
            const double slant = std::max(
                {std::abs(joint.frame.x.x), std::abs(joint.frame.x.y), std::abs(joint.frame.x.z)});
            EXPECT_GE(dot(apart, joint.frame.x), least * slant - 1e-6)
                << name << ": " << joint.name;
        }
    }
}

TEST(PulledApart, TwoPostsAndARailMoveOnlyAlongTheRail) {
    const ResolvedPiece resolved = testing::resolved(testing::twoPostsAndARail());
    const std::vector<Vec3> moves = pulledApart(resolved, kClearance);
    double sum = 0.0;
    for (const Vec3& move : moves) {
        EXPECT_EQ(move.y, 0.0);
        EXPECT_EQ(move.z, 0.0);
        sum += move.x;
    }
    EXPECT_NEAR(sum, 0.0, 0.01) << "the rail stays in the middle";
}

TEST(PulledApart, TenonsStayInLineWithTheirMortisesInTheTable) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("table"));
    const std::vector<Vec3> moves = pulledApart(resolved, kClearance);
    for (const ResolvedJoint& joint : resolved.joints) {
        if (!joint.hasTenon()) {
            continue;
        }
        const Vec3 apart = moves[joint.mortised] - moves[joint.tenoned];
        EXPECT_LT(norm(cross(apart, joint.frame.x)), 1e-6) << joint.name;
    }
}

TEST(PulledApart, PartsEachLetIntoTheOtherMoveTogether) {
    ResolvedPiece resolved = testing::resolved(testing::twoPostsAndARail());
    ResolvedJoint back = resolved.joints.front();
    std::swap(back.tenoned, back.mortised);
    resolved.joints.push_back(back);

    const std::vector<Vec3> moves = pulledApart(resolved, kClearance);

    EXPECT_EQ(moves[back.tenoned] - moves[back.mortised], (Vec3{0, 0, 0}));
}

double lengthOf(const std::vector<PictureLine>& lines) {
    double sum = 0.0;
    for (const PictureLine& line : lines) {
        sum += norm(line.b - line.a);
    }
    return sum;
}

TEST(Pictures, AssembledShowWhatAnElevationShowsAsVisible) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("bench"));
    double visible = 0.0;
    for (const ElevationLine& line : elevationOf(resolved, View::front()).lines) {
        visible += line.isVisible ? norm(line.b - line.a) : 0.0;
    }

    EXPECT_NEAR(lengthOf(pictureOf(resolved, View::front()).lines), visible, 0.5);
}

// A box shows its outline in six edges and its nearest corner in three.
TEST(Pictures, OutlinesAreWideAndInnerEdgesNarrow) {
    ResolvedPiece resolved = testing::resolved(testing::twoPostsAndARail());
    resolved.parts.resize(1);
    resolved.parts[0].mortises.clear();
    resolved.parts[0].tenons.clear();
    resolved.joints.clear();

    const Picture picture = pictureOf(resolved, pictorialView());

    int contours = 0;
    for (const PictureLine& line : picture.lines) {
        contours += line.kind == PictureLineKind::Contour;
    }
    EXPECT_EQ(picture.lines.size(), 9u);
    EXPECT_EQ(contours, 6);
}

// The mouth of a mortise in a face that looks at the viewer, its walls seen inside it.
TEST(Pictures, PulledApartShowTheMortises) {
    ResolvedPiece resolved = testing::resolved(testing::twoPostsAndARail());
    const std::vector<Vec3> moves = pulledApart(resolved, kClearance);
    const auto edgesOf = [&](const Picture& picture, std::size_t part) {
        double sum = 0.0;
        for (const PictureLine& line : picture.lines) {
            sum += line.part == part && line.kind == PictureLineKind::Edge ? norm(line.b - line.a)
                                                                           : 0.0;
        }
        return sum;
    };
    // The left post's mortise looks to the right hand, where the viewer stands.
    const std::size_t left = resolved.parts[0].frame.origin.x < 0.0 ? 0 : 1;
    ASSERT_EQ(resolved.parts[left].mortises.size(), 1u);
    const double with = edgesOf(pictureOf(resolved, pictorialView(), moves), left);
    const Vec3 mouth = resolved.parts[left].mortises[0].box.size();
    resolved.parts[left].mortises.clear();
    const double without = edgesOf(pictureOf(resolved, pictorialView(), moves), left);

    // A mortise is longest along the post, whose upright lines the tilt of 24 degrees shortens.
    const double longSide = std::max({mouth.x, mouth.y, mouth.z}) * std::cos(24.0 / 57.29578);
    EXPECT_GT(with - without, 2.0 * longSide);
}

// Where a rail is halved onto a stile, a corner of the stile is gone: no line may run to where it
// was.
TEST(Pictures, PulledApartShowALapOpenToTheEndAndTheEdge) {
    const ResolvedPiece cabinet = testing::resolved(testing::sample("chart_cabinet"));
    const std::vector<Vec3> moves = pulledApart(cabinet, kClearance);
    const View view = pictorialView();
    const Picture apart = pictureOf(cabinet, view, moves);
    const auto linesTo = [&](const Picture& picture, std::size_t part, Vec2 corner) {
        return std::count_if(
            picture.lines.begin(), picture.lines.end(), [&](const PictureLine& line) {
                return line.part == part && line.kind != PictureLineKind::Way &&
                       std::min(norm(line.a - corner), norm(line.b - corner)) < 0.01;
            });
    };
    int gone = 0;
    for (const MortiseSolid& lap : cabinet.parts[*cabinet.findPart("frame stile, left")].mortises) {
        if (cabinet.joints[lap.joint].kind != JointKind::Lap) {
            continue;
        }
        const std::size_t stile = cabinet.joints[lap.joint].mortised;
        const ResolvedPart& part = cabinet.parts[stile];
        for (const Vec3& corner : Polyhedron::box(part.bodyBox()).vertices) {
            if (!lap.box.holds({corner, corner}, 1e-6)) {
                continue;
            }
            ++gone;
            const Vec3 there = part.frame.toOuter(corner);
            EXPECT_EQ(linesTo(apart, stile, view.project(there + moves[stile])), 0);
        }
    }
    EXPECT_GT(gone, 0);
}

std::set<std::string> numbersOn(const std::vector<Op>& ops) {
    std::set<std::string> numbers;
    for (const Op& op : ops) {
        if (const auto* text = std::get_if<TextOp>(&op)) {
            numbers.insert(text->text);
        }
    }
    return numbers;
}

TEST(PartNumbers, EveryKindInTheSamplesHasOne) {
    for (const char* name : testing::kSamples) {
        const ResolvedPiece resolved = testing::resolved(testing::sample(name));
        const Picture picture =
            pictureOf(resolved, pictorialView(), pulledApart(resolved, pictureClearance(resolved)));
        EXPECT_EQ(numbersOn(partNumbers(resolved, picture, 0.1, kMetrics)).size(),
                  partKinds(resolved).size())
            << name;
    }
}

// The points that the leaders of a sheet's numbers end on: a dot within a face, or an arrow's tip.
std::vector<Vec2> tipsOf(const Sheet& sheet) {
    std::vector<Vec2> tips;
    for (std::size_t i = 1; i < sheet.ops.size(); ++i) {
        const auto* circle = std::get_if<ArcOp>(&sheet.ops[i]);
        const auto* leader = i >= 2 ? std::get_if<Stroke>(&sheet.ops[i - 2]) : nullptr;
        if (circle != nullptr && leader != nullptr && std::abs(circle->radius - 3.2) < 1e-9) {
            tips.push_back(leader->points.front());
        }
    }
    return tips;
}

// Two leaders that end on one spot seem to name one part twice.
TEST(PartNumbers, OfTheSamplesPointAtPlacesApart) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        const SheetFrame frame{{297, 210}, 0.0, "", 1, 9, false};
        for (const Sheet& sheet : {pieceSheet(piece, resolved, frame, kMetrics),
                                   pictorialSheet(piece, resolved, frame, kMetrics)}) {
            const std::vector<Vec2> tips = tipsOf(sheet);
            EXPECT_EQ(tips.size(), partKinds(resolved).size()) << name;
            for (std::size_t i = 0; i < tips.size(); ++i) {
                for (std::size_t k = i + 1; k < tips.size(); ++k) {
                    EXPECT_GT(norm(tips[i] - tips[k]), 1.0) << name << ": " << i << ", " << k;
                }
            }
        }
    }
}

// A rail behind an apron of the same height would be named by the apron's lines.
TEST(PartNumbers, EndOnAFaceWhereThePartHasOneInSight) {
    const Piece piece = testing::sample("side_chair");
    const ResolvedPiece resolved = testing::resolved(piece);
    const Sheet sheet = pieceSheet(piece, resolved, {{420, 297}, 0.0, "", 1, 9, false}, kMetrics);

    std::size_t dots = 0;
    for (std::size_t i = 1; i < sheet.ops.size(); ++i) {
        const auto* circle = std::get_if<ArcOp>(&sheet.ops[i]);
        const auto* end = std::get_if<Fill>(&sheet.ops[i - 1]);
        dots += circle != nullptr && end != nullptr && end->points.size() > 3 ? 1U : 0U;
    }
    EXPECT_GE(dots + 1, partKinds(resolved).size()) << "all but at most one";
}

TEST(PictorialSheet, LetteringOfTheSamplesLiesOnNothing) {
    for (const char* name : testing::kSamples) {
        const Piece piece = testing::sample(name);
        const ResolvedPiece resolved = testing::resolved(piece);
        for (const char* paper : {"A4", "Letter", "A3", "A1"}) {
            const PrintJob job =
                pictorialJob(piece, resolved, *findPaper(paper), 0.0, "2026-11-24", kMetrics);
            ASSERT_FALSE(job.contents.empty());
            for (const Sheet& sheet : job.contents) {
                EXPECT_EQ(testing::overlapsOn(sheet, kMetrics), std::vector<std::string>{})
                    << name << " on " << paper;
            }
        }
    }
}

TEST(PictorialSheet, APieceWithoutPartsHasNone) {
    EXPECT_TRUE(pictorialJob({}, {}, *findPaper("A4"), 0.0, "", kMetrics).pages.empty());
}

// A wedge stands out of its tenon at both cheeks, so that it widens the picture's lines there;
// drawn out it lies apart.
TEST(PictureOfATuskTenon, HasItsWedge) {
    Piece piece = testing::twoPostsAndARail();
    JointStatement joint;
    joint.tenoned = "rail";
    joint.mortised = "post";
    joint.kind = JointKind::Through;
    piece.joints = {joint};
    const auto linesOfRail = [&](bool isApart) {
        const ResolvedPiece made = testing::resolved(piece);
        const std::vector<Vec3> moves =
            isApart ? pulledApart(made, pictureClearance(made)) : std::vector<Vec3>{};
        std::size_t count = 0;
        for (const PictureLine& line : pictureOf(made, pictorialView(), moves).lines) {
            count += made.parts[line.part].of == "rail" ? 1u : 0u;
        }
        return count;
    };
    const std::size_t home = linesOfRail(false);
    const std::size_t apart = linesOfRail(true);
    piece.joints.front().features = {JointFeature::Tusked};

    EXPECT_GT(linesOfRail(false), home + 8);
    // Two wedges of nine lines in sight each, and what is seen of two slots.
    EXPECT_GT(linesOfRail(true), apart + 18);
}

// The stretchers of the stool are bored into its turned legs: the rim of a hole lies on the leg.
TEST(Pictures, AMouthInATurnedLegKeepsToTheLeg) {
    const ResolvedPiece resolved = testing::resolved(testing::sample("pilot_stool"));
    const std::vector<Vec3> moves = pulledApart(resolved, kClearance);
    const View view = pictorialView();
    const Picture picture = pictureOf(resolved, view, moves);
    int rims = 0;
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        const ResolvedPart& part = resolved.parts[i];
        if (part.section != SectionForm::Round) {
            continue;
        }
        std::vector<Vec3> wood = part.wood().whole().vertices;
        for (const TenonSolid& tenon : part.tenons) {
            const std::vector<Vec3> more = polyhedronOf(tenon, {}).vertices;
            wood.insert(wood.end(), more.begin(), more.end());
        }
        std::vector<Vec2> corners;
        for (const Vec3& corner : wood) {
            corners.push_back(view.project(part.frame.toOuter(corner) + moves[i]));
        }
        const std::vector<Vec2> outline = convexHull(std::move(corners));
        for (const PictureLine& line : picture.lines) {
            if (line.part == i && line.kind == PictureLineKind::Edge) {
                EXPECT_TRUE(hullContains(outline, line.a, 0.01)) << part.name;
                EXPECT_TRUE(hullContains(outline, line.b, 0.01)) << part.name;
                ++rims;
            }
        }
    }
    EXPECT_GT(rims, 0);
}

}  // namespace
}  // namespace shoulderline
