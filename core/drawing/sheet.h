#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/geometry/vec.h"
#include "core/measure/angle.h"

namespace shoulderline {

// Drawings as data. Coordinates are true millimetres on the sheet: x to the right, y DOWN, from the
// sheet's top left corner. Every painter (screen, PDF, SVG, printer) draws the same list.

// What a line stands for; its width and dashes come from one style table
// (core/drawing/line_style.h).
enum class LineRole {
    Visible,  // edges and outlines in sight
    Narrow,   // edges in sight so close together that wide lines would run into one another
    Hidden,   // edges behind wood
    Centre,
    Dimension,     // dimension and extension lines, leaders
    CutPlane,      // where a section is taken, or paper is cut
    Construction,  // fine lines: hatching, guides
    Neighbour,     // the part it joins, shown in place; another position of what moves
    Border,        // the frame of a sheet
};

// What a group of ops shows, so that a pick in the drawing is a pick of the thing.
enum class SubjectKind { None, Part, Joint, Finding, RodLine, Dimension };
struct Subject {
    SubjectKind kind = SubjectKind::None;
    std::size_t index = 0;  // in ResolvedPiece::parts or ::joints, or of the finding or rod line
    friend bool operator==(const Subject&, const Subject&) = default;
};

struct Stroke {
    std::vector<Vec2> points;
    LineRole role = LineRole::Visible;
    friend bool operator==(const Stroke&, const Stroke&) = default;
};

// A filled area without outline (arrowheads, tints of the screen). `tint` false: solid ink.
struct Fill {
    std::vector<Vec2> points;
    bool tint = false;
    friend bool operator==(const Fill&, const Fill&) = default;
};

// Centre, radius; from `start` by `sweep`, angles from +x towards +y (clockwise as seen).
struct ArcOp {
    Vec2 centre;
    double radius = 0.0;
    Angle start;
    Angle sweep;
    LineRole role = LineRole::Visible;
    friend bool operator==(const ArcOp&, const ArcOp&) = default;
};

enum class Align { Left, Centre, Right };

// `at` is on the baseline. Height is that of capitals. turned: reads upwards (from the right edge).
// Fractions in the text ("16 1/2") are set stacked with a level bar.
struct TextOp {
    Vec2 at;
    std::string text;
    double height = 3.5;
    Align align = Align::Left;
    bool isTurned = false;
    bool isBold = false;
    friend bool operator==(const TextOp&, const TextOp&) = default;
};

// Of a running dimension: all from one origin share one line, with a circle at the origin; each has
// an arrow where it ends, and its figure, turned, past the end of its extension line at `foot`,
// aside where its neighbours crowd it.
struct Running {
    Vec2 foot;
    bool isLongest = false;  // draws the line and the origin for all
    bool isDot = false;      // where its arrow would lie on a neighbour's: a dot (ISO 129-1)
    friend bool operator==(const Running&, const Running&) = default;
};

// A dimension once placed: between `from` and `to` on the part (sheet coordinates), its line
// through `lineFrom` and `lineTo`, figure `text` at `textAt` (baseline centre). The painter draws
// extension lines, line, arrows and figure. `value` is the true size in millimetres, which `text`
// shows.
struct DimensionOp {
    Vec2 from;
    Vec2 to;
    Vec2 lineFrom;
    Vec2 lineTo;
    Vec2 textAt;
    std::string text;
    double height = 3.5;
    bool isTurned = false;  // the figure reads from the right
    bool arrowsOutside = false;
    double value = 0.0;
    std::string of;  // what it is the size of: "mortise length", "from end"
    std::optional<Running> running;
    friend bool operator==(const DimensionOp&, const DimensionOp&) = default;
};

struct BeginGroup {
    Subject subject;
    std::string name;  // for the accessible description: "front rail, front elevation"
    friend bool operator==(const BeginGroup&, const BeginGroup&) = default;
};
struct EndGroup {
    friend bool operator==(const EndGroup&, const EndGroup&) = default;
};

using Op = std::variant<Stroke, Fill, ArcOp, TextOp, DimensionOp, BeginGroup, EndGroup>;

// How heavy the lines of a sheet are: the wide line is 0.5, 0.35 or 0.25 mm
// (core/drawing/line_style.h).
enum class LineGroup { Bold, Medium, Fine };

struct Sheet {
    std::string title;
    Vec2 size;
    std::vector<Op> ops;
    LineGroup lines = LineGroup::Bold;
    friend bool operator==(const Sheet&, const Sheet&) = default;
};

}  // namespace shoulderline
