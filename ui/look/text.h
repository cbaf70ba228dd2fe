#pragma once

#include <QString>
#include <string>
#include <string_view>

namespace shoulderline {

// Text of the core (UTF-8) for Qt, and back.
[[nodiscard]] inline QString qt(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
[[nodiscard]] inline std::string utf8(const QString& text) {
    return text.toStdString();
}

}  // namespace shoulderline
