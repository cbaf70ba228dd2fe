#include "core/resolve/stated_sizes.h"

#include <algorithm>
#include <array>

namespace shoulderline {

namespace {

constexpr std::array kMayBeZero{SizeName::Projection,
                                SizeName::ShoulderFaceSide,
                                SizeName::ShoulderBackSide,
                                SizeName::ShoulderFaceEdge,
                                SizeName::ShoulderBackEdge,
                                SizeName::Room};

}  // namespace

StatedSizes statedSizesOf(const JointStatement* statement, Evaluation& evaluation) {
    StatedSizes sizes;
    if (statement == nullptr) {
        return sizes;
    }
    const std::string name = statement->tenoned + " into " + statement->mortised;
    const Place place{"joint", name, std::nullopt};
    for (const auto& [size, stated] : statement->sizes) {
        const bool isAnyLength =
            stated.state == SizeState::RulePlusOffset ||
            std::find(kMayBeZero.begin(), kMayBeZero.end(), size) != kMayBeZero.end();
        const std::optional<Length> value =
            isAnyLength ? evaluation.length(stated.expression, place, wordFor(size))
                        : evaluation.size(stated.expression, place, wordFor(size));
        if (value) {
            sizes.set(size, {stated.state, *value});
        }
    }
    return sizes;
}

}  // namespace shoulderline
