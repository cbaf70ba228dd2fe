#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/part_layout.h"
#include "core/drawing/shelf.h"

namespace shoulderline {

namespace {

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

// Sections take one another's places so that their letters run on; what else there is stays.
// Whether that moves any.
bool orderByLetter(std::vector<PartBlock>& blocks) {
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        if (!blocks[i].letter.empty()) {
            places.push_back(i);
        }
    }
    const auto isBefore = [](const PartBlock& a, const PartBlock& b) {
        return a.letter < b.letter;
    };
    std::vector<PartBlock> lettered;
    for (const std::size_t place : places) {
        lettered.push_back(std::move(blocks[place]));
    }
    const bool isInOrder = std::is_sorted(lettered.begin(), lettered.end(), isBefore);
    std::stable_sort(lettered.begin(), lettered.end(), isBefore);
    for (std::size_t i = 0; i < places.size(); ++i) {
        blocks[places[i]] = std::move(lettered[i]);
    }
    return !isInOrder;
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

// Whether a view of an end, which covers `at`, stands beside the body of a side, `side` on the
// sheet, where the other end belongs.
bool isOnWrongSide(Face end, const Rect& at, const Rect& side, bool isThirdAngle) {
    const bool belongsRight = (end == Face::FarEnd) == isThirdAngle;
    const bool isBeside = at.min.y < side.max.y && side.min.y < at.max.y;
    return isBeside && (belongsRight ? at.min.x < side.max.x : at.max.x > side.min.x);
}

// A way to set blocks out: one after another in that order (indices of blocks), on which sheet each
// comes to lie, and where there.
struct Placed {
    std::size_t sheet = 0;
    Vec2 at;
};
struct SetOut {
    std::vector<std::size_t> order;
    std::vector<Placed> places;  // by block
    std::vector<bool> isTold;    // by block: says on which sheet it is shown
    std::size_t sheets = 0;
};

// The blocks of one part, and where they find room.
class Packing {
  public:
    // `rank`: the order in which the sides stand in projection. The sides come first of the blocks,
    // the face side first of them.
    Packing(std::vector<PartBlock> blocks,
            std::size_t sides,
            std::vector<Face> rank,
            const PackingWay& way,
            const TextMetrics& metrics)
        : sides_(sides), rank_(std::move(rank)), way_(way), metrics_(metrics) {
        for (PartBlock& block : blocks) {
            std::vector<Rect> covers = coversOf(block, metrics);
            plain_.push_back({std::move(block), std::move(covers)});
        }
        told_.resize(plain_.size());
    }

    // On the fewest sheets; of ways that take as many, the plainest. None where one block is larger
    // than the room, or a thrifty way leaves no sides in projection.
    [[nodiscard]] std::optional<std::vector<std::vector<Op>>> pages() {
        std::optional<SetOut> best;
        for (const Gaps& gaps : {Gaps{}, Gaps{6.0, 4.0}}) {
            gaps_ = gaps;
            for (const Sorting sorting : {Sorting::AsGiven, Sorting::ByHeight, Sorting::BySize}) {
                std::optional<SetOut> one = setOut(inOrder(sorting));
                if (!one) {
                    return std::nullopt;
                }
                const bool isAllowed = !way_.isThrifty || isInProjection(*one);
                if (isAllowed && (!best || one->sheets < best->sheets)) {
                    best = std::move(one);
                }
                if (!way_.isThrifty || (best && best->sheets == 1)) {
                    return pagesOf(*best);
                }
            }
        }
        return best ? std::optional(pagesOf(*best)) : std::nullopt;
    }

  private:
    enum class Sorting { AsGiven, ByHeight, BySize };
    struct Covered {
        PartBlock block;
        std::vector<Rect> covers;
    };

