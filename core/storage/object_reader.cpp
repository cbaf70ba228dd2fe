#include "core/storage/object_reader.h"

#include <algorithm>

namespace shoulderline {

namespace {

using nlohmann::ordered_json;

const ordered_json& emptyObject() {
    static const ordered_json kEmpty = ordered_json::object();
    return kEmpty;
}

std::string found(const ordered_json& value) {
    switch (value.type()) {
        case ordered_json::value_t::null:
            return "nothing (null)";
        case ordered_json::value_t::object:
            return "an object";
        case ordered_json::value_t::array:
            return "a list";
        case ordered_json::value_t::string:
            return "a text";
        case ordered_json::value_t::boolean:
            return "true or false";
        case ordered_json::value_t::number_integer:
        case ordered_json::value_t::number_unsigned:
        case ordered_json::value_t::number_float:
            return "a number";
        case ordered_json::value_t::binary:
        case ordered_json::value_t::discarded:
            break;
    }
    return "something else";
}

std::string expected(const char* what, const ordered_json& value) {
    return std::string(what) + " is expected, and " + found(value) + " was found.";
}

}  // namespace

ObjectReader::ObjectReader(const ordered_json& value, std::string where, Reading& reading)
    : value_(value.is_object() ? value : emptyObject()),
      where_(std::move(where)),
      reading_(reading) {
    if (!value.is_object()) {
        reading_.refuse(expected("An object", value), where_);
    }
}

const ordered_json* ObjectReader::find(const char* name) {
    asked_.emplace_back(name);
    const auto it = value_.find(name);
    return it == value_.end() ? nullptr : &*it;
}

std::string ObjectReader::text(const char* name) {
    const ordered_json* member = find(name);
    if (member == nullptr) {
        return {};
    }
    if (!member->is_string()) {
        reading_.refuse(expected("A text", *member), placeOf(name));
        return {};
    }
    const auto& value = member->get_ref<const std::string&>();
    if (value.size() > kLongestText) {
        reading_.refuse("The text is over " + std::to_string(kLongestText) + " bytes long.",
                        placeOf(name));
        return {};
    }
    return value;
}

std::string ObjectReader::neededText(const char* name) {
    std::string value = text(name);
    if (value.empty()) {
        reading_.refuse(std::string("A text is expected for '") + name + "', and there is none.",
                        placeOf(name));
    }
    return value;
}

bool ObjectReader::flag(const char* name) {
    const ordered_json* member = find(name);
    if (member != nullptr && !member->is_boolean()) {
        reading_.refuse(expected("True or false", *member), placeOf(name));
    }
    return member != nullptr && member->is_boolean() && member->get<bool>();
}

int ObjectReader::whole(const char* name, int least, int most, int ifAbsent) {
    const ordered_json* member = find(name);
    if (member == nullptr) {
        return ifAbsent;
    }
    const bool isWhole = member->is_number_integer();
    const double value = isWhole ? member->get<double>() : 0.0;
    if (!isWhole || value < least || value > most) {
        reading_.refuse("A whole number from " + std::to_string(least) + " to " +
                            std::to_string(most) + " is expected, and " +
                            (isWhole ? "another number" : found(*member)) + " was found.",
                        placeOf(name));
        return ifAbsent;
    }
    return static_cast<int>(value);
}

std::vector<std::string> ObjectReader::texts(const char* name) {
    std::vector<std::string> list;
    const ordered_json* member = find(name);
    if (member == nullptr) {
        return list;
    }
    if (!member->is_array()) {
        reading_.refuse(expected("A list of texts", *member), placeOf(name));
        return list;
    }
    for (std::size_t i = 0; i < member->size(); ++i) {
        const ordered_json& item = (*member)[i];
        if (!item.is_string() || item.get_ref<const std::string&>().size() > kLongestText) {
            reading_.refuse(expected("A text", item), placeOf(name) + "/" + std::to_string(i));
            return list;
        }
        list.push_back(item.get<std::string>());
    }
    return list;
}

void ObjectReader::each(const char* name, const std::function<void(ObjectReader&)>& read) {
    const ordered_json* member = find(name);
    if (member == nullptr) {
        return;
    }
    if (!member->is_array()) {
        reading_.refuse(expected("A list", *member), placeOf(name));
        return;
    }
    for (std::size_t i = 0; i < member->size() && isWell(); ++i) {
        ObjectReader item((*member)[i], placeOf(name) + "/" + std::to_string(i), reading_);
        read(item);
    }
}

void ObjectReader::object(const char* name, const std::function<void(ObjectReader&)>& read) {
    if (const ordered_json* member = find(name)) {
        ObjectReader inner(*member, placeOf(name), reading_);
        read(inner);
        if (ordered_json rest = inner.unasked(); !rest.empty() && !inner.isKept_) {
            within_[name] = std::move(rest);
        }
    }
}

void ObjectReader::eachObject(const char* name,
                              const std::function<void(const std::string&, ObjectReader&)>& read) {
    eachMember(name,
               [&](const std::string& key, const ordered_json& value, const std::string& where) {
                   ObjectReader inner(value, where, reading_);
                   read(key, inner);
                   if (ordered_json rest = inner.unasked(); !rest.empty() && !inner.isKept_) {
                       within_[name][key] = std::move(rest);
                   }
               });
}

void ObjectReader::eachMember(
    const char* name,
    const std::function<void(const std::string&, const ordered_json&, const std::string&)>& read) {
    const ordered_json* member = find(name);
    if (member == nullptr) {
        return;
    }
    if (!member->is_object()) {
        reading_.refuse(expected("An object", *member), placeOf(name));
        return;
    }
    for (const auto& item : member->items()) {
        read(item.key(), item.value(), placeOf(name) + "/" + item.key());
    }
}

ordered_json ObjectReader::unasked() const {
    ordered_json rest = ordered_json::object();
    for (const auto& item : value_.items()) {
        if (std::find(asked_.begin(), asked_.end(), item.key()) == asked_.end()) {
            rest[item.key()] = item.value();
        }
    }
    rest.update(within_);
    return rest;
}

std::string ObjectReader::extras() {
    isKept_ = true;
    const ordered_json rest = unasked();
    return rest.empty() ? std::string() : rest.dump();
}

}  // namespace shoulderline
