#include "core/drawing/smooth_runs.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/drawing/dashes.h"

namespace shoulderline {

namespace {

constexpr double kSamePoint = 1e-6;  // millimetres

bool areSame(Vec2 a, Vec2 b) {
    return std::abs(a.x - b.x) < kSamePoint && std::abs(a.y - b.y) < kSamePoint;
}

bool isPiece(const Op& op) {
    const auto* stroke = std::get_if<Stroke>(&op);
    return stroke != nullptr && stroke->role == LineRole::Hidden && stroke->points.size() == 2 &&
           norm(stroke->points[1] - stroke->points[0]) > kSamePoint;
}

// The pieces of one group, put together.
class Runs {
  public:
    explicit Runs(std::vector<Stroke> pieces)
        : pieces_(std::move(pieces)), isTaken_(pieces_.size()) {}

    std::vector<Op> take() {
        std::vector<Op> ops;
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            if (isTaken_[i]) {
                continue;
            }
            isTaken_[i] = true;
            Stroke run = pieces_[i];
            extend(run.points);
            std::reverse(run.points.begin(), run.points.end());
            extend(run.points);
            ops.push_back(std::move(run));
        }
        return ops;
    }

  private:
    void extend(std::vector<Vec2>& points) {
        while (const std::optional<Vec2> next = after(points)) {
            points.push_back(*next);
        }
    }
    std::optional<Vec2> after(const std::vector<Vec2>& points) {
        const Vec2 end = points.back();
        const Vec2 way = end - points[points.size() - 2];
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            if (isTaken_[i]) {
                continue;
            }
            for (const std::size_t from : {std::size_t{0}, std::size_t{1}}) {
                const Vec2 next = pieces_[i].points[1 - from];
                const Vec2 on = next - end;
                if (areSame(pieces_[i].points[from], end) &&
                    std::abs(std::atan2(cross(way, on), dot(way, on))) < kMostTurn) {
                    isTaken_[i] = true;
                    return next;
                }
            }
        }
        return std::nullopt;
    }

    std::vector<Stroke> pieces_;
    std::vector<bool> isTaken_;
};

}  // namespace

std::vector<Op> withHiddenRunsJoined(std::vector<Op> ops) {
    std::vector<Op> joined;
    joined.reserve(ops.size());
    std::vector<Stroke> pieces;
    const auto close = [&] {
        for (Op& op : Runs(std::move(pieces)).take()) {
            joined.push_back(std::move(op));
        }
        pieces.clear();
    };
    for (Op& op : ops) {
        if (isPiece(op)) {
            pieces.push_back(std::get<Stroke>(std::move(op)));
            continue;
        }
        if (std::holds_alternative<BeginGroup>(op) || std::holds_alternative<EndGroup>(op)) {
            close();
        }
        joined.push_back(std::move(op));
    }
    close();
    return joined;
}

}  // namespace shoulderline
