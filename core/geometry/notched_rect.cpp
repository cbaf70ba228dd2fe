#include "core/geometry/notched_rect.h"

#include <utility>

#include <boost/geometry/algorithms/difference.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/geometry/strategies/strategies.hpp>

namespace shoulderline {

namespace {

using NotchedPoint = boost::geometry::model::d2::point_xy<double>;
using NotchedPolygon = boost::geometry::model::polygon<NotchedPoint, false, false>;
using NotchedPolygons = boost::geometry::model::multi_polygon<NotchedPolygon>;

NotchedPolygon polygonOf(const Rect& rect) {
    NotchedPolygon polygon;
    polygon.outer() = {{rect.min.x, rect.min.y},
                       {rect.max.x, rect.min.y},
                       {rect.max.x, rect.max.y},
                       {rect.min.x, rect.max.y}};
    return polygon;
}

}  // namespace

std::vector<Vec2> notchedRect(const Rect& rect, std::span<const Rect> notches) {
    NotchedPolygons left{polygonOf(rect)};
    for (const Rect& notch : notches) {
        NotchedPolygons rest;
        boost::geometry::difference(left, polygonOf(notch), rest);
        left = std::move(rest);
    }
    if (left.size() != 1 || !left.front().inners().empty()) {
        return {};
    }
    std::vector<Vec2> ring;
    for (const NotchedPoint& point : left.front().outer()) {
        ring.push_back({point.x(), point.y()});
    }
    return ring;
}

}  // namespace shoulderline
