#include "core/drawing/part_fixing.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string_view>

#include "core/drawing/part_place.h"
#include "core/drawing/part_spacing.h"
#include "core/measure/length_text.h"
#include "core/resolve/found_sizes.h"
#include "core/resolve/frames.h"
#include "core/resolve/screws_needed.h"

namespace shoulderline {

namespace {

void nameOnce(std::vector<std::string>& all, const std::string& one) {
    if (std::find(all.begin(), all.end(), one) == all.end()) {
        all.push_back(one);
    }
}

// What holds the parts of one stated name.
class FixingTeller {
  public:
    FixingTeller(const Piece& piece, const ResolvedPiece& resolved, std::size_t part)
        : piece_(piece),
          resolved_(resolved),
          part_(resolved.parts[part]),
          index_(part),
          stated_(piece.parts[part_.stated]),
          screws_(screwsNeeded(resolved, unitOf(piece.style) == Unit::Inch)) {}

    [[nodiscard]] std::vector<std::string> lines() const {
        std::vector<std::string> lines;
        if (!stated_.note.empty()) {
            lines.push_back(stated_.note);
        }
        const std::string found =
            foundText(foundIn(part_), [this](Length length) { return shown(length); });
        if (!found.empty()) {
            lines.push_back("as found, " + found);
        }
        addEnds(lines);
        if (std::optional<std::string> spacing = spacingNote(piece_, resolved_, index_)) {
            lines.push_back(*std::move(spacing));
        }
        addResting(lines);
        if (std::optional<std::string> out = overhangs(piece_, resolved_, index_)) {
            lines.push_back(*std::move(out));
        }
        addClear(lines);
        addPlaces(lines);
        addScrews(lines);
        return lines;
    }

  private:
    [[nodiscard]] std::string shown(Length length) const {
        return letterLength(length, piece_.style);
    }
    [[nodiscard]] std::string shown(double mm) const { return shown(Length::mm(mm)); }

    void addEnds(std::vector<std::string>& lines) const {
        if (std::optional<std::string> ends = endsInto(resolved_, index_)) {
            lines.push_back(*std::move(ends));
        }
    }

    // Of one that lies on others, or is one of a set, its spacing and its overhangs tell that.
    void addPlaces(std::vector<std::string>& lines) const {
        if (stated_.spacing || std::holds_alternative<Caps>(stated_.relation)) {
            return;
        }
        for (std::string& place : placesOnOthers(resolved_, index_, piece_.style)) {
            lines.push_back(std::move(place));
        }
    }

    [[nodiscard]] bool isCap(std::size_t part) const {
        return std::holds_alternative<Caps>(piece_.parts[resolved_.parts[part].stated].relation);
    }

    // Of the two parts of a joint that rests the one that is held: what lies on the other, as caps
    // do, else the second.
    [[nodiscard]] std::size_t heldIn(const ResolvedJoint& joint) const {
        const bool isOver =
            boundsInSpace(resolved_.parts[joint.tenoned]).min.z >=
            boundsInSpace(resolved_.parts[joint.mortised]).max.z - kLengthTolerance.mm();
        const bool isFirst = isCap(joint.tenoned) && isOver;
        return isCap(joint.mortised) && !isFirst ? joint.mortised : joint.tenoned;
    }

    // A name, and of how many parts that have it.
    [[nodiscard]] std::string eachIfMore(const std::string& name,
                                         const std::set<std::size_t>& parts) const {
        const auto count = std::count_if(parts.begin(), parts.end(), [&](std::size_t i) {
            return resolved_.parts[i].of == name;
        });
        return count > 1 ? "each " + name : name;
    }

