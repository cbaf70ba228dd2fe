#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "core/piece/piece.h"

namespace shoulderline {

// Calls `visit` with every statement of the piece, empty ones too, to read or to change it.
void forEachStatement(Piece& piece, const std::function<void(Statement&)>& visit);

// `statement` with the measure `name` called `newName`; as it was where it does not mention it or
// cannot be read.
[[nodiscard]] Statement renameInExpression(const Statement& statement,
                                           std::string_view name,
                                           std::string_view newName,
                                           Unit unit);

// Calls every reference to the part `name` (also ", left" and ", right") by `newName`.
void renameInReferences(Piece& piece, const std::string& name, const std::string& newName);

}  // namespace shoulderline
