#include "core/resolve/part_set_up.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/measure/length_text.h"
#include "core/resolve/end_words.h"
#include "core/resolve/face_there.h"
#include "core/resolve/frames.h"
#include "core/resolve/holes.h"
#include "core/resolve/lean.h"
#include "core/resolve/pegs.h"
#include "core/resolve/set_out_faces.h"
#include "core/resolve/set_up.h"
#include "core/resolve/tool_text.h"

namespace shoulderline {

namespace {

constexpr double kDeepestRouted = 25.0;  // mm; deeper slots are bored out (common practice)
constexpr double kFewShavings = 1.0;     // mm; an arris eased by no more is quicker planed

class PartSettings {
  public:
    PartSettings(const ResolvedPart& part, const LengthStyle& style) : part_(part), style_(style) {}

    std::vector<PartSetUp> take() {
        // The hole for a screw's head before the one beneath it.
        const auto isForHead = [](const ResolvedCut& cut) {
            return cut.hole && cut.hole->isForHead;
        };
        for (const ResolvedCut& cut : part_.cuts) {
            if (!cut.joint && isForHead(cut)) {
                addHole(cut);
            }
        }
        for (const ResolvedCut& cut : part_.cuts) {
            if (!cut.joint && !isForHead(cut)) {
                cut.kind == CutKind::Bore ? addHole(cut)
                : cut.peg                 ? addPegMortise(cut)
                                          : addGroove(cut);
            }
        }
        for (Open& one : open_) {
            one.setUp.setting += placesText(one) + one.after;
            all_.push_back(std::move(one.setUp));
        }
        for (const ResolvedEasing& easing : part_.easings) {
            addEasing(easing);
        }
        return std::move(all_);
    }

  private:
    // A setting whose places along the part are still being gathered.
    struct Open {
        PartSetUp setUp;
        std::vector<std::string> at;  // "3", or "from 3 to 4"; none of what runs the whole length
        std::string from;             // what the places are measured from
        std::string after;
    };

    [[nodiscard]] std::string shown(double mm) const {
        return letterLength(Length::mm(mm), style_);
    }
    [[nodiscard]] std::string shown(Length length) const { return letterLength(length, style_); }

    [[nodiscard]] std::string placesText(const Open& one) const {
        if (one.at.empty()) {
            return {};
        }
        std::string text = one.at.front().rfind("from", 0) == 0 ? ", " : ", at ";
        for (std::size_t i = 0; i < one.at.size(); ++i) {
            text += i == 0 ? "" : i + 1 == one.at.size() ? " and " : ", ";
            text += one.at[i];
        }
        return text + " from the " + one.from;
    }

    void gather(Open one) {
        const auto alike = std::find_if(open_.begin(), open_.end(), [&](const Open& other) {
            return other.setUp == one.setUp && other.from == one.from && other.after == one.after;
        });
        if (alike == open_.end()) {
            open_.push_back(std::move(one));
        } else if (!one.at.empty()) {
            alike->at.push_back(std::move(one.at.front()));
        }
    }

    void addHole(const ResolvedCut& cut) {
        const CutAxes axes = axesOn(cut.face);
        const Vec3 mouth = cut.hole ? cut.hole->mouth : cut.box.centre();
        const double diameter =
            cut.hole ? cut.hole->diameter.mm() : cut.box.size()[(axes.into + 1) % 3];
        const double depth = cut.hole ? cut.hole->depth.mm() : cut.box.size()[axes.into];
        const bool isTilted = cut.hole && cut.hole->lean.isTilted();
        const bool isSlot = cut.hole && cut.hole->slotLength.value > cut.hole->slotWidth;
        Open one;
        one.setUp.tool = isTilted                            ? RuleId::SetUpTiltedBit
                         : isSlot && depth <= kDeepestRouted ? RuleId::SetUpRouter
                                                             : RuleId::SetUpBit;
        one.setUp.work = holeWork(cut);
        one.setUp.cutter = shown(diameter);
        one.setUp.setting = "centre " + shown(mouth[axes.across]) + " from the " + acrossText(cut) +
                            (cut.isThrough ? throughText(cut) : ", " + shown(depth) + " deep") +
                            (isTilted && !cut.isThrough ? " along it" : "");
        one.at = {shown(mouth[axes.along])};
        one.from = alongReference(part_, cut.face);
        if (isSlot) {
            const double more = (cut.hole->slotLength.value - cut.hole->slotWidth).mm() / 2;
            one.after = (depth <= kDeepestRouted
                             ? "; stops " + shown(more) + " to either side of the centre, "
                             : "; a row of holes, pared out to a slot " +
                                   shown(diameter + 2 * more) + " long over its ends, ") +
                        (cut.hole->slot == SlotWay::Along ? "along" : "across") + " the part";
        }
        if (isTilted) {
            one.after = "; " + tableText(cut.hole->lean, part_, cut.face);
        }
        if (beginsInWaste(part_, cut) || isShapedAwayAt(cut)) {
            one.after += "; before the blank is shaped";
        }
        gather(std::move(one));
    }

