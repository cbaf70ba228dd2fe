#include "core/joint/size_chain.h"

#include <algorithm>
#include <cmath>

namespace shoulderline {

void link(Size& size, RuleId rule, Length a, Length b, Length value) {
    size.reasons.push_back({rule, a, b, value});
    size.value = value;
}

void toGrid(Size& size, Length value, Length grid) {
    if (!nearlyEqual(value, size.value)) {
        link(size, RuleId::SizeOnGrid, grid, {}, value);
    }
}

void state(Size& size, const std::optional<StatedSize>& stated) {
    if (!stated) {
        return;
    }
    size.state = stated->state;
    const Length ruled = size.value;
    switch (stated->state) {
        case SizeState::RulePlusOffset:
            link(size, RuleId::StatedOffset, ruled, stated->value, ruled + stated->value);
            break;
        case SizeState::AsFound:
            link(size, RuleId::AsFound, ruled, {}, stated->value);
            break;
        case SizeState::ByRule:
        case SizeState::Stated:
            link(size, RuleId::StatedOver, ruled, {}, stated->value);
            break;
    }
}

Size shareOf(Length whole, RuleId rule, const SizingGuide& guide) {
    Size size;
    link(size, rule, whole, {}, whole * guide.rules[rule].value);
    return size;
}

Length onGrid(RuleId rule, const SizingGuide& guide) {
    const Rule& row = guide.rules[rule];
    return row.isHouseRule || guide.grid <= Length() ? row.length()
                                                     : snapNearest(row.length(), guide.grid);
}

Size fixedSize(RuleId rule, const SizingGuide& guide) {
    Size size;
    link(size, rule, {}, {}, guide.rules[rule].length());
    toGrid(size, onGrid(rule, guide), guide.grid);
    return size;
}

Length nearestOn(std::span<const Length> rack, Length size) {
    return *std::min_element(rack.begin(), rack.end(), [size](Length a, Length b) {
        return std::abs((a - size).mm()) < std::abs((b - size).mm()) - 1e-9;
    });
}

}  // namespace shoulderline
