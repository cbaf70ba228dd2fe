#pragma once

#include <array>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/resolve/assembly_frames.h"
#include "core/resolve/placing.h"
#include "core/resolve/relations.h"
#include "core/resolve/sections.h"

namespace shoulderline {

// Places the parts of a piece for placeParts(): each by its relation, those that it refers to first
// (placing.cpp); finds what a reference means (references.cpp).
class Placer {
  public:
    Placer(const Piece& piece,
           const SizingGuide& guide,
           const KnownSolids& known,
           Evaluation& evaluation)
        : piece_(piece),
          guide_(guide),
          known_(known),
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
        std::optional<GroovedEdges> grooved = std::nullopt;
        std::size_t edge = 0;
    };

    enum class State { Waiting, Placing, Placed, Failed };

    // What is known of a stated part while placing.
    struct Entry {
        State state = State::Waiting;
        Hand hand = Hand::None;             // of the one stated
        std::vector<ResolvedPart> members;  // of the one stated; frames in its assembly's space
        std::vector<PlaneCut> ends;         // of the last of them, see PlacedMember
    };

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
    // Of a set, the two parts that it lies between; false where there should be two and are not.
    bool findBetween(std::size_t i, std::optional<std::array<Neighbour, 2>>& between);
    bool placeByRelation(std::size_t i, const Section& section, const Spans& spans);
    bool placeByRelation(std::size_t i, const Section& section, const Caps& caps);
    bool placeByRelation(std::size_t i, const Section& section, const Stands& stands);
    bool placeByRelation(std::size_t i, const Section& section, const Free& free);
    bool placeByRelation(std::size_t i, const Section& section, const Fills& fills);
    void keep(std::size_t i, const PlacedMember& member);
    // Gives the part its bow, where one is stated.
    void shape(const Part& part,
               const PlacedMember& member,
               const Place& place,
               ResolvedPart& resolved);
    void bendIt(const Part& part, ResolvedPart& resolved, const Place& place);
    // Cuts the ends of a part whose shoulders are square to its curve; whether there are any.
    static bool cutShoulders(ResolvedPart& resolved);
    bool keepOne(std::size_t i, const std::optional<PlacedMember>& member) {
        if (member) {
            keep(i, *member);
        }
        return member.has_value();
    }
    [[nodiscard]] std::size_t indexOf(const MemberId& id) const;
    // Turns what swings to its station and sets its bar there, once all parts are placed in their
    // assemblies; then tells which parts move, and bores them, once their order is known
    // (swinging.cpp).
    void solveSwings(PlacedPiece& placed);
    void finishSwings(PlacedPiece& placed);
    std::optional<ResolvedSwing> solveSwing(std::size_t assembly);
    [[nodiscard]] std::string nearestReached(const ResolvedSwing& swing,
                                             const Box& back,
                                             Angle lean) const;
    std::optional<SwingPosition> reached(const ResolvedSwing& swing,
                                         const RestStation& station,
                                         const Box& back,
                                         const Place& place);
    std::optional<double> statedMm(const Statement& statement,
                                   const Place& place,
                                   std::string_view what);
    void boreFor(ResolvedSwing& swing, PlacedPiece& placed);
    void borePegs(ResolvedSwing& swing, PlacedPiece& placed);
    // The stated part that a reference means, if it is placed.
    [[nodiscard]] std::optional<std::size_t> statedPart(const std::string& reference) const;
    void emit(PlacedPiece& placed, std::size_t i, bool isMirrored) const;

    const Piece& piece_;
    const SizingGuide& guide_;
    const KnownSolids& known_;
    Evaluation& evaluation_;
    AssemblyFrames assemblies_;
    Sections sections_;
    std::vector<Entry> entries_;
    std::unordered_map<std::string_view, std::size_t> byName_;
    std::vector<EarlySeed> seeds_;
    std::vector<Vec3> offsets_;  // of each stated part in the piece's space: a bar's to its station
    std::vector<std::size_t> path_;  // parts being placed, for naming a ring
    std::vector<std::size_t>
        first_;  // of each stated part: index of its first member in the result
};

}  // namespace shoulderline
