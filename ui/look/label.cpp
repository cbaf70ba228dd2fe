#include "ui/look/label.h"

#include <algorithm>

namespace shoulderline {

Label::Sizes& Label::sizes() const {
    ensurePolished();
    const bool areGood = sizes_.text == text() && sizes_.font == font() &&
                         sizes_.margins == contentsMargins() && sizes_.wraps == wordWrap();
    if (!areGood) {
        sizes_ = {text(), font(), contentsMargins(), wordWrap()};
    }
    return sizes_;
}

int Label::heightForWidth(int width) const {
    std::vector<std::pair<int, int>>& heights = sizes().heights;
    const auto it = std::find_if(
        heights.begin(), heights.end(), [width](const auto& one) { return one.first == width; });
    if (it != heights.end()) {
        return it->second;
    }
    constexpr std::size_t kWidths = 16;  // while a window is dragged wider, each is new
    if (heights.size() == kWidths) {
        heights.clear();
    }
    heights.emplace_back(width, QLabel::heightForWidth(width));
    return heights.back().second;
}

QSize Label::sizeHint() const {
    std::optional<QSize>& hint = sizes().hint;
    if (!hint) {
        hint = QLabel::sizeHint();
    }
    return *hint;
}

QSize Label::minimumSizeHint() const {
    std::optional<QSize>& minimum = sizes().minimum;
    if (!minimum) {
        minimum = QLabel::minimumSizeHint();
    }
    return *minimum;
}

}  // namespace shoulderline
