// Any bytes as a .shoulder file. What is read is resolved, checked and written; what is written
// reads back as the same piece. What is refused says why.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/check/findings_json.h"
#include "core/resolve/resolve.h"
#include "core/resolve/sizes_json.h"
#include "core/storage/piece_text.h"
#include "tests/support/pieces.h"

namespace {

using namespace shoulderline;

void require(bool holds) {
    if (!holds) {
        std::abort();
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const Result<Piece> piece = readPiece({reinterpret_cast<const char*>(data), size});
    if (!piece) {
        require(!piece.error().message.empty());
        return 0;
    }
    const Result<Piece> again = readPiece(writePiece(*piece));
    require(again.has_value() && *again == *piece);
    constexpr std::size_t kMostParts = 200;
    if (piece->parts.size() <= kMostParts) {
        const ResolvedPiece resolved = resolve(*piece, testing::ruleBook(), testing::workshop());
        const std::vector<Finding> findings =
            check(*piece, resolved, testing::speciesTable(), testing::strengthBook());
        require(!sizesJson(*piece, resolved).empty() && !findingsJson(findings, resolved).empty());
    }
    return 0;
}
