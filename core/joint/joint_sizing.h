#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/joint/joint.h"
#include "core/joint/joint_cuts.h"
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
    std::span<const Length> bits;  // for round holes, likewise
    Length grid;                   // sizes by rule are taken to it; zero for none
};

// A groove of the mortised part that the mouth lies in.
struct MetGroove {
    Length width;
    Length depth;
};

// One joint to be sized and cut. `post` is the body of the mortised part in the frame of JointSolid
// (x from the shoulder into it, y along the tenoned part's width, z along its thickness), its near
// face at x = 0 or where the part is shaped away there; `postAxis` the axis of that frame along
// which it runs.
struct JointTask {
    JointForm form;
    TenonedSection section;
    Box post;
    int postAxis = 1;
    std::optional<MetGroove> groove;
    Length neighbourBeyond;  // for a mitred end: to the far cheek of the tenon it meets; else zero
    // For a shortened tenon: from the shoulder to the near side of what it would run into; else
    // zero.
    Length neighbourBefore;
    Length grooveAtFaceEdge;  // depth of a groove along the tenoned part's own edge; else zero
    Length grooveAtBackEdge;
    // How far in from the blank's edges the tenoned part is shaped at its end.
    Length shapedAtFaceEdge = {};
    Length shapedAtBackEdge = {};

    // How far below the shoulder the face lies, where the part is shaped or cut away at the mouth.
    [[nodiscard]] Length faceBelow() const { return Length::mm(post.min.x); }
    // How much wood lies behind the mouth.
    [[nodiscard]] Length depthThere() const { return Length::mm(post.max.x - post.min.x); }
    // Whether the nearer end of the mortised part lies past the face edge of the tenoned one.
    [[nodiscard]] bool endsAtFaceEdge() const;
};

// A joint by the rules, with the maker's own sizes over them.
struct SizedJoint {
    Tenon tenon;
    Size mortiseWidth;
    Size mortiseLength;
    Size mortiseDepth;
    std::vector<FurtherSize> further;
    std::vector<std::string>
        troubles;  // one sentence each on what contradicts itself or cannot be had

    // A further size; zero where the joint has none of that name.
    [[nodiscard]] Length furtherSize(SizeName name) const;
};

// Whether a joint of that kind can have that feature.
[[nodiscard]] bool mayHave(JointKind kind, JointFeature feature);

// Sizes and cuts any kind of joint but Rests, Screwed, Grooved and CrossLap, which have tasks of
// their own: goes to the family of its kind. What a
// kind cannot have (a wedged stub) is a trouble, and left out.
[[nodiscard]] SizedJoint sizeJoint(const JointTask& task,
                                   const SizingGuide& guide,
                                   const StatedSizes& stated);
[[nodiscard]] JointCuts cutJoint(const JointTask& task,
                                 const SizedJoint& sized,
                                 const SizingGuide& guide);

}  // namespace shoulderline
