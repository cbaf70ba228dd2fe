#include <set>

#include "core/check/checks.h"
#include "core/check/contacts.h"

namespace shoulderline {

void checkContacts(const CheckContext& context, std::vector<Finding>& findings) {
    const ResolvedPiece& resolved = context.resolved;
    std::set<std::pair<std::size_t, std::size_t>> joined;
    std::set<std::pair<std::size_t, std::size_t>> through;  // meant to share their blanks' space
    for (const ResolvedJoint& joint : resolved.joints) {
        joined.insert(std::minmax(joint.tenoned, joint.mortised));
        if (joint.form().isDry() || joint.kind == JointKind::CrossLap) {
            through.insert(std::minmax(joint.tenoned, joint.mortised));
        }
    }
    // What swings leans on its bar, and leaves it.
    for (const ResolvedSwing& swing : resolved.swings) {
        for (const std::size_t leaning : swing.leaning) {
            joined.insert(std::minmax(leaning, swing.bar));
        }
    }
    std::set<std::pair<std::size_t, std::size_t>> told;
    const auto isJoined = [&](std::size_t first, std::size_t second) {
        return joined.contains({first, second});
    };
    for (const Contact& contact : contactsOf(resolved, isJoined)) {
        const std::pair<std::size_t, std::size_t> pair{contact.first, contact.second};
        if (through.contains(pair) || !told.insert(pair).second) {
            continue;
        }
        const std::string& one = resolved.parts[contact.first].of;
        const std::string& other = resolved.parts[contact.second].of;
        if (contact.depth > 0) {
            Finding finding = context.finding(RuleId::PartsClear, Severity::MustMend);
            finding.parts = {contact.first, contact.second};
            finding.value = contact.depth;
            finding.unit = "mm";
            finding.message =
                "{part} and {other} run through one another by " + context.shownMm(contact.depth);
            finding.mends.push_back(
                {"part them by " + context.shownMm(contact.depth), std::nullopt});
            findings.push_back(std::move(finding));
        } else {
            Finding finding = context.finding(RuleId::JointWanted, Severity::LookAt);
            finding.parts = {contact.first, contact.second};
            finding.message = "{part} and {other} touch with no joint between them";
            JointStatement joint;
            joint.tenoned = one;
            joint.mortised = other;
            joint.kind = JointKind::Rests;
            finding.mends.push_back({"say that " + one + " rests on " + other, SetJoint{joint}});
            findings.push_back(std::move(finding));
        }
    }
}

}  // namespace shoulderline
