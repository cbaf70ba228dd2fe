#include "core/drawing/part_outline_table.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/fraction_text.h"
#include "core/resolve/end_words.h"

namespace shoulderline {

namespace {

constexpr double kOnBlank = 1e-6;  // mm

// Whether the straight run from one point to the next lies along a side of the blank.
bool isOnBlank(const OutlineVertex& from, Vec2 to, Vec2 blank) {
    const auto both = [&](double Vec2::*axis, double at) {
        return std::abs(from.point.*axis - at) < kOnBlank && std::abs(to.*axis - at) < kOnBlank;
    };
    return from.bulge == 0.0 && (both(&Vec2::x, 0.0) || both(&Vec2::x, blank.x) ||
                                 both(&Vec2::y, 0.0) || both(&Vec2::y, blank.y));
}

bool isCorner(Vec2 p, Vec2 blank) {
    const auto isEnd = [](double at, double whole) {
        return std::abs(at) < kOnBlank || std::abs(at - whole) < kOnBlank;
    };
    return isEnd(p.x, blank.x) && isEnd(p.y, blank.y);
}

ShapedOutline toldOf(const Outline& outline, Vec2 blank, Face seenOn, Face across) {
    ShapedOutline shaped{&outline, seenOn, across, {}};
    const std::vector<OutlineVertex>& ring = outline.vertices;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const OutlineVertex& before = ring[(i + ring.size() - 1) % ring.size()];
        const bool isPlain = isCorner(ring[i].point, blank) &&
                             isOnBlank(before, ring[i].point, blank) &&
                             isOnBlank(ring[i], ring[(i + 1) % ring.size()].point, blank);
        if (!isPlain) {
            shaped.told.push_back(i);
        }
    }
    return shaped;
}

// "P1": a number alone passes for a stroke of the outline beside it.
std::string pointName(const ShapedOutline& shaped, std::size_t index) {
    return shaped.letter + std::to_string(index + 1);
}

// "outline of the face side, points P1 to P8".
std::string titleOf(const ShapedOutline& shaped) {
    const std::string name = "outline of the " + std::string(wordFor(shaped.seenOn));
    const std::size_t count = shaped.told.size();
    return count == 0 ? name
           : count == 1
               ? name + ", point " + pointName(shaped, 0)
               : name + ", points " + pointName(shaped, 0) + " to " + pointName(shaped, count - 1);
}

// How the outline goes on from a vertex: "straight", "arc R 12, rises 2" where it bows out of the
// wood, "hollow 2" where it bows in; from its chord. What is too flat to be swung at a bench is a
// batten sprung to that.
std::string runText(const ShapedOutline& shaped, std::size_t i, const LengthStyle& lengths) {
    const std::vector<OutlineVertex>& ring = shaped.outline->vertices;
    const OutlineVertex& from = ring[i];
    const std::size_t next = (i + 1) % ring.size();
    if (from.bulge == 0.0) {
        std::size_t corners = 0;  // of the blank, on the way to the next point that is told
        for (std::size_t to = next;
             std::find(shaped.told.begin(), shaped.told.end(), to) == shaped.told.end() &&
             corners < ring.size();
             to = (to + 1) % ring.size()) {
            ++corners;
        }
        return corners == 0 ? "straight"
               : corners == 1
                   ? "then straight round by the square corner"
                   : "then straight round by " + std::to_string(corners) + " square corners";
    }
    const OutlineArc arc = arcOf(from, ring[next].point);
    const double rise = std::abs(from.bulge) * norm(ring[next].point - from.point) / 2.0;
    constexpr double kSwung = 1500.0;  // mm, with a trammel on a bench
    const auto shown = [&](double mm) { return letterLength(Length::mm(mm), lengths); };
    const std::string bow = (from.bulge > 0.0 ? ", rises " : ", hollow ") + shown(rise);
    return arc.radius > kSwung ? "sprung batten" + bow + " over a chord of " +
                                     shown(norm(ring[next].point - from.point))
                               : "arc R " + shown(arc.radius) + bow;
}

}  // namespace

