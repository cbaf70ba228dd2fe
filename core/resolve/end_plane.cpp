#include "core/resolve/end_plane.h"

namespace shoulderline {

std::optional<HalfSpace> endPlaneOf(const Body& body, End end) {
    const double way = end == End::Far ? 1.0 : -1.0;
    double most = 0.5;  // of the unit normal: planes along the part shape its sides
    std::optional<HalfSpace> found;
    for (const PlaneCut& plane : body.planes) {
        if (plane.surface < 0 && plane.keeps.normal.x * way > most) {
            most = plane.keeps.normal.x * way;
            found = plane.keeps;
        }
    }
    return found;
}

double endAt(const ResolvedPart& part, End end, double y, double z) {
    if (const std::optional<HalfSpace> keeps = endPlaneOf(part.body, end)) {
        return (keeps->offset - keeps->normal.y * y - keeps->normal.z * z) / keeps->normal.x;
    }
    return end == End::Far ? part.shoulderLength.value.mm() : 0.0;
}

Extent alongFaceArris(const ResolvedPart& part) {
    if (part.section != SectionForm::Square) {
        return {0.0, part.shoulderLength.value.mm()};
    }
    return {endAt(part, End::Start, 0.0, 0.0), endAt(part, End::Far, 0.0, 0.0)};
}

}  // namespace shoulderline
