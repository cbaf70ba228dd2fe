#include "core/check/strength.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "core/check/stated_numbers.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kMpaPerKpa = 1e-3;

bool isNear(double size, double tested, double share) {
    return std::abs(size - tested) <= share * tested + 1e-6;
}

// The mortised part's section where its length lies in the plane of the joint; none where the
// moment would bend it flat or its end is entered.
std::optional<MortisedSection> wallOf(const ResolvedPart& mortised,
                                      const ResolvedJoint& joint,
                                      const Species* wood) {
    constexpr double kAlong = 0.9;
    const int axis = inwardOf(joint.mortise.face).axis;
    const bool isInPlane = std::abs(dot(joint.frame.y, mortised.frame.x)) > kAlong;
    if (axis == 0 || !isInPlane || wood == nullptr || !wood->ruptureKpa) {
        return std::nullopt;
    }
    const Vec3 size = mortised.bodyBox().size();
    return MortisedSection{size[axis],
                           size[3 - axis],
                           joint.mortise.depth.value.mm(),
                           joint.mortise.width.value.mm(),
                           *wood->ruptureKpa * kMpaPerKpa};
}

// Why a joint of this kind has no estimate; empty where it has one.
std::string_view whyNoEstimate(JointKind kind) {
    switch (kind) {
        case JointKind::Blind:
        case JointKind::Through:
        case JointKind::Stub:
        case JointKind::Loose:
        case JointKind::LetIn:
            return {};
        case JointKind::Rests:
        case JointKind::Grooved:
        case JointKind::Tongued:
            return "no wood joint that bears";
        case JointKind::Round:
        case JointKind::Housed:
        case JointKind::Bridle:
        case JointKind::Lap:
        case JointKind::CrossLap:
        case JointKind::Dowelled:
        case JointKind::Screwed:
            break;
    }
    return "no published test of this kind of joint to hold one to";
}

// Whether the published tests were of joints like it but for their sizes.
bool isLikeTested(const ResolvedJoint& joint) {
    const bool isPlain = joint.kind == JointKind::Blind || joint.kind == JointKind::Through;
    return isPlain && !joint.has(JointFeature::BareFaced) && !joint.has(JointFeature::Twin) &&
           !joint.has(JointFeature::Double);
}

// What of a tenon stands in its mortise: one on a shoulder square to a curve begins short of it.
ConvexSolid inMortise(const TenonSolid& tenon,
                      const ResolvedPart& tenoned,
                      const ResolvedJoint& joint) {
    const Frame mouth = relativeFrame(tenoned.frame, joint.frame);
    const bool runsBack = tenoned.bend && tenoned.bend->shoulders == BendShoulders::Curve;
    std::optional<ConvexSolid> in;
    if (runsBack && squared(mouth)) {
        in = tenon.exact->clipped({-mouth.x, -dot(mouth.x, mouth.origin)});
    }
    return in.value_or(*tenon.exact);
}

}  // namespace

StrengthEstimator::StrengthEstimator(const Piece& piece,
                                     const ResolvedPiece& resolved,
                                     const SpeciesTable& species,
                                     const StrengthBook& book,
                                     std::vector<OwnTest> own)
    : resolved_(resolved),
      book_(book),
      adhesive_(book.adhesive(piece.use.adhesive)),
      own_(std::move(own)) {
    struct Wood {
        const Species* species = nullptr;
        bool isHeatTreated = false;
    };
    std::unordered_map<std::string_view, Wood> byStock;
    for (const Stock& stock : piece.stocks) {
        byStock[stock.name] = {species.find(stock.species), stock.isHeatTreated};
    }
    woods_.reserve(resolved.parts.size());
    isHeatTreated_.reserve(resolved.parts.size());
    for (const ResolvedPart& part : resolved.parts) {
        const auto it = byStock.find(part.stock);
        const Wood wood = it == byStock.end() ? Wood{} : it->second;
        woods_.push_back(wood.species);
        isHeatTreated_.push_back(wood.isHeatTreated);
    }
    std::erase_if(own_, [&](const OwnTest& test) {
        return !test.joint || !byTheBook(*test.joint, {}).isEstimated();
    });
    for (const OwnTest& test : own_) {
        ownByTheBook_.push_back(byTheBook(*test.joint, {}));
    }
}

