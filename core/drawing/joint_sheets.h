#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheets.h"
#include "core/resolve/set_up.h"

namespace shoulderline {

// Joints that are cut alike: between the same stated parts, the same tenon, the same mortise at the
// same distance from its face.
struct JointGroup {
    std::vector<std::size_t> joints;  // indices in ResolvedPiece::joints, the one drawn first
    // Those of other groups that are drawn alike and told with these, group by group.
    std::vector<std::vector<std::size_t>> alike = {};
    bool areMarksAlike = true;  // of the face sides and face edges, in the drawings of all of them
};
// Every joint that is cut, each in one group; those that rest on one another without a cut are left
// out.
[[nodiscard]] std::vector<JointGroup> jointGroups(const ResolvedPiece& resolved);

// The settings for all of a group, in the order of work, each once: where its joints are cut at
// several places along a part, or from several fences, one for each.
[[nodiscard]] std::vector<SetUp> setUpsOf(const ResolvedPiece& resolved, const JointGroup& group);
// The same in words, first the order of shaping and joining, then those for ends and mortises out
// of square.
[[nodiscard]] std::vector<std::string> setUpLines(const Piece& piece,
                                                  const ResolvedPiece& resolved,
                                                  const JointGroup& group,
                                                  bool isEachFull = false);

// What goes on one sheet of joints.
struct JointsOnSheet {
    std::vector<std::string> parts;  // tenoned parts, by their stated names
    std::vector<Op> ops;             // in the drawing's space
    std::vector<SetUp> setUps;
    // Drawings whose settings stand on another sheet: of which group, and which of `ops` is the
    // caption that says where.
    struct Awaiting {
        std::size_t group = 0;
        std::size_t caption = 0;
    };
    std::vector<Awaiting> awaiting = {};
    std::vector<std::size_t> told = {};  // groups whose settings stand here by themselves
    bool hasDrawings = false;            // else settings alone
    std::string which = {};              // ", 1 of 2" where others would have the same title
};
// "joints of front rail; back rail"; of settings alone "set-ups for front rail".
[[nodiscard]] std::string titleOf(const JointsOnSheet& sheet);
struct JointsSetOut {
    Vec2 paper;  // as it is held
    std::vector<JointsOnSheet> sheets;
};

// The joints that differ, each drawn once with how many there are of it (see drawJoint), those of
// other parts that are drawn alike with them, and its set-ups, as many to a sheet as go on it, with
// the cautions of the tools under them, each at the largest standard scale that the paper has room
// for, up to full size. On `paper` as it is held, or turned where the drawings come out
// larger, or about alike with more of them and their settings on a sheet. No sheets for a piece
// without such joints.
[[nodiscard]] JointsSetOut setOutJoints(const Piece&,
                                        const ResolvedPiece&,
                                        Vec2 paper,
                                        const TextMetrics&);
// Framed. `frame.number` is that of the first of these sheets (0 for none); `frame.scale` and
// `frame.paper` are passed over.
[[nodiscard]] std::vector<Sheet> jointSheets(
    const Piece&, const ResolvedPiece&, JointsSetOut, SheetFrame, const TextMetrics&);
// Both, on the paper of `frame`.
[[nodiscard]] std::vector<Sheet> jointSheets(const Piece&,
                                             const ResolvedPiece&,
                                             const SheetFrame&,
                                             const TextMetrics&);

}  // namespace shoulderline
