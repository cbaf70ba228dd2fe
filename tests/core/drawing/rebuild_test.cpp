// Every part is made again from what its sheets letter, and compared with the part: its outlines,
// tenons, mortises, grooves and holes, each in its place, and the volume of the whole.
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/mortise_rows.h"
#include "core/drawing/part_angles.h"
#include "core/drawing/part_faces.h"
#include "core/drawing/part_outline_table.h"
#include "core/drawing/sheets.h"
#include "core/measure/length_text.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/joined_grooves.h"
#include "tests/core/drawing/lettered_part.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

using testing::LetteredPart;

using testing::kMetrics;

// A place stands on up to three figures, each of which may be off by half of the smallest fraction,
// or tenth, that the piece is lettered to.
double toleranceOf(const LengthStyle& style) {
    constexpr double kHair = 0.02;
    const bool isInches = style.kind == LengthStyle::Kind::Fractions;
    return 3.0 * (isInches ? 25.4 / style.denominator / 2.0 : 0.05) + kHair;
}

class Maker {
  public:
    Maker(const LetteredPart& lettered,
          const ResolvedPiece& resolved,
          const ResolvedPart& part,
          double tolerance,
          std::string what)
        : lettered_(lettered),
          resolved_(resolved),
          part_(part),
          tolerance_(tolerance),
          what_(std::move(what)),
          made_(part) {}

    // The part with all its places as lettered.
    ResolvedPart make() {
        const Box body = placed(part_.bodyBox(), "body");
        made_.shoulderLength.value = Length::mm(body.max.x);
        made_.width.value = Length::mm(body.max.y);
        made_.thickness.value = Length::mm(body.max.z);
        makeBody(body);
        for (TenonSolid& tenon : made_.tenons) {
            if (isAskew(tenon)) {
                placeAskew(tenon);
                continue;
            }
            Box across = footOf(part_, tenon);
            across.min.x = tenon.box.min.x < 0.0 ? tenon.box.min.x : tenon.box.max.x;
            across.max.x = across.min.x;  // where it stands is the shoulder
            const Box made = placed(across, "tenon");
            if (!tenon.exact) {
                const bool atStart = tenon.box.min.x < 0.0;
                tenon.box = made;
                (atStart ? tenon.box.max.x : tenon.box.min.x) = atStart ? 0.0 : body.max.x;
            }
        }
        for (MortiseSolid& mortise : made_.mortises) {
            Box setOut = testing::setOutBoxOf(resolved_, part_, mortise);
            if (isBored(resolved_, mortise) && !isEnd(mortise.face)) {
                setOut.min.x = setOut.max.x = setOut.centre().x;
            }
            const int into = intoAxis(mortise.face);
            if (const auto turned = lettered_.turned(mortise.face, setOut.centre())) {
                expectCorners(*turned, mortise);
                const int across = 3 - into;
                setOut.min.x = setOut.max.x = setOut.centre().x;
                setOut.min[across] = setOut.max[across] = setOut.centre()[across];
            }
            const bool opensOnBlank = isOnBlank(mortise, setOut);
            if (!opensOnBlank) {
                // Its mouth is where the shaped or sloping face is: its depth counts from there.
                const std::optional<double> depth =
                    lettered_.length("mortise depth", setOut.min[into]);
                EXPECT_NEAR(depth.value_or(0.0), setOut.size()[into], tolerance_) << what_;
                setOut.min[into] = setOut.max[into] = 0.0;
            }
            const Box made = placed(setOut, "mortise");
            if (!mortise.exact && opensOnBlank) {
                mortise.box = made;
            }
        }
        made_.cuts = groovesJoined(made_.cuts);
        for (ResolvedCut& cut : made_.cuts) {
            const bool isKerf = cut.joint && cut.kind == CutKind::Notch && isEnd(cut.face);
            if (!isKerf) {  // sawn to the line of its wedge, by its joint's sheet
                const Box made = placed(testing::setOutBoxOf(cut), std::string(wordFor(cut.kind)));
                if (!cut.exact) {
                    cut.box = made;
                }
            }
        }
        return made_;
    }

