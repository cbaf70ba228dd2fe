#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include <gtest/gtest.h>

// The folders of the repository see one another in one direction only, and core/ sees no Qt.
namespace {

namespace fs = std::filesystem;

// A folder may include from itself and from those before it.
constexpr std::array<std::string_view, 14> kOrder{"core/measure",
                                                  "core/geometry",
                                                  "core/timber",
                                                  "core/rules",
                                                  "core/piece",
                                                  "core/storage",
                                                  "core/joint",
                                                  "core/resolve",
                                                  "core/check",
                                                  "core/drawing",
                                                  "core/shop",
                                                  "ui",
                                                  "app",
                                                  "tests"};

int rankOf(std::string_view path) {
    for (std::size_t i = 0; i < kOrder.size(); ++i) {
        if (path.starts_with(kOrder[i]) && path.size() > kOrder[i].size() &&
            path[kOrder[i].size()] == '/') {
            return static_cast<int>(i);
        }
    }
    return -1;
}

struct Include {
    std::string file;  // from the top of the repository
    std::string what;  // between the quotes or angles
    bool isOurs = false;
};

std::vector<Include> includes() {
    const fs::path top = SHOULDERLINE_SOURCE_DIR;
    std::vector<Include> found;
    for (const char* folder : {"core", "ui", "app"}) {
        for (const auto& entry : fs::recursive_directory_iterator(top / folder)) {
            const fs::path extension = entry.path().extension();
            if (extension != ".h" && extension != ".cpp") {
                continue;
            }
            std::ifstream file(entry.path());
            for (std::string line; std::getline(file, line);) {
                if (line.starts_with("#include")) {
                    const std::size_t open = line.find_first_of("\"<");
                    const std::size_t close = line.find_first_of("\">", open + 1);
                    found.push_back({fs::relative(entry.path(), top).generic_string(),
                                     line.substr(open + 1, close - open - 1),
                                     line[open] == '"'});
                }
            }
        }
    }
    return found;
}

TEST(Structure, HeadersAreSeenInOneDirectionOnly) {
    int checked = 0;
    for (const Include& include : includes()) {
        if (include.isOurs && include.what.find(".moc") == std::string::npos) {
            ++checked;
            EXPECT_GE(rankOf(include.what), 0)
                << include.file << " includes " << include.what << ", not written from the top";
            EXPECT_LE(rankOf(include.what), rankOf(include.file))
                << include.file << " includes " << include.what;
        }
    }
    EXPECT_GT(checked, 200);
}

TEST(Structure, CoreIsFreeOfQt) {
    for (const Include& include : includes()) {
        if (include.file.starts_with("core/")) {
            const bool isQt = !include.isOurs && include.what.size() > 1 &&
                              include.what[0] == 'Q' &&
                              std::isupper(static_cast<unsigned char>(include.what[1])) != 0;
            EXPECT_FALSE(isQt) << include.file << " includes " << include.what;
        }
    }
}

// Its templates are slow to compile: a source that has them gives them a plain face.
TEST(Structure, FewFilesKnowBoostGeometry) {
    const std::set<std::string> allowed{"core/geometry/notched_rect.cpp",
                                        "core/geometry/spatial_index.cpp"};
    for (const Include& include : includes()) {
        if (include.what.starts_with("boost/geometry")) {
            EXPECT_TRUE(allowed.contains(include.file)) << include.file;
        }
    }
}

}  // namespace
