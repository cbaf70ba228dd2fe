#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/result.h"

namespace shoulderline {

// Published figures of one species. Those that were not read in the source are absent.
struct Species {
    std::string name;
    std::string botanicalName;
    std::optional<double> radialChange;  // per 1 % of moisture content, as a fraction, 6 to 14 %
    std::optional<double> tangentialChange;  // likewise
    std::optional<double> specificGravity;   // oven-dry mass, volume at 12 % moisture content
    std::optional<double> ruptureKpa;        // modulus of rupture at 12 %, kPa
    std::optional<double> elasticityMpa;     // modulus of elasticity at 12 %, MPa
    std::optional<double> shearKpa;          // shear parallel to the grain at 12 %, kPa
    std::string source;
};

// The species that the planner has figures for, in the order of resources/timber/species.json.
class SpeciesTable {
  public:
    // Errors: BadFile with the place.
    [[nodiscard]] static Result<SpeciesTable> read(std::string_view json);
    [[nodiscard]] const std::vector<Species>& all() const { return species_; }
    // By its common name; null if it is not there.
    [[nodiscard]] const Species* find(std::string_view name) const;

  private:
    std::vector<Species> species_;
};

}  // namespace shoulderline
