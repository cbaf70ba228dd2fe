#include <algorithm>
#include <cmath>
#include <string_view>

#include "core/drawing/mortise_rows.h"
#include "core/drawing/part_sections.h"
#include "core/drawing/part_sizing.h"
#include "core/drawing/turned_mouth.h"
#include "core/measure/length_text.h"
#include "core/resolve/frames.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/shaping_order.h"

namespace shoulderline {

namespace {

// Across the face that a mortise opens on: 1 (from the face edge) or 2 (from the face side).
int acrossAxisOf(Face face) {
    return face == Face::FaceSide || face == Face::BackSide ? 1 : 2;
}

// Whether a mortise of the kind is cut with a mortise chisel.
bool isChopped(JointKind kind) {
    return kind == JointKind::Blind || kind == JointKind::Through || kind == JointKind::Loose ||
           kind == JointKind::LetIn;
}

const ResolvedPart& mateOf(const SizeWriter& writer, const MortiseSolid& mortise) {
    const ResolvedJoint& joint = writer.resolved.joints[mortise.joint];
    const bool isOwn = &writer.resolved.parts[joint.tenoned] == &writer.part;
    return writer.resolved.parts[isOwn ? joint.mortised : joint.tenoned];
}

// "side rail", "loose tenon, side": what goes in. "front leg, left" where both hands of a pair
// enter the face, each at a place of its own across it.
std::string nameOfMate(const SizeWriter& writer, const MortiseSolid& mortise) {
    const ResolvedJoint& joint = writer.resolved.joints[mortise.joint];
    const ResolvedPart& part = mateOf(writer, mortise);
    const bool isOneOfTwo = std::any_of(
        writer.part.mortises.begin(), writer.part.mortises.end(), [&](const MortiseSolid& other) {
            const ResolvedPart& twin = mateOf(writer, other);
            return other.face == mortise.face && twin.of == part.of && twin.hand != part.hand &&
                   !areAlike(writer.resolved, writer.part, mortise, other);
        });
    const std::string& mate = isOneOfTwo ? part.name : part.of;
    return joint.kind == JointKind::Loose ? "loose tenon, " + mate : mate;
}

// Of one of a set whose mortises in the part differ, the members that these are for: "back slat 1
// and back slat 3"; empty where they are for all that are mortised into that face, or for many.
std::string membersOf(const SizeWriter& writer, const MortiseRow& row) {
    const MortiseSolid& first = *row.mortises.front();
    const ResolvedPart& mate = mateOf(writer, first);
    std::vector<std::string> names;
    for (const MortiseSolid* mortise : row.mortises) {
        const ResolvedPart& one = mateOf(writer, *mortise);
        if (one.stated != mate.stated || one.hand != mate.hand) {
            return {};
        }
        if (std::find(names.begin(), names.end(), one.name) == names.end()) {
            names.push_back(one.name);
        }
    }
    const bool areOthers = std::any_of(
        writer.part.mortises.begin(), writer.part.mortises.end(), [&](const MortiseSolid& other) {
            const ResolvedPart& one = mateOf(writer, other);
            return other.face == first.face && one.stated == mate.stated && one.hand == mate.hand &&
                   std::find(names.begin(), names.end(), one.name) == names.end();
        });
    constexpr std::size_t kMost = 3;
    if (!areOthers || names.size() > kMost) {
        return {};
    }
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    }
    return writer.resolved.joints[first.joint].kind == JointKind::Loose ? "loose tenon, " + text
                                                                        : text;
}

// "blind", "through", "stopped housing": what is cut for it.
std::string wayIn(const ResolvedJoint& joint, const MortiseSolid& mortise) {
    if (joint.kind == JointKind::Housed) {
        return joint.has(JointFeature::Stopped) ? "stopped housing" : "housing";
    }
    if (joint.kind == JointKind::Bridle || joint.kind == JointKind::Lap) {
        return std::string(wordFor(joint.kind));
    }
    return mortise.isThrough ? "through" : "blind";
}

// Writes what the mortises of one face need.
class MortiseWriter {
  public:
    explicit MortiseWriter(SizeWriter& writer) : to_(writer) {}

