#pragma once

#include <array>
#include <optional>

#include "core/joint/joint_sizing.h"

namespace shoulderline {

// How shoulders and tenon share out the section of the tenoned part.

// What one direction of the section holds: shoulder, tenon, shoulder.
struct Across {
    Length whole;
    Size& first;
    Size& tenon;
    Size& second;
    const char* words;  // of the three, for a trouble
};

// Centres the tenon (bare-faced: sets it flush with the second side), or places it by the shoulders
// that are stated.
void shareOut(const Across& across,
              const std::optional<StatedSize>& statedFirst,
              const std::optional<StatedSize>& statedSecond,
              bool isBareFaced,
              std::vector<std::string>& troubles);

// Twin or double tenons as the group that the shoulders are shared out about.
struct Group {
    Size whole;
    Length gap;
    bool isPair = false;
};

[[nodiscard]] Group grouped(const Size& one, const Size& gap, bool isPair);
// Each of a pair, where two stated shoulders decided about the group.
void divide(const Group& group, Length before, Size& one);

// Shoulders at edges that are grooved or shaped, where the maker states none: at least the groove's
// depth; the usual shoulder in from where a shaped edge lies. The shoulders themselves are filled
// in, and stated for the sharing out.
void clearEdges(const JointTask& task,
                const Size& edge,
                StatedSizes& stated,
                std::array<std::optional<Size>, 2>& shoulders);

[[nodiscard]] SizeName haunchedShoulder(const JointTask& task);
// The shoulder at the edge where a haunch is, which the haunch takes up; none where the maker
// states that shoulder. The tenon leaves it room.
[[nodiscard]] std::optional<Size> shoulderForHaunch(const JointTask& task,
                                                    const Size& edge,
                                                    const SizingGuide& guide,
                                                    const StatedSizes& stated,
                                                    Size& tenonWidth);

}  // namespace shoulderline