std::optional<double> StrengthEstimator::meanLength(const ResolvedJoint& joint) const {
    const std::size_t index = static_cast<std::size_t>(&joint - resolved_.joints.data());
    for (const TenonSolid& tenon : resolved_.parts[joint.tenoned].tenons) {
        if (tenon.joint == index && tenon.exact && !tenon.isHaunch) {
            const Vec3 size = tenon.box.size();
            return inMortise(tenon, resolved_.parts[joint.tenoned], joint).volume() /
                   (size.y * size.z);
        }
    }
    return std::nullopt;
}

JointSection StrengthEstimator::sectionOf(const ResolvedJoint& joint,
                                          const TenonSizes& changed) const {
    const ResolvedPart& tenoned = resolved_.parts[joint.tenoned];
    const ResolvedPart& mortised = resolved_.parts[joint.mortised];
    const Tenon& tenon = joint.tenon;
    JointSection section;
    section.tenonThickness = changed.thickness.value_or(tenon.thickness.value.mm());
    section.tenonWidth = changed.width.value_or(tenon.width.value.mm());
    section.tenonLength =
        changed.length.value_or((tenon.length.value - tenon.projection.value).mm());
    section.railThickness = tenoned.thickness.value.mm();
    if (joint.has(JointFeature::Mitred) && !changed.length) {
        section.tenonLength = meanLength(joint).value_or(section.tenonLength);
    }
    if (joint.has(JointFeature::RoundEnds)) {
        section.endFactor = book_.roundEnds();
    }
    const double lost = section.tenonWidth - tenon.width.value.mm();
    section.shoulder = std::max(
        0.0,
        std::min(tenon.shoulders.faceEdge.value.mm(), tenon.shoulders.backEdge.value.mm()) -
            lost / 2.0);
    section.isTwin = joint.has(JointFeature::Twin);
    section.isDouble = joint.has(JointFeature::Double);
    section.ruptureMpa = *woodOf(joint.tenoned)->ruptureKpa * kMpaPerKpa;
    section.shearMpa =
        std::min(*woodOf(joint.tenoned)->shearKpa, *woodOf(joint.mortised)->shearKpa) * kMpaPerKpa;
    section.runsOn = std::min(joint.mortise.fromStart.value.mm(), joint.mortise.fromFar.mm()) >=
                     section.tenonWidth;
    section.widthThatCounts = book_.tJointWidth();
    section.glueFactor = adhesive_.momentFactor.value_or(1.0);
    section.wall = wallOf(mortised, joint, woodOf(joint.mortised));
    if (section.wall && changed.length && !joint.isThrough()) {
        section.wall->mortiseDepth += section.tenonLength - tenon.length.value.mm();
    }
    if (section.wall && changed.thickness) {
        section.wall->mortiseWidth += section.tenonThickness - tenon.thickness.value.mm();
    }
    return section;
}

bool StrengthEstimator::isCovered(const JointSection& section) const {
    const double share = book_.coveredShare();
    return std::any_of(book_.tests().begin(), book_.tests().end(), [&](const PublishedTest& test) {
        return isNear(section.tenonThickness, test.tenonThickness, share) &&
               isNear(section.tenonWidth, test.tenonWidth, share) &&
               isNear(section.tenonLength, test.tenonLength, share);
    });
}

JointStrength StrengthEstimator::byTheBook(std::size_t index, const TenonSizes& changed) const {
    const ResolvedJoint& joint = resolved_.joints[index];
    JointStrength strength;
    if (const std::string_view reason = whyNoEstimate(joint.kind); !reason.empty()) {
        strength.whyNot = reason;
        return strength;
    }
    const Species* tenoned = woodOf(joint.tenoned);
    const Species* mortised = woodOf(joint.mortised);
    if (tenoned == nullptr || mortised == nullptr || !tenoned->ruptureKpa || !tenoned->shearKpa ||
        !mortised->shearKpa) {
        strength.whyNot = "no published strength of its wood";
        return strength;
    }
    strength.section = sectionOf(joint, changed);
    const JointSection& section = strength.section;
    strength.bending = bendingCapacity(section);
    strength.withdrawal = withdrawalCapacity(section, book_.bond());
    strength.shear = shearCapacity(section, book_.bond());
    const bool isHeatTreated = isHeatTreated_[joint.tenoned] || isHeatTreated_[joint.mortised];
    if (isHeatTreated) {
        strength.withdrawal = strength.withdrawal.times(book_.heatTreated());
    }
    strength.isCovered = isLikeTested(joint) && isCovered(section) && !isHeatTreated;
    Assumptions& taken = strength.assumptions;
    for (const Assumption one : {Assumption::CloseShoulders,
                                 Assumption::WoodFigures,
                                 Assumption::GlueFace,
                                 Assumption::TenonShoulder,
                                 Assumption::BondShear,
                                 Assumption::CrossShear}) {
        taken.set(static_cast<std::size_t>(one));
    }
    const auto takeIf = [&](bool holds, Assumption one) {
        taken.set(static_cast<std::size_t>(one), holds);
    };
    takeIf(joint.has(JointFeature::RoundEnds), Assumption::RoundEnds);
    takeIf(joint.has(JointFeature::Mitred), Assumption::MitredEnd);
    takeIf(section.wall.has_value(), Assumption::MortiseWall);
    takeIf(section.runsOn && section.tenonWidth > section.widthThatCounts, Assumption::TJointWidth);
    takeIf(std::none_of(book_.tests().begin(),
                        book_.tests().end(),
                        [&](const PublishedTest& test) { return test.species == tenoned->name; }),
           Assumption::OtherSpecies);
    takeIf(isHeatTreated, Assumption::HeatTreated);
    takeIf(!strength.isCovered, Assumption::OtherSizes);
    takeIf(!adhesive_.momentFactor, Assumption::GlueAlike);
    return strength;
}

