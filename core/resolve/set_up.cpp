#include "core/resolve/set_up.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/cut_set_up.h"
#include "core/resolve/frames.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/open_joint_set_up.h"
#include "core/resolve/shaping_order.h"
#include "core/resolve/tenon_set_up.h"

namespace shoulderline {

namespace {

class SetUps {
  public:
    SetUps(const ResolvedPiece& resolved, std::size_t index)
        : resolved_(resolved), index_(index), joint_(resolved.joints[index]) {}

    std::vector<SetUp> take() {
        addMortises();
        addAll(cutSetUps(resolved_, index_, joint_.mortised));
        for (SetUp& one : tenonSetUpsOf(resolved_, index_)) {
            one.beforeShaping = isCutBeforeShaping(resolved_, index_, joint_.tenoned);
            all_.push_back(std::move(one));
        }
        addNotch();
        addAll(cutSetUps(resolved_, index_, joint_.tenoned));
        spareLongParts();
        return std::move(all_);
    }

  private:
    void addAll(std::vector<SetUp> some) {
        for (SetUp& one : some) {
            if (std::find(all_.begin(), all_.end(), one) == all_.end()) {
                all_.push_back(std::move(one));
            }
        }
    }

    SetUp& add(RuleId tool, std::size_t part, std::string work) {
        SetUp one;
        one.tool = tool;
        one.part = part;
        one.work = std::move(work);
        one.beforeShaping = part == joint_.tenoned && isCutBeforeShaping(resolved_, index_, part);
        all_.push_back(std::move(one));
        return all_.back();
    }

    // A housing is cut across the part against a batten, set off from the start end; where it stops
    // short, how far it runs is measured from the face that it runs from.
    static void fenceHousing(SetUp& one, const Box& box, const ResolvedPart& part) {
        const int across = one.reference == Face::FaceEdge ? 1 : 2;
        one.along = one.reference;
        one.reference = Face::StartEnd;
        one.fence = Length::mm(box.min.x);
        one.from = Length::mm(box.min[across]);
        one.to = Length::mm(box.max[across]);
        const double slack = kLengthTolerance.mm();
        if (box.min[across] <= slack && box.max[across] >= part.bodyBox().max[across] - slack) {
            one.from = one.to = Length();
        }
    }

    // As it opens on the face: a wedged one widens behind it.
    [[nodiscard]] static Box openBox(const MortiseSolid& mortise) {
        Box box = mortise.box;
        if (!mortise.exact) {
            return box;
        }
        const Box mouth = mouthOf(mortise);
        const int into = inwardOf(mortise.face).axis;
        for (int axis = 0; axis < 3; ++axis) {
            if (axis != into && mouth.max[axis] - mouth.min[axis] > kLengthTolerance.mm()) {
                box.min[axis] = mouth.min[axis];
                box.max[axis] = mouth.max[axis];
            }
        }
        return box;
    }

    // What a chisel set once against the fence does not make of a mouth: it lies across the part,
    // or turned on its face.
    void setReach(SetUp& one, const MortiseSolid& mortise, const ResolvedPart& part) const {
        const int into = inwardOf(mortise.face).axis;
        if (into == 0) {
            return;
        }
        const int across = 3 - into;
        const double least = kLengthTolerance.mm();
        const Box mouth = mouthOf(mortise);
        const Vec3 way = part.frame.directionToLocal(joint_.frame.y);
        const double turn = std::atan2(way[across] * (way.x < 0.0 ? -1.0 : 1.0), std::abs(way.x));
        constexpr double kWider = 1.25;           // than a leaning chisel opens it
        constexpr double kStraight = 0.0035;      // radians: less cannot be set
        constexpr double kAlongThePart = 0.7854;  // as much along as across
        const bool isPlane = mouth.size()[into] < least;
        if (isPlane && std::abs(turn) > kStraight && std::abs(turn) < kAlongThePart) {
            Vec3 along;
            along.x = std::cos(turn);
            along[across] = std::sin(turn);
            Extent extent{1e18, -1e18};
            for (const Vec3& corner : mouthRing(mortise)) {
                extent.min = std::min(extent.min, dot(corner, along));
                extent.max = std::max(extent.max, dot(corner, along));
            }
            one.turn = Angle::radians(turn);
            one.mouth = Length::mm(extent.max - extent.min);
            one.fence = Length::mm(mouth.centre()[across]);
            one.from = one.to = Length::mm(mouth.centre().x);
        } else if (openBox(mortise).size()[across] > kWider * one.cutter.mm()) {
            one.reach = one.fence + Length::mm(openBox(mortise).size()[across]);
        }
    }

    [[nodiscard]] RuleId mortisingTool() const {
        if (joint_.has(JointFeature::RoundEnds)) {
            return RuleId::SetUpRouter;
        }
        return joint_.mortise.width.value.mm() < kLeastHollowChisel ? RuleId::SetUpChisel
                                                                    : RuleId::SetUpMortiser;
    }

    // A plough runs along the grain only.
    static RuleId housingTool(const MortiseSolid& mortise) {
        const bool isAcrossGrain =
            inwardOf(mortise.face).axis != 0 &&
            mortise.box.size().x < std::max(mortise.box.size().y, mortise.box.size().z);
        return isAcrossGrain ? RuleId::SetUpHousing : RuleId::SetUpPlough;
    }

    void addMortises() {
        if (joint_.kind == JointKind::Stub) {
            add(RuleId::SetUpPlough, joint_.mortised, "mortise: its groove makes it");
            return;
        }
        if (joint_.mortise.width.state == SizeState::AsFound) {
            return;  // it is cut
        }
        for (const std::size_t part : {joint_.mortised, joint_.tenoned}) {
            for (const MortiseSolid& mortise : resolved_.parts[part].mortises) {
                if (mortise.joint != index_) {
                    continue;
                }
                if (joint_.kind == JointKind::Bridle || joint_.kind == JointKind::Lap) {
                    addAll(openJointSetUps(resolved_, part, mortise));
                } else {
                    addMortise(mortise, part);
                }
            }
        }
    }

