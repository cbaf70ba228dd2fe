#include "core/drawing/form_pattern.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/dimensioning.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/patterns.h"
#include "core/drawing/strips.h"
#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"
#include "core/measure/length_text.h"
#include "core/resolve/bending_text.h"
#include "core/resolve/end_plane.h"

namespace shoulderline {

namespace {

constexpr double kFormHeight = 2.5;
constexpr double kFormMargin = 4.0;
constexpr double kBaseBelow = 25.0;  // mm of form between its lowest place and its base
constexpr double kPastFace = 6.0;    // of a shoulder line past both faces

class FormMaker {
  public:
    FormMaker(const Piece& piece,
              const ResolvedPiece& resolved,
              const ResolvedPart& part,
              double widest,
              const TextMetrics& metrics)
        : piece_(piece), resolved_(resolved), part_(part), widest_(widest), metrics_(metrics) {
        const ResolvedBend& bend = *part.bend;
        const double half = part.thickness.value.mm() / 2;
        const BendWork work = bendWorkOf(part, resolved.rules);
        const double past = (work.blankLength - bend.alongCurve()).mm() / 2;
        chord_ = bend.formLine.back().point.x;
        low_ = -past;
        high_ = chord_ + past;
        face_ = between(beside(bend.formLine, -half), low_, high_);
        middle_ = between(bend.formLine, low_, high_);
        far_ = between(beside(bend.formLine, half), low_, high_);
        base_ = std::min(face_.front().point.y, face_.back().point.y) - kBaseBelow;
    }

    [[nodiscard]] Sheet make() const;

