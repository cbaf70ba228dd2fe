#include "tests/core/check/stand_of_rails.h"

#include <algorithm>

#include "core/check/neighbours.h"
#include "tests/support/pieces.h"

namespace shoulderline::testing {

Workbench bench() {
    return {ruleBook(), workshop(), speciesTable(), strengthBook()};
}

Piece standOf(const Corner& corner) {
    Piece piece = sample("luggage_stand");
    std::erase_if(piece.parts, [](const Part& part) {
        return part.name != "front post" && part.name != "back post" && part.name != "end rail" &&
               part.name != "front rail" && part.name != "back rail";
    });
    piece.joints.clear();
    for (Stock& stock : piece.stocks) {
        if (stock.name == "post stock") {
            stock.thickness = "3 in";
        }
        if (stock.name == "rail stock") {
            stock.thickness = "1 1/8 in";
        }
    }
    for (Part& part : piece.parts) {
        if (part.name == "end rail") {
            part.width = corner.endWidth;
            std::get<Spans>(part.relation).level = Position{Side::Top, corner.endTop};
        } else if (part.name == "front rail" || part.name == "back rail") {
            part.width = corner.frontWidth;
            std::get<Spans>(part.relation).set.by = corner.frontSet;
        }
    }
    if (!corner.endLength.empty()) {
        for (const char* post : {"front post", "back post"}) {
            JointStatement joint;
            joint.tenoned = "end rail";
            joint.mortised = post;
            joint.sizes[SizeName::TenonLength] = {SizeState::Stated, corner.endLength};
            piece.joints.push_back(joint);
        }
    }
    return piece;
}

Piece throughRails() {
    Piece piece = standOf({"2 in", "2 in", "stand height - 1 3/8 in", "", "3/8 in"});
    for (const char* rail : {"end rail", "front rail", "back rail"}) {
        for (const char* post : {"front post", "back post"}) {
            const bool isThere = std::string(rail) == "end rail" ||
                                 std::string(rail).substr(0, 4) == std::string(post).substr(0, 4);
            if (isThere) {
                JointStatement joint;
                joint.tenoned = rail;
                joint.mortised = post;
                joint.kind = JointKind::Through;
                joint.features = {JointFeature::Twin};
                piece.joints.push_back(joint);
            }
        }
    }
    return piece;
}

std::size_t meetingsOf(const Piece& piece) {
    return allMeetings(resolved(piece)).size();
}

std::optional<Offered> offered(const Piece& piece, const std::string& begins) {
    for (const Finding& finding : findings(piece)) {
        for (const Mend& mend : finding.mends) {
            if (finding.rule == RuleId::MortiseGapLeast && finding.otherJoint && mend.edit &&
                mend.text.rfind(begins, 0) == 0) {
                return Offered{finding, mend};
            }
        }
    }
    return std::nullopt;
}

}  // namespace shoulderline::testing
