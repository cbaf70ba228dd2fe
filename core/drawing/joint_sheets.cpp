#include "core/drawing/joint_sheets.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <map>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/overloaded.h"
#include "core/drawing/title_block.h"
#include "core/measure/number_text.h"

namespace shoulderline {

namespace {

constexpr double kReduced = 2.5 / 3.5;  // lettering of 3.5 mm comes out as 2.5 mm
constexpr double kBetween = 8.0;
constexpr double kClear = 4.0;
constexpr double kNameHeight = 3.5;
constexpr double kNameRow = 8.0;

// What tells joints apart, lengths in thousandths of a millimetre.
using Signature = std::array<long, 12>;

long thousandths(double mm) {
    return std::lround(mm * 1000.0);
}

Signature signatureOf(const ResolvedPiece& resolved,
                      std::size_t index,
                      const std::vector<std::size_t>& kindOf) {
    const ResolvedJoint& joint = resolved.joints[index];
    Vec3 mouth;
    for (const MortiseSolid& mortise : resolved.parts[joint.mortised].mortises) {
        if (mortise.joint == index) {
            mouth = mortise.box.size();
        }
    }
    const Tenon& tenon = joint.tenon;
    return {static_cast<long>(kindOf[joint.tenoned]),
            static_cast<long>(kindOf[joint.mortised]),
            static_cast<long>(joint.kind),
            thousandths(tenon.length.value.mm()),
            thousandths(tenon.width.value.mm()),
            thousandths(tenon.thickness.value.mm()),
            thousandths(tenon.shoulders.faceSide.value.mm()),
            thousandths(tenon.shoulders.faceEdge.value.mm()),
            thousandths(mouth.x),
            thousandths(mouth.y),
            thousandths(mouth.z),
            0};
}

// The drawing reduced to `factor`, the scales in its labels with it.
void reduce(std::vector<Op>& ops, double factor) {
    const auto relabelled = [&](const std::string& text) {
        const std::size_t colon = text.rfind(", 1 : ");
        if (colon == std::string::npos) {
            return text;
        }
        double wood = 1.0;
        std::from_chars(text.data() + colon + 6, text.data() + text.size(), wood);
        return text.substr(0, colon + 6) + showDecimal(wood / factor, 2);
    };
    for (Op& op : ops) {
        std::visit(Overloaded{
                       [&](Stroke& stroke) {
                           for (Vec2& p : stroke.points) {
                               p = p * factor;
                           }
                       },
                       [&](Fill& fill) {
                           for (Vec2& p : fill.points) {
                               p = p * factor;
                           }
                       },
                       [&](ArcOp& arc) {
                           arc.centre = arc.centre * factor;
                           arc.radius *= factor;
                       },
                       [&](TextOp& text) {
                           text.at = text.at * factor;
                           text.height *= factor;
                           text.text = relabelled(text.text);
                       },
                       [&](DimensionOp& d) {
                           for (Vec2* p : {&d.from, &d.to, &d.lineFrom, &d.lineTo, &d.textAt}) {
                               *p = *p * factor;
                           }
                           d.height *= factor;
                       },
                       [](BeginGroup&) {},
                       [](EndGroup&) {},
                   },
                   op);
    }
}

// A joint with its name over it, its top left corner at (0, 0).
struct Block {
    std::string part;  // the one with the tenon
    std::vector<Op> ops;
    Vec2 size;
};

std::string nameOf(const ResolvedPiece& resolved, const JointGroup& group) {
    const ResolvedJoint& joint = resolved.joints[group.joints.front()];
    const std::string name =
        resolved.parts[joint.tenoned].of + " into " + resolved.parts[joint.mortised].of;
    return group.joints.size() == 1 ? name
                                    : name + ", " + std::to_string(group.joints.size()) + " ×";
}

Block blockOf(const Piece& piece,
              const ResolvedPiece& resolved,
              const JointGroup& group,
              Vec2 room,
              const TextMetrics& metrics) {
    Sheet drawing = jointDrawing(piece, resolved, group.joints.front(), metrics);
    const double factor =
        std::min({kReduced, room.x / drawing.size.x, (room.y - kNameRow) / drawing.size.y});
    reduce(drawing.ops, factor);
    Block block;
    block.part = resolved.parts[resolved.joints[group.joints.front()].tenoned].of;
    block.size = drawing.size * factor + Vec2{0.0, kNameRow};
    const FittedText name = fitText(nameOf(resolved, group), kNameHeight, block.size.x, metrics);
    block.ops.push_back(
        TextOp{{0.0, kNameHeight}, name.text, name.height, Align::Left, false, true});
    move(drawing.ops, {0.0, kNameRow});
    block.ops.insert(block.ops.end(),
                     std::make_move_iterator(drawing.ops.begin()),
                     std::make_move_iterator(drawing.ops.end()));
    return block;
}

// Blocks side by side in rows, rows one under another, in their order; a new sheet where one is
// full.
class Layout {
  public:
    struct Filled {
        std::vector<std::string> parts;
        std::vector<Op> ops;
    };

