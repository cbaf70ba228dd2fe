#include "app/scale_text.h"

#include <charconv>
#include <string>

namespace shoulderline {

namespace {

// A whole number from 1 to 1000 that is all of `text`; 0 where it is none.
int wholeOf(std::string_view text) {
    constexpr int kGreatest = 1000;
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool isWhole = error == std::errc() && end == text.data() + text.size();
    return isWhole && value >= 1 && value <= kGreatest ? value : 0;
}

}  // namespace

Result<double> readScale(std::string_view text) {
    if (text == "fit") {
        return 0.0;
    }
    const std::size_t colon = text.find(':');
    const int drawing = colon == std::string_view::npos ? 0 : wholeOf(text.substr(0, colon));
    const int wood = colon == std::string_view::npos ? 0 : wholeOf(text.substr(colon + 1));
    if (drawing == 0 || wood == 0) {
        return fail(ErrorCode::BadText,
                    "'" + std::string(text) +
                        "' is not a scale: 1:1, 1:5, 2:1 and the like, or fit, is expected.",
                    "--scale");
    }
    return static_cast<double>(drawing) / wood;
}

}  // namespace shoulderline
