#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <span>
#include <string_view>

#include "core/measure/length_text.h"
#include "core/resolve/end_words.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/set_up.h"
#include "core/resolve/set_up_order.h"
#include "core/resolve/tool_text.h"

namespace shoulderline {

namespace {

using Shown = std::function<std::string(Length)>;

// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& all) {
    std::string text;
    for (std::size_t i = 0; i < all.size(); ++i) {
        text += i == 0 ? "" : i + 1 == all.size() ? " and " : ", ";
        text += all[i];
    }
    return text;
}

// Each once, of those that follow one another.
std::string eachOnce(std::span<const SetUp> beside,
                     const std::function<std::string(const SetUp&)>& textOf) {
    std::vector<std::string> all;
    for (const SetUp& one : beside) {
        if (std::string text = textOf(one); all.empty() || all.back() != text) {
            all.push_back(std::move(text));
        }
    }
    return listed(all);
}

// "rabbet in the face side and back side, leaving the tongue" for two that are told alike but for
// their faces; none else.
std::optional<std::string> workInBothFaces(const std::string& first, const std::string& last) {
    constexpr std::string_view kIn = " in the ";
    const std::size_t at = first.find(kIn);
    if (first == last || at == std::string::npos || last.find(kIn) != at) {
        return std::nullopt;
    }
    const std::size_t from = at + kIn.size();
    const auto faceOf = [&](const std::string& work) {
        return work.substr(from, work.find(',', from) - from);
    };
    const std::string rest = first.substr(from + faceOf(first).size());
    const bool isAlike =
        last.compare(0, at, first, 0, at) == 0 && last.substr(from + faceOf(last).size()) == rest;
    return isAlike ? std::optional(first.substr(0, from) + faceOf(first) + " and " + faceOf(last) +
                                   rest)
                   : std::nullopt;
}

// "cheeks at the face side and back side" for "cheek at the face side" and "cheek at the back
// side".
std::string workOf(std::span<const SetUp> beside) {
    const std::string first = beside.front().work;
    const std::string last = beside.back().work;
    constexpr std::string_view kAt = "cheek at the ";
    const std::size_t at = first.find(kAt);
    const bool isPair =
        beside.size() > 1 && at != std::string::npos && last.find(kAt) == at && first != last;
    if (std::optional<std::string> faces = workInBothFaces(first, last)) {
        return *std::move(faces);
    }
    if (!isPair) {
        return eachOnce(beside, [](const SetUp& one) { return one.work; });
    }
    const std::string inner = beside.size() > 2 ? ", with the inner cheeks between" : "";
    return first.substr(0, at) + "cheeks at the " + first.substr(at + kAt.size()) + " and " +
           last.substr(at + kAt.size()) + inner;
}

// "front leg, in a V-block".
std::string nameOf(const ResolvedPart& part) {
    return part.of + (part.section != SectionForm::Square ? ", in a V-block" : "");
}

// What the fence bears on: of an end its shoulder, where tenons stand out past it.
std::string referenceText(const SetUp& setUp, const ResolvedPart& part) {
    if (setUp.reference == Face::StartEnd || setUp.reference == Face::FarEnd) {
        return placesFromWord(part, setUp.reference == Face::StartEnd ? End::Start : End::Far);
    }
    return std::string(wordFor(setUp.reference));
}

std::string depthText(const SetUp& setUp, const Shown& shown) {
    if (setUp.isThrough) {
        const bool isBored = setUp.tool == RuleId::SetUpBit;
        return isBored ? ", through" : ", through, from both faces";
    }
    return ", " + shown(setUp.depth) +
           (setUp.slopesOut   ? " deep at the tenon, sloping to nothing"
            : setUp.isLeaning ? " deep along the tool"
                              : " deep");
}

std::string cutterText(const SetUp& setUp, const Shown& shown) {
    return setUp.cutter > kLengthTolerance ? shown(setUp.cutter) : std::string();
}

// The part and the tool: "front post: 3/8 hollow chisel, in the mortiser".
std::string headText(const SetUp& setUp, const ResolvedPiece& resolved, const Shown& shown) {
    return nameOf(resolved.parts[setUp.part]) + ": " +
           toolText(resolved.rules, setUp.tool, cutterText(setUp, shown));
}

// All but where along the part; of several that differ in nothing but the fence.
std::string settingText(std::span<const SetUp> beside,
                        const ResolvedPiece& resolved,
                        const Shown& shown) {
    const SetUp& first = beside.front();
    const ResolvedPart& part = resolved.parts[first.part];
    const std::string fence = eachOnce(beside, [&](const SetUp& one) { return shown(one.fence); });
    const std::string cutter = cutterText(first, shown);
    std::string text = workOf(beside) + ", " + headText(first, resolved, shown);
    if (first.pared > kLengthTolerance) {
        return text + "; pared back " + shown(first.pared) + " each " +
               (first.isFarFaceOpen
                    ? "on the " + faceWordOn(part, first.entered) + ", where the tenon comes out"
                    : std::string("at the bottom")) +
               ", sloping to nothing at the mouth, for the wedges";
    }
    if (first.tool == RuleId::SetUpRoundTenon) {
        return text + "; " + cutter + " across, " + shown(first.depth) + " long";
    }
    if (!cutter.empty() && !namesCutter(resolved.rules, first.tool)) {
        text += "; " + cutter + " wide";
    }
    if (first.eased > kLengthTolerance) {
        return text + "; " + shown(first.eased) + " from the end and from the cheeks, all round";
    }
    if (first.depth <= kLengthTolerance) {
        return text;
    }
    if (first.isTrench) {
        return text + "; across the part, both walls of it, " + shown(first.depth) + " deep";
    }
    const std::string reference = referenceText(first, part);
    const std::string depth = depthText(first, shown);
    if (first.mouth > kLengthTolerance) {
        return text + "; middle " + fence + " from the " + reference + ", " + shown(first.mouth) +
               " long, turned " + slopeText(first.turn) + ", " +
               (first.turn.radians() > 0.0 ? "away from" : "towards") + " the " + reference +
               " as it nears the " + endWord(part, End::Far) + depth;
    }
    if (first.reach > kLengthTolerance) {
        return text + "; from " + fence + " to " + shown(first.reach) + " from the " + reference +
               depth;
    }
    if (std::abs(first.lean.radians()) > 0.0) {
        const std::string atEnd =
            eachOnce(beside, [&](const SetUp& one) { return shown(one.fenceAtEnd); });
        return text + "; to lines " + fence + " from the " + reference + " at the shoulder and " +
               atEnd + " at the end, " + slopeText(first.lean) + " from it" + depth;
    }
    if (beside.front().fence <= kLengthTolerance && beside.back().fence <= kLengthTolerance) {
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

// Whether places a pitch apart, added up as it is shown, keep to the step that lengths are shown
// to.
bool addsUp(Length pitch, std::size_t count, const LengthStyle& style) {
    LengthStyle plain = style;
    plain.withOther = false;
    const Result<Length> told = readLength(showLength(pitch, plain), unitOf(plain));
    const Length step = style.kind == LengthStyle::Kind::Fractions
                            ? Length::inches(1.0 / style.denominator)
                        : style.kind == LengthStyle::Kind::DecimalInches
                            ? Length::inches(std::pow(10.0, -style.decimals))
                            : Length::mm(std::pow(10.0, -style.decimals));
    constexpr double kHair = 1e-9;  // mm
    return told &&
           std::abs((*told - pitch).mm()) * static_cast<double>(count) < step.mm() / 2 + kHair;
}

// "from the left end", "from the shoulder".
std::string placesFromText(const SetUp& setUp, const ResolvedPart& part) {
    if (setUp.along != Face::StartEnd) {
        return " from the " + std::string(wordFor(setUp.along));
    }
    return setUp.fromShoulder ? " from the shoulder"
                              : " from the " + placesFromWord(part, End::Start);
}

// "at 3, 6 and 9 from the left end".
std::string placesText(std::span<const SetUp> alike,
                       const ResolvedPart& part,
                       const LengthStyle& style,
                       const Shown& shown) {
    constexpr std::size_t kMostListed = 4;
    constexpr std::size_t kMostUneven = 8;  // where a pitch does not add up
    const SetUp& first = alike.front();
    const std::string from = placesFromText(first, part);
    const Length pitch = alike.size() > 1 ? alike[1].from - first.from : Length();
    bool isEven = true;
    for (std::size_t i = 1; i < alike.size(); ++i) {
        isEven = isEven && nearlyEqual(alike[i].from - alike[i - 1].from, pitch);
    }
    std::string text = nearlyEqual(first.from, first.to) ? ", at " : ", ";
    if (alike.size() > kMostListed && isEven && addsUp(pitch, alike.size() - 1, style)) {
        return text + placeText(first, shown) + from + " and " + std::to_string(alike.size() - 1) +
               " more, " + shown(pitch) + " apart";
    }
    if (alike.size() > kMostUneven && isEven) {
        return text + placeText(first, shown) + from + " and " + std::to_string(alike.size() - 1) +
               " more, evenly stepped off to the last, " + placeText(alike.back(), shown);
    }
    std::vector<std::string> places;
    for (const SetUp& one : alike) {
        places.push_back(placeText(one, shown));
    }
    return text + listed(places) + from;
}

// Of the mitre of a tenon's end, and of a shoulder.
std::string mitreText(const SetUp& one, const ResolvedPart& part, const Shown& shown) {
    return "; from " + shown(one.to) + " past the shoulder at the " + faceWordOn(part, one.along) +
           " to " + shown(one.from) + " past it at the " + faceWordOn(part, one.reference);
}

std::string shoulderText(const SetUp& one, const Shown& shown) {
    std::string text = "; stop " + shown(one.to) + " from the end";
    if (one.isByMiddle) {
        text += ", to the middle of its line";
    }
    if (one.runsOutAt > kLengthTolerance) {
        text += " at the tenon, " + shown(one.runsOutAt) + " at the edge";
    }
    return one.depth > kLengthTolerance ? text + ", " + shown(one.depth) + " deep" : text;
}

std::string textOf(std::span<const SetUp> alike,
                   const ResolvedPiece& resolved,
                   const LengthStyle& style) {
    const Shown shown = [&](Length length) { return letterLength(length, style); };
    const SetUp& first = alike.front();
    const ResolvedPart& part = resolved.parts[first.part];
    if (first.isMitre || isShoulder(first)) {
        const std::string text = first.work + ", " + headText(first, resolved, shown);
        return text + (first.isMitre                              ? mitreText(first, part, shown)
                       : first.tool == RuleId::SetUpShoulderPlane ? std::string(", to the line")
                                                                  : shoulderText(first, shown));
    }
    const bool isPlaced = first.to > kLengthTolerance;
    const std::string text = settingText(isPlaced ? alike.first(1) : alike, resolved, shown);
    return (isPlaced ? text + placesText(alike, part, style, shown) : text) +
           (first.slopesTo > kLengthTolerance
                ? "; its outer end slopes to " + shown(first.slopesTo) +
                      (first.isShortAtMouth ? " where it goes in" : " where it comes out")
                : std::string());
}

// Both run through, with one setting but for the fence: the two cheeks of a tenon.
bool areBeside(const SetUp& a, const SetUp& b, const LengthStyle& style) {
    return !isShoulder(a) && !isShoulder(b) && !a.isMitre && !b.isMitre &&
           a.depth > kLengthTolerance && a.to <= kLengthTolerance && b.to <= kLengthTolerance &&
           a.tool == b.tool && a.part == b.part && nearlyEqual(a.cutter, b.cutter) &&
           a.reference == b.reference && showLength(a.depth, style) == showLength(b.depth, style) &&
           nearlyEqual(a.pared, b.pared) && std::abs((a.lean - b.lean).radians()) < 1e-6;
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
                                    const LengthStyle& style,
                                    bool isEachFull) {
    const Shown shown = [&](Length length) { return showLength(length, style); };
    std::vector<std::string> texts = orderTexts(setUps, resolved, style);
    std::string before;  // part and tool of the line before
    for (std::size_t i = 0; i < setUps.size();) {
        std::size_t end = i + 1;
        const auto areTwo = [&](const SetUp& a, const SetUp& b) { return areBeside(a, b, style); };
        const bool isBeside = end < setUps.size() && areTwo(setUps[i], setUps[end]);
        while (end < setUps.size() &&
               (isBeside ? areTwo(setUps[i], setUps[end]) : areAlike(setUps[i], setUps[end]))) {
            ++end;
        }
        std::vector<SetUp> alike(setUps.begin() + static_cast<std::ptrdiff_t>(i),
                                 setUps.begin() + static_cast<std::ptrdiff_t>(end));
        std::stable_sort(alike.begin(), alike.end(), [](const SetUp& a, const SetUp& b) {
            return a.from < b.from;
        });
        std::string text = textOf(alike, resolved, style);
        std::string head = ", " + headText(alike.front(), resolved, shown);
        if (head == before && !isEachFull) {
            text.replace(text.find(head), head.size(), ", likewise");
        }
        before = std::move(head);
        texts.push_back(std::move(text));
        i = end;
    }
    return texts;
}

}  // namespace shoulderline
