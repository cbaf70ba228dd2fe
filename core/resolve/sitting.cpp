#include "core/resolve/sitting.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/convex_hull.h"
#include "core/measure/angle_text.h"
#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kLowestSeat = 250.0;  // millimetres
constexpr double kHighestSeat = 650.0;
constexpr double kDeepestSeat = 750.0;
constexpr double kBackAbove = 150.0;  // a back reaches this far above the seat
constexpr double kClear = 40.0;       // above the seat where leaning begins: a cushion's thickness
constexpr double kLeastBoard = 60.0;  // a shorter stretch is no board to lean against
constexpr double kTouches = 0.5;

// A corner seen from the side, and the part that it is of: x of the piece's y, y of its z.
struct Corner {
    Vec2 at;
    std::size_t part = 0;
};

// The corners of a part at or above `level`; where an edge passes it, the point there.
void addCorners(const ResolvedPart& part,
                std::size_t index,
                double level,
                std::vector<Corner>& corners) {
    const BodySolids wood = part.wood();
    std::vector<Vec2> seen;
    for (const Vec3& vertex : wood.whole().vertices) {
        const Vec3 p = part.frame.toOuter(vertex);
        seen.push_back({p.y, p.z});
        if (p.z >= level) {
            corners.push_back({seen.back(), index});
        }
    }
    const bool isAllAbove =
        std::all_of(seen.begin(), seen.end(), [&](Vec2 p) { return p.y >= level; });
    if (isAllAbove) {
        return;
    }
    for (const PolyhedronEdge& edge : wood.whole().edges()) {
        const Vec2 a = seen[static_cast<std::size_t>(edge.ends.low)];
        const Vec2 b = seen[static_cast<std::size_t>(edge.ends.high)];
        if ((a.y < level) != (b.y < level)) {
            corners.push_back({a + (b - a) * ((level - a.y) / (b.y - a.y)), index});
        }
    }
}

struct Board {
    Vec2 from;
    Vec2 to;
};

// The longest straight stretch of the hull of `corners`, walked counter-clockwise, that runs more
// or less `along`: where a board would lie against them. None where it is too short to be one.
std::optional<Board> boardAgainst(const std::vector<Corner>& corners, Vec2 along) {
    constexpr double kMoreOrLess = 0.7;  // cosine
    if (corners.size() < 3) {
        return std::nullopt;
    }
    std::vector<Vec2> points;
    points.reserve(corners.size());
    for (const Corner& corner : corners) {
        points.push_back(corner.at);
    }
    const std::vector<Vec2> hull = convexHull(std::move(points));
    std::optional<Board> longest;
    for (std::size_t i = 0; i < hull.size(); ++i) {
        const Vec2 from = hull[i];
        const Vec2 to = hull[i + 1 == hull.size() ? 0 : i + 1];
        const double length = norm(to - from);
        const bool runsAlong = dot(to - from, along) > kMoreOrLess * length;
        if (runsAlong && length >= kLeastBoard &&
            (!longest || length > norm(longest->to - longest->from))) {
            longest = Board{from, to};
        }
    }
    return longest;
}

std::vector<std::size_t> touched(const std::vector<Corner>& corners, const Board& board) {
    const Vec2 way = (board.to - board.from) * (1.0 / norm(board.to - board.from));
    std::vector<std::size_t> parts;
    for (const Corner& corner : corners) {
        const bool isNear = std::abs(cross(way, corner.at - board.from)) < kTouches;
        if (isNear && std::find(parts.begin(), parts.end(), corner.part) == parts.end()) {
            parts.push_back(corner.part);
        }
    }
    std::sort(parts.begin(), parts.end());
    return parts;
}

bool mayBeSeat(const ResolvedPart& part, const Box& box) {
    const bool isRight = part.role == Role::Seat || part.role == Role::Slat;
    return isRight && box.max.z >= kLowestSeat && box.max.z <= kHighestSeat &&
           box.size().z < std::min(box.size().x, box.size().y);
}

