#include "core/resolve/sizes_json.h"

#include <nlohmann/json.hpp>

#include "core/resolve/joint_angles.h"
#include "core/resolve/named_sizes.h"
#include "core/resolve/part_set_up.h"
#include "core/resolve/part_shape_json.h"
#include "core/resolve/screws_needed.h"
#include "core/resolve/set_up.h"
#include "core/resolve/sitting.h"
#include "core/resolve/small_parts.h"
#include "core/resolve/survey.h"
#include "core/resolve/tool_text.h"

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

ordered_json vector(Vec3 v) {
    return {rounded(v.x), rounded(v.y), rounded(v.z)};
}

// Under a name that tells its unit; nothing where there is no value.
void addValue(ordered_json& object, const std::string& name, const std::optional<Value>& value) {
    if (!value) {
        return;
    }
    switch (value->dimension()) {
        case Dimension::Length:
            object[name + "_mm"] = number(value->asLength().value_or(Length()));
            return;
        case Dimension::Angle:
            object[name + "_deg"] = rounded(value->asAngle().value_or(Angle()).degrees());
            return;
        case Dimension::Number:
            object[name] = rounded(value->asNumber().value_or(0.0));
            return;
    }
}

ordered_json measure(const Measure& stated, const ResolvedMeasure& resolved) {
    ordered_json object{{"name", resolved.name}, {"expression", stated.expression}};
    addValue(object, "value", resolved.value);
    return object;
}

ordered_json sittingJson(const Sitting& sitting) {
    ordered_json object{{"seat_height_mm", number(sitting.seatHeight)},
                        {"seat_slope_deg", rounded(sitting.slope.degrees())}};
    if (sitting.lean) {
        object["back_lean_deg"] = rounded(sitting.lean->degrees());
        object["between_deg"] = rounded(sitting.between()->degrees());
    }
    return object;
}

ordered_json surveyJson(const SurveyRow& row) {
    ordered_json object{{"name", row.name}};
    addValue(object, "found", row.found);
    addValue(object, "chosen", row.chosen);
    addValue(object, "found_over_chosen", row.apart);
    addValue(object, "follows", row.follows);
    addValue(object, "found_over_follows", row.open);
    return object;
}

ordered_json part(const ResolvedPart& part, const RuleBook& rules, const LengthStyle& style) {
    const bool hasTenons = !part.tenons.empty();
    const Box over = part.overBox();
    ordered_json object{
        {"name", part.name},
        {"of", part.of},
        {"hand", wordFor(part.hand)},
        {"stock", part.stock},
        {"length_mm", number(part.length())},
        {"horns_mm", number(part.startHorn + part.farHorn)},
        {"width_mm", number(part.width.value)},
        {"thickness_mm", number(part.thickness.value)},
        {"shoulder_length_mm",
         hasTenons ? ordered_json(number(part.shoulderLength.value)) : ordered_json()},
        {"volume_mm3", rounded(volumeAsMade(part))},
        {"origin_mm", vector(part.frame.toOuter(over.min))},
        {"axes", {vector(part.frame.x), vector(part.frame.y), vector(part.frame.z)}}};
    for (const End end : {End::Start, End::Far}) {
        if (const EndAngles angles = endAnglesOf(part, end); !angles.isSquare) {
            object["ends"][std::string(wordFor(end))] = endJson(angles);
        }
    }
    for (const ResolvedCut& cut : part.cuts) {
        if (cut.hole && !cut.hole->isForHead) {
            object["holes"].push_back(holeJson(cut));
        }
        if (cut.peg) {
            object["peg_mortises"].push_back(pegJson(cut));
        }
    }
    for (const ResolvedEasing& easing : part.easings) {
        object["easings"].push_back(easingJson(easing));
    }
    if (part.bend) {
        object["bend"] = bendJson(part, rules);
    }
    if (const std::vector<PartSetUp> setUps = partSetUpsOf(part, style); !setUps.empty()) {
        for (const PartSetUp& one : setUps) {
            object["set_ups"].push_back(partSetUpText(one, rules));
        }
        object["cautions"] = cautionsFor(setUps, rules);
    }
    return object;
}

