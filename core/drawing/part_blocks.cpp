#include "core/drawing/part_blocks.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/hatching.h"
#include "core/drawing/line_bands.h"
#include "core/drawing/mortise_rows.h"
#include "core/drawing/narrow_mouths.h"
#include "core/drawing/notes.h"
#include "core/drawing/section_marks.h"
#include "core/drawing/smooth_runs.h"
#include "core/drawing/tenon_pegs.h"
#include "core/drawing/trade_marks.h"
#include "core/drawing/turned_mouth.h"
#include "core/resolve/bending_text.h"

namespace shoulderline {

namespace {

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
    std::vector<PartLine> lines = withoutBands(lines_.of(view), scale);
    std::stable_sort(lines.begin(), lines.end(), [](const PartLine& a, const PartLine& b) {
        return a.joint < b.joint;
    });
    const std::vector<std::vector<Vec2>> narrow = narrowMouths(part_, view, scale, style_.lines);
    std::optional<std::size_t> open;
    for (const PartLine& line : lines) {
        if (line.joint != open) {
            if (open) {
                ops.push_back(EndGroup{});
            }
            open = line.joint;
            ops.push_back(BeginGroup{{SubjectKind::Joint, *open}, resolved_.joints[*open].name});
        }
        const Vec2 a = line.a * scale;
        const Vec2 b = line.b * scale;
        const LineRole seen = isOfMouth(narrow, a, b) ? LineRole::Narrow : LineRole::Visible;
        ops.push_back(Stroke{{a, b}, line.isVisible ? seen : LineRole::Hidden});
    }
    if (open) {
        ops.push_back(EndGroup{});
    }
    ops = withHiddenRunsJoined(std::move(ops));
    addMouths(view, scale, ops);
    addCentreLines(view, scale, ops);
    append(ops, tenonPegLines(resolved_, index_, view, scale));
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
        std::vector<Vec2> ring = ringOf(part_, mortise, view);
        for (Vec2& corner : ring) {
            corner = corner * scale;
        }
        ops.push_back(Fill{std::move(ring), true});
        // A mouth only a few widths of line across would fill up.
        constexpr double kLeastMouth = 2.5;
        const Vec2 size = mouth.size() * scale;
        const auto add = [&](std::vector<Op> diagonals) {
            append(ops,
                   inGroup(mortise.isThrough ? kThroughGroup : kBlindGroup,
                           {SubjectKind::Joint, mortise.joint},
                           std::move(diagonals)));
        };
        if (const std::optional<TurnedMouth> turned = turnedMouthOf(resolved_, part_, mortise)) {
            if (turned->width * scale >= kLeastMouth) {
                add(turnedDiagonals(*turned, view, scale, mortise.isThrough));
            }
        } else if (!isBored(resolved_, mortise) && std::min(size.x, size.y) >= kLeastMouth) {
            add(mouthDiagonals(mouth.min * scale, mouth.max * scale, mortise.isThrough));
        }
        ops.push_back(EndGroup{});
    }
}

// One line through each row of mouths, along the part; through a mouth that lies across it, across.
void PartBlocks::addCentreLines(const PartView& view, double scale, std::vector<Op>& ops) const {
    const std::vector<std::vector<Vec2>> narrow = narrowMouths(part_, view, scale, style_.lines);
    const auto add = [&](Vec2 from, Vec2 to) { append(ops, centreLineOutside(narrow, from, to)); };
    for (const Face face : {view.face, oppositeOf(view.face)}) {
        for (const MortiseRow& row : rowsOn(face, resolved_, part_)) {
            const bool opensHere = face == view.face || row.mortises.front()->isThrough;
            if (!opensHere) {
                continue;
            }
            if (face == view.face && turnedMouthOf(resolved_, part_, *row.mortises.front())) {
                for (const MortiseSolid* mortise : row.mortises) {
                    for (const auto& [from, to] :
                         turnedCentreLines(*turnedMouthOf(resolved_, part_, *mortise),
                                           view,
                                           scale,
                                           kCentreOverrun)) {
                        add(from, to);
                    }
                }
                continue;
            }
            const Rect first = view.toPlane(row.mortises.front()->box);
            const Rect last = view.toPlane(row.mortises.back()->box);
            const Vec2 middle = (first.min + first.max) * (0.5 * scale);
            if (first.size().x >= first.size().y) {
                add({first.min.x * scale - kCentreOverrun, middle.y},
                    {last.max.x * scale + kCentreOverrun, middle.y});
                continue;
            }
            for (const MortiseSolid* mortise : row.mortises) {
                const Rect mouth = view.toPlane(mortise->box);
                const double x = (mouth.min.x + mouth.max.x) * 0.5 * scale;
                add({x, mouth.min.y * scale - kCentreOverrun},
                    {x, mouth.max.y * scale + kCentreOverrun});
            }
        }
    }
}

