#pragma once

#include "core/piece/use.h"
#include "core/storage/object_reader.h"
#include "core/storage/object_writer.h"

namespace shoulderline {

// What a piece has to bear and the air it stands in, as members of the piece's object in a file:
// "loads", "strength_tests", "climate" and "adhesive".
[[nodiscard]] Use readUse(ObjectReader& piece);
void writeUse(const Use& use, ObjectWriter& piece);

}  // namespace shoulderline