    void write(const MortiseRow& row) {
        const MortiseSolid& first = *row.mortises.front();
        turned_ = turnedMouthOf(to_.resolved, to_.part, first);
        const bool byMiddle = isBored(to_.resolved, first) || turned_;
        const std::size_t count = row.mortises.size();
        const double depth = depthOf(first, byMiddle);
        const bool byPitch = row.isEven && isExactPitch(row, byMiddle);
        if (!byMiddle) {
            // Of a long row the last is the freest: its first says where the row begins and what
            // its pitch is.
            const Box box = setOutBox(byPitch ? *row.mortises.back() : first);
            const std::string times = count > 1 ? std::to_string(count) + " \u00d7 " : "";
            to_.along({box.min.x,
                       box.max.x,
                       depth,
                       depth,
                       times + to_.shown(box.size().x),
                       box.size().x,
                       "mortise length",
                       subjectOfJoint(first.joint)});
        }
        for (std::size_t i = 0; i < (byPitch ? 1 : count); ++i) {
            const double at = placeOf(*row.mortises[i], byMiddle);
            NeededSize place{std::min(0.0, at),
                             std::max(0.0, at),
                             at < 0.0 ? depth : 0.0,
                             at < 0.0 ? 0.0 : depth,
                             {},
                             0.0,
                             turned_    ? "mortise middle"
                             : byMiddle ? "bore centre"
                                        : "from end",
                             subjectOfJoint(row.mortises[i]->joint)};
            place.mayRun = at > 0.0;
            to_.along(std::move(place));
        }
        if (byPitch) {
            const double start = placeOf(first, byMiddle);
            const double pitch = placeOf(*row.mortises[1], byMiddle) - start;
            to_.along({start,
                       start + pitch,
                       depth,
                       depth,
                       std::to_string(count - 1) + " \u00d7 " + to_.shown(pitch),
                       pitch,
                       "pitch",
                       subjectOfJoint(first.joint)});
        }
        note(row);
    }

  private:
    [[nodiscard]] static double placeOf(const MortiseSolid& mortise, bool byMiddle) {
        const Box box = setOutBox(mortise);
        return byMiddle ? box.centre().x : box.min.x;
    }
    // From the view's upper side to what is dimensioned of it.
    [[nodiscard]] double depthOf(const MortiseSolid& mortise, bool byMiddle) const {
        const Rect mouth = to_.view.toPlane(setOutBox(mortise));
        return byMiddle ? (mouth.min.y + mouth.max.y) / 2.0 : mouth.min.y;
    }

    // Whether the pitch can be lettered as it is: a figure that is near would be stepped off with
    // its error at each step, so such a row is told place by place.
    [[nodiscard]] bool isExactPitch(const MortiseRow& row, bool byMiddle) const {
        const double pitch =
            placeOf(*row.mortises[1], byMiddle) - placeOf(*row.mortises[0], byMiddle);
        return showLength(Length::mm(pitch), to_.piece.style).find("\u2248") == std::string::npos;
    }

