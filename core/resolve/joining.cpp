#include "core/resolve/joining.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <unordered_map>

#include "core/resolve/joint_places.h"

namespace shoulderline {

namespace {

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

    void open(const JointSeed& seed);
    // Sizes and places all that are open, in the order opened.
    void close();
    void addStatedRests();

  private:
    using Key = std::pair<std::string_view, std::string_view>;

    [[nodiscard]] const JointStatement* statementFor(const ResolvedPart& tenoned,
                                                     const ResolvedPart& mortised) const {
        const auto it = statements_.find(Key{tenoned.of, mortised.of});
        return it == statements_.end() ? nullptr : it->second;
    }
    StatedSizes statedSizes(const JointStatement* statement);
    void size(OpenJoint& joint);
    void rest(std::size_t tenoned, std::size_t mortised, const JointForm& form);

    const Piece& piece_;
    const SizingGuide& guide_;
    Evaluation& evaluation_;
    ResolvedPiece& resolved_;
    std::map<Key, const JointStatement*> statements_;
    std::vector<OpenJoint> open_;
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

// Nothing goes into the other part but a screw.
bool isButt(JointKind kind) {
    return kind == JointKind::Rests || kind == JointKind::Screwed;
}

void Joiner::rest(std::size_t tenoned, std::size_t mortised, const JointForm& form) {
    ResolvedJoint joint;
    joint.tenoned = tenoned;
    joint.mortised = mortised;
    joint.kind = form.kind;
    joint.name = resolved_.parts[tenoned].name + " on " + resolved_.parts[mortised].name;
    joint.frame = resolved_.parts[tenoned].frame;
    resolved_.joints.push_back(std::move(joint));
    if (form.kind != JointKind::Screwed) {
        return;
    }
    const JointStatement* statement =
        statementFor(resolved_.parts[tenoned], resolved_.parts[mortised]);
    const std::string trouble =
        placeScrews(resolved_.joints.size() - 1, guide_, statedSizes(statement), resolved_);
    if (!trouble.empty()) {
        evaluation_.trouble({"joint", resolved_.joints.back().name, std::nullopt}, trouble);
    }
}

void Joiner::open(const JointSeed& seed) {
    const ResolvedPart& tenoned = resolved_.parts[seed.tenoned];
    const ResolvedPart& mortised = resolved_.parts[seed.mortised];
    const JointStatement* statement = statementFor(tenoned, mortised);
    JointForm form{seed.kind, {}};
    if (statement != nullptr) {
        form = {statement->kind.value_or(seed.kind), statement->features};
    }
    if (isButt(form.kind)) {
        OpenJoint resting;
        resting.tenoned = seed.tenoned;
        resting.mortised = seed.mortised;
        resting.task.form = form;
        open_.push_back(std::move(resting));
        return;
    }
    std::optional<OpenJoint> joint =
        openJoint(resolved_, seed.tenoned, seed.mortised, seed.end, form);
    if (!joint) {
        evaluation_.trouble({"part", tenoned.name, tenoned.stated},
                            "it does not meet '" + mortised.name + "' square",
                            RuleId::FacesSquarely);
        return;
    }
    joint->stated = statedSizes(statement);
    open_.push_back(std::move(*joint));
}

void Joiner::size(OpenJoint& joint) {
    joint.sized = sizeJoint(joint.task, guide_, joint.stated);
}

void Joiner::close() {
    for (OpenJoint& joint : open_) {
        size(joint);  // nothing to size where one part rests on the other
    }
    const std::vector<MitreCut> mitres = mitreEnds(open_, guide_);
    for (std::size_t i = 0; i < open_.size(); ++i) {
        if (isButt(open_[i].task.form.kind)) {
            rest(open_[i].tenoned, open_[i].mortised, open_[i].task.form);
            continue;
        }
        std::vector<HalfSpace> keeps;
        for (const MitreCut& mitre : mitres) {
            if (mitre.joint == i) {
                keeps.push_back(mitre.keeps);
            }
        }
        if (!keeps.empty()) {
            size(open_[i]);
        }
        const ResolvedPart& tenoned = resolved_.parts[open_[i].tenoned];
        const ResolvedPart& mortised = resolved_.parts[open_[i].mortised];
        for (const std::string& trouble : open_[i].sized.troubles) {
            const std::string name = tenoned.of + " into " + mortised.of;
            evaluation_.trouble({"joint", name, std::nullopt}, trouble);
        }
        placeJoint(open_[i], guide_, keeps, resolved_);
    }
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
        if (!isButt(statement.kind.value_or(JointKind::Blind))) {
            evaluation_.trouble(
                place,
                "no relation brings '" + statement.tenoned + "' to '" + statement.mortised +
                    "', so only a joint that rests or is screwed can be stated between them");
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
                    rest(a, b, {*statement.kind, statement.features});
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
        joiner.open(seed);
    }
    joiner.close();
    joiner.addStatedRests();
}

}  // namespace shoulderline
