#include "core/resolve/sizes_text.h"

#include <array>
#include <charconv>
#include <optional>
#include <vector>

#include "core/measure/angle_text.h"
#include "core/measure/length_text.h"
#include "core/resolve/bending_text.h"
#include "core/resolve/end_plane.h"
#include "core/resolve/found_sizes.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/named_sizes.h"
#include "core/resolve/part_set_up.h"
#include "core/resolve/part_shape_json.h"
#include "core/resolve/screws_needed.h"
#include "core/resolve/sitting.h"
#include "core/resolve/small_parts.h"
#include "core/resolve/survey.h"

namespace shoulderline {

namespace {

std::string shown(const Piece& piece, Length length) {
    return showLength(length, piece.style, true);
}

std::string valueText(const Piece& piece, const ResolvedMeasure& measure) {
    if (!measure.value) {
        return "cannot be worked out";
    }
    if (measure.value->dimension() == Dimension::Length) {
        return shown(piece, measure.value->asLength().value_or(Length()));
    }
    const bool isAngle = measure.value->dimension() == Dimension::Angle;
    const double value = isAngle ? measure.value->asAngle().value_or(Angle()).degrees()
                                 : measure.value->asNumber().value_or(0.0);
    std::array<char, 32> digits{};
    const auto end =
        std::to_chars(digits.data(), digits.data() + digits.size(), rounded(value)).ptr;
    return std::string(digits.data(), end) + (isAngle ? "°" : "");
}

std::string measuresText(const Piece& piece, const ResolvedPiece& resolved) {
    std::string text = "Measures\n";
    for (std::size_t i = 0; i < resolved.measures.size(); ++i) {
        text += "  " + resolved.measures[i].name + ": " + valueText(piece, resolved.measures[i]) +
                "  (" + piece.measures[i].expression + ")\n";
    }
    return text;
}

std::string partText(const Piece& piece, const ResolvedPart& part, const RuleBook& rules) {
    std::string text = "  " + part.name + ": " + shown(piece, part.length()) + " x " +
                       shown(piece, part.width.value) + " x " + shown(piece, part.thickness.value) +
                       ", " + part.stock;
    if (!part.tenons.empty()) {
        const Extent arris = alongFaceArris(part);
        const Length between = Length::mm(arris.max - arris.min);
        text += ", shoulder to shoulder " + shown(piece, between);
        if (!nearlyEqual(between, part.shoulderLength.value, kLengthTolerance)) {
            text += " at the face side and face edge, " + shown(piece, part.shoulderLength.value) +
                    " over the corners";
        }
    }
    text += "\n";
    const auto lengths = [&](Length length) { return shown(piece, length); };
    if (const std::string found = foundText(foundIn(part), lengths); !found.empty()) {
        text += "    as found, " + found + "\n";
    }
    if (part.bend) {
        for (const std::string& setting : bendSettings(part, rules, piece.style)) {
            text += "    " + setting + "\n";
        }
    }
    for (const PartSetUp& setUp : partSetUpsOf(part, piece.style)) {
        text += "    " + partSetUpText(setUp, rules) + "\n";
    }
    for (const End end : {End::Start, End::Far}) {
        for (const std::string& setting : endSettings(part, end)) {
            text += "    " + std::string(wordFor(end)) + " end, " + setting + "\n";
        }
    }
    return text;
}

std::string smallPartsText(const Piece& piece, const ResolvedPiece& resolved) {
    const std::vector<SmallPart> small = smallPartsOf(piece, resolved);
    std::string text = small.empty() ? "" : "\nSmall parts\n";
    for (const SmallPart& one : small) {
        text += "  " + one.name() + ": " + std::to_string(one.quantity) + " of " +
                shown(piece, one.length) + " x " +
                (one.isRound() ? "\u2300" + shown(piece, one.width)
                               : shown(piece, one.width) + " x " + shown(piece, one.thickness)) +
                ", " + one.stock + "\n";
    }
    return text;
}

std::string screwsText(const Piece& piece, const ResolvedPiece& resolved) {
    const std::vector<NeededScrews> all = screwsNeeded(resolved, unitOf(piece.style) == Unit::Inch);
    std::string text = all.empty() ? "" : "\nScrews\n";
    for (const NeededScrews& one : all) {
        text += "  " + screwName(one.screw, piece.style) + ": " + std::to_string(one.quantity) +
                " of " + shown(piece, one.screw.length) +
                (hasGauge(one.screw, piece.style) ? "" : " x \u2300" + shown(piece, one.diameter)) +
                ", through " + one.through + " into " + one.into + "\n";
    }
    return text;
}

std::string swingText(const Piece& piece, const ResolvedSwing& swing) {
    std::string text = "\n" + piece.assemblies[swing.assembly].name + " swings, the bar's top " +
                       shown(piece, swing.above) + " above its pivot\n";
    for (const SwingPosition& one : swing.positions) {
        text += "  " + one.name + ": leans " + showAngle(one.lean) + ", the bar's front " +
                shown(piece, one.behind) + " behind the pivot, meets the back " +
                shown(piece, one.contact) + " from the pivot" +
                (&one == &swing.positions[swing.at] ? "; drawn here" : "") + "\n";
    }
    return text;
}

std::string jointText(const Piece& piece,
                      const ResolvedPiece& resolved,
                      const ResolvedJoint& joint) {
    std::string text = "  " + joint.name + ": " + std::string(wordFor(joint.kind)) + "\n";
    if (joint.kind == JointKind::Rests) {
        return text;
    }
    const std::size_t index = static_cast<std::size_t>(&joint - resolved.joints.data());
    const auto lengths = [&](Length length) { return shown(piece, length); };
    if (const std::string found = foundText(foundBehind(resolved, index), lengths);
        !found.empty()) {
        text += "    follows what was found: " + found + "\n";
    }
    for (const std::string& setting : jointSettings(resolved, joint)) {
        text += "    " + setting + "\n";
    }
    for (const auto& [name, size] : namedSizes(joint)) {
        text += std::string("    ") + name + " " + shown(piece, size->value) + ":";
        for (const Reason& reason : size->reasons) {
            text += (&reason == &size->reasons.front() ? " " : "; ") +
                    reasonText(reason, resolved.rules, piece.style);
        }
        text += "\n";
    }
    return text;
}

}  // namespace

std::string sizesText(const Piece& piece, const ResolvedPiece& resolved) {
    std::string text = piece.name + "\n\n" + measuresText(piece, resolved);
    if (const std::optional<Sitting> sitting = sittingOn(resolved)) {
        text += "\nSitting\n  " + sittingText(*sitting, piece.style) + "\n";
    }
    const std::string survey = surveyText(piece);
    text += survey.empty() ? "" : "\nAs found on the original\n" + survey;
    text += "\nParts\n";
    for (const ResolvedPart& one : resolved.parts) {
        text += partText(piece, one, resolved.rules);
    }
    text += smallPartsText(piece, resolved) + screwsText(piece, resolved);
    for (const ResolvedSwing& swing : resolved.swings) {
        text += swingText(piece, swing);
    }
    text += "\nJoints\n";
    for (const ResolvedJoint& one : resolved.joints) {
        text += jointText(piece, resolved, one);
    }
    return text;
}

}  // namespace shoulderline
