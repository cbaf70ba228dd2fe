#include "core/drawing/joint_members.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/joint_wood.h"
#include "core/drawing/round_wood.h"
#include "core/drawing/tenon_pegs.h"
#include "core/geometry/plane_cut.h"
#include "core/resolve/frames.h"
#include "core/resolve/small_solids.h"

namespace shoulderline {

namespace {

// A tenon or a mortise in the frame of its joint.
template <class Solid>
Box solidInJoint(const ResolvedJoint& joint, const ResolvedPart& part, const Solid& solid) {
    const Frame relative = relativeFrame(joint.frame, part.frame);
    return solid.exact && !squared(relative) ? solid.exact->transformed(relative).bounds()
                                             : relative.outerBounds(solid.box);
}

HalfSpace beyond(int axis, double at, bool isHigh) {
    Vec3 normal;
    normal[axis] = isHigh ? 1.0 : -1.0;
    return {normal, isHigh ? at : -at};
}

// The body of a part as it lies in the joint's frame, sawn off by the planes.
Polyhedron bodyIn(const ResolvedJoint& joint,
                  const ResolvedPart& part,
                  const std::vector<HalfSpace>& cuts) {
    const BodySolids wood = part.wood();
    Polyhedron solid = (wood.isEmpty() ? Polyhedron::box(part.bodyBox()) : wood.whole())
                           .transformed(relativeFrame(joint.frame, part.frame));
    for (const HalfSpace& cut : cuts) {
        if (std::optional<Polyhedron> left = cutByPlane(solid, cut)) {
            solid = *std::move(left);
        }
    }
    return solid;
}

// The same in convex pieces.
std::vector<Polyhedron> piecesIn(const ResolvedJoint& joint,
                                 const ResolvedPart& part,
                                 const std::vector<HalfSpace>& cuts) {
    const Frame frame = relativeFrame(joint.frame, part.frame);
    std::vector<Polyhedron> pieces;
    const BodySolids wood = part.wood();
    for (const ConvexSolid& piece : wood.pieces()) {
        std::optional<Polyhedron> left = piece.toPolyhedron().transformed(frame);
        for (const HalfSpace& cut : cuts) {
            left = left ? cutByPlane(*left, cut) : left;
        }
        if (left) {
            pieces.push_back(*std::move(left));
        }
    }
    return pieces;
}

// What of a solid lies within kThin about `at` along `axis`; all of it where that is nothing.
constexpr double kThin = 0.01;
Polyhedron sliceOf(const Polyhedron& solid, int axis, double at) {
    std::optional<Polyhedron> slice = cutByPlane(solid, beyond(axis, at - kThin / 2, false));
    slice = slice ? cutByPlane(*slice, beyond(axis, at + kThin / 2, true)) : slice;
    return slice.value_or(solid);
}

// Where the wood of the mortised part ends on the side of its reference face, where that is at one
// place along the whole mortise and as deep as it goes.
std::optional<double> referenceOnWood(const JointMembers& m, bool isLow) {
    constexpr double kSame = 0.01;
    const bool isSawnOff =
        std::any_of(m.postSawn.begin(), m.postSawn.end(), [&](const JointMembers::Sawn& sawn) {
            return sawn.axis == m.referenceAxis;
        });
    if (isSawnOff || m.postAxis == 0 || m.referenceAxis == 0) {
        return std::nullopt;
    }
    std::optional<double> reference;
    for (const double along : {m.mortise.min[m.postAxis], m.mortise.max[m.postAxis]}) {
        const Polyhedron across = sliceOf(m.postSolid, m.postAxis, along);
        for (const double in : {2.0 * kThin, m.mortise.max.x}) {
            const Box wood = sliceOf(across, 0, in).bounds();
            const double at = (isLow ? wood.min : wood.max)[m.referenceAxis];
            if (reference && std::abs(at - *reference) > kSame) {
                return std::nullopt;
            }
            reference = at;
        }
    }
    return reference;
}

// The tenoned member as it is drawn: its box, where it lies square and is one.
void takeTenoned(const ResolvedJoint& joint, const ResolvedPart& tenoned, JointMembers& m) {
    m.railBlank = m.atShoulder = m.rail;
    if (m.railIsSquare && tenoned.body.isBox()) {
        m.railSolid = woodLessGrooves(joint, tenoned, m.rail, 0);
        return;
    }
    m.railSolid = bodyIn(joint, tenoned, {beyond(0, m.rail.min.x, false)});
    m.rail = m.railSolid.bounds();
    m.atShoulder = sliceOf(m.railSolid, 0, -kThin).bounds();
    if (m.railIsSquare && isBox(m.railSolid)) {
        m.railSolid = woodLessGrooves(joint, tenoned, m.rail, 0);
    }
}

// The mortised one likewise. What lies square is marked out from its blank.
void takeMortised(const ResolvedJoint& joint, const ResolvedPart& mortised, JointMembers& m) {
    const Frame relative = relativeFrame(joint.frame, mortised.frame);
    const bool isSquare = m.railIsSquare && squared(relative);
    if (isSquare && (mortised.body.isBox() || !m.horns.empty())) {
        m.postIsBox = true;
        m.postSolid = woodLessGrooves(joint, mortised, m.post, m.postAxis);
        m.postPieces = {m.postSolid};
        return;
    }
    const Box blank = m.post;
    std::vector<HalfSpace> cuts;
    for (const JointMembers::Sawn& sawn : m.postSawn) {
        cuts.push_back(beyond(sawn.axis, m.at(sawn), sawn.isHigh));
    }
    m.postSolid = bodyIn(joint, mortised, cuts);
    m.postPieces = piecesIn(joint, mortised, cuts);
    m.post = m.postSolid.bounds();
    const Vec3 inwards = joint.mortise.reference == Face::FaceEdge ? relative.y : relative.z;
    const std::optional<double> onWood = referenceOnWood(m, inwards[m.referenceAxis] > 0.0);
    const bool isMarkedOnBlank = isSquare && mortised.section == SectionForm::Square;
    m.reference = isMarkedOnBlank ? m.reference : onWood;
    if (isMarkedOnBlank && (!onWood || std::abs(*onWood - *m.reference) > kThin)) {
        m.referenceLine = {blank.min[m.postAxis], blank.max[m.postAxis]};
    }
    if (isSquare && isBox(m.postSolid)) {
        m.postIsBox = true;
        m.postSolid = woodLessGrooves(joint, mortised, m.post, m.postAxis);
        m.postPieces = {m.postSolid};
    }
}

// Saws the mortised part off along one axis, outside of `kept`.
void sawOff(JointMembers& m, int axis, const Extent& kept) {
    if (m.post.min[axis] < kept.min) {
        m.post.min[axis] = kept.min;
        m.postSawn.push_back({axis, false});
    }
    if (m.post.max[axis] > kept.max) {
        m.post.max[axis] = kept.max;
        m.postSawn.push_back({axis, true});
    }
}

// Of a wide one what lies about the joint and, where it is marked out from there, out to the
// reference face. Only where that leaves out much: a break is worth its lines then.
void shortenAcross(JointMembers& m, bool isSquare) {
    constexpr double kWorthIt = 2.0;  // times what is kept
    const int axis = 3 - m.postAxis;
    double low = std::min(m.mortise.min[axis], m.rail.min[axis]);
    double high = std::max(m.mortise.max[axis], m.rail.max[axis]);
    if (isSquare && m.reference && m.referenceAxis == axis) {
        low = std::min(low, *m.reference);
        high = std::max(high, *m.reference);
    }
    const double beyond = 0.3 * (high - low);
    if (m.post.size()[axis] > kWorthIt * (high - low + 2.0 * beyond)) {
        sawOff(m, axis, {low - beyond, high + beyond});
    }
}

// Leaves of both members what shows the joint.
void shorten(JointMembers& m, bool isSquare) {
    const double reach = std::max(0.6 * m.tenon.size().x, 0.25 * m.rail.size().y);
    m.railIsCut = m.rail.min.x < -reach;
    m.rail.min.x = std::max(m.rail.min.x, -reach);
    const int axis = m.postAxis;
    double beyond = std::max(0.35 * m.mortise.size()[axis], 0.3 * m.post.size().x);
    for (const JointMembers::Horn& horn : m.horns) {
        beyond = std::max(beyond, 1.5 * std::abs(horn.to - horn.from));
    }
    const double low = axis == 0 ? 0.0 : std::min(m.mortise.min[axis], m.rail.min[axis]);
    const double high =
        axis == 0 ? m.mortise.max.x : std::max(m.mortise.max[axis], m.rail.max[axis]);
    sawOff(m, axis, {low - beyond, high + beyond});
    if (axis != 0) {
        shortenAcross(m, isSquare);
    }
    std::erase_if(m.horns, [&](const JointMembers::Horn& horn) {
        return std::min(horn.from, horn.to) < m.post.min[axis] - kLengthTolerance.mm() ||
               std::max(horn.from, horn.to) > m.post.max[axis] + kLengthTolerance.mm();
    });
}

// What the joint takes from one part, restated in the joint's frame.
std::vector<Hollow> hollowsOf(const ResolvedPiece& resolved,
                              const ResolvedJoint& joint,
                              std::size_t index,
                              const ResolvedPart& part) {
    const Frame frame = relativeFrame(joint.frame, part.frame);
    std::vector<Hollow> hollows;
    const auto add = [&](const ConvexSolid& solid, Face face) {
        const Vec3 outward = outwardOf(face);
        const std::optional<ConvexSolid> inRound = withinRound(part, solid);
        Hollow hollow{(inRound ? *inRound : solid).toPolyhedron().transformed(frame),
                      frame.directionToOuter(outward)};
        if (inRound) {
            hollow.mouth = mouthTowards(*inRound, outward);
            for (Vec3& corner : hollow.mouth) {
                corner = frame.toOuter(corner);
            }
        }
        hollows.push_back(std::move(hollow));
    };
    for (const MortiseSolid& mortise : part.mortises) {
        if (mortise.joint == index) {
            add(mortise.solid(), mortise.face);
        }
    }
    for (const ResolvedCut& cut : part.cuts) {
        if (cut.joint == index) {
            add(cut.solid(), cut.face);
            hollows.back().isWedged = isWedgedKerf(resolved, index, cut);
        }
    }
    return hollows;
}

// An end of the mortised part that goes on as a tenon is drawn as broken off there.
void breakAtTenons(const ResolvedPart& mortised, const Frame& relative, JointMembers& m) {
    const int axis = m.postAxis;
    const bool runsUp = relative.x[axis] > 0.0;
    const auto add = [&](Length tenon, bool isHigh) {
        const bool isSawn =
            std::any_of(m.postSawn.begin(), m.postSawn.end(), [&](const JointMembers::Sawn& one) {
                return one.axis == axis && one.isHigh == isHigh;
            });
        if (axis != 0 && tenon > kLengthTolerance && !isSawn) {
            m.postSawn.push_back({axis, isHigh});
        }
    };
    add(mortised.startTenon, !runsUp);
    add(mortised.farTenon, runsUp);
}

// The horns of a mortised part that lies square, as lengths of its box.
void addHorns(const ResolvedPart& mortised, const Frame& relative, JointMembers& m) {
    const int axis = m.postAxis;
    const bool runsUp = relative.x[axis] > 0.0;
    const auto add = [&](Length horn, bool isLow) {
        if (horn > kLengthTolerance) {
            double& end = (isLow ? m.post.min : m.post.max)[axis];
            m.horns.push_back({end, end + (isLow ? -horn.mm() : horn.mm())});
            end = m.horns.back().to;
        }
    };
    add(mortised.startHorn, runsUp);
    add(mortised.farHorn, !runsUp);
}

// Where the part lies square.
std::optional<JointMembers::MarkedFaces> facesOf(const ResolvedJoint& joint,
                                                 const ResolvedPart& part) {
    const std::optional<Frame> square = squared(relativeFrame(joint.frame, part.frame));
    return square ? std::optional(JointMembers::MarkedFaces{-square->z, -square->y}) : std::nullopt;
}

// A loose tenon as one piece, half of it in each member.
void addLooseTenon(JointMembers& m) {
    m.isLoose = true;
    Box whole = m.tenon;
    whole.min.x = -whole.max.x;
    m.tenons.push_back(Polyhedron::box(whole));
}

// The square pegs that pin the tenon, and their holes through it.
void addPegs(const ResolvedPiece& resolved,
             const ResolvedJoint& joint,
             std::size_t index,
             JointMembers& m) {
    const Frame frame = relativeFrame(joint.frame, resolved.parts[joint.mortised].frame);
    for (const TenonPeg& peg : pegsThroughTenonOf(resolved, index)) {
        m.ownHollows.push_back(
            {Polyhedron::box(peg.hole, frame), frame.directionToOuter(outwardOf(peg.face))});
        m.smalls.push_back(Polyhedron::box(peg.peg, frame));
    }
}

}  // namespace

JointMembers membersOf(const ResolvedPiece& resolved, std::size_t index) {
    // A picture in a left-handed frame would be that of the joint's mirror twin.
    ResolvedJoint joint = resolved.joints[index];
    const bool isTurnedOver = !joint.frame.isRightHanded();
    if (isTurnedOver) {
        joint.frame.z = -joint.frame.z;
    }
    const ResolvedPart& tenoned = resolved.parts[joint.tenoned];
    const ResolvedPart& mortised = resolved.parts[joint.mortised];
    JointMembers m;
    m.isTurnedOver = isTurnedOver;
    m.rail = inJoint(joint, tenoned, tenoned.bodyBox());
    m.post = inJoint(joint, mortised, mortised.bodyBox());
    // The main ones come first, a haunch and the second of twins after them.
    const auto isOfJoint = [index](const auto& solid) { return solid.joint == index; };
    const auto mortise =
        std::find_if(mortised.mortises.begin(), mortised.mortises.end(), isOfJoint);
    if (mortise != mortised.mortises.end()) {
        m.mortise = solidInJoint(joint, mortised, *mortise);
        const bool isSquare =
            squared(relativeFrame(joint.frame, mortised.frame)).has_value() && mortise->exact;
        m.mouth = isSquare ? inJoint(joint, mortised, mouthOf(*mortise)) : m.mortise;
        m.tenon = inJoint(joint, mortised, mortise->tenon);  // of a loose tenon half
    }
    const auto tenon = std::find_if(tenoned.tenons.begin(), tenoned.tenons.end(), isOfJoint);
    if (tenon != tenoned.tenons.end()) {
        m.tenon = solidInJoint(joint, tenoned, *tenon);
    }
    for (const TenonSolid& solid : tenoned.tenons) {
        if (solid.joint == index) {
            m.tenons.push_back(polyhedronOf(solid, relativeFrame(joint.frame, tenoned.frame)));
        }
    }
    m.hollows = hollowsOf(resolved, joint, index, mortised);
    m.ownHollows = hollowsOf(resolved, joint, index, tenoned);
    for (const ResolvedCut& cut : tenoned.cuts) {
        if (cut.joint == index && cut.kind == CutKind::Notch && cut.isThrough) {
            m.slots.push_back(solidInJoint(joint, tenoned, cut));
        }
    }
    if (m.tenons.empty()) {
        addLooseTenon(m);
    }
    const Frame relative = relativeFrame(joint.frame, mortised.frame);
    m.postAxis = longestAxis(relative.x);
    m.referenceAxis =
        longestAxis(joint.mortise.reference == Face::FaceEdge ? relative.y : relative.z);
    m.reference = relative.origin[m.referenceAxis];
    m.railIsSquare = squared(relativeFrame(joint.frame, tenoned.frame)).has_value();
    if (squared(relative) && m.railIsSquare) {
        addHorns(mortised, relative, m);
    }
    if (tenoned.section == SectionForm::Square) {
        m.railFaces = facesOf(joint, tenoned);
    }
    if (mortised.section == SectionForm::Square) {
        m.postFaces = facesOf(joint, mortised);
    }
    const Frame turnedOver{{}, {1, 0, 0}, {0, 1, 0}, {0, 0, isTurnedOver ? -1.0 : 1.0}};
    for (const ConvexSolid& piece : spreadTenonsOf(resolved, index)) {
        m.spread.push_back(piece.transformed(turnedOver).toPolyhedron());
    }
    for (const SmallSolid& small : smallSolidsOf(resolved, index)) {
        const ConvexSolid solid = small.solid.transformed(turnedOver);
        m.smalls.push_back(solid.toPolyhedron());
        if (small.kind == SmallPartKind::TuskWedge) {
            m.wedge = solid;
        }
    }
    addPegs(resolved, joint, index, m);
    shorten(m, m.railIsSquare && squared(relative));
    if (m.railIsSquare && squared(relative)) {
        breakAtTenons(mortised, relative, m);
    }
    takeTenoned(joint, tenoned, m);
    takeMortised(joint, mortised, m);
    takeLetIn(m);
    addOtherCuts(joint, mortised, index, m.postSolid, m.post, m.hollows);
    addOtherCuts(joint, tenoned, index, m.railSolid, m.rail, m.ownHollows);
    return m;
}

}  // namespace shoulderline
