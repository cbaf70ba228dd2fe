#include "core/drawing/part_layout.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"

namespace shoulderline {

namespace {

constexpr double kBetweenViews = 6.0;
constexpr double kBesideViews = 9.0;

// In columns at the right of the drawing, no longer than it is high; or in rows under it, no longer
// than it is wide.
void placeFurther(std::vector<PartBlock> blocks,
                  bool isBelow,
                  const TextMetrics& metrics,
                  std::vector<Op>& ops) {
    const Rect all = boundsOf(ops, metrics);
    Vec2 at = isBelow ? Vec2{all.min.x, all.max.y + kBetweenViews}
                      : Vec2{all.max.x + kBesideViews, all.min.y};
    const Vec2 start = at;
    double across = 0.0;  // of the row or column that is being filled
    for (PartBlock& block : blocks) {
        const Vec2 size = block.bounds.size();
        if (isBelow && at.x > start.x && at.x + size.x > all.max.x) {
            at = {start.x, at.y + across + kBetweenViews};
            across = 0.0;
        }
        if (!isBelow && at.y > start.y && at.y + size.y > all.max.y) {
            at = {at.x + across + kBesideViews, start.y};
            across = 0.0;
        }
        move(block.ops, at - block.bounds.min);
        append(ops, std::move(block.ops));
        across = std::max(across, isBelow ? size.y : size.x);
        (isBelow ? at.x : at.y) += isBelow ? size.x + kBesideViews : size.y + kBetweenViews;
    }
}

// What a block covers, from the corner of its bounds: the view with what stands over and beside it,
// and what hangs under it, which is often narrower.
std::vector<Rect> coversOf(const PartBlock& block, const TextMetrics& metrics) {
    const Rect& all = block.bounds;
    const double split = block.bodyHeight + 1.0;
    if (block.bodyHeight <= 0.0 || split >= all.max.y) {
        return {{{0.0, 0.0}, all.size()}};
    }
    Rect under{{all.max.x, split}, {all.min.x, all.max.y}};
    for (const Op& op : block.ops) {
        if (std::holds_alternative<BeginGroup>(op) || std::holds_alternative<EndGroup>(op)) {
            continue;
        }
        const Rect bounds = boundsOf(std::vector<Op>{op}, metrics);
        if (bounds.max.y > split) {
            under.min.x = std::min(under.min.x, bounds.min.x);
            under.max.x = std::max(under.max.x, bounds.max.x);
        }
    }
    const Rect over{all.min, {all.max.x, split}};
    return {{over.min - all.min, over.max - all.min}, {under.min - all.min, under.max - all.min}};
}

// One sheet's worth of blocks, with room kept clear between them.
class Shelf {
  public:
    explicit Shelf(Vec2 room) : room_(room) {}

    // Where a block finds room and `mayStand` there: the highest place, then the one farthest left.
    template <class MayStand>
    [[nodiscard]] std::optional<Vec2> placeFor(const std::vector<Rect>& covers,
                                               const MayStand& mayStand) const {
        std::optional<Vec2> best;
        for (const double y : corners(&Vec2::y, kBetweenViews)) {
            for (const double x : corners(&Vec2::x, kBesideViews)) {
                const bool isBetter = !best || y < best->y || (y == best->y && x < best->x);
                if (isBetter && isFree(covers, {x, y}) && mayStand(Vec2{x, y})) {
                    best = Vec2{x, y};
                }
            }
        }
        return best;
    }
    void take(Vec2 at, const std::vector<Rect>& covers) {
        for (const Rect& cover : covers) {
            taken_.push_back({at + cover.min, at + cover.max});
        }
    }

  private:
    [[nodiscard]] std::vector<double> corners(double Vec2::*axis, double between) const {
        std::vector<double> places{0.0};
        for (const Rect& rect : taken_) {
            places.push_back(rect.max.*axis + between);
        }
        return places;
    }
    [[nodiscard]] bool isFree(const std::vector<Rect>& covers, Vec2 at) const {
        return std::all_of(covers.begin(), covers.end(), [&](const Rect& cover) {
            return isFree({at + cover.min, at + cover.max});
        });
    }
    [[nodiscard]] bool isFree(const Rect& area) const {
        constexpr double kHair = 1e-9;
        if (area.max.x > room_.x + kHair || area.max.y > room_.y + kHair) {
            return false;
        }
        return std::none_of(taken_.begin(), taken_.end(), [&](const Rect& rect) {
            return area.min.x < rect.max.x + kBesideViews - kHair &&
                   rect.min.x < area.max.x + kBesideViews - kHair &&
                   area.min.y < rect.max.y + kBetweenViews - kHair &&
                   rect.min.y < area.max.y + kBetweenViews - kHair;
        });
    }

