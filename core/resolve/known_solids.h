#pragma once

#include <map>
#include <string_view>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// The solids that a piece had before a change: a part whose body is as it was takes them over
// instead of having them worked out again, which most parts can. Looks at `before`, which may be
// null, for as long as it is there.
class KnownSolids {
  public:
    explicit KnownSolids(const ResolvedPiece* before);
    // BodySolids::of(body), where `name` is what the part is stated as.
    [[nodiscard]] BodySolids of(const Body& body, std::string_view name) const;

  private:
    std::map<std::string_view, const ResolvedPart*> firstOf_;  // of those stated by a name
};

}  // namespace shoulderline