    // How far from an end, along the part, the next part lies, and which; none where none is near.
    struct Clear {
        double by = 0.0;
        std::string of;
    };
    [[nodiscard]] std::optional<Clear> clearAt(const ResolvedPart& part, double way) const {
        constexpr double kNear = 40.0;  // mm; what lies farther off bounds nothing
        const Box box = boundsInSpace(part);
        const int along = longestAxis(part.frame.x);
        std::optional<Clear> nearest;
        for (const ResolvedPart& other : resolved_.parts) {
            const Box there = boundsInSpace(other);
            bool isBefore = squared(other.frame).has_value();
            for (int axis = 0; axis < 3; ++axis) {
                isBefore = isBefore && (axis == along || (there.min[axis] < box.max[axis] &&
                                                          box.min[axis] < there.max[axis]));
            }
            const double by =
                way > 0.0 ? there.min[along] - box.max[along] : box.min[along] - there.max[along];
            if (isBefore && by >= -kLengthTolerance.mm() && by < kNear &&
                (!nearest || by < nearest->by)) {
                nearest = Clear{by, other.of};
            }
        }
        return nearest;
    }

    // The room that what lies between others has at its ends, where each of those leaves all of the
    // set the same.
    void addClear(std::vector<std::string>& lines) const {
        if (!isCap(index_) || !squared(part_.frame)) {
            return;
        }
        std::vector<std::pair<Length, std::vector<std::string>>> byRoom;
        std::set<std::string> told;
        for (const std::size_t member : membersOfSet(resolved_, index_)) {
            for (const double way : {-1.0, 1.0}) {
                const std::optional<Clear> clear = clearAt(resolved_.parts[member], way);
                if (!clear || clear->by < kLengthTolerance.mm()) {
                    return;
                }
                const Length by = Length::mm(clear->by);
                auto room = std::find_if(byRoom.begin(), byRoom.end(), [&](const auto& one) {
                    return nearlyEqual(one.first, by);
                });
                if (room == byRoom.end()) {
                    room = byRoom.insert(byRoom.end(), {by, {}});
                }
                const bool isKnown =
                    std::find(room->second.begin(), room->second.end(), clear->of) !=
                    room->second.end();
                if (!isKnown && !told.insert(clear->of).second) {
                    return;  // unlike at the two ends, or from one to the next
                }
                nameOnce(room->second, clear->of);
            }
        }
        std::string text;
        for (const auto& [by, names] : byRoom) {
            text +=
                (text.empty() ? "clear of " : ", of ") + namesInARow(names) + " by " + shown(by);
        }
        if (!text.empty()) {
            lines.push_back(text + " at each end");
        }
    }
    [[nodiscard]] std::string noteOf(const ResolvedJoint& joint) const {
        const auto it = std::find_if(
            piece_.joints.begin(), piece_.joints.end(), [&](const JointStatement& statement) {
                return statement.tenoned == resolved_.parts[joint.tenoned].of &&
                       statement.mortised == resolved_.parts[joint.mortised].of;
            });
        return it == piece_.joints.end() ? std::string() : it->note;
    }

    // What others of its set lie on that it does not: ", 1 of 5 on middle rail too".
    [[nodiscard]] std::string restOfSet(const std::set<std::size_t>& own) const {
        const std::vector<std::size_t> set = membersOfSet(resolved_, index_);
        std::map<std::string, std::set<std::size_t>> byName;
        for (const ResolvedJoint& joint : resolved_.joints) {
            const std::size_t held = heldIn(joint);
            const std::size_t other = held == joint.tenoned ? joint.mortised : joint.tenoned;
            const std::string& name = resolved_.parts[other].of;
            const bool isOwn = std::any_of(own.begin(), own.end(), [&](std::size_t i) {
                return resolved_.parts[i].of == name;
            });
            if (joint.kind == JointKind::Rests && has(set, held) && !isOwn) {
                byName[name].insert(held);
            }
        }
        std::string text;
        for (const auto& [name, held] : byName) {
            text += ", " + std::to_string(held.size()) + " of " + std::to_string(set.size()) +
                    " on " + name + " too";
        }
        return text;
    }

