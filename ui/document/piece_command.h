#pragma once

#include <QUndoCommand>
#include <memory>

#include "core/piece/piece.h"
#include "ui/document/document.h"

namespace shoulderline {

// One change: the piece and what was chosen, before and after.
class PieceCommand final : public QUndoCommand {
  public:
    struct State {
        std::shared_ptr<const Piece> piece;
        Chosen chosen;
    };
    // Steps of the same burst in the same target merge; burst 0 never does.
    struct Target {
        std::string name;
        int burst = 0;
    };
    PieceCommand(Document& document, State before, State after, const QString& name, Target target);

    void undo() override;
    void redo() override;
    [[nodiscard]] int id() const override { return 1; }
    bool mergeWith(const QUndoCommand* other) override;

  private:
    Document& document_;
    State before_;
    State after_;
    Target target_;
};

}  // namespace shoulderline