    // The sides first, then the rest, the largest first where they are sorted.
    [[nodiscard]] std::vector<std::size_t> inOrder(Sorting sorting) const {
        std::vector<std::size_t> order(plain_.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        const auto sizeOf = [&](std::size_t i) {
            const Vec2 size = plain_[i].block.bounds.size();
            return sorting == Sorting::ByHeight ? size.y
                   : sorting == Sorting::BySize ? size.x * size.y
                                                : 0.0;
        };
        std::stable_sort(order.begin() + static_cast<std::ptrdiff_t>(sides_),
                         order.end(),
                         [&](std::size_t a, std::size_t b) { return sizeOf(a) > sizeOf(b); });
        return order;
    }

    // A block as it is where it says on which sheet it is shown, or does not.
    [[nodiscard]] const Covered& blockAs(bool isTold, std::size_t i) {
        if (!isTold) {
            return plain_[i];
        }
        if (!told_[i]) {
            PartBlock block = plain_[i].block;
            addWhereShown(way_.lettering, metrics_, block);
            std::vector<Rect> covers = coversOf(block, metrics_);
            told_[i] = Covered{std::move(block), std::move(covers)};
        }
        return *told_[i];
    }

    // Where the body of a side lies on its sheet, or all of it that is over its notes; none for
    // what is no side.
    [[nodiscard]] std::optional<Rect> sideAt(std::size_t i, Vec2 at) const {
        const PartBlock& block = plain_[i].block;
        const bool isSide =
            !isEnd(block.face) && !block.isSection && !block.isTable && block.bodyHeight > 0.0;
        if (!isSide) {
            return std::nullopt;
        }
        const double top = at.y - block.bounds.min.y;
        return Rect{{at.x, top}, {at.x + block.bounds.size().x, top + block.bodyHeight}};
    }

    // Whether projection does not allow a side or an end there, beside a side that is placed: sides
    // stand over one another in line, ends where they belong.
    [[nodiscard]] bool isInTheWay(std::size_t i,
                                  const Rect& here,
                                  std::size_t placed,
                                  Vec2 at) const {
        const std::optional<Rect> side = sideAt(placed, at);
        if (!side) {
            return false;
        }
        if (const std::optional<Rect> other = sideAt(i, here.min)) {
            constexpr double kInLine = 1e-6;
            return std::abs(other->min.x - side->min.x) > kInLine ||
                   (other->min.y < side->max.y && side->min.y < other->max.y);
        }
        const Face face = plain_[i].block.face;
        return isEnd(face) && isOnWrongSide(face, here, *side, way_.isThirdAngle);
    }

    // The side that a section is marked on or that a table tells of.
    [[nodiscard]] std::optional<std::size_t> viewOf(std::size_t i) const {
        const PartBlock& block = plain_[i].block;
        const Face face = block.isTable ? block.face : Face::FaceSide;
        for (std::size_t k = 0; k < sides_ && (block.isSection || block.isTable); ++k) {
            if (plain_[k].block.face == face) {
                return k;
            }
        }
        return std::nullopt;
    }

    // False where a block is larger than the room.
    [[nodiscard]] bool place(SetOut& out) {
        std::vector<Shelf> shelves;
        out.places.assign(plain_.size(), {});
        std::vector<std::size_t> placed;
        for (const std::size_t i : out.order) {
            const Covered& one = blockAs(out.isTold[i], i);
            const Vec2 size = one.block.bounds.size();
            if (size.x > way_.room.x || size.y > way_.room.y) {
                return false;
            }
            std::size_t sheet = 0;
            const auto mayStand = [&](Vec2 at) {
                return std::none_of(placed.begin(), placed.end(), [&](std::size_t k) {
                    return out.places[k].sheet == sheet &&
                           isInTheWay(i, {at, at + size}, k, out.places[k].at);
                });
            };
            const std::optional<std::size_t> view =
                one.block.isTable ? viewOf(i) : std::optional<std::size_t>();
            std::optional<Vec2> at;
            for (sheet = 0; sheet < shelves.size(); ++sheet) {
                const bool isByIt = view && out.places[*view].sheet == sheet;
                at = shelves[sheet].placeFor(
                    one.covers,
                    isByIt ? sideAt(*view, out.places[*view].at) : std::nullopt,
                    mayStand);
                if (at) {
                    break;
                }
            }
            if (!at) {
                shelves.emplace_back(way_.room, gaps_);
                at = Vec2{};
            }
            shelves[sheet].take(*at, one.covers);
            out.places[i] = {sheet, *at};
            placed.push_back(i);
        }
        out.sheets = shelves.size();
        return true;
    }

    // The sides that share the face side's sheet, in their order in projection.
    [[nodiscard]] std::vector<std::size_t> sidesTogether(const SetOut& out) const {
        std::vector<std::size_t> together;
        for (std::size_t i = 0; i < sides_; ++i) {
            if (out.places[i].sheet == out.places.front().sheet) {
                together.push_back(i);
            }
        }
        const auto rankOf = [&](std::size_t i) {
            return std::find(rank_.begin(), rank_.end(), plain_[i].block.face) - rank_.begin();
        };
        std::sort(together.begin(), together.end(), [&](std::size_t a, std::size_t b) {
            return rankOf(a) < rankOf(b);
        });
        return together;
    }
    [[nodiscard]] bool isInProjection(const SetOut& out) const {
        const std::vector<std::size_t> together = sidesTogether(out);
        return std::is_sorted(together.begin(), together.end(), [&](std::size_t a, std::size_t b) {
            return out.places[a].at.y < out.places[b].at.y;
        });
    }

    // Moves those sides that share the face side's sheet over one another as in projection, where
    // all find room there in that order too.
    void putInProjection(SetOut& out) {
        const std::vector<std::size_t> together = sidesTogether(out);
        SetOut ordered = out;
        ordered.order = together;
        std::copy_if(out.order.begin(),
                     out.order.end(),
                     std::back_inserter(ordered.order),
                     [&](std::size_t i) {
                         return std::find(together.begin(), together.end(), i) == together.end();
                     });
        if (place(ordered) && ordered.sheets <= out.sheets &&
            sidesTogether(ordered).size() == together.size()) {
            out = std::move(ordered);
        }
    }

    // A section on another sheet than its mark, or a table on another than its points, says where
    // these are, which takes room itself.
    [[nodiscard]] std::optional<SetOut> setOut(std::vector<std::size_t> order) {
        SetOut out;
        out.order = std::move(order);
        out.isTold.assign(plain_.size(), false);
        if (!place(out)) {
            return std::nullopt;
        }
        putInProjection(out);
        for (bool hasGrown = true; hasGrown;) {
            hasGrown = false;
            for (std::size_t i = 0; i < plain_.size(); ++i) {
                const std::optional<std::size_t> view = viewOf(i);
                if (!out.isTold[i] && view && out.places[i].sheet != out.places[*view].sheet) {
                    out.isTold[i] = hasGrown = true;
                }
            }
            if (hasGrown && !place(out)) {
                return std::nullopt;
            }
        }
        return out;
    }

    [[nodiscard]] std::vector<std::vector<Op>> pagesOf(const SetOut& out) {
        std::vector<std::vector<Op>> pages(out.sheets);
        for (const std::size_t i : out.order) {
            PartBlock block = blockAs(out.isTold[i], i).block;
            move(block.ops, out.places[i].at - block.bounds.min);
            append(pages[out.places[i].sheet], std::move(block.ops));
        }
        return pages;
    }

    std::vector<Covered> plain_;
    std::vector<std::optional<Covered>> told_;
    std::size_t sides_;
    std::vector<Face> rank_;
    PackingWay way_;
    const TextMetrics& metrics_;
    Gaps gaps_;
};

}  // namespace

std::string pointsOnSheet(Face face) {
    return "points on the " + std::string(wordFor(face)) + ", sheet 000";
}

std::optional<std::vector<std::vector<Op>>> packed(PartDrawingBlocks blocks,
                                                   const PackingWay& way,
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
    std::vector<PartBlock> byLetter = all;
    const bool isReordered = orderByLetter(byLetter);
    auto pages = Packing(std::move(byLetter), sides, rank, way, metrics).pages();
    if (!isReordered || (pages && pages->size() == 1)) {
        return pages;
    }
    auto asGiven = Packing(std::move(all), sides, std::move(rank), way, metrics).pages();
    const bool savesSheets = asGiven && (!pages || asGiven->size() < pages->size());
    return savesSheets ? std::move(asGiven) : std::move(pages);
}

}  // namespace shoulderline
