#include <algorithm>
#include <cmath>

#include "core/drawing/sheets.h"

namespace shoulderline {

namespace {

bool same(double a, double b) {
    return std::abs(a - b) <= kLengthTolerance.mm();
}

bool same(const Box& a, const Box& b) {
    for (int i = 0; i < 3; ++i) {
        if (!same(a.min[i], b.min[i]) || !same(a.max[i], b.max[i])) {
            return false;
        }
    }
    return true;
}

// A tenon, a mortise or another cut, by what sets it apart.
struct Cut {
    Box box;
    bool isMortise = false;
    bool isRound = false;
    const ResolvedHole* hole = nullptr;  // as stated
    Length proud = {};                   // of a square peg
};

// Whether two holes differ in nothing that their boxes do not tell.
bool same(const ResolvedHole* a, const ResolvedHole* b) {
    constexpr double kSameWay = 1e-7;
    if (a == nullptr || b == nullptr) {
        return a == b;
    }
    return a->isForHead == b->isForHead && a->head == b->head && a->slot == b->slot &&
           norm(a->into - b->into) < kSameWay && norm(a->mouth - b->mouth) <= kLengthTolerance.mm();
}

std::vector<Cut> cutsOf(const ResolvedPart& part) {
    std::vector<Cut> cuts;
    for (const TenonSolid& tenon : part.tenons) {
        cuts.push_back({tenon.box, false, tenon.exact.has_value()});
    }
    for (const MortiseSolid& mortise : part.mortises) {
        cuts.push_back({mortise.box, true, mortise.exact.has_value()});
    }
    for (const ResolvedCut& cut : part.cuts) {
        cuts.push_back({cut.box,
                        true,
                        cut.kind == CutKind::Bore,
                        cut.hole ? &*cut.hole : nullptr,
                        cut.peg ? cut.peg->proud : Length()});
    }
    return cuts;
}

// Whether both hold the same cuts, in whatever order.
bool same(const std::vector<Cut>& a, const std::vector<Cut>& b) {
    return a.size() == b.size() && std::all_of(a.begin(), a.end(), [&](const Cut& cut) {
               return std::any_of(b.begin(), b.end(), [&](const Cut& other) {
                   return cut.isMortise == other.isMortise && cut.isRound == other.isRound &&
                          same(cut.box, other.box) && same(cut.hole, other.hole) &&
                          nearlyEqual(cut.proud, other.proud);
               });
           });
}

bool same(const Outline& a, const Outline& b) {
    return std::equal(a.vertices.begin(),
                      a.vertices.end(),
                      b.vertices.begin(),
                      b.vertices.end(),
                      [](const OutlineVertex& one, const OutlineVertex& other) {
                          return norm(one.point - other.point) <= kLengthTolerance.mm() &&
                                 std::abs(one.bulge - other.bulge) < 1e-6;
                      });
}

// Planes that differ by less than the tolerance over any part that is made.
bool same(const PlaneCut& a, const PlaneCut& b) {
    return norm(a.keeps.normal - b.keeps.normal) < 1e-7 && same(a.keeps.offset, b.keeps.offset) &&
           a.surface == b.surface;
}

bool same(const std::vector<Easing>& a, const std::vector<Easing>& b) {
    const auto at = [](const std::optional<double>& stop) { return stop.value_or(-1.0); };
    return std::equal(
        a.begin(), a.end(), b.begin(), b.end(), [&](const Easing& one, const Easing& other) {
            return one.profile == other.profile && one.on == other.on && one.with == other.with &&
                   same(one.onReach, other.onReach) && same(one.otherReach, other.otherReach) &&
                   same(at(one.from), at(other.from)) && same(at(one.to), at(other.to)) &&
                   same(one.runOut, other.runOut);
        });
}

bool same(const Body& a, const Body& b) {
    return same(a.face, b.face) && same(a.thickness, b.thickness) &&
           a.edge.has_value() == b.edge.has_value() && (!a.edge || same(*a.edge, *b.edge)) &&
           same(a.easings, b.easings) &&
           std::equal(a.planes.begin(),
                      a.planes.end(),
                      b.planes.begin(),
                      b.planes.end(),
                      [](const PlaneCut& one, const PlaneCut& other) { return same(one, other); });
}

bool isMadeAlike(const ResolvedPart& a, const ResolvedPart& b) {
    return a.of == b.of && a.stock == b.stock && same(a.bodyBox(), b.bodyBox()) &&
           same(a.body, b.body) && same(cutsOf(a), cutsOf(b));
}

Box flipped(const Box& box, const Vec3& size, const bool (&axes)[3]) {
    Box result = box;
    for (int i = 0; i < 3; ++i) {
        if (axes[i]) {
            result.min[i] = size[i] - box.max[i];
            result.max[i] = size[i] - box.min[i];
        }
    }
    return result;
}

// An outline mirrored about the middle of its blank, one way or both.
Outline flipped(const Outline& outline, Vec2 blank, bool inX, bool inY) {
    Outline result = outline;
    for (OutlineVertex& vertex : result.vertices) {
        vertex.point = {inX ? blank.x - vertex.point.x : vertex.point.x,
                        inY ? blank.y - vertex.point.y : vertex.point.y};
    }
    if (inX != inY) {  // it runs the other way round now; an arc bows out of the wood as before
        const std::size_t count = result.vertices.size();
        Outline turned = result;
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t from = count - 1 - i;
            turned.vertices[i] = {result.vertices[from].point,
                                  result.vertices[(from + count - 1) % count].bulge};
        }
        return turned;
    }
    return result;
}

// The same ring, wherever it begins.
bool isSameRing(const Outline& a, const Outline& b) {
    Outline turned = b;
    for (std::size_t i = 0; i < b.vertices.size(); ++i) {
        if (same(a, turned)) {
            return true;
        }
        std::rotate(turned.vertices.begin(), turned.vertices.begin() + 1, turned.vertices.end());
    }
    return false;
}

// Whether the body is the same once mirrored along these axes. `size` is its blank's.
bool isSameFlipped(const Body& body, const Vec3& size, const bool (&axes)[3]) {
    const Vec2 blank{size.x, size.y};
    const bool isFaceSame = isSameRing(body.face, flipped(body.face, blank, axes[0], axes[1]));
    const bool isEdgeSame =
        !body.edge ||
        isSameRing(*body.edge, flipped(*body.edge, {size.x, size.z}, axes[0], axes[2]));
    return isFaceSame && isEdgeSame &&
           std::all_of(body.planes.begin(), body.planes.end(), [&](const PlaneCut& plane) {
               HalfSpace keeps = plane.keeps;
               for (int i = 0; i < 3; ++i) {
                   if (axes[i]) {
                       keeps.offset -= keeps.normal[i] * size[i];
                       keeps.normal[i] = -keeps.normal[i];
                   }
               }
               return std::any_of(
                   body.planes.begin(), body.planes.end(), [&](const PlaneCut& other) {
                       return norm(keeps.normal - other.keeps.normal) < 1e-7 &&
                              same(keeps.offset, other.keeps.offset);
                   });
           });
}

// Whether anything is cut that is not as its box says: out of square, or pointed.
bool hasExactCuts(const ResolvedPart& part) {
    const auto isExact = [](const auto& solid) { return solid.exact.has_value(); };
    return std::any_of(part.tenons.begin(), part.tenons.end(), isExact) ||
           std::any_of(part.mortises.begin(), part.mortises.end(), isExact) ||
           std::any_of(part.cuts.begin(), part.cuts.end(), isExact);
}

// Whether the part is its own mirror image once turned: then left and right are one and the same.
// Tried on its body and cuts, in the four reflections that keep a box.
bool isItsOwnMirrorImage(const ResolvedPart& part) {
    constexpr bool kReflections[4][3] = {
        {true, false, false}, {false, true, false}, {false, false, true}, {true, true, true}};
    const Vec3 size = part.bodyBox().size();
    const bool hasTilted =
        std::any_of(part.cuts.begin(), part.cuts.end(), [](const ResolvedCut& cut) {
            return cut.hole && cut.hole->lean.isTilted();
        });
    if (hasTilted || (!part.body.isBox() && hasExactCuts(part))) {
        return false;
    }
    std::vector<Cut> cuts = cutsOf(part);
    for (Cut& cut : cuts) {
        cut.hole = nullptr;  // of holes that do not tilt the box tells all
    }
    return std::any_of(std::begin(kReflections), std::end(kReflections), [&](const auto& axes) {
        std::vector<Cut> reflected = cuts;
        for (Cut& cut : reflected) {
            cut.box = flipped(cut.box, size, axes);
        }
        return same(reflected, cuts) && (part.body.isBox() || isSameFlipped(part.body, size, axes));
    });
}

// "1", "2 to 5", "1 and 6": the places in their set, ascending; empty where they have none.
std::string numbersText(std::vector<int> numbers) {
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    if (numbers.empty() || numbers.front() <= 0) {
        return {};
    }
    std::vector<std::string> runs;
    for (std::size_t i = 0; i < numbers.size();) {
        std::size_t last = i;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) {
            ++last;
        }
        runs.push_back(std::to_string(numbers[i]));
        if (last > i) {
            runs.back() += (last > i + 1 ? " to " : " and ") + std::to_string(numbers[last]);
        }
        i = last + 1;
    }
    std::string text;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        text += (i == 0 ? "" : i + 1 < runs.size() ? ", " : " and ") + runs[i];
    }
    return text;
}

