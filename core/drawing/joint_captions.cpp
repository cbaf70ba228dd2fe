#include "core/drawing/joint_captions.h"

#include <algorithm>

#include "core/drawing/scales.h"
#include "core/measure/length_text.h"
#include "core/resolve/found_sizes.h"

namespace shoulderline {

namespace {

// What the maker says of the joint; empty where nothing is said.
std::string makersNote(const Piece& piece, const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    const JointStatement* stated = findJointStatement(
        piece, resolved.parts[joint.tenoned].of, resolved.parts[joint.mortised].of);
    return stated != nullptr ? stated->note : std::string();
}

// The hand of a joint between parts of which at least one is of a pair.
Hand handOf(const ResolvedPiece& resolved, const ResolvedJoint& joint) {
    const Hand tenoned = resolved.parts[joint.tenoned].hand;
    return tenoned != Hand::None ? tenoned : resolved.parts[joint.mortised].hand;
}

// ", the left one drawn, the right mirrored" where there are both.
std::string handText(const ResolvedPiece& resolved, const JointGroup& group) {
    const Hand drawn = handOf(resolved, resolved.joints[group.joints.front()]);
    const bool areBoth = std::any_of(group.joints.begin(), group.joints.end(), [&](std::size_t i) {
        return handOf(resolved, resolved.joints[i]) != drawn;
    });
    if (!areBoth) {
        return {};
    }
    return drawn == Hand::Left ? ", the left drawn, the right mirrored"
                               : ", the right drawn, the left mirrored";
}

// "2"; of two joints drawn as one "4: 2 of each", or "6: 2 and 4" in the order of the title.
std::string countText(const JointGroup& group) {
    std::size_t all = group.joints.size();
    std::string each = std::to_string(all);
    bool areAsMany = true;
    for (const std::vector<std::size_t>& joints : group.alike) {
        all += joints.size();
        each += " and " + std::to_string(joints.size());
        areAsMany &= joints.size() == group.joints.size();
    }
    if (group.alike.empty()) {
        return each;
    }
    return std::to_string(all) + ": " +
           (areAsMany ? std::to_string(group.joints.size()) + " of each" : each);
}

// ", 13 screws each": the joint is a row of them, and its drawing shows one, alike on both hands.
std::string screwsText(const ResolvedPiece& resolved, std::size_t index) {
    const std::vector<ResolvedCut>& cuts = resolved.parts[resolved.joints[index].mortised].cuts;
    const auto count = std::count_if(cuts.begin(), cuts.end(), [index](const ResolvedCut& cut) {
        return cut.joint == index && cut.kind == CutKind::Bore;  // pilot holes
    });
    return ", " + std::to_string(count) + (count == 1 ? " screw each" : " screws each");
}

}  // namespace

std::string captionOf(const ResolvedPiece& resolved, const JointGroup& group, double scale) {
    const ResolvedJoint& joint = resolved.joints[group.joints.front()];
    const std::string more = joint.kind == JointKind::Screwed
                                 ? screwsText(resolved, group.joints.front())
                                 : handText(resolved, group);
    return "make " + countText(group) + more + "; " + joint.form().words() + "; " +
           scaleText(scale);
}

std::vector<std::string> makersNotes(const Piece& piece,
                                     const ResolvedPiece& resolved,
                                     const JointGroup& group) {
    std::vector<std::string> notes;
    const auto add = [&](std::size_t joint) {
        std::string note = makersNote(piece, resolved, joint);
        if (!note.empty() && std::find(notes.begin(), notes.end(), note) == notes.end()) {
            notes.push_back(std::move(note));
        }
    };
    add(group.joints.front());
    for (const std::vector<std::size_t>& joints : group.alike) {
        add(joints.front());
    }
    const std::string found =
        foundText(foundBehind(resolved, group.joints.front()),
                  [&](Length length) { return letterLength(length, piece.style); });
    if (!found.empty()) {
        notes.push_back("follows what was found: " + found);
    }
    return notes;
}

std::vector<std::string> tenonedOf(const ResolvedPiece& resolved, const JointGroup& group) {
    std::vector<std::string> parts{
        resolved.parts[resolved.joints[group.joints.front()].tenoned].of};
    for (const std::vector<std::size_t>& joints : group.alike) {
        parts.push_back(resolved.parts[resolved.joints[joints.front()].tenoned].of);
    }
    return parts;
}

}  // namespace shoulderline
