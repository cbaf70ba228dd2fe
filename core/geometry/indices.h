#pragma once

#include <cstddef>

namespace shoulderline {

// A vertex's or a face's number as an index of its vector; at least 0.
[[nodiscard]] constexpr std::size_t asIndex(int number) {
    return static_cast<std::size_t>(number);
}

}  // namespace shoulderline
