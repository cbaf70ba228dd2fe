#pragma once

#include <string>

#include "core/drawing/part_sizes.h"

namespace shoulderline {

// What the writers of a part's sizes share: the view they write for, and the list that they write.
// A size between two places that has been written is not written again.
struct SizeWriter {
    const PartView& view;
    const Piece& piece;
    const ResolvedPiece& resolved;
    const ResolvedPart& part;
    const SectionPlan* sections = nullptr;
    Subject subject;  // the part
    ViewSizes sizes = {};

    [[nodiscard]] std::string shown(double mm) const;
    [[nodiscard]] std::string shownDiameter(double mm) const { return "\u2300" + shown(mm); }
    // Sizes along the view's x and down its y, in the view's millimetres from < to; lettered with
    // their length where no text is given.
    void along(NeededSize size);
    void down(NeededSize size);
    void note(NeededNote note) { sizes.notes.push_back(std::move(note)); }
};

[[nodiscard]] inline Subject subjectOfJoint(std::size_t joint) {
    return {SubjectKind::Joint, joint};
}
// What a place across the part is measured from between two places along it: "face edge"; "the
// blank's edge" where shaping takes that away there, so that it is set out before. `axis` is 1 for
// places from the face edge, 2 from the face side.
[[nodiscard]] std::string referenceAcross(const ResolvedPart& part,
                                          int axis,
                                          double from,
                                          double to);
// 0.001 mm, as kLengthTolerance.
[[nodiscard]] bool isSameSize(double a, double b);

// The lengths on the face side: between shoulders, tenons and haunches at both ends, over all.
void addLengths(SizeWriter& writer);
// Width and thickness of the part on an end; of a round one its diameter, of an eight-sided one the
// size across its flats.
void addSectionSizes(SizeWriter& writer);
// On an end, what its tenons are: thickness, width, shoulders; of round ones the diameter.
void addTenonSizes(SizeWriter& writer);
// The mortises that open on the face seen.
void addMortiseSizes(SizeWriter& writer);
// The mortises in the end seen.
void addEndMortiseNotes(SizeWriter& writer);

}  // namespace shoulderline
