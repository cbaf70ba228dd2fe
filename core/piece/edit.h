#pragma once

#include <string>
#include <variant>
#include <vector>

#include "core/measure/result.h"
#include "core/piece/piece.h"

namespace shoulderline {

// One change to a stated piece, as data. Names refer to the piece before the change.

struct SetMeasure {  // adds the measure when it is not there yet
    std::string name;
    Statement expression;
};
struct RenameMeasure {  // in every expression that mentions it too
    std::string name;
    std::string newName;
};
struct RemoveMeasure {
    std::string name;
};
struct SetMeasureNote {
    std::string name;
    std::string note;
};
struct SetMeasureFound {  // as taken from an original; empty for none
    std::string name;
    Statement found;
};
struct SetStock {  // replaces the stock of that name, or adds it
    Stock stock;
};
struct RemoveStock {
    std::string name;
};
struct SetPart {  // replaces the part of that name, or adds it; a new name in `part` renames it
    std::string name;
    Part part;
};
struct RemovePart {  // with the joint statements that mention it
    std::string name;
};
struct SetAssembly {  // replaces the assembly of that name
    Assembly assembly;
};
struct SetJoint {  // replaces what is stated of these two parts; an empty statement removes it
    JointStatement joint;
};
struct SetJointSize {  // states one size; an empty expression goes back to the rule
    std::string tenoned;
    std::string mortised;
    SizeName size = SizeName::TenonLength;
    SizeStatement statement;
};
struct SetJointKind {  // nullopt goes back to the kind that the relation gives
    std::string tenoned;
    std::string mortised;
    std::optional<JointKind> kind;
};
struct SetJointFeature {  // gives the joint a feature, or takes it away
    std::string tenoned;
    std::string mortised;
    JointFeature feature = JointFeature::Haunch;
    bool has = true;
};
struct SetJointFeatures {  // several at once, as the mend of two joints that meet
    std::vector<SetJointFeature> all;
    std::vector<SetPart> parts = {};  // that move with it
};
struct SetHouseRule {  // an empty value goes back to the rule book
    std::string id;
    Statement value;
};
struct SetLoad {  // replaces the load of that name, or adds it; a new name in `load` renames it
    std::string name;
    StatedLoad load;
};
struct RemoveLoad {
    std::string name;
};
struct SetStrengthTest {  // for these two parts; an empty moment removes it
    StrengthTest test;
};
struct SetClimate {
    Climate climate;
};
struct SetAdhesive {  // empty goes back to the usual one
    std::string adhesive;
};
struct SetStyle {
    LengthStyle style;
};
struct SetPieceName {
    std::string name;
};

using Edit = std::variant<SetMeasure,
                          RenameMeasure,
                          RemoveMeasure,
                          SetMeasureNote,
                          SetStock,
                          RemoveStock,
                          SetPart,
                          RemovePart,
                          SetJoint,
                          SetJointSize,
                          SetJointKind,
                          SetJointFeature,
                          SetJointFeatures,
                          SetHouseRule,
                          SetLoad,
                          RemoveLoad,
                          SetStrengthTest,
                          SetClimate,
                          SetAdhesive,
                          SetStyle,
                          SetPieceName,
                          SetAssembly,
                          SetMeasureFound>;

// `piece` after the change. Errors: UnknownName if what is changed is not there; BadText for a name
// that cannot be one or an expression that cannot be read. Never refuses because the piece would be
// impossible to make.
[[nodiscard]] Result<Piece> apply(const Piece& piece, const Edit& edit);

// What the change does, for the undo list: "seat height", "tenon length, side rail into front
// post".
[[nodiscard]] std::string nameOf(const Edit& edit);

// Two edits with the same non-empty target follow one another in one undo step (a burst of typing
// in one field).
[[nodiscard]] std::string targetOf(const Edit& edit);

}  // namespace shoulderline
