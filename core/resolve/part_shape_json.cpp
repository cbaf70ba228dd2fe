#include "core/resolve/part_shape_json.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "core/resolve/bending_text.h"

namespace shoulderline {

using nlohmann::ordered_json;

double rounded(double value) {
    constexpr double kSteps = 1e6;
    const double result = std::round(value * kSteps) / kSteps;
    return result == 0.0 ? 0.0 : result;  // never -0
}

double number(Length length) {
    return rounded(length.mm());
}

void addAngle(ordered_json& object, const std::string& name, Angle angle) {
    object[name + "_deg"] = rounded(angle.degrees());
    object[name + "_rise"] = rounded(std::tan(angle.radians()));
}

ordered_json endJson(const EndAngles& angles) {
    ordered_json object;
    addAngle(object, "saw_gauge", angles.mitre);
    addAngle(object, "saw_blade", angles.tilt);
    for (const ShoulderLine& line : angles.lines) {
        object["shoulder_lines"].push_back({{"side", wordFor(line.side)},
                                            {"from_square_deg", rounded(line.fromSquare.degrees())},
                                            {"length_mm", number(line.length)},
                                            {"set_back_mm", number(line.setBack)}});
    }
    return object;
}

ordered_json bendJson(const ResolvedPart& part, const RuleBook& rules) {
    const ResolvedBend& bend = *part.bend;
    const BendWork work = bendWorkOf(part, rules);
    ordered_json object{{"method", wordFor(bend.method)},
                        {"hollow", wordFor(bend.hollow)},
                        {"shoulders", wordFor(bend.shoulders)},
                        {"rise_mm", number(bend.rise.value)},
                        {"radius_mm", number(bend.radius.value)},
                        {"along_curve_mm", number(bend.alongCurve())},
                        {"springback", rounded(bend.springback)},
                        {"springback_as_found", bend.isMeasured},
                        {"form_rise_mm", number(bend.formRise())},
                        {"form_radius_mm", number(bend.formRadius.value)},
                        {"blank_length_mm", number(work.blankLength)},
                        {"blank_width_mm", number(work.blankWidth)},
                        {"solid_thickness_mm", number(work.solidThickness)},
                        {"solid_waste", rounded(work.solidWaste)},
                        {"short_grain_deg", rounded(work.shortGrain.degrees())}};
    if (bend.method == BendMethod::Laminated) {
        object["plies"] = bend.plies;
        object["ply_mm"] = number(bend.ply.value);
        object["rough_ply_mm"] = number(work.roughPly);
        object["board_mm"] = number(work.boardWidth);
        object["board_waste"] = rounded(work.boardWaste);
        object["clamps"] = work.clamps;
        object["hours_in_form"] = rounded(work.hours);
    }
    return object;
}

ordered_json holeJson(const ResolvedCut& cut) {
    const ResolvedHole& hole = *cut.hole;
    ordered_json object{
        {"kind", wordFor(hole.kind)},
        {"face", wordFor(cut.face)},
        {"mouth_mm", {rounded(hole.mouth.x), rounded(hole.mouth.y), rounded(hole.mouth.z)}},
        {"diameter_mm", number(hole.diameter)},
        {"depth_mm", number(hole.depth)},
        {"through", cut.isThrough}};
    if (hole.lean.isTilted()) {
        addAngle(object, "tilt_along", hole.lean.along);
        addAngle(object, "tilt_across", hole.lean.across);
        addAngle(object, "table_tilt", hole.lean.tilt());
        object["turn_deg"] = rounded(hole.lean.turn().degrees());
    }
    if (hole.slot != SlotWay::Round) {
        object["slot"] = wordFor(hole.slot);
        object["slot_length_mm"] = number(hole.slotLength.value);
    }
    if (hole.head != ScrewHead::Plain) {
        object["head"] = wordFor(hole.head);
        object["head_width_mm"] = number(hole.headWidth.value);
        object["head_depth_mm"] = number(hole.headDepth.value);
    }
    if (!cut.note.empty()) {
        object["note"] = cut.note;
    }
    return object;
}

ordered_json pegJson(const ResolvedCut& cut) {
    const Vec3 middle = cut.box.centre();
    ordered_json object{{"face", wordFor(cut.face)},
                        {"middle_mm", {rounded(middle.x), rounded(middle.y), rounded(middle.z)}},
                        {"side_mm", number(cut.peg->side)},
                        {"depth_mm", number(cut.peg->depth)},
                        {"through", cut.isThrough},
                        {"proud_mm", number(cut.peg->proud)}};
    if (!cut.note.empty()) {
        object["note"] = cut.note;
    }
    return object;
}

ordered_json easingJson(const ResolvedEasing& easing) {
    ordered_json object{{"kind", wordFor(easing.kind)},
                        {"at", wordFor(easing.at)},
                        {"size_mm", number(easing.size)},
                        {"second_mm", number(easing.second)}};
    if (easing.from) {
        object["from_mm"] = number(*easing.from);
    }
    if (easing.to) {
        object["to_mm"] = number(*easing.to);
    }
    if (easing.from || easing.to) {
        object["run_out_mm"] = number(easing.runOut);
    }
    return object;
}

}  // namespace shoulderline
