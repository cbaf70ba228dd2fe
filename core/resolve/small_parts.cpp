#include "core/resolve/small_parts.h"

#include <algorithm>
#include <array>
#include <map>

#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

using Key = std::pair<std::string_view, std::string_view>;

class SmallPartList {
  public:
    SmallPartList(const Piece& piece, const ResolvedPiece& resolved) : resolved_(resolved) {
        for (const JointStatement& statement : piece.joints) {
            if (!statement.stock.empty()) {
                stocks_.emplace(Key{statement.tenoned, statement.mortised}, statement.stock);
            }
        }
    }

    std::vector<SmallPart> collect() {
        countHollows();
        for (std::size_t i = 0; i < resolved_.joints.size(); ++i) {
            index_ = i;
            addOf(resolved_.joints[i]);
        }
        for (std::size_t i = 0; i < resolved_.parts.size(); ++i) {
            addPlugsOf(i);
            addSquarePegsOf(i);
        }
        for (const ResolvedSwing& swing : resolved_.swings) {
            addOf(swing);
        }
        return std::move(all_);
    }

  private:
    // What of one joint is bored and sawn, counted once for all joints.
    struct Hollows {
        int mouths = 0;  // mortises but for those of a haunch
        int bores = 0;   // in the mortised part
        int plugs = 0;
        int kerfs = 0;
        double kerf = 0.0;  // width
        double bore = 0.0;  // depth
        double plug = 0.0;
    };

    void countHollows() {
        hollows_.resize(resolved_.joints.size());
        for (std::size_t p = 0; p < resolved_.parts.size(); ++p) {
            for (const MortiseSolid& mortise : resolved_.parts[p].mortises) {
                const bool isIn = resolved_.joints[mortise.joint].mortised == p;
                hollows_[mortise.joint].mouths += isIn && !mortise.isHaunch ? 1 : 0;
            }
            for (const ResolvedCut& cut : resolved_.parts[p].cuts) {
                if (cut.joint) {
                    count(cut, p, hollows_[*cut.joint]);
                }
            }
        }
    }

    void count(const ResolvedCut& cut, std::size_t part, Hollows& hollows) const {
        const ResolvedJoint& joint = resolved_.joints[*cut.joint];
        const Frame frame = relativeFrame(joint.frame, resolved_.parts[part].frame);
        const Vec3 size =
            (cut.exact ? cut.exact->transformed(frame).bounds() : frame.outerBounds(cut.box))
                .size();
        if (cut.kind == CutKind::Bore && joint.kind == JointKind::Screwed) {
            // The counterbore is the widest in the part that is held.
            const Size* plug = joint.size(SizeName::PlugDiameter);
            if (plug != nullptr && part == joint.tenoned &&
                nearlyEqual(Length::mm(size.y), plug->value)) {
                ++hollows.plugs;
                hollows.plug = std::max(hollows.plug, woodAlong(cut, resolved_.parts[part]));
            }
        } else if (cut.kind == CutKind::Bore && part == joint.mortised) {
            ++hollows.bores;
            hollows.bore = joint.kind == JointKind::Dowelled ? size.x : size.z;
        } else if (cut.kind == CutKind::Notch && part == joint.tenoned &&
                   (cut.face == Face::StartEnd || cut.face == Face::FarEnd)) {
            ++hollows.kerfs;
            hollows.kerf = size.y;
        }
    }

    // How far a counterbore is in wood along its axis, where that is longest: of a part that is
    // shaped it begins in the blank.
    [[nodiscard]] static double woodAlong(const ResolvedCut& cut, const ResolvedPart& part) {
        const int into = inwardOf(cut.face).axis;
        const ConvexSolid hole = cut.exact ? *cut.exact : ConvexSolid::box(cut.box);
        const BodySolids wood = part.wood();
        double least = cut.box.max[into];
        double most = cut.box.min[into];
        for (const ConvexSolid& piece : wood.pieces()) {
            if (const std::optional<ConvexSolid> taken = intersection(hole, piece)) {
                least = std::min(least, taken->bounds().min[into]);
                most = std::max(most, taken->bounds().max[into]);
            }
        }
        return std::max(0.0, most - least);
    }

    // At its thick end: the width stated for it is where it goes into its slot.
    [[nodiscard]] Length widestOfTusk(std::size_t joint) const {
        const std::optional<ConvexSolid> wedge = tuskWedge(resolved_, joint);
        return wedge ? Length::mm(wedge->bounds().size().x)
                     : sizeOf(resolved_.joints[joint], SizeName::TuskWidth);
    }

    [[nodiscard]] static Length sizeOf(const ResolvedJoint& joint, SizeName name) {
        const Size* size = joint.size(name);
        return size != nullptr ? size->value : Length();
    }

