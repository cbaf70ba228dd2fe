#include "core/check/neighbours.h"

#include <algorithm>

#include "core/geometry/box_solids.h"
#include "core/resolve/frames.h"
#include "core/resolve/pegs.h"

namespace shoulderline {

namespace {

constexpr double kTouching = 0.01;  // millimetres

std::vector<Cavity> cavitiesOf(const ResolvedPart& part) {
    std::vector<Cavity> cavities;
    const Box wood = part.bodyBox();
    for (const MortiseSolid& mortise : part.mortises) {
        cavities.push_back({mortise.joint, &mortise, nullptr});
    }
    for (const ResolvedCut& cut : part.cuts) {
        if (overlap(cut.box, wood)) {  // what is cut in a tenon is no hollow of the body
            cavities.push_back({cut.joint, nullptr, &cut});
        }
    }
    return cavities;
}

bool isMitred(const ResolvedPiece& resolved, const Cavity& cavity) {
    return cavity.mortise != nullptr && cavity.joint &&
           resolved.joints[*cavity.joint].has(JointFeature::Mitred);
}

// What stands in two mitred mortises, in the space of the piece.
bool tenonsKeepClear(const ResolvedPiece& resolved, std::size_t a, std::size_t b) {
    const auto solidsOf = [&](std::size_t joint) {
        const ResolvedPart& part = resolved.parts[resolved.joints[joint].tenoned];
        std::vector<ConvexSolid> solids;
        for (const TenonSolid& tenon : part.tenons) {
            if (tenon.joint == joint) {
                solids.push_back(tenon.solid().transformed(part.frame));
            }
        }
        return solids;
    };
    for (const ConvexSolid& one : solidsOf(a)) {
        for (const ConvexSolid& other : solidsOf(b)) {
            if (intersection(one, other)) {
                return false;
            }
        }
    }
    return true;
}

bool isGroove(const ResolvedPiece& resolved, const Cavity& cavity) {
    return cavity.cut != nullptr && !cavity.cut->isSetOutByMiddle() &&
           (!cavity.joint || resolved.joints[*cavity.joint].form().isDry());
}

// A haunch or a stub stands in the groove that it is made for.
bool belongsInGroove(const ResolvedPiece& resolved, const Cavity& mortise, const Cavity& groove) {
    return mortise.mortise != nullptr && isGroove(resolved, groove) &&
           (mortise.mortise->isHaunch || resolved.joints[*mortise.joint].kind == JointKind::Stub);
}

// A mortise that is sunk from the floor of a cut: of a rabbet, of a place cut level for the
// shoulder.
bool opensInFloor(const Cavity& mortise, const Cavity& cut) {
    if (mortise.mortise == nullptr || cut.cut == nullptr || cut.joint ||
        mortise.face() != cut.face() || !cut.isBox()) {
        return false;
    }
    const int into = inwardOf(cut.face()).axis;
    const Box floor = cut.box();
    const Box hollow = mortise.box();
    bool covers = true;
    for (int axis = 0; axis < 3; ++axis) {
        covers = covers && (axis == into || (floor.min[axis] < hollow.min[axis] + kTouching &&
                                             floor.max[axis] > hollow.max[axis] - kTouching));
    }
    return covers;
}

// A rail's mortise begins where the groove of the panel that both its rail and this part hold ends.
bool isOfOneFrame(const ResolvedPiece& resolved, const Cavity& mortise, const Cavity& groove) {
    if (mortise.mortise == nullptr || groove.cut == nullptr || !groove.joint ||
        resolved.joints[*groove.joint].kind != JointKind::Grooved) {
        return false;
    }
    const std::size_t panel = resolved.joints[*groove.joint].tenoned;
    const std::size_t rail = resolved.joints[*mortise.joint].tenoned;
    // The joints of one panel come one after another, those of its twin between them.
    constexpr std::size_t kReach = 8;
    const std::size_t first = *groove.joint > kReach ? *groove.joint - kReach : 0;
    for (std::size_t i = first; i < resolved.joints.size() && i <= *groove.joint + kReach; ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        if (joint.kind == JointKind::Grooved && joint.tenoned == panel && joint.mortised == rail) {
            return true;
        }
    }
    return false;
}

bool isMeantToBe(const ResolvedPiece& resolved, const Cavity& a, const Cavity& b) {
    const auto isGrooved = [&](const Cavity& cavity) {
        return cavity.cut != nullptr && cavity.joint &&
               resolved.joints[*cavity.joint].form().isDry();
    };
    const auto isPinned = [](const Cavity& mortise, const Cavity& peg) {
        return mortise.mortise != nullptr && peg.cut != nullptr &&
               pinsTenon(*peg.cut, *mortise.mortise);
    };
    return isPinned(a, b) || isPinned(b, a) || (a.joint && a.joint == b.joint) ||
           (!a.joint && !b.joint) || (isGrooved(a) && isGrooved(b)) ||
           belongsInGroove(resolved, a, b) || belongsInGroove(resolved, b, a) ||
           opensInFloor(a, b) || opensInFloor(b, a) ||
           (isMitred(resolved, a) && isMitred(resolved, b) &&
            tenonsKeepClear(resolved, *a.joint, *b.joint));
}

// Compares two hollows whose boxes are near one another.
void compare(Meeting& meeting) {
    const Cavity& a = meeting.first;
    const Cavity& b = meeting.second;
    if (a.isBox() && b.isBox()) {
        meeting.overlap = overlap(a.box(), b.box());
        meeting.shared = meeting.overlap ? meeting.overlap->volume() : 0.0;
        meeting.wall = meeting.overlap ? 0.0 : distance(a.box(), b.box());
        return;
    }
    const ConvexSolid one = a.solid();
    const ConvexSolid other = b.solid();
    if (const std::optional<ConvexSolid> shared = intersection(one, other)) {
        meeting.overlap = shared->bounds();
        meeting.shared = shared->volume();
    } else {
        meeting.wall = distance(one, other).distance;
    }
}

}  // namespace

std::vector<Meeting> meetingsIn(const ResolvedPiece& resolved, std::size_t part) {
    std::vector<Meeting> meetings;
    const double least = resolved.rules[RuleId::MortiseGapLeast].value;
    // In order along the part, so that only near neighbours are compared.
    std::vector<Cavity> sorted = cavitiesOf(resolved.parts[part]);
    std::stable_sort(sorted.begin(), sorted.end(), [](const Cavity& a, const Cavity& b) {
        return a.box().min.x < b.box().min.x;
    });
    for (std::size_t i = 0; i < sorted.size(); ++i) {
        for (std::size_t j = i + 1;
             j < sorted.size() && sorted[j].box().min.x < sorted[i].box().max.x + least;
             ++j) {
            Meeting meeting;
            meeting.part = part;
            meeting.first = sorted[i];
            meeting.second = sorted[j];
            if (distance(meeting.first.box(), meeting.second.box()) >= least ||
                isMeantToBe(resolved, meeting.first, meeting.second)) {
                continue;
            }
            compare(meeting);
            const bool isOfFrame = isOfOneFrame(resolved, meeting.first, meeting.second) ||
                                   isOfOneFrame(resolved, meeting.second, meeting.first);
            if (!meeting.overlap && (isOfFrame || meeting.wall >= least - kLengthTolerance.mm())) {
                continue;
            }
            // In the order of the joints, so that left and right are told alike.
            if (meeting.second.joint &&
                (!meeting.first.joint || *meeting.second.joint < *meeting.first.joint)) {
                std::swap(meeting.first, meeting.second);
            }
            meetings.push_back(std::move(meeting));
        }
    }
    return meetings;
}

std::vector<Meeting> allMeetings(const ResolvedPiece& resolved) {
    std::vector<Meeting> all;
    for (std::size_t part = 0; part < resolved.parts.size(); ++part) {
        std::vector<Meeting> some = meetingsIn(resolved, part);
        all.insert(all.end(), some.begin(), some.end());
    }
    return all;
}

}  // namespace shoulderline