void StrengthEstimator::bringToOwnTest(const ResolvedJoint& joint, JointStrength& strength) const {
    const double share = book_.coveredShare();
    const std::string& tenoned = resolved_.parts[joint.tenoned].of;
    const std::string& mortised = resolved_.parts[joint.mortised].of;
    for (std::size_t i = 0; i < own_.size(); ++i) {
        const JointStrength& tested = ownByTheBook_[i];
        const bool isIt = own_[i].tenoned == tenoned && own_[i].mortised == mortised;
        const bool isAlike =
            joint.form() == resolved_.joints[*own_[i].joint].form() &&
            woodOf(joint.tenoned) == woodOf(resolved_.joints[*own_[i].joint].tenoned) &&
            isNear(strength.section.tenonThickness, tested.section.tenonThickness, share) &&
            isNear(strength.section.tenonWidth, tested.section.tenonWidth, share) &&
            isNear(strength.section.tenonLength, tested.section.tenonLength, share);
        if (!isAlike) {
            continue;
        }
        // The test says what its own joint bears; the formulas carry it to one a little larger or
        // smaller.
        const double mean =
            own_[i].newtonMetres * strength.bending.range.middle() / tested.bending.range.middle();
        strength.bending.range = {mean * (1.0 - book_.spread()), mean * (1.0 + book_.spread())};
        strength.ownTest = own_[i].newtonMetres;
        strength.isCovered = true;
        strength.assumptions.set(static_cast<std::size_t>(Assumption::OwnTest));
        strength.assumptions.reset(static_cast<std::size_t>(Assumption::OtherSizes));
        strength.assumptions.reset(static_cast<std::size_t>(Assumption::OtherSpecies));
        if (isIt) {
            return;
        }
    }
}

JointStrength StrengthEstimator::strengthOf(std::size_t index, const TenonSizes& changed) const {
    JointStrength strength = byTheBook(index, changed);
    if (strength.isEstimated() && !own_.empty()) {
        bringToOwnTest(resolved_.joints[index], strength);
    }
    return strength;
}

double StrengthEstimator::allowableShare(bool isRepeated) const {
    return isRepeated ? book_.fatigueShare(adhesive_) : book_.staticShare();
}

OwnTests ownTests(const Piece& piece, const ResolvedPiece& resolved) {
    constexpr double kMostNewtonMetres = 1e6;
    StatedNumbers numbers(piece);
    OwnTests own;
    for (const StrengthTest& stated : piece.use.tests) {
        const std::string which = "test of " + stated.tenoned + " into " + stated.mortised + ": ";
        const Result<double> moment = numbers.number(stated.newtonMetres, 0.0, kMostNewtonMetres);
        if (!moment || *moment <= 0.0) {
            own.troubles.push_back(
                which + (moment ? "a moment above zero is expected" : moment.error().message));
            continue;
        }
        OwnTest test{stated.tenoned, stated.mortised, *moment, std::nullopt};
        for (std::size_t i = 0; i < resolved.joints.size() && !test.joint; ++i) {
            const ResolvedJoint& joint = resolved.joints[i];
            if (resolved.parts[joint.tenoned].of == test.tenoned &&
                resolved.parts[joint.mortised].of == test.mortised) {
                test.joint = i;
            }
        }
        if (test.joint) {
            own.tests.push_back(std::move(test));
        } else {
            own.troubles.push_back(which + "there is no such joint");
        }
    }
    return own;
}

}  // namespace shoulderline
