#include "core/drawing/story.h"

#include <algorithm>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/free_space.h"
#include "core/drawing/part_sizing.h"
#include "core/drawing/strips.h"
#include "core/drawing/tiles.h"
#include "core/drawing/title_block.h"
#include "core/resolve/end_plane.h"

namespace shoulderline {

namespace {

constexpr double kLane = 9.0;
constexpr double kStoryHeight = 2.5;
constexpr double kStoryNameHeight = 3.5;
constexpr double kRoundStoryWords = 1.2;  // of lettering from lines beside it
constexpr double kRoundStory = 2.0;

Stroke across(double x, double from, double to) {
    return {{{x, from}, {x, to}}, LineRole::Visible};
}

// The faces that have mortises, one lane each; a strip has one lane at least.
std::vector<Face> lanesOf(const ResolvedPart& part) {
    std::vector<Face> lanes;
    for (const Face face : {Face::FaceSide, Face::FaceEdge, Face::BackSide, Face::BackEdge}) {
        if (std::any_of(part.mortises.begin(), part.mortises.end(), [&](const MortiseSolid& m) {
                return m.face == face;
            })) {
            lanes.push_back(face);
        }
    }
    return lanes;
}

class Strip {
  public:
    Strip(const ResolvedPiece& resolved, const PartKind& kind, const TextMetrics& metrics)
        : resolved_(resolved),
          kind_(kind),
          part_(resolved.parts[kind.parts.front()]),
          metrics_(metrics),
          lanes_(lanesOf(part_)),
          height_(kLane * static_cast<double>(std::max<std::size_t>(1, lanes_.size()))),
          over_(part_.overBox()) {}

    [[nodiscard]] std::vector<Op> make() {
        addEnds();
        for (std::size_t i = 0; i < lanes_.size(); ++i) {
            addMortises(lanes_[i], kLane * static_cast<double>(i));
        }
        FreeSpace space(ops_, metrics_);
        addWords(
            kind_.name + ", " + quantityText(resolved_, kind_), kStoryNameHeight, 0.0, true, space);
        for (std::size_t i = 0; i < lanes_.size(); ++i) {
            addWords(std::string(wordFor(lanes_[i])),
                     kStoryHeight,
                     kLane * static_cast<double>(i),
                     false,
                     space);
        }
        return std::move(ops_);
    }

  private:
    // Words centred over a stretch of the strip, smaller where they would not fit else.
    void label(const std::string& text, double from, double to, double top) {
        const double room = to - from - 2.0 * kRoundStoryWords;
        const FittedText fitted = fitText(text, kStoryHeight, std::max(room, 0.1), metrics_);
        if (fitted.text == text && metrics_.width(text, fitted.height, false) <= room) {
            ops_.push_back(TextOp{{(from + to) / 2.0, top + kLane / 2.0 + fitted.height / 2.0},
                                  fitted.text,
                                  fitted.height,
                                  Align::Centre,
                                  false,
                                  false});
        }
    }

    void addEnds() {
        const Extent body = alongFaceArris(part_);
        for (const double y : {0.0, height_}) {
            ops_.push_back(Stroke{{{over_.min.x, y}, {over_.max.x, y}}, LineRole::Visible});
        }
        ops_.push_back(across(over_.min.x, 0.0, height_));
        ops_.push_back(across(over_.max.x, 0.0, height_));
        if (over_.min.x < 0.0) {
            ops_.push_back(across(body.min, 0.0, height_));
            label("tenon", over_.min.x, body.min, 0.0);
        }
        if (over_.max.x > part_.shoulderLength.value.mm()) {
            ops_.push_back(across(body.max, 0.0, height_));
            label("tenon", body.max, over_.max.x, 0.0);
        }
    }

    void addMortises(Face face, double top) {
        if (top > 0.0) {
            ops_.push_back(
                Stroke{{{0.0, top}, {part_.shoulderLength.value.mm(), top}}, LineRole::Dimension});
        }
        std::vector<const MortiseSolid*> done;
        for (const MortiseSolid& mortise : part_.mortises) {
            // One beside another across the face has the same marks.
            const bool isBeside =
                std::any_of(done.begin(), done.end(), [&](const MortiseSolid* other) {
                    return isSameSize(other->box.min.x, mortise.box.min.x) &&
                           isSameSize(other->box.max.x, mortise.box.max.x);
                });
            if (mortise.face == face && !isBeside) {
                ops_.push_back(BeginGroup{{SubjectKind::Joint, mortise.joint}, "mortise"});
                ops_.push_back(across(mortise.box.min.x, top, top + kLane));
                ops_.push_back(across(mortise.box.max.x, top, top + kLane));
                label(resolved_.parts[resolved_.joints[mortise.joint].tenoned].of,
                      mortise.box.min.x,
                      mortise.box.max.x,
                      top);
                ops_.push_back(EndGroup{});
                done.push_back(&mortise);
            }
        }
    }

    // Where there is room in the lane, from its start on; the part's name else over the strip.
    void addWords(
        const std::string& text, double height, double top, bool isName, FreeSpace& space) {
        const double width = metrics_.width(text, height, isName);
        const double baseline = top + kLane / 2.0 + height / 2.0;
        const double length = part_.shoulderLength.value.mm();
        TextOp words{{0.0, -2.0}, text, height, Align::Left, false, isName};
        bool isPlaced = isName;
        for (double x = kRoundStoryWords; x + width + kRoundStoryWords < length; x += 2.0) {
            const Rect area{{x - kRoundStoryWords, baseline - height - 1.0},
                            {x + width + kRoundStoryWords, baseline + 1.2}};
            if (space.isFree(area)) {
                words.at = {x, baseline};
                isPlaced = true;
                break;
            }
        }
        if (isPlaced) {
            space.take({words}, metrics_);
            ops_.push_back(BeginGroup{{}, std::string(kTitleGroup)});
            ops_.push_back(std::move(words));
            ops_.push_back(EndGroup{});
        }
    }

