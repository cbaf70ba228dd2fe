#include "core/resolve/sections.h"

#include <string>
#include <variant>

namespace shoulderline {

namespace {

Size statedSize(Length value) {
    return {value, SizeState::Stated, {{RuleId::Stated, {}, {}, value}}};
}

}  // namespace

Sections::Sections(const Piece& piece, Evaluation& evaluation) : evaluation_(evaluation) {
    for (const Stock& stock : piece.stocks) {
        stocks_.emplace(stock.name, &stock);
    }
}

std::optional<Size> Sections::thicknessOf(const Stock& stock) {
    const Place place{"stock", stock.name, std::nullopt};
    if (stock.measuredThickness.empty()) {
        const std::optional<Length> stated = evaluation_.size(stock.thickness, place, "thickness");
        return stated ? std::optional(Size{*stated,
                                           SizeState::ByRule,
                                           {{RuleId::StockThickness, *stated, {}, *stated}}})
                      : std::nullopt;
    }
    const std::optional<Length> measured =
        evaluation_.size(stock.measuredThickness, place, "measured thickness");
    if (!measured) {
        return std::nullopt;
    }
    const Length stated =
        evaluation_.length(stock.thickness, place, "thickness", *measured).value_or(*measured);
    return Size{*measured, SizeState::AsFound, {{RuleId::StockMeasured, stated, {}, *measured}}};
}

// The section as it came out at the bench, where the maker says so.
void Sections::takeFound(const Part& part, const Place& place, Section& section) {
    const auto take = [&](const Statement& found, const char* name, Size& size) {
        if (found.empty()) {
            return;
        }
        if (const std::optional<Length> length = evaluation_.size(found, place, name)) {
            size = {*length, SizeState::AsFound, {{RuleId::PartFound, size.value, {}, *length}}};
        }
    };
    take(part.foundThickness, "thickness as found", section.thickness);
    take(part.foundWidth, "width as found", section.width);
}

std::optional<Section> Sections::of(const Part& part, const Place& place) {
    std::optional<Section> section = asStated(part, place);
    if (section) {
        takeFound(part, place, *section);
    }
    return section;
}

std::optional<Section> Sections::asStated(const Part& part, const Place& place) {
    Section section;
    const auto stock = stocks_.find(part.stock);
    std::optional<Size> fromStock;
    if (stock == stocks_.end()) {
        evaluation_.trouble(place, "there is no stock '" + part.stock + "'");
    } else {
        fromStock = thicknessOf(*stock->second);
    }
    if (!part.thickness.empty()) {
        const std::optional<Length> own = evaluation_.size(part.thickness, place, "thickness");
        if (!own) {
            return std::nullopt;
        }
        section.thickness = statedSize(*own);
    } else if (fromStock) {
        section.thickness = *fromStock;
    } else {
        return std::nullopt;
    }
    if (part.width.empty() && std::holds_alternative<Stands>(part.relation)) {
        section.width = section.thickness;
        return section;
    }
    if (part.width.empty() && std::holds_alternative<Fills>(part.relation)) {
        return section;  // as wide as what it fills
    }
    const std::optional<Length> width = evaluation_.size(part.width, place, "width");
    if (!width) {
        return std::nullopt;
    }
    section.width = statedSize(*width);
    return section;
}

}  // namespace shoulderline
