#include "core/resolve/joined_grooves.h"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace shoulderline {

namespace {

bool isOneGroove(const ResolvedCut& a, const ResolvedCut& b) {
    const double slack = kLengthTolerance.mm();
    const auto isSame = [&](double Vec3::*axis) {
        return std::abs(a.box.min.*axis - b.box.min.*axis) < slack &&
               std::abs(a.box.max.*axis - b.box.max.*axis) < slack;
    };
    const bool meets = a.box.min.x <= b.box.max.x + slack && b.box.min.x <= a.box.max.x + slack;
    return a.kind == CutKind::Groove && b.kind == CutKind::Groove && a.face == b.face &&
           a.isThrough == b.isThrough && !a.exact && !b.exact && isSame(&Vec3::y) &&
           isSame(&Vec3::z) && meets;
}

// "for lower panel and upper panel".
void addNote(ResolvedCut& groove, const std::string& note) {
    constexpr std::string_view kFor = "for ";
    if (note == groove.note || note.empty()) {
        return;
    }
    const bool areBothFor = note.rfind(kFor, 0) == 0 && groove.note.rfind(kFor, 0) == 0;
    groove.note +=
        groove.note.empty() ? note : " and " + (areBothFor ? note.substr(kFor.size()) : note);
}

}  // namespace

std::vector<ResolvedCut> groovesJoined(const std::vector<ResolvedCut>& cuts) {
    std::vector<ResolvedCut> joined;
    for (const ResolvedCut& cut : cuts) {
        const auto same = std::find_if(joined.begin(), joined.end(), [&](const ResolvedCut& one) {
            return isOneGroove(one, cut);
        });
        if (same == joined.end()) {
            joined.push_back(cut);
            continue;
        }
        same->box.min.x = std::min(same->box.min.x, cut.box.min.x);
        same->box.max.x = std::max(same->box.max.x, cut.box.max.x);
        addNote(*same, cut.note);
    }
    return joined;
}

}  // namespace shoulderline
