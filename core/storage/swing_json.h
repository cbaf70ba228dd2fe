#pragma once

#include <optional>

#include "core/piece/piece.h"
#include "core/storage/object_reader.h"

namespace shoulderline {

// How an assembly swings, as its member "swing" in a file.
[[nodiscard]] nlohmann::ordered_json json(const Swing& swing);
[[nodiscard]] std::optional<Swing> readSwing(ObjectReader& assembly);

}  // namespace shoulderline
