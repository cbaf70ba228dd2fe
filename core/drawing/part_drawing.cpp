#include "core/drawing/part_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/notes.h"
#include "core/drawing/part_faces.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/part_views.h"
#include "core/drawing/scales.h"
#include "core/drawing/section_drawing.h"
#include "core/drawing/trade_marks.h"

namespace shoulderline {

namespace {

constexpr double kToNotes = 5.0;  // from a view down to its notes
constexpr double kBetweenViews = 6.0;
constexpr double kBesideViews = 9.0;
constexpr double kCentreOverrun = 3.0;  // of a centre line past the outline
constexpr double kMargin = 2.0;         // round the whole drawing

// A view drawn with all that belongs to it, its body's top left corner at (0, 0).
struct Block {
    Face face = Face::FaceSide;
    std::vector<Op> ops;
    Rect bounds;
    double bodyHeight = 0.0;
};

class Draughtsman {
  public:
    Draughtsman(const Piece& piece,
                const ResolvedPiece& resolved,
                std::size_t index,
                const PartStyle& style,
                const TextMetrics& metrics)
        : piece_(piece),
          resolved_(resolved),
          index_(index),
          part_(resolved.parts[index]),
          style_(style),
          plan_(style.withSections ? SectionPlan(resolved, part_) : SectionPlan()),
          scale_(style.scale),
          metrics_(metrics) {}

    [[nodiscard]] Block sideView(Face face) const;
    [[nodiscard]] Block endView(const EndToShow& end) const;
    // Through the mortises, as the plan has them.
    [[nodiscard]] std::vector<Block> sections() const;

  private:
    [[nodiscard]] std::vector<Op> body(const PartView& view, double scale) const;
    void addMouths(const PartView& view, double scale, std::vector<Op>& ops) const;
    void addCentreLines(const PartView& view, double scale, std::vector<Op>& ops) const;
    void addMarks(std::vector<Op>& ops) const;
    void addGrain(double height, FreeSpace& space, std::vector<Op>& ops) const;
    [[nodiscard]] double freePlaceForMark(double width) const;
    [[nodiscard]] static std::vector<SizeToPlace> scaled(const std::vector<NeededSize>& sizes,
                                                         double scale);
    [[nodiscard]] Block blockOf(Face face, std::vector<Op> ops, double bodyHeight) const {
        const Rect bounds = boundsOf(ops, metrics_);
        return {face, std::move(ops), bounds, bodyHeight};
    }
    [[nodiscard]] double endScale() const;

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    std::size_t index_;
    const ResolvedPart& part_;
    const PartStyle& style_;
    SectionPlan plan_;
    double scale_;
    const TextMetrics& metrics_;
};

std::vector<SizeToPlace> Draughtsman::scaled(const std::vector<NeededSize>& sizes, double scale) {
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
                          size.rank});
    }
    return result;
}