void addTenonAndMortise(const ResolvedJoint& joint, ordered_json& object) {
    const Tenon& tenon = joint.tenon;
    const Mortise& mortise = joint.mortise;
    object["tenon"] = {{"thickness_mm", number(tenon.thickness.value)},
                       {"width_mm", number(tenon.width.value)},
                       {"length_mm", number(tenon.length.value)},
                       {"projection_mm", number(tenon.projection.value)},
                       {"shoulders_mm",
                        {{"face_side", number(tenon.shoulders.faceSide.value)},
                         {"back_side", number(tenon.shoulders.backSide.value)},
                         {"face_edge", number(tenon.shoulders.faceEdge.value)},
                         {"back_edge", number(tenon.shoulders.backEdge.value)}}}};
    object["mortise"] = {{"face", wordFor(mortise.face)},
                         {"width_mm", number(mortise.width.value)},
                         {"length_mm", number(mortise.length.value)},
                         {"depth_mm", number(mortise.depth.value)},
                         {"from_end_mm", number(mortise.fromStart.value)},
                         {"from_face_mm", number(mortise.fromFace.value)},
                         {"face_below_mm", number(mortise.below)}};
}

// How the tools are set for it, and what to mind at each.
void addSetUps(const ResolvedPiece& resolved, std::size_t index, ordered_json& object) {
    const std::vector<SetUp> setUps = setUpsOf(resolved, index);
    ordered_json list = ordered_json::array();
    for (const SetUp& one : setUps) {
        list.push_back({{"work", one.work},
                        {"part", resolved.parts[one.part].name},
                        {"tool", toolText(resolved.rules, one.tool)},
                        {"cutter_mm", number(one.cutter)},
                        {"reference", wordFor(one.reference)},
                        {"fence_mm", number(one.fence)},
                        {"depth_mm", number(one.depth)},
                        {"is_through", one.isThrough},
                        {"from_mm", number(one.from)},
                        {"to_mm", number(one.to)},
                        {"along", wordFor(one.along)},
                        {"from_shoulder", one.fromShoulder},
                        {"runs_out_at_mm", number(one.runsOutAt)},
                        {"reach_mm", number(one.reach)},
                        {"turn_deg", rounded(one.turn.degrees())},
                        {"mouth_mm", number(one.mouth)},
                        {"slopes_out", one.slopesOut},
                        {"is_trench", one.isTrench},
                        {"is_by_middle", one.isByMiddle},
                        {"eased_mm", number(one.eased)},
                        {"slopes_to_mm", number(one.slopesTo)},
                        {"lean_deg", rounded(one.lean.degrees())},
                        {"fence_at_end_mm", number(one.fenceAtEnd)},
                        {"pared_mm", number(one.pared)}});
    }
    object["set_ups"] = std::move(list);
    object["cautions"] = cautionsFor(setUps, resolved.rules);
}

ordered_json joint(const Piece& piece, const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedJoint& joint = resolved.joints[index];
    ordered_json object{{"name", joint.name},
                        {"kind", wordFor(joint.kind)},
                        {"tenoned", resolved.parts[joint.tenoned].name},
                        {"mortised", resolved.parts[joint.mortised].name}};
    for (const JointFeature feature : joint.features) {
        object["features"].push_back(wordFor(feature));
    }
    if (joint.kind == JointKind::Rests) {
        return object;
    }
    object["end"] = wordFor(joint.end);
    if (joint.hasTenon()) {
        addTenonAndMortise(joint, object);
    }
    for (const FurtherSize& further : joint.further) {
        object["further_mm"][std::string(wordFor(further.name))] = number(further.size.value);
    }
    if (const JointAngles angles = anglesOf(resolved, joint); !angles.isSquare()) {
        ordered_json& stated = object["angles"];
        addAngle(stated, "to_face", angles.toFace);
        addAngle(stated, "mortise", angles.mortise);
        addAngle(stated, "run_out", angles.runOut);
        addAngle(stated, "mouth_turn", angles.mouthTurn);
    }
    ordered_json reasons = ordered_json::object();
    for (const auto& [name, size] : namedSizes(joint)) {
        ordered_json chain = ordered_json::array();
        for (const Reason& reason : size->reasons) {
            chain.push_back({{"rule", ruleIdText(reason.rule)},
                             {"text", reasonText(reason, resolved.rules, piece.style)},
                             {"value_mm", number(reason.value)}});
        }
        reasons[name] = std::move(chain);
    }
    object["reasons"] = std::move(reasons);
    addSetUps(resolved, index, object);
    return object;
}