    void note(const MortiseRow& row) {
        const MortiseSolid& mortise = *row.mortises.front();
        const std::size_t count = row.mortises.size();
        const std::string members = membersOf(to_, row);
        const int across = acrossAxisOf(mortise.face);
        const Box box = setOutBox(mortise);
        const double width = box.size()[across];
        const int into = across == 1 ? 2 : 1;
        const std::string mate = nameOfMate(to_, mortise);
        const Rect mouth = to_.view.toPlane(box);
        NeededNote note;
        note.subject = subjectOfJoint(mortise.joint);
        note.target = (mouth.min + mouth.max) * 0.5;
        const bool slopes = mortise.isHaunch && mortise.exact &&
                            to_.resolved.joints[mortise.joint].has(JointFeature::SlopingHaunch);
        note.lines.push_back(std::string(slopes             ? "haunch, sloping to nothing, "
                                         : mortise.isHaunch ? "haunch, "
                                                            : "") +
                             (!members.empty() ? members
                              : count > 1      ? std::to_string(count) + " for " + mate
                                               : mate));
        const std::string letter = to_.sections != nullptr
                                       ? to_.sections->letterOf(mortise.joint, mortise.isHaunch)
                                       : std::string();
        if (!letter.empty() && mortise.isHaunch && !turned_ && otherOf(mortise, false) != nullptr) {
            return;  // the mortise's own note says that it has one
        }
        if (!letter.empty()) {
            if (!mortise.isHaunch && otherOf(mortise, true) != nullptr) {
                const ResolvedJoint& joint = to_.resolved.joints[mortise.joint];
                note.lines.front() += joint.has(JointFeature::SlopingHaunch)
                                          ? ", with a haunch that slopes to nothing"
                                          : ", with haunch";
                const std::string atHaunch = to_.sections->letterOf(mortise.joint, true);
                if (!atHaunch.empty() && atHaunch != letter) {
                    note.lines.front() += " (" + atHaunch + "\u2013" + atHaunch + ")";
                }
            }
            note.lines.push_back(letter + "\u2013" + letter + ", " +
                                 wayIn(to_.resolved.joints[mortise.joint], mortise) +
                                 toolFor(mortise, std::min(width, box.size().x)) +
                                 (isDepthAlongIt(to_.resolved, to_.part, mortise)
                                      ? ", " + deepAlongIt(mortise)
                                      : std::string()));
            addBlankFace(mortise, note);
            addFlare(mortise, note);
            addSlant(mortise, note);
            to_.note(std::move(note));
            return;
        }
        const bool isLongAcross = width > box.size().x + kLengthTolerance.mm();
        const std::string depth = mortise.isThrough ? std::string("through")
                                  : isDepthAlongIt(to_.resolved, to_.part, mortise)
                                      ? deepAlongIt(mortise)
                                      : to_.shown(box.size()[into]) + " deep";
        const bool bored = isBored(to_.resolved, mortise);
        if (turned_) {
            note.lines.push_back(depth);
        } else {
            const double place = bored ? box.centre()[across] : box.min[across];
            note.lines.push_back(
                (bored ? "bore " +
                             to_.shownDiameter(
                                 to_.resolved.joints[mortise.joint].mortise.width.value.mm()) +
                             ", "
                       : to_.shown(width) + (isLongAcross ? " across, " : " wide, ")) +
                depth);
            note.lines.push_back((bored ? "centre " : "") + to_.shown(place) + " from " +
                                 referenceOf(mortise));
        }
        addFlare(mortise, note);
        addSlant(mortise, note);
        to_.note(std::move(note));
    }

    // A mortise of the same joint on the same face that is a haunch, or is not.
    [[nodiscard]] const MortiseSolid* otherOf(const MortiseSolid& mortise, bool isHaunch) const {
        const auto it = std::find_if(
            to_.part.mortises.begin(), to_.part.mortises.end(), [&](const MortiseSolid& other) {
                return other.joint == mortise.joint && other.face == mortise.face &&
                       other.isHaunch == isHaunch;
            });
        return it == to_.part.mortises.end() ? nullptr : &*it;
    }

    // Of one set out before the shaping takes wood off over it.
    void addBlankFace(const MortiseSolid& mortise, NeededNote& note) const {
        const ResolvedJoint& joint = to_.resolved.joints[mortise.joint];
        const int into = inwardOf(mortise.face).axis;
        const double outer = inwardOf(mortise.face).way > 0.0
                                 ? mortise.box.min[into]
                                 : to_.part.bodyBox().max[into] - mortise.box.max[into];
        if (isSawnToShape(to_.part) && !mortise.isThrough && isSameSize(outer, 0.0) &&
            joint.mortise.below > kLengthTolerance &&
            !isDepthAlongIt(to_.resolved, to_.part, mortise)) {
            note.lines.push_back(to_.shown(mortise.box.size()[into]) + " deep from the blank's " +
                                 std::string(wordFor(mortise.face)));
        }
    }

    // How much longer one that is wedged gets towards its far end.
    void addFlare(const MortiseSolid& mortise, NeededNote& note) const {
        const Size* flare = to_.resolved.joints[mortise.joint].size(SizeName::WedgeFlare);
        if (flare != nullptr && flare->value > kLengthTolerance && !mortise.isHaunch) {
            note.lines.push_back("ends pared back " + to_.shown(flare->value.mm()) + " each at " +
                                 (mortise.isThrough ? "the far face" : "the bottom"));
        }
    }