// How far a place along the part is from all mortises and holes, and from where the arris of the
// face edge is stopped off, on the sheet.
double PartBlocks::clearOfCuts(double x) const {
    double clear = std::numeric_limits<double>::infinity();
    const auto keepOff = [&](const Box& box) {
        clear = std::min(clear, std::max(box.min.x * scale_ - x, x - box.max.x * scale_));
    };
    for (const MortiseSolid& mortise : part_.mortises) {
        keepOff(mortise.box);
    }
    for (const ResolvedCut& cut : part_.cuts) {
        if (cut.isSetOutByMiddle()) {
            keepOff(cut.box);
        }
    }
    for (const ResolvedEasing& easing : part_.easings) {
        // A stopped one takes the arris that both marks stand on.
        if (easing.at == Arris::FaceSideFaceEdge && (easing.from || easing.to)) {
            const double from = easing.from ? easing.from->mm() : 0.0;
            const double to = easing.to ? easing.to->mm() : part_.shoulderLength.value.mm();
            keepOff({{from, 0.0, 0.0}, {to, 0.0, 0.0}});
        }
    }
    return clear;
}

// On the line of the face edge, with wood under it for a mark `height` high: where that is the
// blank's own, straight and square, else where it runs level, else anywhere; of such places the
// nearest to the start end that is clear of mortises and holes, or the one farthest from them.
Vec2 PartBlocks::placeForMark(double height) const {
    constexpr double kStep = 1.0;
    const double half = 0.7 * height;
    const double length = part_.shoulderLength.value.mm() * scale_;
    const std::vector<std::vector<Vec2>> face{part_.body.face.flatten().points};
    const auto edgeAt = [&](double x) -> std::optional<double> {
        const std::vector<Span> wood = spansInside(face, {0, 1}, {1, 0}, x / scale_);
        const bool isDeep =
            !wood.empty() && (wood.front().to - wood.front().from) * scale_ > height;
        return isDeep ? std::optional(wood.front().from * scale_) : std::nullopt;
    };
    enum class Edge { Sloping, Level, Blanks };
    const auto kindOf = [](double before, double at, double after) {
        constexpr double kLevel = 1e-3;
        const auto [low, high] = std::minmax({before, at, after});
        return high - low > kLevel ? Edge::Sloping : high > kLevel ? Edge::Level : Edge::Blanks;
    };
    Vec2 best{std::min(half + 1.0, length / 2.0), 0.0};
    std::pair found{Edge::Sloping, -std::numeric_limits<double>::infinity()};
    for (double x = half + 1.0; x < length - half; x += kStep) {
        const std::optional<double> edge = edgeAt(x);
        const std::optional<double> before = edgeAt(x - half);
        const std::optional<double> after = edgeAt(x + half);
        if (!edge || !before || !after) {
            continue;
        }
        const std::pair here{kindOf(*before, *edge, *after), std::min(clearOfCuts(x), half + 1.0)};
        if (here > found) {
            found = here;
            best = {x, *edge};
        }
    }
    return best;
}

