#include <algorithm>
#include <cmath>

#include "core/check/checks.h"
#include "core/check/neighbours.h"
#include "core/joint/joint_sizing.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// How much the mortise of `joint` would have to be shortened to leave `least` of wood before the
// other's; none where shortening it cannot part them.
std::optional<Length> shorteningFor(const MortiseSolid& mine, const Cavity& other, double least) {
    const auto [axis, way] = inwardOf(mine.face);
    const double by = way > 0 ? mine.box.max[axis] - other.box().min[axis] + least
                              : other.box().max[axis] + least - mine.box.min[axis];
    const double depth = mine.box.size()[axis];
    return !mine.isThrough && by > 0 && by < depth ? std::optional(Length::mm(by)) : std::nullopt;
}

// Features for both joints of a meeting at once.
Edit withFeature(const CheckContext& context,
                 std::initializer_list<std::size_t> joints,
                 JointFeature feature) {
    SetJointFeatures edit;
    for (const std::size_t index : joints) {
        const ResolvedJoint& joint = context.resolved.joints[index];
        edit.all.push_back({context.resolved.parts[joint.tenoned].of,
                            context.resolved.parts[joint.mortised].of,
                            feature,
                            true});
    }
    return edit;
}

void addShortening(const CheckContext& context,
                   const MortiseSolid& mine,
                   const Cavity& other,
                   double least,
                   Finding& finding) {
    const std::optional<Length> by = shorteningFor(mine, other, least);
    if (!by) {
        return;
    }
    const ResolvedJoint& joint = context.resolved.joints[mine.joint];
    const Length step =
        context.piece.unit == Unit::Inch ? Length::inches(1.0 / 32) : Length::mm(0.25);
    const Length shorter = snapDown(joint.tenon.length.value - *by, step);
    if (shorter.mm() <= 1.0) {
        return;
    }
    // By its neighbour, so that it stays short of it when sizes change; a length that the maker
    // states is stated anew.
    const bool isByRule = joint.tenon.length.state == SizeState::ByRule &&
                          joint.mortise.depth.state == SizeState::ByRule &&
                          mayHave(joint.kind, JointFeature::Shortened) &&
                          !joint.has(JointFeature::Mitred) && !joint.has(JointFeature::Shortened);
    finding.mends.push_back({"shorten the tenon of " + context.resolved.parts[joint.tenoned].of +
                                 " to " + context.shown(shorter),
                             isByRule
                                 ? withFeature(context, {mine.joint}, JointFeature::Shortened)
                                 : stateSize(context, mine.joint, SizeName::TenonLength, shorter)});
}

// Staggers the two in height, where the first is placed by a level that can be stated anew.
void addStagger(const CheckContext& context,
                const MortiseSolid& mine,
                const Cavity& other,
                double least,
                const ResolvedPart& post,
                Finding& finding) {
    const ResolvedJoint& joint = context.resolved.joints[mine.joint];
    const Part& part = context.stated(joint.tenoned);
    const Spans* spans = std::get_if<Spans>(&part.relation);
    if (spans == nullptr || !spans->level || part.spacing || std::abs(post.frame.x.z) < 0.5) {
        return;
    }
    const double up = other.box().max.x + least - mine.box.min.x;
    const double down = mine.box.max.x + least - other.box().min.x;
    const bool raise = up <= down;
    const Length by = snapUp(Length::mm(std::min(up, down)), Length::inches(1.0 / 32));
    Part moved = part;
    Position& level = *std::get<Spans>(moved.relation).level;
    level.at = "(" + level.at + ")" + (raise == (post.frame.x.z > 0) ? " + " : " - ") +
               CheckContext::statement(by);
    finding.mends.push_back(
        {std::string(raise ? "raise " : "lower ") + part.name + " by " + context.shown(by),
         SetPart{part.name, moved}});
}

bool isBlindTenon(const ResolvedJoint& joint) {
    return joint.kind == JointKind::Blind && !joint.has(JointFeature::Mitred);
}

