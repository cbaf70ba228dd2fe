#include "core/drawing/shelf.h"

#include <algorithm>
#include <array>

namespace shoulderline {

namespace {

// The shortest way between two areas.
double distanceBetween(const Rect& a, const Rect& b) {
    return norm(Vec2{std::max({0.0, b.min.x - a.max.x, a.min.x - b.max.x}),
                     std::max({0.0, b.min.y - a.max.y, a.min.y - b.max.y})});
}

}  // namespace

std::optional<Vec2> Shelf::placeFor(const std::vector<Rect>& covers,
                                    const std::optional<Rect>& beside,
                                    const std::function<bool(Vec2)>& mayStand) const {
    std::optional<Vec2> best;
    std::array<double, 3> least{};
    for (const double y : corners(&Vec2::y, gaps_.between)) {
        for (const double x : corners(&Vec2::x, gaps_.beside)) {
            const Vec2 at{x, y};
            const Rect here{at + covers.front().min, at + covers.front().max};
            const std::array<double, 3> rank{beside ? distanceBetween(here, *beside) : 0.0, y, x};
            if ((!best || rank < least) && isFree(covers, at) && mayStand(at)) {
                best = at;
                least = rank;
            }
        }
    }
    return best;
}

void Shelf::take(Vec2 at, const std::vector<Rect>& covers) {
    for (const Rect& cover : covers) {
        taken_.push_back({at + cover.min, at + cover.max});
    }
}

std::vector<double> Shelf::corners(double Vec2::*axis, double between) const {
    std::vector<double> places{0.0};
    for (const Rect& rect : taken_) {
        places.push_back(rect.max.*axis + between);
    }
    return places;
}

bool Shelf::isFree(const std::vector<Rect>& covers, Vec2 at) const {
    return std::all_of(covers.begin(), covers.end(), [&](const Rect& cover) {
        return isFree({at + cover.min, at + cover.max});
    });
}

bool Shelf::isFree(const Rect& area) const {
    constexpr double kHair = 1e-9;
    if (area.max.x > room_.x + kHair || area.max.y > room_.y + kHair) {
        return false;
    }
    return std::none_of(taken_.begin(), taken_.end(), [&](const Rect& rect) {
        return area.min.x < rect.max.x + gaps_.beside - kHair &&
               rect.min.x < area.max.x + gaps_.beside - kHair &&
               area.min.y < rect.max.y + gaps_.between - kHair &&
               rect.min.y < area.max.y + gaps_.between - kHair;
    });
}

}  // namespace shoulderline
