#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/drawing/part_views.h"
#include "core/drawing/sheet.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline::testing {

// A part as its sheets letter it. What there is and where it lies is read off the lines, as a maker
// does who looks at the drawing; every place is then worked out from lettered figures alone, going
// on from the corner of the body from one figure to the next.
class LetteredPart {
  public:
    LetteredPart(const std::vector<Sheet>& sheets,
                 const ResolvedPiece& resolved,
                 const ResolvedPart& part,
                 Unit unit);

    // Where the figures put a place `at` along an axis of the part's frame; none where they do not.
    [[nodiscard]] std::optional<double> place(int axis, double at) const;
    // A box so placed; none where a figure is missing.
    [[nodiscard]] std::optional<Box> place(const Box& box) const;
    // The figure for a size of that name that begins or ends there along the part.
    [[nodiscard]] std::optional<double> length(const std::string& of, double end) const;
    // The rows of the outline told of a face: along, across, radius (0 for straight).
    struct Point {
        double along = 0.0;
        double across = 0.0;
        double radius = 0.0;
    };
    [[nodiscard]] const std::vector<Point>* outline(Face face) const;
    // A mouth that its note tells to lie turned: by its middle, that middle's own length and width,
    // and its turn from the part's length, above zero away from the face that it is gauged from.
    struct Turned {
        Face face = Face::FaceSide;
        Vec3 middle;
        double shorter = 0.0;
        double longer = 0.0;
        double degrees = 0.0;
    };
    // The one told of the mouth in `face` whose middle lies there; none where none is.
    [[nodiscard]] std::optional<Turned> turned(Face face, Vec3 middle) const;
    // What could not be read.
    [[nodiscard]] const std::vector<std::string>& unread() const { return unread_; }

  private:
    // mm of wood: places nearer than that are one
    static constexpr double kHere = 0.02;

    // A view of a sheet, and how its millimetres lie in the part.
    struct View {
        Face face = Face::FaceSide;
        Vec2 corner;  // on the sheet, of the body
        double scale = 1.0;
        PartView seen;

        // What of the part lies at a place of the sheet along (0) or down (1) the view.
        [[nodiscard]] double at(int direction, double onSheet) const {
            const double v = (onSheet - (direction == 0 ? corner.x : corner.y)) / scale;
            const int axis = axisOf(direction);
            const Vec3 unit = axis == 0 ? Vec3{1, 0, 0} : axis == 1 ? Vec3{0, 1, 0} : Vec3{0, 0, 1};
            const Vec2 zero = seen.toPlane(Vec3{});
            const Vec2 one = seen.toPlane(unit);
            const double from = direction == 0 ? zero.x : zero.y;
            const double way = (direction == 0 ? one.x : one.y) - from;
            return (v - from) / way;
        }
        [[nodiscard]] int axisOf(int direction) const {
            if (isEnd(face)) {
                return direction == 0 ? 2 : 1;
            }
            const bool isEdge = face == Face::FaceEdge || face == Face::BackEdge;
            return direction == 0 ? 0 : isEdge ? 2 : 1;
        }
    };

    struct Note {
        Vec2 target;
        std::vector<std::string> lines;
    };
    struct Figure {
        int count = 1;
        double mm = 0.0;
    };
    [[nodiscard]] std::optional<Figure> figureOf(std::string text);
    void readSheet(const Sheet& sheet);
    void readDimension(const View& view, const DimensionOp& op);
    void readNote(const View& view, const Note& note);
    void readHead(const ResolvedHole* hole, Face face, const std::string& line);
    void readSlot(const Box& box, int intoAxis, const std::string& words);
    void readTurned(Face face, const Box& box, const std::vector<std::string>& lines);
    void readOutline(Face face, const std::vector<std::string>& words);
    void addFigure(int axis, double from, double to, double value);
    void spread();

    const ResolvedPiece& resolved_;
    const ResolvedPart& part_;
    Unit unit_;
    struct Step {
        std::size_t to;
        double value;
    };
    struct Place {
        double at;                       // by the lines
        std::optional<double> lettered;  // by the figures
        std::vector<Step> steps;
    };
    [[nodiscard]] std::size_t placeAt(std::size_t axis, double at);
    std::array<std::vector<Place>, 3> places_;
    struct Told {
        std::string of;
        double from;
        double to;
        double mm;
    };
    std::vector<Told> lengths_;
    std::map<Face, std::vector<Point>> outlines_;
    std::vector<Turned> turned_;
    std::vector<std::string> unread_;
};

// What is lettered of a hole: its diameter (of a slot its length) about the middle of its mouth,
// and its depth along its axis; of another cut its box.
[[nodiscard]] Box setOutBoxOf(const ResolvedCut& cut);
// Of a mortise its box; of one bored out of square likewise its bit about the middle of its mouth,
// and its depth along its axis.
[[nodiscard]] Box setOutBoxOf(const ResolvedPiece& resolved,
                              const ResolvedPart& part,
                              const MortiseSolid& mortise);

}  // namespace shoulderline::testing
