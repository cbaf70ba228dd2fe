#pragma once

#include <string>
#include <vector>

#include "core/check/finding.h"
#include "core/check/strength_book.h"

namespace shoulderline {

// What each check works on.
struct CheckContext {
    const Piece& piece;
    const ResolvedPiece& resolved;
    const SpeciesTable& species;
    const StrengthBook& book;

    // A length as the maker reads it, with its unit.
    [[nodiscard]] std::string shown(Length length) const {
        return showLength(length, piece.style, true);
    }
    [[nodiscard]] std::string shownMm(double mm) const { return shown(Length::mm(mm)); }
    // A finding on a rule, with its source filled in.
    [[nodiscard]] Finding finding(RuleId rule, Severity severity) const;
    // A length as a statement that reads back exactly whatever the piece's unit is.
    [[nodiscard]] static Statement statement(Length length);
    [[nodiscard]] const Part& stated(std::size_t part) const {
        return piece.parts[resolved.parts[part].stated];
    }
};

// Each adds its findings. Messages hold {part}, {other} and {joint}, see gather().
void checkTroubles(const CheckContext&, std::vector<Finding>&);     // what could not be worked out
void checkProportions(const CheckContext&, std::vector<Finding>&);  // each joint by itself
void checkMouths(const CheckContext&,
                 std::vector<Finding>&);  // mouth on its face, chisel on the rack
void checkMeetings(const CheckContext&, std::vector<Finding>&);  // mortises in one another's way
void checkContacts(const CheckContext&,
                   std::vector<Finding>&);  // parts that touch or run through one another
void checkShapes(const CheckContext&,
                 std::vector<Finding>&);  // joints where a part is shaped away
void checkEasings(const CheckContext&, std::vector<Finding>&);  // eased arrises under shoulders
void checkAngles(const CheckContext&, std::vector<Finding>&);   // grain in angled tenons
void checkBends(const CheckContext&, std::vector<Finding>&);    // parts with a bow
void checkSwings(const CheckContext&, std::vector<Finding>&);   // assemblies that swing
void checkBodies(const CheckContext&,
                 std::vector<Finding>&);  // gaps and leans against published figures for people
void checkStock(const CheckContext&, std::vector<Finding>&);  // stock that can yield the parts

void checkHoles(const CheckContext&, std::vector<Finding>&);  // bores and screw holes as stated
void checkPegs(const CheckContext&, std::vector<Finding>&);   // peg mortises
void checkScrewHoles(const CheckContext&,
                     std::vector<Finding>&);  // sunk heads and slots of screw holes
void checkMovement(const CheckContext&, std::vector<Finding>&);  // wood that moves and is held
void checkStrength(const CheckContext&, std::vector<Finding>&);  // the joint worked hardest

// The edit that states one size of a joint, for both its stated parts.
[[nodiscard]] Edit stateSize(const CheckContext&, std::size_t joint, SizeName size, Length value);

// Whether the thickness or width of a joint's tenon is what two stated shoulders leave, and so is
// not to be stated itself.
[[nodiscard]] bool followsShoulders(const ResolvedJoint&, SizeName tenon);

// The edit that takes one size of a joint back to its rule.
[[nodiscard]] Edit backToRule(const CheckContext&, std::size_t joint, SizeName size);

}  // namespace shoulderline