// Moves a rail across the post, in or out, until its mortise passes the other's, where that leaves
// its wall: the rail is set in from a face that can be stated anew.
void addMoveAcross(const CheckContext& context,
                   const MortiseSolid& mine,
                   const Cavity& other,
                   double least,
                   const ResolvedPart& post,
                   Finding& finding) {
    const ResolvedJoint& joint = context.resolved.joints[mine.joint];
    const Part& part = context.stated(joint.tenoned);
    const Spans* spans = std::get_if<Spans>(&part.relation);
    const int entered = inwardOf(mine.face).axis;
    if (spans == nullptr || part.spacing || entered == 0) {
        return;
    }
    const int across = 3 - entered;
    const double up = other.box().max[across] + least - mine.box.min[across];
    const double down = mine.box.max[across] + least - other.box().min[across];
    const double wall = context.resolved.rules[RuleId::MortiseWallLeast].value;
    const Box wood = post.bodyBox();
    const Length step = Length::inches(1.0 / 32);
    for (const double way : {1.0, -1.0}) {
        const Length by = snapUp(Length::mm(way > 0 ? up : down), step);
        const double left = way > 0 ? wood.max[across] - mine.box.max[across] - by.mm()
                                    : mine.box.min[across] - wood.min[across] - by.mm();
        if (by.mm() <= 0.0 || left < wall) {
            continue;
        }
        // Which way that is from the face that the rail is set in from.
        const Vec3 moves = post.frame.axis(across) * way;
        const Side from = spans->set.from == Side::Centre
                              ? sideOf(mainAxis(post.frame.axis(across)), true)
                              : spans->set.from;
        const double inwards = -dot(moves, directionOf(from));
        if (std::abs(inwards) < 0.5) {
            continue;
        }
        Part moved = part;
        Setting& set = std::get<Spans>(moved.relation).set;
        set.by = (set.by.empty() ? std::string() : "(" + set.by + ") ") +
                 (inwards > 0 ? (set.by.empty() ? "" : "+ ") : "- ") + CheckContext::statement(by);
        finding.mends.push_back(
            {"move " + part.name + " across by " + context.shown(by), SetPart{part.name, moved}});
    }
}

// Two blind tenons that enter a post from sides next to one another can be mitred.
void addMitre(const CheckContext& context, const Meeting& meeting, Finding& finding) {
    if (meeting.second.mortise == nullptr || !meeting.second.joint) {
        return;
    }
    const ResolvedJoint& first = context.resolved.joints[*meeting.first.joint];
    const ResolvedJoint& second = context.resolved.joints[*meeting.second.joint];
    const int one = inwardOf(meeting.first.face()).axis;
    const int other = inwardOf(meeting.second.face()).axis;
    if (one != other && one != 0 && other != 0 && isBlindTenon(first) && isBlindTenon(second)) {
        finding.mends.push_back(
            {"mitre the ends of both tenons",
             withFeature(
                 context, {*meeting.first.joint, *meeting.second.joint}, JointFeature::Mitred)});
    }
}

// A tenon made as two leaves room in its middle third for what passes between.
void addSplit(const CheckContext& context,
              const Cavity& mine,
              const Cavity& other,
              Finding& finding) {
    const ResolvedJoint& joint = context.resolved.joints[*mine.joint];
    const double third = mine.box().size().x / 3 - finding.limit;
    const bool fits = other.box().min.x >= mine.box().min.x + third &&
                      other.box().max.x <= mine.box().max.x - third;
    if (fits && isBlindTenon(joint) && !joint.has(JointFeature::Double)) {
        finding.mends.push_back({"split the tenon of " + context.resolved.parts[joint.tenoned].of +
                                     " into a double one",
                                 withFeature(context, {*mine.joint}, JointFeature::Double)});
    }
}

// A haunch makes the tenon narrower by a third at the end of the part, where the other is.
void addHaunch(const CheckContext& context,
               const Cavity& mine,
               const Cavity& other,
               Finding& finding) {
    const ResolvedJoint& joint = context.resolved.joints[*mine.joint];
    const bool nearStart = joint.mortise.fromStart.value < joint.mortise.fromFar;
    const double third = mine.box().size().x / 3 - finding.limit;
    const bool fits = nearStart ? other.box().max.x <= mine.box().min.x + third
                                : other.box().min.x >= mine.box().max.x - third;
    if (fits && isBlindTenon(joint) && !joint.has(JointFeature::Haunch)) {
        finding.mends.push_back({"haunch the tenon of " + context.resolved.parts[joint.tenoned].of,
                                 withFeature(context, {*mine.joint}, JointFeature::Haunch)});
    }
}

