#pragma once

#include <QDateTime>
#include <QDir>
#include <QLockFile>
#include <QObject>
#include <QString>
#include <QThreadPool>
#include <QTimer>
#include <memory>
#include <vector>

#include "core/piece/piece.h"
#include "ui/document/document.h"

namespace shoulderline {

// Where snapshots of unsaved work lie: $XDG_STATE_HOME/shoulderline/recovery, by default under
// ~/.local/state. A relative XDG_STATE_HOME does not count.
[[nodiscard]] QDir recoveryFolder();

// Work that was not saved when the program ended.
struct LostWork {
    QString file;  // the snapshot
    QString name;  // of the piece
    QString path;  // of its own file; empty if it had none
    QDateTime time;
    Piece piece;
};

// Keeps a snapshot of unsaved work beside the person's own files, a few seconds after each
// change, and finds those that an ended program left. A lock tells a live program's snapshot from
// a dead one's. At most the last few seconds of work can be lost.
class Recovery final : public QObject {
    Q_OBJECT
  public:
    Recovery(Document& document, const QDir& folder, int delayMs = 3000);
    ~Recovery() override;

    // Snapshots that no live program holds, newest first. One that cannot be read is set aside as
    // .unreadable, so that it is met only once.
    [[nodiscard]] std::vector<LostWork> find();
    // Goes on with lost work: its snapshot is this document's from now on.
    void adopt(const LostWork& lost);
    static void discard(const LostWork& lost);
    // Removes this document's snapshot: it is saved, or its changes were given up.
    void forget();
    // Writes the snapshot now if there is unsaved work, and waits for it.
    void writeNow();

  private:
    void noteChange();
    void write();
    void takeName(const QString& file);

    Document& document_;
    QDir folder_;
    QString file_;  // this document's snapshot
    std::unique_ptr<QLockFile> lock_;
    QTimer timer_;
    QThreadPool writer_;  // one thread, so that snapshots are written in order
};

}  // namespace shoulderline
