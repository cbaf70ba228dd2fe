#include "core/drawing/body_on_sheet.h"

#include <string>

namespace shoulderline {

std::optional<Vec2> bodyCornerOn(const Sheet& sheet, const ResolvedPart& part, Face face) {
    // The group of a body is named after its view and begins with the tint of its blank.
    const std::string name = part.name + ", " + std::string(wordFor(face));
    for (std::size_t i = 0; i + 1 < sheet.ops.size(); ++i) {
        const auto* group = std::get_if<BeginGroup>(&sheet.ops[i]);
        const auto* tint = std::get_if<Fill>(&sheet.ops[i + 1]);
        if (group != nullptr && group->name == name && tint != nullptr && !tint->points.empty()) {
            return tint->points.front();
        }
    }
    return std::nullopt;
}

}  // namespace shoulderline
