#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/measures.h"
#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Where a statement stands, for the trouble that it may give.
struct Place {
    std::string_view kind;  // "part", "stock", "assembly", "joint"
    std::string_view name;
    std::optional<std::size_t> part;  // index in Piece::parts
};

// Works out the statements of a piece against its measures. What cannot be worked out becomes a
// trouble at its place and comes back empty; the caller goes on with the rest.
class Evaluation {
  public:
    Evaluation(const MeasureTable& measures,
               Unit unit,
               const LengthStyle& style,
               std::vector<Trouble>& troubles)
        : measures_(measures), unit_(unit), style_(style), troubles_(troubles) {}

    // A length as the maker reads it, with its unit.
    [[nodiscard]] std::string shown(Length length) const {
        return showLength(length, style_, true);
    }

    [[nodiscard]] Unit unit() const { return unit_; }

    // What a size is told in steps of where one is proposed: 1/16 in, 0.5 mm.
    [[nodiscard]] Length step() const {
        return unit_ == Unit::Inch ? Length::inches(1.0 / 16) : Length::mm(0.5);
    }

    // The length that `statement` gives; an empty statement gives `ifEmpty`, or trouble without
    // one. `what` names the quantity in the message ("width").
    [[nodiscard]] std::optional<Length> length(const Statement& statement,
                                               const Place& place,
                                               std::string_view what,
                                               std::optional<Length> ifEmpty = std::nullopt);
    // Likewise, and above zero.
    [[nodiscard]] std::optional<Length> size(const Statement& statement,
                                             const Place& place,
                                             std::string_view what,
                                             std::optional<Length> ifEmpty = std::nullopt);
    // The angle; an empty statement gives zero.
    [[nodiscard]] std::optional<Angle> angle(const Statement& statement,
                                             const Place& place,
                                             std::string_view what);
    // A plain number from 0 to 1000.
    [[nodiscard]] std::optional<double> ratio(const Statement& statement,
                                              const Place& place,
                                              std::string_view what);
    // A whole number from 1 to kMostInSet.
    [[nodiscard]] std::optional<int> count(const Statement& statement,
                                           const Place& place,
                                           std::string_view what);

    // How many troubles there are so far.
    [[nodiscard]] std::size_t troubleCount() const { return troubles_.size(); }

    void trouble(const Place& place, std::string message, RuleId rule = RuleId::PieceResolves);

    static constexpr int kMostInSet = 1000;

  private:
    const MeasureTable& measures_;
    Unit unit_;
    const LengthStyle& style_;
    std::vector<Trouble>& troubles_;
};

}  // namespace shoulderline