  private:
    static int intoAxis(Face face) {
        return isEnd(face) ? 0 : face == Face::FaceEdge || face == Face::BackEdge ? 1 : 2;
    }
    // Whether the mouth lies on a face of the blank.
    [[nodiscard]] bool isOnBlank(const MortiseSolid& mortise, const Box& box) const {
        constexpr double kOn = 0.02;
        const int axis = intoAxis(mortise.face);
        return mortise.isThrough || std::abs(box.min[axis]) < kOn ||
               std::abs(box.max[axis] - part_.bodyBox().max[axis]) < kOn;
    }
    // Whether the end that it stands on is not square.
    [[nodiscard]] bool isAskew(const TenonSolid& tenon) const {
        const End end = tenon.box.min.x < 0.0 ? End::Start : End::Far;
        const double corner = endAt(part_, end, 0.0, 0.0);
        return std::abs(endAt(part_, end, part_.width.value.mm(), 0.0) - corner) > 1e-6 ||
               std::abs(endAt(part_, end, 0.0, part_.thickness.value.mm()) - corner) > 1e-6;
    }
    // Across by its foot, along by its length as the joint has it.
    void placeAskew(const TenonSolid& tenon) const {
        const Box foot = footOf(part_, tenon);
        const bool atStart = tenon.box.min.x < 0.0;
        Box across = foot;
        across.min.x = across.max.x = 0.0;
        static_cast<void>(placed(across, "askew tenon"));
        const double tip = atStart ? tenon.box.min.x : tenon.box.max.x;
        const std::optional<double> length = lettered_.length("tenon length", tip);
        EXPECT_TRUE(length) << what_ << ": no length of the tenon that ends at " << tip;
        const Length byJoint = resolved_.joints[tenon.joint].tenon.length.value;
        EXPECT_NEAR(length.value_or(0.0), byJoint.mm(), tolerance_) << what_;
    }
    // The corners of the mouth where its middle, turn, length and width put them.
    void expectCorners(const LetteredPart::Turned& turned, const MortiseSolid& mortise) const {
        const int into = intoAxis(mortise.face);
        const double turn = Angle::degrees(turned.degrees).radians();
        Vec3 along;
        along.x = std::cos(turn);
        along[3 - into] = std::sin(turn);
        Vec3 square;
        square.x = -along[3 - into];
        square[3 - into] = along.x;
        for (const Vec3& corner : mouthRing(mortise)) {
            Vec3 off = corner - turned.middle;
            off[into] = 0.0;
            EXPECT_NEAR(std::abs(dot(off, along)), turned.longer / 2.0, tolerance_) << what_;
            EXPECT_NEAR(std::abs(dot(off, square)), turned.shorter / 2.0, tolerance_) << what_;
        }
    }
    [[nodiscard]] Box placed(const Box& box, const std::string& of) const {
        const std::optional<Box> made = lettered_.place(box);
        if (!made) {
            std::string missing;
            for (int axis = 0; axis < 3; ++axis) {
                for (const double at : {box.min[axis], box.max[axis]}) {
                    if (!lettered_.place(axis, at)) {
                        missing += std::string(1, "xyz"[axis]) + " = " + std::to_string(at) + " ";
                    }
                }
            }
            ADD_FAILURE() << what_ << ", " << of << ": no figure leads to " << missing;
            return box;
        }
        for (int axis = 0; axis < 3; ++axis) {
            EXPECT_NEAR(made->min[axis], box.min[axis], tolerance_) << what_ << ", " << of;
            EXPECT_NEAR(made->max[axis], box.max[axis], tolerance_) << what_ << ", " << of;
        }
        return *made;
    }

    void makeBody(const Box& body) {
        made_.body.thickness = body.max.z;
        made_.body.face = Outline::rectangle(body.max.x, body.max.y);
        for (const ShapedOutline& shaped : shapedOutlines(part_, facesToShow(part_, true))) {
            const auto* points = lettered_.outline(shaped.seenOn);
            if (points == nullptr || points->size() != shaped.told.size()) {
                ADD_FAILURE() << what_ << ": no table of the outline";
                continue;
            }
            Outline outline = *shaped.outline;
            for (OutlineVertex& vertex : outline.vertices) {  // the blank's corners
                vertex.point.x = std::min(vertex.point.x, body.max.x);
            }
            for (std::size_t i = 0; i < points->size(); ++i) {
                setPoint((*points)[i], shaped.told[i], outline);
            }
            for (std::size_t i = 0; i < points->size(); ++i) {
                setArc((*points)[i], shaped.told[i], outline);
            }
            (shaped.seenOn == Face::FaceSide ? made_.body.face : *made_.body.edge) = outline;
        }
    }
    void setPoint(const LetteredPart::Point& point, std::size_t vertex, Outline& outline) const {
        Vec2& p = outline.vertices[vertex].point;
        EXPECT_NEAR(point.along, p.x, tolerance_) << what_ << ", outline";
        EXPECT_NEAR(point.across, p.y, tolerance_) << what_ << ", outline";
        p = {point.along, point.across};
    }
    // The bulge of an arc of that radius between those points.
    void setArc(const LetteredPart::Point& point, std::size_t vertex, Outline& outline) const {
        OutlineVertex& from = outline.vertices[vertex];
        const Vec2 to = outline.vertices[(vertex + 1) % outline.vertices.size()].point;
        const double half = norm(to - from.point) / 2.0;
        const double radius = std::abs(point.radius);
        double bulge = 0.0;
        if (radius > 0.0) {
            const double rise = radius - std::sqrt(std::max(0.0, radius * radius - half * half));
            bulge = (point.radius > 0.0 ? 1.0 : -1.0) * rise / half;
        }
        EXPECT_NEAR(bulge * half, from.bulge * half, 2.0 * tolerance_) << what_ << ", arc's rise";
        from.bulge = bulge;
    }

    const LetteredPart& lettered_;
    const ResolvedPiece& resolved_;
    const ResolvedPart& part_;
    double tolerance_;
    std::string what_;
    ResolvedPart made_;
};

class MadeFromTheSheet : public ::testing::TestWithParam<const char*> {};

TEST_P(MadeFromTheSheet, IsThePart) {
    const Piece piece = testing::sample(GetParam());
    const ResolvedPiece resolved = testing::resolved(piece);
    for (const PartKind& kind : partKinds(resolved)) {
        const ResolvedPart& part = resolved.parts[kind.parts.front()];
        for (const Vec2 paper : {Vec2{297, 210}, Vec2{420, 297}}) {
            const LetteredPart lettered(
                partSheets(piece, resolved, kind, {paper, 0.0, "", 0, 0}, kMetrics),
                resolved,
                part,
                unitOf(piece.style));
            EXPECT_EQ(lettered.unread(), std::vector<std::string>{}) << kind.name;
            const ResolvedPart made =
                Maker(lettered, resolved, part, toleranceOf(piece.style), kind.name).make();
            EXPECT_NEAR(volumeAsMade(made) / volumeAsMade(part), 1.0, 0.02) << kind.name;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Samples,
                         MadeFromTheSheet,
                         ::testing::ValuesIn(testing::kSamples),
                         [](const auto& sampled) { return std::string(sampled.param); });

}  // namespace
}  // namespace shoulderline
