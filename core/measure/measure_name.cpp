#include "core/measure/measure_name.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/measure/literal.h"

namespace shoulderline {

namespace {
constexpr std::size_t kLongestName = 80;  // bytes
}

std::optional<Function> findFunction(std::string_view name) {
    constexpr std::array<std::pair<std::string_view, Function>, 6> kFunctions = {{
        {"min", Function::Min},
        {"max", Function::Max},
        {"round", Function::Round},
        {"sin", Function::Sin},
        {"cos", Function::Cos},
        {"tan", Function::Tan},
    }};
    const auto* found = std::find_if(
        kFunctions.begin(), kFunctions.end(), [&](const auto& f) { return f.first == name; });
    if (found == kFunctions.end()) {
        return std::nullopt;
    }
    return found->second;
}

std::string takeName(TextCursor& cursor) {
    std::string name;
    if (!isLetter(cursor.peek())) {
        return name;
    }
    while (true) {
        name += cursor.takeWord();
        const std::size_t end = cursor.position();
        cursor.skipSpaces();
        if (!isLetter(cursor.peek()) && !isDigit(cursor.peek())) {
            cursor.moveTo(end);
            return name;
        }
        name += ' ';
    }
}

std::string tidyName(std::string_view text) {
    std::string tidy;
    TextCursor cursor(text);
    cursor.skipSpaces();
    while (!cursor.atEnd()) {
        const std::size_t start = cursor.position();
        while (!cursor.atEnd() && cursor.peek() != U' ') {
            cursor.advance();
        }
        tidy += cursor.textFrom(start);
        if (cursor.skipSpaces() && !cursor.atEnd()) {
            tidy += ' ';
        }
    }
    return tidy;
}

bool isMeasureName(std::string_view text) {
    if (text.empty() || text.size() > kLongestName) {
        return false;
    }
    TextCursor cursor(text);
    return takeName(cursor) == text && !findFunction(text) && !isUnitWord(text);
}

}  // namespace shoulderline
