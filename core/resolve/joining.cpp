#include "core/resolve/joining.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <unordered_map>

#include "core/resolve/joint_places.h"
#include "core/resolve/panel_joints.h"
#include "core/resolve/screwing.h"
#include "core/resolve/stated_sizes.h"

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

    // A panel's edge, before the joints of its frame are opened: they go by its grooves.
    void groove(const JointSeed& seed, std::span<const JointSeed> seeds);
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
    void size(OpenJoint& joint);
    void sizeThere(OpenJoint& joint);
    void lapAcross(std::size_t first, std::size_t second, const JointStatement& statement);
    bool tongue(std::size_t first, std::size_t second, const JointStatement& statement);
    void rest(std::size_t tenoned, std::size_t mortised, const JointForm& form);

    const Piece& piece_;
    const SizingGuide& guide_;
    Evaluation& evaluation_;
    ResolvedPiece& resolved_;
    std::map<Key, const JointStatement*> statements_;
    std::vector<OpenJoint> open_;
};

// Nothing goes into the other part but a screw.
bool isButt(JointKind kind) {
    return kind == JointKind::Rests || kind == JointKind::Screwed;
}

void Joiner::rest(std::size_t tenoned, std::size_t mortised, const JointForm& form) {
    ResolvedJoint joint;
    joint.tenoned = tenoned;
    joint.mortised = mortised;
    joint.kind = form.kind;
    for (const JointFeature feature : form.features) {
        if (mayHave(form.kind, feature)) {
            joint.features.insert(feature);
        }
    }
    joint.name = resolved_.parts[tenoned].name + " on " + resolved_.parts[mortised].name;
    joint.frame = restingFrame(resolved_.parts[tenoned], resolved_.parts[mortised]);
    resolved_.joints.push_back(std::move(joint));
    if (form.kind != JointKind::Screwed) {
        return;
    }
    const JointStatement* statement =
        statementFor(resolved_.parts[tenoned], resolved_.parts[mortised]);
    const std::string trouble = placeScrews(
        resolved_.joints.size() - 1, guide_, statedSizesOf(statement, evaluation_), resolved_);
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
    if (form.kind == JointKind::CrossLap || form.isDry()) {
        evaluation_.trouble({"joint", tenoned.of + " into " + mortised.of, std::nullopt},
                            form.kind == JointKind::CrossLap
                                ? "one ends at the other, so they are not lapped across"
                            : form.kind == JointKind::Tongued
                                ? "one ends at the other, so no edge of it is tongued"
                                : "it is no panel that fills a frame, so it stands in no groove");
        form.kind = seed.kind;
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
    joint->stated = statedSizesOf(statement, evaluation_);
    const auto* spans = std::get_if<Spans>(&piece_.parts[tenoned.stated].relation);
    if (spans != nullptr && spans->fit == ShoulderFit::Level) {
        cutLevel(*joint, resolved_);
    }
    open_.push_back(std::move(*joint));
}

void Joiner::groove(const JointSeed& seed, std::span<const JointSeed> seeds) {
    const ResolvedPart& panel = resolved_.parts[seed.tenoned];
    const ResolvedPart& member = resolved_.parts[seed.mortised];
    const JointStatement* statement = statementFor(panel, member);
    if (statement != nullptr && statement->kind.value_or(seed.kind) != JointKind::Grooved) {
        evaluation_.trouble({"joint", panel.of + " into " + member.of, std::nullopt},
                            "a panel that fills a frame stands in grooves");
    }
    std::optional<Extent> also;
    for (const FrameCorner& corner : cornersOf(seed, seeds, resolved_)) {
        const JointStatement* there = statementFor(resolved_.parts[corner.other], member);
        if (there != nullptr && there->kind == JointKind::Stub) {  // it stands in the groove
            also = also ? Extent{std::min(also->min, corner.covers.min),
                                 std::max(also->max, corner.covers.max)}
                        : corner.covers;
        }
    }
    if (!placeGrooved(seed, also, resolved_)) {
        evaluation_.trouble({"part", panel.name, panel.stated},
                            "it does not meet '" + member.name + "' square",
                            RuleId::FacesSquarely);
    }
}

bool isSunk(const OpenJoint& joint) {
    // A stub stands in a groove as it is.
    return joint.task.form.isSized() && joint.task.form.kind != JointKind::Stub;
}

void Joiner::size(OpenJoint& joint) {
    joint.sized = sizeJoint(joint.task, guide_, joint.stated);
}

// Sizes it for the wood as it is behind the mouth, where that is not the blank's.
void Joiner::sizeThere(OpenJoint& joint) {
    size(joint);
    const ResolvedPart& mortised = resolved_.parts[joint.mortised];
    const bool isPlain = mortised.body.isBox() &&
                         std::all_of(mortised.cuts.begin(),
                                     mortised.cuts.end(),
                                     [](const ResolvedCut& cut) { return cut.joint.has_value(); });
    if (isPlain || joint.face || !isSunk(joint)) {
        return;
    }
    const Box blank = joint.task.post;
    takeFaceAsItIs(joint, mortised, guide_);
    if (!(joint.task.post == blank)) {
        size(joint);
    }
}

void Joiner::close() {
    for (OpenJoint& joint : open_) {
        if (!isButt(joint.task.form.kind)) {
            sizeThere(joint);
        }
    }
    findNeighboursBefore(open_, resolved_, guide_);
    for (OpenJoint& joint : open_) {
        if (joint.task.neighbourBefore > kLengthTolerance) {
            size(joint);
        }
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

void Joiner::lapAcross(std::size_t first, std::size_t second, const JointStatement& statement) {
    const std::string trouble =
        placeCrossLap(first, second, guide_, statedSizesOf(&statement, evaluation_), resolved_);
    if (!trouble.empty()) {
        evaluation_.trouble({"joint", statement.tenoned + " into " + statement.mortised, {}},
                            trouble);
    }
}

// Whether the one is a board that laps over the other. Of a set tongued to itself each neighbour
// once, the tongue along its back edge.
bool Joiner::tongue(std::size_t first, std::size_t second, const JointStatement& statement) {
    const std::optional<LappedEdges> edges =
        lappedEdges(resolved_.parts[first], resolved_.parts[second]);
    if (!edges || (statement.tenoned == statement.mortised && !edges->atBackEdge)) {
        return false;
    }
    for (const std::string& trouble : placeTongued(
             first, second, *edges, guide_, statedSizesOf(&statement, evaluation_), resolved_)) {
        evaluation_.trouble({"joint", statement.tenoned + " into " + statement.mortised, {}},
                            trouble);
    }
    return true;
}

// Joints that rest, are screwed, tongued or lap across where the maker says so and no relation
// makes one: wherever members of the two stated parts touch.
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
        const bool isLap = statement.kind == JointKind::CrossLap;
        const bool isTongued = statement.kind == JointKind::Tongued;
        if (!isLap && !isTongued && !isButt(statement.kind.value_or(JointKind::Blind))) {
            evaluation_.trouble(place,
                                "no relation brings '" + statement.tenoned + "' to '" +
                                    statement.mortised +
                                    "', so only a joint that rests, is screwed, tongued or "
                                    "lapped across can be stated between them");
            continue;
        }
        bool touched = false;
        for (const std::size_t a : membersOf[statement.tenoned]) {
            const Box first = resolved_.parts[a].frame.outerBounds(resolved_.parts[a].bodyBox());
            for (const std::size_t b : membersOf[statement.mortised]) {
                const Box second =
                    resolved_.parts[b].frame.outerBounds(resolved_.parts[b].bodyBox());
                if (a == b || !first.meets(second, kLengthTolerance.mm())) {
                    continue;
                }
                if (isTongued) {
                    touched = tongue(a, b, statement) || touched;
                    continue;
                }
                touched = true;
                if (isLap) {
                    lapAcross(a, b, statement);
                } else {
                    rest(a, b, {*statement.kind, statement.features});
                }
            }
        }
        if (!touched) {
            evaluation_.trouble(place,
                                "'" + statement.tenoned + "' and '" + statement.mortised +
                                    (isTongued ? "' do not lap edge over edge, so no tongue reaches"
                                               : "' do not touch, so nothing rests"));
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
        if (seed.grooved) {
            joiner.groove(seed, seeds);
        }
    }
    for (const JointSeed& seed : seeds) {
        if (!seed.grooved) {
            joiner.open(seed);
        }
    }
    joiner.close();
    joiner.addStatedRests();
}

}  // namespace shoulderline
