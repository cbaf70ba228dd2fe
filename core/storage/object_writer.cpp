#include "core/storage/object_writer.h"

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

// Puts back what a file held that this version does not know, also in objects within.
void merge(ordered_json& into, const ordered_json& rest) {
    for (const auto& item : rest.items()) {
        const auto it = into.find(item.key());
        if (it == into.end()) {
            into[item.key()] = item.value();
        } else if (it->is_object() && item.value().is_object()) {
            merge(*it, item.value());
        }
    }
}

}  // namespace

ObjectWriter& ObjectWriter::text(const char* name, std::string_view value) {
    if (!value.empty()) {
        object_[name] = value;
    }
    return *this;
}

ObjectWriter& ObjectWriter::flag(const char* name, bool value) {
    if (value) {
        object_[name] = true;
    }
    return *this;
}

ObjectWriter& ObjectWriter::value(const char* name, ordered_json value) {
    if (!value.empty()) {
        object_[name] = std::move(value);
    }
    return *this;
}

ObjectWriter& ObjectWriter::extras(const std::string& extras) {
    const ordered_json rest =
        extras.empty() ? ordered_json::object() : ordered_json::parse(extras, nullptr, false);
    if (rest.is_object()) {
        merge(object_, rest);
    }
    return *this;
}

}  // namespace shoulderline