  private:
    [[nodiscard]] std::string shown(double mm) const {
        return letterLength(Length::mm(mm), piece_.style);
    }
    // y up off the base, onto the sheet.
    [[nodiscard]] static Vec2 onSheet(Vec2 p) { return {p.x, -p.y}; }
    void addLine(const BentLine& line, LineRole role, std::vector<Op>& ops) const;
    void addShoulder(End end, std::vector<Op>& ops) const;
    void addOffsets(std::vector<Op>& ops) const;
    void addSizes(std::vector<Op>& ops) const;
    void addNotes(std::vector<Op>& ops) const;

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const ResolvedPart& part_;
    double widest_;
    const TextMetrics& metrics_;
    double chord_ = 0.0;
    double low_ = 0.0;
    double high_ = 0.0;
    double base_ = 0.0;
    BentLine face_;
    BentLine middle_;
    BentLine far_;
};

void FormMaker::addLine(const BentLine& line, LineRole role, std::vector<Op>& ops) const {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        // Mirrored in x, so that what turned one way turns the other.
        const OutlineVertex from{onSheet(line[i].point), -line[i].bulge};
        const Vec2 to = onSheet(line[i + 1].point);
        if (from.bulge == 0.0) {
            ops.push_back(Stroke{{from.point, to}, role});
        } else {
            const OutlineArc arc = arcOf(from, to);
            ops.push_back(ArcOp{arc.centre,
                                arc.radius,
                                Angle::radians(arc.start),
                                Angle::radians(arc.sweep),
                                role});
        }
    }
}

// A shoulder square to the chord once the part has sprung back leans on the form by as much as the
// form's line is steeper there; one square to the curve lies square to the form's line, as far in
// along it as along the part's.
void FormMaker::addShoulder(End end, std::vector<Op>& ops) const {
    const ResolvedBend& bend = *part_.bend;
    const bool isStart = end == End::Start;
    const bool followsCurve = bend.shoulders == BendShoulders::Curve;
    const double onForm = isStart ? headingAtStart(bend.formLine) : headingAtEnd(bend.formLine);
    const double onPart = isStart ? headingAtStart(bend.line) : headingAtEnd(bend.line);
    const double turned = followsCurve ? onForm : onForm - onPart;
    const double reach = part_.thickness.value.mm() / 2 + kPastFace;
    Vec2 at = isStart ? bend.formLine.front().point : bend.formLine.back().point;
    if (const std::optional<HalfSpace> plane = endPlaneOf(part_.body, end); plane && followsCurve) {
        const Vec3 middle{
            isStart ? 0.0 : part_.shoulderLength.value.mm(), 0.0, part_.thickness.value.mm() / 2};
        const double in = isStart ? plane->height(middle) : -plane->height(middle);
        at = at + Vec2{std::cos(onForm), std::sin(onForm)} * in;
    }
    const Vec2 way = Vec2{-std::sin(turned), std::cos(turned)} * reach;
    ops.push_back(Stroke{{onSheet(at - way), onSheet(at + way)}, LineRole::Visible});
    ops.push_back(TextOp{onSheet(at + way) + Vec2{0.0, -1.5},
                         "shoulder",
                         kFormHeight,
                         isStart ? Align::Left : Align::Right,
                         false,
                         false});
}

// At every station from the left shoulder how high the form stands off its base.
void FormMaker::addOffsets(std::vector<Op>& ops) const {
    for (const double at : stationsAlong(chord_, unitOf(piece_.style))) {
        const double y = at < chord_ ? between(face_, at, high_).front().point.y
                                     : between(face_, low_, at).back().point.y;
        ops.push_back(Stroke{{onSheet({at, base_}), onSheet({at, y})}, LineRole::Construction});
        const Vec2 foot = onSheet({at, base_});
        ops.push_back(TextOp{foot + Vec2{kFormHeight / 2, 2.0},
                             shown(y - base_),
                             kFormHeight,
                             Align::Right,
                             true,
                             false});
    }
}

void FormMaker::addSizes(std::vector<Op>& ops) const {
    const DimensionStyle style{kFormHeight, 8.0, 6.0};
    const double floor = boundsOf(ops, metrics_).max.y;
    std::vector<Op> sizes =
        placeSizes({{0.0, chord_, 0.0, 0.0, shown(chord_), chord_, "chord of the form", {}, 0}},
                   DimensionSide::Below,
                   floor,
                   style,
                   metrics_);
    ops.insert(
        ops.end(), std::make_move_iterator(sizes.begin()), std::make_move_iterator(sizes.end()));
}

void FormMaker::addNotes(std::vector<Op>& ops) const {
    const ResolvedBend& bend = *part_.bend;
    const Length half = part_.thickness.value / 2;
    const auto withUnit = [&](Length length) { return letterLength(length, piece_.style, true); };
    std::vector<std::string> lines{
        "heights of the form stand off its base; the figures lie at the lines they are for",
        "radius of the form's face " + withUnit(bend.formRadius.value - half) +
            ", of the middle line " + withUnit(bend.formRadius.value) + " at its tightest",
        "rise of the middle line on the form " + withUnit(bend.formRise()) + ", when free " +
            withUnit(bend.rise.value) +
            (bend.isMeasured ? " by the springback that was found"
                             : " as expected: an estimate, bend one and measure it")};
    for (const std::string& line : bendSettings(part_, resolved_.rules, piece_.style)) {
        lines.push_back(line);
    }
    const double y = boundsOf(ops, metrics_).max.y + 5.0;
    std::vector<std::string> rows;
    for (const std::string& line : lines) {
        for (std::string& some : wrapText(line, widest_, kFormHeight, metrics_, "  ")) {
            rows.push_back(std::move(some));
        }
    }
    append(ops, wordsOps({low_, y}, rows, kFormHeight, 4.5));
}

Sheet FormMaker::make() const {
    Sheet sheet;
    sheet.lines = LineGroup::Fine;
    std::vector<Op>& ops = sheet.ops;
    const auto index = std::find_if(resolved_.parts.begin(),
                                    resolved_.parts.end(),
                                    [&](const ResolvedPart& p) { return &p == &part_; });
    ops.push_back(
        BeginGroup{{SubjectKind::Part, static_cast<std::size_t>(index - resolved_.parts.begin())},
                   part_.of + ", form"});
    addLine(face_, LineRole::Visible, ops);
    addLine(middle_, LineRole::Centre, ops);
    addLine(far_, LineRole::Neighbour, ops);
    ops.push_back(Stroke{{onSheet(face_.front().point),
                          onSheet({low_, base_}),
                          onSheet({high_, base_}),
                          onSheet(face_.back().point)},
                         LineRole::Visible});
    const double top = riseOf(part_.bend->formLine) + part_.thickness.value.mm();
    ops.push_back(
        Stroke{{onSheet({chord_ / 2, base_ - 3.0}), onSheet({chord_ / 2, top})}, LineRole::Centre});
    addShoulder(End::Start, ops);
    addShoulder(End::Far, ops);
    ops.push_back(EndGroup{});
    addOffsets(ops);
    addSizes(ops);
    addNotes(ops);
    const Rect bounds = boundsOf(ops, metrics_);
    append(ops, titleOps({bounds.min.x, bounds.min.y - 3.0}, "form of " + part_.of, 5.0));
    const Rect all = boundsOf(ops, metrics_);
    move(ops, Vec2{kFormMargin, kFormMargin} - all.min);
    sheet.size = all.size() + Vec2{2.0 * kFormMargin, 2.0 * kFormMargin};
    return sheet;
}

}  // namespace

Sheet formPattern(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const ResolvedPart& part,
                  double widest,
                  const TextMetrics& metrics) {
    return FormMaker(piece, resolved, part, widest, metrics).make();
}

}  // namespace shoulderline
