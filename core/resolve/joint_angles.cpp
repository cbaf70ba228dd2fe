#include "core/resolve/joint_angles.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/indices.h"
#include "core/measure/angle_text.h"
#include "core/measure/number_text.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/frames.h"
#include "core/resolve/holes.h"
#include "core/resolve/shaped_face.h"
#include "core/resolve/stations.h"

namespace shoulderline {

namespace {

constexpr double kSquare = 1e-7;  // radians

Angle between(Vec3 a, Vec3 b) {
    return Angle::radians(std::atan2(norm(cross(a, b)), dot(a, b)));
}

// The lesser of the angles that two lines make.
Angle betweenLines(Vec3 a, Vec3 b) {
    return between(a, dot(a, b) < 0 ? -b : b);
}

}  // namespace

EndAngles endAnglesOf(const ResolvedPart& part, End end) {
    const std::optional<HalfSpace> plane = endPlaneOf(part.body, end);
    Vec3 n = plane ? plane->normal : Vec3{1, 0, 0};
    n.x = std::abs(n.x);  // as seen with the end ahead
    EndAngles angles;
    angles.isSquare = std::hypot(n.y, n.z) < kSquare;
    // On a side the plane runs back by ny / nx, or nz / nx, for each millimetre across it.
    const double width = part.width.value.mm();
    const double thickness = part.thickness.value.mm();
    const auto lineOn = [](Face side, double across, double slope) {
        // The wood goes on furthest where the plane's normal looks away from.
        return ShoulderLine{side,
                            Angle::radians(std::atan(-slope)),
                            Length::mm(across * std::hypot(1.0, slope)),
                            Length::mm(std::abs(across * slope))};
    };
    angles.lines = {lineOn(Face::FaceSide, width, n.y / n.x),
                    lineOn(Face::BackSide, width, n.y / n.x),
                    lineOn(Face::FaceEdge, thickness, n.z / n.x),
                    lineOn(Face::BackEdge, thickness, n.z / n.x)};
    angles.mitre = Angle::radians(std::atan(-n.y / n.x));
    angles.tilt = Angle::radians(std::asin(std::clamp(-n.z, -1.0, 1.0)));
    return angles;
}

bool JointAngles::isSquare() const {
    return std::max({toFace.radians(), mortise.radians(), runOut.radians(), mouthTurn.radians()}) <
           kSquare;
}

namespace {

// A plain hollow square to the blank of a part that is shaped there: its tool goes in square,
// before the shaping, whatever the face is like afterwards.
bool isSquareToBlank(const ResolvedPart& mortised, const ResolvedJoint& joint) {
    const Vec3 way = mortised.frame.directionToLocal(joint.frame.x);
    const Vec3 inside = mortised.frame.toLocal(joint.frame.origin + joint.frame.x);  // 1 mm in
    const auto isItsHollow = [&](const MortiseSolid& mortise) {
        bool isIn = !mortise.exact && mortise.face == joint.mortise.face;
        for (int axis = 0; axis < 3; ++axis) {
            isIn = isIn && mortise.box.min[axis] <= inside[axis] &&
                   inside[axis] <= mortise.box.max[axis];
        }
        return isIn;
    };
    return isShaped(mortised) &&
           std::abs(way[inwardOf(joint.mortise.face).axis]) > 1.0 - kSquareTolerance &&
           std::any_of(mortised.mortises.begin(), mortised.mortises.end(), isItsHollow);
}

}  // namespace

JointAngles anglesOf(const ResolvedPiece& resolved, const ResolvedJoint& joint) {
    JointAngles angles;
    const ResolvedPart& tenoned = resolved.parts[joint.tenoned];
    const ResolvedPart& mortised = resolved.parts[joint.mortised];
    if (!joint.form().isSized() ||
        (tenoned.body.planes.empty() && squared(relativeFrame(mortised.frame, tenoned.frame)))) {
        return angles;
    }
    const Vec3 out = joint.end == End::Far ? tenoned.frame.x : -tenoned.frame.x;
    const std::optional<EnteredFace> face = enteredFace(
        mortised, mortised.frame, tenoned.frame.toOuter(tenoned.bodyBox().centre()), out);
    if (!face) {
        return angles;
    }
    const Vec3 in = -face->outward;
    angles.toFace = between(out, in);
    angles.mortise = between(joint.frame.x, in);
    angles.runOut = between(joint.frame.x, out);
    const auto onFace = [&](Vec3 v) { return normalised(v - in * dot(v, in)); };
    const std::array<Vec3, 3> own{mortised.frame.x, mortised.frame.y, mortised.frame.z};
    const CutAxes axes = axesOn(joint.mortise.face);
    const auto leanTo = [&](int axis) {
        const Vec3 way = onFace(own[asIndex(axis)]);
        return Angle::radians(std::atan2(dot(joint.frame.x, way), dot(joint.frame.x, in)));
    };
    angles.lean = {leanTo(axes.along), leanTo(axes.across)};
    if (isSquareToBlank(mortised, joint)) {
        angles.mortise = Angle();
        angles.lean = {};
    }
    if (joint.kind == JointKind::Round) {
        return angles;  // it turns to nothing
    }
    const Vec3 along = onFace(mortised.frame.x);
    const Vec3 width = onFace(joint.frame.y);
    const Vec3 thickness = onFace(joint.frame.z);
    angles.mouthTurn = std::min(betweenLines(along, width), betweenLines(along, thickness));
    return angles;
}

namespace {

// The run of a slope as it is told beside its degrees: that of those degrees, to their tenth, so
// that one figure of degrees always has one run; but a run in whole quarters as it is, as a maker
// who states 1 in 12 means it.
double toldRun(double run, double degrees) {
    constexpr double kAsStated = 0.002;
    const double quarters = std::round(4.0 * run) / 4.0;
    const double told = std::round(10.0 * degrees) / 10.0;
    return std::abs(run - quarters) < kAsStated || told <= 0.0
               ? run
               : 1.0 / std::tan(Angle::degrees(told).radians());
}

}  // namespace

std::string slopeText(Angle angle) {
    const double degrees = std::abs(angle.degrees());
    const double slope = std::tan(std::abs(angle.radians()));
    std::string text = showAngle(Angle::degrees(degrees));
    if (slope > 1e-6 && slope <= 1.0) {
        constexpr double kFine = 20.0;  // a run is said to a tenth where it is short
        constexpr double kTie = 1e-9;   // 1 in 6.25 is told alike wherever it is worked out
        const double run = toldRun(1.0 / slope, degrees) + kTie;
        text += ", 1 in " + showDecimal(run, run < kFine ? 1 : 0);
    } else if (slope > 1.0) {
        text += ", " + showDecimal(slope, 1) + " in 1";
    }
    return text;
}

std::vector<std::string> endSettings(const ResolvedPart& part, End end) {
    const EndAngles angles = endAnglesOf(part, end);
    std::vector<std::string> words;
    const std::string held = part.section == SectionForm::Square
                                 ? "saw, face side down: "
                                 : "saw, in a V-block, its face side's mark down: ";
    if (std::abs(angles.mitre.radians()) > kSquare) {
        words.push_back(held + "gauge " + slopeText(angles.mitre) + " from square, longer at the " +
                        (angles.mitre.radians() > 0 ? "back edge" : "face edge"));
    }
    if (std::abs(angles.tilt.radians()) > kSquare) {
        words.push_back(held + "blade " + slopeText(angles.tilt) + " from square, longer at the " +
                        (angles.tilt.radians() > 0 ? "back side" : "face side"));
    }
    return words;
}

std::vector<std::string> jointSettings(const ResolvedPiece& resolved, const ResolvedJoint& joint) {
    const JointAngles angles = anglesOf(resolved, joint);
    std::vector<std::string> words;
    if (angles.isSquare()) {
        return words;
    }
    const ResolvedPart& mortised = resolved.parts[joint.mortised];
    const std::string hollow = joint.kind == JointKind::Round ? "bore: " : "mortise: ";
    words.push_back(hollow + (angles.mortise.radians() > kSquare
                                  ? (joint.kind == JointKind::Round
                                         ? tableText(angles.lean, mortised, joint.mortise.face)
                                         : wedgedText(angles.lean, mortised, joint.mortise.face))
                              : isSquareToBlank(mortised, joint)
                                  ? "square to the blank, before its " +
                                        std::string(wordFor(joint.mortise.face)) + " is shaped"
                                  : "square to the " + std::string(wordFor(joint.mortise.face))));
    if (angles.mouthTurn.radians() > kSquare) {
        words.push_back("mouth turned " + slopeText(angles.mouthTurn) +
                        " from the length of the blank");
    }
    words.push_back(angles.runOut.radians() > kSquare
                        ? "tenon: " + slopeText(angles.runOut) + " out of line with the grain"
                        : "tenon: in line with its part");
    return words;
}

std::vector<std::string> outOfSquareSettings(const ResolvedPiece& resolved,
                                             const ResolvedJoint& joint) {
    const ResolvedPart& tenoned = resolved.parts[joint.tenoned];
    std::vector<std::string> all = endSettings(tenoned, joint.end);
    for (std::string& one : all) {
        one.insert(0, (joint.form().isSized() ? "shoulders of " : "end of ") + tenoned.of + ", ");
    }
    const std::vector<std::string> own = jointSettings(resolved, joint);
    all.insert(all.end(), own.begin(), own.end());
    return all;
}

}  // namespace shoulderline