std::string nameOf(const CheckContext& context, const Cavity& cavity) {
    if (cavity.cut != nullptr) {
        const std::string what = "the " + std::string(wordFor(cavity.cut->kind));
        return cavity.cut->note.empty() ? what : what + " (" + cavity.cut->note + ")";
    }
    return "the mortise for " +
           context.resolved.parts[context.resolved.joints[*cavity.joint].tenoned].of;
}

// What a groove or rabbet, cut later, opens of a mortise has to be filled.
std::string fillerFor(const CheckContext& context, const Meeting& meeting) {
    const Cavity* groove = nullptr;
    for (const Cavity* cavity : {&meeting.first, &meeting.second}) {
        groove = cavity->cut != nullptr && cavity->cut->kind != CutKind::Bore ? cavity : groove;
    }
    if (groove == nullptr || !meeting.overlap) {
        return {};
    }
    const Vec3 size = meeting.overlap->size();
    return "; where it opens the mortise a filler piece of " + context.shownMm(size.x) + " x " +
           context.shownMm(size.y) + " x " + context.shownMm(size.z) + " is let in";
}

void describe(const CheckContext& context, const Meeting& meeting, Finding& finding) {
    const std::string first = nameOf(context, meeting.first);
    const std::string second = nameOf(context, meeting.second);
    if (meeting.overlap) {
        const Vec3 size = meeting.overlap->size();
        const double by = std::min(size[inwardOf(meeting.first.face()).axis],
                                   size[inwardOf(meeting.second.face()).axis]);
        finding.value = -by;
        finding.message = "{part}: " + first + " and " + second + " overlap by " +
                          context.shownMm(by) + " inside it" + fillerFor(context, meeting);
    } else {
        finding.value = meeting.wall;
        finding.message = "{part}: " + context.shownMm(meeting.wall) + " of wood between " + first +
                          " and " + second + "; the rule book asks " +
                          context.shownMm(finding.limit);
    }
}

void addMends(const CheckContext& context,
              const Meeting& meeting,
              const ResolvedPart& post,
              Finding& finding) {
    const double least = finding.limit;
    const auto forEach = [&](const auto& add) {
        if (meeting.first.mortise != nullptr) {
            add(meeting.first, meeting.second);
        }
        if (meeting.second.mortise != nullptr) {
            add(meeting.second, meeting.first);
        }
    };
    addMitre(context, meeting, finding);
    forEach([&](const Cavity& mine, const Cavity& other) {
        addShortening(context, *mine.mortise, other, least, finding);
    });
    forEach([&](const Cavity& mine, const Cavity& other) {
        addStagger(context, *mine.mortise, other, least, post, finding);
    });
    forEach([&](const Cavity& mine, const Cavity& other) {
        addMoveAcross(context, *mine.mortise, other, least, post, finding);
    });
    forEach(
        [&](const Cavity& mine, const Cavity& other) { addHaunch(context, mine, other, finding); });
    forEach(
        [&](const Cavity& mine, const Cavity& other) { addSplit(context, mine, other, finding); });
}

}  // namespace

void checkMeetings(const CheckContext& context, std::vector<Finding>& findings) {
    const ResolvedPiece& resolved = context.resolved;
    for (std::size_t p = 0; p < resolved.parts.size(); ++p) {
        const ResolvedPart& part = resolved.parts[p];
        for (const Meeting& meeting : meetingsIn(resolved, p)) {
            const bool isFilled = !fillerFor(context, meeting).empty();
            Finding finding = context.finding(
                RuleId::MortiseGapLeast,
                meeting.overlap && !isFilled ? Severity::MustMend : Severity::LookAt);
            finding.parts = {p};
            finding.joint = meeting.first.joint;
            finding.otherJoint = meeting.second.joint;
            finding.limit = resolved.rules[RuleId::MortiseGapLeast].value;
            finding.unit = "mm";
            describe(context, meeting, finding);
            addMends(context, meeting, part, finding);
            findings.push_back(std::move(finding));
        }
    }
}

}  // namespace shoulderline
