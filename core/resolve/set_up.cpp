#include "core/resolve/set_up.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/frames.h"
#include "core/resolve/open_joint_set_up.h"
#include "core/resolve/tenon_set_up.h"

namespace shoulderline {

namespace {

constexpr double kLeastHollowChisel = 6.0;  // mm: hollow chisels begin at 1/4 in or 6 mm

class SetUps {
  public:
    SetUps(const ResolvedPiece& resolved, std::size_t index)
        : resolved_(resolved), index_(index), joint_(resolved.joints[index]) {}

    std::vector<SetUp> take() {
        addMortises();
        addCuts(joint_.mortised);
        for (SetUp& one : tenonSetUpsOf(resolved_, index_)) {
            one.beforeShaping = isBeforeShaping(joint_.tenoned);
            all_.push_back(std::move(one));
        }
        addCuts(joint_.tenoned);
        return std::move(all_);
    }

  private:
    SetUp& add(RuleId tool, std::size_t part, std::string work) {
        SetUp one;
        one.tool = tool;
        one.part = part;
        one.work = std::move(work);
        one.beforeShaping = part == joint_.tenoned && isBeforeShaping(part);
        all_.push_back(std::move(one));
        return all_.back();
    }

    // Of a cut into `face`: the reference face across it, how far the cut lies from there.
    static void setFence(SetUp& one, Face face, const Box& box, bool byMiddle) {
        const int into = inwardOf(face).axis;
        // In an end, across the narrow way of the cut.
        const bool isAcrossWidth = into == 0 && box.size().y < box.size().z;
        const int across = into == 2 || isAcrossWidth ? 1 : 2;
        one.reference = across == 1 ? Face::FaceEdge : Face::FaceSide;
        one.fence = Length::mm(byMiddle ? box.centre()[across] : box.min[across]);
        one.depth = Length::mm(box.size()[into]);
        const int along = into == 0 ? 3 - across : 0;
        one.along = into != 0 ? Face::StartEnd : along == 1 ? Face::FaceEdge : Face::FaceSide;
        one.from = Length::mm(byMiddle ? box.centre()[along] : box.min[along]);
        one.to = Length::mm(byMiddle ? box.centre()[along] : box.max[along]);
    }

