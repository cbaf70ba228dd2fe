#include <algorithm>
#include <functional>
#include <numeric>
#include <set>

#include "core/drawing/assembly_sheet.h"

namespace shoulderline {

namespace {

// Whether `name` is the assembly, or is nested in it.
bool isWithin(const Piece& piece, std::string name, const std::string& assembly) {
    for (std::size_t depth = 0; depth <= piece.assemblies.size() && !name.empty(); ++depth) {
        if (name == assembly) {
            return true;
        }
        const auto it = std::find_if(piece.assemblies.begin(),
                                     piece.assemblies.end(),
                                     [&](const Assembly& a) { return a.name == name; });
        name = it == piece.assemblies.end() ? std::string() : it->parent;
    }
    return false;
}

// The parts in groups that their joints hold together.
std::vector<std::vector<std::size_t>> heldTogether(const ResolvedPiece& resolved,
                                                   const std::vector<std::size_t>& parts) {
    std::vector<std::size_t> group(resolved.parts.size());
    std::iota(group.begin(), group.end(), std::size_t{0});
    const std::function<std::size_t(std::size_t)> root = [&](std::size_t i) {
        return group[i] == i ? i : group[i] = root(group[i]);
    };
    const auto isIn = [&](std::size_t part) {
        return std::binary_search(parts.begin(), parts.end(), part);
    };
    for (const ResolvedJoint& joint : resolved.joints) {
        if (isIn(joint.tenoned) && isIn(joint.mortised)) {
            group[root(joint.tenoned)] = root(joint.mortised);
        }
    }
    std::vector<std::vector<std::size_t>> groups;
    std::vector<std::size_t> roots;
    for (const std::size_t part : parts) {
        const auto known = std::find(roots.begin(), roots.end(), root(part));
        if (known == roots.end()) {
            roots.push_back(root(part));
            groups.push_back({part});
        } else {
            groups[static_cast<std::size_t>(known - roots.begin())].push_back(part);
        }
    }
    return groups;
}

// Whether both have the same stated parts, one all left, the other all right.
bool areTwins(const ResolvedPiece& resolved,
              const std::vector<std::size_t>& a,
              const std::vector<std::size_t>& b) {
    const auto handOf = [&](const std::vector<std::size_t>& group, Hand hand) {
        return std::all_of(group.begin(), group.end(), [&](std::size_t part) {
            return resolved.parts[part].hand == hand;
        });
    };
    std::multiset<std::size_t> ofA;
    std::multiset<std::size_t> ofB;
    for (const std::size_t part : a) {
        ofA.insert(resolved.parts[part].stated);
    }
    for (const std::size_t part : b) {
        ofB.insert(resolved.parts[part].stated);
    }
    return ofA == ofB && ((handOf(a, Hand::Left) && handOf(b, Hand::Right)) ||
                          (handOf(a, Hand::Right) && handOf(b, Hand::Left)));
}

void addJoints(const ResolvedPiece& resolved, GlueUp& glueUp) {
    const auto isIn = [&](std::size_t part) {
        return std::binary_search(glueUp.parts.begin(), glueUp.parts.end(), part);
    };
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        const ResolvedJoint& joint = resolved.joints[i];
        const int inside = (isIn(joint.tenoned) ? 1 : 0) + (isIn(joint.mortised) ? 1 : 0);
        if (inside == 2) {
            glueUp.joints.push_back(i);
        } else if (inside == 1) {
            glueUp.later.push_back(i);
        }
    }
}

std::string withTimes(int times, const std::string& text) {
    return times > 1 ? std::to_string(times) + " \u00d7 " + text : text;
}

// Whether parts that only rest on one another are glued there, by what the maker says of it.
bool isGluedOn(const Piece& piece, const ResolvedPiece& resolved, const ResolvedJoint& joint) {
    const JointStatement* stated = findJointStatement(
        piece, resolved.parts[joint.tenoned].of, resolved.parts[joint.mortised].of);
    return joint.kind == JointKind::Rests && stated != nullptr &&
           stated->note.rfind("glued", 0) == 0;
}

// "2 × side rail, upper into front post; ...", in the order of the joints.
std::string listed(const Piece& piece,
                   const ResolvedPiece& resolved,
                   const std::vector<std::size_t>& joints) {
    std::vector<std::pair<std::string, int>> told;
    for (const std::size_t i : joints) {
        const ResolvedJoint& joint = resolved.joints[i];
        const bool isGlued = isGluedOn(piece, resolved, joint);
        if (joint.kind == JointKind::Rests && !isGlued) {
            continue;
        }
        const std::string name = resolved.parts[joint.tenoned].of +
                                 (isGlued ? " glued to " : " into ") +
                                 resolved.parts[joint.mortised].of;
        const auto known = std::find_if(
            told.begin(), told.end(), [&](const auto& entry) { return entry.first == name; });
        if (known == told.end()) {
            told.emplace_back(name, 1);
        } else {
            ++known->second;
        }
    }
    std::string text;
    for (const auto& [name, times] : told) {
        text += (text.empty() ? "" : "; ") + withTimes(times, name);
    }
    return text;
}

}  // namespace

std::vector<GlueUp> glueUpsOf(const Piece& piece, const ResolvedPiece& resolved) {
    std::vector<GlueUp> glueUps;
    for (std::size_t a = 0; a < piece.assemblies.size(); ++a) {
        GlueUp glueUp;
        glueUp.assembly = a;
        for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
            if (isWithin(piece, resolved.parts[i].assembly, piece.assemblies[a].name)) {
                glueUp.parts.push_back(i);
            }
        }
        const std::vector<std::vector<std::size_t>> groups = heldTogether(resolved, glueUp.parts);
        if (groups.size() == 2 && areTwins(resolved, groups[0], groups[1])) {
            const bool isFirstRight = resolved.parts[groups[0].front()].hand == Hand::Right;
            glueUp.parts = isFirstRight ? groups[0] : groups[1];
            glueUp.hasMirrorTwin = true;
        }
        if (glueUp.parts.size() > 1) {
            addJoints(resolved, glueUp);
            glueUps.push_back(std::move(glueUp));
        }
    }
    return glueUps;
}

std::size_t gluedIn(const Piece& piece, const ResolvedPiece& resolved, const GlueUp& glueUp) {
    return static_cast<std::size_t>(
        std::count_if(glueUp.joints.begin(), glueUp.joints.end(), [&](std::size_t i) {
            const ResolvedJoint& joint = resolved.joints[i];
            return joint.kind != JointKind::Rests || isGluedOn(piece, resolved, joint);
        }));
}

std::vector<std::string> glueUpNotes(const Piece& piece,
                                     const ResolvedPiece& resolved,
                                     const GlueUp& glueUp) {
    std::vector<std::string> notes;
    if (const std::string& own = piece.assemblies[glueUp.assembly].note; !own.empty()) {
        notes.push_back(own);
    }
    if (const std::string now = listed(piece, resolved, glueUp.joints); !now.empty()) {
        notes.push_back("glued up together: " + now);
    }
    if (const std::string later = listed(piece, resolved, glueUp.later); !later.empty()) {
        notes.push_back("left for later: " + later);
    }
    notes.emplace_back(
        "try it together dry and square, clamps set, before the glue is spread; sight it for wind, "
        "and measure both diagonals of each square frame alike");
    return notes;
}

}  // namespace shoulderline
