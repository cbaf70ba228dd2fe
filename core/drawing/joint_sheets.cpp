#include "core/drawing/joint_sheets.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/joint_drawing.h"
#include "core/drawing/scales.h"
#include "core/drawing/title_block.h"

namespace shoulderline {

namespace {

constexpr double kBetween = 8.0;
constexpr double kClear = 4.0;
constexpr double kNameHeight = 3.5;
constexpr double kCaptionHeight = 2.5;
constexpr double kNameRows = 11.0;

// What tells joints apart, lengths in thousandths of a millimetre.
using Signature = std::array<long, 12>;

long thousandths(double mm) {
    return std::lround(mm * 1000.0);
}

// The features of a joint as one number.
long featureBits(const ResolvedJoint& joint) {
    long bits = 0;
    for (const JointFeature feature : joint.features) {
        bits |= 1L << static_cast<int>(feature);
    }
    return bits;
}

Signature signatureOf(const ResolvedPiece& resolved,
                      std::size_t index,
                      const std::vector<std::size_t>& kindOf) {
    const ResolvedJoint& joint = resolved.joints[index];
    Vec3 mouth;
    for (const MortiseSolid& mortise : resolved.parts[joint.mortised].mortises) {
        if (mortise.joint == index && !mortise.isHaunch) {
            mouth = mortise.box.size();
        }
    }
    const Tenon& tenon = joint.tenon;
    return {static_cast<long>(kindOf[joint.tenoned]),
            static_cast<long>(kindOf[joint.mortised]),
            static_cast<long>(joint.kind) + 100 * featureBits(joint),
            thousandths(tenon.length.value.mm()),
            thousandths(tenon.width.value.mm()),
            thousandths(tenon.thickness.value.mm()),
            thousandths(tenon.shoulders.faceSide.value.mm()),
            thousandths(tenon.shoulders.faceEdge.value.mm()),
            thousandths(mouth.x),
            thousandths(mouth.y),
            thousandths(mouth.z),
            joint.further.empty() ? 0 : thousandths(joint.further.front().size.value.mm())};
}

// A joint with its name over it, its top left corner at (0, 0).
struct Block {
    std::string part;  // the one with the tenon
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

Block blockOf(const Piece& piece,
              const ResolvedPiece& resolved,
              const JointGroup& group,
              double scale,
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
    block.ops.insert(block.ops.end(),
                     std::make_move_iterator(drawing.ops.begin()),
                     std::make_move_iterator(drawing.ops.end()));
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
Block fittedBlock(const Piece& piece,
                  const ResolvedPiece& resolved,
                  const JointGroup& group,
                  Vec2 room,
                  const TextMetrics& metrics) {
    constexpr double kGoodToRead = 0.25;
    const Vec2 half = (room - Vec2{kBetween, kBetween}) * 0.5;
    const std::vector<double> scales = jointScales(piece.unit);
    Block block;
    for (const bool sharesSheet : {true, false}) {
        for (const double scale : scales) {
            block = blockOf(piece, resolved, group, scale, metrics);
            const bool goesIn = block.size.x <= room.x && block.size.y <= room.y;
            const bool isHalf = block.size.x <= half.x || block.size.y <= half.y;
            if (goesIn && (isHalf || !sharesSheet)) {
                return block;
            }
            if (sharesSheet && scale <= kGoodToRead) {
                break;
            }
        }
    }
    return block;
}

// Blocks on shelves, each on the first that has room for it, the highest first; a new sheet where
// none has.
class Layout {
  public:
    struct Filled {
        std::vector<std::string> parts;
        std::vector<Op> ops;
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
        sheet.ops.insert(sheet.ops.end(),
                         std::make_move_iterator(block.ops.begin()),
                         std::make_move_iterator(block.ops.end()));
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

}  // namespace

std::vector<JointGroup> jointGroups(const ResolvedPiece& resolved) {
    std::vector<std::size_t> kindOf(resolved.parts.size(), 0);
    const std::vector<PartKind> kinds = partKinds(resolved);
    for (std::size_t k = 0; k < kinds.size(); ++k) {
        for (const std::size_t part : kinds[k].parts) {
            kindOf[part] = k;
        }
    }
    std::vector<JointGroup> groups;
    std::map<Signature, std::size_t> groupOf;
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        if (!joint.hasTenon() && joint.further.empty()) {
            continue;  // nothing is cut
        }
        const auto found = groupOf.emplace(signatureOf(resolved, i, kindOf), groups.size());
        if (found.second) {
            groups.emplace_back();
        }
        groups[found.first->second].joints.push_back(i);
    }
    return groups;
}

namespace {

std::vector<Layout::Filled> laidOut(const Piece& piece,
                                    const ResolvedPiece& resolved,
                                    const std::vector<JointGroup>& groups,
                                    Vec2 paper,
                                    const TextMetrics& metrics) {
    const Vec2 room = drawingSpace(paper).size() - Vec2{2.0 * kClear, 2.0 * kClear};
    std::vector<Block> blocks;
    for (const JointGroup& group : groups) {
        blocks.push_back(fittedBlock(piece, resolved, group, room, metrics));
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
    move(filled.ops, drawingSpace(frame.paper).min + Vec2{kClear, kClear});
    sheet.ops.insert(sheet.ops.end(),
                     std::make_move_iterator(filled.ops.begin()),
                     std::make_move_iterator(filled.ops.end()));
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
        sheets.push_back(sheetOf(piece, std::move(one), groups.size(), held, metrics));
        held.number += held.number > 0 ? 1 : 0;
    }
    return sheets;
}

}  // namespace shoulderline
