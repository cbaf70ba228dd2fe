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