    // Whether what a place across is from is gone at the cut; the length of an end is no face of
    // it.
    [[nodiscard]] bool isShapedAwayAt(const ResolvedCut& cut) const {
        const CutAxes axes = axesOn(cut.face);
        return axes.along == 0 &&
               isReferenceShapedAway(part_, axes.across, cut.box.centre()[axes.along]);
    }

    // The face that its place across is from, or the blank's where that is shaped away.
    [[nodiscard]] std::string acrossText(const ResolvedCut& cut) const {
        const CutAxes axes = axesOn(cut.face);
        if (isShapedAwayAt(cut)) {
            return axes.across == 1 ? "blank's edge" : "blank's face";
        }
        return std::string(wordFor(acrossReference(cut.face)));
    }

    void addPegMortise(const ResolvedCut& cut) {
        const CutAxes axes = axesOn(cut.face);
        const Vec3 middle = cut.box.centre();
        Open one;
        one.setUp.tool =
            cut.peg->side.mm() < kLeastHollowChisel ? RuleId::SetUpChisel : RuleId::SetUpMortiser;
        one.setUp.work = std::string(wordFor(cut.kind)) + " in the " +
                         faceWordOn(part_, setOutFace(part_, cut)) +
                         (cut.note.empty() ? "" : " (" + cut.note + ")");
        one.setUp.setting = shown(cut.peg->side) + " square; centre " + shown(middle[axes.across]) +
                            " from the " + std::string(wordFor(acrossReference(cut.face))) +
                            (cut.isThrough ? ", through" : ", " + shown(cut.peg->depth) + " deep");
        one.at = {shown(middle[axes.along])};
        one.from = alongReference(part_, cut.face);
        one.after =
            pinnedBy(part_, cut).empty() ? "" : "; through the tenon too, with the joint together";
        gather(std::move(one));
    }

    // ", through"; of a hole beneath one for a screw's head how much wood that leaves for it.
    [[nodiscard]] std::string throughText(const ResolvedCut& cut) const {
        const bool isBeneath = cut.hole && !cut.hole->isForHead &&
                               cut.hole->head != ScrewHead::Countersunk &&
                               cut.hole->headDepth.value.mm() > 0.0;
        return isBeneath
                   ? ", through the " + shown((cut.hole->depth - cut.hole->headDepth.value).mm()) +
                         " beneath the hole for the head"
                   : ", through";
    }

    [[nodiscard]] std::string holeWork(const ResolvedCut& cut) {
        std::string work = "bore";
        if (cut.hole && cut.hole->kind == CutKind::ScrewHole) {
            work = !cut.hole->isForHead ? std::string(wordFor(CutKind::ScrewHole))
                   : cut.hole->head == ScrewHead::Countersunk ? std::string("countersink")
                   : cut.hole->head == ScrewHead::Plugged ? std::string("counterbore for a plug")
                                                          : std::string("counterbore");
            if (cut.hole->slotLength.value > cut.hole->slotWidth) {
                work = cut.hole->isForHead ? "slotted " + work : "slot for a screw";
            }
        }
        return work + " in the " + faceWordOn(part_, setOutFace(part_, cut)) +
               (cut.note.empty() ? "" : " (" + cut.note + ")");
    }

