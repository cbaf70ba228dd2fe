#include "core/drawing/assembly_sheet.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/dimensioning.h"
#include "core/drawing/part_numbers.h"
#include "core/drawing/piece_view.h"
#include "core/drawing/scales.h"
#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kBetweenAssemblyViews = 14.0;
constexpr double kRoundAssembly = 4.0;
constexpr double kAssemblyHeight = 2.5;  // of the list and the note
constexpr double kWords = 95.0;          // width of the column that they stand in

// The piece with the assembly's parts alone: the others keep their places in the list, so that
// numbers stay, and have no wood. What swings is turned back upright about its pivot.
ResolvedPiece alone(const ResolvedPiece& resolved, const GlueUp& glueUp) {
    ResolvedPiece piece = resolved;
    piece.swings.clear();
    const auto swing =
        std::find_if(resolved.swings.begin(), resolved.swings.end(), [&](const ResolvedSwing& one) {
            return one.assembly == glueUp.assembly;
        });
    for (std::size_t i = 0; i < piece.parts.size(); ++i) {
        ResolvedPart& part = piece.parts[i];
        if (!std::binary_search(glueUp.parts.begin(), glueUp.parts.end(), i)) {
            part.body = {};
            part.solids = {};
            part.tenons.clear();
        } else if (swing != resolved.swings.end()) {
            part.frame = swing->swungTo(part.frame, Angle());
        }
    }
    return piece;
}

Box boundsOf(const ResolvedPiece& alone, const GlueUp& glueUp) {
    Box bounds = boundsOverTenons(alone.parts[glueUp.parts.front()]);
    for (const std::size_t part : glueUp.parts) {
        bounds = Box::around(bounds, boundsOverTenons(alone.parts[part]));
    }
    return bounds;
}

struct AssemblyViews {
    Elevation front;
    Elevation side;
    Elevation plan;
};

class AssemblyComposer {
  public:
    AssemblyComposer(const Piece& piece,
                     const ResolvedPiece& resolved,
                     const GlueUp& glueUp,
                     const TextMetrics& metrics)
        : piece_(piece),
          resolved_(resolved),
          glueUp_(glueUp),
          metrics_(metrics),
          alone_(alone(resolved, glueUp)),
          over_(boundsOf(alone_, glueUp)),
          views_{elevationOf(alone_, View::front(), {true, true}),
                 elevationOf(alone_, View::side(), {true, true}),
                 elevationOf(alone_, View::plan(), {true, true})} {}

    // Tells the places on the parts in sight by `spots`.
    [[nodiscard]] std::vector<Op> compose(double scale, std::vector<PartSpot>& spots) const {
        const bool isThird = piece_.unit == Unit::Inch;
        std::vector<Op> front = elevationOps(alone_, views_.front, scale);
        std::vector<Op> side = elevationOps(alone_, views_.side, scale);
        std::vector<Op> plan = elevationOps(alone_, views_.plan, scale);
        const double floor = -over_.min.z * scale;
        append(front, across(over_.min.x, over_.max.x, scale, "width over all", floor));
        append(front, up(scale));
        append(side, across(over_.min.y, over_.max.y, scale, "depth over all", floor));
        const Rect f = boundsOf(front, metrics_);
        const Rect s = boundsOf(side, metrics_);
        const Rect p = boundsOf(plan, metrics_);
        const Vec2 sideBy{isThird ? f.max.x + kBetweenAssemblyViews - s.min.x
                                  : f.min.x - kBetweenAssemblyViews - s.max.x,
                          0.0};
        const Vec2 planBy{0.0,
                          isThird ? f.min.y - kBetweenAssemblyViews - p.max.y
                                  : f.max.y + kBetweenAssemblyViews - p.min.y};
        move(side, sideBy);
        move(plan, planBy);
        spots.clear();
        addSpots(views_.front, scale, {}, spots);
        addSpots(views_.side, scale, sideBy, spots);
        addSpots(views_.plan, scale, planBy, spots);
        append(front, std::move(side));
        append(front, std::move(plan));
        std::vector<Op> words = listAndNotes();
        const Rect all = boundsOf(front, metrics_);
        const Rect w = boundsOf(words, metrics_);
        move(words, {all.max.x + kBetweenAssemblyViews - w.min.x, all.min.y - w.min.y});
        append(front, std::move(words));
        return front;
    }

    [[nodiscard]] Vec3 sizeOverAll() const { return over_.size(); }

  private:
    [[nodiscard]] std::string shown(double mm) const {
        return letterLength(Length::mm(mm), piece_.style);
    }

