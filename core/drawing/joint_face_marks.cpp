#include <algorithm>
#include <cmath>
#include <optional>

#include "core/drawing/joint_pictures.h"
#include "core/drawing/trade_marks.h"

// The face side's loop and the face edge's V on the pictures of a joint (common practice): on the
// face itself where that is seen, outside of its line where a part is seen on end.
namespace shoulderline {

namespace {

constexpr double kMostMark = 4.5;  // mm on the sheet
constexpr double kLeastMark = 2.0;
constexpr double kFaceOn = 0.99;  // of a direction: seen square

// A mark that is drawn with its foot at (0, 0) and the rest of it below, `into` the way of that.
Stroke laid(Stroke mark, Vec2 foot, Vec2 into) {
    for (Vec2& p : mark.points) {
        p = foot + Vec2{into.y, -into.x} * p.x + into * p.y;
    }
    return mark;
}

Stroke markOf(bool isSide, double height, Vec2 foot, Vec2 into) {
    if (isSide) {
        return laid(faceSideMark({-0.1 * height, 0.0}, height), foot, into);
    }
    return laid(faceEdgeMark({0.0, 0.0}, 0.7 * height, false), foot, into);
}

// Where on the border of `rect` that lies towards `way` most room is free of `taken`.
struct Free {
    Vec2 at;
    double room = 0.0;
};
Free freeOn(const Rect& rect, Vec2 way, const std::optional<Rect>& taken) {
    const bool isLevel = std::abs(way.x) < 0.5;
    const auto along = [&](Vec2 p) { return isLevel ? p.x : p.y; };
    double low = along(rect.min);
    double high = along(rect.max);
    if (taken) {
        const double before = std::max(along(taken->min), low) - low;
        const double after = high - std::min(along(taken->max), high);
        before >= after ? high = low + before : low = high - after;
    }
    const double middle = (low + high) / 2.0;
    const double x = way.x > 0.5 ? rect.max.x : rect.min.x;
    const double y = way.y > 0.5 ? rect.max.y : rect.min.y;
    return {isLevel ? Vec2{middle, y} : Vec2{x, middle}, high - low};
}

// The marks that a view of a part shows: `seen` is its outline on the sheet.
struct MarksSeen {
    const JointMembers::MarkedFaces& faces;
    const View& view;
    Rect seen;
    std::optional<Rect> taken;

    [[nodiscard]] Vec2 onSheet(Vec3 way) const {
        const Vec2 p = view.project(way);
        return {p.x, -p.y};
    }
    [[nodiscard]] bool isFacing(Vec3 way) const { return dot(way, view.towardsViewer) > kFaceOn; }
    // On the face that looks at the viewer, from the arris that it shares with the other.
    [[nodiscard]] std::optional<Stroke> onFace() const {
        const bool isSide = isFacing(faces.side);
        if (!isSide && !isFacing(faces.edge)) {
            return std::nullopt;
        }
        const Vec2 arris = onSheet(isSide ? faces.edge : faces.side);
        const Free free = freeOn(seen, arris, taken);
        const double across = std::abs(arris.x) > 0.5 ? seen.size().x : seen.size().y;
        const double height = std::min({kMostMark, 0.7 * across, 0.9 * free.room});
        return height < kLeastMark ? std::nullopt
                                   : std::optional(markOf(isSide, height, free.at, arris * -1.0));
    }
    // Outside of the lines of both, of a part that is seen on end.
    [[nodiscard]] std::vector<Stroke> outside() const {
        std::vector<Stroke> marks;
        for (const bool isSide : {true, false}) {
            const Vec2 out = onSheet(isSide ? faces.side : faces.edge);
            const Free free = freeOn(seen, out, taken);
            const double height = std::min(kMostMark, 0.9 * free.room);
            if (height >= kLeastMark) {
                marks.push_back(markOf(isSide, height, free.at, out));
            }
        }
        return marks;
    }
};

}  // namespace

void JointPictures::addRailMark(const JointLooking& looking, std::vector<Op>& ops) const {
    if (!style_.hasFaceMarks || !members_.railFaces || !members_.railIsSquare) {
        return;
    }
    Box wood = members_.atShoulder;
    wood.min.x = members_.rail.min.x;
    wood.max.x = 0.0;
    const MarksSeen marks{*members_.railFaces, looking.view, onSheet(wood, looking), std::nullopt};
    if (std::optional<Stroke> mark = marks.onFace()) {
        ops.push_back(*std::move(mark));
    }
}

void JointPictures::addPostMarks(const JointLooking& looking, std::vector<Op>& ops) const {
    if (!style_.hasFaceMarks || !members_.postFaces || !members_.postIsBox) {
        return;
    }
    const MarksSeen marks{*members_.postFaces,
                          looking.view,
                          onSheet(members_.post, looking),
                          onSheet(members_.mortise, looking)};
    Vec3 along;
    along[members_.postAxis] = 1.0;
    if (std::abs(dot(along, looking.view.towardsViewer)) > kFaceOn) {
        for (Stroke& mark : marks.outside()) {
            ops.push_back(std::move(mark));
        }
    } else if (std::optional<Stroke> mark = marks.onFace()) {
        ops.push_back(*std::move(mark));
    }
}

}  // namespace shoulderline
