#include "core/drawing/fraction_text.h"

#include <algorithm>
#include <optional>

#include "core/drawing/text_metrics.h"

namespace shoulderline {

namespace {

// From the bar to the figures above and under it, as a share of the text's height.
constexpr double kBarGap = 0.12;
constexpr double kBarOverhang = 0.06;
constexpr std::string_view kAbout = "\u2248";
constexpr std::string_view kNoBreakSpace = "\u00a0";

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

struct Fraction {
    std::size_t from = 0;  // in the text; a space before it that follows a whole number included
    std::size_t end = 0;
    std::string_view numerator;
    std::string_view denominator;
    bool followsWhole = false;
};

// The first fraction in `text` at or after `start`.
std::optional<Fraction> findFraction(std::string_view text, std::size_t start) {
    for (std::size_t slash = text.find('/', start); slash != std::string_view::npos;
         slash = text.find('/', slash + 1)) {
        std::size_t from = slash;
        while (from > start && isDigit(text[from - 1])) {
            --from;
        }
        std::size_t end = slash + 1;
        while (end < text.size() && isDigit(text[end])) {
            ++end;
        }
        const bool standsAlone =
            from == 0 || std::string_view("/.,:-").find(text[from - 1]) == std::string_view::npos;
        const bool ends =
            end == text.size() || std::string_view("/-").find(text[end]) == std::string_view::npos;
        if (from == slash || end == slash + 1 || end - from > 9 || !standsAlone || !ends) {
            continue;
        }
        Fraction fraction{from,
                          end,
                          text.substr(from, slash - from),
                          text.substr(slash + 1, end - slash - 1),
                          false};
        if (from >= start + 2 && text[from - 1] == ' ' && isDigit(text[from - 2])) {
            fraction.from = from - 1;
            fraction.followsWhole = true;
        }
        return fraction;
    }
    return std::nullopt;
}

class Setter {
  public:
    Setter(double height, bool isBold, const TextMetrics& metrics)
        : height_(height), isBold_(isBold), metrics_(metrics) {
        layout_.ascent = height;
        layout_.descent = 0.0;
    }

    void plain(std::string_view text) {
        while (!text.empty()) {
            const std::size_t about = text.find(kAbout);
            run(text.substr(0, about));
            if (about == std::string_view::npos) {
                return;
            }
            nearly();
            text.remove_prefix(about + kAbout.size());
        }
    }

    void fraction(const Fraction& fraction) {
        const double small = height_ * kFractionFigure;
        const double over = metrics_.width(fraction.numerator, small, isBold_);
        const double under = metrics_.width(fraction.denominator, small, isBold_);
        const double bar = std::max(over, under) + 2.0 * kBarOverhang * height_;
        layout_.width += (fraction.followsWhole ? 0.08 : 0.0) * height_;
        const double x = layout_.width;
        const double middle = -height_ / 2.0;
        const double gap = kBarGap * height_;
        layout_.runs.push_back(
            {std::string(fraction.numerator), {x + (bar - over) / 2.0, middle - gap}, small});
        layout_.runs.push_back({std::string(fraction.denominator),
                                {x + (bar - under) / 2.0, middle + gap + small},
                                small});
        layout_.bars.push_back({{x, middle}, {x + bar, middle}});
        layout_.width += bar;
        layout_.ascent = std::max(layout_.ascent, height_ / 2.0 + gap + small);
        layout_.descent = std::max(layout_.descent, gap + small - height_ / 2.0);
    }

    TextLayout take() { return std::move(layout_); }

  private:
    void run(std::string_view text) {
        if (text.empty()) {
            return;
        }
        std::string plain(text);
        for (std::size_t at = plain.find(kNoBreakSpace); at != std::string::npos;
             at = plain.find(kNoBreakSpace)) {
            plain.replace(at, kNoBreakSpace.size(), " ");
        }
        const bool hasDescender = plain.find_first_of("gjpqy,;()Q/[]") != std::string::npos;
        layout_.descent = std::max(layout_.descent, hasDescender ? kDescender * height_ : 0.0);
        const double width = metrics_.width(plain, height_, isBold_);
        layout_.runs.push_back({std::move(plain), {layout_.width, 0.0}, height_});
        layout_.width += width;
    }

    // The lettering has no sign for 'nearly': two swung dashes, one over the other.
    void nearly() {
        const double lift = 0.13 * height_;
        layout_.runs.push_back({"~", {layout_.width, -lift}, height_});
        layout_.runs.push_back({"~", {layout_.width, lift}, height_});
        layout_.width += metrics_.width("~", height_, isBold_);
    }

    double height_;
    bool isBold_;
    const TextMetrics& metrics_;
    TextLayout layout_;
};

}  // namespace

TextLayout layOutText(std::string_view text,
                      double height,
                      bool isBold,
                      const TextMetrics& metrics) {
    Setter setter(height, isBold, metrics);
    std::size_t at = 0;
    while (const std::optional<Fraction> fraction = findFraction(text, at)) {
        setter.plain(text.substr(at, fraction->from - at));
        setter.fraction(*fraction);
        at = fraction->end;
    }
    setter.plain(text.substr(at));
    return setter.take();
}

}  // namespace shoulderline
