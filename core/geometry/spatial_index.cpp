#include "core/geometry/spatial_index.h"

#include <iterator>
#include <utility>
#include <vector>

#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <boost/geometry/strategies/relate/cartesian.hpp>
#include <boost/iterator/function_output_iterator.hpp>

namespace shoulderline {

namespace {

namespace bg = boost::geometry;

template <int Dimension>
struct Indexed {
    using Point = bg::model::point<double, static_cast<std::size_t>(Dimension), bg::cs::cartesian>;
    using Range = bg::model::box<Point>;
    using Entry = std::pair<Range, std::size_t>;
    using Tree = bg::index::rtree<Entry, bg::index::quadratic<16>>;
};

Indexed<3>::Range rangeOf(const Box& box) {
    return {{box.min.x, box.min.y, box.min.z}, {box.max.x, box.max.y, box.max.z}};
}

Indexed<2>::Range rangeOf(const Rect& rect) {
    return {{rect.min.x, rect.min.y}, {rect.max.x, rect.max.y}};
}

// Building from a range, not by inserting, packs the tree.
template <class Kind, class Shape>
typename Kind::Tree packed(std::span<const Shape> shapes) {
    std::vector<typename Kind::Entry> entries;
    entries.reserve(shapes.size());
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        entries.emplace_back(rangeOf(shapes[i]), i);
    }
    return typename Kind::Tree(entries);
}

template <class Tree, class Range>
void find(const Tree& tree, const Range& range, const std::function<void(std::size_t)>& found) {
    tree.query(bg::index::intersects(range),
               boost::make_function_output_iterator(
                   [&found](const typename Tree::value_type& entry) { found(entry.second); }));
}

}  // namespace

struct SpatialIndex::Tree {
    Indexed<3>::Tree boxes;
};

SpatialIndex::SpatialIndex(std::span<const Box> boxes)
    : tree_(std::make_unique<Tree>(Tree{packed<Indexed<3>>(boxes)})) {}
SpatialIndex::SpatialIndex(SpatialIndex&&) noexcept = default;
SpatialIndex& SpatialIndex::operator=(SpatialIndex&&) noexcept = default;
SpatialIndex::~SpatialIndex() = default;

void SpatialIndex::query(const Box& box, const std::function<void(std::size_t)>& found) const {
    find(tree_->boxes, rangeOf(box), found);
}

struct PlaneIndex::Tree {
    Indexed<2>::Tree rects;
};

PlaneIndex::PlaneIndex(std::span<const Rect> rects)
    : tree_(std::make_unique<Tree>(Tree{packed<Indexed<2>>(rects)})) {}
PlaneIndex::PlaneIndex(PlaneIndex&&) noexcept = default;
PlaneIndex& PlaneIndex::operator=(PlaneIndex&&) noexcept = default;
PlaneIndex::~PlaneIndex() = default;

void PlaneIndex::query(const Rect& rect, const std::function<void(std::size_t)>& found) const {
    find(tree_->rects, rangeOf(rect), found);
}

}  // namespace shoulderline
