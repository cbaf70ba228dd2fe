#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/joint/size_chain.h"
#include "core/joint/tenon_features.h"

namespace shoulderline {

namespace {

bool hasAny(const JointTask& task, std::initializer_list<JointFeature> features) {
    return std::any_of(features.begin(), features.end(), [&](JointFeature feature) {
        return task.form.has(feature);
    });
}

// Takes off all four edges of the tenon's end by `by`: in one flat, or rounded in `kFacets`.
ConvexSolid eased(const Box& tenon, double by, bool isRounded) {
    constexpr int kFacets = 8;
    ConvexSolid solid = ConvexSolid::box(tenon);
    const int count = isRounded ? kFacets : 1;
    int surface = 0;
    for (const int axis : {1, 2}) {
        for (const double way : {-1.0, 1.0}) {
            const double edge = way > 0 ? tenon.max[axis] : tenon.min[axis];
            for (int i = 0; i < count; ++i) {
                const double turn = (i + 0.5) / count * std::numbers::pi / 2;
                Vec3 normal;
                normal.x = std::cos(turn);
                normal[axis] = way * std::sin(turn);
                // Rounded: touches the arc about the point `by` inside both faces.
                Vec3 on{tenon.max.x - by, tenon.min.y, tenon.min.z};
                on[axis] = edge - (isRounded ? way * by : 0.0);
                const double offset = dot(normal, on) + (isRounded ? by : 0.0);
                if (std::optional<ConvexSolid> cut = solid.clipped(
                        {normal, offset}, isRounded ? surface : ConvexSolid::kOwnSurface)) {
                    solid = std::move(*cut);
                }
            }
            ++surface;
        }
    }
    return solid;
}

// A box with half-round ends along y: what a cutter as wide as the mortise leaves.
ConvexSolid roundEnded(const Box& box) {
    const double radius = (box.max.z - box.min.z) / 2;
    Outline slot;
    slot.vertices = {{{box.max.y - radius, -radius}, 1.0},
                     {{box.max.y - radius, radius}, 0.0},
                     {{box.min.y + radius, radius}, 1.0},
                     {{box.min.y + radius, -radius}, 0.0}};
    const FlatOutline flat = slot.flatten();
    // y along the slot, z across it, x the way in.
    const Frame frame{{0, 0, box.min.z + radius}, {0, 1, 0}, {0, 0, 1}, {1, 0, 0}};
    const std::vector<int> oneSurface(flat.points.size(), 0);
    return ConvexSolid::prism(flat.points, box.min.x, box.max.x, frame, oneSurface);
}

// The slot for the wedge, through the cheeks: flat towards the shoulder, its far side sloping by
// the wedge's taper, wider at the face side.
JointSolid wedgeSlot(const Box& tenon, double from, double width, double thickness, double taper) {
    const double y = (tenon.min.y + tenon.max.y) / 2;
    const double narrower = std::min(taper * (tenon.max.z - tenon.min.z), width / 2);
    JointSolid slot;
    slot.box = {{from, y - thickness / 2, tenon.min.z},
                {from + width, y + thickness / 2, tenon.max.z}};
    // In x and z, seen along y.
    const std::array<Vec2, 4> corners{Vec2{from, tenon.min.z},
                                      Vec2{from + width, tenon.min.z},
                                      Vec2{from + width - narrower, tenon.max.z},
                                      Vec2{from, tenon.max.z}};
    const Frame frame{{}, {1, 0, 0}, {0, 0, 1}, {0, -1, 0}};
    slot.exact = ConvexSolid::prism(corners, -slot.box.max.y, -slot.box.min.y, frame);
    return slot;
}

}  // namespace

Size tuskProjection(const SizingGuide& guide, const StatedSizes& stated, SizedJoint& joint) {
    Size thickness = shareOf(joint.tenon.width.value, RuleId::TuskThickness, guide);
    link(thickness,
         RuleId::ChiselNearest,
         thickness.value,
         {},
         nearestOn(guide.rack, thickness.value));
    state(thickness, stated[SizeName::TuskThickness]);
    Size width = shareOf(thickness.value, RuleId::TuskWidth, guide);
    toGrid(width, snapNearest(width.value, guide.grid), guide.grid);
    state(width, stated[SizeName::TuskWidth]);
    Size beyond = shareOf(thickness.value, RuleId::TuskBeyond, guide);
    toGrid(beyond, snapUp(beyond.value, guide.grid), guide.grid);
    state(beyond, stated[SizeName::TuskBeyond]);
    if (thickness.value >= joint.tenon.width.value - kLengthTolerance) {
        joint.troubles.push_back("the wedge is as thick as the tenon is wide");
    }
    Size length;
    const double out = guide.rules[RuleId::TuskLength].value * 2;
    link(length,
         RuleId::TuskLength,
         joint.tenon.thickness.value,
         width.value,
         joint.tenon.thickness.value + width.value * out);
    toGrid(length, snapUp(length.value, guide.grid), guide.grid);
    state(length, stated[SizeName::TuskLength]);
    Size projection;
    link(projection, RuleId::TuskProjection, width.value, beyond.value, width.value + beyond.value);
    joint.further.push_back({SizeName::TuskThickness, std::move(thickness)});
    joint.further.push_back({SizeName::TuskWidth, std::move(width)});
    joint.further.push_back({SizeName::TuskBeyond, std::move(beyond)});
    joint.further.push_back({SizeName::TuskLength, std::move(length)});
    return projection;
}

void sizeTenonEnd(const JointTask& task,
                  const SizingGuide& guide,
                  const StatedSizes& stated,
                  SizedJoint& joint) {
    if (task.form.has(JointFeature::RoundEnds) &&
        joint.tenon.width.value < joint.tenon.thickness.value + kLengthTolerance) {
        joint.troubles.push_back("the tenon is too narrow for round ends");
    }
    if (!hasAny(task, {JointFeature::ChamferedEnd, JointFeature::RoundedEnd})) {
        return;
    }
    const Length proud = joint.tenon.projection.value;
    Size by;
    const Length usual = onGrid(RuleId::EndEased, guide);
    link(by, RuleId::EndEased, proud, {}, std::min(usual, proud));
    state(by, stated[SizeName::EndEasing]);
    const Length most = std::min(joint.tenon.thickness.value, joint.tenon.width.value) / 2;
    if (proud <= kLengthTolerance) {
        joint.troubles.push_back("an end that is flush is neither chamfered nor rounded");
    } else if (by.value > most || by.value > proud + kLengthTolerance) {
        joint.troubles.push_back("the end is eased by more than there is of it");
    }
    joint.further.push_back({SizeName::EndEasing, std::move(by)});
}

void cutTenonEnds(const JointTask& task,
                  const SizedJoint& sized,
                  const SizingGuide& guide,
                  JointCuts& cuts) {
    const Length by = sized.furtherSize(SizeName::EndEasing);
    const double most =
        std::min(sized.tenon.thickness.value.mm(), sized.tenon.width.value.mm()) / 2;
    const bool areRound = task.form.has(JointFeature::RoundEnds);
    for (std::size_t i = 0; i < cuts.tenons.size(); ++i) {
        JointSolid& tenon = cuts.tenons[i];
        const Box box = tenon.box;
        if (areRound && box.size().y > box.size().z + kLengthTolerance.mm()) {
            tenon.exact = roundEnded(box);
            const Box& mouth = cuts.mortises[i].box;
            if (mouth.size().y > mouth.size().z + kLengthTolerance.mm()) {
                cuts.mortises[i].exact = roundEnded(mouth);
            }
        } else if (by > kLengthTolerance) {
            tenon.exact =
                eased(box, std::min(by.mm(), most), task.form.has(JointFeature::RoundedEnd));
        }
    }
    const double thickness = sized.furtherSize(SizeName::TuskThickness).mm();
    if (task.form.has(JointFeature::Tusked) && thickness > kLengthTolerance.mm()) {
        const double inside = guide.rules[RuleId::TuskInside].length().mm();
        const double outer = task.post.max.x;
        const double width = sized.furtherSize(SizeName::TuskWidth).mm();
        for (const JointSolid& tenon : cuts.tenons) {
            cuts.slots.push_back(wedgeSlot(tenon.box,
                                           outer - inside,
                                           width + inside,
                                           std::min(thickness, tenon.box.size().y * 0.9),
                                           guide.rules[RuleId::TuskTaper].value));
        }
    }
}

}  // namespace shoulderline