// Kinds of one stated part, which differ among themselves, get names that do: by their places in
// their set, else by their hand, else by number.
void nameApart(const ResolvedPiece& resolved, std::vector<PartKind>& kinds) {
    std::vector<std::string> stated;
    for (const PartKind& kind : kinds) {
        stated.push_back(kind.name);
    }
    for (std::size_t k = 0; k < kinds.size(); ++k) {
        if (std::count(stated.begin(), stated.end(), stated[k]) < 2) {
            continue;
        }
        std::vector<int> numbers;
        bool isOneHand = true;
        const Hand hand = resolved.parts[kinds[k].parts.front()].hand;
        for (const std::size_t i : kinds[k].parts) {
            numbers.push_back(resolved.parts[i].number);
            isOneHand = isOneHand && resolved.parts[i].hand == hand;
        }
        std::string apart = numbersText(std::move(numbers));
        if (apart.empty() && isOneHand && hand != Hand::None) {
            apart = wordFor(hand);
        }
        if (apart.empty()) {
            const auto before = std::count(
                stated.begin(), stated.begin() + static_cast<std::ptrdiff_t>(k), stated[k]);
            apart = std::to_string(before + 1);
        }
        kinds[k].name += " " + apart;
    }
}

}  // namespace

std::vector<PartKind> partKinds(const ResolvedPiece& resolved) {
    std::vector<PartKind> kinds;
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        const ResolvedPart& part = resolved.parts[i];
        const auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const PartKind& k) {
            return isMadeAlike(resolved.parts[k.parts.front()], part);
        });
        if (kind == kinds.end()) {
            kinds.push_back({{i}, part.of, 1, false});
        } else {
            kind->parts.push_back(i);
            ++kind->quantity;
        }
    }
    for (PartKind& kind : kinds) {
        // The one drawn is one whose length runs to the right.
        std::stable_partition(kind.parts.begin(), kind.parts.end(), [&](std::size_t i) {
            return resolved.parts[i].frame.isRightHanded();
        });
        const bool bothHands = resolved.parts[kind.parts.front()].frame.isRightHanded() !=
                               resolved.parts[kind.parts.back()].frame.isRightHanded();
        kind.hasMirrorTwins = bothHands && !isItsOwnMirrorImage(resolved.parts[kind.parts.front()]);
    }
    nameApart(resolved, kinds);
    return kinds;
}

}  // namespace shoulderline
