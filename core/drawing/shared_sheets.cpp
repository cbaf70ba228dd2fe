#include "core/drawing/shared_sheets.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

#include "core/drawing/part_drawing.h"

namespace shoulderline {

namespace {

// All that is drawn and lettered of a part.
std::vector<Op> drawnOf(const Piece& piece,
                        const ResolvedPiece& resolved,
                        const PartKind& kind,
                        const TextMetrics& metrics) {
    PartStyle style;
    style.scale = 0.25;
    style.withSections = true;
    style.withNotes = false;  // one sheet has those of all, each by its name
    PartLines lines(resolved.parts[kind.parts.front()]);
    return setInProjection(drawBlocks(piece, resolved, kind, style, lines, metrics),
                           piece,
                           kind,
                           style,
                           metrics)
        .ops;
}

// Whether both draw and letter the same, to a thousandth of a millimetre on the sheet, in whatever
// order.
class Sameness {
  public:
    [[nodiscard]] static bool of(const std::vector<Op>& a, const std::vector<Op>& b) {
        if (a.size() != b.size()) {
            return false;
        }
        std::vector<bool> isTaken(b.size(), false);
        return std::all_of(a.begin(), a.end(), [&](const Op& one) {
            for (std::size_t i = 0; i < b.size(); ++i) {
                if (!isTaken[i] && same(one, b[i])) {
                    isTaken[i] = true;
                    return true;
                }
            }
            return false;
        });
    }

  private:
    static bool same(const Op& one, const Op& two) {
        return one.index() == two.index() &&
               std::visit(
                   [&](const auto& op) {
                       return same(op, std::get<std::decay_t<decltype(op)>>(two));
                   },
                   one);
    }
    static bool same(double a, double b) { return std::abs(a - b) < 1e-3; }
    static bool same(Vec2 a, Vec2 b) { return same(a.x, b.x) && same(a.y, b.y); }
    static bool same(const std::vector<Vec2>& a, const std::vector<Vec2>& b) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](Vec2 one, Vec2 two) {
            return same(one, two);
        });
    }
    static bool same(const Stroke& a, const Stroke& b) {
        return a.role == b.role &&
               (same(a.points, b.points) ||
                same(std::vector<Vec2>(a.points.rbegin(), a.points.rend()), b.points));
    }
    static bool same(const Fill& a, const Fill& b) {
        return a.tint == b.tint && same(a.points, b.points);
    }
    static bool same(const ArcOp& a, const ArcOp& b) {
        return a.role == b.role && same(a.centre, b.centre) && same(a.radius, b.radius) &&
               same(a.start.degrees(), b.start.degrees()) &&
               same(a.sweep.degrees(), b.sweep.degrees());
    }
    static bool same(const TextOp& a, const TextOp& b) {
        return a.text == b.text && same(a.at, b.at) && a.isTurned == b.isTurned;
    }
    static bool same(const DimensionOp& a, const DimensionOp& b) {
        return a.text == b.text && a.of == b.of && same(a.from, b.from) && same(a.to, b.to) &&
               same(a.lineFrom, b.lineFrom) && same(a.lineTo, b.lineTo);
    }
    static bool same(const BeginGroup&, const BeginGroup&) { return true; }  // names do not count
    static bool same(const EndGroup&, const EndGroup&) { return true; }
};

struct Drawn {
    PartKind kind;
    std::string material;
    std::vector<Op> ops;  // empty until they are asked for
};

// What can be told without drawing.
bool mayBeAlike(const ResolvedPart& a, const ResolvedPart& b) {
    constexpr double kSameSize = 1e-6;
    return a.stock == b.stock && a.tenons.size() == b.tenons.size() &&
           a.mortises.size() == b.mortises.size() && a.cuts.size() == b.cuts.size() &&
           norm(a.bodyBox().max - b.bodyBox().max) < kSameSize;
}

void join(PartKind more, PartKind& kind) {
    kind.parts.insert(kind.parts.end(), more.parts.begin(), more.parts.end());
    kind.quantity += more.quantity;
    kind.name += " and " + more.name;
}

}  // namespace

std::vector<PartKind> kindsOnSheets(const Piece& piece,
                                    const ResolvedPiece& resolved,
                                    const TextMetrics& metrics) {
    std::vector<Drawn> drawn;
    const auto opsOf = [&](Drawn& one) -> const std::vector<Op>& {
        if (one.ops.empty()) {
            one.ops = drawnOf(piece, resolved, one.kind, metrics);
        }
        return one.ops;
    };
    for (PartKind& kind : partKinds(resolved)) {
        const ResolvedPart& part = resolved.parts[kind.parts.front()];
        Drawn next{std::move(kind), materialText(piece, part), {}};
        const auto same = std::find_if(drawn.begin(), drawn.end(), [&](Drawn& one) {
            return one.material == next.material &&
                   one.kind.hasMirrorTwins == next.kind.hasMirrorTwins &&
                   mayBeAlike(resolved.parts[one.kind.parts.front()], part) &&
                   Sameness::of(opsOf(one), opsOf(next));
        });
        if (same == drawn.end()) {
            drawn.push_back(std::move(next));
        } else {
            join(std::move(next.kind), same->kind);
        }
    }
    std::vector<PartKind> kinds;
    for (Drawn& one : drawn) {
        kinds.push_back(std::move(one.kind));
    }
    return kinds;
}

}  // namespace shoulderline
