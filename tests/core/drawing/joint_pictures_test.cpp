#include "core/drawing/joint_pictures.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/hatching.h"
#include "core/drawing/joint_drawing.h"
#include "core/drawing/joint_hollows.h"
#include "core/drawing/joint_members.h"
#include "core/drawing/joint_section.h"
#include "core/drawing/joint_sheets.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/part_sections.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

// What the pictures of a joint show of the wood.
namespace shoulderline {
namespace {

using testing::kMetrics;
using testing::resolved;
using testing::sample;

std::optional<std::size_t> jointBetween(const ResolvedPiece& piece,
                                        const std::string& tenoned,
                                        const std::string& mortised) {
    for (std::size_t i = 0; i < piece.joints.size(); ++i) {
        if (piece.parts[piece.joints[i].tenoned].of == tenoned &&
            piece.parts[piece.joints[i].mortised].of == mortised) {
            return i;
        }
    }
    return std::nullopt;
}

// Whether a stroke of that role runs from `a` to `b` or the other way, on the sheet.
template <class Accepts>
int strokesThat(const std::vector<Op>& ops, const Accepts& accepts) {
    int count = 0;
    for (const Op& op : ops) {
        if (const auto* stroke = std::get_if<Stroke>(&op)) {
            count += accepts(*stroke) ? 1 : 0;
        }
    }
    return count;
}

// The armchair's front rail has a rabbet in its back side, over its joint too: the end of the rail
// is its section, less the rabbet's.
TEST(JointPictures, ShowTheRabbetOfTheRail) {
    const ResolvedPiece made = resolved(sample("armchair"));
    const auto joint = jointBetween(made, "front rail", "front post");
    ASSERT_TRUE(joint);
    const ResolvedPart& rail = made.parts[made.joints[*joint].tenoned];
    const JointMembers members = membersOf(made, *joint);
    double rabbet = 0.0;
    for (const ResolvedCut& cut : rail.cuts) {
        rabbet += cut.kind == CutKind::Rabbet ? cut.box.size().y * cut.box.size().z : 0.0;
    }
    ASSERT_GT(rabbet, 0.0);
    const double section = rail.width.value.mm() * rail.thickness.value.mm() - rabbet;
    EXPECT_NEAR(members.railSolid.volume() / members.rail.size().x, section, 1e-6);
}

// At either end of the rail its rabbet lies behind, so seen with the tenon's end ahead and the face
// edge at hand it must come out on one and the same hand: a picture that was mirrored would have it
// on the other.
TEST(JointPictures, ShowEitherEndAsItIsAndNotItsMirrorTwin) {
    const ResolvedPiece made = resolved(sample("armchair"));
    int ends = 0;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const ResolvedJoint& joint = made.joints[i];
        const ResolvedPart& rail = made.parts[joint.tenoned];
        if (rail.of != "front rail" || !joint.hasTenon()) {
            continue;
        }
        const JointMembers members = membersOf(made, i);
        Vec3 middle;
        for (const Vec3& corner : members.railSolid.vertices) {
            middle =
                middle + corner * (1.0 / static_cast<double>(members.railSolid.vertices.size()));
        }
        // The rabbet's corners draw the mean towards it.
        const bool isHigh = middle.z > members.rail.centre().z;
        const Vec3 towardsRabbet = rail.frame.z;
        const Vec3 high = isHigh ? towardsRabbet : -towardsRabbet;
        EXPECT_GT(dot(cross(joint.frame.x, joint.frame.y), high), 0.0) << joint.name;
        ++ends;
    }
    EXPECT_EQ(ends, 2);
}

// Where a joint is made left and right, or at both ends, the one is drawn that its sheet can show
// in its own frame.
TEST(JointSheets, DrawTheJointOfAGroupThatTheyNeedNotTurnOver) {
    for (const char* name : {"armchair", "side_chair", "pilot_stool", "luggage_stand"}) {
        const ResolvedPiece made = resolved(sample(name));
        for (const JointGroup& group : jointGroups(made)) {
            const auto isDrawable = [&](std::size_t joint) {
                return made.joints[joint].frame.isRightHanded();
            };
            EXPECT_EQ(isDrawable(group.joints.front()),
                      std::any_of(group.joints.begin(), group.joints.end(), isDrawable))
                << made.joints[group.joints.front()].name;
        }
    }
}

// A saw kerf is open at the tenon's cheeks, so it is drawn as what is seen.
TEST(JointPictures, DrawAKerfAsSeenOnTheCheek) {
    const Piece piece = sample("luggage_stand");
    const ResolvedPiece made = resolved(piece);
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        if (!made.joints[i].has(JointFeature::WedgedInKerfs)) {
            continue;
        }
        const Sheet sheet = drawJoint(piece, made, i, {1.0, {}, false}, kMetrics);
        const double depth = made.joints[i].size(SizeName::KerfDepth)->value.mm();
        const auto isKerfLong = [&](const Stroke& stroke, LineRole role) {
            return stroke.role == role && stroke.points.size() == 2 &&
                   std::abs(stroke.points[0].y - stroke.points[1].y) < 1e-6 &&
                   std::abs(std::abs(stroke.points[0].x - stroke.points[1].x) - depth) < 1e-6;
        };
        // Two sides of each of two kerfs, on the cheek.
        EXPECT_GE(strokesThat(sheet.ops,
                              [&](const Stroke& s) { return isKerfLong(s, LineRole::Visible); }),
                  4);
        return;
    }
    FAIL() << "no tenon is wedged in kerfs";
}

