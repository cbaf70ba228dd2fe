#include "ui/document/piece_command.h"

#include <QLoggingCategory>
#include <utility>

namespace shoulderline {

namespace {

Q_LOGGING_CATEGORY(edits, "shoulderline.edits", QtWarningMsg)

}  // namespace

PieceCommand::PieceCommand(
    Document& document, State before, State after, const QString& name, Target target)
    : QUndoCommand(name),
      document_(document),
      before_(std::move(before)),
      after_(std::move(after)),
      target_(std::move(target)) {}

void PieceCommand::undo() {
    qCInfo(edits).noquote() << "undo" << text();
    document_.show(before_.piece, before_.chosen, text(), true);
}

void PieceCommand::redo() {
    qCInfo(edits).noquote() << "change" << text();
    document_.show(after_.piece, after_.chosen, text(), false);
}

bool PieceCommand::mergeWith(const QUndoCommand* other) {
    const auto& next = static_cast<const PieceCommand&>(*other);
    if (target_.burst == 0 || next.target_.burst != target_.burst ||
        next.target_.name != target_.name) {
        return false;
    }
    after_ = next.after_;
    setObsolete(*before_.piece == *after_.piece);
    return true;
}

}  // namespace shoulderline
