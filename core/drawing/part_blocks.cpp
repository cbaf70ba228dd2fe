#include "core/drawing/part_blocks.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/hatching.h"
#include "core/drawing/notes.h"
#include "core/drawing/part_pair.h"
#include "core/drawing/scales.h"
#include "core/drawing/section_drawing.h"
#include "core/drawing/smooth_runs.h"
#include "core/drawing/trade_marks.h"

namespace shoulderline {

namespace {

constexpr double kToNotes = 5.0;        // from a view down to its notes
constexpr double kNumberHeight = 2.5;   // of the points of outlines
constexpr double kCentreOverrun = 3.0;  // of a centre line past the outline

}  // namespace

std::vector<SizeToPlace> PartBlocks::scaled(const std::vector<NeededSize>& sizes, double scale) {
    std::vector<SizeToPlace> result;
    for (const NeededSize& size : sizes) {
        result.push_back({size.from * scale,
                          size.to * scale,
                          size.fromDepth * scale,
                          size.toDepth * scale,
                          size.text,
                          size.value,
                          size.of,
                          size.subject,
                          size.rank,
                          size.mayRun});
    }
    return result;
}

std::vector<Op> PartBlocks::body(const PartView& view, double scale) const {
    std::vector<Op> ops;
    ops.push_back(BeginGroup{{SubjectKind::Part, index_},
                             part_.name + ", " + std::string(wordFor(view.face))});
    const Vec2 corner = view.size * scale;
    ops.push_back(Fill{{{0, 0}, {corner.x, 0}, corner, {0, corner.y}}, true});
    std::vector<PartLine> lines = lines_.of(view);
    std::stable_sort(lines.begin(), lines.end(), [](const PartLine& a, const PartLine& b) {
        return a.joint < b.joint;
    });
    std::optional<std::size_t> open;
    for (const PartLine& line : lines) {
        if (line.joint != open) {
            if (open) {
                ops.push_back(EndGroup{});
            }
            open = line.joint;
            ops.push_back(BeginGroup{{SubjectKind::Joint, *open}, resolved_.joints[*open].name});
        }
        ops.push_back(Stroke{{line.a * scale, line.b * scale},
                             line.isVisible ? LineRole::Visible : LineRole::Hidden});
    }
    if (open) {
        ops.push_back(EndGroup{});
    }
    ops = withHiddenRunsJoined(std::move(ops));
    addMouths(view, scale, ops);
    addCentreLines(view, scale, ops);
    ops.push_back(EndGroup{});
    return ops;
}

void PartBlocks::addMouths(const PartView& view, double scale, std::vector<Op>& ops) const {
    for (const MortiseSolid& mortise : part_.mortises) {
        if (!opensOn(mortise, view.face)) {
            continue;
        }
        const Rect mouth = view.toPlane(mortise.box);
        ops.push_back(
            BeginGroup{{SubjectKind::Joint, mortise.joint}, resolved_.joints[mortise.joint].name});
        std::vector<Vec2> ring = ringOf(mortise, view);
        for (Vec2& corner : ring) {
            corner = corner * scale;
        }
        ops.push_back(Fill{std::move(ring), true});
        // A mouth only a few widths of line across would fill up.
        constexpr double kLeastMouth = 2.5;
        const Vec2 size = mouth.size() * scale;
        if (!isBored(resolved_, mortise) && std::min(size.x, size.y) >= kLeastMouth) {
            append(ops, mouthDiagonals(mouth.min * scale, mouth.max * scale, mortise.isThrough));
        }
        ops.push_back(EndGroup{});
    }
}

// One line through each row of mouths, along the part; through a mouth that lies across it, across.
void PartBlocks::addCentreLines(const PartView& view, double scale, std::vector<Op>& ops) const {
    for (const Face face : {view.face, oppositeOf(view.face)}) {
        for (const MortiseRow& row : rowsOn(face, resolved_, part_)) {
            const bool opensHere = face == view.face || row.mortises.front()->isThrough;
            if (!opensHere) {
                continue;
            }
            const Rect first = view.toPlane(row.mortises.front()->box);
            const Rect last = view.toPlane(row.mortises.back()->box);
            const Vec2 middle = (first.min + first.max) * (0.5 * scale);
            if (first.size().x >= first.size().y) {
                ops.push_back(Stroke{{{first.min.x * scale - kCentreOverrun, middle.y},
                                      {last.max.x * scale + kCentreOverrun, middle.y}},
                                     LineRole::Centre});
                continue;
            }
            for (const MortiseSolid* mortise : row.mortises) {
                const Rect mouth = view.toPlane(mortise->box);
                const double x = (mouth.min.x + mouth.max.x) * 0.5 * scale;
                ops.push_back(Stroke{{{x, mouth.min.y * scale - kCentreOverrun},
                                      {x, mouth.max.y * scale + kCentreOverrun}},
                                     LineRole::Centre});
            }
        }
    }
}

// A stretch of the face, `width` sheet millimetres long, that no mortise lies under; its middle.
// The nearest to the start end.
double PartBlocks::freePlaceForMark(double width) const {
    const double length = part_.shoulderLength.value.mm() * scale_;
    std::vector<std::array<double, 2>> taken;
    for (const MortiseSolid& mortise : part_.mortises) {
        taken.push_back({mortise.box.min.x * scale_ - 1.0, mortise.box.max.x * scale_ + 1.0});
    }
    std::sort(taken.begin(), taken.end());
    taken.push_back({length, length});
    double best = length / 2.0;
    double widest = 0.0;
    double free = 2.0;
    for (const auto& [low, high] : taken) {
        if (low - free >= width) {
            return free + std::min(width, low - free) / 2.0;
        }
        if (low - free > widest) {
            widest = low - free;
            best = (low + free) / 2.0;
        }
        free = std::max(free, high);
    }
    return best;
}

// On the face side, whose upper line is the arris of the face edge.
void PartBlocks::addMarks(std::vector<Op>& ops) const {
    const double height = std::clamp(
        0.75 * std::min(part_.width.value, part_.thickness.value * 3.0).mm() * scale_, 2.0, 9.0);
    const double at = freePlaceForMark(1.4 * height);
    ops.push_back(faceSideMark({at, 0.0}, height));
    ops.push_back(faceEdgeMark({at + 0.34 * height, 0.0}, 0.5 * height, true));
}

// On the wood of the face side where that has room for it, else under the view.
void PartBlocks::addGrain(double height, FreeSpace& space, std::vector<Op>& ops) const {
    constexpr Vec2 kSize{16.0, 2.6};
    constexpr double kStep = 2.0;
    const double length = part_.shoulderLength.value.mm() * scale_;
    const std::vector<std::vector<Vec2>> face{part_.body.face.flatten().points};
    std::optional<Vec2> place;
    for (double x = length - kSize.x - kStep; x > kStep && !place; x -= kStep) {
        double top = 0.0;
        double bottom = height;
        for (const double at : {x, x + kSize.x}) {
            for (const Span& wood : spansInside(face, {0, 1}, {1, 0}, at / scale_)) {
                top = std::max(top, wood.from * scale_);
                bottom = std::min(bottom, wood.to * scale_);
            }
        }
        const Vec2 corner{x, (top + bottom - kSize.y) / 2.0};
        if (bottom - top > kSize.y + 1.0 && space.isFree({corner, corner + kSize})) {
            place = corner;
        }
    }
    if (!place) {
        constexpr double kUnder = 12.0;
        place = space.placeFor(kSize, {{0.0, height + 1.0}, {length, height + kUnder}});
    }
    if (place) {
        std::vector<Op> arrow = grainArrow(*place + kSize * 0.5, 14.0);
        space.take(arrow, metrics_);
        append(ops, std::move(arrow));
    }
}

// What is needed to draw the bow: at its middle.
Note PartBlocks::bowNote(const PartView& view) const {
    const ResolvedBend& bend = *part_.bend;
    const auto shown = [&](Length length) { return showLength(length, piece_.style); };
    const Vec3 size = part_.bodyBox().max;
    const Rect edge = part_.body.edge ? part_.body.edge->bounds() : Rect{{0, 0}, {size.x, size.z}};
    const double far = bend.hollow == Face::FaceSide ? edge.max.y : edge.min.y;
    const Vec2 top = view.toPlane(Vec3{size.x / 2, 0.0, far});
    std::vector<std::string> lines{
        "bow: rises " + shown(bend.rise.value) + " over the chord, at the middle line",
        "radius there " + shown(bend.radius.value) + ", along the curve " +
            shown(bend.alongCurve())};
    if (bend.method == BendMethod::Laminated) {
        lines.push_back(std::to_string(bend.plies) + " plies of " + shown(bend.ply.value) +
                        ", on a form of radius " + shown(bend.formRadius.value));
    }
    return {top * scale_, std::move(lines), {SubjectKind::Part, index_}};
}

PartBlock PartBlocks::sideView(Face face) const {
    const PartView view = partView(part_, face);
    const ViewSizes sizes = sizesOn(view, piece_, resolved_, index_, true, &plan_);
    std::vector<Op> ops = body(view, scale_);
    const Rect lines = boundsOf(ops, metrics_);
    if (face == Face::FaceSide) {
        addMarks(ops);
    }
    append(ops,
           placeSizes(scaled(sizes.along, scale_),
                      DimensionSide::Above,
                      part_.bend ? std::min(0.0, lines.min.y) : 0.0,
                      style_.dimensions,
                      metrics_));
    const double height = view.size.y * scale_;
    std::vector<Note> notes;
    if (part_.bend && (face == Face::FaceEdge || face == Face::BackEdge)) {
        notes.push_back(bowNote(view));
    }
    for (const NeededNote& note : sizes.notes) {
        notes.push_back({note.target * scale_, note.lines, note.subject});
    }
    append(ops,
           placeNotes(std::move(notes),
                      lines.min.x,
                      (part_.bend ? std::max(height, lines.max.y) : height) + kToNotes,
                      style_.dimensions.height,
                      metrics_));
    ops.push_back(TextOp{{lines.min.x - 4.0, height / 2.0 + style_.dimensions.height / 2.0},
                         std::string(wordFor(face)),
                         style_.dimensions.height,
                         Align::Right,
                         false,
                         false});
    FreeSpace space(ops, metrics_);
    if (face == Face::FaceSide && style_.withSections) {
        addGrain(height, space, ops);
        for (const PartSection& section : plan_.sections()) {
            append(ops, cuttingPlaneMarks(section, height, scale_, style_, space, metrics_));
        }
    }
    for (const ShapedOutline& outline : outlines()) {
        if (outline.seenOn == face) {
            append(ops, outlineNumbers(outline, view, scale_, kNumberHeight, space, metrics_));
        }
    }
    return blockOf(face, std::move(ops), height);
}

std::vector<ShapedOutline> PartBlocks::outlines() const {
    return style_.withSections
               ? shapedOutlines(part_, facesToShow(part_, piece_.unit == Unit::Inch))
               : std::vector<ShapedOutline>();
}

std::vector<PartBlock> PartBlocks::outlineTables() const {
    std::vector<PartBlock> blocks;
    for (const ShapedOutline& outline : outlines()) {
        blocks.push_back(
            blockOf(outline.seenOn,
                    outlineTable(outline, index_, piece_.style, style_.dimensions.height, metrics_),
                    0.0));
    }
    return blocks;
}

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
    pair.drawn.push_back(faceSideMark({2.0 * mark, 0.0}, mark));
    pair.drawn.push_back(faceEdgeMark({2.34 * mark, 0.0}, 0.5 * mark, true));
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
        const std::string name = section.letter + "\u2013" + section.letter;
        ops.push_back(TextOp{{part_.thickness.value.mm() * scale / 2.0, bounds.min.y - 3.0},
                             scale == scale_ ? name : name + ", " + scaleText(scale),
                             style_.dimensions.height,
                             Align::Centre,
                             false,
                             false});
        blocks.push_back(blockOf(Face::FarEnd, std::move(ops), part_.width.value.mm() * scale));
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

PartBlock PartBlocks::endView(const EndToShow& end) const {
    const Face face = end.face;
    const PartView view = partView(part_, face);
    const ViewSizes sizes = sizesOn(view, piece_, resolved_, index_, end.hasSection);
    const double scale = endScale();
    std::vector<Op> ops = body(view, scale);
    const std::string letter = plan_.letterOf(face == Face::StartEnd ? End::Start : End::Far);
    if (!letter.empty()) {
        removeCutOffEnds(part_, view, scale, ops);
        append(ops, tenonHatching(part_, view, scale));
    }
    const Vec2 size = view.size * scale;
    // The figures of the two sides keep clear of the corner between them.
    constexpr double kPastCorner = 2.0;
    const bool isFar = face == Face::FarEnd;
    FigureRoom below;
    (isFar ? below.high : below.low) = isFar ? size.x + kPastCorner : -kPastCorner;
    const std::vector<Op> under = placeSizes(scaled(sizes.along, scale),
                                             DimensionSide::Below,
                                             size.y,
                                             style_.dimensions,
                                             metrics_,
                                             below);
    append(ops, under);
    FigureRoom beside;
    beside.high = size.y;
    append(ops,
           placeClearOf(under,
                        scaled(sizes.down, scale),
                        isFar ? DimensionSide::RightOf : DimensionSide::LeftOf,
                        isFar ? size.x : 0.0,
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
    return blockOf(face, std::move(ops), size.y);
}

}  // namespace shoulderline
