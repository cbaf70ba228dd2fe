#include "core/joint/joint.h"

namespace shoulderline {

std::string JointForm::words() const {
    std::string text;
    for (const JointFeature feature : features) {
        text += text.empty() ? "" : ", ";
        text += wordFor(feature);
    }
    return text + (text.empty() ? "" : " ") + std::string(wordFor(kind));
}

}  // namespace shoulderline
