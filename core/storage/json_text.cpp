#include "core/storage/json_text.h"

#include <algorithm>
#include <set>
#include <vector>

#include <nlohmann/json.hpp>

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

// Goes through the text once before anything is built: finds what must be refused and where.
class Guard : public nlohmann::json_sax<ordered_json> {
  public:
    bool null() override { return value(); }
    bool boolean(bool) override { return value(); }
    bool number_integer(number_integer_t) override { return value(); }
    bool number_unsigned(number_unsigned_t) override { return value(); }
    bool number_float(number_float_t, const string_t&) override { return value(); }
    bool string(string_t&) override { return value(); }
    bool binary(binary_t&) override { return false; }

    bool start_object(std::size_t) override { return open(true); }
    bool end_object() override { return close(); }
    bool start_array(std::size_t) override { return open(false); }
    bool end_array() override { return close(); }

    bool key(string_t& name) override {
        if (!levels_.back().names.insert(name).second) {
            return refuse("the name '" + name.substr(0, 80) +
                          "' stands twice in one object; once is expected");
        }
        levels_.back().name = name;
        return true;
    }

    bool parse_error(std::size_t position,
                     const std::string&,
                     const nlohmann::detail::exception&) override {
        errorAt = position;
        return false;
    }

    std::string refusal;
    std::string where;
    std::size_t errorAt = 0;

  private:
    struct Level {
        bool isObject = false;
        std::size_t index = 0;
        std::string name;
        std::set<std::string> names;
    };

    bool value() {
        if (++values_ > kMostValues) {
            return refuse("it holds over " + std::to_string(kMostValues) +
                          " values, which no piece needs");
        }
        if (!levels_.empty()) {
            ++levels_.back().index;
        }
        return true;
    }

    bool open(bool isObject) {
        if (!value()) {
            return false;
        }
        levels_.push_back({isObject, 0, {}, {}});
        if (levels_.size() > static_cast<std::size_t>(kDeepestNesting)) {
            return refuse("it is nested over " + std::to_string(kDeepestNesting) +
                          " deep, which no piece needs");
        }
        return true;
    }

    bool close() {
        levels_.pop_back();
        return true;
    }

    bool refuse(std::string why) {
        refusal = std::move(why);
        for (std::size_t i = 0; i + 1 < levels_.size(); ++i) {
            where += "/" +
                     (levels_[i].isObject ? levels_[i].name : std::to_string(levels_[i].index - 1));
        }
        return false;
    }

    std::vector<Level> levels_;
    std::size_t values_ = 0;
};

std::string lineAndColumn(std::string_view text, std::size_t position) {
    const std::string_view before = text.substr(0, std::min(position, text.size()));
    const auto line = std::count(before.begin(), before.end(), '\n') + 1;
    const std::size_t lastBreak = before.rfind('\n');
    const std::size_t column =
        before.size() - (lastBreak == std::string_view::npos ? 0 : lastBreak + 1);
    return "line " + std::to_string(line) + ", column " +
           std::to_string(std::max<std::size_t>(column, 1));
}

}  // namespace

Result<ordered_json> readJson(std::string_view text) {
    if (text.size() > kLargestFile) {
        return fail(ErrorCode::BadFile, "The file is over 32 MiB, which no piece needs.");
    }
    Guard guard;
    if (!ordered_json::sax_parse(text.begin(), text.end(), &guard)) {
        if (!guard.refusal.empty()) {
            return fail(
                ErrorCode::BadFile, "The file cannot be read: " + guard.refusal + ".", guard.where);
        }
        const bool isCut = guard.errorAt >= text.size();
        return fail(ErrorCode::BadFile,
                    isCut ? "The file ends in the middle; JSON text that is whole is expected."
                          : "The file is not JSON text in UTF-8 at " +
                                lineAndColumn(text, guard.errorAt) + ".",
                    lineAndColumn(text, guard.errorAt),
                    guard.errorAt);
    }
    ordered_json document = ordered_json::parse(text.begin(), text.end(), nullptr, false);
    if (document.is_discarded()) {
        return fail(ErrorCode::BadFile, "The file is not JSON text.");
    }
    return document;
}

}  // namespace shoulderline