    // What runs across the whole part along an end of it is fenced from that end.
    static void fenceFromEnd(SetUp& one, const ResolvedCut& cut, const ResolvedPart& part) {
        const int into = inwardOf(cut.face).axis;
        if (into == 0) {
            return;
        }
        const int across = 3 - into;
        const Box body = part.bodyBox();
        const double slack = kLengthTolerance.mm();
        const bool isWhole =
            cut.box.min[across] <= slack && cut.box.max[across] >= body.max[across] - slack;
        if (!isWhole || cut.box.size().x >= cut.box.size()[across]) {
            return;
        }
        const double fromFar = body.max.x - cut.box.max.x;
        const bool isAtFar = fromFar < cut.box.min.x;
        one.reference = isAtFar ? Face::FarEnd : Face::StartEnd;
        one.fence = Length::mm(std::max(0.0, isAtFar ? fromFar : cut.box.min.x));
        one.cutter = Length::mm(cut.box.size().x);
        one.from = one.to = Length();
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

    // What is cut into a tenon is placed from its shoulder.
    void placeFromShoulder(SetUp& one, const Box& box, std::size_t part, bool isInEnd) const {
        const double length = resolved_.parts[part].shoulderLength.value.mm();
        const double slack = kLengthTolerance.mm();
        const bool isAtFar = box.min.x >= length - slack;
        if (isAtFar || box.max.x <= slack) {
            if (isInEnd) {  // across the whole tenon, as deep as it goes
                one.from = one.to = Length();
                return;
            }
            const Length from = isAtFar ? one.from - Length::mm(length) : -one.to;
            const Length to = isAtFar ? one.to - Length::mm(length) : -one.from;
            one.from = from;
            one.to = to;
            one.fromShoulder = true;
        }
    }

    // The end of a slot that a wedge bears on slopes as the wedge does.
    void setSlope(SetUp& one, const ResolvedCut& cut, std::size_t part) const {
        if (!cut.exact || !one.fromShoulder) {
            return;
        }
        const int into = inwardOf(cut.face).axis;
        const double length = resolved_.parts[part].shoulderLength.value.mm();
        const auto reachAt = [&](double at) {
            double reach = 0.0;
            for (const Vec3& p : cut.exact->vertices()) {
                if (std::abs(p[into] - at) < kLengthTolerance.mm()) {
                    reach = std::max(reach, p.x > length ? p.x - length : -p.x);
                }
            }
            return Length::mm(reach);
        };
        const Length low = reachAt(cut.box.min[into]);
        const Length high = reachAt(cut.box.max[into]);
        if (!nearlyEqual(low, high)) {
            one.slopesTo = std::min(low, high);
            one.isShortAtMouth = (low < high) == (inwardOf(cut.face).way > 0.0);
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

    // Whether the joint is cut in the square blank of a part that is sawn to a taper or a curve.
    [[nodiscard]] bool isBeforeShaping(std::size_t index) const {
        const ResolvedPart& part = resolved_.parts[index];
        const Box blank = part.bodyBox();
        const bool isSawn = part.body.face != Outline::rectangle(blank.max.x, blank.max.y) ||
                            part.body.edge.has_value();
        return isSawn && !part.bend && part.section == SectionForm::Square &&
               (index != joint_.mortised || joint_.mortise.below <= joint_.mortise.depth.value);
    }

    // Whether that face of the blank is one that an outline takes wood from.
    [[nodiscard]] bool isSawnAway(std::size_t index, Face face) const {
        const ResolvedPart& part = resolved_.parts[index];
        const Box blank = part.bodyBox();
        return inwardOf(face).axis == 2
                   ? part.body.edge.has_value()
                   : part.body.face != Outline::rectangle(blank.max.x, blank.max.y);
    }

    [[nodiscard]] RuleId mortisingTool() const {
        if (joint_.has(JointFeature::RoundEnds)) {
            return RuleId::SetUpRouter;
        }
        return joint_.mortise.width.value.mm() < kLeastHollowChisel - 0.4 ? RuleId::SetUpChisel
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
            add(RuleId::SetUpPlough, joint_.mortised, "mortise: the groove makes it");
            return;
        }
        for (const std::size_t part : {joint_.mortised, joint_.tenoned}) {
            for (const MortiseSolid& mortise : resolved_.parts[part].mortises) {
                if (mortise.joint != index_) {
                    continue;
                }
                const bool isRound = joint_.kind == JointKind::Round;
                const bool isOpen =
                    joint_.kind == JointKind::Bridle || joint_.kind == JointKind::Lap;
                const bool isHousing = joint_.kind == JointKind::Housed;
                if (isOpen) {
                    for (SetUp& one : openJointSetUps(resolved_, part, mortise)) {
                        if (std::find(all_.begin(), all_.end(), one) == all_.end()) {
                            all_.push_back(std::move(one));
                        }
                    }
                    continue;
                }
                const bool isSloping = mortise.isHaunch && joint_.has(JointFeature::SlopingHaunch);
                const RuleId tool = isRound     ? RuleId::SetUpBit
                                    : isHousing ? housingTool(mortise)
                                    : isSloping ? RuleId::SetUpChisel
                                                : mortisingTool();
                SetUp& one = add(tool,
                                 part,
                                 mortise.isHaunch ? "mortise for the haunch"
                                 : isRound        ? "bored mortise"
                                 : isHousing      ? "housing"
                                                  : "mortise");
                setFence(one, mortise.face, openBox(mortise), isRound);
                one.fence =
                    one.fence - (part == joint_.mortised ? joint_.mortise.referenceIn : Length());
                one.cutter = joint_.mortise.width.value;
                one.slopesOut = isSloping;
                if (!isRound && !isHousing && !mortise.isHaunch) {
                    setReach(one, mortise, resolved_.parts[part]);
                }
                if (joint_.kind == JointKind::Housed && inwardOf(mortise.face).axis != 0) {
                    fenceHousing(one, openBox(mortise), resolved_.parts[part]);
                }
                const Vec3 mouth = mouthOf(mortise).size();
                one.beforeShaping = isBeforeShaping(part) &&
                                    mouth[inwardOf(mortise.face).axis] < kLengthTolerance.mm();
                // Of what is not a box its depth along the tool, whose table may be tilted.
                const bool isAskew = mortise.exact && !mortise.isHaunch;
                const bool isFaceThere = !one.beforeShaping || !isSawnAway(part, mortise.face);
                if ((isAskew && isFaceThere) ||
                    (joint_.mortise.below > kLengthTolerance && !one.beforeShaping)) {
                    // A bit's stop is set where it touches first: on the crown of a round part.
                    const bool isRoundPart = resolved_.parts[part].section != SectionForm::Square;
                    one.depth = joint_.mortise.depth.value +
                                (isRoundPart ? joint_.mortise.below : Length());
                }
                addParing(mortise, part, one.beforeShaping);
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
        one.beforeShaping = beforeShaping;
    }

    // Of boards that are joined to one another: those that have it.
    [[nodiscard]] std::string whichOf(std::size_t part) const {
        const ResolvedPart& tenoned = resolved_.parts[joint_.tenoned];
        const ResolvedPart& mortised = resolved_.parts[joint_.mortised];
        if (tenoned.stated != mortised.stated || tenoned.number == 0) {
            return {};
        }
        const std::size_t other = part == joint_.tenoned ? joint_.mortised : joint_.tenoned;
        return resolved_.parts[part].number > resolved_.parts[other].number
                   ? ", each board but the first,"
                   : ", each board but the last,";
    }

    void addCuts(std::size_t part) {
        for (const ResolvedCut& cut : resolved_.parts[part].cuts) {
            if (cut.joint != index_) {
                continue;
            }
            const bool isBore = cut.kind == CutKind::Bore;
            if (cut.kind == CutKind::Notch && joint_.kind == JointKind::CrossLap) {
                for (SetUp& one :
                     trenchSetUps(part,
                                  cut.face,
                                  cut.box,
                                  cut.note + " in the " + std::string(wordFor(cut.face)))) {
                    all_.push_back(std::move(one));
                }
                continue;
            }
            const bool isEndCut = cut.face == Face::StartEnd || cut.face == Face::FarEnd;
            RuleId tool = RuleId::SetUpPlough;
            if (isBore) {
                tool = RuleId::SetUpBit;
            } else if (cut.kind == CutKind::Notch) {
                tool = isEndCut ? RuleId::SetUpSaw : RuleId::SetUpChisel;
            }
            SetUp one;
            one.tool = tool;
            one.part = part;
            one.work =
                cut.note.empty() || cut.kind == CutKind::Groove ? wordFor(cut.kind) : cut.note;
            one.work += isEndCut ? "" : whichOf(part) + " in the " + std::string(wordFor(cut.face));
            setFence(one, cut.face, cut.box, isBore);
            placeFromShoulder(one, cut.box, part, isEndCut);
            setSlope(one, cut, part);
            one.beforeShaping = isBore && isBeforeShaping(part) && isSawnAway(part, cut.face);
            const Vec3 size = cut.box.size();
            const int into = inwardOf(cut.face).axis;
            const int across = into == 2 ? 1 : 2;
            one.cutter = tool == RuleId::SetUpSaw
                             ? Length::mm(size.y)  // a kerf across the end of a tenon
                             : Length::mm(isBore ? size[(into + 1) % 3] : size[across]);
            if (cut.kind == CutKind::Rabbet || cut.kind == CutKind::Groove) {
                fenceFromEnd(one, cut, resolved_.parts[part]);
            }
            if (std::find(all_.begin(), all_.end(), one) == all_.end()) {
                all_.push_back(std::move(one));
            }
        }
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
