#include "core/resolve/spacing.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

namespace {

constexpr double kFits = 1e-6;  // millimetres by which a set may be too long for its place

SetLayout atPitch(double low, double high, double width, double pitch, int count) {
    SetLayout layout;
    layout.gap = Length::mm(pitch - width);
    const double first = (low + high) / 2 - (pitch * (count - 1) + width) / 2;
    for (int i = 0; i < count; ++i) {
        layout.lows.push_back(first + pitch * i);
    }
    return layout;
}

// How many members of `width` leave no gap over `greatest` in `clear`.
int countForGap(double clear, double width, double greatest) {
    return static_cast<int>(std::ceil((clear - greatest) / (width + greatest) - kFits));
}

}  // namespace

SetLayout layOut(const Spacing& spacing,
                 double low,
                 double high,
                 Length width,
                 const Place& place,
                 Evaluation& evaluation) {
    const double clear = high - low;
    const double w = width.mm();
    std::optional<int> count;
    if (!spacing.count.empty()) {
        count = evaluation.count(spacing.count, place, "count");
        if (!count) {
            return {};
        }
    }
    if (!spacing.pitch.empty()) {
        const std::optional<Length> pitch = evaluation.size(spacing.pitch, place, "pitch");
        if (!pitch) {
            return {};
        }
        const int fitting = static_cast<int>(std::floor((clear - w) / pitch->mm() + kFits)) + 1;
        const int members = count.value_or(std::clamp(fitting, 0, Evaluation::kMostInSet));
        // Boards may lap over one another: then the gap is less than nothing.
        if (members < 1 || members > fitting) {
            const std::string most =
                count && *count > 1
                    ? "; with " + std::to_string(*count) + " a pitch of " +
                          evaluation.shown(Length::mm((clear - w) / (*count - 1))) + " is the most"
                    : "; there is " + evaluation.shown(Length::mm(clear)) + " between them";
            evaluation.trouble(
                place,
                "the set does not fit between the parts it lies between at that pitch" + most);
            return {};
        }
        return atPitch(low, high, w, pitch->mm(), members);
    }
    if (!count && !spacing.greatestGap.empty()) {
        const std::optional<Length> gap =
            evaluation.size(spacing.greatestGap, place, "greatest gap");
        if (!gap) {
            return {};
        }
        count = std::clamp(countForGap(clear, w, gap->mm()), 1, Evaluation::kMostInSet);
    }
    if (!count) {
        evaluation.trouble(place, "a set needs a count, a greatest gap or a pitch");
        return {};
    }
    const double gap = (clear - w * *count) / (*count + 1);
    if (gap < -kFits) {
        evaluation.trouble(place,
                           "a set of " + std::to_string(*count) +
                               " does not fit between the parts it lies between; " +
                               std::to_string(static_cast<int>(std::floor(clear / w + kFits))) +
                               " is the most");
        return {};
    }
    SetLayout layout;
    layout.gap = Length::mm(gap);
    for (int i = 0; i < *count; ++i) {
        layout.lows.push_back(low + gap + (gap + w) * i);
    }
    return layout;
}

}  // namespace shoulderline
