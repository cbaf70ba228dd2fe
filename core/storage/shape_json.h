#pragma once

#include "core/piece/shape.h"
#include "core/storage/object_reader.h"

namespace shoulderline {

// The shape and the cuts of a part, as its members "shape" and "cuts" in a file.
[[nodiscard]] nlohmann::ordered_json json(const Shape& shape);
[[nodiscard]] nlohmann::ordered_json json(const std::vector<CutStatement>& cuts);
[[nodiscard]] Shape readShape(ObjectReader& part);
[[nodiscard]] std::vector<CutStatement> readCuts(ObjectReader& part);

}  // namespace shoulderline
