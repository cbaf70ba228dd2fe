#include <algorithm>

#include "core/check/checks.h"
#include "core/check/neighbours.h"

namespace shoulderline {

namespace {

const MortiseSolid& solidOf(const ResolvedPart& part, std::size_t joint) {
    return *std::find_if(part.mortises.begin(),
                         part.mortises.end(),
                         [joint](const MortiseSolid& mortise) { return mortise.joint == joint; });
}

int axisOf(Face face) {
    return face == Face::StartEnd || face == Face::FarEnd
               ? 0
               : (face == Face::FaceEdge || face == Face::BackEdge ? 1 : 2);
}

// How much the mortise of `joint` would have to be shortened to leave `least` of wood before the
// other's; none where shortening it cannot part them.
std::optional<Length> shorteningFor(const MortiseSolid& mine,
                                    const MortiseSolid& other,
                                    double least) {
    const int axis = axisOf(mine.face);
    const bool fromLow =
        mine.face == Face::StartEnd || mine.face == Face::FaceEdge || mine.face == Face::FaceSide;
    const double by = fromLow ? mine.box.max[axis] - other.box.min[axis] + least
                              : other.box.max[axis] + least - mine.box.min[axis];
    const double depth = mine.box.size()[axis];
    return !mine.isThrough && by > 0 && by < depth ? std::optional(Length::mm(by)) : std::nullopt;
}

void addShortening(const CheckContext& context,
                   const MortiseSolid& mine,
                   const MortiseSolid& other,
                   double least,
                   Finding& finding) {
    const std::optional<Length> by = shorteningFor(mine, other, least);
    if (!by) {
        return;
    }
    const ResolvedJoint& joint = context.resolved.joints[mine.joint];
    const Length shorter = snapDown(joint.tenon.length.value - *by, Length::inches(1.0 / 32));
    if (shorter.mm() > 1.0) {
        finding.mends.push_back({"shorten the tenon of " +
                                     context.resolved.parts[joint.tenoned].of + " to " +
                                     context.shown(shorter),
                                 stateSize(context, mine.joint, SizeName::TenonLength, shorter)});
    }
}

// Staggers the two in height, where the first is placed by a level that can be stated anew.
void addStagger(const CheckContext& context,
                const MortiseSolid& mine,
                const MortiseSolid& other,
                double least,
                const ResolvedPart& post,
                Finding& finding) {
    const ResolvedJoint& joint = context.resolved.joints[mine.joint];
    const Part& part = context.stated(joint.tenoned);
    const Spans* spans = std::get_if<Spans>(&part.relation);
    if (spans == nullptr || !spans->level || part.spacing || std::abs(post.frame.x.z) < 0.5) {
        return;
    }
    const double up = other.box.max.x + least - mine.box.min.x;
    const double down = mine.box.max.x + least - other.box.min.x;
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

}  // namespace

void checkMeetings(const CheckContext& context, std::vector<Finding>& findings) {
    const ResolvedPiece& resolved = context.resolved;
    const double least = resolved.rules[RuleId::MortiseGapLeast].value;
    for (std::size_t p = 0; p < resolved.parts.size(); ++p) {
        const ResolvedPart& part = resolved.parts[p];
        for (const Meeting& meeting : meetingsIn(resolved, p)) {
            const MortiseSolid& first = solidOf(part, meeting.first);
            const MortiseSolid& second = solidOf(part, meeting.second);
            const std::string names = resolved.parts[resolved.joints[meeting.first].tenoned].of +
                                      " and " +
                                      resolved.parts[resolved.joints[meeting.second].tenoned].of;
            Finding finding = context.finding(
                RuleId::MortiseGapLeast, meeting.overlap ? Severity::MustMend : Severity::LookAt);
            finding.parts = {p};
            finding.joint = meeting.first;
            finding.otherJoint = meeting.second;
            finding.limit = least;
            finding.unit = "mm";
            if (meeting.overlap) {
                const Vec3 size = meeting.overlap->size();
                const double by = std::min(size[axisOf(first.face)], size[axisOf(second.face)]);
                finding.value = -by;
                finding.message = "{part}: the mortises for " + names + " overlap by " +
                                  context.shownMm(by) + " inside it";
            } else {
                finding.value = meeting.wall;
                finding.message = "{part}: " + context.shownMm(meeting.wall) +
                                  " of wood between the mortises for " + names +
                                  "; the rule book asks " + context.shownMm(least);
            }
            addShortening(context, first, second, least, finding);
            addShortening(context, second, first, least, finding);
            addStagger(context, first, second, least, part, finding);
            addStagger(context, second, first, least, part, finding);
            findings.push_back(std::move(finding));
        }
    }
}

}  // namespace shoulderline
