#include "core/geometry/inset_line.h"

#include <cmath>
#include <optional>

namespace shoulderline {

namespace {

class InsetLine {
  public:
    InsetLine(const std::vector<InsetSide>& sides, Vec3 normal, std::vector<Vec3>& corners)
        : sides_(sides),
          normal_(normal),
          corners_(corners),
          isLoop_(corners.size() == sides.size()),
          isKept_(sides.size(), true) {}

    bool mend() {
        for (std::size_t round = 0; round < sides_.size(); ++round) {
            const std::optional<std::size_t> overtaken = mostOvertaken();
            if (!overtaken) {
                return true;
            }
            isKept_[*overtaken] = false;
            const std::optional<std::size_t> before = beside(*overtaken, sides_.size() - 1);
            const std::optional<std::size_t> after = beside(*overtaken, 1);
            const std::optional<Vec3> met =
                before && after && *before != *after ? meet(*before, *after) : std::nullopt;
            if (!met) {
                return false;
            }
            for (std::size_t k = next(*before); k != next(*after); k = next(k)) {
                corners_[k] = *met;
            }
        }
        return false;
    }

  private:
    [[nodiscard]] std::size_t next(std::size_t k) const {
        return k + 1 == corners_.size() ? 0 : k + 1;
    }
    [[nodiscard]] double ahead(std::size_t k) const {
        const Vec3 way = sides_[k].to - sides_[k].from;
        return dot(corners_[next(k)] - corners_[k], way) / norm(way);
    }
    [[nodiscard]] std::optional<std::size_t> mostOvertaken() const {
        constexpr double kHair = 1e-9;
        std::optional<std::size_t> most;
        for (std::size_t k = 0; k < sides_.size(); ++k) {
            if (isKept_[k] && ahead(k) < (most ? ahead(*most) : -kHair)) {
                most = k;
            }
        }
        return most;
    }
    // The kept side next to `k`, going on by `step` sides at a time.
    [[nodiscard]] std::optional<std::size_t> beside(std::size_t k, std::size_t step) const {
        const bool isForward = step == 1;
        for (std::size_t i = 0; i < sides_.size(); ++i) {
            const bool isAtEnd = isForward ? k + 1 == sides_.size() : k == 0;
            if (isAtEnd && !isLoop_) {
                return std::nullopt;
            }
            k = (k + step) % sides_.size();
            if (isKept_[k]) {
                return k;
            }
        }
        return std::nullopt;
    }
    // Where the inset lines of two sides meet.
    [[nodiscard]] std::optional<Vec3> meet(std::size_t a, std::size_t b) const {
        constexpr double kParallel = 1e-6;
        const InsetSide& first = sides_[a];
        const InsetSide& second = sides_[b];
        const Vec3 along = cross(normal_, first.out);
        const Vec3 on = first.from - first.out * first.reach;
        const double slope = dot(along, second.out);
        if (std::abs(slope) < kParallel) {
            return std::nullopt;
        }
        const double off = -second.reach - dot(on - second.from, second.out);
        return on + along * (off / slope);
    }

    const std::vector<InsetSide>& sides_;
    Vec3 normal_;
    std::vector<Vec3>& corners_;
    bool isLoop_;
    std::vector<bool> isKept_;
};

}  // namespace

bool dropOvertaken(const std::vector<InsetSide>& sides, Vec3 normal, std::vector<Vec3>& corners) {
    return InsetLine(sides, normal, corners).mend();
}

}  // namespace shoulderline
