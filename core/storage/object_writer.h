#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

namespace shoulderline {

// Builds one JSON object: members in the order put, empty ones left out.
class ObjectWriter {
  public:
    ObjectWriter& text(const char* name, std::string_view value);
    ObjectWriter& flag(const char* name, bool value);
    ObjectWriter& value(const char* name, nlohmann::ordered_json value);
    // What a file held that this version does not know: JSON text of an object, or empty.
    ObjectWriter& extras(const std::string& extras);
    [[nodiscard]] nlohmann::ordered_json done() { return std::move(object_); }

  private:
    nlohmann::ordered_json object_ = nlohmann::ordered_json::object();
};

// A JSON list of what `toJson` makes of each item.
template <class Item, class ToJson>
[[nodiscard]] nlohmann::ordered_json jsonList(const std::vector<Item>& items, ToJson toJson) {
    nlohmann::ordered_json array = nlohmann::ordered_json::array();
    for (const Item& item : items) {
        array.push_back(toJson(item));
    }
    return array;
}

}  // namespace shoulderline
