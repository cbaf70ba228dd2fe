#include "core/resolve/outline_points.h"

#include <algorithm>

#include "core/measure/expression.h"
#include "core/measure/length_statement.h"

namespace shoulderline {

namespace {

// What a side is in the part's frame: where it starts, the way along it, the way in, its length.
struct SideFrame {
    Vec3 start;
    Vec3 along;
    Vec3 in;
    double length = 0.0;
};

SideFrame frameOf(Face side, const Vec3& size) {
    switch (side) {
        case Face::FaceEdge:
            return {{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, size.x};
        case Face::BackEdge:
            return {{0, size.y, 0}, {1, 0, 0}, {0, -1, 0}, size.x};
        case Face::FaceSide:
            return {{0, 0, 0}, {1, 0, 0}, {0, 0, 1}, size.x};
        case Face::BackSide:
            return {{0, 0, size.z}, {1, 0, 0}, {0, 0, -1}, size.x};
        case Face::StartEnd:
            return {{0, 0, 0}, {0, 1, 0}, {1, 0, 0}, size.y};
        case Face::FarEnd:
            return {{size.x, 0, 0}, {0, 1, 0}, {-1, 0, 0}, size.y};
    }
    return {};
}

std::optional<double> lengthOf(const Piece& piece,
                               const ResolvedPiece& resolved,
                               const Statement& statement) {
    if (statement.empty()) {
        return 0.0;
    }
    const Result<Expression> expression = Expression::parse(statement, piece.unit);
    if (!expression) {
        return std::nullopt;
    }
    const Result<Length> value =
        expression->evaluateLength([&](std::string_view name) -> Result<Value> {
            for (const ResolvedMeasure& measure : resolved.measures) {
                if (measure.name == name && measure.value) {
                    return *measure.value;
                }
            }
            return fail(ErrorCode::UnknownName, std::string(name));
        });
    return value ? std::optional(value->mm()) : std::nullopt;
}

}  // namespace

std::vector<OutlinePoint> outlinePointsOf(const Piece& piece,
                                          const ResolvedPiece& resolved,
                                          const ResolvedPart& part) {
    std::vector<OutlinePoint> points;
    const Vec3 size = part.bodyBox().max;
    for (const auto& [side, stated] : piece.parts[part.stated].shape) {
        const SideFrame frame = frameOf(side, size);
        for (std::size_t i = 0; i < stated.size(); ++i) {
            const std::optional<double> along = lengthOf(piece, resolved, stated[i].along);
            const std::optional<double> in = lengthOf(piece, resolved, stated[i].in);
            if (!along || !in) {
                continue;
            }
            const bool isFromFar = stated[i].from == Datum::Far;
            const double from = isFromFar                         ? frame.length - *along
                                : stated[i].from == Datum::Middle ? frame.length / 2 + *along
                                                                  : *along;
            points.push_back({side,
                              i,
                              frame.start + frame.along * from + frame.in * *in,
                              Length::mm(from),
                              Length::mm(*in),
                              frame.along,
                              frame.in});
        }
    }
    return points;
}

Length outlineStep(Unit unit) {
    return unit == Unit::Inch ? Length::inches(1.0 / 16) : Length::mm(0.5);
}

Part withPointMoved(
    const Piece& piece, std::size_t stated, Face side, std::size_t index, Length along, Length in) {
    Part part = piece.parts[stated];
    const auto it = part.shape.find(side);
    if (it == part.shape.end() || index >= it->second.size()) {
        return part;
    }
    EdgePoint& point = it->second[index];
    const bool isFromFar = point.from == Datum::Far;
    if (!nearlyEqual(along, Length())) {
        point.along = offsetStatement(point.along, isFromFar ? -along : along, piece.unit);
    }
    if (!nearlyEqual(in, Length())) {
        point.in = offsetStatement(point.in, in, piece.unit);
    }
    return part;
}

}  // namespace shoulderline
