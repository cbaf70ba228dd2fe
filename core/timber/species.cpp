#include "core/timber/species.h"

#include <algorithm>

#include <nlohmann/json.hpp>

namespace shoulderline {

namespace {

std::optional<double> figure(const nlohmann::json& row, const char* key) {
    const auto it = row.find(key);
    return it != row.end() && it->is_number() ? std::optional(it->get<double>()) : std::nullopt;
}

std::string text(const nlohmann::json& row, const char* key) {
    const auto it = row.find(key);
    return it != row.end() && it->is_string() ? it->get<std::string>() : std::string();
}

}  // namespace

Result<SpeciesTable> SpeciesTable::read(std::string_view source) {
    const nlohmann::json document = nlohmann::json::parse(source, nullptr, false);
    const bool isWell =
        document.is_object() && document.contains("species") && document["species"].is_array();
    if (!isWell) {
        return fail(
            ErrorCode::BadFile, "The table of species needs a list of species.", "/species");
    }
    SpeciesTable table;
    for (const nlohmann::json& row : document["species"]) {
        Species species;
        if (row.is_object()) {
            species.name = text(row, "name");
            species.botanicalName = text(row, "botanical_name");
            species.radialChange = figure(row, "radial_change");
            species.tangentialChange = figure(row, "tangential_change");
            species.specificGravity = figure(row, "specific_gravity");
            species.ruptureKpa = figure(row, "modulus_of_rupture_kpa");
            species.elasticityMpa = figure(row, "modulus_of_elasticity_mpa");
            species.shearKpa = figure(row, "shear_parallel_kpa");
            species.source = text(row, "source");
        }
        if (species.name.empty() || species.source.empty()) {
            return fail(ErrorCode::BadFile,
                        "Each species needs a name and a source.",
                        "/species/" + std::to_string(table.species_.size()));
        }
        table.species_.push_back(std::move(species));
    }
    return table;
}

const Species* SpeciesTable::find(std::string_view name) const {
    const auto it = std::find_if(
        species_.begin(), species_.end(), [name](const Species& s) { return s.name == name; });
    return it == species_.end() ? nullptr : &*it;
}

}  // namespace shoulderline
