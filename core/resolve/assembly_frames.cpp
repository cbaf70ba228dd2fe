#include "core/resolve/assembly_frames.h"

#include <vector>

namespace shoulderline {

AssemblyFrames::AssemblyFrames(const Piece& piece, Evaluation& evaluation) {
    std::vector<const Assembly*> waiting;
    for (const Assembly& assembly : piece.assemblies) {
        waiting.push_back(&assembly);
    }
    // An assembly whose parents form a ring never becomes ready.
    for (bool moved = true; moved;) {
        moved = false;
        std::erase_if(waiting, [&](const Assembly* assembly) {
            if (!has(assembly->parent)) {
                return false;
            }
            place(*assembly, evaluation);
            moved = true;
            return true;
        });
    }
    for (const Assembly* assembly : waiting) {
        evaluation.trouble({"assembly", assembly->name, std::nullopt},
                           "its parent '" + assembly->parent +
                               "' is not there, could not be placed or lies within it");
    }
}

void AssemblyFrames::place(const Assembly& assembly, Evaluation& evaluation) {
    const Place place{"assembly", assembly.name, std::nullopt};
    const std::optional<Length> x = evaluation.length(assembly.x, place, "x", Length());
    const std::optional<Length> y = evaluation.length(assembly.y, place, "y", Length());
    const std::optional<Length> z = evaluation.length(assembly.z, place, "z", Length());
    const std::optional<Angle> aboutX = evaluation.angle(assembly.aboutX, place, "turn about x");
    const std::optional<Angle> aboutY = evaluation.angle(assembly.aboutY, place, "turn about y");
    const std::optional<Angle> aboutZ = evaluation.angle(assembly.aboutZ, place, "turn about z");
    if (x && y && z && aboutX && aboutY && aboutZ) {
        const Frame own = Frame::turned({x->mm(), y->mm(), z->mm()}, *aboutX, *aboutY, *aboutZ);
        frames_.emplace(assembly.name, Placed{own, assembly.parent});
    }
}

Frame AssemblyFrames::of(std::string_view name) const {
    Frame frame;
    // Parents were placed first, so that there is no ring.
    for (auto it = frames_.find(name); it != frames_.end(); it = frames_.find(it->second.parent)) {
        frame = it->second.own.compose(frame);
    }
    return frame;
}

bool AssemblyFrames::isWithin(std::string_view name, std::string_view outer) const {
    for (auto it = frames_.find(name); it != frames_.end(); it = frames_.find(it->second.parent)) {
        if (it->first == outer) {
            return true;
        }
    }
    return false;
}

void AssemblyFrames::turn(std::string_view name, Angle aboutX) {
    if (const auto it = frames_.find(name); it != frames_.end()) {
        it->second.own = Frame::turned(it->second.own.origin, aboutX, {}, {});
    }
}

}  // namespace shoulderline