    void addGroove(const ResolvedCut& cut) {
        const CutAxes axes = axesOn(cut.face);
        const Box body = part_.bodyBox();
        const double slack = kLengthTolerance.mm();
        const bool isNotch = cut.kind == CutKind::Notch;
        const bool isRabbet = cut.kind == CutKind::Rabbet;
        const bool isRightAcross = isNotch && axes.across != 0 &&
                                   cut.box.min[axes.across] <= slack &&
                                   cut.box.max[axes.across] >= body.max[axes.across] - slack;
        const bool isInWaste = beginsInWaste(part_, cut);
        Open one;
        one.setUp.tool = isNotch    ? RuleId::SetUpSaw
                         : isRabbet ? RuleId::SetUpRabbet
                                    : RuleId::SetUpPlough;
        one.setUp.work = std::string(wordFor(cut.kind)) + " in the " +
                         faceWordOn(part_, setOutFace(part_, cut)) +
                         (cut.note.empty() ? "" : " (" + cut.note + ")");
        const std::string wide = shown(cut.box.size()[axes.across]);
        one.setUp.cutter = one.setUp.tool == RuleId::SetUpPlough ? wide : std::string();
        one.setUp.setting =
            (isRightAcross ? std::string("right across the part")
                           : (one.setUp.cutter.empty() ? wide + " wide; " : std::string()) +
                                 fenceText(cut.box, axes.across, isRabbet)) +
            (cut.isThrough ? ", through" : ", " + shown(cut.box.size()[axes.into]) + " deep") +
            (isInWaste && !cut.isThrough ? " from the blank's " + std::string(wordFor(cut.face))
                                         : std::string());
        if (cut.box.min[axes.along] > slack ||
            cut.box.max[axes.along] < body.max[axes.along] - slack) {
            one.at = {"from " + shown(cut.box.min[axes.along]) + " to " +
                      shown(cut.box.max[axes.along])};
            one.from = alongReference(part_, cut.face);
        }
        one.after = isInWaste ? "; before the blank is shaped" : "";
        gather(std::move(one));
    }

    // A rabbet is worked from the edge that it lies along.
    [[nodiscard]] std::string fenceText(const Box& cut, int across, bool isRabbet) const {
        const bool isWidth = across == 1;
        const double slack = kLengthTolerance.mm();
        if (isRabbet && across != 0 && cut.min[across] <= slack) {
            return "along the " + std::string(wordFor(isWidth ? Face::FaceEdge : Face::FaceSide));
        }
        if (isRabbet && across != 0 && cut.max[across] >= part_.bodyBox().max[across] - slack) {
            return "along the " + std::string(wordFor(isWidth ? Face::BackEdge : Face::BackSide));
        }
        return "fence " + shown(cut.min[across]) + " from the " +
               std::string(wordFor(isWidth ? Face::FaceEdge : Face::FaceSide));
    }

    // Whether a bit whose bearing runs along the part's own faces makes it.
    [[nodiscard]] static bool isRouted(const ResolvedEasing& easing) {
        return easing.kind != EasingKind::Pyramid && nearlyEqual(easing.size, easing.second) &&
               easing.size.mm() > kFewShavings;
    }

    [[nodiscard]] static std::string bearingText(Arris at) {
        switch (at) {
            case Arris::FaceSideFaceEdge:
                return "base on the face side, bearing along the face edge";
            case Arris::FaceSideBackEdge:
                return "base on the face side, bearing along the back edge";
            case Arris::BackSideFaceEdge:
                return "base on the back side, bearing along the face edge";
            case Arris::BackSideBackEdge:
                return "base on the back side, bearing along the back edge";
            case Arris::AllAlong:
                return "base on the face side and then on the back side, bearing along both edges";
            case Arris::AroundFaceSide:
                return "base on the face side, bearing around it, across the ends first";
            case Arris::AroundBackSide:
                return "base on the back side, bearing around it, across the ends first";
            case Arris::StartEnd:
            case Arris::FarEnd:
                break;
        }
        return "the part upright, base on its end between blocks, bearing around it";
    }