    [[nodiscard]] std::string deepAlongIt(const MortiseSolid& mortise) const {
        return to_.shown(depthAlong(to_.resolved, to_.part, mortise)) + " deep along it";
    }

    [[nodiscard]] std::string referenceOf(const MortiseSolid& mortise) const {
        const Box box = setOutBox(mortise);
        return referenceAcross(to_.part, acrossAxisOf(mortise.face), box.min.x, box.max.x);
    }

    // How one that does not lie square is set out and cut.
    void addSlant(const MortiseSolid& mortise, NeededNote& note) const {
        const JointAngles angles = anglesOf(to_.resolved, to_.resolved.joints[mortise.joint]);
        if (isOutOfSquare(angles.mortise)) {
            std::string leans = leanText(angles.lean, to_.part, mortise.face);
            constexpr std::string_view kAnd = " and ";
            if (const std::size_t second = leans.find(kAnd); second != std::string::npos) {
                note.lines.push_back(leans.substr(0, second));
                leans.erase(0, second + 1);
            }
            note.lines.push_back(std::move(leans));
        }
        if (!turned_) {
            return;
        }
        const double longer = std::max(turned_->length, turned_->width);
        const double shorter = std::min(turned_->length, turned_->width);
        note.lines.push_back("middle " + to_.shown(turned_->middle[acrossAxisOf(mortise.face)]) +
                             " from " + referenceOf(mortise));
        note.lines.push_back(to_.shown(shorter) + " \u00d7 " + to_.shown(longer) + ", turned " +
                             slopeText(turned_->turn) + ",");
        note.lines.push_back(
            std::string("to the right ") +
            (turned_->turn.radians() > 0.0 ? "away from the " : "nearer the ") +
            std::string(
                wordFor(acrossAxisOf(mortise.face) == 1 ? Face::FaceEdge : Face::FaceSide)));
    }

    // ", 5/16 chisel" where the rack has one as wide as the mortise; ", 1/2 bit" for one that is
    // bored, ", 3/8 cutter" for one with round ends. What is sawn or ploughed has none.
    [[nodiscard]] std::string toolFor(const MortiseSolid& mortise, double width) const {
        const ResolvedJoint& joint = to_.resolved.joints[mortise.joint];
        if (isBored(to_.resolved, mortise)) {
            return ", " + to_.shown(joint.mortise.width.value.mm()) + " bit";
        }
        if (joint.form().has(JointFeature::RoundEnds)) {
            return ", " + to_.shown(width) + " cutter, round ends";
        }
        if (joint.kind == JointKind::Stub) {
            return ", its groove makes it";
        }
        if (!isChopped(joint.kind)) {
            return {};
        }
        if (mortise.exact) {
            width = joint.mortise.width.value.mm();  // the box around a slanting one is wider
        }
        const std::vector<Length>& rack = to_.resolved.rack;
        const bool isOnRack = std::any_of(rack.begin(), rack.end(), [&](Length chisel) {
            return isSameSize(chisel.mm(), width);
        });
        return isOnRack ? ", " + to_.shown(width) + " chisel" : std::string();
    }

    SizeWriter& to_;
    std::optional<TurnedMouth> turned_;  // of the row that is written
};

}  // namespace

void addMortiseSizes(SizeWriter& writer) {
    for (const MortiseRow& row : rowsOn(writer.view.face, writer.resolved, writer.part)) {
        MortiseWriter(writer).write(row);
    }
}

void addEndMortiseNotes(SizeWriter& writer) {
    for (const MortiseSolid& mortise : writer.part.mortises) {
        if (mortise.face != writer.view.face) {
            continue;
        }
        const Rect mouth = writer.view.toPlane(mortise.box);
        const Vec3 size = mortise.box.size();
        const auto shown = [&](double mm) { return writer.shown(mm); };
        writer.note({(mouth.min + mouth.max) * 0.5,
                     {nameOfMate(writer, mortise),
                      shown(size.z) + " in the thickness, " + shown(size.y) + " in the width, " +
                          shown(size.x) + " deep",
                      shown(mortise.box.min.z) + " from face side, " + shown(mortise.box.min.y) +
                          " from face edge"},
                     subjectOfJoint(mortise.joint)});
    }
}

}  // namespace shoulderline
