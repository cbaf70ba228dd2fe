#pragma once

#include "core/piece/shape.h"
#include "core/storage/object_reader.h"

namespace shoulderline {

// The shape, the bow, the cuts and the easings of a part, as its members "shape", "bend", "cuts"
// and "easings" in a file.
[[nodiscard]] nlohmann::ordered_json json(const Shape& shape);
[[nodiscard]] nlohmann::ordered_json json(const std::vector<CutStatement>& cuts);
[[nodiscard]] nlohmann::ordered_json json(const std::vector<EasingStatement>& easings);
[[nodiscard]] nlohmann::ordered_json json(const Bend& bend);
[[nodiscard]] std::optional<Bend> readBend(ObjectReader& part);
[[nodiscard]] Shape readShape(ObjectReader& part);
[[nodiscard]] std::vector<CutStatement> readCuts(ObjectReader& part);
[[nodiscard]] std::vector<EasingStatement> readEasings(ObjectReader& part);

}  // namespace shoulderline
