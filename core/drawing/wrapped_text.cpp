#include "core/drawing/wrapped_text.h"

namespace shoulderline {

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
        const std::size_t end = std::min(text.find(' ', at), text.size());
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
        baseline += kLineOfHeights * height;
    }
    return ops;
}

double heightOfLines(std::size_t count, double height) {
    return count == 0 ? 0.0 : height + kLineOfHeights * height * static_cast<double>(count - 1);
}

}  // namespace shoulderline
