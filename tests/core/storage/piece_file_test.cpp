#include "core/storage/piece_file.h"

#include <csignal>
#include <fstream>

#include <gtest/gtest.h>

#include "tests/support/pieces.h"

#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

namespace shoulderline {
namespace {

// An empty folder of its own, removed afterwards.
class PieceFile : public ::testing::Test {
  protected:
    void SetUp() override {
        folder = std::filesystem::temp_directory_path() /
                 ("shoulderline-test-" + std::to_string(::getpid()));
        std::filesystem::create_directories(folder);
    }
    void TearDown() override { std::filesystem::remove_all(folder); }

    std::filesystem::path folder;
};

TEST_F(PieceFile, LoadsWhatWasSaved) {
    const Piece piece = testing::sample("table");

    ASSERT_TRUE(savePiece(folder / "ticket table.shoulder", piece));

    EXPECT_EQ(loadPiece(folder / "ticket table.shoulder").value(), piece);
}

TEST_F(PieceFile, SavingLeavesNoOtherFileBehind) {
    ASSERT_TRUE(savePiece(folder / "a.shoulder", testing::sample("table")));
    ASSERT_TRUE(savePiece(folder / "a.shoulder", testing::sample("bench")));

    const auto count = std::distance(std::filesystem::directory_iterator(folder), {});
    EXPECT_EQ(count, 1);
}

TEST_F(PieceFile, AFileThatIsNotThereIsNamed) {
    const Result<Piece> piece = loadPiece(folder / "lost.shoulder");

    ASSERT_FALSE(piece);
    EXPECT_EQ(piece.error().code, ErrorCode::CannotRead);
    EXPECT_NE(piece.error().message.find("lost.shoulder"), std::string::npos);
}

TEST_F(PieceFile, AFolderIsNoFile) {
    EXPECT_EQ(loadPiece(folder).error().code, ErrorCode::CannotRead);
}

TEST_F(PieceFile, AnErrorInTheFileNamesTheFileAndThePlace) {
    std::ofstream(folder / "odd.shoulder")
        << R"({"format": "shoulderline piece", "version": 1, "parts": 3})";

    EXPECT_EQ(loadPiece(folder / "odd.shoulder").error().where, "odd.shoulder, /parts");
}

TEST_F(PieceFile, AFolderThatIsNotThereIsRefused) {
    const Result<void> saved =
        savePiece(folder / "nowhere" / "a.shoulder", testing::sample("table"));

    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().code, ErrorCode::CannotWrite);
}

// A file size limit stands for the full disk: write() fails in the middle just the same.
TEST_F(PieceFile, AFullDiskLeavesTheOldFileWhole) {
    const std::filesystem::path path = folder / "armchair.shoulder";
    ASSERT_TRUE(savePiece(path, testing::sample("table")));
    rlimit old{};
    ::getrlimit(RLIMIT_FSIZE, &old);
    auto* const handler = std::signal(SIGXFSZ, SIG_IGN);
    rlimit small{1000, old.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &small);

    const Result<void> saved = savePiece(path, testing::sample("armchair"));

    ::setrlimit(RLIMIT_FSIZE, &old);
    std::signal(SIGXFSZ, handler);
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().code, ErrorCode::CannotWrite);
    EXPECT_EQ(loadPiece(path).value(), testing::sample("table"));
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder), {}), 1);
}

TEST_F(PieceFile, SavingThroughALinkKeepsTheLinkAndThePermissions) {
    const std::filesystem::path real = folder / "real.shoulder";
    const std::filesystem::path link = folder / "link.shoulder";
    ASSERT_TRUE(savePiece(real, testing::sample("table")));
    ::chmod(real.c_str(), 0640);
    std::filesystem::create_symlink(real, link);

    ASSERT_TRUE(savePiece(link, testing::sample("bench")));

    EXPECT_TRUE(std::filesystem::is_symlink(link));
    EXPECT_EQ(loadPiece(real).value(), testing::sample("bench"));
    struct stat about {};
    ::stat(real.c_str(), &about);
    EXPECT_EQ(about.st_mode & 0777, 0640u);
}

}  // namespace
}  // namespace shoulderline
