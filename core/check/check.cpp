#include <algorithm>
#include <array>
#include <map>
#include <tuple>

#include "core/check/checks.h"
#include "core/measure/length_statement.h"

namespace shoulderline {

namespace {

// The names of the parts at one place of a group of findings: one full name, or the stated name
// with what of it is meant.
std::string nameOfMany(const ResolvedPiece& resolved, const std::vector<std::size_t>& parts) {
    const ResolvedPart& first = resolved.parts[parts.front()];
    bool left = false;
    bool right = false;
    bool isOne = true;
    int count = 0;
    for (const std::size_t part : parts) {
        isOne = isOne && part == parts.front();
        left = left || resolved.parts[part].hand == Hand::Left;
        right = right || resolved.parts[part].hand == Hand::Right;
        ++count;
    }
    if (isOne) {
        return first.name;
    }
    if (first.number > 0) {
        return first.of + " (" + std::to_string(count) + " of them)";
    }
    return left && right ? first.of + ", left and right" : first.name;
}

void replace(std::string& text, std::string_view field, const std::string& value) {
    for (std::size_t at = text.find(field); at != std::string::npos;
         at = text.find(field, at + value.size())) {
        text.replace(at, field.size(), value);
    }
}

std::string keyOf(const Finding& finding, const ResolvedPiece& resolved) {
    // To the micrometre; halves of one are whole parts of an inch (1/16 in is 1587.5), which
    // rounding in doubles takes either way, so the grid is set off from them.
    constexpr double kOffHalves = 0.07;
    std::string key = std::to_string(static_cast<int>(finding.rule)) + "|" +
                      std::to_string(static_cast<int>(finding.severity)) + "|" + finding.message +
                      "|" + std::to_string(std::llround(finding.value * 1000.0 + kOffHalves));
    for (const std::size_t part : finding.parts) {
        key += "|" + resolved.parts[part].of;
    }
    for (const auto& joint : {finding.joint, finding.otherJoint}) {
        if (joint) {
            key += "|" + resolved.parts[resolved.joints[*joint].tenoned].of + ">" +
                   resolved.parts[resolved.joints[*joint].mortised].of;
        }
    }
    return key;
}

}  // namespace

std::string_view wordFor(Severity severity) {
    switch (severity) {
        case Severity::MustMend:
            return "must mend";
        case Severity::LookAt:
            return "look at";
        case Severity::Note:
            break;
    }
    return "note";
}

Finding CheckContext::finding(RuleId rule, Severity severity) const {
    Finding finding;
    finding.rule = rule;
    finding.severity = severity;
    finding.source = resolved.rules[rule].source;
    return finding;
}

Statement CheckContext::statement(Length length) {
    return lengthStatement(length);
}

Edit stateSize(const CheckContext& context, std::size_t joint, SizeName size, Length value) {
    const ResolvedJoint& resolved = context.resolved.joints[joint];
    return SetJointSize{context.resolved.parts[resolved.tenoned].of,
                        context.resolved.parts[resolved.mortised].of,
                        size,
                        {SizeState::Stated, CheckContext::statement(value)}};
}

bool followsShoulders(const ResolvedJoint& joint, SizeName tenon) {
    const Shoulders& s = joint.tenon.shoulders;
    const auto areStated = [](const Size& a, const Size& b) {
        return a.state != SizeState::ByRule && b.state != SizeState::ByRule;
    };
    return (tenon == SizeName::TenonThickness && areStated(s.faceSide, s.backSide)) ||
           (tenon == SizeName::TenonWidth && areStated(s.faceEdge, s.backEdge));
}

Edit backToRule(const CheckContext& context, std::size_t joint, SizeName size) {
    const ResolvedJoint& resolved = context.resolved.joints[joint];
    return SetJointSize{context.resolved.parts[resolved.tenoned].of,
                        context.resolved.parts[resolved.mortised].of,
                        size,
                        {}};
}

std::vector<Finding> gather(std::vector<Finding> findings, const ResolvedPiece& resolved) {
    struct Group {
        Finding finding;
        std::array<std::vector<std::size_t>, 2> places;  // of {part} and {other}
        std::vector<std::size_t> joints;
    };
    std::vector<Group> groups;
    std::map<std::string, std::size_t> byKey;
    for (Finding& finding : findings) {
        const auto [it, isNew] = byKey.emplace(keyOf(finding, resolved), groups.size());
        if (isNew) {
            groups.push_back({});
        }
        Group& group = groups[it->second];
        for (std::size_t i = 0; i < finding.parts.size() && i < 2; ++i) {
            group.places[i].push_back(finding.parts[i]);
        }
        if (finding.joint) {
            group.joints.push_back(*finding.joint);
        }
        if (isNew) {
            group.finding = std::move(finding);
        } else {
            group.finding.parts.insert(
                group.finding.parts.end(), finding.parts.begin(), finding.parts.end());
        }
    }
    std::vector<Finding> gathered;
    for (Group& group : groups) {
        Finding& finding = group.finding;
        constexpr std::array<std::string_view, 2> kFields{"{part}", "{other}"};
        for (std::size_t i = 0; i < kFields.size(); ++i) {
            if (group.places[i].empty()) {
                continue;
            }
            replace(finding.message, kFields[i], nameOfMany(resolved, group.places[i]));
            for (Mend& mend : finding.mends) {
                replace(mend.text, kFields[i], resolved.parts[group.places[i].front()].of);
            }
        }
        if (!group.joints.empty()) {
            const ResolvedJoint& first = resolved.joints[group.joints.front()];
            const std::string name = group.joints.size() == 1
                                         ? first.name
                                         : resolved.parts[first.tenoned].of + " into " +
                                               resolved.parts[first.mortised].of + " (" +
                                               std::to_string(group.joints.size()) + " joints)";
            replace(finding.message, "{joint}", name);
        }
        // Each part once, in the order met.
        std::vector<std::size_t> once;
        for (const std::size_t part : finding.parts) {
            if (std::find(once.begin(), once.end(), part) == once.end()) {
                once.push_back(part);
            }
        }
        finding.parts = std::move(once);
        gathered.push_back(std::move(finding));
    }
    std::stable_sort(gathered.begin(), gathered.end(), [](const Finding& a, const Finding& b) {
        return a.severity < b.severity;
    });
    return gathered;
}

std::vector<Finding> check(const Piece& piece,
                           const ResolvedPiece& resolved,
                           const SpeciesTable& species,
                           const StrengthBook& book) {
    const CheckContext context{piece, resolved, species, book};
    std::vector<Finding> findings;
    checkTroubles(context, findings);
    checkMeetings(context, findings);
    checkMouths(context, findings);
    checkProportions(context, findings);
    checkShapes(context, findings);
    checkEasings(context, findings);
    checkHoles(context, findings);
    checkPegs(context, findings);
    checkScrewHoles(context, findings);
    checkAngles(context, findings);
    checkBends(context, findings);
    checkSwings(context, findings);
    checkBodies(context, findings);
    checkContacts(context, findings);
    checkStock(context, findings);
    checkMovement(context, findings);
    checkStrength(context, findings);
    return gather(std::move(findings), resolved);
}

}  // namespace shoulderline
