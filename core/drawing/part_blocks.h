#pragma once

#include <string>
#include <vector>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/free_space.h"
#include "core/drawing/hatching.h"
#include "core/drawing/notes.h"
#include "core/drawing/part_faces.h"
#include "core/drawing/part_outline_table.h"
#include "core/drawing/part_sections.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/part_style.h"
#include "core/drawing/part_views.h"

namespace shoulderline {

// A view drawn with all that belongs to it, its body's top left corner at (0, 0).
struct PartBlock {
    Face face = Face::FaceSide;
    std::vector<Op> ops;
    Rect bounds;
    double bodyHeight = 0.0;
    bool isSection = false;   // its plane is marked on the face side
    bool isTable = false;     // of the outline whose points stand on the view of `face`
    std::string letter = {};  // of a section
};

// Draws the views, ends and sections of one part, each by itself.
class PartBlocks {
  public:
    PartBlocks(const Piece& piece,
               const ResolvedPiece& resolved,
               std::size_t index,
               const PartStyle& style,
               PartLines& lines,
               const TextMetrics& metrics)
        : piece_(piece),
          resolved_(resolved),
          index_(index),
          part_(resolved.parts[index]),
          style_(style),
          lines_(lines),
          plan_(style.withSections ? SectionPlan(resolved, part_, piece.unit == Unit::Inch)
                                   : SectionPlan()),
          scale_(style.scale),
          metrics_(metrics) {}

    [[nodiscard]] PartBlock sideView(Face face) const;
    [[nodiscard]] PartBlock endView(const EndToShow& end) const;
    // Through the mortises, as the plan has them.
    [[nodiscard]] std::vector<PartBlock> sections() const;

    // Of its shaped outlines.
    [[nodiscard]] std::vector<PartBlock> outlineTables() const;

    // Both hands of a pair, small; for a kind that has mirror twins.
    [[nodiscard]] PartBlock pair() const;

  private:
    static constexpr double kToNotes = 5.0;    // mm from a view to its notes
    static constexpr double kPastMarks = 9.0;  // where the marks of sections stand between

    [[nodiscard]] std::vector<ShapedOutline> outlines() const;
    [[nodiscard]] std::vector<std::vector<Vec2>> woodAt(Face end) const;
    [[nodiscard]] Span acrossAt(const PartSection& section, const PartView& view) const;
    [[nodiscard]] std::vector<Op> body(const PartView& view, double scale) const;
    void addMouths(const PartView& view, double scale, std::vector<Op>& ops) const;
    void addCentreLines(const PartView& view, double scale, std::vector<Op>& ops) const;
    void addMarks(std::vector<Op>& ops) const;
    [[nodiscard]] Note bowNote(const PartView& view) const;
    void addGrain(double height, FreeSpace& space, std::vector<Op>& ops) const;
    [[nodiscard]] Vec2 placeForMark(double height) const;
    [[nodiscard]] double clearOfCuts(double x) const;
    [[nodiscard]] static std::vector<SizeToPlace> scaled(const std::vector<NeededSize>& sizes,
                                                         double scale);
    [[nodiscard]] PartBlock blockOf(Face face, std::vector<Op> ops, double bodyHeight) const {
        const Rect bounds = boundsOf(ops, metrics_);
        return {face, std::move(ops), bounds, bodyHeight, false, false};
    }
    [[nodiscard]] double endScale() const;

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    std::size_t index_;
    const ResolvedPart& part_;
    const PartStyle& style_;
    PartLines& lines_;
    SectionPlan plan_;
    double scale_;
    const TextMetrics& metrics_;
};

}  // namespace shoulderline