    Vec2 room_;
    std::vector<Rect> taken_;
};

}  // namespace

std::string pointsOnSheet(Face face) {
    return "points on the " + std::string(wordFor(face)) + ", sheet 000";
}

std::vector<Op> inProjection(PartDrawingBlocks blocks,
                             SectionPlace place,
                             bool isThirdAngle,
                             const TextMetrics& metrics) {
    std::vector<Op> ops;
    double y = 0.0;
    double middle = 0.0;
    for (PartBlock& block : blocks.sides) {
        const double down = y - block.bounds.min.y;
        if (block.face == Face::FaceSide) {
            middle = down + block.bodyHeight / 2.0;
        }
        move(block.ops, {0.0, down});
        y = down + block.bounds.max.y + kBetweenViews;
        append(ops, std::move(block.ops));
    }
    const Rect stack = boundsOf(ops, metrics);
    for (PartBlock& block : blocks.ends) {
        if (place == SectionPlace::WithEnds && !blocks.further.empty()) {
            blocks.further.push_back(std::move(block));
            continue;
        }
        // Seen from the left: at the left in third angle projection, at the right in first angle.
        const bool atRight = (block.face == Face::FarEnd) == isThirdAngle;
        const double x = atRight ? stack.max.x + kBesideViews - block.bounds.min.x
                                 : stack.min.x - kBesideViews - block.bounds.max.x;
        move(block.ops, {x, middle - block.bodyHeight / 2.0});
        append(ops, std::move(block.ops));
    }
    placeFurther(std::move(blocks.further), place == SectionPlace::Below, metrics, ops);
    return ops;
}

namespace {

// On which sheet each block comes to lie, and where there; none where one is larger than the room.
struct Placed {
    std::size_t sheet = 0;
    Vec2 at;
};

// Whether a view of an end, which covers `at`, stands beside the body of a side, `side` on the
// sheet, where the other end belongs.
bool isOnWrongSide(Face end, const Rect& at, const Rect& side, bool isThirdAngle) {
    const bool belongsRight = (end == Face::FarEnd) == isThirdAngle;
    const bool isBeside = at.min.y < side.max.y && side.min.y < at.max.y;
    return isBeside && (belongsRight ? at.min.x < side.max.x : at.max.x > side.min.x);
}

std::optional<std::vector<Placed>> placesFor(const std::vector<PartBlock>& blocks,
                                             Vec2 room,
                                             bool isThirdAngle,
                                             const TextMetrics& metrics) {
    std::vector<Shelf> shelves;
    std::vector<Placed> places;
    for (const PartBlock& block : blocks) {
        const Vec2 size = block.bounds.size();
        if (size.x > room.x || size.y > room.y) {
            return std::nullopt;
        }
        const std::vector<Rect> covers = coversOf(block, metrics);
        std::optional<Vec2> place;
        std::size_t sheet = 0;
        const auto mayStand = [&](Vec2 at) {
            const Rect here{at, at + size};
            for (std::size_t i = 0; isEnd(block.face) && i < places.size(); ++i) {
                const PartBlock& other = blocks[i];
                const bool isSide = !isEnd(other.face) && !other.isSection && !other.isTable &&
                                    other.bodyHeight > 0.0;
                // What hangs under a side is not beside what stands there.
                const double top = places[i].at.y - other.bounds.min.y;
                const Rect there{{places[i].at.x, top},
                                 {places[i].at.x + other.bounds.size().x, top + other.bodyHeight}};
                if (isSide && places[i].sheet == sheet &&
                    isOnWrongSide(block.face, here, there, isThirdAngle)) {
                    return false;
                }
            }
            return true;
        };
        auto shelf = std::find_if(shelves.begin(), shelves.end(), [&](const Shelf& s) {
            sheet = static_cast<std::size_t>(&s - shelves.data());
            place = s.placeFor(covers, mayStand);
            return place.has_value();
        });
        if (shelf == shelves.end()) {
            shelf = shelves.insert(shelf, Shelf(room));
            place = Vec2{};
        }
        shelf->take(*place, covers);
        places.push_back({static_cast<std::size_t>(shelf - shelves.begin()), *place});
    }
    return places;
}

// How many sheets the places take.
std::size_t sheetsOf(const std::vector<Placed>& places) {
    std::size_t count = 0;
    for (const Placed& place : places) {
        count = std::max(count, place.sheet + 1);
    }
    return count;
}

// Of `blocks`, which begin with the sides, the face side first: those sides that share its sheet
// moved over one another as in projection, in which they stand by `rank`, where all find room
// there in that order too.
void putInProjection(std::vector<PartBlock>& blocks,
                     std::size_t sides,
                     const std::vector<Face>& rank,
                     Vec2 room,
                     bool isThirdAngle,
                     const TextMetrics& metrics) {
    const std::optional<std::vector<Placed>> places =
        placesFor(blocks, room, isThirdAngle, metrics);
    if (!places) {
        return;
    }
    std::vector<std::size_t> together;
    std::vector<std::size_t> others;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        (i < sides && (*places)[i].sheet == places->front().sheet ? together : others).push_back(i);
    }
    const auto rankOf = [&](std::size_t i) {
        return std::find(rank.begin(), rank.end(), blocks[i].face) - rank.begin();
    };
    std::stable_sort(together.begin(), together.end(), [&](std::size_t a, std::size_t b) {
        return rankOf(a) < rankOf(b);
    });
    std::vector<PartBlock> ordered;
    for (const std::vector<std::size_t>* part : {&together, &others}) {
        for (const std::size_t i : *part) {
            ordered.push_back(blocks[i]);
        }
    }
    const std::optional<std::vector<Placed>> now = placesFor(ordered, room, isThirdAngle, metrics);
    const bool isAsGood =
        now && sheetsOf(*now) <= sheetsOf(*places) &&
        std::all_of(now->begin(),
                    now->begin() + static_cast<std::ptrdiff_t>(together.size()),
                    [&](const Placed& place) { return place.sheet == now->front().sheet; });
    if (isAsGood) {
        blocks = std::move(ordered);
    }
}

// Over a block's title, or for a section over the middle of it.
void addWhereShown(double height, const TextMetrics& metrics, PartBlock& block) {
    TextOp words{{0.0, block.bounds.min.y - 0.5 * height},
                 block.isTable ? pointsOnSheet(block.face) : std::string(kMarkedOnSheet),
                 height,
                 Align::Left,
                 false,
                 false};
    const auto* title = std::get_if<TextOp>(&block.ops.back());
    if (!block.isTable && title != nullptr) {
        words.at.x = title->at.x;
        words.align = title->align;
    }
    block.ops.emplace_back(std::move(words));
    block.bounds = boundsOf(block.ops, metrics);
}

}  // namespace

