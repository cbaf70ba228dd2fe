#include "core/rules/rule_book.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include <nlohmann/json.hpp>

namespace shoulderline {

namespace {

using nlohmann::json;

constexpr double kGreatestFigure = 10000.0;

// The figure under `key`, in millimetres for a length; nullopt if absent, NaN if it is no figure.
std::optional<double> figure(const json& row, const char* key, double scale) {
    const auto it = row.find(key);
    if (it == row.end()) {
        return std::nullopt;
    }
    const double value = it->is_number() ? it->get<double>() * scale : std::nan("");
    return value >= 0 && value <= kGreatestFigure ? value : std::nan("");
}

std::string text(const json& row, const char* key) {
    const auto it = row.find(key);
    return it != row.end() && it->is_string() ? it->get<std::string>() : std::string();
}

std::optional<Grade> gradeOf(const std::string& word) {
    if (word == "published") {
        return Grade::Published;
    }
    if (word == "common practice") {
        return Grade::CommonPractice;
    }
    if (word == "our choice") {
        return Grade::OurChoice;
    }
    return std::nullopt;
}

Result<Rule> readRule(const json& row, const std::string& where) {
    if (!row.is_object()) {
        return fail(
            ErrorCode::BadFile, "A rule is an object with an id, a sentence and a source.", where);
    }
    Rule rule;
    rule.id = text(row, "id");
    rule.subject = text(row, "subject");
    rule.sentence = text(row, "sentence");
    rule.source = text(row, "source");
    const std::optional<Grade> grade = gradeOf(text(row, "grade"));
    if (rule.id.empty() || rule.sentence.empty() || rule.source.empty() || !grade) {
        return fail(ErrorCode::BadFile,
                    "The rule '" + rule.id +
                        "' needs an id, a sentence, a source and a grade (published, common "
                        "practice or our choice).",
                    where);
    }
    rule.grade = *grade;
    const std::string unit = text(row, "unit");
    rule.unit =
        unit.empty() ? RuleUnit::None : (unit == "ratio" ? RuleUnit::Ratio : RuleUnit::Length);
    const double scale = unit == "in" ? Length::kMmPerInch : 1.0;
    const std::optional<double> value = figure(row, "value", scale);
    rule.low = figure(row, "low", scale);
    rule.high = figure(row, "high", scale);
    const auto bad = [](const std::optional<double>& v) { return v && std::isnan(*v); };
    const bool unitKnown = unit.empty() || unit == "ratio" || unit == "in" || unit == "mm";
    if (!unitKnown || bad(value) || bad(rule.low) || bad(rule.high) ||
        (rule.unit != RuleUnit::None && !value)) {
        return fail(ErrorCode::BadFile,
                    "The rule '" + rule.id +
                        "' needs a unit of in, mm or ratio and figures from 0 to 10000.",
                    where);
    }
    rule.value = value.value_or(0.0);
    return rule;
}

Result<json> parsed(std::string_view source, const char* what) {
    json document = json::parse(source, nullptr, false);
    if (document.is_discarded() || !document.is_object()) {
        return fail(ErrorCode::BadFile, std::string("The ") + what + " is not a JSON object.");
    }
    return document;
}

Result<std::vector<Length>> readLengths(const json& document, const char* key, double scale) {
    std::vector<Length> lengths;
    const auto it = document.find(key);
    if (it != document.end() && it->is_array()) {
        for (const json& item : *it) {
            const double mm = item.is_number() ? item.get<double>() * scale : 0.0;
            if (mm > 0 && mm <= kGreatestFigure) {
                lengths.push_back(Length::mm(mm));
            }
        }
        if (!lengths.empty() && lengths.size() == it->size()) {
            std::sort(lengths.begin(), lengths.end());
            return lengths;
        }
    }
    return fail(ErrorCode::BadFile,
                std::string("The workshop needs a list of widths above zero under '") + key + "'.",
                std::string("/") + key);
}

}  // namespace

Result<RuleBook> RuleBook::read(std::string_view source) {
    const Result<json> document = parsed(source, "rule book");
    if (!document) {
        return tl::unexpected(document.error());
    }
    const auto rows = document->find("rules");
    if (rows == document->end() || !rows->is_array()) {
        return fail(ErrorCode::BadFile, "The rule book needs a list of rules.", "/rules");
    }
    RuleBook book;
    for (std::size_t i = 0; i < rows->size(); ++i) {
        const std::string where = "/rules/" + std::to_string(i);
        Result<Rule> rule = readRule((*rows)[i], where);
        if (!rule) {
            return tl::unexpected(rule.error());
        }
        const std::optional<RuleId> id = ruleIdFromText(rule->id);
        if (!id || !book[*id].id.empty()) {
            return fail(ErrorCode::BadFile,
                        "The rule '" + rule->id + "' is " + (id ? "there twice." : "not known."),
                        where);
        }
        book.rules_[static_cast<std::size_t>(*id)] = std::move(*rule);
    }
    for (std::size_t i = 0; i < kRuleCount; ++i) {
        if (book.rules_[i].id.empty()) {
            return fail(ErrorCode::BadFile,
                        "The rule book has no rule '" +
                            std::string(ruleIdText(static_cast<RuleId>(i))) + "'.",
                        "/rules");
        }
    }
    return book;
}

RuleBook RuleBook::with(RuleId id, double value) const {
    RuleBook book = *this;
    Rule& rule = book.rules_[static_cast<std::size_t>(id)];
    rule.value = value;
    rule.isHouseRule = true;
    rule.source = "house rule";
    if (rule.low) {
        rule.low = std::min(*rule.low, value);
    }
    if (rule.high) {
        rule.high = std::max(*rule.high, value);
    }
    return book;
}

Result<Workshop> Workshop::read(std::string_view source) {
    const Result<json> document = parsed(source, "workshop file");
    if (!document) {
        return tl::unexpected(document.error());
    }
    constexpr const char* kLists[] = {
        "rack_in", "rack_mm", "bits_in", "bits_mm", "grid_in", "grid_mm"};
    std::vector<std::vector<Length>> read;
    for (const std::string_view key : kLists) {
        const double scale = key.substr(key.size() - 2) == "in" ? Length::kMmPerInch : 1.0;
        Result<std::vector<Length>> list = readLengths(*document, key.data(), scale);
        if (!list) {
            return tl::unexpected(list.error());
        }
        read.push_back(std::move(*list));
    }
    return Workshop{read[0], read[1], read[2], read[3], read[4].front(), read[5].front()};
}

}  // namespace shoulderline
