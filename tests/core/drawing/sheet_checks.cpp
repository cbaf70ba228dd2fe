#include "tests/core/drawing/sheet_checks.h"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/line_style.h"

namespace shoulderline::testing {

namespace {

namespace bg = boost::geometry;
using Point = bg::model::d2::point_xy<double>;
using Line = bg::model::linestring<Point>;
using BoxModel = bg::model::box<Point>;

struct Lettering {
    BoxModel box;
    std::string text;
};

// A line with half the width of its ink.
struct Inked {
    Line line;
    double half = 0.0;
};

struct Content {
    std::vector<Lettering> lettering;
    std::vector<Inked> lines;
};

Line lineThrough(const std::vector<Vec2>& points) {
    Line line;
    for (const Vec2& p : points) {
        bg::append(line, Point(p.x, p.y));
    }
    return line;
}

std::vector<Vec2> pointsOf(const ArcOp& arc) {
    constexpr int kChords = 48;
    std::vector<Vec2> points;
    for (int i = 0; i <= kChords; ++i) {
        const Angle at = arc.start + arc.sweep * (1.0 * i / kChords);
        points.push_back(arc.centre + Vec2{at.cos(), at.sin()} * arc.radius);
    }
    return points;
}

// Between lettering and the ink of a line: less is seen as touching.
constexpr double kAir = 0.3;

// What lettering takes up, from its own layout: a hair less all round, so that touching is not
// lying on.
Lettering letteringOf(const TextOp& op, const TextMetrics& metrics) {
    constexpr double kHair = 0.05;
    const Rect r = boundsOf(op, metrics);
    return {
        BoxModel(Point(r.min.x + kHair, r.min.y + kHair), Point(r.max.x - kHair, r.max.y - kHair)),
        op.text};
}

Content contentOf(const Sheet& sheet, const TextMetrics& metrics) {
    Content content;
    const auto halfOf = [&](LineRole role) { return lineStyle(role, sheet.lines).width / 2.0; };
    for (const Op& op : sheet.ops) {
        if (const auto* stroke = std::get_if<Stroke>(&op)) {
            content.lines.push_back({lineThrough(stroke->points), halfOf(stroke->role)});
        } else if (const auto* fill = std::get_if<Fill>(&op); fill != nullptr && !fill->tint) {
            content.lines.push_back({lineThrough(fill->points), 0.0});
        } else if (const auto* arc = std::get_if<ArcOp>(&op)) {
            content.lines.push_back({lineThrough(pointsOf(*arc)), halfOf(arc->role)});
        } else if (const auto* text = std::get_if<TextOp>(&op)) {
            content.lettering.push_back(letteringOf(*text, metrics));
        } else if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
            const DimensionParts parts = partsOf(*dimension, metrics);
            content.lettering.push_back(letteringOf(parts.figure, metrics));
            for (const Stroke& s : parts.strokes) {
                content.lines.push_back({lineThrough(s.points), halfOf(s.role)});
            }
            for (const Fill& arrow : parts.arrows) {
                content.lines.push_back({lineThrough(arrow.points), 0.0});
            }
        }
    }
    return content;
}

}  // namespace

std::vector<std::string> overlapsOn(const Sheet& sheet, const TextMetrics& metrics) {
    const Content content = contentOf(sheet, metrics);
    std::vector<std::string> found;
    for (std::size_t i = 0; i < content.lettering.size(); ++i) {
        const Lettering& one = content.lettering[i];
        for (std::size_t k = i + 1; k < content.lettering.size(); ++k) {
            if (bg::intersects(one.box, content.lettering[k].box)) {
                found.push_back("'" + one.text + "' on '" + content.lettering[k].text + "'");
            }
        }
        for (const Inked& inked : content.lines) {
            const Point& low = one.box.min_corner();
            const Point& high = one.box.max_corner();
            const double near = inked.half + kAir;
            const BoxModel reach(Point(low.x() - near, low.y() - near),
                                 Point(high.x() + near, high.y() + near));
            if (bg::intersects(reach, inked.line)) {
                const Point& start = inked.line.front();
                found.push_back("'" + one.text + "' on a line from " + std::to_string(start.x()) +
                                ", " + std::to_string(start.y()));
            }
        }
    }
    return found;
}

std::vector<DimensionOp> dimensionsOf(const Sheet& sheet, const std::string& of) {
    std::vector<DimensionOp> found;
    for (const Op& op : sheet.ops) {
        if (const auto* dimension = std::get_if<DimensionOp>(&op);
            dimension != nullptr && dimension->of == of) {
            found.push_back(*dimension);
        }
    }
    return found;
}

std::vector<std::string> wordsOn(const Sheet& sheet) {
    std::vector<std::string> words;
    for (const Op& op : sheet.ops) {
        if (const auto* text = std::get_if<TextOp>(&op)) {
            words.push_back(text->text);
        }
    }
    return words;
}

}  // namespace shoulderline::testing
