#include "core/measure/length.h"

namespace shoulderline {

namespace {
constexpr double kSameMultiple = 1e-6;  // in millimetres: a nanometre
}

Length snapNearest(Length value, Length grid) {
    return grid.mm() > 0 ? grid * std::floor(value / grid + 0.5) : value;
}

Length snapDown(Length value, Length grid) {
    return grid.mm() > 0 ? grid * std::floor((value.mm() + kSameMultiple) / grid.mm()) : value;
}

Length snapUp(Length value, Length grid) {
    return grid.mm() > 0 ? grid * std::ceil((value.mm() - kSameMultiple) / grid.mm()) : value;
}

}  // namespace shoulderline