    [[nodiscard]] std::vector<Op> across(
        double from, double to, double scale, const char* of, double floor) const {
        return placeSizes({sized(from * scale, to * scale, to - from, of)},
                          DimensionSide::Below,
                          floor,
                          {},
                          metrics_);
    }
    [[nodiscard]] std::vector<Op> up(double scale) const {
        const double high = over_.size().z;
        return placeSizes(
            {sized(-over_.max.z * scale, -over_.min.z * scale, high, "height over all")},
            DimensionSide::LeftOf,
            over_.min.x * scale,
            {},
            metrics_);
    }
    [[nodiscard]] SizeToPlace sized(double from, double to, double mm, const char* of) const {
        return {from, to, 0.0, 0.0, shown(mm), mm, of, {}, 0};
    }

    // The parts by their numbers in the piece's list, and how many of each; under them the note.
    [[nodiscard]] std::vector<Op> listAndNotes() const {
        constexpr double kRow = 4.6;
        constexpr double kName = 12.0;
        std::vector<Op> ops;
        double y = kAssemblyHeight;
        const auto say = [&](double x, const std::string& text, Align align) {
            ops.push_back(TextOp{{x, y}, text, kAssemblyHeight, align, false, false});
        };
        const std::vector<PartKind> kinds = partKinds(resolved_);
        for (std::size_t k = 0; k < kinds.size(); ++k) {
            const auto here =
                std::count_if(kinds[k].parts.begin(), kinds[k].parts.end(), [&](std::size_t part) {
                    return std::binary_search(glueUp_.parts.begin(), glueUp_.parts.end(), part);
                });
            if (here == 0) {
                continue;
            }
            ops.push_back(BeginGroup{{SubjectKind::Part, kinds[k].parts.front()}, kinds[k].name});
            say(5.0, std::to_string(k + 1), Align::Right);
            say(kName - 4.0, std::to_string(here), Align::Left);
            say(kName, "\u00d7 " + kinds[k].name, Align::Left);
            ops.push_back(EndGroup{});
            y += kRow;
        }
        y += kRow;
        for (const std::string& note : glueUpNotes(piece_, resolved_, glueUp_)) {
            std::vector<Op> lines = linesOfText(
                wrapText(note, kWords, kAssemblyHeight, metrics_, "  "), kAssemblyHeight);
            const double high = boundsOf(lines, metrics_).size().y;
            move(lines, {0.0, y - kAssemblyHeight});
            append(ops, std::move(lines));
            y += high + 2.0;
        }
        return ops;
    }

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const GlueUp& glueUp_;
    const TextMetrics& metrics_;
    ResolvedPiece alone_;
    Box over_;
    AssemblyViews views_;
};

}  // namespace

std::string titleOf(const Piece& piece, const GlueUp& glueUp) {
    return "assembly: " + piece.assemblies[glueUp.assembly].name;
}

Sheet assemblySheet(const Piece& piece,
                    const ResolvedPiece& resolved,
                    const GlueUp& glueUp,
                    const SheetFrame& frame,
                    const TextMetrics& metrics) {
    const Rect space = drawingSpace(frame.paper);
    const Vec2 room = space.size() - Vec2{2.0 * kRoundAssembly, 2.0 * kRoundAssembly};
    const AssemblyComposer composer(piece, resolved, glueUp, metrics);
    std::vector<Op> drawing;
    std::vector<PartSpot> spots;
    Rect bounds;
    double scale = frame.scale;
    for (const double candidate :
         scale > 0.0 ? std::vector<double>{scale} : viewScales(piece.unit)) {
        scale = candidate;
        drawing = composer.compose(candidate, spots);
        bounds = boundsOf(drawing, metrics);
        if (bounds.size().x <= room.x && bounds.size().y <= room.y) {
            break;
        }
    }
    Sheet sheet;
    sheet.title = titleOf(piece, glueUp);
    sheet.size = frame.paper;
    sheet.lines = LineGroup::Medium;
    TitleBlock block = titleBlock(sheet.title, piece, frame);
    block.quantity = glueUp.hasMirrorTwin ? "make 2: 1 right as drawn, 1 left mirrored" : "make 1";
    block.material = std::to_string(glueUp.parts.size()) + " parts, " +
                     std::to_string(gluedIn(piece, resolved, glueUp)) + " joints glued";
    const Vec3 over = composer.sizeOverAll();
    setSizeOverAll(block, over, piece);
    block.scale = scaleText(scale);
    sheet.ops = frameAndTitle(frame.paper, block, metrics);
    addInMiddle(std::move(drawing), bounds, resolved, std::move(spots), space, metrics, sheet.ops);
    return sheet;
}

}  // namespace shoulderline
