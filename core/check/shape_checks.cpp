#include <algorithm>

#include "core/check/checks.h"
#include "core/resolve/frames.h"
#include "core/resolve/shaped_face.h"

namespace shoulderline {

namespace {

constexpr double kLookedAtBehind = 0.2;  // mm of wood looked at behind a mouth or a shoulder
constexpr double kOnFace = 0.01;         // mm; facets of an arc stand back by as much
constexpr double kLeastCovered = 0.999;  // facets of an arc take a little

// The share of `box` that is wood.
double woodIn(const Box& box, const std::vector<ConvexSolid>& wood) {
    const ConvexSolid solid = ConvexSolid::box(box);
    double covered = 0.0;
    for (const ConvexSolid& piece : wood) {
        if (const std::optional<ConvexSolid> shared = intersection(solid, piece)) {
            covered += shared->volume();
        }
    }
    return covered / box.volume();
}

Box mouthSliver(const MortiseSolid& mortise, double below) {
    Box box = mortise.box;
    const auto [axis, way] = inwardOf(mortise.face);
    (way > 0 ? box.min : box.max)[axis] += way * below;
    const double sliver = std::min(kLookedAtBehind, (box.max[axis] - box.min[axis]) / 2);
    (way > 0 ? box.max : box.min)[axis] = way > 0 ? box.min[axis] + sliver : box.max[axis] - sliver;
    return box;
}

// What of the tenon's section lies just inside its shoulder.
Box rootSliver(const TenonSolid& tenon, double length) {
    Box box = tenon.box;
    const bool atStart = tenon.box.max.x <= length / 2;
    box.min.x = atStart ? 0.0 : length - kLookedAtBehind;
    box.max.x = box.min.x + kLookedAtBehind;
    return box;
}

// Whether there is wood at `by` from each corner of the face of `solid` that looks most nearly
// against `way`.
bool cornersInWood(const ConvexSolid& solid,
                   Vec3 way,
                   Vec3 by,
                   const std::vector<ConvexSolid>& wood) {
    const std::vector<ConvexSolid::Face>& faces = solid.faces();
    const auto face =
        std::min_element(faces.begin(), faces.end(), [&](const auto& a, const auto& b) {
            return dot(a.plane.normal, way) < dot(b.plane.normal, way);
        });
    return std::all_of(face->loop.begin(), face->loop.end(), [&](int i) {
        const Vec3 at = solid.vertices()[static_cast<std::size_t>(i)] + by;
        return std::any_of(wood.begin(), wood.end(), [&](const ConvexSolid& piece) {
            return piece.contains(at, kOnFace);
        });
    });
}

// Whether the joint lies askew in the part.
bool isAskew(const ResolvedPart& part, const ResolvedJoint& joint) {
    return !squared(relativeFrame(part.frame, joint.frame));
}

bool opensInWood(const ResolvedPart& part,
                 const ResolvedJoint& joint,
                 const MortiseSolid& mortise,
                 const std::vector<ConvexSolid>& wood) {
    const Vec3 wayIn = part.frame.directionToLocal(joint.frame.x);
    return isAskew(part, joint) && mortise.exact
               ? cornersInWood(*mortise.exact, wayIn, wayIn * kLookedAtBehind, wood)
               : woodIn(mouthSliver(mortise, joint.mortise.below.mm()), wood) >= kLeastCovered;
}

// Whether the tenon stands on the part's own wood.
bool standsOnWood(const ResolvedPart& part,
                  const ResolvedJoint& joint,
                  const TenonSolid& tenon,
                  const std::vector<ConvexSolid>& wood) {
    const Vec3 wayOut = part.frame.directionToLocal(joint.frame.x);
    return tenon.exact && (isAskew(part, joint) || !part.body.planes.empty())
               ? cornersInWood(*tenon.exact, wayOut, -wayOut * kLookedAtBehind, wood)
               : woodIn(rootSliver(tenon, part.shoulderLength.value.mm()), wood) >= kLeastCovered;
}

void tell(const CheckContext& context,
          RuleId rule,
          std::size_t joint,
          std::string message,
          std::vector<Finding>& findings) {
    const ResolvedJoint& resolved = context.resolved.joints[joint];
    Finding finding = context.finding(rule, Severity::MustMend);
    finding.parts = {resolved.tenoned, resolved.mortised};
    finding.joint = joint;
    finding.message = std::move(message);
    findings.push_back(std::move(finding));
}

// Where the face is shaped or cut away under a mouth the shoulder does not lie on it.
void checkShouldersMeet(const CheckContext& context, std::vector<Finding>& findings) {
    for (std::size_t i = 0; i < context.resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = context.resolved.joints[i];
        const Length below = joint.mortise.pastShoulder;
        const bool isFitted = joint.mortise.below - below > kLengthTolerance;  // to a shaped face
        if (below <= kLengthTolerance || isFitted || joint.form().isWholeSection()) {
            continue;
        }
        Finding finding = context.finding(RuleId::ShoulderMeetsFace, Severity::LookAt);
        finding.parts = {joint.tenoned, joint.mortised};
        finding.joint = i;
        finding.value = below.mm();
        finding.unit = "mm";
        finding.message = "{joint}: the face of {other} lies " + context.shown(below) +
                          " below its blank's at the mouth; the mortise is measured from there, "
                          "and the shoulder stands off by as much";
        finding.mends.push_back(
            {"leave the face whole there, or scribe a longer shoulder to it", std::nullopt});
        findings.push_back(std::move(finding));
    }
}

// A straight shoulder that follows a curved face stands off it somewhere.
void checkShouldersFollow(const CheckContext& context, std::vector<Finding>& findings) {
    constexpr double kLeastOpen = 0.25;  // mm; less closes under the clamps
    for (std::size_t i = 0; i < context.resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = context.resolved.joints[i];
        const ResolvedPart& tenoned = context.resolved.parts[joint.tenoned];
        const ResolvedPart& mortised = context.resolved.parts[joint.mortised];
        const auto* spans = std::get_if<Spans>(&context.stated(joint.tenoned).relation);
        if (spans == nullptr || spans->fit == ShoulderFit::Level || !isShaped(mortised) ||
            joint.form().isWholeSection()) {
            continue;
        }
        const bool isFar = joint.end == End::Far;
        const Vec3 corner{isFar ? tenoned.shoulderLength.value.mm() : 0.0, 0.0, 0.0};
        const std::optional<ShoulderOnFace> shoulder =
            shoulderOn({&mortised,
                        mortised.frame,
                        tenoned.frame.toOuter(corner),
                        isFar ? tenoned.frame.x : -tenoned.frame.x,
                        {tenoned.frame.y * tenoned.width.value.mm(),
                         tenoned.frame.z * tenoned.thickness.value.mm()}});
        if (!shoulder || shoulder->open < kLeastOpen) {
            continue;
        }
        Finding finding = context.finding(RuleId::ShoulderMeetsFace, Severity::LookAt);
        finding.parts = {joint.tenoned, joint.mortised};
        finding.joint = i;
        finding.value = shoulder->open;
        finding.unit = "mm";
        finding.message =
            "{joint}: the face of {other} is curved under the shoulder, which is cut "
            "straight and stands off it by up to " +
            context.shownMm(shoulder->open);
        if (!isAskew(mortised, joint)) {
            Part changed = context.stated(joint.tenoned);
            std::get<Spans>(changed.relation).fit = ShoulderFit::Level;
            finding.mends.push_back({"cut the face level for it", SetPart{changed.name, changed}});
        }
        finding.mends.push_back({"scribe the shoulder to the curve", std::nullopt});
        findings.push_back(std::move(finding));
    }
}

}  // namespace

void checkShapes(const CheckContext& context, std::vector<Finding>& findings) {
    checkShouldersMeet(context, findings);
    checkShouldersFollow(context, findings);
    for (const ResolvedPart& part : context.resolved.parts) {
        if (part.body.isBox()) {
            continue;
        }
        const BodySolids solids = part.wood();
        const std::vector<ConvexSolid>& wood = solids.pieces();
        for (const MortiseSolid& mortise : part.mortises) {
            const ResolvedJoint& joint = context.resolved.joints[mortise.joint];
            // A hole bored into a round has its mouth on the round.
            const bool isBoredInRound =
                joint.kind == JointKind::Round && part.section == SectionForm::Round;
            if (joint.form().isSized() && !isBoredInRound &&
                !opensInWood(part, joint, mortise, wood)) {
                tell(context,
                     RuleId::MouthOnFace,
                     mortise.joint,
                     "{joint}: the mouth lies where {other} is shaped away; move {part}, or leave "
                     "the wood there",
                     findings);
            }
        }
        for (const TenonSolid& tenon : part.tenons) {
            const ResolvedJoint& joint = context.resolved.joints[tenon.joint];
            if (!tenon.isHaunch && !standsOnWood(part, joint, tenon, wood)) {
                tell(context,
                     RuleId::ShoulderLeast,
                     tenon.joint,
                     "{joint}: the tenon stands out past the shaped edge of {part}; give it a "
                     "wider shoulder there",
                     findings);
            }
        }
    }
}

}  // namespace shoulderline
