#pragma once

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "core/drawing/joint_sheets.h"
#include "core/resolve/small_parts.h"

namespace shoulderline {

inline constexpr double kBetweenJoints = 8.0;

// A joint with its name over it, its top left corner at (0, 0).
struct JointBlock {
    std::vector<std::string> parts;  // those with the tenons
    std::vector<SetUp> setUps;
    std::vector<Op> ops;
    Vec2 size;
    double scale = 0.0;  // of the drawing; 0 for settings by themselves
    std::optional<std::size_t> awaits = std::nullopt;  // the group whose settings stand elsewhere
    std::optional<std::size_t> tells = std::nullopt;   // the group whose settings alone these are
};
// Which of a drawn block's ops is its caption, "make 2; blind; 1 : 4".
inline constexpr std::size_t kJointCaption = 1;
// What a caption says more of settings on sheet 12: "; set-ups on sheet 12".
[[nodiscard]] std::string setUpsOnSheet(std::size_t number);

// How the tools are set for a group of joints, and the same in sentences; those are kept as they
// were wrapped for a width.
struct SetUpsTold {
    std::vector<SetUp> setUps;
    std::vector<std::string> sentences;
    std::map<double, std::vector<std::string>> wrapped;

    const std::vector<std::string>& within(double width, const TextMetrics& metrics);
};

// The joints of a piece as they go on their sheets: name, drawing, settings. Drawings are kept, as
// both ways to hold the paper ask for the same ones. What it is made of must outlive it.
class JointBlocks {
  public:
    JointBlocks(const Piece& piece,
                const ResolvedPiece& resolved,
                const std::vector<JointGroup>& groups,
                const TextMetrics& metrics)
        : piece_(piece),
          resolved_(resolved),
          groups_(groups),
          metrics_(metrics),
          smalls_(smallPartsOf(piece, resolved)) {}

    // At the largest scale at which it goes into the room, the settings under or beside the drawing
    // where that fits, or does at a standard scale not much smaller, down to 1 : 5; else they have
    // blocks of their own.
    [[nodiscard]] std::vector<JointBlock> fitted(std::size_t group, Vec2 room);

  private:
    const JointBlock& of(std::size_t group, double scale, bool areEndsBelow);
    const JointBlock* drawn(std::size_t group, double scale, Vec2 room);
    std::optional<JointBlock> drawnAndTold(std::size_t group, double scale, Vec2 room);
    SetUpsTold& told(std::size_t group);
    std::optional<JointBlock> withSetUps(const JointBlock& drawn, std::size_t group, Vec2 room);
    std::vector<JointBlock> setUpBlocks(std::size_t group, Vec2 room);

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const std::vector<JointGroup>& groups_;
    const TextMetrics& metrics_;
    std::vector<SmallPart> smalls_;
    std::map<std::tuple<std::size_t, double, bool>, JointBlock> made_;
    std::map<std::size_t, SetUpsTold> told_;  // by group
};

}  // namespace shoulderline