std::optional<std::vector<std::vector<Op>>> packed(PartDrawingBlocks blocks,
                                                   Vec2 room,
                                                   bool isThirdAngle,
                                                   double lettering,
                                                   const TextMetrics& metrics) {
    std::vector<PartBlock> all = std::move(blocks.sides);
    const std::size_t sides = all.size();
    std::vector<Face> rank;
    for (const PartBlock& block : all) {
        rank.push_back(block.face);
    }
    // The face side, with all its marks, on the first sheet.
    std::stable_partition(all.begin(), all.end(), [](const PartBlock& block) {
        return block.face == Face::FaceSide;
    });
    // Sides under one another keep in line whatever stands before them.
    double left = 0.0;
    for (const PartBlock& block : all) {
        left = std::min(left, block.bounds.min.x);
    }
    for (PartBlock& block : all) {
        block.bounds.min.x = left;
    }
    for (std::vector<PartBlock>* more : {&blocks.ends, &blocks.further}) {
        std::move(more->begin(), more->end(), std::back_inserter(all));
    }
    putInProjection(all, sides, rank, room, isThirdAngle, metrics);
    // A section on another sheet than its mark, or a table on another than its points, says where
    // these are, which takes room itself.
    const auto isElsewhere = [&](std::size_t i, const std::vector<Placed>& at) {
        const auto side = std::find_if(all.begin(), all.end(), [&](const PartBlock& block) {
            return block.face == (all[i].isTable ? all[i].face : Face::FaceSide);
        });
        return (all[i].isSection || all[i].isTable) && side != all.end() &&
               at[i].sheet != at[static_cast<std::size_t>(side - all.begin())].sheet;
    };
    std::optional<std::vector<Placed>> places = placesFor(all, room, isThirdAngle, metrics);
    std::vector<bool> isTold(all.size(), false);
    for (bool hasGrown = true; places && hasGrown;) {
        hasGrown = false;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (!isTold[i] && isElsewhere(i, *places)) {
                addWhereShown(lettering, metrics, all[i]);
                isTold[i] = hasGrown = true;
            }
        }
        places = hasGrown ? placesFor(all, room, isThirdAngle, metrics) : places;
    }
    if (!places) {
        return std::nullopt;
    }
    std::vector<std::vector<Op>> pages;
    for (std::size_t i = 0; i < all.size(); ++i) {
        pages.resize(std::max(pages.size(), (*places)[i].sheet + 1));
        move(all[i].ops, (*places)[i].at - all[i].bounds.min);
        append(pages[(*places)[i].sheet], std::move(all[i].ops));
    }
    return pages;
}

}  // namespace shoulderline
