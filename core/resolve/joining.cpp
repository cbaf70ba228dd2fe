#include "core/resolve/joining.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <unordered_map>

#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

Size placedSize(Length value, SizeState state = SizeState::ByRule) {
    return {value, state, {{RuleId::PartPlaced, {}, {}, value}}};
}

// The face of a part that one enters by moving along `axis` in the way of `way`, in its own frame.
Face faceEntered(int axis, double way) {
    constexpr Face kFaces[3][2] = {{Face::StartEnd, Face::FarEnd},
                                   {Face::FaceEdge, Face::BackEdge},
                                   {Face::FaceSide, Face::BackSide}};
    return kFaces[axis][way > 0 ? 0 : 1];
}

Box boxThrough(const Frame& frame, const Box& box) {
    return frame.outerBounds(box);
}

class Joiner {
  public:
    Joiner(const Piece& piece,
           const SizingGuide& guide,
           Evaluation& evaluation,
           ResolvedPiece& resolved)
        : piece_(piece), guide_(guide), evaluation_(evaluation), resolved_(resolved) {
        for (const JointStatement& statement : piece.joints) {
            statements_.emplace(std::pair{std::string_view(statement.tenoned),
                                          std::string_view(statement.mortised)},
                                &statement);
        }
    }

    void join(const JointSeed& seed);
    void addStatedRests();

  private:
    using Key = std::pair<std::string_view, std::string_view>;

    [[nodiscard]] const JointStatement* statementFor(const ResolvedPart& tenoned,
                                                     const ResolvedPart& mortised) const {
        const auto it = statements_.find(Key{tenoned.of, mortised.of});
        return it == statements_.end() ? nullptr : it->second;
    }
    StatedSizes statedSizes(const JointStatement* statement);
    void cut(ResolvedJoint joint, const Frame& relative, const JointStatement* statement);
    void rest(ResolvedJoint joint);

    const Piece& piece_;
    const SizingGuide& guide_;
    Evaluation& evaluation_;
    ResolvedPiece& resolved_;
    std::map<Key, const JointStatement*> statements_;
};

std::string nameOf(const JointStatement& statement) {
    return statement.tenoned + " into " + statement.mortised;
}

StatedSizes Joiner::statedSizes(const JointStatement* statement) {
    StatedSizes sizes;
    if (statement == nullptr) {
        return sizes;
    }
    const std::string name = nameOf(*statement);
    const Place place{"joint", name, std::nullopt};
    for (const auto& [size, stated] : statement->sizes) {
        const bool isOffset = stated.state == SizeState::RulePlusOffset;
        const bool mayBeZero = size == SizeName::Projection || size == SizeName::ShoulderFaceSide ||
                               size == SizeName::ShoulderBackSide ||
                               size == SizeName::ShoulderFaceEdge ||
                               size == SizeName::ShoulderBackEdge;
        const std::optional<Length> value =
            isOffset || mayBeZero ? evaluation_.length(stated.expression, place, wordFor(size))
                                  : evaluation_.size(stated.expression, place, wordFor(size));
        if (value) {
            sizes.set(size, {stated.state, *value});
        }
    }
    return sizes;
}

void Joiner::rest(ResolvedJoint joint) {
    joint.kind = JointKind::Rests;
    joint.name =
        resolved_.parts[joint.tenoned].name + " on " + resolved_.parts[joint.mortised].name;
    joint.frame = resolved_.parts[joint.tenoned].frame;
    resolved_.joints.push_back(std::move(joint));
}

void Joiner::join(const JointSeed& seed) {
    const ResolvedPart& tenoned = resolved_.parts[seed.tenoned];
    const ResolvedPart& mortised = resolved_.parts[seed.mortised];
    const JointStatement* statement = statementFor(tenoned, mortised);
    ResolvedJoint joint;
    joint.tenoned = seed.tenoned;
    joint.mortised = seed.mortised;
    joint.end = seed.end;
    joint.kind = statement != nullptr && statement->kind ? *statement->kind : seed.kind;
    if (joint.kind == JointKind::Rests) {
        rest(std::move(joint));
        return;
    }
    joint.name = tenoned.name + " into " + mortised.name;
    const std::optional<Frame> relative = squared(relativeFrame(mortised.frame, tenoned.frame));
    if (!relative) {
        evaluation_.trouble({"part", tenoned.name, tenoned.stated},
                            "it does not meet '" + mortised.name + "' square",
                            RuleId::FacesSquarely);
        return;
    }
    cut(std::move(joint), *relative, statement);
}

