#include <algorithm>
#include <cmath>

#include "core/check/checks.h"
#include "core/check/neighbours.h"
#include "core/check/rail_moves.h"
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
        context.piece.unit == Unit::Inch ? Length::inches(1.0 / 32) : Length::mm(0.5);
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

bool isBlindTenon(const ResolvedJoint& joint) {
    return joint.kind == JointKind::Blind && !joint.has(JointFeature::Mitred);
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

// A haunch takes its share of the rail at the end of the part, and leaves the tenon past it: room
// for what passes there.
void addHaunch(const CheckContext& context,
               const Cavity& mine,
               const Cavity& other,
               Finding& finding) {
    const ResolvedJoint& joint = context.resolved.joints[*mine.joint];
    const ResolvedPart& rail = context.resolved.parts[joint.tenoned];
    const ResolvedPart& post = context.resolved.parts[joint.mortised];
    const Box edges = relativeFrame(post.frame, rail.frame).outerBounds(rail.bodyBox());
    const double haunch =
        rail.width.value.mm() * context.resolved.rules[RuleId::HaunchWidthShare].value;
    const bool nearStart = joint.mortise.fromStart.value < joint.mortise.fromFar;
    const double room = nearStart ? edges.min.x + haunch - finding.limit - other.box().max.x
                                  : other.box().min.x - (edges.max.x - haunch + finding.limit);
    if (room >= 0.0 && isBlindTenon(joint) && !joint.has(JointFeature::Haunch)) {
        finding.mends.push_back({"haunch the tenon of " + rail.of,
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
        groove = cavity->cut != nullptr && !cavity->cut->isSetOutByMiddle() ? cavity : groove;
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
    for (const bool isAcross : {false, true}) {
        forEach([&](const Cavity& mine, const Cavity& other) {
            for (RailMove& move :
                 railMoves(context.piece, context.resolved, *mine.mortise, other, post, least)) {
                if ((move.way == RailMove::Way::Across) == isAcross) {
                    std::string text = move.text(context.piece.style);
                    finding.mends.push_back({std::move(text), std::move(move.edit)});
                }
            }
        });
    }
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
