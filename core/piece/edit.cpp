#include "core/piece/edit.h"

#include <algorithm>
#include <initializer_list>

#include "core/measure/expression.h"
#include "core/measure/measure_name.h"
#include "core/piece/statements.h"

namespace shoulderline {

namespace {

template <class Item>
auto findByName(std::vector<Item>& items, std::string_view name) {
    return std::find_if(
        items.begin(), items.end(), [name](const Item& item) { return item.name == name; });
}

tl::unexpected<Error> unknown(std::string_view kind, std::string_view name) {
    return fail(ErrorCode::UnknownName,
                "There is no " + std::string(kind) + " '" + std::string(name) + "'.",
                std::string(name));
}

// An error where `statement` is neither empty nor an expression.
std::optional<Error> unreadable(const Piece& piece, const Statement& statement) {
    if (statement.empty()) {
        return std::nullopt;
    }
    const Result<Expression> expression = Expression::parse(statement, piece.unit);
    return expression ? std::nullopt : std::optional(expression.error());
}

Result<Piece> applied(Piece piece, const SetMeasure& edit) {
    if (const std::optional<Error> error = unreadable(piece, edit.expression)) {
        return tl::unexpected(*error);
    }
    const auto it = findByName(piece.measures, edit.name);
    if (it != piece.measures.end()) {
        it->expression = edit.expression;
        return piece;
    }
    if (!isMeasureName(edit.name)) {
        return fail(ErrorCode::BadText,
                    "'" + edit.name +
                        "' cannot name a measure: words of letters and digits, the first a letter, "
                        "are expected.");
    }
    Measure measure;
    measure.name = edit.name;
    measure.expression = edit.expression;
    piece.measures.push_back(std::move(measure));
    return piece;
}

Result<Piece> applied(Piece piece, const RenameMeasure& edit) {
    const auto it = findByName(piece.measures, edit.name);
    if (it == piece.measures.end()) {
        return unknown("measure", edit.name);
    }
    const bool isTaken = edit.newName != edit.name &&
                         findByName(piece.measures, edit.newName) != piece.measures.end();
    if (isTaken || !isMeasureName(edit.newName)) {
        return fail(ErrorCode::BadText,
                    isTaken ? "There is a measure '" + edit.newName + "' already."
                            : "'" + edit.newName + "' cannot name a measure.");
    }
    it->name = edit.newName;
    forEachStatement(piece, [&](Statement& statement) {
        statement = renameInExpression(statement, edit.name, edit.newName, piece.unit);
    });
    return piece;
}

Result<Piece> applied(Piece piece, const RemoveMeasure& edit) {
    const auto it = findByName(piece.measures, edit.name);
    if (it == piece.measures.end()) {
        return unknown("measure", edit.name);
    }
    piece.measures.erase(it);
    return piece;
}

Result<Piece> applied(Piece piece, const SetMeasureNote& edit) {
    const auto it = findByName(piece.measures, edit.name);
    if (it == piece.measures.end()) {
        return unknown("measure", edit.name);
    }
    it->note = edit.note;
    return piece;
}

Result<Piece> applied(Piece piece, const SetMeasureFound& edit) {
    const auto it = findByName(piece.measures, edit.name);
    if (it == piece.measures.end()) {
        return unknown("measure", edit.name);
    }
    if (const std::optional<Error> error = unreadable(piece, edit.found)) {
        return tl::unexpected(*error);
    }
    it->found = edit.found;
    return piece;
}

Result<Piece> applied(Piece piece, const SetStock& edit) {
    for (const Statement* statement : {&edit.stock.thickness,
                                       &edit.stock.measuredThickness,
                                       &edit.stock.greatestWidth,
                                       &edit.stock.greatestLength}) {
        if (const std::optional<Error> error = unreadable(piece, *statement)) {
            return tl::unexpected(*error);
        }
    }
    const auto it = findByName(piece.stocks, edit.stock.name);
    if (it != piece.stocks.end()) {
        *it = edit.stock;
    } else if (edit.stock.name.empty()) {
        return fail(ErrorCode::BadText, "A stock needs a name.");
    } else {
        piece.stocks.push_back(edit.stock);
    }
    return piece;
}

Result<Piece> applied(Piece piece, const RemoveStock& edit) {
    const auto it = findByName(piece.stocks, edit.name);
    if (it == piece.stocks.end()) {
        return unknown("stock", edit.name);
    }
    piece.stocks.erase(it);
    return piece;
}

Result<Piece> applied(Piece piece, const SetPart& edit) {
    if (edit.part.name.empty()) {
        return fail(ErrorCode::BadText, "A part needs a name.");
    }
    const bool isRenamed = edit.part.name != edit.name;
    if (isRenamed && findByName(piece.parts, edit.part.name) != piece.parts.end()) {
        return fail(ErrorCode::BadText, "There is a part '" + edit.part.name + "' already.");
    }
    const auto it = findByName(piece.parts, edit.name);
    if (it == piece.parts.end()) {
        if (!edit.name.empty() && isRenamed) {
            return unknown("part", edit.name);
        }
        piece.parts.push_back(edit.part);
        return piece;
    }
    *it = edit.part;
    if (isRenamed) {
        renameInReferences(piece, edit.name, edit.part.name);
    }
    return piece;
}

Result<Piece> applied(Piece piece, const RemovePart& edit) {
    const auto it = findByName(piece.parts, edit.name);
    if (it == piece.parts.end()) {
        return unknown("part", edit.name);
    }
    piece.parts.erase(it);
    const auto mentions = [&](const auto& statement) {
        return statement.tenoned == edit.name || statement.mortised == edit.name;
    };
    std::erase_if(piece.joints, mentions);
    std::erase_if(piece.use.tests, mentions);
    return piece;
}

Result<Piece> applied(Piece piece, const SetAssembly& edit) {
    const auto it = findByName(piece.assemblies, edit.assembly.name);
    if (it == piece.assemblies.end()) {
        return unknown("assembly", edit.assembly.name);
    }
    *it = edit.assembly;
    return piece;
}

bool saysNothing(const JointStatement& joint) {
    return !joint.kind && joint.features.empty() && joint.sizes.empty() && joint.note.empty() &&
           joint.stock.empty() && joint.extras.empty();
}

// The statement for two parts, made if it is not there; then changed by `change`, and dropped if it
// says nothing any more.
template <class Change>
Result<Piece> withJoint(Piece piece,
                        const std::string& tenoned,
                        const std::string& mortised,
                        Change change) {
    const auto isIt = [&](const JointStatement& joint) {
        return joint.tenoned == tenoned && joint.mortised == mortised;
    };
    auto it = std::find_if(piece.joints.begin(), piece.joints.end(), isIt);
    if (it == piece.joints.end()) {
        JointStatement joint;
        joint.tenoned = tenoned;
        joint.mortised = mortised;
        it = piece.joints.insert(piece.joints.end(), std::move(joint));
    }
    change(*it);
    if (saysNothing(*it)) {
        piece.joints.erase(it);
    }
    return piece;
}

Result<Piece> applied(Piece piece, const SetJoint& edit) {
    return withJoint(
        std::move(piece), edit.joint.tenoned, edit.joint.mortised, [&](JointStatement& joint) {
            joint = edit.joint;
        });
}

Result<Piece> applied(Piece piece, const SetJointSize& edit) {
    if (const std::optional<Error> error = unreadable(piece, edit.statement.expression)) {
        return tl::unexpected(*error);
    }
    return withJoint(std::move(piece), edit.tenoned, edit.mortised, [&](JointStatement& joint) {
        if (edit.statement.expression.empty()) {
            joint.sizes.erase(edit.size);
        } else {
            joint.sizes[edit.size] = edit.statement;
        }
    });
}

Result<Piece> applied(Piece piece, const SetJointKind& edit) {
    return withJoint(std::move(piece), edit.tenoned, edit.mortised, [&](JointStatement& joint) {
        joint.kind = edit.kind;
    });
}

Result<Piece> applied(Piece piece, const SetJointFeature& edit) {
    return withJoint(std::move(piece), edit.tenoned, edit.mortised, [&](JointStatement& joint) {
        if (edit.has) {
            joint.features.insert(edit.feature);
        } else {
            joint.features.erase(edit.feature);
        }
    });
}

Result<Piece> applied(Piece piece, const SetJointFeatures& edit) {
    Result<Piece> changed = std::move(piece);
    for (const SetJointFeature& one : edit.all) {
        changed = applied(std::move(*changed), one);
    }
    for (const SetPart& one : edit.parts) {
        if (changed) {
            changed = applied(std::move(*changed), one);
        }
    }
    return changed;
}

Result<Piece> applied(Piece piece, const SetHouseRule& edit) {
    if (const std::optional<Error> error = unreadable(piece, edit.value)) {
        return tl::unexpected(*error);
    }
    const auto it = std::find_if(piece.houseRules.begin(),
                                 piece.houseRules.end(),
                                 [&](const HouseRule& rule) { return rule.id == edit.id; });
    if (it == piece.houseRules.end()) {
        if (!edit.value.empty()) {
            piece.houseRules.push_back({edit.id, edit.value, {}, {}});
        }
    } else if (edit.value.empty()) {
        piece.houseRules.erase(it);
    } else {
        it->value = edit.value;
    }
    return piece;
}

std::optional<Error> unreadable(const Piece& piece,
                                std::initializer_list<const Statement*> statements) {
    for (const Statement* statement : statements) {
        if (std::optional<Error> error = unreadable(piece, *statement)) {
            return error;
        }
    }
    return std::nullopt;
}

Result<Piece> applied(Piece piece, const SetLoad& edit) {
    if (const std::optional<Error> error =
            unreadable(piece, {&edit.load.newtons, &edit.load.height})) {
        return tl::unexpected(*error);
    }
    if (edit.load.name.empty()) {
        return fail(ErrorCode::BadText, "A load needs a name.");
    }
    std::vector<StatedLoad>& loads = piece.use.loads;
    if (edit.load.name != edit.name && findByName(loads, edit.load.name) != loads.end()) {
        return fail(ErrorCode::BadText, "There is a load '" + edit.load.name + "' already.");
    }
    const auto it = findByName(loads, edit.name);
    if (it != loads.end()) {
        *it = edit.load;
    } else {
        loads.push_back(edit.load);
    }
    return piece;
}

Result<Piece> applied(Piece piece, const RemoveLoad& edit) {
    const auto it = findByName(piece.use.loads, edit.name);
    if (it == piece.use.loads.end()) {
        return unknown("load", edit.name);
    }
    piece.use.loads.erase(it);
    return piece;
}

Result<Piece> applied(Piece piece, const SetStrengthTest& edit) {
    if (const std::optional<Error> error = unreadable(piece, edit.test.newtonMetres)) {
        return tl::unexpected(*error);
    }
    std::erase_if(piece.use.tests, [&](const StrengthTest& test) {
        return test.tenoned == edit.test.tenoned && test.mortised == edit.test.mortised;
    });
    if (!edit.test.newtonMetres.empty()) {
        piece.use.tests.push_back(edit.test);
    }
    return piece;
}

Result<Piece> applied(Piece piece, const SetClimate& edit) {
    for (const RoomAir* air : {&edit.climate.dry, &edit.climate.damp}) {
        if (const std::optional<Error> error =
                unreadable(piece, {&air->moisture, &air->celsius, &air->humidity})) {
            return tl::unexpected(*error);
        }
    }
    piece.use.climate = edit.climate;
    return piece;
}

Result<Piece> applied(Piece piece, const SetAdhesive& edit) {
    piece.use.adhesive = edit.adhesive;
    return piece;
}

Result<Piece> applied(Piece piece, const SetStyle& edit) {
    piece.style = edit.style;
    return piece;
}

Result<Piece> applied(Piece piece, const SetPieceName& edit) {
    piece.name = edit.name;
    return piece;
}

}  // namespace

Result<Piece> apply(const Piece& piece, const Edit& edit) {
    return std::visit([&](const auto& one) { return applied(piece, one); }, edit);
}

}  // namespace shoulderline