std::vector<ShapedOutline> shapedOutlines(const ResolvedPart& part,
                                          const std::vector<Face>& shown) {
    const Vec3 blank = part.bodyBox().size();
    std::vector<ShapedOutline> shaped;
    if (part.body.face != Outline::rectangle(blank.x, blank.y)) {
        shaped.push_back(
            toldOf(part.body.face, {blank.x, blank.y}, Face::FaceSide, Face::FaceEdge));
    }
    if (part.body.edge && !part.bend) {  // a bow is told by its rise and radius
        const bool onBack = std::find(shown.begin(), shown.end(), Face::FaceEdge) == shown.end() &&
                            std::find(shown.begin(), shown.end(), Face::BackEdge) != shown.end();
        shaped.push_back(toldOf(*part.body.edge,
                                {blank.x, blank.z},
                                onBack ? Face::BackEdge : Face::FaceEdge,
                                Face::FaceSide));
    }
    char letter = 'P';
    for (ShapedOutline& outline : shaped) {
        outline.from = placesFromWord(part, End::Start);
        outline.letter = letter++;
    }
    return shaped;
}

std::vector<Op> outlineTable(const ShapedOutline& outline,
                             std::size_t partIndex,
                             const LengthStyle& lengths,
                             double height,
                             const TextMetrics& metrics) {
    constexpr double kBetweenColumns = 4.0;
    const double line = kLineSpacing * height;
    const double fraction = 0.6 * height;  // room for a fraction's lower figures
    const auto shown = [&](double mm) { return letterLength(Length::mm(mm), lengths); };
    std::vector<std::array<std::string, 4>> rows{
        {"", "from " + outline.from, "from " + std::string(wordFor(outline.across)), "then"}};
    for (std::size_t i = 0; i < outline.told.size(); ++i) {
        const Vec2 p = outline.outline->vertices[outline.told[i]].point;
        rows.push_back({pointName(outline, i),
                        shown(p.x),
                        shown(p.y),
                        runText(outline, outline.told[i], lengths)});
    }
    std::vector<Op> ops;
    const std::string name = "outline of the " + std::string(wordFor(outline.seenOn));
    ops.push_back(BeginGroup{{SubjectKind::Part, partIndex}, name});
    ops.push_back(TextOp{{0.0, height}, titleOf(outline), height, Align::Left, false, false});
    double x = 0.0;
    const double top = height + line + fraction;
    for (std::size_t column = 0; column < 4; ++column) {
        double width = 0.0;
        for (const auto& row : rows) {
            width = std::max(width, metrics.width(row[column], height, false));
        }
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const double y = top + line * static_cast<double>(i) + (i > 0 ? 1.0 : 0.0);
            if (!rows[i][column].empty()) {
                ops.push_back(TextOp{{x, y}, rows[i][column], height, Align::Left, false, false});
            }
        }
        x += width + kBetweenColumns;
    }
    const double under = top + fraction;
    ops.push_back(Stroke{{{0.0, under}, {x - kBetweenColumns, under}}, LineRole::Dimension});
    ops.push_back(EndGroup{});
    return ops;
}

std::vector<Op> outlineNumbers(const ShapedOutline& outline,
                               const PartView& view,
                               double scale,
                               double height,
                               FreeSpace& space,
                               const TextMetrics& metrics) {
    constexpr double kClear = 0.6;  // mm, of the outline's wide line among others
    std::vector<Op> ops;
    for (std::size_t i = 0; i < outline.told.size(); ++i) {
        const Vec2 p = outline.outline->vertices[outline.told[i]].point;
        const Vec2 at = view.toPlane(outline.seenOn == Face::FaceSide ? Vec3{p.x, p.y, 0.0}
                                                                      : Vec3{p.x, 0.0, p.y}) *
                        scale;
        const std::string text = pointName(outline, i);
        const double half = metrics.width(text, height, false) / 2.0;
        // Round the point, the nearest first.
        bool isPlaced = false;
        for (double reach = 1.0; reach < 6.0 && !isPlaced; reach += 1.0) {
            for (const Vec2 way : {Vec2{0, -1},
                                   Vec2{0, 1},
                                   Vec2{1, -1},
                                   Vec2{-1, -1},
                                   Vec2{1, 1},
                                   Vec2{-1, 1},
                                   Vec2{1, 0},
                                   Vec2{-1, 0}}) {
                const Vec2 middle =
                    at + Vec2{way.x * (half + reach), way.y * (height / 2.0 + reach)};
                const TextOp op{
                    middle + Vec2{0.0, height / 2.0}, text, height, Align::Centre, false, false};
                Rect area = boundsOf(op, metrics);
                area = {area.min - Vec2{kClear, kClear}, area.max + Vec2{kClear, kClear}};
                if (!isPlaced && space.isFree(area)) {
                    space.take({op}, metrics);
                    ops.push_back(op);
                    isPlaced = true;
                }
            }
        }
    }
    return ops;
}

}  // namespace shoulderline
