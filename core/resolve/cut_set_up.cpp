#include "core/resolve/cut_set_up.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/frames.h"
#include "core/resolve/joined_grooves.h"
#include "core/resolve/open_joint_set_up.h"
#include "core/resolve/set_out_faces.h"
#include "core/resolve/shaping_order.h"

namespace shoulderline {

namespace {

// What runs across the whole part along an end of it is fenced from that end.
void fenceFromEnd(SetUp& one, const ResolvedCut& cut, const ResolvedPart& part) {
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

// What lies along the far edge of the part is worked from there, and what runs its whole length has
// no places along it.
void fenceFromEdge(SetUp& one, const ResolvedCut& cut, const ResolvedPart& part) {
    const int into = inwardOf(cut.face).axis;
    if (into == 0) {
        return;
    }
    const Box body = part.bodyBox();
    const double slack = kLengthTolerance.mm();
    const int across = 3 - into;
    if (cut.kind == CutKind::Rabbet && cut.box.min[across] > slack &&
        cut.box.max[across] >= body.max[across] - slack) {
        one.reference = across == 1 ? Face::BackEdge : Face::BackSide;
        one.fence = Length();
    }
    if (cut.box.min.x <= slack && cut.box.max.x >= body.max.x - slack) {
        one.from = one.to = Length();
    }
}

class CutSetUps {
  public:
    CutSetUps(const ResolvedPiece& resolved, std::size_t index)
        : resolved_(resolved), index_(index), joint_(resolved.joints[index]) {}

    std::vector<SetUp> take(std::size_t part) {
        for (const ResolvedCut& cut : resolved_.parts[part].cuts) {
            if (cut.joint != index_) {
                continue;
            }
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
            SetUp one = setUpOf(asMade(cut, part), part);
            if (std::find(all_.begin(), all_.end(), one) == all_.end()) {
                all_.push_back(std::move(one));
            }
        }
        return std::move(all_);
    }

  private:
    // With what runs on from it: a plough goes through at one setting.
    [[nodiscard]] ResolvedCut asMade(const ResolvedCut& cut, std::size_t part) const {
        ResolvedCut made = cut;
        for (const ResolvedCut& joined : groovesJoined(resolved_.parts[part].cuts)) {
            if (cut.kind == CutKind::Groove && joined.kind == CutKind::Groove &&
                joined.face == cut.face && joined.box.holds(cut.box, kLengthTolerance.mm())) {
                made.box = joined.box;
            }
        }
        return made;
    }

    [[nodiscard]] SetUp setUpOf(const ResolvedCut& cut, std::size_t part) const {
        const bool isBore = cut.kind == CutKind::Bore;
        const bool isEndCut = cut.face == Face::StartEnd || cut.face == Face::FarEnd;
        SetUp one;
        one.tool = toolOf(cut.kind, isEndCut);
        one.part = part;
        one.work = workOf(cut, part, isEndCut);
        setFence(one, cut.face, cut.box, isBore);
        placeFromShoulder(one, cut.box, part, isEndCut);
        setSlope(one, cut, part);
        one.isThrough = cut.isThrough && !isEndCut;
        one.beforeShaping = isBore && isCutBeforeShaping(resolved_, index_, part) &&
                            isSawnAway(resolved_.parts[part], cut.face);
        const Vec3 size = cut.box.size();
        const int into = inwardOf(cut.face).axis;
        const int across = into == 2 ? 1 : 2;
        one.cutter = one.tool == RuleId::SetUpSaw
                         ? Length::mm(size.y)  // a kerf across the end of a tenon
                         : Length::mm(isBore ? size[(into + 1) % 3] : size[across]);
        if (cut.kind == CutKind::Rabbet || cut.kind == CutKind::Groove) {
            fenceFromEdge(one, cut, resolved_.parts[part]);
            fenceFromEnd(one, cut, resolved_.parts[part]);
        }
        return one;
    }

    [[nodiscard]] static RuleId toolOf(CutKind kind, bool isEndCut) {
        if (kind == CutKind::Bore) {
            return RuleId::SetUpBit;
        }
        if (kind == CutKind::Rabbet) {
            return RuleId::SetUpRabbet;
        }
        if (kind == CutKind::Notch) {
            return isEndCut ? RuleId::SetUpSaw : RuleId::SetUpChisel;
        }
        return RuleId::SetUpPlough;
    }

    [[nodiscard]] std::string workOf(const ResolvedCut& cut,
                                     std::size_t part,
                                     bool isEndCut) const {
        const bool isByKind =
            cut.note.empty() || cut.kind == CutKind::Groove || cut.kind == CutKind::Rabbet;
        std::string work(isByKind ? std::string(wordFor(cut.kind)) : cut.note);
        if (!isEndCut) {
            work += whichOf(part) + " in the " +
                    std::string(wordFor(setOutFace(resolved_.parts[part], cut)));
        }
        return cut.kind == CutKind::Rabbet && !cut.note.empty() ? work + ", " + cut.note : work;
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

    const ResolvedPiece& resolved_;
    std::size_t index_;
    const ResolvedJoint& joint_;
    std::vector<SetUp> all_;
};

}  // namespace

void setFence(SetUp& one, Face face, const Box& box, bool byMiddle) {
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

std::vector<SetUp> cutSetUps(const ResolvedPiece& resolved, std::size_t joint, std::size_t part) {
    return CutSetUps(resolved, joint).take(part);
}

}  // namespace shoulderline
