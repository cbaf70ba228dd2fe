#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/drawing/dimensioning.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/sheets.h"
#include "core/measure/length_text.h"
#include "tests/core/drawing/sheet_checks.h"

namespace shoulderline {
namespace {

using testing::overlapsOn;

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) {
        text += line + "; ";
    }
    return text;
}

RC_GTEST_PROP(DimensioningProperty, NoFigureLiesOnALineOrAnother, ()) {
    const LetteringMetrics metrics;
    const int count = *rc::gen::inRange(1, 14);
    std::vector<SizeToPlace> sizes;
    for (int i = 0; i < count; ++i) {
        const double from = *rc::gen::inRange(0, 800) / 4.0;
        const double length = *rc::gen::inRange(1, 400) / 4.0;
        const std::string text = showLength(Length::mm(length), LengthStyle::fractions(32));
        sizes.push_back({from,
                         from + length,
                         *rc::gen::inRange(0, 20) * 1.0,
                         *rc::gen::inRange(0, 20) * 1.0,
                         text,
                         length,
                         "size",
                         {},
                         *rc::gen::inRange(0, 3)});
    }
    const auto side = *rc::gen::element(
        DimensionSide::Above, DimensionSide::Below, DimensionSide::LeftOf, DimensionSide::RightOf);

    Sheet sheet;
    sheet.ops = placeSizes(sizes, side, 0.0, {}, metrics);

    const std::vector<std::string> overlaps = overlapsOn(sheet, metrics);
    RC_LOG() << joined(overlaps);
    RC_ASSERT(overlaps.empty());
    RC_ASSERT(testing::dimensionsOf(sheet, "size").size() == sizes.size());
}

// A part with mortises on its long faces, clear of one another along it, and tenons at will; in
// whole sixteenths of an inch.
struct RandomPart {
    Piece piece;
    ResolvedPiece resolved;
};

Length sixteenths(int count) {
    return Length::inches(count / 16.0);
}

RandomPart randomPart() {
    RandomPart made;
    made.piece.style = LengthStyle::fractions(32);
    ResolvedPart mate;
    mate.name = mate.of = *rc::gen::element<std::string>("rail", "side slat", "stretcher, lower");
    ResolvedPart part;
    part.name = part.of = "part";
    const int width = *rc::gen::inRange(12, 80);
    const int thickness = *rc::gen::inRange(8, 40);
    const int length = *rc::gen::inRange(80, 900);
    part.shoulderLength.value = sixteenths(length);
    part.width.value = sixteenths(width);
    part.thickness.value = sixteenths(thickness);
    part.body.face = Outline::rectangle(part.shoulderLength.value.mm(), part.width.value.mm());
    part.body.thickness = part.thickness.value.mm();

    const auto addJoint = [&] {
        ResolvedJoint joint;
        joint.tenoned = 1;
        made.resolved.joints.push_back(joint);
        return made.resolved.joints.size() - 1;
    };
    int at = 4;
    const int mortises = *rc::gen::inRange(0, 7);
    for (int i = 0; i < mortises; ++i) {
        at += *rc::gen::inRange(4, 60);
        const int long_ = *rc::gen::inRange(8, 40);
        if (at + long_ + 4 > length) {
            break;
        }
        const Face face =
            *rc::gen::element(Face::FaceSide, Face::BackSide, Face::FaceEdge, Face::BackEdge);
        const bool inSides = face == Face::FaceSide || face == Face::BackSide;
        const int across = inSides ? width : thickness;
        const int deep = inSides ? thickness : width;
        const int mouth = *rc::gen::inRange(2, across - 3);
        const int from = *rc::gen::inRange(1, across - mouth);
        const bool isThrough = *rc::gen::inRange(0, 4) == 0;
        const int depth = isThrough ? deep : *rc::gen::inRange(2, deep - 1);
        const double low =
            face == Face::FaceSide || face == Face::FaceEdge ? 0.0 : sixteenths(deep - depth).mm();
        const double high = low + sixteenths(depth).mm();
        Box box;
        box.min.x = sixteenths(at).mm();
        box.max.x = sixteenths(at + long_).mm();
        const int acrossAxis = inSides ? 1 : 2;
        box.min[acrossAxis] = sixteenths(from).mm();
        box.max[acrossAxis] = sixteenths(from + mouth).mm();
        box.min[3 - acrossAxis] = low;
        box.max[3 - acrossAxis] = high;
        part.mortises.push_back({addJoint(), face, box, box, isThrough, std::nullopt, false});
        at += long_;
    }
    for (const bool atStart : {true, false}) {
        if (*rc::gen::inRange(0, 3) == 0) {
            continue;
        }
        const Length tenon = sixteenths(*rc::gen::inRange(6, 30));
        Box box;
        box.min = {atStart ? -tenon.mm() : part.shoulderLength.value.mm(),
                   sixteenths(*rc::gen::inRange(0, width / 3)).mm(),
                   sixteenths(*rc::gen::inRange(0, thickness / 3)).mm()};
        box.max = {atStart ? 0.0 : part.shoulderLength.value.mm() + tenon.mm(),
                   sixteenths(*rc::gen::inRange(2 * width / 3, width + 1)).mm(),
                   sixteenths(*rc::gen::inRange(2 * thickness / 3, thickness + 1)).mm()};
        (atStart ? part.startTenon : part.farTenon) = tenon;
        part.tenons.push_back({addJoint(), box, std::nullopt, false});
    }
    made.resolved.parts = {part, mate};
    return made;
}

RC_GTEST_PROP(PartDrawingProperty, NothingOverlapsOnRandomParts, ()) {
    const LetteringMetrics metrics;
    const RandomPart made = randomPart();
    const double scale = *rc::gen::element(1.0, 0.5, 0.25, 0.2, 0.125);

    const Sheet sheet = partDrawing(
        made.piece, made.resolved, PartKind{{0}, "part", 1, false}, scale, false, metrics);

    const std::vector<std::string> overlaps = overlapsOn(sheet, metrics);
    RC_LOG() << joined(overlaps);
    RC_ASSERT(overlaps.empty());
}

}  // namespace
}  // namespace shoulderline
