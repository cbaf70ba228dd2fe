#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <span>

#include "core/geometry/box.h"
#include "core/geometry/rect.h"

namespace shoulderline {

// Finds the boxes of a fixed set that meet a given one: a packed R-tree. Answers come as positions
// in the span it was built from, in no set order. Touching counts as meeting.
class SpatialIndex {
  public:
    explicit SpatialIndex(std::span<const Box> boxes);
    SpatialIndex(SpatialIndex&&) noexcept;
    SpatialIndex& operator=(SpatialIndex&&) noexcept;
    ~SpatialIndex();

    void query(const Box& box, const std::function<void(std::size_t)>& found) const;

  private:
    struct Tree;
    std::unique_ptr<Tree> tree_;
};

// The same in the plane.
class PlaneIndex {
  public:
    explicit PlaneIndex(std::span<const Rect> rects);
    PlaneIndex(PlaneIndex&&) noexcept;
    PlaneIndex& operator=(PlaneIndex&&) noexcept;
    ~PlaneIndex();

    void query(const Rect& rect, const std::function<void(std::size_t)>& found) const;

  private:
    struct Tree;
    std::unique_ptr<Tree> tree_;
};

}  // namespace shoulderline
