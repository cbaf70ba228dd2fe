#include "core/piece/edit.h"

namespace shoulderline {

namespace {

struct Namer {
    std::string operator()(const SetMeasure& e) const { return e.name; }
    std::string operator()(const RenameMeasure& e) const { return "name of " + e.name; }
    std::string operator()(const RemoveMeasure& e) const { return "removal of " + e.name; }
    std::string operator()(const SetMeasureNote& e) const { return "note on " + e.name; }
    std::string operator()(const SetMeasureFound& e) const { return e.name + " as found"; }
    std::string operator()(const SetStock& e) const { return e.stock.name; }
    std::string operator()(const RemoveStock& e) const { return "removal of " + e.name; }
    std::string operator()(const SetPart& e) const { return e.part.name; }
    std::string operator()(const RemovePart& e) const { return "removal of " + e.name; }
    std::string operator()(const SetAssembly& e) const { return e.assembly.name; }
    std::string operator()(const SetJoint& e) const {
        return e.joint.tenoned + " into " + e.joint.mortised;
    }
    std::string operator()(const SetJointSize& e) const {
        return std::string(wordFor(e.size)) + ", " + e.tenoned + " into " + e.mortised;
    }
    std::string operator()(const SetJointKind& e) const {
        return "kind of " + e.tenoned + " into " + e.mortised;
    }
    std::string operator()(const SetJointFeature& e) const {
        return std::string(wordFor(e.feature)) + ", " + e.tenoned + " into " + e.mortised;
    }
    std::string operator()(const SetJointFeatures& e) const {
        if (e.all.empty()) {
            return e.parts.empty() ? std::string("joints") : (*this)(e.parts.front());
        }
        return (*this)(e.all.front());
    }
    std::string operator()(const SetHouseRule& e) const { return "house rule " + e.id; }
    std::string operator()(const SetLoad& e) const { return "load " + e.load.name; }
    std::string operator()(const RemoveLoad& e) const { return "removal of load " + e.name; }
    std::string operator()(const SetStrengthTest& e) const {
        return "test of " + e.test.tenoned + " into " + e.test.mortised;
    }
    std::string operator()(const SetClimate&) const { return "air of the room"; }
    std::string operator()(const SetAdhesive&) const { return "glue"; }
    std::string operator()(const SetStyle&) const { return "units"; }
    std::string operator()(const SetPieceName&) const { return "name of the piece"; }
};

}  // namespace

std::string nameOf(const Edit& edit) {
    return std::visit(Namer{}, edit);
}

std::string targetOf(const Edit& edit) {
    return std::to_string(edit.index()) + ":" + nameOf(edit);
}

}  // namespace shoulderline
