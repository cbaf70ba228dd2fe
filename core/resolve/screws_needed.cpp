#include "core/resolve/screws_needed.h"

#include <algorithm>
#include <cmath>

#include "core/measure/length_text.h"
#include "core/resolve/frames.h"
#include "core/resolve/holes.h"

namespace shoulderline {

namespace {

// The hole that the screws of a joint slip through, in the part that they hold.
const ResolvedCut* clearanceHole(const ResolvedPiece& resolved, std::size_t joint) {
    const ResolvedPart& held = resolved.parts[resolved.joints[joint].tenoned];
    const auto it = std::find_if(held.cuts.begin(), held.cuts.end(), [&](const auto& cut) {
        return cut.joint == joint && cut.kind == CutKind::Bore;
    });
    return it == held.cuts.end() ? nullptr : &*it;
}

// How deep the head lies in the hole that goes with this clearance hole, from the same face of
// the blank; zero where it lies on the wood.
double sunkUnder(const ResolvedPiece& resolved, std::size_t joint, const ResolvedCut& clearance) {
    const Size* plug = resolved.joints[joint].size(SizeName::PlugDiameter);
    const int into = inwardOf(clearance.face).axis;
    if (plug == nullptr) {
        return 0.0;
    }
    for (const ResolvedCut& cut : resolved.parts[resolved.joints[joint].tenoned].cuts) {
        Vec3 off = cut.box.centre() - clearance.box.centre();
        off[into] = 0.0;
        const double wide = cut.box.size()[(into + 1) % 3];
        if (cut.joint == joint && cut.kind == CutKind::Bore &&
            nearlyEqual(Length::mm(wide), plug->value) && norm(off) <= kLengthTolerance.mm()) {
            return cut.box.size()[into];
        }
    }
    return 0.0;
}

// How far wood goes on in the blank of a part, from its surface at `at` on along `way`; both in the
// piece's space.
Length woodOn(const ResolvedPart& part, Vec3 at, Vec3 way) {
    const Vec3 from = part.frame.toLocal(at);
    const Vec3 along = part.frame.toLocal(at + way) - from;
    const Box box = part.bodyBox();
    double least = 1e9;
    for (int axis = 0; axis < 3; ++axis) {
        if (std::abs(along[axis]) > 1e-9) {
            const double end = along[axis] > 0.0 ? box.max[axis] : box.min[axis];
            least = std::min(least, (end - from[axis]) / along[axis]);
        }
    }
    return Length::mm(std::max(0.0, least));
}

class ScrewList {
  public:
    ScrewList(const ResolvedPiece& resolved, bool inInches)
        : resolved_(resolved), inInches_(inInches) {}

    std::vector<NeededScrews> collect() {
        for (std::size_t j = 0; j < resolved_.joints.size(); ++j) {
            addOf(j);
        }
        for (std::size_t p = 0; p < resolved_.parts.size(); ++p) {
            for (const ResolvedCut& cut : resolved_.parts[p].cuts) {
                if (cut.hole && cut.hole->kind == CutKind::ScrewHole && !cut.hole->isForHead) {
                    addThrough(p, *cut.hole);
                }
            }
        }
        return std::move(all_);
    }

  private:
    void addOf(std::size_t j) {
        const std::optional<SoldScrew> screw = screwOf(resolved_, j, inInches_);
        if (!screw) {
            return;
        }
        const ResolvedJoint& joint = resolved_.joints[j];
        const ResolvedPart& into = resolved_.parts[joint.mortised];
        const auto pilots = std::count_if(into.cuts.begin(), into.cuts.end(), [&](const auto& cut) {
            return cut.joint == j && cut.kind == CutKind::Bore;
        });
        NeededScrews& same = alike(
            joint.tenoned, joint.mortised, joint.size(SizeName::Diameter)->value, *screw, true);
        same.quantity += static_cast<int>(pilots);
        same.joints.push_back(j);
        note(joint.tenoned, joint.mortised, same);
    }

