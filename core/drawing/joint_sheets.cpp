#include "core/drawing/joint_sheets.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/joint_drawing.h"
#include "core/drawing/scales.h"
#include "core/drawing/title_block.h"
#include "core/drawing/wrapped_text.h"

namespace shoulderline {

namespace {

constexpr double kBetween = 8.0;
constexpr double kClear = 4.0;
constexpr double kNameHeight = 3.5;
constexpr double kCaptionHeight = 2.5;
constexpr double kNameRows = 11.0;

// A joint with its name over it, its top left corner at (0, 0).
struct Block {
    std::string part;  // the one with the tenon
    std::vector<SetUp> setUps;
    std::vector<Op> ops;
    Vec2 size;
};

std::string nameOf(const ResolvedPiece& resolved, const JointGroup& group) {
    const ResolvedJoint& joint = resolved.joints[group.joints.front()];
    return resolved.parts[joint.tenoned].of + " into " + resolved.parts[joint.mortised].of;
}

// "haunch length 3/8, horn 1"; empty where it has no more sizes than every joint.
std::string furtherSizes(const Piece& piece, const ResolvedJoint& joint) {
    std::string text;
    for (const FurtherSize& further : joint.further) {
        text += text.empty() ? "" : ", ";
        text +=
            std::string(wordFor(further.name)) + " " + showLength(further.size.value, piece.style);
    }
    return text;
}

// "make 2; blind; 1 : 4".
std::string captionOf(const ResolvedPiece& resolved, const JointGroup& group, double scale) {
    const ResolvedJoint& joint = resolved.joints[group.joints.front()];
    return "make " + std::to_string(group.joints.size()) + "; " + joint.form().words() + "; " +
           scaleText(scale);
}

void append(std::vector<Op>& ops, std::vector<Op> more) {
    ops.insert(
        ops.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

constexpr double kOverSetUps = 3.0;

// How the tools are set, in lines at most `width` wide.
std::vector<std::string> setUpLinesWithin(double width,
                                          const Piece& piece,
                                          const ResolvedPiece& resolved,
                                          const JointGroup& group,
                                          const TextMetrics& metrics) {
    std::vector<std::string> lines;
    for (const std::string& one : setUpLines(piece, resolved, group)) {
        for (std::string& line : wrapText(one, width, kCaptionHeight, metrics, "   ")) {
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

// The settings under the drawing, as wide as it is.
void addSetUps(const Piece& piece,
               const ResolvedPiece& resolved,
               const JointGroup& group,
               const TextMetrics& metrics,
               Block& block) {
    constexpr double kLeastWidth = 80.0;
    block.setUps = setUpsOf(resolved, group);
    block.size.x = std::max(block.size.x, kLeastWidth);
    const std::vector<std::string> lines =
        setUpLinesWithin(block.size.x, piece, resolved, group, metrics);
    if (lines.empty()) {
        return;
    }
    std::vector<Op> text = linesOfText(lines, kCaptionHeight);
    move(text, {0.0, block.size.y + kOverSetUps});
    append(block.ops, std::move(text));
    block.size.y += kOverSetUps + heightOfLines(lines.size(), kCaptionHeight) + 1.0;
}

// The settings by themselves, where they find no room under the drawing: as many blocks as they
// take.
std::vector<Block> setUpBlocks(const Piece& piece,
                               const ResolvedPiece& resolved,
                               const JointGroup& group,
                               Vec2 room,
                               const TextMetrics& metrics) {
    std::vector<std::string> lines = setUpLinesWithin(room.x, piece, resolved, group, metrics);
    const double head = kNameHeight + kOverSetUps;
    const double each = kLineOfHeights * kCaptionHeight;
    const auto most = static_cast<std::size_t>(std::max(1.0, (room.y - head - 1.0) / each));
    std::vector<Block> blocks;
    for (std::size_t from = 0; from < lines.size(); from += most) {
        const std::size_t to = std::min(lines.size(), from + most);
        const std::vector<std::string> some(lines.begin() + static_cast<std::ptrdiff_t>(from),
                                            lines.begin() + static_cast<std::ptrdiff_t>(to));
        Block block;
        block.part = resolved.parts[resolved.joints[group.joints.front()].tenoned].of;
        block.setUps = setUpsOf(resolved, group);
        const FittedText name =
            fitText(nameOf(resolved, group) + ": set-ups", kNameHeight, room.x, metrics);
        block.ops.push_back(
            TextOp{{0.0, kNameHeight}, name.text, name.height, Align::Left, false, true});
        std::vector<Op> text = linesOfText(some, kCaptionHeight);
        move(text, {0.0, head});
        append(block.ops, std::move(text));
        block.size = {room.x, head + heightOfLines(some.size(), kCaptionHeight) + 1.0};
        blocks.push_back(std::move(block));
    }
    return blocks;
}

Block blockOf(const Piece& piece,
              const ResolvedPiece& resolved,
              const JointGroup& group,
              double scale,
              bool withSetUps,
              const TextMetrics& metrics) {
    constexpr DimensionStyle kClose{2.5, 7.0, 5.5};
    Sheet drawing = drawJoint(piece, resolved, group.joints.front(), {scale, kClose}, metrics);
    Block block;
    block.part = resolved.parts[resolved.joints[group.joints.front()].tenoned].of;
    const std::string caption = captionOf(resolved, group, scale);
    const std::string further = furtherSizes(piece, resolved.joints[group.joints.front()]);
    const double rows = kNameRows + (further.empty() ? 0.0 : 2.0 + kCaptionHeight);
    block.size = Vec2{std::max({drawing.size.x,
                                metrics.width(caption, kCaptionHeight, false),
                                metrics.width(further, kCaptionHeight, false)}),
                      drawing.size.y + rows};
    const FittedText name = fitText(nameOf(resolved, group), kNameHeight, block.size.x, metrics);
    block.ops.push_back(
        TextOp{{0.0, kNameHeight}, name.text, name.height, Align::Left, false, true});
    block.ops.push_back(TextOp{{0.0, kNameHeight + 2.0 + kCaptionHeight},
                               caption,
                               kCaptionHeight,
                               Align::Left,
                               false,
                               false});
    if (!further.empty()) {
        block.ops.push_back(TextOp{{0.0, kNameHeight + 4.0 + 2.0 * kCaptionHeight},
                                   further,
                                   kCaptionHeight,
                                   Align::Left,
                                   false,
                                   false});
    }
    move(drawing.ops, {0.0, rows});
    append(block.ops, std::move(drawing.ops));
    if (withSetUps) {
        addSetUps(piece, resolved, group, metrics, block);
    }
    return block;
}

// The scales that joints are drawn at: full size, a half, and for pieces in inches a quarter, else
// a fifth; smaller ones only where nothing else goes on the paper.
std::vector<double> jointScales(Unit unit) {
    std::vector<double> scales = standardScales(unit);
    if (unit == Unit::Inch) {
        std::erase_if(scales, [](double scale) { return std::fmod(1.0 / scale, 10.0) == 5.0; });
    }
    return scales;
}

// At the largest scale at which it takes half of the room or less; else as large as it goes in. The
// scale under full size that is still good to read comes first: a quarter or a fifth.
// The settings go under it, unless only the drawing goes in.
std::vector<Block> fittedBlocks(const Piece& piece,
                                const ResolvedPiece& resolved,
                                const JointGroup& group,
                                Vec2 room,
                                const TextMetrics& metrics) {
    constexpr double kGoodToRead = 0.25;
    const Vec2 half = (room - Vec2{kBetween, kBetween}) * 0.5;
    const std::vector<double> scales = jointScales(piece.unit);
    Block block;
    for (const bool withSetUps : {true, false}) {
        for (const bool sharesSheet : {true, false}) {
            for (const double scale : scales) {
                block = blockOf(piece, resolved, group, scale, withSetUps, metrics);
                const bool goesIn = block.size.x <= room.x && block.size.y <= room.y;
                const bool isHalf = block.size.x <= half.x || block.size.y <= half.y;
                const bool isLegible = !withSetUps || scale > kGoodToRead / 4;
                if (goesIn && isLegible && (isHalf || !sharesSheet)) {
                    std::vector<Block> blocks{std::move(block)};
                    if (!withSetUps) {
                        for (Block& text : setUpBlocks(piece, resolved, group, room, metrics)) {
                            blocks.push_back(std::move(text));
                        }
                    }
                    return blocks;
                }
                if (sharesSheet && scale <= kGoodToRead) {
                    break;
                }
            }
        }
    }
    return {std::move(block)};
}

// Blocks on shelves, each on the first that has room for it, the highest first; a new sheet where
// none has.
class Layout {
  public:
    struct Filled {
        std::vector<std::string> parts;
        std::vector<Op> ops;
        std::vector<SetUp> setUps;
    };

    explicit Layout(Vec2 room) : room_(room) {}

    void add(Block block) {
        Shelf& shelf = shelfFor(block.size);
        move(block.ops, {shelf.x, shelf.y});
        shelf.x += block.size.x + kBetween;
        Filled& sheet = sheets_[shelf.sheet];
        if (std::find(sheet.parts.begin(), sheet.parts.end(), block.part) == sheet.parts.end()) {
            sheet.parts.push_back(block.part);
        }
        append(sheet.ops, std::move(block.ops));
        sheet.setUps.insert(sheet.setUps.end(), block.setUps.begin(), block.setUps.end());
    }
    [[nodiscard]] std::vector<Filled> take() { return std::move(sheets_); }

  private:
    struct Shelf {
        std::size_t sheet = 0;
        double x = 0.0;
        double y = 0.0;
        double height = 0.0;
    };

    [[nodiscard]] Shelf& shelfFor(Vec2 size) {
        constexpr double kHair = 1e-9;
        for (Shelf& shelf : shelves_) {
            if (shelf.height >= size.y - kHair && shelf.x + size.x <= room_.x + kHair) {
                return shelf;
            }
        }
        for (std::size_t i = 0; i < used_.size(); ++i) {
            if (used_[i] + size.y <= room_.y + kHair) {
                shelves_.push_back({i, 0.0, used_[i], size.y});
                used_[i] += size.y + kBetween;
                return shelves_.back();
            }
        }
        shelves_.push_back({sheets_.size(), 0.0, 0.0, size.y});
        sheets_.emplace_back();
        used_.push_back(size.y + kBetween);
        return shelves_.back();
    }

    Vec2 room_;
    std::vector<Shelf> shelves_;
    std::vector<double> used_;  // height of each sheet that is taken
    std::vector<Filled> sheets_;
};

Vec2 roomOn(Vec2 paper) {
    return drawingSpace(paper).size() - Vec2{2.0 * kClear, 2.0 * kClear};
}

// What to mind at the tools, at the foot of a sheet.
class Cautions {
  public:
    Cautions(const std::vector<SetUp>& setUps,
             const ResolvedPiece& resolved,
             double width,
             const TextMetrics& metrics) {
        for (const std::string& one : cautionsFor(setUps, resolved.rules)) {
            for (std::string& line : wrapText(one, width, kHeight, metrics, "   ")) {
                lines_.push_back(std::move(line));
            }
        }
    }
    [[nodiscard]] double height() const {
        return lines_.empty() ? 0.0 : kOver + heightOfLines(lines_.size(), kHeight);
    }
    // With its foot at `bottom`.
    [[nodiscard]] std::vector<Op> ops(Vec2 bottom) const {
        std::vector<Op> ops = linesOfText(lines_, kHeight);
        move(ops, bottom - Vec2{0.0, heightOfLines(lines_.size(), kHeight)});
        return ops;
    }

  private:
    static constexpr double kHeight = 1.8;  // as the captions of the title block
    static constexpr double kOver = 4.0;
    std::vector<std::string> lines_;
};

std::vector<Layout::Filled> laidOut(const Piece& piece,
                                    const ResolvedPiece& resolved,
                                    const std::vector<JointGroup>& groups,
                                    Vec2 paper,
                                    const TextMetrics& metrics) {
    Vec2 room = roomOn(paper);
    std::vector<SetUp> setUps;
    for (const JointGroup& group : groups) {
        std::vector<SetUp> some = setUpsOf(resolved, group);
        setUps.insert(setUps.end(), some.begin(), some.end());
    }
    room.y -= Cautions(setUps, resolved, room.x, metrics).height();
    std::vector<Block> blocks;
    for (const JointGroup& group : groups) {
        for (Block& block : fittedBlocks(piece, resolved, group, room, metrics)) {
            blocks.push_back(std::move(block));
        }
    }
    std::stable_sort(blocks.begin(), blocks.end(), [](const Block& a, const Block& b) {
        return a.size.y > b.size.y;
    });
    Layout layout(room);
    for (Block& block : blocks) {
        layout.add(std::move(block));
    }
    return layout.take();
}

Sheet sheetOf(const Piece& piece,
              const ResolvedPiece& resolved,
              Layout::Filled filled,
              std::size_t kinds,
              const SheetFrame& frame,
              const TextMetrics& metrics) {
    Sheet sheet;
    // Three names; what is over is counted, so that the title stays in its block and in the index.
    constexpr std::size_t kNamed = 3;
    const std::size_t over = filled.parts.size() > kNamed + 1 ? filled.parts.size() - kNamed : 0;
    for (std::size_t i = 0; i + over < filled.parts.size(); ++i) {
        sheet.title += (i == 0 ? "joints of " : "; ") + filled.parts[i];
    }
    if (over > 0) {
        sheet.title += " and " + std::to_string(over) + " more";
    }
    TitleBlock block;
    block.title = sheet.title;
    block.piece = piece.name;
    block.quantity = std::to_string(kinds) + (kinds == 1 ? " kind of joint" : " kinds of joint");
    block.material = "see the list of parts";
    block.sizeCaption = "";
    block.units = unitsOf(piece);
    block.scale = "as noted";
    block.date = frame.date;
    block.sheet = sheetNumber(frame);
    block.isThirdAngle = piece.unit == Unit::Inch;
    sheet.size = frame.paper;
    sheet.lines = LineGroup::Medium;
    sheet.ops = frameAndTitle(frame.paper, block, metrics);
    const Rect space = drawingSpace(frame.paper);
    move(filled.ops, space.min + Vec2{kClear, kClear});
    append(sheet.ops, std::move(filled.ops));
    const Cautions cautions(filled.setUps, resolved, roomOn(frame.paper).x, metrics);
    append(sheet.ops, cautions.ops({space.min.x + kClear, space.max.y - kClear}));
    return sheet;
}

}  // namespace

std::vector<Sheet> jointSheets(const Piece& piece,
                               const ResolvedPiece& resolved,
                               const SheetFrame& frame,
                               const TextMetrics& metrics) {
    const std::vector<JointGroup> groups = jointGroups(resolved);
    SheetFrame held = frame;
    std::vector<Layout::Filled> filled = laidOut(piece, resolved, groups, frame.paper, metrics);
    const Vec2 turned{frame.paper.y, frame.paper.x};
    std::vector<Layout::Filled> other = laidOut(piece, resolved, groups, turned, metrics);
    if (other.size() < filled.size()) {
        filled = std::move(other);
        held.paper = turned;
    }
    std::vector<Sheet> sheets;
    for (Layout::Filled& one : filled) {
        sheets.push_back(sheetOf(piece, resolved, std::move(one), groups.size(), held, metrics));
        held.number += held.number > 0 ? 1 : 0;
    }
    return sheets;
}

}  // namespace shoulderline
