#include "core/resolve/known_solids.h"

namespace shoulderline {

KnownSolids::KnownSolids(const ResolvedPiece* before) {
    if (before == nullptr) {
        return;
    }
    for (const ResolvedPart& part : before->parts) {
        if (!part.solids.isEmpty()) {
            firstOf_.emplace(part.of, &part);
        }
    }
}

BodySolids KnownSolids::of(const Body& body, std::string_view name) const {
    const auto it = firstOf_.find(name);
    return it != firstOf_.end() && it->second->body == body ? it->second->solids
                                                            : BodySolids::of(body);
}

}  // namespace shoulderline
