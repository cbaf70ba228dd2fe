#include "core/resolve/relations.h"

namespace shoulderline {

ResolvedPart partFrom(const Part& part, std::size_t stated, const PlacedMember& member) {
    ResolvedPart resolved;
    resolved.of = part.name;
    resolved.stated = stated;
    resolved.role = part.role;
    resolved.section = part.section;
    resolved.stock = part.stock;
    resolved.assembly = part.assembly;
    resolved.frame =
        member.turned ? *member.turned : frameOnBox(member.box, member.faceSide, member.faceEdge);
    resolved.shoulderLength = member.length;
    resolved.width = member.width;
    resolved.thickness = member.thickness;
    resolved.gap = member.gap;
    return resolved;
}

}  // namespace shoulderline