    void addThrough(std::size_t part, const ResolvedHole& hole) {
        const std::optional<ScrewedTo> to = screwedTo(resolved_, part, hole);
        if (!to) {
            return;
        }
        const bool isSunk = hole.head == ScrewHead::Counterbored || hole.head == ScrewHead::Plugged;
        const Length held = hole.depth - (isSunk ? hole.headDepth.value : Length());
        const Frame& frame = resolved_.parts[part].frame;
        const Vec3 way = frame.directionToOuter(hole.into);
        const Length there = woodOn(
            resolved_.parts[to->part], frame.toOuter(hole.mouth) + way * hole.depth.mm(), way);
        const Length wanted = hole.diameter * resolved_.rules[RuleId::ScrewDepth].value;
        const Length most =
            std::max(there - resolved_.rules[RuleId::MortiseFloorLeast].length(), there / 2);
        const SoldScrew screw = soldScrew(hole.diameter, held + std::min(wanted, most), inInches_);
        NeededScrews& same = alike(part, to->part, hole.diameter, screw, false);
        ++same.quantity;
        note(part, to->part, same);
    }

    NeededScrews& alike(
        std::size_t part, std::size_t into, Length diameter, SoldScrew screw, bool ofJoint) {
        const std::string& through = resolved_.parts[part].of;
        const std::string& other = resolved_.parts[into].of;
        const auto it = std::find_if(all_.begin(), all_.end(), [&](const NeededScrews& one) {
            return one.through == through && one.into == other && one.joints.empty() != ofJoint &&
                   one.screw.gauge == screw.gauge && nearlyEqual(one.screw.length, screw.length) &&
                   nearlyEqual(one.diameter, diameter);
        });
        if (it != all_.end()) {
            return *it;
        }
        all_.push_back({through, other, diameter, screw, 0, {}, {}, {}});
        return all_.back();
    }
    static void note(std::size_t part, std::size_t into, NeededScrews& screws) {
        const auto once = [](std::vector<std::size_t>& all, std::size_t one) {
            if (std::find(all.begin(), all.end(), one) == all.end()) {
                all.push_back(one);
            }
        };
        once(screws.parts, part);
        once(screws.held, into);
    }

    const ResolvedPiece& resolved_;
    bool inInches_;
    std::vector<NeededScrews> all_;
};

}  // namespace

std::optional<SoldScrew> screwOf(const ResolvedPiece& resolved, std::size_t joint, bool inInches) {
    const ResolvedJoint& of = resolved.joints[joint];
    const Size* diameter = of.size(SizeName::Diameter);
    const Size* pilot = of.size(SizeName::BoreDepth);
    const ResolvedCut* clearance = clearanceHole(resolved, joint);
    if (of.kind != JointKind::Screwed || diameter == nullptr || pilot == nullptr ||
        clearance == nullptr) {
        return std::nullopt;
    }
    const double held = clearance->box.size()[inwardOf(clearance->face).axis];
    const Length reach = Length::mm(held - sunkUnder(resolved, joint, *clearance)) + pilot->value;
    return soldScrew(diameter->value, reach, inInches);
}

std::vector<NeededScrews> screwsNeeded(const ResolvedPiece& resolved, bool inInches) {
    return ScrewList(resolved, inInches).collect();
}

bool hasGauge(const SoldScrew& screw, const LengthStyle& style) {
    return screw.gauge > 0 && unitOf(style) == Unit::Inch;
}

std::string screwName(const SoldScrew& screw, const LengthStyle& style) {
    return hasGauge(screw, style) ? "screw No. " + std::to_string(screw.gauge) : "screw";
}

std::string screwText(const SoldScrew& screw, Length diameter, const LengthStyle& style) {
    return (hasGauge(screw, style) ? "No. " + std::to_string(screw.gauge)
                                   : letterLength(diameter, style)) +
           " \u00d7 " + letterLength(screw.length, style);
}

}  // namespace shoulderline
