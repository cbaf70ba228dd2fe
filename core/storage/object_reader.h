#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/measure/result.h"

namespace shoulderline {

// Keeps the first error of a reading; later steps go on harmlessly with empty values.
class Reading {
  public:
    void refuse(std::string message, std::string where) {
        if (!error_) {
            error_ = Error{ErrorCode::BadFile, std::move(message), std::move(where), 0};
        }
    }
    [[nodiscard]] const std::optional<Error>& error() const { return error_; }

  private:
    std::optional<Error> error_;
};

// Reads the members of one JSON object by name, with its place in the file for messages, and keeps
// what it was not asked for.
class ObjectReader {
  public:
    // `value` should be an object; if it is none, that is refused and everything reads as empty.
    ObjectReader(const nlohmann::ordered_json& value, std::string where, Reading& reading);

    // A text of at most kLongestText bytes; empty where the member is absent.
    [[nodiscard]] std::string text(const char* name);
    // Likewise, but it must be there and not be empty.
    [[nodiscard]] std::string neededText(const char* name);
    [[nodiscard]] bool flag(const char* name);
    [[nodiscard]] int whole(const char* name, int least, int most, int ifAbsent);
    [[nodiscard]] std::vector<std::string> texts(const char* name);
    // Calls `read` for each object in the list under `name`; nothing where the member is absent.
    void each(const char* name, const std::function<void(ObjectReader&)>& read);
    // Calls `read` with the object under `name`; nothing where the member is absent.
    void object(const char* name, const std::function<void(ObjectReader&)>& read);
    // Calls `read` with each name and text of the object under `name`.
    void eachMember(const char* name,
                    const std::function<void(const std::string& key,
                                             const nlohmann::ordered_json&,
                                             const std::string& where)>& read);
    // Calls `read` with each object under a name in the object under `name`; nothing where the
    // member is absent.
    void eachObject(const char* name,
                    const std::function<void(const std::string& key, ObjectReader&)>& read);
    // The word under `name`, by `fromText`; `words` lists what is expected.
    template <class Word, class FromText>
    [[nodiscard]] std::optional<Word> word(const char* name,
                                           FromText fromText,
                                           const std::string& words) {
        const std::string found = text(name);
        if (found.empty()) {
            return std::nullopt;
        }
        const std::optional<Word> known = fromText(found);
        if (!known) {
            reading_.refuse("'" + found + "' is not one of: " + words + ".", placeOf(name));
        }
        return known;
    }

    // The members nobody asked for, also those of objects within that did not ask for theirs, as
    // JSON text of an object; empty where there are none. To be called when all has been read.
    [[nodiscard]] std::string extras();
    [[nodiscard]] std::string placeOf(const char* name) const { return where_ + "/" + name; }
    [[nodiscard]] const std::string& where() const { return where_; }
    void refuse(std::string message, std::string where) {
        reading_.refuse(std::move(message), std::move(where));
    }
    [[nodiscard]] bool isWell() const { return !reading_.error(); }

    static constexpr std::size_t kLongestText = 4000;

  private:
    [[nodiscard]] const nlohmann::ordered_json* find(const char* name);
    [[nodiscard]] nlohmann::ordered_json unasked() const;

    const nlohmann::ordered_json& value_;
    std::string where_;
    Reading& reading_;
    std::vector<std::string_view> asked_;
    bool isKept_ = false;  // whoever asked for the extras keeps them: not the object around it
    nlohmann::ordered_json within_ =
        nlohmann::ordered_json::object();  // what objects within had unasked
};

}  // namespace shoulderline
