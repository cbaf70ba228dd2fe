#include "core/resolve/placing.h"

#include <algorithm>
#include <unordered_map>

#include "core/resolve/assembly_frames.h"
#include "core/resolve/relations.h"
#include "core/resolve/sections.h"
#include "core/resolve/shaping.h"

namespace shoulderline {

namespace {

// One of the members that a stated part stands for.
struct MemberId {
    std::size_t stated = 0;
    bool isMirrored = false;
    std::size_t number = 0;  // within its set, from 0
};

// A joint seed while the final order of the parts is not known.
struct EarlySeed {
    std::size_t owner = 0;  // the stated part whose relation asks for it
    MemberId tenoned;
    MemberId mortised;
    End end = End::Start;
    JointKind kind = JointKind::Blind;
};

enum class State { Waiting, Placing, Placed, Failed };

// What is known of a stated part while placing.
struct Entry {
    State state = State::Waiting;
    Hand hand = Hand::None;             // of the one stated
    std::vector<ResolvedPart> members;  // of the one stated; frames in its assembly's space
};

class Placer {
  public:
    Placer(const Piece& piece, Evaluation& evaluation)
        : piece_(piece),
          evaluation_(evaluation),
          assemblies_(piece, evaluation),
          sections_(piece, evaluation),
          entries_(piece.parts.size()) {
        for (std::size_t i = 0; i < piece.parts.size(); ++i) {
            if (!byName_.emplace(piece.parts[i].name, i).second) {
                entries_[i].state = State::Failed;
                evaluation_.trouble(placeOf(i), "another part already has this name");
            }
        }
    }

    PlacedPiece run();

  private:
    [[nodiscard]] Place placeOf(std::size_t i) const { return {"part", piece_.parts[i].name, i}; }
    State place(std::size_t i);
    bool placeNow(std::size_t i);
    std::optional<Neighbour> neighbour(std::size_t i, const std::string& reference);
    std::vector<Neighbour> neighbours(std::size_t i, const std::string& reference);
    std::optional<Neighbour> seenFrom(std::size_t i,
                                      const Part& other,
                                      const ResolvedPart& member,
                                      bool isMirrored);
    std::optional<std::size_t> findReferred(std::size_t i,
                                            const std::string& reference,
                                            Hand& hand);
    std::optional<std::array<Neighbour, 2>> pairOf(std::size_t i,
                                                   const std::string& a,
                                                   const std::string& b);
    bool placeByRelation(std::size_t i, const Section& section, const Spans& spans);
    bool placeByRelation(std::size_t i, const Section& section, const Caps& caps);
    bool placeByRelation(std::size_t i, const Section& section, const Stands& stands);
    bool placeByRelation(std::size_t i, const Section& section, const Free& free);
    void keep(std::size_t i, const PlacedMember& member);
    bool keepOne(std::size_t i, const std::optional<PlacedMember>& member) {
        if (member) {
            keep(i, *member);
        }
        return member.has_value();
    }
    [[nodiscard]] std::size_t indexOf(const MemberId& id) const;
    void emit(PlacedPiece& placed, std::size_t i, bool isMirrored) const;