    void add(SmallPartKind kind, int quantity, Length length, Length width, Length thickness) {
        const ResolvedJoint& joint = resolved_.joints[index_];
        const ResolvedPart& tenoned = resolved_.parts[joint.tenoned];
        if (quantity <= 0 || length <= kLengthTolerance || thickness <= kLengthTolerance) {
            return;
        }
        const auto stated = stocks_.find(Key{tenoned.of, resolved_.parts[joint.mortised].of});
        SmallPart part{kind,
                       tenoned.of,
                       stated == stocks_.end() ? tenoned.stock : std::string(stated->second),
                       length,
                       width,
                       thickness,
                       0,
                       {},
                       std::nullopt};
        const auto isAlike = [&](const SmallPart& other) {
            return other.kind == part.kind && other.of == part.of && other.stock == part.stock &&
                   nearlyEqual(other.length, part.length) && nearlyEqual(other.width, part.width) &&
                   nearlyEqual(other.thickness, part.thickness);
        };
        auto& of = byPart_[{part.of, static_cast<int>(kind)}];
        auto found =
            std::find_if(of.begin(), of.end(), [&](std::size_t i) { return isAlike(all_[i]); });
        if (found == of.end()) {
            of.push_back(all_.size());
            all_.push_back(std::move(part));
            found = std::prev(of.end());
        }
        SmallPart& same = all_[*found];
        same.quantity += quantity;
        if (same.joints.empty() || same.joints.back() != index_) {
            same.joints.push_back(index_);
        }
    }

    void addOf(const ResolvedJoint& joint) {
        const Hollows& hollows = hollows_[index_];
        const Tenon& tenon = joint.tenon;
        if (joint.kind == JointKind::Loose) {
            add(SmallPartKind::LooseTenon,
                hollows.mouths,
                tenon.length.value * 2,
                tenon.width.value,
                tenon.thickness.value);
        }
        const Length flare = sizeOf(joint, SizeName::WedgeFlare);
        if (joint.has(JointFeature::WedgedOutside) && joint.isThrough()) {
            add(SmallPartKind::Wedge,
                2 * hollows.mouths,
                joint.mortise.depth.value,
                tenon.thickness.value,
                flare);
        }
        add(SmallPartKind::Wedge,
            hollows.kerfs,
            sizeOf(joint, SizeName::KerfDepth),
            tenon.thickness.value,
            Length::mm(hollows.kerf) + flare);
        if (joint.has(JointFeature::Tusked)) {
            add(SmallPartKind::TuskWedge,
                hollows.mouths,
                sizeOf(joint, SizeName::TuskLength),
                widestOfTusk(index_),
                sizeOf(joint, SizeName::TuskThickness));
        }
        addRound(joint, hollows);
    }

    void addRound(const ResolvedJoint& joint, const Hollows& hollows) {
        const auto round = [&](SmallPartKind kind, int quantity, Length length, SizeName diameter) {
            add(kind, quantity, length, sizeOf(joint, diameter), sizeOf(joint, diameter));
        };
        if (joint.kind == JointKind::Dowelled) {
            round(SmallPartKind::Dowel,
                  hollows.bores,
                  Length::mm(2 * hollows.bore) -
                      resolved_.rules[RuleId::MortiseDepthExtra].length() * 2,
                  SizeName::Diameter);
        } else if (joint.has(JointFeature::Pinned) || joint.has(JointFeature::Drawbored)) {
            round(
                SmallPartKind::Pin, hollows.bores, Length::mm(hollows.bore), SizeName::PinDiameter);
        }
        round(SmallPartKind::Plug, hollows.plugs, Length::mm(hollows.plug), SizeName::PlugDiameter);
    }

    void addRound(SmallPartKind kind, std::size_t part, double mm, Length diameter) {
        const ResolvedPart& of = resolved_.parts[part];
        const auto alike = std::find_if(all_.begin(), all_.end(), [&](const SmallPart& one) {
            return one.kind == kind && one.part == part &&
                   nearlyEqual(one.length, Length::mm(mm)) && nearlyEqual(one.width, diameter);
        });
        if (alike != all_.end()) {
            ++alike->quantity;
            return;
        }
        all_.push_back({kind, of.of, of.stock, Length::mm(mm), diameter, diameter, 1, {}, part});
    }

    // Over the screws whose holes the part has by itself.
    void addPlugsOf(std::size_t index) {
        const ResolvedPart& part = resolved_.parts[index];
        for (const ResolvedCut& cut : part.cuts) {
            if (!cut.hole || !cut.hole->isForHead || cut.hole->head != ScrewHead::Plugged) {
                continue;
            }
            const Length diameter = cut.hole->headWidth.value;
            const Length length = cut.hole->headDepth.value;
            const auto alike = std::find_if(all_.begin(), all_.end(), [&](const SmallPart& one) {
                return one.kind == SmallPartKind::Plug && one.part && one.of == part.of &&
                       one.stock == part.stock && nearlyEqual(one.length, length) &&
                       nearlyEqual(one.width, diameter);
            });
            if (alike != all_.end()) {
                ++alike->quantity;
            } else {
                all_.push_back({SmallPartKind::Plug,
                                part.of,
                                part.stock,
                                length,
                                diameter,
                                diameter,
                                1,
                                {},
                                index});
            }
        }
    }

