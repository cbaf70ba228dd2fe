#include "core/drawing/wrapped_text.h"

#include <algorithm>
#include <string_view>

#include "core/drawing/fraction_text.h"

namespace shoulderline {

namespace {

bool isAsciiDigit(char c) {
    return c >= '0' && c <= '9';
}

// The end of the word that begins at `at`: a whole number keeps the fraction after it, and a size
// its other unit in brackets.
std::size_t endOfWord(const std::string& text, std::size_t at) {
    std::size_t end = std::min(text.find(' ', at), text.size());
    while (end < text.size() && end > at && isAsciiDigit(text[end - 1])) {
        const std::size_t next = std::min(text.find(' ', end + 1), text.size());
        const std::string_view word = std::string_view(text).substr(end + 1, next - end - 1);
        const bool isFraction =
            !word.empty() && isAsciiDigit(word.front()) && word.find('/') != std::string_view::npos;
        const bool isOtherUnit = !word.empty() && word.front() == '[';
        if (!isFraction && !isOtherUnit) {
            break;
        }
        end = next;
    }
    return end;
}

}  // namespace

std::vector<std::string> wrapText(const std::string& text,
                                  double width,
                                  double height,
                                  const TextMetrics& metrics,
                                  const std::string& indent) {
    std::vector<std::string> lines;
    std::string line;
    bool isBegun = false;  // the line has a word
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = endOfWord(text, at);
        const std::string word = text.substr(at, end - at);
        at = end + 1;
        const std::string longer = isBegun ? line + " " + word : line + word;
        if (isBegun && metrics.width(longer, height, false) > width) {
            lines.push_back(std::move(line));
            line = indent + word;
        } else {
            line = longer;
        }
        isBegun = true;
    }
    if (isBegun) {
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<Op> linesOfText(const std::vector<std::string>& lines, double height) {
    std::vector<Op> ops;
    double baseline = height;
    for (const std::string& line : lines) {
        ops.push_back(TextOp{{0.0, baseline}, line, height, Align::Left, false, false});
        baseline += kLineSpacing * height;
    }
    return ops;
}

double heightOfLines(std::size_t count, double height) {
    return count == 0 ? 0.0 : height + kLineSpacing * height * static_cast<double>(count - 1);
}

}  // namespace shoulderline
