#include "core/resolve/lean.h"

#include <cmath>

#include "core/measure/angle_text.h"
#include "core/resolve/end_words.h"
#include "core/resolve/holes.h"
#include "core/resolve/joint_angles.h"

namespace shoulderline {

namespace {

constexpr double kNoLean = 1e-9;  // radians
constexpr double kTold = 0.0009;  // radians: less cannot be set

}  // namespace

Angle Lean::tilt() const {
    return Angle::radians(
        std::atan(std::hypot(std::tan(along.radians()), std::tan(across.radians()))));
}

Angle Lean::turn() const {
    return isTilted()
               ? Angle::radians(std::atan2(std::tan(across.radians()), std::tan(along.radians())))
               : Angle();
}

bool Lean::isTilted() const {
    return std::abs(along.radians()) > kNoLean || std::abs(across.radians()) > kNoLean;
}

std::string leanText(const Lean& lean, const ResolvedPart& part, Face face) {
    std::string text;
    const auto add = [&](Angle angle, const std::string& forward, const std::string& back) {
        const double least = lean.tilt().radians() > kTold ? kTold : kNoLean;
        if (std::abs(angle.radians()) > least) {
            text += (text.empty() ? "leans " : " and ") + slopeText(angle) + ", " +
                    (angle.radians() > 0 ? forward : back);
        }
    };
    const std::string from(wordFor(acrossReference(face)));
    axesOn(face).along == 0 ? add(lean.along,
                                  "towards the " + endWord(part, End::Far),
                                  "towards the " + endWord(part, End::Start))
                            : add(lean.along, "away from the face edge", "towards the face edge");
    add(lean.across, "away from the " + from, "towards the " + from);
    return text;
}

Angle tiltOverWedge(const Lean& lean) {
    return Angle::radians(
        std::atan(std::tan(lean.across.radians()) * std::cos(lean.along.radians())));
}

std::string wedgedText(const Lean& lean, const ResolvedPart& part, Face face) {
    if (std::abs(lean.along.radians()) <= kNoLean || std::abs(lean.across.radians()) <= kNoLean) {
        return tableText(lean, part, face);
    }
    return "table tilted " + slopeText(tiltOverWedge(lean)) +
           " across the part, the part wedged up " + slopeText(lean.along) + " along it; it " +
           leanText(lean, part, face);
}

std::string tableText(const Lean& lean, const ResolvedPart& part, Face face) {
    std::string text = "table tilted " + slopeText(lean.tilt());
    const double turn = std::abs(lean.turn().degrees());
    // Along or against the way the part runs the fence lies across the tilt; else it is turned.
    const double off = turn > 90.0 ? 180.0 - turn : turn;
    constexpr double kStraight = 0.05;  // degrees
    if (off > kStraight && off < 90.0 - kStraight) {
        text += ", the part turned " + showAngle(Angle::degrees(off)) +
                " on it from the way of the tilt";
    } else {
        text += off <= kStraight ? " along the part" : " across the part";
    }
    return text + "; it " + leanText(lean, part, face);
}

}  // namespace shoulderline