    void addSquarePegsOf(std::size_t index) {
        const ResolvedPart& part = resolved_.parts[index];
        for (const ResolvedCut& cut : part.cuts) {
            if (!cut.peg) {
                continue;
            }
            const Length length = cut.peg->depth + cut.peg->proud;
            const Length side = cut.peg->side;
            const auto alike = std::find_if(all_.begin(), all_.end(), [&](const SmallPart& one) {
                return one.kind == SmallPartKind::SquarePeg && one.of == part.of &&
                       one.stock == part.stock && nearlyEqual(one.length, length) &&
                       nearlyEqual(one.width, side);
            });
            if (alike != all_.end()) {
                ++alike->quantity;
            } else {
                all_.push_back({SmallPartKind::SquarePeg,
                                part.of,
                                part.stock,
                                length,
                                side,
                                side,
                                1,
                                {},
                                index});
            }
        }
    }

    // A pin at either side; one peg in each part that carries the bar, moved from station to
    // station.
    void addOf(const ResolvedSwing& swing) {
        std::array<std::optional<SwingHole>, 2> pins;
        std::map<std::size_t, SwingHole> pegs;  // by what they stand in
        for (const SwingHole& hole : swing.holes) {
            if (hole.station) {
                pegs.emplace(hole.part, hole);
                continue;
            }
            std::optional<SwingHole>& pin = pins[hole.box.centre().x > swing.pivot.x ? 1 : 0];
            const Box before = pin ? pin->box : hole.box;
            pin = hole;
            pin->box = Box::around(before, hole.box);
        }
        for (const std::optional<SwingHole>& pin : pins) {
            if (pin && !swing.leaning.empty()) {
                addRound(SmallPartKind::PivotPin,
                         swing.leaning.front(),
                         pin->box.size().x,
                         pin->diameter);
            }
        }
        const double bar = boundsInSpace(resolved_.parts[swing.bar]).size().z;
        for (const auto& [carrier, hole] : pegs) {
            addRound(SmallPartKind::Peg, swing.bar, hole.box.size().z + bar, hole.diameter);
        }
    }

    const ResolvedPiece& resolved_;
    std::map<Key, std::string_view> stocks_;
    std::vector<Hollows> hollows_;
    std::vector<SmallPart> all_;
    std::map<std::pair<std::string, int>, std::vector<std::size_t>> byPart_;
    std::size_t index_ = 0;
};

}  // namespace

std::string_view wordFor(SmallPartKind kind) {
    switch (kind) {
        case SmallPartKind::LooseTenon:
            return "loose tenon";
        case SmallPartKind::Wedge:
            return "wedge";
        case SmallPartKind::TuskWedge:
            return "wedge of a tusk tenon";
        case SmallPartKind::Pin:
            return "pin";
        case SmallPartKind::Dowel:
            return "dowel";
        case SmallPartKind::Plug:
            return "plug";
        case SmallPartKind::PivotPin:
            return "pivot pin";
        case SmallPartKind::Peg:
            return "peg";
        case SmallPartKind::SquarePeg:
            return "square peg";
    }
    return {};
}

std::optional<ConvexSolid> tuskWedge(const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    const Size* length = joint.size(SizeName::TuskLength);
    const Size* width = joint.size(SizeName::TuskWidth);
    const Size* thickness = joint.size(SizeName::TuskThickness);
    const ResolvedPart& tenoned = resolved.parts[joint.tenoned];
    const auto slot =
        std::find_if(tenoned.cuts.begin(), tenoned.cuts.end(), [index](const ResolvedCut& cut) {
            return cut.joint == index && cut.kind == CutKind::Notch && cut.isThrough;
        });
    if (length == nullptr || width == nullptr || thickness == nullptr ||
        slot == tenoned.cuts.end()) {
        return std::nullopt;
    }
    const Frame frame = relativeFrame(joint.frame, tenoned.frame);
    const Box there =
        slot->exact ? slot->exact->transformed(frame).bounds() : frame.outerBounds(slot->box);
    const double outside = (length->value.mm() - there.size().z) / 2;
    const double taper = resolved.rules[RuleId::TuskTaper].value;
    const double bearing = there.max.x - width->value.mm();
    const auto end = [&](double z) { return there.max.x - taper * (z - there.min.z); };
    const double low = there.min.z - outside;
    const double high = there.max.z + outside;
    if (end(high) <= bearing) {
        return std::nullopt;
    }
    const std::array<Vec2, 4> corners{
        Vec2{bearing, low}, Vec2{end(low), low}, Vec2{end(high), high}, Vec2{bearing, high}};
    const double middle = (there.min.y + there.max.y) / 2;
    const double half = thickness->value.mm() / 2;
    return ConvexSolid::prism(
        corners, -middle - half, -middle + half, {{}, {1, 0, 0}, {0, 0, 1}, {0, -1, 0}});
}

std::vector<SmallPart> smallPartsOf(const Piece& piece, const ResolvedPiece& resolved) {
    return SmallPartList(piece, resolved).collect();
}

}  // namespace shoulderline
