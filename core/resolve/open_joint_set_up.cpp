#include "core/resolve/open_joint_set_up.h"

#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

SetUp openSetUp(RuleId tool, std::size_t part, std::string work) {
    SetUp one;
    one.tool = tool;
    one.part = part;
    one.work = std::move(work);
    return one;
}

// The axis across the part along which what is open does not take all of it; the one it is cut in
// from where it does.
int narrowAxis(const Box& box, const Box& body) {
    const double slack = kLengthTolerance.mm();
    const bool isWholeThickness = box.min.z < slack && box.max.z > body.max.z - slack;
    return isWholeThickness ? 1 : 2;
}

Face faceAt(int axis, bool isHigh) {
    return axis == 1 ? (isHigh ? Face::BackEdge : Face::FaceEdge)
                     : (isHigh ? Face::BackSide : Face::FaceSide);
}

}  // namespace

std::vector<SetUp> trenchSetUps(std::size_t part,
                                Face face,
                                const Box& box,
                                const std::string& work) {
    SetUp sawn = openSetUp(RuleId::SetUpSaw, part, work);
    sawn.reference = face;
    sawn.isTrench = true;
    sawn.depth = Length::mm(box.size()[inwardOf(face).axis]);
    sawn.from = Length::mm(box.min.x);
    sawn.to = Length::mm(box.max.x);
    SetUp waste = openSetUp(RuleId::SetUpParing, part, "waste of it, pared flat to the depth");
    return {std::move(sawn), std::move(waste)};
}

std::vector<SetUp> openJointSetUps(const ResolvedPiece& resolved,
                                   std::size_t part,
                                   const MortiseSolid& open) {
    const double slack = kLengthTolerance.mm();
    const Box body = resolved.parts[part].bodyBox();
    const Box& box = open.box;
    const int axis = narrowAxis(box, body);
    const bool isAtLow = box.min[axis] < slack;
    const bool isAtHigh = box.max[axis] > body.max[axis] - slack;
    const bool isAtStart = box.min.x < slack;
    const bool isAtFar = box.max.x > body.max.x - slack;
    if (!isAtStart && !isAtFar) {
        return trenchSetUps(part,
                            faceAt(axis, isAtHigh),
                            box,
                            "trench across the " + std::string(wordFor(faceAt(axis, isAtHigh))));
    }
    const Length long_ = Length::mm(box.size().x);
    const bool isLap = isAtLow || isAtHigh;
    std::vector<SetUp> all;
    const auto addCheek = [&](double at) {
        SetUp one = openSetUp(
            RuleId::SetUpSaw,
            part,
            isLap ? "cheek of the lap, waste at the " + std::string(wordFor(faceAt(axis, isAtHigh)))
                  : std::string("cheeks of the slot"));
        one.reference = faceAt(axis, false);
        one.fence = Length::mm(at);
        one.depth = long_;
        all.push_back(std::move(one));
    };
    if (!isAtLow) {
        addCheek(box.min[axis]);
    }
    if (!isAtHigh) {
        addCheek(box.max[axis]);
    }
    SetUp across = isLap ? openSetUp(RuleId::SetUpSaw, part, "shoulder of the lap")
                         : openSetUp(RuleId::SetUpParing, part, "waste of the slot, cut out");
    across.to = long_;
    across.depth = isLap ? Length::mm(box.size()[axis]) : Length();
    all.push_back(std::move(across));
    return all;
}

}  // namespace shoulderline
