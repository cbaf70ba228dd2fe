#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/notes.h"
#include "core/drawing/part_angles.h"
#include "core/drawing/part_blocks.h"
#include "core/drawing/part_pair.h"
#include "core/drawing/scales.h"
#include "core/drawing/section_drawing.h"
#include "core/drawing/section_marks.h"
#include "core/drawing/trade_marks.h"
#include "core/resolve/end_plane.h"

namespace shoulderline {

PartBlock PartBlocks::pair() const {
    constexpr double kRoom = 64.0;
    const PartView view = partView(part_, Face::FaceSide);
    const double longest = std::max(view.size.x, part_.length().mm());
    const double scale = std::min(scale_, scaleThatFits(longest, kRoom, piece_.unit));
    PairDrawing pair;
    pair.drawn = body(view, scale);
    pair.length = view.size.x * scale;
    pair.height = view.size.y * scale;
    const double mark = std::clamp(0.6 * pair.height, 2.0, 5.0);
    append(pair.drawn, inGroup(kFaceSideGroup, {}, {faceSideMark({2.0 * mark, 0.0}, mark)}));
    append(pair.drawn,
           inGroup(kFaceEdgeGroup, {}, {faceEdgeMark({2.34 * mark, 0.0}, 0.5 * mark, true)}));
    if (part_.hand != Hand::None) {
        pair.drawnHand = wordFor(part_.hand);
        pair.otherHand = wordFor(part_.hand == Hand::Left ? Hand::Right : Hand::Left);
    }
    std::vector<Op> ops = pairOps(pair, style_.dimensions.height);
    if (scale != scale_) {
        const Rect bounds = boundsOf(ops, metrics_);
        ops.push_back(TextOp{{0.0, bounds.min.y - 3.0},
                             "the pair, " + scaleText(scale),
                             style_.dimensions.height,
                             Align::Left,
                             false,
                             false});
    }
    return blockOf(Face::FaceSide, std::move(ops), 0.0);
}

std::vector<PartBlock> PartBlocks::sections() const {
    std::vector<PartBlock> blocks;
    const double scale = endScale();
    for (const PartSection& section : plan_.sections()) {
        if (section.tenonsAt) {
            continue;
        }
        std::vector<Op> ops =
            sectionOps(section, piece_, resolved_, index_, scale, style_, metrics_);
        const Rect bounds = boundsOf(ops, metrics_);
        const std::string name = section.letter + "\u2013" + section.letter +
                                 (section.isAtDeepEnd ? ", deep end of the haunch" : "");
        ops.push_back(TextOp{{part_.thickness.value.mm() * scale / 2.0, bounds.min.y - 3.0},
                             scale == scale_ ? name : name + ", " + scaleText(scale),
                             style_.dimensions.height,
                             Align::Centre,
                             false,
                             false});
        blocks.push_back(blockOf(Face::FarEnd, std::move(ops), part_.width.value.mm() * scale));
        blocks.back().isSection = true;
        blocks.back().letter = section.letter;
    }
    return blocks;
}

// Ends are drawn larger than the rest where that keeps their small sizes apart.
double PartBlocks::endScale() const {
    for (const double scale : standardScales(piece_.unit)) {
        if (scale <= scale_ ||
            std::max(part_.width.value.mm(), part_.thickness.value.mm()) * scale <=
                style_.largestEnd) {
            return std::max(scale, scale_);
        }
    }
    return scale_;
}

// The rings of the body across its length in the view of an end, on the sheet: together they cover
// what is seen, also of a part that tapers or bends away from there. None past an end that is not
// square.
std::vector<std::vector<Vec2>> PartBlocks::woodAt(Face end) const {
    constexpr double kInside = 0.01;  // mm
    constexpr int kStations = 24;
    const PartView view = partView(part_, end);
    const Vec3 size = part_.bodyBox().max;
    double start = 0.0;
    double far = size.x;
    for (const double y : {0.0, size.y}) {
        for (const double z : {0.0, size.z}) {
            start = std::max(start, endAt(part_, End::Start, y, z));
            far = std::min(far, endAt(part_, End::Far, y, z));
        }
    }
    std::vector<std::vector<Vec2>> wood;
    for (int i = 0; i <= kStations && !part_.bend; ++i) {
        const double at = start + kInside + (far - start - 2.0 * kInside) * i / kStations;
        for (const std::vector<Vec2>& ring : uneasedAcross(part_, at)) {
            wood.emplace_back();
            for (const Vec2& p : ring) {
                wood.back().push_back(view.toPlane(Vec3{at, p.y, p.x}) * endScale());
            }
        }
    }
    return wood.empty()
               ? std::vector<std::vector<Vec2>>{ringOf(Rect{{0.0, 0.0}, view.size * endScale()})}
               : wood;
}

namespace {

// The same sizes seen from an edge that is so much farther out.
std::vector<SizeToPlace> farther(std::vector<SizeToPlace> sizes, double by) {
    for (SizeToPlace& size : sizes) {
        size.fromDepth += by;
        size.toDepth += by;
    }
    return sizes;
}

}  // namespace

PartBlock PartBlocks::endView(const EndToShow& end) const {
    const Face face = end.face;
    const PartView view = partView(part_, face);
    const ViewSizes sizes = sizesOn(view, piece_, resolved_, index_, end.hasSection);
    const double scale = endScale();
    std::vector<Op> ops = body(view, scale);
    const Rect drawn = boundsOf(ops, metrics_);
    const std::string letter = plan_.letterOf(face == Face::StartEnd ? End::Start : End::Far);
    if (!letter.empty()) {
        // What lies behind a section is not shown through it (ISO 128-3).
        std::erase_if(ops, [](const Op& op) {
            const auto* stroke = std::get_if<Stroke>(&op);
            return stroke != nullptr && stroke->role == LineRole::Hidden;
        });
        removeCutOffEnds(part_, view, scale, ops);
        append(ops, tenonHatching(part_, view, scale));
    }
    const Vec2 size = view.size * scale;
    // The figures of the two sides keep clear of the corner between them.
    constexpr double kPastCorner = 2.0;
    const bool isFar = face == Face::FarEnd;
    FigureRoom below;
    (isFar ? below.high : below.low) = isFar ? size.x + kPastCorner : -kPastCorner;
    // A bent part is seen beyond its blank.
    const double bottom = std::max(size.y, drawn.max.y);
    const double side = isFar ? std::max(size.x, drawn.max.x) : std::min(0.0, drawn.min.x);
    const std::vector<Op> under = placeSizes(farther(scaled(sizes.along, scale), bottom - size.y),
                                             DimensionSide::Below,
                                             bottom,
                                             style_.dimensions,
                                             metrics_,
                                             below);
    append(ops, under);
    FigureRoom beside;
    beside.high = size.y;
    append(ops,
           placeClearOf(under,
                        farther(scaled(sizes.down, scale), isFar ? side - size.x : -side),
                        isFar ? DimensionSide::RightOf : DimensionSide::LeftOf,
                        side,
                        style_.dimensions,
                        metrics_,
                        beside));
    std::vector<Note> notes;
    for (const NeededNote& note : sizes.notes) {
        notes.push_back({note.target * scale, note.lines, note.subject});
    }
    // Over the end: its sizes stand under it and beside it, with arrows that may reach over it.
    const double top = std::min(-kToNotes, boundsOf(ops, metrics_).min.y - 1.0);
    append(
        ops,
        placeNotes(std::move(notes), 0.0, top, style_.dimensions.height, metrics_, NoteSide::Over));
    if (style_.withSections) {
        FreeSpace space(ops, metrics_);
        append(ops,
               faceMarksAcross(woodAt(end.face), isFar, space, style_.dimensions.height, metrics_));
    }
    const Rect bounds = boundsOf(ops, metrics_);
    const std::string name =
        letter.empty() ? end.label : letter + "\u2013" + letter + ", " + end.label;
    const std::string words = scale == scale_ ? name : name + ", " + scaleText(scale);
    ops.push_back(TextOp{{size.x / 2.0, bounds.min.y - 3.0},
                         words,
                         style_.dimensions.height,
                         Align::Centre,
                         false,
                         false});
    PartBlock block = blockOf(face, std::move(ops), size.y);
    block.isSection = !letter.empty();
    block.letter = letter;
    return block;
}

}  // namespace shoulderline
