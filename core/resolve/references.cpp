#include <algorithm>

#include "core/resolve/frames.h"
#include "core/resolve/placer.h"

namespace shoulderline {

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
    const std::size_t number = member.number > 0 ? static_cast<std::size_t>(member.number) - 1 : 0;
    Neighbour seen{member.stated, isMirrored, number, {}, frame.x, &member, frame, false};
    if (const std::optional<Frame> square = squared(frame)) {
        seen.box = square->outerBounds(member.bodyBox());
        seen.lengthDirection = square->x;
        seen.isSquare = true;
    } else {
        ResolvedPart there = member;
        there.frame = frame;
        seen.box = boundsInSpace(there);
    }
    return seen;
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

bool Placer::findBetween(std::size_t i, std::optional<std::array<Neighbour, 2>>& between) {
    if (const std::optional<Spacing>& spacing = piece_.parts[i].spacing) {
        between = pairOf(i, spacing->after, spacing->before);
        return between.has_value();
    }
    return true;
}

}  // namespace shoulderline
