#pragma once

#include <QDateTime>
#include <QObject>
#include <QString>
#include <QUndoStack>
#include <future>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/check/finding.h"
#include "core/check/movement.h"
#include "core/check/strength_report.h"
#include "core/piece/edit.h"
#include "core/piece/piece.h"
#include "core/resolve/resolved_piece.h"
#include "core/resolve/ripple.h"
#include "ui/document/resources.h"

namespace shoulderline {

// What is chosen, by the names that stay when the piece changes; empty for nothing.
struct Chosen {
    std::string part;   // of a resolved part
    std::string joint;  // of a resolved joint
    friend bool operator==(const Chosen&, const Chosen&) = default;
};

// What the last change was and what it moved; of a burst of steps, from where the first began.
struct LastChange {
    QString name;    // "rail thickness"; empty when nothing has changed yet
    QString before;  // what it was and is, where it is one size; else empty
    QString after;
    bool isUndo = false;
    std::vector<Moved> moved;
};

// What a change would bring, before it is made.
struct Foreseen {
    std::vector<Moved> moved;
    std::vector<std::string> newFindings;  // their messages
    std::vector<std::string> goneFindings;
};

// The piece being worked on: what is stated, what follows from it, and the way back. Widgets ask
// it and change the piece only through apply().
class Document final : public QObject {
    Q_OBJECT
  public:
    explicit Document(Resources resources, QObject* parent = nullptr);

    [[nodiscard]] const Resources& resources() const { return resources_; }
    [[nodiscard]] const Piece& piece() const { return *piece_; }
    [[nodiscard]] const ResolvedPiece& resolved() const { return *resolved_; }
    // The same, for what is worked out from it on a thread of its own.
    [[nodiscard]] std::shared_ptr<const ResolvedPiece> sharedResolved() const { return resolved_; }
    // Worked out on a thread of their own after each change; waited for when they are asked for.
    [[nodiscard]] const std::vector<Finding>& findings() const;
    // Worked out when first asked for after a change.
    [[nodiscard]] const StrengthReport& strength() const;
    [[nodiscard]] const MovementReport& movement() const;
    // What `edit` would move and which findings it would bring and mend. Errors: those of
    // shoulderline::apply(); OutOfRange where a statement in it cannot be worked out.
    [[nodiscard]] Result<Foreseen> foresee(const Edit& edit) const;
    [[nodiscard]] const LastChange& lastChange() const { return lastChange_; }
    // Counts the changes, so that views know whether what they drew is still so.
    [[nodiscard]] int generation() const { return generation_; }

    // Changes the piece. Steps of one burst (a held arrow key) in one target are one undo step; a
    // burst ends with endBurst() or with any change that is not a step. Errors: those of
    // shoulderline::apply(); the piece is then as it was.
    enum class Kind { Whole, Step };
    Result<void> apply(const Edit& edit, Kind kind = Kind::Whole);
    void endBurst() { ++burst_; }
    [[nodiscard]] QUndoStack& undoStack() { return undoStack_; }
    [[nodiscard]] bool isModified() const { return isRecovered_ || !undoStack_.isClean(); }

    // What `text` comes to as the maker sees it ("22 1/4", "104°", "5", "0.0625"), the measures
    // looked up. Errors: those of Expression.
    [[nodiscard]] Result<std::string> shownValue(const std::string& text, Dimension wanted) const;
    [[nodiscard]] Result<Length> lengthOf(const std::string& text) const;
    [[nodiscard]] Result<int> countOf(const std::string& text) const;
    [[nodiscard]] std::string shown(Length length) const;

    // A new piece in the place of this one; `path` is empty for one that has no file yet. A
    // recovered one counts as modified until it is saved.
    void start(Piece piece, const QString& path, bool isRecovered = false);
    // Errors: those of loadPiece(); the piece is then as it was.
    Result<void> open(const QString& path);
    // Errors: those of savePiece(); the piece stays modified.
    Result<void> save(const QString& path);
    [[nodiscard]] const QString& path() const { return path_; }
    // True if the file is not as it was when it was opened or saved last.
    [[nodiscard]] bool isChangedOnDisk() const;

    [[nodiscard]] std::optional<std::size_t> chosenPart() const;
    [[nodiscard]] std::optional<std::size_t> chosenJoint() const;
    void choosePart(std::optional<std::size_t> part);
    void chooseJoint(std::optional<std::size_t> joint);

  Q_SIGNALS:
    // The piece is another, and changed() follows at once: whoever works long on a thread of their
    // own begins now, beside those who show the change.
    void resolvedAnew();
    void changed();  // the piece and all that follows from it
    void chosenChanged();
    void fileChanged();  // path, or whether it is saved

  private:
    friend class PieceCommand;
    void show(std::shared_ptr<const Piece> piece,
              const Chosen& chosen,
              const QString& name,
              bool isUndo);
    void choose(Chosen chosen);
    void take(std::shared_ptr<const Piece> piece, std::shared_ptr<const ResolvedPiece> resolved);

    Resources resources_;
    std::shared_ptr<const Piece> piece_;
    std::shared_ptr<const ResolvedPiece> resolved_;
    mutable std::optional<std::vector<Finding>> findings_;
    mutable std::future<std::vector<Finding>> findingsToCome_;
    mutable std::optional<StrengthReport> strength_;
    mutable std::optional<MovementReport> movement_;
    LastChange lastChange_;
    std::shared_ptr<const ResolvedPiece> burstFrom_;  // the piece before the first step of a burst
    std::string burstOf_;                             // what its steps change
    int burstNumber_ = 0;
    bool isStepOn_ = false;  // a step that goes on with the burst is being shown
    Chosen chosen_;
    QUndoStack undoStack_;
    QString path_;
    QDateTime savedAt_;
    bool isRecovered_ = false;
    int generation_ = 0;
    int burst_ = 1;
};

}  // namespace shoulderline
