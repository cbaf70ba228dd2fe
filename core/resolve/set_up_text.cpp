#include <algorithm>
#include <cmath>
#include <functional>
#include <set>
#include <span>

#include "core/geometry/bent_line.h"
#include "core/measure/length_text.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/set_up.h"

namespace shoulderline {

namespace {

using Shown = std::function<std::string(Length)>;

// "a", "a and b": each once.
void addOnce(std::string& list, const std::string& one, std::string& last) {
    if (one != last) {
        list += (list.empty() ? "" : " and ") + one;
        last = one;
    }
}

// Where the curve of a bent part leaves its chord.
Angle angleToChord(const ResolvedPart& part) {
    return Angle::radians(std::max(std::abs(headingAtStart(part.bend->line)),
                                   std::abs(headingAtEnd(part.bend->line))));
}

// "front leg, in a V-block".
std::string nameOf(const ResolvedPart& part) {
    return part.of + (part.section != SectionForm::Square ? ", in a V-block" : "");
}

// All but where along the part; of several that differ in nothing but the fence.
std::string settingText(std::span<const SetUp> beside,
                        const ResolvedPiece& resolved,
                        const Shown& shown) {
    const SetUp& first = beside.front();
    std::string work;
    std::string fence;
    std::string fenceAtEnd;
    std::string lastWork;
    std::string lastFence;
    std::string lastAtEnd;
    for (const SetUp& one : beside) {
        addOnce(work, one.work, lastWork);
        addOnce(fence, shown(one.fence), lastFence);
        addOnce(fenceAtEnd, shown(one.fenceAtEnd), lastAtEnd);
    }
    std::string text = work + ", " + nameOf(resolved.parts[first.part]) + ": " +
                       resolved.rules[first.tool].subject;
    if (first.pared > kLengthTolerance) {
        return text + "; pared back " + shown(first.pared) + " each " +
               (first.isFarFaceOpen ? "on the face the tenon comes out of" : "at the bottom") +
               ", sloping to nothing at the mouth, for the wedges";
    }
    if (first.cutter > kLengthTolerance) {
        text += " " + shown(first.cutter);
    }
    if (first.tool == RuleId::SetUpRoundTenon) {
        return text + ", " + shown(first.depth) + " long";
    }
    if (first.eased > kLengthTolerance) {
        return text + "; " + shown(first.eased) + " from the end and from the cheeks, all round";
    }
    if (first.depth <= kLengthTolerance) {
        return text;
    }
    if (first.isTrench) {
        return text + "; across the part at both sides, " + shown(first.depth) + " deep";
    }
    const std::string reference(wordFor(first.reference));
    const std::string depth =
        ", " + shown(first.depth) +
        (first.slopesOut ? " deep at the tenon, sloping to nothing" : " deep");
    if (first.mouth > kLengthTolerance) {
        return text + "; middle " + fence + " from the " + reference + ", " + shown(first.mouth) +
               " long, turned " + slopeText(first.turn) + ", " +
               (first.turn.radians() > 0.0 ? "away from" : "towards") + " the " + reference +
               " as it nears the far end" + depth;
    }
    if (first.reach > kLengthTolerance) {
        return text + "; from " + fence + " to " + shown(first.reach) + " from the " + reference +
               depth;
    }
    if (std::abs(first.lean.radians()) > 0.0) {
        return text + "; to lines " + fence + " from the " + reference + " at the shoulder and " +
               fenceAtEnd + " at the end, " + slopeText(first.lean) + " from it" + depth;
    }
    if (beside.size() == 1 && first.fence <= kLengthTolerance) {
        return text + "; along the " + reference + depth;
    }
    return text + "; fence " + fence + " from the " + reference + depth;
}

bool isShoulder(const SetUp& setUp) {
    return setUp.fence <= kLengthTolerance && setUp.from == Length() &&
           setUp.to > kLengthTolerance && setUp.cutter == Length() && !setUp.fromShoulder &&
           !setUp.isTrench;
}

std::string placeText(const SetUp& setUp, const Shown& shown) {
    return nearlyEqual(setUp.from, setUp.to)
               ? shown(setUp.from)
               : "from " + shown(setUp.from) + " to " + shown(setUp.to);
}

// "at 3, 6 and 9 from the start".
std::string placesText(std::span<const SetUp> alike, const ResolvedPart& part, const Shown& shown) {
    constexpr std::size_t kMostListed = 4;
    const SetUp& first = alike.front();
    const bool startsAtShoulder = part.startTenon > kLengthTolerance;
    const bool isInEnd = first.along != Face::StartEnd;
    const std::string from = isInEnd              ? " from the " + std::string(wordFor(first.along))
                             : first.fromShoulder ? " from the shoulder"
                             : startsAtShoulder   ? " from the shoulder at the start"
                                                  : " from the start";
    const bool isPoint = nearlyEqual(first.from, first.to);
    const Length pitch = alike.size() > 1 ? alike[1].from - first.from : Length();
    bool isEven = true;
    for (std::size_t i = 1; i < alike.size(); ++i) {
        isEven = isEven && nearlyEqual(alike[i].from - alike[i - 1].from, pitch);
    }
    std::string text = isPoint ? ", at " : ", ";
    if (alike.size() > kMostListed && isEven) {
        return text + placeText(first, shown) + from + " and " + std::to_string(alike.size() - 1) +
               " more, " + shown(pitch) + " apart";
    }
    for (std::size_t i = 0; i < alike.size(); ++i) {
        text += i == 0 ? "" : i + 1 == alike.size() ? " and " : ", ";
        text += placeText(alike[i], shown);
    }
    return text + from;
}

std::string textOf(std::span<const SetUp> alike,
                   const ResolvedPiece& resolved,
                   const LengthStyle& style) {
    const Shown shown = [&](Length length) { return letterLength(length, style); };
    const SetUp& first = alike.front();
    if (isShoulder(first)) {
        std::string text = first.work + ", " + nameOf(resolved.parts[first.part]) + ": " +
                           resolved.rules[first.tool].subject + "; stop " + shown(first.to) +
                           " from the end";
        if (first.isByMiddle) {
            text += ", to the middle of its line";
        }
        if (first.runsOutAt > kLengthTolerance) {
            text += " at the tenon, " + shown(first.runsOutAt) + " at the edge";
        }
        return first.depth > kLengthTolerance ? text + ", " + shown(first.depth) + " deep" : text;
    }
    const bool isPlaced = first.to > kLengthTolerance;
    const std::string text = settingText(isPlaced ? alike.first(1) : alike, resolved, shown);
    return (isPlaced ? text + placesText(alike, resolved.parts[first.part], shown) : text) +
           (first.slopesTo > kLengthTolerance
                ? "; its outer end slopes to " + shown(first.slopesTo) +
                      (first.isShortAtMouth ? " where it goes in" : " where it comes out")
                : std::string());
}

// Both run through, with one setting but for the fence: the two cheeks of a tenon.
bool areBeside(const SetUp& a, const SetUp& b) {
    return !isShoulder(a) && !isShoulder(b) && a.depth > kLengthTolerance &&
           a.to <= kLengthTolerance && b.to <= kLengthTolerance && a.tool == b.tool &&
           a.part == b.part && nearlyEqual(a.cutter, b.cutter) && a.reference == b.reference &&
           nearlyEqual(a.depth, b.depth) && nearlyEqual(a.pared, b.pared) &&
           std::abs((a.lean - b.lean).radians()) < 1e-6;
}

// Why the settings in a shaped part are those of its blank.
void addOrder(const std::vector<SetUp>& setUps,
              const ResolvedPiece& resolved,
              std::vector<std::string>& texts) {
    std::set<std::string> told;
    for (const SetUp& one : setUps) {
        const ResolvedPart& part = resolved.parts[one.part];
        const std::string& name = part.of;
        if (part.bend && told.insert(name).second) {
            texts.push_back("order, " + name +
                            ": cut once it is bent, held to its curve in a "
                            "cradle so that its chord lies along the fence: tenons, shoulders and "
                            "all these figures are true to the chord, which the curve leaves at " +
                            slopeText(angleToChord(part)) + " at its ends");
        }
        if (one.beforeShaping && told.insert(name).second) {
            texts.push_back("order, " + name +
                            ": cut while the blank is square, before it is shaped, since the fence "
                            "bears on its flat faces and all these figures are from them");
        }
    }
}

bool areAlike(const SetUp& a, const SetUp& b) {
    return !isShoulder(a) && a.isTrench == b.isTrench && a.tool == b.tool && a.part == b.part &&
           a.work == b.work && nearlyEqual(a.cutter, b.cutter) && a.reference == b.reference &&
           nearlyEqual(a.fence, b.fence) && nearlyEqual(a.depth, b.depth) &&
           nearlyEqual(a.reach, b.reach) && std::abs((a.turn - b.turn).radians()) < 1e-6 &&
           nearlyEqual(a.mouth, b.mouth) && a.fromShoulder == b.fromShoulder &&
           nearlyEqual(a.to - a.from, b.to - b.from) && !nearlyEqual(a.from, b.from);
}

}  // namespace

std::string setUpText(const SetUp& setUp, const ResolvedPiece& resolved, const LengthStyle& style) {
    return textOf({&setUp, 1}, resolved, style);
}

std::vector<std::string> setUpTexts(const std::vector<SetUp>& setUps,
                                    const ResolvedPiece& resolved,
                                    const LengthStyle& style) {
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < setUps.size();) {
        std::size_t end = i + 1;
        const auto goesWith =
            areBeside(setUps[i], setUps[std::min(end, setUps.size() - 1)]) && end < setUps.size()
                ? areBeside
                : areAlike;
        while (end < setUps.size() && goesWith(setUps[i], setUps[end])) {
            ++end;
        }
        std::vector<SetUp> alike(setUps.begin() + static_cast<std::ptrdiff_t>(i),
                                 setUps.begin() + static_cast<std::ptrdiff_t>(end));
        std::stable_sort(alike.begin(), alike.end(), [](const SetUp& a, const SetUp& b) {
            return a.from < b.from;
        });
        texts.push_back(textOf(alike, resolved, style));
        i = end;
    }
    addOrder(setUps, resolved, texts);
    return texts;
}

std::vector<std::string> cautionsFor(const std::vector<SetUp>& setUps, const RuleBook& rules) {
    std::set<RuleId> tools;
    for (const SetUp& one : setUps) {
        tools.insert(one.tool);
    }
    std::vector<std::string> cautions;
    for (const RuleId tool : tools) {
        cautions.push_back(rules[tool].subject + ": " + rules[tool].sentence);
    }
    return cautions;
}

}  // namespace shoulderline