    [[nodiscard]] RuleId toolFor(const MortiseSolid& mortise, const ResolvedPart& part) const {
        if (joint_.kind == JointKind::Round) {
            return RuleId::SetUpBit;
        }
        if (joint_.kind == JointKind::Housed) {
            return housingTool(mortise);
        }
        if (mortise.isHaunch && joint_.has(JointFeature::SlopingHaunch)) {
            return RuleId::SetUpChisel;
        }
        const bool isInEnd = inwardOf(mortise.face).axis == 0;
        return isInEnd && part.length() > resolved_.rules[RuleId::SetUpEndMortise].length()
                   ? RuleId::SetUpEndMortise
                   : mortisingTool();
    }

    void addMortise(const MortiseSolid& mortise, std::size_t index) {
        const ResolvedPart& part = resolved_.parts[index];
        const bool isRound = joint_.kind == JointKind::Round;
        const bool isHousing = joint_.kind == JointKind::Housed;
        SetUp& one = add(toolFor(mortise, part),
                         index,
                         mortise.isHaunch ? "mortise for the haunch"
                         : isRound        ? "bored mortise"
                         : isHousing      ? "housing"
                                          : "mortise");
        setFence(one, mortise.face, openBox(mortise), isRound);
        one.entered = mortise.face;
        one.fence = one.fence - (index == joint_.mortised ? joint_.mortise.referenceIn : Length());
        one.cutter = joint_.mortise.width.value;
        one.slopesOut = mortise.isHaunch && joint_.has(JointFeature::SlopingHaunch);
        one.isThrough = mortise.isThrough && !mortise.isHaunch;
        if (!isRound && !isHousing && !mortise.isHaunch) {
            setReach(one, mortise, part);
        }
        if (isHousing && inwardOf(mortise.face).axis != 0) {
            fenceHousing(one, openBox(mortise), part);
        }
        const bool isFlat =
            mouthOf(mortise).size()[inwardOf(mortise.face).axis] < kLengthTolerance.mm();
        one.beforeShaping = isCutBeforeShaping(resolved_, index_, index) && isFlat;
        if (index == joint_.mortised && isSawnToShape(part) && !one.beforeShaping) {
            layOnShape(one, part, mortise);
        }
        setDepth(one, mortise, part);
        addParing(mortise, index, one.beforeShaping);
    }

    // Of what is not a box its depth along the tool, whose table may be tilted.
    void setDepth(SetUp& one, const MortiseSolid& mortise, const ResolvedPart& part) const {
        const bool isAskew = mortise.exact && !mortise.isHaunch;
        const bool isAlongTool = isStoppedAlongTool(resolved_, one.part, mortise);
        const bool isFaceThere =
            isAlongTool || !one.beforeShaping || !isSawnAway(part, mortise.face);
        if ((!isAskew || !isFaceThere) &&
            (joint_.mortise.below <= kLengthTolerance || one.beforeShaping)) {
            return;
        }
        // A bit's stop is set where it touches first: on the crown of a round part.
        const bool isRoundPart = part.section != SectionForm::Square;
        one.depth = joint_.mortise.depth.value + (isRoundPart ? joint_.mortise.below : Length());
        one.isLeaning = isAlongTool;
    }

    // What stands in the way of a stopped housing's end is notched off the corner.
    void addNotch() {
        if (joint_.size(SizeName::StoppedBy) == nullptr) {
            return;
        }
        for (const TenonSolid& end : resolved_.parts[joint_.tenoned].tenons) {
            if (end.joint == index_ && end.box.min.y > kLengthTolerance.mm()) {
                SetUp& one = add(RuleId::SetUpSaw,
                                 joint_.tenoned,
                                 "corner notched to pass the end of the housing");
                one.reference = Face::FaceEdge;
                one.fence = Length::mm(end.box.min.y);
                one.depth = Length::mm(end.box.size().x);
            }
        }
    }

    // A long part is not stood on end at a saw bench.
    void spareLongParts() {
        for (SetUp& one : all_) {
            if (one.tool == RuleId::SetUpSaw &&
                resolved_.parts[one.part].length() >
                    resolved_.rules[RuleId::SetUpLongSaw].length()) {
                one.tool = RuleId::SetUpLongSaw;
            }
        }
    }

    // The ends of the mortise that the wedged tenon spreads into.
    void addParing(const MortiseSolid& mortise, std::size_t part, bool beforeShaping) {
        const Size* flare = joint_.size(SizeName::WedgeFlare);
        if (flare == nullptr || flare->value <= kLengthTolerance || mortise.isHaunch) {
            return;
        }
        SetUp& one = add(RuleId::SetUpChisel, part, "ends of the mortise");
        one.pared = flare->value;
        one.isFarFaceOpen = mortise.isThrough;
        one.entered = mortise.isThrough ? oppositeOf(mortise.face) : mortise.face;
        one.beforeShaping = beforeShaping;
    }

    const ResolvedPiece& resolved_;
    std::size_t index_;
    const ResolvedJoint& joint_;
    std::vector<SetUp> all_;
};

}  // namespace

std::vector<SetUp> setUpsOf(const ResolvedPiece& resolved, std::size_t joint) {
    if (resolved.joints[joint].kind == JointKind::Rests) {
        return {};
    }
    return SetUps(resolved, joint).take();
}

}  // namespace shoulderline