    const ResolvedPiece& resolved_;
    const PartKind& kind_;
    const ResolvedPart& part_;
    const TextMetrics& metrics_;
    std::vector<Face> lanes_;
    double height_;
    Box over_;
    std::vector<Op> ops_;
};

// Strips on shelves of a sheet as wide as its longest takes tiles, and one tile high.
class StoryPacker {
  public:
    StoryPacker(const Paper& paper, const TileOptions& options)
        : grid_(tileGrid({1.0, 1.0}, paper, options)), overlap_(grid_.overlap) {}

    void add(Sheet strip) {
        Shelf& shelf = shelfFor(strip.size);
        shelf.x = clearOfSeams(shelf.x, strip.size.x);
        move(strip.ops, {shelf.x, shelf.y});
        Packed& packed = packed_[shelf.sheet];
        packed.strips.push_back({{shelf.x, shelf.y}, Vec2{shelf.x, shelf.y} + strip.size});
        shelf.x += strip.size.x + kBetween;
        // As wide as its tiles, so that their seams lie where they are expected.
        packed.drawing.size.x = packed.width;
        ++packed.count;
        packed.drawing.size.y = std::max(packed.drawing.size.y, shelf.y + strip.size.y);
        packed.names += (packed.names.empty() ? "" : "; ") + strip.title;
        packed.drawing.ops.insert(packed.drawing.ops.end(),
                                  std::make_move_iterator(strip.ops.begin()),
                                  std::make_move_iterator(strip.ops.end()));
    }

    struct Packed {
        Sheet drawing;
        std::string names;
        std::vector<Rect> strips;
        int count = 0;
        double width = 0.0;  // of its tiles together
        double used = 0.0;   // height that shelves take
    };
    [[nodiscard]] std::vector<Packed> take() { return std::move(packed_); }

  private:
    static constexpr double kBetween = 3.0;  // mm from one strip to the next

    struct Shelf {
        std::size_t sheet = 0;
        double x = 0.0;
        double y = 0.0;
        double height = 0.0;
    };

    // Where a strip that would go over a seam and need not begins beyond it; else where it would.
    [[nodiscard]] double clearOfSeams(double x, double length) const {
        const double step = grid_.room().x - overlap_;
        const double clear = overlap_ / 2.0;  // as far as a seam may move
        if (length > step - 2.0 * clear) {
            return x;
        }
        for (double seam = step + overlap_ / 2.0; seam < x + length + clear; seam += step) {
            if (x < seam + clear) {
                return seam + clear;
            }
        }
        return x;
    }

    [[nodiscard]] Shelf& shelfFor(Vec2 size) {
        for (Shelf& shelf : shelves_) {
            if (shelf.height >= size.y &&
                clearOfSeams(shelf.x, size.x) + size.x <= packed_[shelf.sheet].width) {
                return shelf;
            }
        }
        std::size_t sheet = 0;
        while (sheet < packed_.size() &&
               (packed_[sheet].used + size.y > grid_.room().y || size.x > packed_[sheet].width)) {
            ++sheet;
        }
        if (sheet == packed_.size()) {
            packed_.emplace_back();
            double width = grid_.room().x;
            while (width < size.x) {
                width += grid_.room().x - overlap_;
            }
            packed_.back().width = width;
            packed_.back().drawing.lines = LineGroup::Fine;
        }
        shelves_.push_back({sheet, 0.0, packed_[sheet].used, size.y});
        packed_[sheet].used += size.y + 1.0;
        return shelves_.back();
    }

    TileGrid grid_;
    double overlap_;
    std::vector<Shelf> shelves_;
    std::vector<Packed> packed_;
};

}  // namespace

Sheet storyStrip(const ResolvedPiece& resolved, const PartKind& kind, const TextMetrics& metrics) {
    Sheet sheet;
    sheet.title = kind.name;
    sheet.lines = LineGroup::Fine;
    sheet.ops = Strip(resolved, kind, metrics).make();
    const Rect bounds = boundsOf(sheet.ops, metrics);
    move(sheet.ops, Vec2{kRoundStory, kRoundStory} - bounds.min);
    sheet.size = bounds.size() + Vec2{2.0 * kRoundStory, 2.0 * kRoundStory};
    return sheet;
}

PrintJob storyJob(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const Paper& paper,
                  const TileOptions& options,
                  const std::string& date,
                  const TextMetrics& metrics) {
    TileOptions held = options;
    held.held = options.held == Held::Either ? Held::Lying : options.held;
    std::vector<Sheet> strips;
    for (const PartKind& kind : partKinds(resolved)) {
        strips.push_back(storyStrip(resolved, kind, metrics));
    }
    std::stable_sort(strips.begin(), strips.end(), [](const Sheet& a, const Sheet& b) {
        return a.size.x > b.size.x;
    });
    StoryPacker packer(paper, held);
    for (Sheet& strip : strips) {
        packer.add(std::move(strip));
    }
    std::vector<FullSizeDrawing> drawings;
    for (StoryPacker::Packed& packed : packer.take()) {
        const std::string name = "story sticks " + std::to_string(drawings.size() + 1);
        packed.drawing.title = name;
        drawings.push_back(
            {std::move(packed.drawing),
             name,
             packed.count == 1 ? "one strip" : std::to_string(packed.count) + " strips",
             packed.names,
             std::move(packed.strips)});
    }
    return tiledJob(
        piece, piece.name + ", story sticks", std::move(drawings), paper, held, date, metrics);
}

}  // namespace shoulderline
