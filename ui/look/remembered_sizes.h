#pragma once

#include <QFont>
#include <QMargins>
#include <QSize>
#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

namespace shoulderline {

// What the sizes of a piece of text hang on.
struct TextLook {
    QString text;
    QFont font;
    QMargins margins = {};
    bool wraps = false;
    friend bool operator==(const TextLook&, const TextLook&) = default;
};

// The sizes of a widget that shows one text, kept until its text or look changes. A column asks
// each of its wrapping widgets for heights at several widths whenever one of them changes, and
// setting the text anew for each answer takes longer than all else that a keystroke sets off.
class RememberedSizes {
  public:
    // Forgets what was of another look.
    void look(TextLook now) {
        if (now != look_) {
            *this = {};
            look_ = std::move(now);
        }
    }

    template <class Work>
    int height(int width, const Work& work) {
        const auto it = std::find_if(heights_.begin(), heights_.end(), [width](const auto& one) {
            return one.first == width;
        });
        if (it != heights_.end()) {
            return it->second;
        }
        constexpr std::size_t kWidths = 16;  // while a window is dragged wider, each is new
        if (heights_.size() == kWidths) {
            heights_.clear();
        }
        heights_.emplace_back(width, work());
        return heights_.back().second;
    }
    template <class Work>
    QSize hint(const Work& work) {
        return kept(hint_, work);
    }
    template <class Work>
    QSize minimum(const Work& work) {
        return kept(minimum_, work);
    }

  private:
    template <class Work>
    static QSize kept(std::optional<QSize>& size, const Work& work) {
        if (!size) {
            size = work();
        }
        return *size;
    }

    TextLook look_;
    std::vector<std::pair<int, int>> heights_;  // at widths
    std::optional<QSize> hint_;
    std::optional<QSize> minimum_;
};

}  // namespace shoulderline
