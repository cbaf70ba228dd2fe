#include "core/joint/joint.h"

namespace shoulderline {

std::string JointForm::words() const {
    std::string text(wordFor(kind));
    for (const JointFeature feature : features) {
        text += ", ";
        text += wordFor(feature);
    }
    return text;
}

}  // namespace shoulderline