    explicit Layout(Vec2 room) : room_(room) {}

    void add(Block block) {
        if (x_ > 0.0 && x_ + block.size.x > room_.x) {
            y_ += rowHeight_ + kBetween;
            x_ = 0.0;
            rowHeight_ = 0.0;
        }
        if (sheets_.empty() || y_ + block.size.y > room_.y + 1e-9) {
            sheets_.emplace_back();
            x_ = y_ = rowHeight_ = 0.0;
        }
        move(block.ops, {x_, y_});
        Filled& sheet = sheets_.back();
        if (std::find(sheet.parts.begin(), sheet.parts.end(), block.part) == sheet.parts.end()) {
            sheet.parts.push_back(block.part);
        }
        sheet.ops.insert(sheet.ops.end(),
                         std::make_move_iterator(block.ops.begin()),
                         std::make_move_iterator(block.ops.end()));
        x_ += block.size.x + kBetween;
        rowHeight_ = std::max(rowHeight_, block.size.y);
    }
    [[nodiscard]] std::vector<Filled> take() { return std::move(sheets_); }

  private:
    Vec2 room_;
    double x_ = 0.0;
    double y_ = 0.0;
    double rowHeight_ = 0.0;
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
        if (resolved.joints[i].kind == JointKind::Rests) {
            continue;
        }
        const auto found = groupOf.emplace(signatureOf(resolved, i, kindOf), groups.size());
        if (found.second) {
            groups.emplace_back();
        }
        groups[found.first->second].joints.push_back(i);
    }
    return groups;
}

std::vector<Sheet> jointSheets(const Piece& piece,
                               const ResolvedPiece& resolved,
                               const SheetFrame& frame,
                               const TextMetrics& metrics) {
    const Rect space = drawingSpace(frame.paper);
    const Vec2 room = space.size() - Vec2{2.0 * kClear, 2.0 * kClear};
    const std::vector<JointGroup> groups = jointGroups(resolved);
    Layout layout(room);
    for (const JointGroup& group : groups) {
        layout.add(blockOf(piece, resolved, group, room, metrics));
    }
    std::vector<Sheet> sheets;
    for (Layout::Filled& filled : layout.take()) {
        SheetFrame numbered = frame;
        numbered.number += frame.number > 0 ? static_cast<int>(sheets.size()) : 0;
        Sheet sheet;
        for (const std::string& part : filled.parts) {
            sheet.title += (sheet.title.empty() ? "joints of " : "; ") + part;
        }
        TitleBlock block;
        block.title = sheet.title;
        block.piece = piece.name;
        block.quantity = std::to_string(groups.size()) + " kinds of joint";
        block.material = "see the list of parts";
        block.sizeCaption = "";
        block.units = unitsOf(piece);
        block.scale = "as noted";
        block.date = frame.date;
        block.sheet = sheetNumber(numbered);
        block.isThirdAngle = piece.unit == Unit::Inch;
        sheet.size = frame.paper;
        sheet.lines = LineGroup::Medium;
        sheet.ops = frameAndTitle(frame.paper, block, metrics);
        move(filled.ops, space.min + Vec2{kClear, kClear});
        sheet.ops.insert(sheet.ops.end(),
                         std::make_move_iterator(filled.ops.begin()),
                         std::make_move_iterator(filled.ops.end()));
        sheets.push_back(std::move(sheet));
    }
    return sheets;
}

}  // namespace shoulderline
