#include <algorithm>

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/resolve/ripple.h"
#include "core/storage/piece_text.h"
#include "tests/property/random_frame.h"
#include "tests/support/pieces.h"

// What holds of any frame of four posts and their rails, whatever its sizes.
namespace shoulderline {
namespace {

using testing::randomFrame;
using testing::resolved;
using testing::sixteenths;

RC_GTEST_PROP(AnyFrame, ReadsBackFromWhatWasWritten, ()) {
    const Piece piece = randomFrame();
    RC_ASSERT(readPiece(writePiece(piece)).value() == piece);
}

RC_GTEST_PROP(AnyFrame, LeftIsTheMirrorImageOfRight, ()) {
    const ResolvedPiece piece = resolved(randomFrame());
    for (const ResolvedPart& part : piece.parts) {
        if (part.hand == Hand::Right) {
            const ResolvedPart& twin = testing::partNamed(piece, part.of + ", left");
            const Box box = part.frame.outerBounds(part.overBox());
            const Box other = twin.frame.outerBounds(twin.overBox());
            RC_ASSERT(std::abs(box.min.x + other.max.x) < 1e-9 &&
                      std::abs(box.max.x + other.min.x) < 1e-9);
            RC_ASSERT(box.min.y == other.min.y && box.max.z == other.max.z);
            RC_ASSERT(std::abs(volumeAsMade(part) - volumeAsMade(twin)) < 1e-6);
        }
    }
}

RC_GTEST_PROP(AnyFrame, ResolvesTheSameInWhateverOrderItsPartsAreStated, ()) {
    const Piece piece = randomFrame();
    Piece other = piece;
    std::reverse(other.parts.begin(), other.parts.end());
    const ResolvedPiece one = resolved(piece);
    const ResolvedPiece two = resolved(other);
    RC_ASSERT(one.parts.size() == two.parts.size());
    for (const ResolvedPart& part : one.parts) {
        const ResolvedPart& same = testing::partNamed(two, part.name);
        RC_ASSERT(part.frame == same.frame && part.shoulderLength == same.shoulderLength &&
                  part.length() == same.length());
    }
}

RC_GTEST_PROP(AnyFrame, WoodIsNeitherMadeNorLostAtAJoint, ()) {
    // Every blind tenon is as large as the hole it fills, but for the depth left for glue.
    const ResolvedPiece piece = resolved(randomFrame());
    for (const ResolvedPart& part : piece.parts) {
        for (const MortiseSolid& mortise : part.mortises) {
            if (!mortise.isThrough) {
                RC_ASSERT(mortise.box.holds(mortise.tenon, 1e-9));
            }
        }
    }
}

RC_GTEST_PROP(AnyFrame, TenonsByRuleLeaveAFloorAndFitAChisel, ()) {
    const ResolvedPiece piece = resolved(randomFrame());
    RC_ASSERT(piece.troubles.empty());
    for (const ResolvedJoint& joint : piece.joints) {
        if (joint.kind == JointKind::Blind) {
            const double there = piece.parts[joint.mortised]
                                     .bodyBox()
                                     .size()[joint.mortise.face == Face::FaceEdge ||
                                                     joint.mortise.face == Face::BackEdge
                                                 ? 1
                                                 : 2];
            RC_ASSERT(there - joint.mortise.depth.value.mm() >=
                      piece.rules[RuleId::MortiseFloorLeast].value - 1e-9);
            RC_ASSERT(std::find(piece.rack.begin(),
                                piece.rack.end(),
                                joint.tenon.thickness.value) != piece.rack.end());
        }
    }
}

RC_GTEST_PROP(AnyFrame, AThickerRailNeverGetsAThinnerTenon, ()) {
    Piece piece = randomFrame();
    piece.stocks[1].thickness = "3/4 in";
    const ResolvedPiece thin = resolved(piece);
    piece.stocks[1].thickness = sixteenths(*rc::gen::inRange(13, 20));
    const ResolvedPiece thick = resolved(piece);
    const std::string name = "front rail into front post, left";
    RC_ASSERT(testing::jointNamed(thick, name).tenon.thickness.value >=
              testing::jointNamed(thin, name).tenon.thickness.value);
}

RC_GTEST_PROP(AnyFrame, AChangeAndItsReturnMoveNothing, ()) {
    const Piece piece = randomFrame();
    const Piece changed = apply(piece, SetMeasure{"width", "50 in"}).value();
    const Piece back = apply(changed, SetMeasure{"width", piece.measures[0].expression}).value();
    RC_ASSERT(back == piece);
    RC_ASSERT(ripple(resolved(piece), resolved(back)).empty());
}

RC_GTEST_PROP(AnyFrame, MillimetresAndInchesGiveTheSamePiece, ()) {
    // The same lengths written in millimetres; the piece's unit, and so its rack, stays the inch.
    const Piece piece = randomFrame();
    Piece metric = piece;
    const ResolvedPiece was = resolved(piece);
    for (std::size_t i = 0; i < piece.measures.size(); ++i) {
        const double mm = was.measures[i].value->asLength().value().mm();
        metric.measures[i].expression = std::to_string(mm) + " mm";
    }
    const ResolvedPiece is = resolved(metric);
    for (std::size_t i = 0; i < was.parts.size(); ++i) {
        RC_ASSERT(nearlyEqual(was.parts[i].length(), is.parts[i].length()));
    }
}

}  // namespace
}  // namespace shoulderline
