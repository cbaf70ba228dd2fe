#pragma once

#include <optional>

#include "core/measure/measures.h"
#include "core/piece/piece.h"

namespace shoulderline {

// Works out what is stated of a piece's use against its measures, which are worked out when the
// first statement asks for them. The piece must outlive it.
class StatedNumbers {
  public:
    explicit StatedNumbers(const Piece& piece) : piece_(piece) {}

    // Errors: those of Expression; EmptyText for an empty statement; OutOfRange for a number below
    // `least` or over `most`.
    [[nodiscard]] Result<double> number(const Statement& statement, double least, double most);
    [[nodiscard]] Result<Length> length(const Statement& statement);

  private:
    [[nodiscard]] const MeasureTable& measures();

    const Piece& piece_;
    std::optional<MeasureTable> measures_;
};

}  // namespace shoulderline
