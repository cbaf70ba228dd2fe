#pragma once

#include <string>
#include <string_view>
#include <unordered_map>

#include "core/geometry/frame.h"
#include "core/resolve/evaluation.h"

namespace shoulderline {

// Where the assemblies of a piece stand in its space, each within its parent.
class AssemblyFrames {
  public:
    // Places them all, parents first. One whose placing cannot be worked out, or whose parents are
    // missing or form a ring, is a trouble and is left out.
    AssemblyFrames(const Piece& piece, Evaluation& evaluation);

    // The empty name is the piece itself.
    [[nodiscard]] bool has(std::string_view name) const {
        return name.empty() || frames_.contains(name);
    }
    // In the piece's space; that of the piece itself for a name that is not there.
    [[nodiscard]] Frame of(std::string_view name) const;
    // Whether `name` is that assembly or lies within it.
    [[nodiscard]] bool isWithin(std::string_view name, std::string_view outer) const;
    // Turns one that is there about the x axis of its own frame to this angle alone, with all that
    // lies within it.
    void turn(std::string_view name, Angle aboutX);

  private:
    void place(const Assembly& assembly, Evaluation& evaluation);

    struct Placed {
        Frame own;  // in its parent
        std::string_view parent;
    };
    std::unordered_map<std::string_view, Placed> frames_;
};

}  // namespace shoulderline
