#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drawing/free_space.h"
#include "core/drawing/paper.h"
#include "core/drawing/strips.h"
#include "core/drawing/tiles.h"

namespace shoulderline {

// Makes the pages of one full-size drawing. What it is given must outlive it.
class Tiler {
  public:
    Tiler(const Piece& piece,
          const FullSizeDrawing& about,
          const Sheet& drawing,
          const Paper& paper,
          const TileOptions& options,
          const std::string& date,
          const TextMetrics& metrics);

    // The map of the tiles, where there are several, with the content `empty`; then the tiles by
    // rows.
    [[nodiscard]] std::vector<Page> pages(std::size_t content, std::size_t empty) const;

  private:
    [[nodiscard]] Page blank() const;
    [[nodiscard]] Page map(std::size_t empty) const;
    [[nodiscard]] Page tile(int row, int column, std::size_t content) const;
    [[nodiscard]] Page alongDiagonal(std::size_t content) const;
    // A square to check by, on a page that has room for it.
    void addSquare(Page& page) const;
    void addCaption(const std::string& name, const std::string& where, Page& page) const;
    void addCaptionLines(const std::vector<std::string>& texts,
                         Vec2 at,
                         double width,
                         std::vector<Op>& ops) const;

    const Piece& piece_;
    const FullSizeDrawing& about_;
    const Sheet& drawing_;
    const std::string& date_;
    const TextMetrics& metrics_;
    FreeSpace space_;  // in the drawing
    TileGrid grid_;
    std::optional<Diagonal> diagonal_;
    bool inInches_;
};

}  // namespace shoulderline