void Joiner::cut(ResolvedJoint joint, const Frame& relative, const JointStatement* statement) {
    ResolvedPart& tenoned = resolved_.parts[joint.tenoned];
    ResolvedPart& mortised = resolved_.parts[joint.mortised];
    const bool atStart = joint.end == End::Start;
    const Vec3 into = relative.directionToOuter({atStart ? -1.0 : 1.0, 0, 0});
    const int axis = std::abs(into.x) > 0.5 ? 0 : (std::abs(into.y) > 0.5 ? 1 : 2);
    const double way = into[axis];
    const Box wood = mortised.bodyBox();
    const SizedJoint sized =
        sizeMortiseAndTenon(joint.kind,
                            {tenoned.role, tenoned.width.value, tenoned.thickness.value},
                            Length::mm(wood.size()[axis]),
                            guide_,
                            statedSizes(statement));
    joint.tenon = sized.tenon;
    for (const std::string& trouble : sized.troubles) {
        const std::string name = nameOf(*statement);
        evaluation_.trouble({"joint", name, std::nullopt}, trouble);
    }

    const double length = sized.tenon.length.value.mm();
    const double shoulder = atStart ? 0.0 : tenoned.shoulderLength.value.mm();
    const Shoulders& shoulders = sized.tenon.shoulders;
    Box tenon;
    tenon.min = {
        atStart ? -length : shoulder, shoulders.faceEdge.value.mm(), shoulders.faceSide.value.mm()};
    tenon.max = {atStart ? 0.0 : shoulder + length,
                 tenon.min.y + sized.tenon.width.value.mm(),
                 tenon.min.z + sized.tenon.thickness.value.mm()};

    // A stated mouth keeps the tenon's middle.
    Box mouth = tenon;
    const double beyondWidth = (sized.mortiseLength.value - sized.tenon.width.value).mm() / 2;
    const double beyondThickness =
        (sized.mortiseWidth.value - sized.tenon.thickness.value).mm() / 2;
    mouth.min = mouth.min - Vec3{0, beyondWidth, beyondThickness};
    mouth.max = mouth.max + Vec3{0, beyondWidth, beyondThickness};

    const Box inMortised = boxThrough(relative, tenon);
    Box mortise = boxThrough(relative, mouth);
    const double depth = sized.mortiseDepth.value.mm();
    if (way > 0) {
        mortise.max[axis] = mortise.min[axis] + depth;
    } else {
        mortise.min[axis] = mortise.max[axis] - depth;
    }

    const std::size_t index = resolved_.joints.size();
    const Face face = faceEntered(axis, way);
    tenoned.tenons.push_back({index, tenon});
    mortised.mortises.push_back(
        {index, face, mortise, inMortised, joint.kind == JointKind::Through});
    Length& reach = atStart ? tenoned.startTenon : tenoned.farTenon;
    reach = std::max(reach, sized.tenon.length.value);

    const bool entersSide = axis == 2;
    const int acrossAxis = entersSide ? 1 : 2;
    joint.mortise.face = face;
    joint.mortise.reference = entersSide ? Face::FaceEdge : Face::FaceSide;
    joint.mortise.width = sized.mortiseWidth;
    joint.mortise.length = sized.mortiseLength;
    joint.mortise.depth = sized.mortiseDepth;
    joint.mortise.fromFace = placedSize(Length::mm(mortise.min[acrossAxis]));
    const int endAxis = axis == 0 ? 1 : 0;
    joint.mortise.fromStart = placedSize(Length::mm(mortise.min[endAxis] - wood.min[endAxis]));
    joint.mortise.fromFar = Length::mm(wood.max[endAxis] - mortise.max[endAxis]);

    const Vec3 middle{shoulder, (tenon.min.y + tenon.max.y) / 2, (tenon.min.z + tenon.max.z) / 2};
    joint.frame = {tenoned.frame.toOuter(middle),
                   tenoned.frame.x * (atStart ? -1.0 : 1.0),
                   tenoned.frame.y,
                   tenoned.frame.z};
    resolved_.joints.push_back(std::move(joint));
}

// Joints that rest where the maker says so and no relation makes one: wherever members of the two
// stated parts touch.
void Joiner::addStatedRests() {
    std::unordered_map<std::string_view, std::vector<std::size_t>> membersOf;
    for (std::size_t i = 0; i < resolved_.parts.size(); ++i) {
        membersOf[resolved_.parts[i].of].push_back(i);
    }
    std::map<Key, bool> isMade;
    for (const ResolvedJoint& joint : resolved_.joints) {
        isMade[Key{resolved_.parts[joint.tenoned].of, resolved_.parts[joint.mortised].of}] = true;
    }
    for (const JointStatement& statement : piece_.joints) {
        if (isMade.contains(Key{statement.tenoned, statement.mortised})) {
            continue;
        }
        const Place place{"joint", statement.tenoned, std::nullopt};
        const bool known =
            membersOf.contains(statement.tenoned) && membersOf.contains(statement.mortised);
        if (!known) {
            const bool stated =
                std::any_of(piece_.parts.begin(), piece_.parts.end(), [&](const Part& part) {
                    return part.name == statement.tenoned || part.name == statement.mortised;
                });
            evaluation_.trouble(
                place,
                "there is no joint between '" + statement.tenoned + "' and '" + statement.mortised +
                    "'" + (stated ? ": one of them is not there or could not be placed" : ""));
            continue;
        }
        if (statement.kind.value_or(JointKind::Blind) != JointKind::Rests) {
            evaluation_.trouble(place,
                                "no relation brings '" + statement.tenoned + "' to '" +
                                    statement.mortised +
                                    "', so only a joint that rests can be stated between them");
            continue;
        }
        bool touched = false;
        for (const std::size_t a : membersOf[statement.tenoned]) {
            const Box first = resolved_.parts[a].frame.outerBounds(resolved_.parts[a].bodyBox());
            for (const std::size_t b : membersOf[statement.mortised]) {
                const Box second =
                    resolved_.parts[b].frame.outerBounds(resolved_.parts[b].bodyBox());
                if (a != b && first.meets(second, kLengthTolerance.mm())) {
                    touched = true;
                    ResolvedJoint joint;
                    joint.tenoned = a;
                    joint.mortised = b;
                    rest(std::move(joint));
                }
            }
        }
        if (!touched) {
            evaluation_.trouble(place,
                                "'" + statement.tenoned + "' and '" + statement.mortised +
                                    "' do not touch, so nothing rests");
        }
    }
}

}  // namespace

void joinParts(const Piece& piece,
               std::span<const JointSeed> seeds,
               const SizingGuide& guide,
               Evaluation& evaluation,
               ResolvedPiece& resolved) {
    Joiner joiner(piece, guide, evaluation, resolved);
    for (const JointSeed& seed : seeds) {
        joiner.join(seed);
    }
    joiner.addStatedRests();
}

}  // namespace shoulderline
