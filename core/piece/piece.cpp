#include "core/piece/piece.h"

namespace shoulderline {

PartReference splitReference(std::string_view reference) {
    constexpr std::string_view kLeft = ", left";
    constexpr std::string_view kRight = ", right";
    if (reference.ends_with(kLeft)) {
        return {reference.substr(0, reference.size() - kLeft.size()), Hand::Left};
    }
    if (reference.ends_with(kRight)) {
        return {reference.substr(0, reference.size() - kRight.size()), Hand::Right};
    }
    return {reference, Hand::None};
}

const JointStatement* findJointStatement(const Piece& piece,
                                         std::string_view tenoned,
                                         std::string_view mortised) {
    for (const JointStatement& joint : piece.joints) {
        if (joint.tenoned == tenoned && joint.mortised == mortised) {
            return &joint;
        }
    }
    return nullptr;
}

}  // namespace shoulderline
