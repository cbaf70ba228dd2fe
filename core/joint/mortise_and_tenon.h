#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/joint/joint.h"
#include "core/rules/rule_book.h"

namespace shoulderline {

// What the sizing of a joint needs to know of the member that carries the tenon: its section and
// role.
struct TenonedSection {
    Role role = Role::Rail;
    Length width;
    Length thickness;
};

// A size as the maker states it, worked out.
struct StatedSize {
    SizeState state = SizeState::Stated;
    Length value;  // the size, or the offset to the rule
};

// The maker's own sizes for one joint, by name.
class StatedSizes {
  public:
    void set(SizeName name, StatedSize size) { sizes_[static_cast<std::size_t>(name)] = size; }
    [[nodiscard]] const std::optional<StatedSize>& operator[](SizeName name) const {
        return sizes_[static_cast<std::size_t>(name)];
    }

  private:
    std::array<std::optional<StatedSize>, kSizeNameCount> sizes_;
};

// What a joint is sized by.
struct SizingGuide {
    const RuleBook& rules;
    std::span<const Length> rack;  // chisels at hand, ascending, not empty
    Length grid;                   // sizes by rule are taken to it; zero for none
};

// A tenon and its mortise by the rules, with the maker's own sizes over them.
struct SizedJoint {
    Tenon tenon;
    Size mortiseWidth;
    Size mortiseLength;
    Size mortiseDepth;
    std::vector<std::string>
        troubles;  // one sentence each on stated sizes that contradict one another
};

// Sizes a mortise and tenon (any kind but Rests). `depthThere` > 0 is how much wood the mortised
// part has behind the mouth, along the tenon. Thickness: a share of the part, taken to the nearest
// chisel (slats: what their cheek shoulders leave, taken to the next chisel down). Width: what the
// edge shoulders leave, capped by its ratio to the thickness but not under a share of the part.
// Length: a share of what it enters, within what leaves a floor (through: all of it and the
// projection). Sources: the rule book. The tenon stands in the middle (bare-faced: flush with the
// back side); a stated shoulder places it from that side, and of two stated ones across from one
// another the tenon is what they leave (a tenon stated as well, or shoulders that leave none, are
// told in `troubles`: then the shoulders decide, or the second one is left out). The mouth is as
// the tenon, or as stated about the tenon's middle.
[[nodiscard]] SizedJoint sizeMortiseAndTenon(JointKind kind,
                                             const TenonedSection& section,
                                             Length depthThere,
                                             const SizingGuide& guide,
                                             const StatedSizes& stated);

// The chisel nearest to `size`; of two equally near ones the narrower. `rack` ascending, not empty.
[[nodiscard]] Length nearestChisel(std::span<const Length> rack, Length size);

// The widest chisel not over `size`; the narrowest there is when all are over it.
[[nodiscard]] Length chiselWithin(std::span<const Length> rack, Length size);

}  // namespace shoulderline
