#include "core/rules/rule.h"

namespace shoulderline {

namespace {

constexpr std::array<std::string_view, kRuleCount> kIds{
    "stated",
    "stated.over",
    "stated.offset",
    "as.found",
    "stock.thickness",
    "stock.measured",
    "part.placed",
    "part.shoulder.length",
    "tenon.thickness.share",
    "slat.tenon.shoulder",
    "tenon.thickness.chisel",
    "tenon.centred",
    "tenon.bare.faced",
    "shoulder.left",
    "tenon.between.shoulders",
    "tenon.edge.shoulder",
    "tenon.edge.shoulder.share",
    "tenon.width.left",
    "tenon.width.ratio",
    "tenon.width.share.least",
    "tenon.length.share",
    "slat.tenon.length",
    "tenon.length.ratio.least",
    "mortise.floor.least",
    "mortise.depth.extra",
    "mortise.as.tenon",
    "mortise.takes.tenon",
    "mortise.wall.least",
    "mortise.end.least",
    "mortise.gap.least",
    "mortise.through",
    "through.projection",
    "through.length",
    "shoulder.least",
    "mortise.mouth.on.face",
    "size.on.grid",
    "tenon.twin.share",
    "tenon.twin.gap",
    "tenon.double.share",
    "tenon.double.gap",
    "haunch.width.share",
    "haunch.length",
    "haunch.fills.groove",
    "mitre.gap",
    "mitre.length",
    "pin.share",
    "pin.size",
    "pin.place",
    "pin.two.from",
    "drawbore.offset",
    "wedge.flare",
    "kerf.place",
    "kerf.depth",
    "horn.length",
    "stub.length",
    "groove.takes.stub",
    "round.share",
    "let.in.depth",
    "whole.section",
    "stopped.by",
    "bridle.third",
    "lap.half",
    "flush.through",
    "dowel.share",
    "dowel.depth",
    "screw.diameter",
    "screw.depth",
    "joint.wanted",
    "parts.clear",
    "stock.yields",
    "faces.squarely",
    "movement.tenon.held",
    "movement.fixed.apart",
    "movement.gap.least",
    "strength.worst",
    "piece.resolves",
    "measure.limits",
};

}  // namespace

std::string_view ruleIdText(RuleId id) {
    return kIds[static_cast<std::size_t>(id)];
}

std::optional<RuleId> ruleIdFromText(std::string_view text) {
    for (std::size_t i = 0; i < kIds.size(); ++i) {
        if (kIds[i] == text) {
            return static_cast<RuleId>(i);
        }
    }
    return std::nullopt;
}

}  // namespace shoulderline
