#include "core/resolve/set_up_order.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/geometry/bent_line.h"
#include "core/measure/length_text.h"
#include "core/resolve/end_words.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/tool_text.h"

namespace shoulderline {

namespace {

// Where the curve of a bent part leaves its chord.
Angle angleToChord(const ResolvedPart& part) {
    return Angle::radians(std::max(std::abs(headingAtStart(part.bend->line)),
                                   std::abs(headingAtEnd(part.bend->line))));
}

std::string bentText(const ResolvedPart& part) {
    return "cut once it is bent, held to its curve in a cradle so that its chord lies along the "
           "fence: tenons, shoulders and all these figures are true to the chord, which the curve "
           "leaves at " +
           slopeText(angleToChord(part)) + " at its ends";
}

std::string shapedText(const SetUp& one, const ResolvedPart& part, const LengthStyle& style) {
    std::string text = "this mortise once it is shaped, its depth from the " +
                       faceWordOn(part, one.entered) + " as it is";
    if (one.lieTo > one.lieFrom) {
        text += ", which is laid level under the tool: it is sawn straight there, from " +
                showLength(one.lieFrom, style) + " to " + showLength(one.lieTo, style) +
                " from the " + placesFromWord(part, End::Start) +
                "; its place is marked along the blank, not along that slope";
    }
    return text + "; what is cut in the square blank comes before";
}

}  // namespace

std::vector<std::string> orderTexts(const std::vector<SetUp>& setUps,
                                    const ResolvedPiece& resolved,
                                    const LengthStyle& style) {
    std::vector<std::string> texts;
    std::set<std::string> told;
    for (const SetUp& one : setUps) {
        const ResolvedPart& part = resolved.parts[one.part];
        const std::string head = "order, " + part.of + ": ";
        if (part.bend && told.insert(part.of).second) {
            texts.push_back(head + bentText(part));
        } else if (one.afterShaping && told.insert(part.of).second) {
            texts.push_back(head + shapedText(one, part, style));
        } else if (one.beforeShaping && told.insert(part.of).second) {
            texts.push_back(head +
                            "cut while the blank is square, before it is shaped, since the fence "
                            "bears on its flat faces and all these figures are from them");
        }
    }
    return texts;
}

std::vector<std::string> cautionsFor(const std::vector<SetUp>& setUps, const RuleBook& rules) {
    std::set<RuleId> tools;
    for (const SetUp& one : setUps) {
        tools.insert(one.tool);
    }
    return cautionTexts(rules, tools);
}

}  // namespace shoulderline
