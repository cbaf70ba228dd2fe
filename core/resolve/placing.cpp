#include "core/resolve/placing.h"

#include <algorithm>

#include "core/resolve/bending.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/panel_placing.h"
#include "core/resolve/placer.h"
#include "core/resolve/shaping.h"
#include "core/resolve/stated_sizes.h"

namespace shoulderline {

Placer::State Placer::place(std::size_t i) {
    Entry& entry = entries_[i];
    if (entry.state != State::Waiting) {
        return entry.state;
    }
    // A chain this long is no furniture; the bound keeps a hostile file from the end of the stack.
    constexpr std::size_t kLongestChain = 256;
    if (path_.size() >= kLongestChain) {
        evaluation_.trouble(placeOf(i),
                            "it hangs on too long a chain of parts that are placed by one another");
        return entry.state = State::Failed;
    }
    entry.state = State::Placing;
    path_.push_back(i);
    const bool isPlaced = placeNow(i);
    path_.pop_back();
    entry.state = isPlaced ? State::Placed : State::Failed;
    return entry.state;
}

bool Placer::placeNow(std::size_t i) {
    const Part& part = piece_.parts[i];
    if (!assemblies_.has(part.assembly)) {
        evaluation_.trouble(placeOf(i),
                            "there is no assembly '" + part.assembly + "' to put it in");
        return false;
    }
    const std::optional<Section> section = sections_.of(part, placeOf(i));
    if (!section) {
        return false;
    }
    return std::visit([&](const auto& relation) { return placeByRelation(i, *section, relation); },
                      part.relation);
}

bool Placer::placeByRelation(std::size_t i, const Section& section, const Stands& stands) {
    return keepOne(i, placeStanding(piece_.parts[i], stands, section, placeOf(i), evaluation_));
}

bool Placer::placeByRelation(std::size_t i, const Section& section, const Free& free) {
    return keepOne(i, placeFree(piece_.parts[i], free, section, placeOf(i), evaluation_));
}

bool Placer::placeByRelation(std::size_t i, const Section& section, const Spans& spans) {
    const Part& part = piece_.parts[i];
    const std::optional<std::array<Neighbour, 2>> ends = pairOf(i, spans.from, spans.to);
    std::optional<std::array<Neighbour, 2>> between;
    if (!findBetween(i, between) || !ends) {
        return false;
    }
    const bool isAngled =
        spans.angled || spans.leans || !(*ends)[0].isSquare || !(*ends)[1].isSquare;
    const std::vector<PlacedMember> members = (isAngled ? placeAngled : placeSpanning)(
        part, spans, section, *ends, between, placeOf(i), evaluation_);
    const JointKind kind = part.section == SectionForm::Round ? JointKind::Round : JointKind::Blind;
    for (std::size_t n = 0; n < members.size(); ++n) {
        keep(i, members[n]);
        const ResolvedPart& member = entries_[i].members.back();
        // Which of the two lies at the start of the member's length.
        const Vec3 toSecond = (*ends)[1].box.centre() - (*ends)[0].box.centre();
        const bool firstAtStart = dot(toSecond, member.frame.x) > 0;
        for (std::size_t e = 0; e < 2; ++e) {
            const Neighbour& end = (*ends)[e];
            seeds_.push_back({i,
                              {i, false, n},
                              {end.stated, end.isMirrored, 0},
                              (e == 0) == firstAtStart ? End::Start : End::Far,
                              kind});
        }
    }
    return !members.empty();
}

bool Placer::placeByRelation(std::size_t i, const Section& section, const Caps& caps) {
    const Part& part = piece_.parts[i];
    std::vector<Neighbour> supports;
    bool isWhole = true;
    for (const std::string& reference : caps.on) {
        const std::vector<Neighbour> some = neighbours(i, reference);
        supports.insert(supports.end(), some.begin(), some.end());
        isWhole = isWhole && !some.empty();
    }
    std::optional<std::array<Neighbour, 2>> between;
    const bool isBetween = findBetween(i, between);
    if (caps.on.empty()) {
        evaluation_.trouble(placeOf(i), "it lies on no part; name those whose tops it lies on");
    }
    if (supports.empty() || !isWhole || !isBetween) {
        return false;
    }
    const std::vector<PlacedMember> members =
        placeCapping(part, caps, section, supports, between, placeOf(i), evaluation_);
    for (std::size_t n = 0; n < members.size(); ++n) {
        keep(i, members[n]);
        for (const Neighbour& support : supports) {
            const double up = support.lengthDirection.z;
            const bool stands = std::abs(up) > 0.5;
            const bool isThrough = stands && part.role == Role::Arm && members.size() == 1;
            const bool isRound = support.part->section == SectionForm::Round;
            seeds_.push_back(
                {i,
                 {support.stated, support.isMirrored, support.number},
                 {i, false, n},
                 up > -0.5 ? End::Far : End::Start,
                 isRound ? JointKind::Round : (isThrough ? JointKind::Through : JointKind::Rests)});
        }
    }
    return !members.empty();
}

bool Placer::placeByRelation(std::size_t i, const Section& section, const Fills& fills) {
    const Part& part = piece_.parts[i];
    if (part.spacing) {
        evaluation_.trouble(placeOf(i), "a panel that fills a frame cannot be a set");
        return false;
    }
    const std::optional<std::array<Neighbour, 2>> edges = pairOf(i, fills.edges[0], fills.edges[1]);
    const std::optional<std::array<Neighbour, 2>> ends = pairOf(i, fills.ends[0], fills.ends[1]);
    if (!edges || !ends) {
        return false;
    }
    PanelFrame frame{{(*edges)[0], (*edges)[1], (*ends)[0], (*ends)[1]}, {}};
    for (std::size_t k = 0; k < frame.around.size(); ++k) {
        const std::string& other = piece_.parts[frame.around[k].stated].name;
        frame.stated[k] = statedSizesOf(findJointStatement(piece_, part.name, other), evaluation_);
    }
    const std::optional<PlacedPanel> panel =
        placeFilling(part, fills, section, frame, guide_, placeOf(i), evaluation_);
    if (!panel) {
        return false;
    }
    keep(i, panel->member);
    for (std::size_t edge = 0; edge < panel->edges.size(); ++edge) {
        const Neighbour& around = frame.around[panel->neighbours[edge]];
        EarlySeed seed{i,
                       {i, false, 0},
                       {around.stated, around.isMirrored, around.number},
                       edge == 2 ? End::Start : End::Far,
                       JointKind::Grooved};
        seed.grooved = panel->edges;
        seed.edge = edge;
        seeds_.push_back(std::move(seed));
    }
    return true;
}

void Placer::keep(std::size_t i, const PlacedMember& member) {
    const Part& part = piece_.parts[i];
    Entry& entry = entries_[i];
    ResolvedPart resolved = partFrom(part, i, member);
    resolved.number = part.spacing ? static_cast<int>(entry.members.size()) + 1 : 0;
    if (!entry.members.empty() && entry.ends == member.ends &&
        entry.members.back().bodyBox() == resolved.bodyBox()) {
        const ResolvedPart& alike = entry.members.back();
        resolved.body = alike.body;
        resolved.bend = alike.bend;
        resolved.cuts = alike.cuts;
        resolved.solids = alike.solids;
        resolved.easings = alike.easings;
    } else {
        shape(part, member, placeOf(i), resolved);
        entry.ends = member.ends;
    }
    const Box box = boundsInSpace(resolved);
    if (part.pair) {
        entry.hand = box.centre().x >= 0 ? Hand::Right : Hand::Left;
        const double inner = entry.hand == Hand::Right ? box.min.x : -box.max.x;
        if (inner < -kLengthTolerance.mm()) {
            evaluation_.trouble(placeOf(i),
                                "it reaches over the middle of the piece, so it and its mirror "
                                "twin would run through one another",
                                RuleId::PartsClear);
        }
    }
    entry.members.push_back(std::move(resolved));
}

void Placer::shape(const Part& part,
                   const PlacedMember& member,
                   const Place& place,
                   ResolvedPart& resolved) {
    const Vec3 size = resolved.bodyBox().max;
    resolved.body = shapedBody(part.shape, part.section, size, place, evaluation_);
    bendIt(part, resolved, place);
    resolved.body.planes.insert(resolved.body.planes.end(), member.ends.begin(), member.ends.end());
    const bool isCutToCurve = cutShoulders(resolved);
    easeArrises(part, place, known_, evaluation_, resolved);
    const bool isCut = !member.ends.empty() || isCutToCurve;
    if (resolved.solids.isEmpty() || (isCut && resolved.easings.empty())) {
        resolved.solids = known_.of(resolved.body, part.name);
    }
    resolved.cuts = workOutCuts(part.cuts, size, place, guide_, evaluation_);
}

void Placer::bendIt(const Part& part, ResolvedPart& resolved, const Place& place) {
    if (!part.bend) {
        return;
    }
    if (part.shape.contains(Face::FaceSide) || part.shape.contains(Face::BackSide) ||
        part.section != SectionForm::Square) {
        evaluation_.trouble(place,
                            "a bent part is square in section, and its face side and back side "
                            "have no shape of their own; it is left straight");
        return;
    }
    const Vec3 size = resolved.bodyBox().max;
    std::optional<ResolvedBend> bend =
        workOutBend(*part.bend, size, guide_.rules, place, evaluation_);
    if (!bend) {
        return;
    }
    Body bent = resolved.body;
    bent.edge = bentEdge(*bend, size.x, size.z);
    BodySolids solids = known_.of(bent, part.name);
    if (solids.isEmpty()) {
        evaluation_.trouble(place,
                            "its bow cannot be made: " + bent.toPolyhedron().error().message);
        return;
    }
    resolved.solids = std::move(solids);
    resolved.body = std::move(bent);
    resolved.bend = std::move(bend);
}

bool Placer::cutShoulders(ResolvedPart& resolved) {
    if (!resolved.bend || resolved.bend->shoulders == BendShoulders::Chord) {
        return false;
    }
    const Vec3 size = resolved.bodyBox().max;
    for (const End end : {End::Start, End::Far}) {
        if (!endPlaneOf(resolved.body, end)) {
            resolved.body.planes.push_back(
                shoulderSquareToCurve(*resolved.bend, end, size.x, size.z));
        }
    }
    return true;
}

std::size_t Placer::indexOf(const MemberId& id) const {
    const std::size_t count = entries_[id.stated].members.size();
    return first_[id.stated] + (id.isMirrored ? count : 0) + id.number;
}

void Placer::emit(PlacedPiece& placed, std::size_t i, bool isMirrored) const {
    const Entry& entry = entries_[i];
    const Frame assembly = assemblies_.of(piece_.parts[i].assembly);
    for (ResolvedPart part : entry.members) {
        part.name = part.of;
        if (part.number > 0) {
            part.name += " " + std::to_string(part.number);
        }
        if (entry.hand != Hand::None) {
            part.hand = (entry.hand == Hand::Right) != isMirrored ? Hand::Right : Hand::Left;
            part.name += ", ";
            part.name += wordFor(part.hand);
        }
        part.frame = assembly.compose(isMirrored ? part.frame.mirroredInX() : part.frame);
        part.frame.origin = part.frame.origin + offsets_[i];
        placed.parts.push_back(std::move(part));
    }
}

PlacedPiece Placer::run() {
    for (std::size_t i = 0; i < piece_.parts.size(); ++i) {
        place(i);
    }
    PlacedPiece placed;
    offsets_.resize(piece_.parts.size());
    solveSwings(placed);
    for (std::size_t i = 0; i < piece_.parts.size(); ++i) {
        first_.push_back(placed.parts.size());
        if (entries_[i].state != State::Placed) {
            entries_[i].members.clear();
        }
        emit(placed, i, false);
        if (piece_.parts[i].pair) {
            emit(placed, i, true);
        }
    }
    finishSwings(placed);
    // The twin of a member is its mirror image; a part that is no pair is its own.
    const auto twin = [this](MemberId id) {
        id.isMirrored = piece_.parts[id.stated].pair ? !id.isMirrored : id.isMirrored;
        return id;
    };
    for (const EarlySeed& seed : seeds_) {
        if (entries_[seed.tenoned.stated].members.empty() ||
            entries_[seed.mortised.stated].members.empty()) {
            continue;
        }
        JointSeed one{indexOf(seed.tenoned),
                      indexOf(seed.mortised),
                      seed.end,
                      seed.kind,
                      seed.grooved,
                      seed.edge};
        placed.seeds.push_back(one);
        if (piece_.parts[seed.owner].pair) {
            one.tenoned = indexOf(twin(seed.tenoned));
            one.mortised = indexOf(twin(seed.mortised));
            placed.seeds.push_back(std::move(one));
        }
    }
    return placed;
}

PlacedPiece placeParts(const Piece& piece,
                       const SizingGuide& guide,
                       const KnownSolids& known,
                       Evaluation& evaluation) {
    return Placer(piece, guide, known, evaluation).run();
}

}  // namespace shoulderline
