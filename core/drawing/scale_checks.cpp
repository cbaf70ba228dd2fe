#include "core/drawing/scale_checks.h"

#include "core/measure/length.h"

namespace shoulderline {

namespace {

constexpr double kTick = 2.0;
constexpr double kLongTick = 3.5;
constexpr double kWordsHeight = 2.5;

TextOp checkWords(Vec2 at, const std::string& text, Align align = Align::Left) {
    return {at, text, kWordsHeight, align, false, false};
}

Stroke square(Vec2 corner, double side) {
    return {
        {corner, corner + Vec2{side, 0}, corner + Vec2{side, side}, corner + Vec2{0, side}, corner},
        LineRole::Dimension};
}

}  // namespace

std::vector<Op> checkBar(Vec2 left, bool inInches) {
    const double inches = kCheckInches * Length::kMmPerInch;
    std::vector<Op> ops{
        Stroke{{left, left + Vec2{inInches ? inches : kCheckLength, 0}}, LineRole::Dimension}};
    for (int i = 0; i <= 10; ++i) {
        const Vec2 at = left + Vec2{kCheckLength * i / 10.0, 0};
        ops.push_back(
            Stroke{{at, at - Vec2{0, i % 5 == 0 ? kLongTick : kTick}}, LineRole::Dimension});
    }
    ops.push_back(
        checkWords(left + Vec2{kCheckLength - 1.0, -kLongTick - 0.4}, "100 mm", Align::Right));
    if (inInches) {
        for (int i = 0; i <= 16; ++i) {
            const Vec2 at = left + Vec2{inches * i / 16.0, 0};
            ops.push_back(
                Stroke{{at, at + Vec2{0, i % 4 == 0 ? kLongTick : kTick}}, LineRole::Dimension});
        }
        ops.push_back(checkWords(
            left + Vec2{inches - 1.0, kLongTick + 0.4 + kWordsHeight}, "4 in", Align::Right));
    }
    return ops;
}

std::vector<Op> uprightCheckBar(Vec2 foot) {
    std::vector<Op> ops{Stroke{{foot, foot - Vec2{0, kCheckLength}}, LineRole::Dimension}};
    for (int i = 0; i <= 10; ++i) {
        const Vec2 at = foot - Vec2{0, kCheckLength * i / 10.0};
        ops.push_back(
            Stroke{{at, at + Vec2{i % 5 == 0 ? kLongTick : kTick, 0}}, LineRole::Dimension});
    }
    TextOp text = checkWords(
        foot + Vec2{kLongTick + 0.4 + kWordsHeight, -kCheckLength + 1.0}, "100 mm", Align::Right);
    text.isTurned = true;
    ops.push_back(text);
    return ops;
}

Vec2 checkSquareSize(bool inInches) {
    const double side = inInches ? kCheckInches * Length::kMmPerInch : kCheckLength;
    return {side, side};
}

std::vector<Op> checkSquare(Vec2 corner, bool inInches) {
    std::vector<Op> ops{square(corner, kCheckLength)};
    if (inInches) {
        ops.push_back(square(corner, kCheckInches * Length::kMmPerInch));
    }
    const double line = 2.0 * kWordsHeight;
    Vec2 at = corner + Vec2{4.0, 3.0 + kWordsHeight};
    for (const std::string& text : {std::string("Lay a rule on this square."),
                                    std::string("Inner: 100 mm each way."),
                                    inInches ? std::string("Outer: 4 in each way.") : std::string(),
                                    std::string("If it is off, print at 100 %, actual size.")}) {
        if (!text.empty()) {
            ops.push_back(checkWords(at, text));
            at.y += line;
        }
    }
    return ops;
}

}  // namespace shoulderline
