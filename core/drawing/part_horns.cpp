#include "core/drawing/part_horns.h"

#include "core/drawing/hatching.h"
#include "core/drawing/part_sizing.h"

namespace shoulderline {

namespace {

// A horn: from the end of the body, `way` along it.
struct HornAt {
    Length length;
    double end = 0.0;
    double way = 1.0;
};
std::vector<HornAt> hornsOf(const ResolvedPart& part) {
    std::vector<HornAt> horns;
    if (part.startHorn > kLengthTolerance) {
        horns.push_back({part.startHorn, 0.0, -1.0});
    }
    if (part.farHorn > kLengthTolerance) {
        horns.push_back({part.farHorn, part.shoulderLength.value.mm(), 1.0});
    }
    return horns;
}

}  // namespace

void addHornEdges(const ResolvedPart& part, const PartView& view, std::vector<ViewEdge>& edges) {
    if (isEnd(view.face)) {
        return;
    }
    for (const HornAt& horn : hornsOf(part)) {
        Box box = part.bodyBox();
        const double tip = horn.end + horn.way * horn.length.mm();
        box.min.x = std::min(horn.end, tip);
        box.max.x = std::max(horn.end, tip);
        const std::vector<Vec2> ring = ringOf(view.toPlane(box));
        for (std::size_t i = 0; i < ring.size(); ++i) {
            edges.push_back({ring[i], ring[(i + 1) % ring.size()], true, 0, static_cast<int>(i)});
        }
    }
}

void addHornNotes(SizeWriter& writer) {
    if (writer.view.face != Face::FaceSide) {
        return;
    }
    const double middle = writer.part.width.value.mm() / 2.0;
    for (const HornAt& horn : hornsOf(writer.part)) {
        const double at = horn.end + horn.way * horn.length.mm() / 2.0;
        writer.note({writer.view.toPlane(Vec3{at, middle, 0.0}),
                     {"horn " + writer.shown(horn.length.mm()), "left on, cut off after glue-up"},
                     writer.subject});
    }
}

}  // namespace shoulderline
