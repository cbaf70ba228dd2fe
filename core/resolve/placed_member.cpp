#include <algorithm>
#include <cmath>

#include "core/resolve/relations.h"

namespace shoulderline {

double reachOf(SectionForm form, double width, double thickness) {
    constexpr double kFlat = 0.41421356237309503;  // tan(22.5 degrees), half a side of an octagon
    const double a = std::abs(width);
    const double b = std::abs(thickness);
    switch (form) {
        case SectionForm::Round:
            return std::hypot(a, b);
        case SectionForm::Octagonal:
            return std::max(a + kFlat * b, b + kFlat * a);
        case SectionForm::Square:
            break;
    }
    return a + b;
}

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