// On the face side, whose upper line is the arris of the face edge.
void PartBlocks::addMarks(std::vector<Op>& ops) const {
    const double height = std::clamp(
        0.75 * std::min(part_.width.value, part_.thickness.value * 3.0).mm() * scale_, 2.0, 9.0);
    const Vec2 at = placeForMark(height);
    append(ops, inGroup(kFaceSideGroup, {}, {faceSideMark(at, height)}));
    append(
        ops,
        inGroup(
            kFaceEdgeGroup, {}, {faceEdgeMark(at + Vec2{0.34 * height, 0.0}, 0.5 * height, true)}));
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
        std::vector<Op> arrow = inGroup(kGrainGroup, {}, grainArrow(*place + kSize * 0.5, 14.0));
        space.take(arrow, metrics_);
        append(ops, std::move(arrow));
    }
}

// What is needed to draw the bow: at its middle.
Note PartBlocks::bowNote(const PartView& view) const {
    const ResolvedBend& bend = *part_.bend;
    const auto shown = [&](Length length) { return letterLength(length, piece_.style); };
    const Vec3 size = part_.bodyBox().max;
    const Rect edge = part_.body.edge ? part_.body.edge->bounds() : Rect{{0, 0}, {size.x, size.z}};
    const double far = bend.hollow == Face::FaceSide ? edge.max.y : edge.min.y;
    const Vec2 top = view.toPlane(Vec3{size.x / 2, 0.0, far});
    const BendWork work = bendWorkOf(part_, resolved_.rules);
    const std::string across = shown(work.blankLength) + " \u00d7 " + shown(work.blankWidth);
    std::vector<std::string> lines{
        "bow: rises " + shown(bend.rise.value) + " over the chord, at the middle line",
        "radius there " + shown(bend.radius.value) + ", along the curve " +
            shown(bend.alongCurve())};
    switch (bend.method) {
        case BendMethod::Laminated:
            lines.push_back("blank along the curve " + across + ", " + std::to_string(bend.plies) +
                            " plies of " + shown(bend.ply.value));
            break;
        case BendMethod::Steamed:
            lines.push_back("blank along the curve " + across + " \u00d7 " +
                            shown(part_.thickness.value));
            break;
        case BendMethod::Sawn:
            lines.push_back("sawn out of stock " + shown(work.solidThickness) + " thick");
            return {top * scale_, std::move(lines), {SubjectKind::Part, index_}};
    }
    lines.push_back("on a form that rises " + shown(bend.formRise()) + ", radius " +
                    shown(bend.formRadius.value));
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
           placeNotes(
               std::move(notes),
               lines.min.x,
               (part_.bend ? std::max(height, lines.max.y) : height) +
                   (face == Face::FaceSide && !plan_.sections().empty() ? kPastMarks : kToNotes),
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
            append(ops,
                   cuttingPlaneMarks(
                       section, acrossAt(section, view), scale_, style_, space, metrics_));
        }
    }
    for (const ShapedOutline& outline : outlines()) {
        if (outline.seenOn == face) {
            append(
                ops,
                outlineNumbers(outline, view, scale_, style_.dimensions.height, space, metrics_));
        }
    }
    return blockOf(face, std::move(ops), height);
}

// What a section cuts of the view, on the sheet: the tenons at its end, or the body.
Span PartBlocks::acrossAt(const PartSection& section, const PartView& view) const {
    std::optional<Span> across;
    const auto include = [&](double from, double to) {
        across =
            across ? Span{std::min(across->from, from), std::max(across->to, to)} : Span{from, to};
    };
    if (section.tenonsAt) {
        for (const TenonSolid& tenon : part_.tenons) {
            if ((tenon.box.min.x < 0.0) == (section.tenonsAt == End::Start)) {
                const Rect rect = view.toPlane(tenon.box);
                include(rect.min.y, rect.max.y);
            }
        }
    } else if (!part_.bend) {
        for (const std::vector<Vec2>& ring : bodyAcross(part_, section.at)) {
            for (const Vec2& p : ring) {
                const double y = view.toPlane(Vec3{section.at, p.y, p.x}).y;
                include(y, y);
            }
        }
    }
    const Span found = across.value_or(Span{0.0, view.size.y});
    return {found.from * scale_, found.to * scale_};
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
        blocks.back().isTable = true;
    }
    return blocks;
}

}  // namespace shoulderline