// The tenon is one with its rail: no line of the mouth crosses it in the section.
TEST(JointSection, HasNoLineAcrossTheTenonAtItsShoulder) {
    for (const char* name : {"armchair", "luggage_stand", "table"}) {
        const ResolvedPiece made = resolved(sample(name));
        for (std::size_t i = 0; i < made.joints.size(); ++i) {
            if (made.joints[i].kind != JointKind::Blind) {
                continue;
            }
            const SectionedJoint cut = sectionOf(membersOf(made, i), 1.0);
            std::vector<Ring> filling{cut.rail};
            filling.insert(filling.end(), cut.tenons.begin(), cut.tenons.end());
            std::vector<SectionLine> lines = outlineOf({cut.post}, filling);
            const std::vector<SectionLine> mouth = outlineOf(cut.hollows, filling);
            lines.insert(lines.end(), mouth.begin(), mouth.end());
            const Box tenon = membersOf(made, i).tenon;
            for (const SectionLine& line : lines) {
                const bool crosses = std::abs(line.a.x) < 1e-6 && std::abs(line.b.x) < 1e-6 &&
                                     std::abs((line.a.y + line.b.y) / 2 - tenon.centre().y) < 0.5;
                EXPECT_FALSE(crosses) << name << ", " << made.joints[i].name;
            }
        }
    }
}

// Of joints that come left and right one is drawn: the sheet says which.
TEST(JointSheets, NameTheHandThatIsDrawn) {
    const Piece piece = sample("armchair");
    const ResolvedPiece made = resolved(piece);
    SheetFrame frame;
    frame.paper = {420.0, 297.0};
    int named = 0;
    int groups = 0;
    for (const Sheet& sheet : jointSheets(piece, made, frame, kMetrics)) {
        for (const Op& op : sheet.ops) {
            const auto* text = std::get_if<TextOp>(&op);
            if (text != nullptr && text->text.rfind("make ", 0) == 0) {
                ++groups;
                named += text->text.find("mirrored") != std::string::npos ? 1 : 0;
            }
        }
    }
    EXPECT_GT(named, 5);
    EXPECT_LT(named, groups) << "slats in the middle have no hand";
}

// A wedged mortise is longer where its tenon comes out: both its lengths are given.
TEST(JointSheet, AWedgedMortiseHasBothItsLengths) {
    const Piece piece = sample("luggage_stand");
    const ResolvedPiece made = resolved(piece);
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const Size* flare = made.joints[i].size(SizeName::WedgeFlare);
        if (flare == nullptr) {
            continue;
        }
        double far = 0.0;
        double mouth = 0.0;
        const Sheet sheet = jointDrawing(piece, made, i, kMetrics);
        for (const Op& op : sheet.ops) {
            if (const auto* size = std::get_if<DimensionOp>(&op)) {
                far = size->of == "mortise length" ? size->value : far;
                mouth = size->of == "mortise length at the mouth" ? size->value : mouth;
            }
        }
        EXPECT_NEAR(mouth, made.joints[i].mortise.length.value.mm(), 1e-6);
        EXPECT_NEAR(far - mouth, 2 * flare->value.mm(), 1e-6);
        return;
    }
    FAIL() << "no mortise is wedged";
}

// A section through a tenon goes where no slot is, and one at a sloping haunch says where.
TEST(PartSections, GoClearOfTheSlotAndTellTheDeepEnd) {
    const ResolvedPiece made = resolved(sample("luggage_stand"));
    int slots = 0;
    int deep = 0;
    for (const ResolvedPart& part : made.parts) {
        const SectionPlan plan(made, part, true);
        for (const PartSection& section : plan.sections()) {
            for (const ResolvedCut& cut : part.cuts) {
                if (section.tenonsAt && cut.note == "slot for the wedge") {
                    EXPECT_FALSE(cut.box.min.x < section.at && section.at < cut.box.max.x);
                    ++slots;
                }
            }
            deep += section.isAtDeepEnd ? 1 : 0;
        }
    }
    EXPECT_GT(slots, 0);
    EXPECT_GT(deep, 0);
}

// A slat that is let in whole has no shoulder, so nothing is drawn across it where it goes in.
TEST(JointPictures, DrawWhatIsLetInWholeWithoutAShoulder) {
    const ResolvedPiece made = resolved(sample("raked_chair"));
    const auto slat = jointBetween(made, "back slat", "crest rail");
    ASSERT_TRUE(slat);
    ASSERT_EQ(made.joints[*slat].kind, JointKind::LetIn);
    const JointMembers members = membersOf(made, *slat);
    EXPECT_TRUE(members.tenons.empty());
    EXPECT_NEAR(members.railSolid.bounds().max.x, made.joints[*slat].tenon.length.value.mm(), 1e-6);
    const auto rail = jointBetween(made, "crest rail", "back post");
    ASSERT_TRUE(rail);
    EXPECT_FALSE(membersOf(made, *rail).tenons.empty()) << "a tenon with shoulders stays one";
}

