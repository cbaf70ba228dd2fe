#include "core/drawing/part_horns.h"

#include <algorithm>

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

void addHornSizes(SizeWriter& writer) {
    if (writer.view.face != Face::FaceSide) {
        return;
    }
    const ResolvedPart& part = writer.part;
    const std::vector<HornAt> horns = hornsOf(part);
    if (horns.empty()) {
        return;
    }
    const Box over = part.overBox();
    double low = over.min.x;
    double high = over.max.x;
    for (const HornAt& horn : horns) {
        const double tip = horn.end + horn.way * horn.length.mm();
        low = std::min(low, tip);
        high = std::max(high, tip);
        writer.along({std::min(horn.end, tip),
                      std::max(horn.end, tip),
                      0.0,
                      0.0,
                      {},
                      0.0,
                      "horn",
                      writer.subject});
    }
    constexpr int kOutsideAll = 3;
    writer.along({low,
                  high,
                  0.0,
                  0.0,
                  "(" + writer.shown(high - low) + ")",
                  0.0,
                  "length with horns",
                  writer.subject,
                  kOutsideAll});
    const double middle = writer.part.width.value.mm() / 2.0;
    for (const HornAt& horn : horns) {
        const double at = horn.end + horn.way * horn.length.mm() / 2.0;
        writer.note({writer.view.toPlane(Vec3{at, middle, 0.0}),
                     {"horn, left on:", "cut off after glue-up"},
                     writer.subject});
    }
}

}  // namespace shoulderline