void append(std::vector<Op>& ops, std::vector<Op> more) {
    ops.insert(
        ops.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

std::vector<Op> Draughtsman::body(const PartView& view, double scale) const {
    std::vector<Op> ops;
    ops.push_back(BeginGroup{{SubjectKind::Part, index_},
                             part_.name + ", " + std::string(wordFor(view.face))});
    const Vec2 corner = view.size * scale;
    ops.push_back(Fill{{{0, 0}, {corner.x, 0}, corner, {0, corner.y}}, true});
    std::vector<PartLine> lines = linesOf(part_, view);
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
    addMouths(view, scale, ops);
    addCentreLines(view, scale, ops);
    ops.push_back(EndGroup{});
    return ops;
}

void Draughtsman::addMouths(const PartView& view, double scale, std::vector<Op>& ops) const {
    for (const MortiseSolid& mortise : part_.mortises) {
        if (!opensOn(mortise, view.face)) {
            continue;
        }
        const Rect mouth = view.toPlane(mortise.box);
        ops.push_back(
            BeginGroup{{SubjectKind::Joint, mortise.joint}, resolved_.joints[mortise.joint].name});
        const Vec2 min = mouth.min * scale;
        const Vec2 max = mouth.max * scale;
        ops.push_back(Fill{{min, {max.x, min.y}, max, {min.x, max.y}}, true});
        append(ops, mouthDiagonals(min, max, mortise.isThrough));
        ops.push_back(EndGroup{});
    }
}

// One line through each row of mouths, along the part; through a mouth that lies across it, across.
void Draughtsman::addCentreLines(const PartView& view, double scale, std::vector<Op>& ops) const {
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
double Draughtsman::freePlaceForMark(double width) const {
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
void Draughtsman::addMarks(std::vector<Op>& ops) const {
    const double height = std::clamp(
        0.75 * std::min(part_.width.value, part_.thickness.value * 3.0).mm() * scale_, 2.0, 9.0);
    const double at = freePlaceForMark(1.4 * height);
    ops.push_back(faceSideMark({at, 0.0}, height));
    ops.push_back(faceEdgeMark({at + 0.34 * height, 0.0}, 0.5 * height, true));
}

// On the face side, where there is room for it.
void Draughtsman::addGrain(double height, FreeSpace& space, std::vector<Op>& ops) const {
    constexpr Vec2 kSize{16.0, 2.6};
    const double length = part_.shoulderLength.value.mm() * scale_;
    const std::optional<Vec2> place = space.placeFor(kSize, {{0.0, 0.0}, {length, height}});
    if (place && !part_.body.edge) {
        std::vector<Op> arrow = grainArrow(*place + kSize * 0.5, 14.0);
        space.take(arrow, metrics_);
        append(ops, std::move(arrow));
    }
}

Block Draughtsman::sideView(Face face) const {
    const PartView view = partView(part_, face);
    const ViewSizes sizes = sizesOn(view, piece_, resolved_, index_, true, &plan_);
    std::vector<Op> ops = body(view, scale_);
    const Rect lines = boundsOf(ops, metrics_);
    if (face == Face::FaceSide) {
        addMarks(ops);
    }
    append(
        ops,
        placeSizes(
            scaled(sizes.along, scale_), DimensionSide::Above, 0.0, style_.dimensions, metrics_));
    const double height = view.size.y * scale_;
    std::vector<Note> notes;
    for (const NeededNote& note : sizes.notes) {
        notes.push_back({note.target * scale_, note.lines, note.subject});
    }
    append(
        ops,
        placeNotes(
            std::move(notes), lines.min.x, height + kToNotes, style_.dimensions.height, metrics_));
    ops.push_back(TextOp{{lines.min.x - 4.0, height / 2.0 + style_.dimensions.height / 2.0},
                         std::string(wordFor(face)),
                         style_.dimensions.height,
                         Align::Right,
                         false,
                         false});
    if (face == Face::FaceSide && style_.withSections) {
        FreeSpace space(ops, metrics_);
        addGrain(height, space, ops);
        for (const PartSection& section : plan_.sections()) {
            append(ops, cuttingPlaneMarks(section, height, scale_, style_, space, metrics_));
        }
    }
    return blockOf(face, std::move(ops), height);
}

std::vector<Block> Draughtsman::sections() const {
    std::vector<Block> blocks;
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
double Draughtsman::endScale() const {
    for (const double scale : standardScales(piece_.unit)) {
        if (scale <= scale_ ||
            std::max(part_.width.value.mm(), part_.thickness.value.mm()) * scale <=
                style_.largestEnd) {
            return std::max(scale, scale_);
        }
    }
    return scale_;
}

Block Draughtsman::endView(const EndToShow& end) const {
    const Face face = end.face;
    const PartView view = partView(part_, face);
    const ViewSizes sizes = sizesOn(view, piece_, resolved_, index_, end.hasSection);
    const double scale = endScale();
    std::vector<Op> ops = body(view, scale);
    const std::string letter = plan_.letterOf(face == Face::StartEnd ? End::Start : End::Far);
    if (!letter.empty()) {
        append(ops, tenonHatching(part_, view, scale));
    }
    const Vec2 size = view.size * scale;
    // The figures of the two sides keep clear of the corner between them.
    constexpr double kPastCorner = 2.0;
    const bool isFar = face == Face::FarEnd;
    FigureRoom below;
    (isFar ? below.high : below.low) = isFar ? size.x + kPastCorner : -kPastCorner;
    append(ops,
           placeSizes(scaled(sizes.along, scale),
                      DimensionSide::Below,
                      size.y,
                      style_.dimensions,
                      metrics_,
                      below));
    FigureRoom beside;
    beside.high = size.y;
    append(ops,
           placeSizes(scaled(sizes.down, scale),
                      isFar ? DimensionSide::RightOf : DimensionSide::LeftOf,
                      isFar ? size.x : 0.0,
                      style_.dimensions,
                      metrics_,
                      beside));
    std::vector<Note> notes;
    for (const NeededNote& note : sizes.notes) {
        notes.push_back({note.target * scale, note.lines, note.subject});
    }
    Rect bounds = boundsOf(ops, metrics_);
    append(ops,
           placeNotes(std::move(notes),
                      bounds.min.x,
                      bounds.max.y + kToNotes,
                      style_.dimensions.height,
                      metrics_));
    bounds = boundsOf(ops, metrics_);
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

// In columns at the right of the drawing, no longer than it is high; or in rows under it, no longer
// than it is wide.
void placeSections(std::vector<Block> sections,
                   bool isBelow,
                   const TextMetrics& metrics,
                   std::vector<Op>& ops) {
    const Rect all = boundsOf(ops, metrics);
    Vec2 at = isBelow ? Vec2{all.min.x, all.max.y + kBetweenViews}
                      : Vec2{all.max.x + kBesideViews, all.min.y};
    const Vec2 start = at;
    double across = 0.0;  // of the row or column that is being filled
    for (Block& section : sections) {
        const Vec2 size = section.bounds.size();
        if (isBelow && at.x > start.x && at.x + size.x > all.max.x) {
            at = {start.x, at.y + across + kBetweenViews};
            across = 0.0;
        }
        if (!isBelow && at.y > start.y && at.y + size.y > all.max.y) {
            at = {at.x + across + kBesideViews, start.y};
            across = 0.0;
        }
        move(section.ops, at - section.bounds.min);
        append(ops, std::move(section.ops));
        across = std::max(across, isBelow ? size.y : size.x);
        (isBelow ? at.x : at.y) += isBelow ? size.x + kBesideViews : size.y + kBetweenViews;
    }
}

}  // namespace

Sheet drawPart(const Piece& piece,
               const ResolvedPiece& resolved,
               const PartKind& kind,
               const PartStyle& style,
               const TextMetrics& metrics) {
    const std::size_t index = kind.parts.front();
    const ResolvedPart& part = resolved.parts[index];
    const Draughtsman draughtsman(piece, resolved, index, style, metrics);
    const bool isThirdAngle = piece.unit == Unit::Inch;

    Sheet sheet;
    sheet.title = kind.name;
    sheet.lines = style.lines;
    double y = 0.0;
    double middle = 0.0;
    for (const Face face : facesToShow(part, isThirdAngle)) {
        Block block = draughtsman.sideView(face);
        const double down = y - block.bounds.min.y;
        if (face == Face::FaceSide) {
            middle = down + block.bodyHeight / 2.0;
        }
        move(block.ops, {0.0, down});
        y = down + block.bounds.max.y + kBetweenViews;
        append(sheet.ops, std::move(block.ops));
    }
    const Rect stack = boundsOf(sheet.ops, metrics);
    std::vector<Block> sections = draughtsman.sections();
    for (const EndToShow& end : endsToShow(part)) {
        Block block = draughtsman.endView(end);
        if (style.sectionPlace == SectionPlace::WithEnds && !sections.empty()) {
            sections.push_back(std::move(block));
            continue;
        }
        // Seen from the left: at the left in third angle projection, at the right in first angle.
        const bool atRight = (end.face == Face::FarEnd) == isThirdAngle;
        const double x = atRight ? stack.max.x + kBesideViews - block.bounds.min.x
                                 : stack.min.x - kBesideViews - block.bounds.max.x;
        move(block.ops, {x, middle - block.bodyHeight / 2.0});
        append(sheet.ops, std::move(block.ops));
    }
    placeSections(
        std::move(sections), style.sectionPlace == SectionPlace::Below, metrics, sheet.ops);
    const Rect all = boundsOf(sheet.ops, metrics);
    move(sheet.ops, Vec2{kMargin, kMargin} - all.min);
    sheet.size = all.size() + Vec2{2.0 * kMargin, 2.0 * kMargin};
    return sheet;
}

Sheet partDrawing(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const PartKind& kind,
                  double scale,
                  bool isFullSize,
                  const TextMetrics& metrics) {
    PartStyle style;
    style.scale = scale;
    style.lines = isFullSize ? LineGroup::Fine : LineGroup::Bold;
    return drawPart(piece, resolved, kind, style, metrics);
}

}  // namespace shoulderline
