#pragma once

#include <QProcess>
#include <QString>
#include <QTemporaryDir>
#include <string>
#include <vector>

namespace shoulderline::testing {

// A print server (CUPS) of the test's own, in a folder of its own, with one queue that writes what
// reaches the printer to a file: a generic PDF printer with margins of 18 and 36 points on A4,
// whose default paper is Letter. Programs that the test starts, and Qt, talk to this server.
class PrintServer {
  public:
    PrintServer();
    ~PrintServer();
    PrintServer(const PrintServer&) = delete;
    PrintServer& operator=(const PrintServer&) = delete;

    // Empty once the queue is there; else what went wrong.
    [[nodiscard]] const std::string& trouble() const { return trouble_; }
    [[nodiscard]] static QString queue() { return QStringLiteral("SHOP"); }
    // Sends a file with options of lp ("print-scaling=fit").
    void send(const std::string& file, const std::vector<std::string>& options);
    // Takes away what earlier jobs gave.
    void clear();
    // The file that the printer was given, once every job is done.
    [[nodiscard]] std::string output();
    // What the server wrote down.
    [[nodiscard]] std::string log() const;

  private:
    [[nodiscard]] QString at(const QString& path) const { return folder_.filePath(path); }
    void write(const QString& path, const QString& text);
    void start();

    QTemporaryDir folder_;
    QProcess server_;
    std::string trouble_;
};

}  // namespace shoulderline::testing
