#include "core/drawing/paper.h"

#include <algorithm>
#include <cctype>

#include "core/measure/length_text.h"

namespace shoulderline {

namespace {

constexpr double kLeastSide = 50.0;
constexpr double kMostSide = 5000.0;  // a PDF page without user units reaches 5080 mm

std::string lower(std::string_view text) {
    std::string result(text);
    std::transform(result.begin(), result.end(), result.begin(), [](unsigned char c) {
        return static_cast<char>(std::tolower(c));
    });
    return result;
}

std::string trimmed(std::string_view text) {
    const std::size_t from = text.find_first_not_of(" \t");
    const std::size_t to = text.find_last_not_of(" \t");
    return from == std::string_view::npos ? std::string()
                                          : std::string(text.substr(from, to - from + 1));
}

// Where the two sides of a stated size part: at an x or a multiplication sign.
struct Cross {
    std::size_t at = std::string::npos;
    std::size_t length = 0;
};
Cross findCross(const std::string& text) {
    const std::size_t sign = text.find("\u00d7");
    return sign != std::string::npos ? Cross{sign, 2} : Cross{text.find('x'), 1};
}

tl::unexpected<Error> unknownPaper(std::string_view text) {
    std::string names;
    for (const Paper& paper : standardPapers()) {
        names += (names.empty() ? "" : ", ") + paper.name;
    }
    return fail(ErrorCode::BadText,
                "'" + std::string(text) + "' is not a paper: use one of " + names +
                    ", or a size such as '300 x 1300 mm' or '24 x 36 in'.");
}

}  // namespace

Vec2 upright(const Paper& paper) {
    return {std::min(paper.size.x, paper.size.y), std::max(paper.size.x, paper.size.y)};
}

const std::vector<Paper>& standardPapers() {
    static const std::vector<Paper> kPapers{
        {"Letter", {215.9, 279.4}},
        {"Legal", {215.9, 355.6}},
        {"Tabloid", {279.4, 431.8}},
        {"A4", {210, 297}},
        {"A3", {297, 420}},
        {"A2", {420, 594}},
        {"A1", {594, 841}},
        {"A0", {841, 1189}},
    };
    return kPapers;
}

Result<Paper> findPaper(std::string_view text) {
    const std::string wanted = lower(trimmed(text));
    for (const Paper& paper : standardPapers()) {
        if (lower(paper.name) == wanted) {
            return paper;
        }
    }
    const Cross cross = findCross(wanted);
    if (cross.at == std::string::npos) {
        return unknownPaper(text);
    }
    const std::string second = trimmed(std::string_view(wanted).substr(cross.at + cross.length));
    const bool isInches = second.size() > 2 && (second.ends_with("in") || second.ends_with("\""));
    const Unit unit = isInches ? Unit::Inch : Unit::Millimetre;
    const Result<Length> width =
        readLength(trimmed(std::string_view(wanted).substr(0, cross.at)), unit);
    const Result<Length> height = readLength(second, unit);
    if (!width || !height) {
        return unknownPaper(text);
    }
    for (const double side : {width->mm(), height->mm()}) {
        if (!(side >= kLeastSide && side <= kMostSide)) {
            return fail(ErrorCode::BadText,
                        "The paper '" + std::string(text) +
                            "' is too small or too large: each side must be 50 mm to 5000 mm.");
        }
    }
    return Paper{trimmed(text), {width->mm(), height->mm()}};
}

}  // namespace shoulderline
