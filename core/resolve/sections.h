#pragma once

#include <optional>
#include <string_view>
#include <unordered_map>

#include "core/resolve/evaluation.h"
#include "core/resolve/relations.h"

namespace shoulderline {

// Works out the sections of parts from their own statements and their stock.
class Sections {
  public:
    // Both stay where they are as long as this lives.
    Sections(const Piece& piece, Evaluation& evaluation);

    // Width and thickness of a part: the thickness is its own or that of its stock, as measured
    // where it was; a post with no width stated is square. Either is as found at the bench where
    // that is stated. Empty, with a trouble at `place`, where
    // they cannot be worked out.
    [[nodiscard]] std::optional<Section> of(const Part& part, const Place& place);

  private:
    [[nodiscard]] std::optional<Section> asStated(const Part& part, const Place& place);
    void takeFound(const Part& part, const Place& place, Section& section);
    [[nodiscard]] std::optional<Size> thicknessOf(const Stock& stock);

    Evaluation& evaluation_;
    std::unordered_map<std::string_view, const Stock*> stocks_;
};

}  // namespace shoulderline