    // What the two reaches of an easing are gauged on.
    [[nodiscard]] static std::pair<std::string, std::string> gaugedFaces(Arris at) {
        switch (at) {
            case Arris::FaceSideFaceEdge:
                return {"face side", "face edge"};
            case Arris::FaceSideBackEdge:
                return {"face side", "back edge"};
            case Arris::BackSideFaceEdge:
                return {"back side", "face edge"};
            case Arris::BackSideBackEdge:
                return {"back side", "back edge"};
            case Arris::AllAlong:
                return {"face side and the back side", "edges"};
            case Arris::AroundFaceSide:
                return {"face side", "edges and ends"};
            case Arris::AroundBackSide:
                return {"back side", "edges and ends"};
            case Arris::StartEnd:
            case Arris::FarEnd:
                break;
        }
        return {"end", "sides from there"};
    }

    // How the arris is worked to the gauged lines where that is not said by its kind.
    [[nodiscard]] static std::string workedText(EasingKind kind) {
        switch (kind) {
            case EasingKind::RoundOver:
                return ", chamfer to the lines, then round";
            case EasingKind::Cove:
                return ", rabbet within the lines, then hollow to them with a round plane";
            case EasingKind::Chamfer:
            case EasingKind::Pyramid:
                break;
        }
        return {};
    }

    [[nodiscard]] std::string gaugedText(const ResolvedEasing& easing) const {
        if (easing.kind == EasingKind::Pyramid) {
            return "gauge " + shown(easing.size) +
                   " down from the end on all four sides, and plane up to the middle";
        }
        const auto [first, second] = gaugedFaces(easing.at);
        return "gauge " + shown(easing.size) + " on the " + first + " and " + shown(easing.second) +
               " on the " + second + workedText(easing.kind);
    }

    void addEasing(const ResolvedEasing& easing) {
        PartSetUp one;
        one.tool = isRouted(easing) ? RuleId::SetUpEasingRouter : RuleId::SetUpEasingPlane;
        one.work = std::string(wordFor(easing.kind)) + ", " + arrisWordOn(part_, easing.at) +
                   (easing.note.empty() ? "" : " (" + easing.note + ")");
        if (isRouted(easing)) {
            const std::string bit = easing.kind == EasingKind::Chamfer ? "45°"
                                    : easing.kind == EasingKind::Cove
                                        ? "cove bit R " + shown(easing.size)
                                        : "R " + shown(easing.size);
            one.setting = bit + "; lowered " + shown(easing.size) + ", " + bearingText(easing.at);
        } else {
            one.setting = gaugedText(easing);
        }
        const double length = part_.shoulderLength.value.mm();
        if (easing.from || easing.to) {
            one.setting += "; stop blocks";
            one.setting += easing.from ? ", begins " + shown(*easing.from) + " from the " +
                                             placesFromWord(part_, End::Start)
                                       : "";
            one.setting += easing.to ? ", ends " + shown(length - easing.to->mm()) + " from the " +
                                           placesFromWord(part_, End::Far)
                                     : "";
            one.setting += ", run out over " + shown(easing.runOut);
        }
        all_.push_back(std::move(one));
    }

    const ResolvedPart& part_;
    const LengthStyle& style_;
    std::vector<Open> open_;
    std::vector<PartSetUp> all_;
};

}  // namespace

std::vector<PartSetUp> partSetUpsOf(const ResolvedPart& part, const LengthStyle& style) {
    return PartSettings(part, style).take();
}

std::string partSetUpText(const PartSetUp& setUp, const RuleBook& rules) {
    return setUp.work + ": " + toolText(rules, setUp.tool, setUp.cutter) + "; " + setUp.setting;
}

std::vector<std::string> cautionsFor(const std::vector<PartSetUp>& setUps, const RuleBook& rules) {
    std::set<RuleId> tools;
    for (const PartSetUp& one : setUps) {
        tools.insert(one.tool);
    }
    return cautionTexts(rules, tools);
}

}  // namespace shoulderline