bool mayBeBack(Role role) {
    switch (role) {
        case Role::Post:
        case Role::Rail:
        case Role::Stile:
        case Role::Slat:
        case Role::Spindle:
        case Role::Panel:
            return true;
        case Role::Stretcher:
        case Role::Arm:
        case Role::Seat:
        case Role::Bracket:
        case Role::Cleat:
            break;
    }
    return false;
}

struct SeatBoards {
    std::vector<std::size_t> parts;
    Box around;
    bool isNamed = false;  // of the role, and so a seat without a back too
};

std::optional<SeatBoards> seatOf(const ResolvedPiece& resolved, const std::vector<Box>& boxes) {
    SeatBoards seat;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        if (!mayBeSeat(resolved.parts[i], boxes[i])) {
            continue;
        }
        seat.around = seat.parts.empty() ? boxes[i] : Box::around(seat.around, boxes[i]);
        seat.isNamed = seat.isNamed || resolved.parts[i].role == Role::Seat;
        seat.parts.push_back(i);
    }
    const bool isOne = !seat.parts.empty() && seat.around.size().y <= kDeepestSeat;
    return isOne ? std::optional(seat) : std::nullopt;
}

void addBack(const ResolvedPiece& resolved,
             const std::vector<Box>& boxes,
             const Box& seat,
             Sitting& sitting) {
    std::vector<Corner> corners;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const bool isBehind = boxes[i].centre().y > seat.centre().y &&
                              boxes[i].min.x < seat.max.x && boxes[i].max.x > seat.min.x;
        if (isBehind && mayBeBack(resolved.parts[i].role) &&
            boxes[i].max.z >= seat.max.z + kBackAbove) {
            addCorners(resolved.parts[i], i, seat.max.z + kClear, corners);
        }
    }
    const std::optional<Board> board = boardAgainst(corners, {0, -1});
    if (board) {
        sitting.lean =
            Angle::radians(std::atan2(board->from.x - board->to.x, board->from.y - board->to.y));
        sitting.back = touched(corners, *board);
    }
}

}  // namespace

std::optional<Angle> Sitting::between() const {
    return lean ? std::optional(Angle::degrees(90.0 + lean->degrees() - slope.degrees()))
                : std::nullopt;
}

std::optional<Sitting> sittingOn(const ResolvedPiece& resolved) {
    std::vector<Box> boxes;
    boxes.reserve(resolved.parts.size());
    for (const ResolvedPart& part : resolved.parts) {
        boxes.push_back(boundsInSpace(part));
    }
    const std::optional<SeatBoards> seat = seatOf(resolved, boxes);
    if (!seat) {
        return std::nullopt;
    }
    std::vector<Corner> corners;
    for (const std::size_t i : seat->parts) {
        addCorners(resolved.parts[i], i, 0.0, corners);
    }
    const std::optional<Board> board = boardAgainst(corners, {-1, 0});
    if (!board) {
        return std::nullopt;
    }
    Sitting sitting;
    sitting.seatHeight = Length::mm(board->to.y);
    sitting.slope =
        Angle::radians(std::atan2(board->to.y - board->from.y, board->from.x - board->to.x));
    sitting.seat = touched(corners, *board);
    addBack(resolved, boxes, seat->around, sitting);
    return sitting.lean || seat->isNamed ? std::optional(sitting) : std::nullopt;
}

std::string sittingText(const Sitting& sitting, const LengthStyle& style) {
    std::string text = "seat " + showLength(sitting.seatHeight, style, true) + " high, ";
    const double slope = sitting.slope.degrees();
    constexpr double kLevel = 0.05;
    if (std::abs(slope) < kLevel) {
        text += "level";
    } else {
        text += (slope > 0 ? "slopes " : "rises ") +
                showAngle(slope > 0 ? sitting.slope : Angle::degrees(-slope)) + " to its back";
    }
    if (sitting.lean) {
        text += "; back leans " + showAngle(*sitting.lean) + " from upright; " +
                showAngle(*sitting.between()) + " between them";
    }
    return text;
}

}  // namespace shoulderline
