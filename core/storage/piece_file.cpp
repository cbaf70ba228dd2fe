#include "core/storage/piece_file.h"

#include <algorithm>
#include <cerrno>
#include <system_error>

#include "core/storage/json_text.h"
#include "core/storage/piece_text.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace shoulderline {

namespace {

// An open file, closed when it goes out of sight.
class Descriptor {
  public:
    explicit Descriptor(int value) : value_(value) {}
    ~Descriptor() { close(); }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;

    [[nodiscard]] int get() const { return value_; }
    // False where the system reports a late failure to write.
    bool close() {
        const int closing = value_;
        value_ = -1;
        return closing < 0 || ::close(closing) == 0;
    }

  private:
    int value_;
};

std::string reason(int code) {
    return std::error_code(code, std::generic_category()).message();
}

tl::unexpected<Error> refused(ErrorCode code,
                              const char* doing,
                              const std::filesystem::path& path,
                              int why) {
    return fail(
        code,
        std::string("'") + path.string() + "' could not be " + doing + ": " + reason(why) + ".",
        path.string());
}

bool writeAll(int file, std::string_view text) {
    while (!text.empty()) {
        const ssize_t written = ::write(file, text.data(), text.size());
        if (written < 0 && errno != EINTR) {
            return false;
        }
        if (written > 0) {
            text.remove_prefix(static_cast<std::size_t>(written));
        }
    }
    return true;
}

// Where the text really goes: the file itself, or what a link leads to.
std::filesystem::path targetOf(const std::filesystem::path& path) {
    std::error_code error;
    const std::filesystem::path real = std::filesystem::canonical(path, error);
    return error ? path : real;
}

}  // namespace

Result<std::string> readFile(const std::filesystem::path& path) {
    Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    struct stat about {};
    if (file.get() < 0 || ::fstat(file.get(), &about) != 0) {
        return refused(ErrorCode::CannotRead, "read", path, errno);
    }
    if (!S_ISREG(about.st_mode)) {
        return fail(ErrorCode::CannotRead,
                    "'" + path.string() + "' is not a file that can be read.",
                    path.string());
    }
    std::string text;
    std::string block(1u << 16, '\0');
    for (;;) {
        const ssize_t count = ::read(file.get(), block.data(), block.size());
        if (count == 0) {
            return text;
        }
        if (count < 0 && errno != EINTR) {
            return refused(ErrorCode::CannotRead, "read", path, errno);
        }
        text.append(block, 0, static_cast<std::size_t>(std::max<ssize_t>(count, 0)));
        if (text.size() > kLargestFile) {
            return fail(ErrorCode::BadFile,
                        "'" + path.string() + "' is over 32 MiB, which no piece needs.",
                        path.string());
        }
    }
}

Result<void> replaceFile(const std::filesystem::path& path, std::string_view text) {
    const std::filesystem::path target = targetOf(path);
    std::filesystem::path draft = target;
    draft += ".part-" + std::to_string(::getpid());
    struct stat about {};
    const mode_t mode = ::stat(target.c_str(), &about) == 0 ? about.st_mode & 0777 : 0666;
    Descriptor file(::open(draft.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode));
    if (file.get() < 0) {
        return refused(ErrorCode::CannotWrite, "saved", path, errno);
    }
    const bool isWritten = writeAll(file.get(), text) && ::fsync(file.get()) == 0;
    const int writeError = errno;
    const bool isClosed = file.close();
    if (!isWritten || !isClosed || ::rename(draft.c_str(), target.c_str()) != 0) {
        const int why = isWritten ? errno : writeError;
        ::unlink(draft.c_str());
        return refused(ErrorCode::CannotWrite, "saved", path, why);
    }
    return {};
}

Result<Piece> loadPiece(const std::filesystem::path& path) {
    return readFile(path)
        .and_then([](const std::string& text) { return readPiece(text); })
        .map_error([&](Error error) {
            if (error.code == ErrorCode::BadFile || error.code == ErrorCode::NewerFile) {
                error.where =
                    path.filename().string() + (error.where.empty() ? "" : ", " + error.where);
            }
            return error;
        });
}

Result<void> savePiece(const std::filesystem::path& path, const Piece& piece) {
    return replaceFile(path, writePiece(piece));
}

}  // namespace shoulderline
