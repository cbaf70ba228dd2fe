#include "tests/print/print_server.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QThread>

#include "tests/print/raster.h"

namespace shoulderline::testing {

namespace {

constexpr const char* kDriver = "/usr/share/ppd/cupsfilters/Generic-PDF_Printer-PDF.ppd";

// Until `isSo`, at most ten seconds.
template <typename Condition>
bool waitFor(Condition isSo) {
    for (int i = 0; i < 200; ++i) {
        if (isSo()) {
            return true;
        }
        QThread::msleep(50);
    }
    return false;
}

}  // namespace

PrintServer::PrintServer() {
    // The filters run as another user, who must get through to their files.
    QFile::setPermissions(folder_.path(),
                          QFile::permissions(folder_.path()) | QFile::ExeGroup | QFile::ExeOther);
    for (const char* name : {"etc", "spool/tmp", "cache", "state", "log", "out"}) {
        QDir(folder_.path()).mkpath(QString::fromLatin1(name));
    }
    write(QStringLiteral("etc/cups-files.conf"),
          QStringLiteral("SystemGroup root\nUser lp\nGroup lp\nFileDevice Yes\nSandboxing relaxed\n"
                         "ServerRoot %1/etc\nRequestRoot %1/spool\nTempDir %1/spool/tmp\n"
                         "CacheDir %1/cache\nStateDir %1/state\nAccessLog %1/log/access\n"
                         "ErrorLog %1/log/error\nPageLog %1/log/page\n")
              .arg(folder_.path()));
    write(QStringLiteral("etc/cupsd.conf"),
          QStringLiteral("Listen %1/cups.sock\nLogLevel debug\nMaxLogSize 0\nWebInterface No\n"
                         "Browsing No\nDefaultAuthType None\n"
                         "<Location />\nOrder allow,deny\nAllow all\n</Location>\n"
                         "<Location /admin>\nOrder allow,deny\nAllow all\n</Location>\n"
                         "<Policy default>\n<Limit All>\nOrder allow,deny\nAllow all\n</Limit>\n"
                         "</Policy>\n")
              .arg(folder_.path()));
    qputenv("CUPS_SERVER", at(QStringLiteral("cups.sock")).toUtf8());
    start();
}

PrintServer::~PrintServer() {
    if (server_.state() != QProcess::NotRunning) {
        server_.terminate();
        if (!server_.waitForFinished(3000)) {
            server_.kill();
            server_.waitForFinished(3000);
        }
    }
}

void PrintServer::write(const QString& path, const QString& text) {
    QFile file(at(path));
    if (!file.open(QIODevice::WriteOnly) || file.write(text.toUtf8()) < 0) {
        trouble_ = "cannot write " + path.toStdString();
    }
}

void PrintServer::start() {
    server_.start(QStringLiteral("/usr/sbin/cupsd"),
                  {QStringLiteral("-f"),
                   QStringLiteral("-c"),
                   at(QStringLiteral("etc/cupsd.conf")),
                   QStringLiteral("-s"),
                   at(QStringLiteral("etc/cups-files.conf"))});
    if (!server_.waitForStarted(5000) ||
        !waitFor([&] { return QFileInfo::exists(at(QStringLiteral("cups.sock"))); })) {
        trouble_ = "cupsd does not start: " + server_.readAllStandardError().toStdString();
        return;
    }
    const Output added = runProgram("/usr/sbin/lpadmin",
                                    {"-p",
                                     queue().toStdString(),
                                     "-v",
                                     "file://" + at(QStringLiteral("out/page.pdf")).toStdString(),
                                     "-P",
                                     kDriver,
                                     "-E"});
    if (added.code != 0) {
        trouble_ = "lpadmin: " + added.text;
    }
}

void PrintServer::send(const std::string& file, const std::vector<std::string>& options) {
    std::vector<std::string> arguments{"-d", queue().toStdString()};
    for (const std::string& option : options) {
        arguments.insert(arguments.end(), {"-o", option});
    }
    arguments.push_back(file);
    const Output sent = runProgram("lp", arguments);
    if (sent.code != 0) {
        trouble_ = "lp: " + sent.text;
    }
}

void PrintServer::clear() {
    QFile::remove(at(QStringLiteral("out/page.pdf")));
}

std::string PrintServer::output() {
    const QString file = at(QStringLiteral("out/page.pdf"));
    const bool isDone = waitFor([&] {
        return QFileInfo(file).size() > 0 &&
               runProgram("lpstat", {"-W", "not-completed", "-o", queue().toStdString()})
                   .text.empty();
    });
    if (!isDone) {
        trouble_ = "the job is not done";
    }
    return file.toStdString();
}

std::string PrintServer::log() const {
    QFile file(at(QStringLiteral("log/error")));
    return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

}  // namespace shoulderline::testing