// A corner half lap is open at the end of its part and at its side: seen through it, no line closes
// it there.
TEST(JointPictures, LeaveALapOpenAtTheEndOfItsPart) {
    const ResolvedPiece made = resolved(sample("chart_cabinet"));
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        if (made.joints[i].kind != JointKind::Lap) {
            continue;
        }
        const JointMembers members = membersOf(made, i);
        ASSERT_EQ(members.hollows.size() + members.ownHollows.size() > 0, true);
        const std::vector<Polyhedron> wood{members.postSolid};
        std::vector<ViewEdge> edges = hiddenLines(wood, kOnMouth.view);
        for (const ViewEdge& edge : linesOfHollow(members.hollows[0], wood, kOnMouth.view)) {
            edges.push_back(edge);
        }
        openSides(members.hollows[0], wood, kOnMouth.view, edges);
        const Box taken = members.hollows[0].solid.bounds();
        const double end =
            std::abs(taken.min.y - members.post.min.y) < 1e-6 ? taken.min.y : taken.max.y;
        const Vec2 inside = kOnMouth.view.project({taken.centre().x, end, taken.centre().z});
        for (const ViewEdge& edge : edges) {
            const bool crosses =
                std::abs(edge.a.y - inside.y) < 1e-6 && std::abs(edge.b.y - inside.y) < 1e-6 &&
                std::min(edge.a.x, edge.b.x) < inside.x && std::max(edge.a.x, edge.b.x) > inside.x;
            EXPECT_FALSE(crosses) << "closed at the end of the stile";
        }
        return;
    }
    FAIL() << "no half lap";
}

// A post with a bend is not convex: its section is as large as the wood, not as the hull around it.
TEST(JointSection, OfABentPostIsNoLargerThanItsWood) {
    const ResolvedPiece made = resolved(sample("raked_chair"));
    const auto joint = jointBetween(made, "side rail", "back post");
    ASSERT_TRUE(joint);
    const JointMembers members = membersOf(made, *joint);
    double area = 0.0;
    for (const Ring& ring : sectionOf(members, 1.0).post) {
        area += Outline::polygon(ring).area();
    }
    // The post is as thick everywhere across the section, so its volume is the area times that.
    double volume = 0.0;
    for (const Polyhedron& piece : members.postPieces) {
        volume += piece.volume();
    }
    const ResolvedPart& post = made.parts[made.joints[*joint].mortised];
    const double across = std::min(post.width.value.mm(), post.thickness.value.mm());
    EXPECT_GT(area, 0.0);
    EXPECT_NEAR(area / (volume / across), 1.0, 0.15);
    EXPECT_NEAR(volume, members.postSolid.volume(), 1e-6 * volume);
}

// The lower end rail of the luggage stand has two kerfs in its through tenon. With its wedges
// driven the tenon is as much wider at its end as the mortise has been pared for them, and wood,
// wedges and nothing else fill it there; at the roots of the kerfs it is as it was.
TEST(JointSection, ShowsAWedgedTenonSpreadToTheFlareOfItsMortise) {
    const ResolvedPiece made = resolved(sample("luggage_stand"));
    const auto joint = jointBetween(made, "lower end rail", "front post");
    ASSERT_TRUE(joint);
    const JointMembers members = membersOf(made, *joint);
    ASSERT_EQ(members.smalls.size(), 2u) << "a wedge for each kerf";
    const double flare = made.joints[*joint].size(SizeName::WedgeFlare)->value.mm();
    const SectionedJoint cut = sectionOf(members, 1.0);
    EXPECT_TRUE(cut.ownHollows.empty()) << "the wedges fill the kerfs";

    // How far all that is not the post reaches, and how much of that it fills, at one place along.
    const auto acrossAt = [&](double x) {
        Span reach{1e9, -1e9};
        double filled = 0.0;
        std::vector<Ring> rings = cut.tenons;
        rings.insert(rings.end(), cut.smalls.begin(), cut.smalls.end());
        for (const Ring& ring : rings) {
            for (const Span& span : spansInside({ring}, {0, 1}, {1, 0}, x)) {
                reach = {std::min(reach.from, span.from), std::max(reach.to, span.to)};
                filled += span.to - span.from;
            }
        }
        EXPECT_NEAR(filled, reach.to - reach.from, 1e-6) << "nothing overlaps, no gap is left";
        return reach.to - reach.from;
    };
    const double width = members.tenon.size().y;
    const double end = members.tenon.max.x;
    const double root = end - made.joints[*joint].size(SizeName::KerfDepth)->value.mm();
    EXPECT_NEAR(acrossAt(end - 1e-6), width + 2.0 * flare, 1e-3);
    EXPECT_NEAR(acrossAt((root + end) / 2.0), width + flare, 1e-3);
    EXPECT_NEAR(acrossAt(root - 1.0), width, 1e-6);
}

}  // namespace
}  // namespace shoulderline
