#include "ui/document/recovery.h"

#include <QCoreApplication>
#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QUuid>
#include <algorithm>
#include <utility>

#include "core/storage/piece_file.h"
#include "core/storage/piece_text.h"
#include "ui/look/text.h"

namespace shoulderline {

using namespace Qt::Literals::StringLiterals;

namespace {

constexpr qint64 kLargestSnapshot = 256 * 1024 * 1024;

std::optional<LostWork> readSnapshot(const QString& file) {
    QFile in(file);
    if (in.size() > kLargestSnapshot || !in.open(QIODevice::ReadOnly)) {
        return std::nullopt;
    }
    const QJsonObject all = QJsonDocument::fromJson(in.readAll()).object();
    Result<Piece> piece = readPiece(utf8(all["piece"_L1].toString()));
    if (!piece) {
        return std::nullopt;
    }
    LostWork lost;
    lost.file = file;
    lost.path = all["path"_L1].toString();
    lost.time = QDateTime::fromString(all["time"_L1].toString(), Qt::ISODate);
    lost.name = qt(piece->name);
    lost.piece = std::move(*piece);
    return lost;
}

}  // namespace

QDir recoveryFolder() {
    QString state = qEnvironmentVariable("XDG_STATE_HOME");
    if (state.isEmpty() || QDir::isRelativePath(state)) {
        state = QDir::homePath() + u"/.local/state"_s;
    }
    return QDir(state + u"/shoulderline/recovery"_s);
}

Recovery::Recovery(Document& document, const QDir& folder, int delayMs)
    : document_(document), folder_(folder) {
    writer_.setMaxThreadCount(1);
    timer_.setSingleShot(true);
    timer_.setInterval(delayMs);
    connect(&timer_, &QTimer::timeout, this, &Recovery::write);
    // The first change after a save is told before the piece counts as modified.
    connect(&document_, &Document::changed, this, &Recovery::noteChange);
    connect(&document_, &Document::fileChanged, this, &Recovery::noteChange);
}

Recovery::~Recovery() {
    writer_.waitForDone();
}

void Recovery::noteChange() {
    // A timer that runs already is left to run: a snapshot comes at the latest so long after the
    // first change, however fast others follow.
    if (document_.isModified() && !timer_.isActive()) {
        timer_.start();
    }
}

void Recovery::takeName(const QString& file) {
    file_ = file;
    lock_ = std::make_unique<QLockFile>(file + u".lock"_s);
    lock_->setStaleLockTime(0);
    lock_->tryLock(0);
}

void Recovery::write() {
    if (!document_.isModified()) {
        return;
    }
    if (file_.isEmpty()) {
        if (!folder_.mkpath(u"."_s)) {
            return;  // no place for a snapshot: the work itself goes on
        }
        takeName(
            folder_.filePath(QUuid::createUuid().toString(QUuid::WithoutBraces) + u".snapshot"_s));
    }
    const QJsonObject all{{u"name"_s, qt(document_.piece().name)},
                          {u"path"_s, document_.path()},
                          {u"time"_s, QDateTime::currentDateTime().toString(Qt::ISODate)},
                          {u"piece"_s, qt(writePiece(document_.piece()))}};
    writer_.start([file = utf8(file_), text = QJsonDocument(all).toJson().toStdString()] {
        // A snapshot that cannot be written is tried again after the next change.
        static_cast<void>(replaceFile(file, text));
    });
}

void Recovery::writeNow() {
    timer_.stop();
    write();
    writer_.waitForDone();
}

std::vector<LostWork> Recovery::find() {
    std::vector<LostWork> all;
    for (const QFileInfo& info :
         folder_.entryInfoList({u"*.snapshot"_s}, QDir::Files, QDir::Time)) {
        const QString file = info.filePath();
        QLockFile lock(file + u".lock"_s);
        lock.setStaleLockTime(0);
        if (file == file_ || !lock.tryLock(0)) {
            continue;
        }
        if (std::optional<LostWork> lost = readSnapshot(file)) {
            all.push_back(std::move(*lost));
        } else {
            QFile::rename(file, file + u".unreadable"_s);
        }
    }
    return all;
}

void Recovery::adopt(const LostWork& lost) {
    forget();
    takeName(lost.file);
}

void Recovery::discard(const LostWork& lost) {
    QFile::remove(lost.file);
}

void Recovery::forget() {
    timer_.stop();
    writer_.waitForDone();
    if (!file_.isEmpty()) {
        QFile::remove(file_);
        lock_.reset();
        file_.clear();
    }
}

}  // namespace shoulderline