    const Piece& piece_;
    Evaluation& evaluation_;
    AssemblyFrames assemblies_;
    Sections sections_;
    std::vector<Entry> entries_;
    std::unordered_map<std::string_view, std::size_t> byName_;
    std::vector<EarlySeed> seeds_;
    std::vector<std::size_t> path_;  // parts being placed, for naming a ring
    std::vector<std::size_t>
        first_;  // of each stated part: index of its first member in the result
};

State Placer::place(std::size_t i) {
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

std::optional<std::size_t> Placer::findReferred(std::size_t i,
                                                const std::string& reference,
                                                Hand& hand) {
    auto it = byName_.find(reference);
    if (it == byName_.end()) {
        const PartReference split = splitReference(reference);
        hand = split.hand;
        it = byName_.find(split.name);
    }
    if (it == byName_.end()) {
        evaluation_.trouble(placeOf(i),
                            "it refers to '" + reference + "', and there is no such part");
        return std::nullopt;
    }
    const std::size_t referred = it->second;
    const State state = place(referred);
    if (state == State::Placing) {
        std::string ring;
        for (auto at = std::find(path_.begin(), path_.end(), referred); at != path_.end(); ++at) {
            ring += "'" + piece_.parts[*at].name + "' is placed by ";
        }
        evaluation_.trouble(placeOf(i),
                            "parts are placed by one another in a ring: " + ring + "'" +
                                piece_.parts[referred].name + "'");
        return std::nullopt;
    }
    if (state == State::Failed) {
        evaluation_.trouble(placeOf(i),
                            "it waits for '" + reference + "', which could not be placed");
        return std::nullopt;
    }
    return referred;
}

std::optional<Neighbour> Placer::seenFrom(std::size_t i,
                                          const Part& other,
                                          const ResolvedPart& member,
                                          bool isMirrored) {
    Frame frame = isMirrored ? member.frame.mirroredInX() : member.frame;
    if (other.assembly != piece_.parts[i].assembly) {
        frame = relativeFrame(assemblies_.of(piece_.parts[i].assembly),
                              assemblies_.of(other.assembly).compose(frame));
    }
    const std::optional<Frame> square = squared(frame);
    if (!square) {
        evaluation_.trouble(
            placeOf(i), "it does not meet '" + other.name + "' square", RuleId::FacesSquarely);
        return std::nullopt;
    }
    const std::size_t number = member.number > 0 ? static_cast<std::size_t>(member.number) - 1 : 0;
    return Neighbour{
        member.stated, isMirrored, number, square->outerBounds(member.bodyBox()), square->x};
}

std::optional<Neighbour> Placer::neighbour(std::size_t i, const std::string& reference) {
    Hand hand = Hand::None;
    const std::optional<std::size_t> referred = findReferred(i, reference, hand);
    if (!referred) {
        return std::nullopt;
    }
    const Part& other = piece_.parts[*referred];
    const Entry& entry = entries_[*referred];
    if (entry.members.size() != 1) {
        evaluation_.trouble(placeOf(i), "'" + other.name + "' is a set; a single part is needed");
        return std::nullopt;
    }
    if (other.pair && hand == Hand::None && !piece_.parts[i].pair) {
        evaluation_.trouble(placeOf(i),
                            "'" + other.name + "' is a pair; say which: '" + other.name +
                                ", left' or '" + other.name + ", right'");
        return std::nullopt;
    }
    if (!other.pair && hand != Hand::None) {
        evaluation_.trouble(placeOf(i),
                            "'" + other.name + "' is not a pair, so it has no left or right");
        return std::nullopt;
    }
    return seenFrom(i, other, entry.members.front(), hand != Hand::None && hand != entry.hand);
}

// All that a reference may mean for a part that lies on several: every member of a set, and for a
// part that is no pair itself both of a pair.
std::vector<Neighbour> Placer::neighbours(std::size_t i, const std::string& reference) {
    Hand hand = Hand::None;
    const std::optional<std::size_t> referred = findReferred(i, reference, hand);
    std::vector<Neighbour> all;
    if (!referred) {
        return all;
    }
    const Part& other = piece_.parts[*referred];
    const Entry& entry = entries_[*referred];
    for (const bool isMirrored : {false, true}) {
        const bool isAsked = hand == Hand::None
                                 ? !isMirrored || (other.pair && !piece_.parts[i].pair)
                                 : isMirrored == (hand != entry.hand);
        for (const ResolvedPart& member : entry.members) {
            if (!isAsked) {
                break;
            }
            const std::optional<Neighbour> one = seenFrom(i, other, member, isMirrored);
            if (!one) {
                return {};
            }
            all.push_back(*one);
        }
    }
    return all;
}

std::optional<std::array<Neighbour, 2>> Placer::pairOf(std::size_t i,
                                                       const std::string& a,
                                                       const std::string& b) {
    const std::optional<Neighbour> first = neighbour(i, a);
    const std::optional<Neighbour> second = neighbour(i, b);
    if (!first || !second) {
        return std::nullopt;
    }
    return std::array<Neighbour, 2>{*first, *second};
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
    if (part.spacing) {
        between = pairOf(i, part.spacing->after, part.spacing->before);
    }
    if (!ends || (part.spacing && !between)) {
        return false;
    }
    const std::vector<PlacedMember> members =
        placeSpanning(part, spans, section, *ends, between, placeOf(i), evaluation_);
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
                              JointKind::Blind});
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
    if (part.spacing) {
        between = pairOf(i, part.spacing->after, part.spacing->before);
    }
    if (caps.on.empty()) {
        evaluation_.trouble(placeOf(i), "it lies on no part; name those whose tops it lies on");
    }
    if (supports.empty() || !isWhole || (part.spacing && !between)) {
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
            seeds_.push_back({i,
                              {support.stated, support.isMirrored, support.number},
                              {i, false, n},
                              up > -0.5 ? End::Far : End::Start,
                              isThrough ? JointKind::Through : JointKind::Rests});
        }
    }
    return !members.empty();
}

void Placer::keep(std::size_t i, const PlacedMember& member) {
    const Part& part = piece_.parts[i];
    Entry& entry = entries_[i];
    ResolvedPart resolved = partFrom(part, i, member);
    resolved.number = part.spacing ? static_cast<int>(entry.members.size()) + 1 : 0;
    resolved.body = shapedBody(part.shape, resolved.bodyBox().max, placeOf(i), evaluation_);
    resolved.cuts = workOutCuts(part.cuts, resolved.bodyBox().max, placeOf(i), evaluation_);
    const Box box = resolved.frame.outerBounds(resolved.bodyBox());
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
        placed.parts.push_back(std::move(part));
    }
}

PlacedPiece Placer::run() {
    for (std::size_t i = 0; i < piece_.parts.size(); ++i) {
        place(i);
    }
    PlacedPiece placed;
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
        placed.seeds.push_back(
            {indexOf(seed.tenoned), indexOf(seed.mortised), seed.end, seed.kind});
        if (piece_.parts[seed.owner].pair) {
            placed.seeds.push_back(
                {indexOf(twin(seed.tenoned)), indexOf(twin(seed.mortised)), seed.end, seed.kind});
        }
    }
    return placed;
}

}  // namespace

PlacedPiece placeParts(const Piece& piece, Evaluation& evaluation) {
    return Placer(piece, evaluation).run();
}

}  // namespace shoulderline