ordered_json jointNames(const std::vector<std::size_t>& joints, const ResolvedPiece& resolved) {
    ordered_json names = ordered_json::array();
    for (const std::size_t index : joints) {
        names.push_back(resolved.joints[index].name);
    }
    return names;
}

ordered_json smallPart(const SmallPart& small, const ResolvedPiece& resolved) {
    return {{"kind", wordFor(small.kind)},
            {"of", small.of},
            {"stock", small.stock},
            {"quantity", small.quantity},
            {"length_mm", number(small.length)},
            {"width_mm", number(small.width)},
            {"thickness_mm", number(small.thickness)},
            {"joints", jointNames(small.joints, resolved)}};
}

ordered_json screwsJson(const NeededScrews& screws,
                        const Piece& piece,
                        const ResolvedPiece& resolved) {
    ordered_json object{{"quantity", screws.quantity},
                        {"length_mm", number(screws.screw.length)},
                        {"hole_mm", number(screws.diameter)},
                        {"through", screws.through},
                        {"into", screws.into},
                        {"joints", jointNames(screws.joints, resolved)}};
    if (hasGauge(screws.screw, piece.style)) {
        object["gauge"] = screws.screw.gauge;
    }
    return object;
}

ordered_json swingJson(const Piece& piece,
                       const ResolvedPiece& resolved,
                       const ResolvedSwing& swing) {
    ordered_json positions = ordered_json::array();
    for (const SwingPosition& one : swing.positions) {
        positions.push_back({{"name", one.name},
                             {"lean_deg", rounded(one.lean.degrees())},
                             {"behind_mm", number(one.behind)},
                             {"contact_mm", number(one.contact)}});
    }
    return {{"assembly", piece.assemblies[swing.assembly].name},
            {"bar", resolved.parts[swing.bar].name},
            {"pivot_mm", vector(swing.pivot)},
            {"back_mm", number(swing.back)},
            {"above_mm", number(swing.above)},
            {"at", swing.positions[swing.at].name},
            {"positions", std::move(positions)}};
}

}  // namespace

std::string sizesJson(const Piece& piece, const ResolvedPiece& resolved) {
    ordered_json document{{"name", piece.name},
                          {"measures", ordered_json::array()},
                          {"parts", ordered_json::array()},
                          {"joints", ordered_json::array()}};
    for (std::size_t i = 0; i < resolved.measures.size(); ++i) {
        document["measures"].push_back(measure(piece.measures[i], resolved.measures[i]));
    }
    for (const ResolvedPart& one : resolved.parts) {
        document["parts"].push_back(part(one, resolved.rules, piece.style));
    }
    for (std::size_t i = 0; i < resolved.joints.size(); ++i) {
        document["joints"].push_back(joint(piece, resolved, i));
    }
    document["small_parts"] = ordered_json::array();
    for (const SmallPart& one : smallPartsOf(piece, resolved)) {
        document["small_parts"].push_back(smallPart(one, resolved));
    }
    document["screws"] = ordered_json::array();
    for (const NeededScrews& one : screwsNeeded(resolved, unitOf(piece.style) == Unit::Inch)) {
        document["screws"].push_back(screwsJson(one, piece, resolved));
    }
    if (const std::optional<Sitting> sitting = sittingOn(resolved)) {
        document["sitting"] = sittingJson(*sitting);
    }
    for (const SurveyRow& row : surveyOf(piece)) {
        document["survey"].push_back(surveyJson(row));
    }
    for (const ResolvedSwing& swing : resolved.swings) {
        document["swings"].push_back(swingJson(piece, resolved, swing));
    }
    return document.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace shoulderline