    // What it lies on or against, those with one note together.
    void addResting(std::vector<std::string>& lines) const {
        std::vector<std::pair<std::string, std::vector<std::string>>> byNote;
        std::set<std::size_t> others;
        for (const ResolvedJoint& joint : resolved_.joints) {
            if (joint.kind != JointKind::Rests || heldIn(joint) != index_) {
                continue;
            }
            const std::string note = noteOf(joint);
            const std::size_t other = index_ == joint.tenoned ? joint.mortised : joint.tenoned;
            auto known = std::find_if(
                byNote.begin(), byNote.end(), [&](const auto& one) { return one.first == note; });
            if (known == byNote.end()) {
                known = byNote.insert(byNote.end(), {note, {}});
            }
            nameOnce(known->second, resolved_.parts[other].of);
            others.insert(other);
        }
        const bool liesOn = isCap(index_);
        for (auto& [note, names] : byNote) {
            if (note.empty() && (isHeldOtherwise() || (isScrewed() && !liesOn))) {
                continue;  // its views and its screws say where it is
            }
            constexpr std::string_view kGlued = "glued";
            const bool isGlued = !liesOn && note.rfind(kGlued, 0) == 0;
            for (std::string& name : names) {
                name = liesOn ? eachIfMore(name, others) : name;
            }
            const std::string on = (liesOn    ? "lies on "
                                    : isGlued ? "glued against "
                                              : "stands against ") +
                                   namesInARow(names);
            const bool isOpen = note.empty() && stated_.note.empty() && !isScrewed();
            lines.push_back(on + (liesOn ? restOfSet(others) : std::string()) +
                            (note.empty() ? ""
                             : isGlued    ? note.substr(kGlued.size())
                                          : ": " + note) +
                            (isOpen ? "; fixing not given" : ""));
        }
    }

    // By a joint in which it does more than rest.
    [[nodiscard]] bool isHeldOtherwise() const {
        return std::any_of(
            resolved_.joints.begin(), resolved_.joints.end(), [&](const ResolvedJoint& joint) {
                return joint.kind != JointKind::Rests &&
                       (joint.tenoned == index_ || joint.mortised == index_);
            });
    }
    [[nodiscard]] static bool has(const std::vector<std::size_t>& all, std::size_t one) {
        return std::find(all.begin(), all.end(), one) != all.end();
    }
    [[nodiscard]] bool isScrewed() const {
        return std::any_of(screws_.begin(), screws_.end(), [&](const NeededScrews& screws) {
            return has(screws.parts, index_) || has(screws.held, index_);
        });
    }

    // Through it into another; or, where that is all that holds it, through another into it.
    void addScrews(std::vector<std::string>& lines) const {
        for (const NeededScrews& screws : screws_) {
            const std::string size = screwText(screws.screw, screws.diameter, piece_.style);
            const auto inEach = [&](const std::vector<std::size_t>& parts) {
                const std::size_t count = std::max<std::size_t>(parts.size(), 1);
                const auto all = static_cast<std::size_t>(screws.quantity);
                const std::size_t each = all % count == 0 ? all / count : all;
                return std::to_string(each) + (each == 1 ? " screw " : " screws ") + size;
            };
            if (has(screws.parts, index_)) {
                lines.push_back("held to " + screws.into + " by " + inEach(screws.parts));
            } else if (has(screws.held, index_) && isCap(index_)) {
                lines.push_back("held through " + screws.through + " by " + inEach(screws.held));
            }
        }
    }

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const ResolvedPart& part_;
    std::size_t index_;
    const Part& stated_;
    std::vector<NeededScrews> screws_;
};

}  // namespace

std::vector<std::string> fixingNotes(const Piece& piece,
                                     const ResolvedPiece& resolved,
                                     const PartKind& kind) {
    std::vector<std::pair<std::string, std::vector<std::string>>> byName;
    for (const std::size_t part : kind.parts) {
        const std::string& name = resolved.parts[part].of;
        const bool isTold = std::any_of(
            byName.begin(), byName.end(), [&](const auto& told) { return told.first == name; });
        if (!isTold) {
            byName.emplace_back(name, FixingTeller(piece, resolved, part).lines());
        }
    }
    std::vector<std::string> notes;
    for (const auto& [name, lines] : byName) {
        for (const std::string& line : lines) {
            const bool isOfAll = std::all_of(byName.begin(), byName.end(), [&](const auto& other) {
                return std::find(other.second.begin(), other.second.end(), line) !=
                       other.second.end();
            });
            nameOnce(notes, isOfAll ? line : name + ": " + line);
        }
    }
    return notes;
}

}  // namespace shoulderline
