#include "core/drawing/pattern_holes.h"

#include <algorithm>

#include "core/drawing/hole_views.h"
#include "core/resolve/frames.h"
#include "core/resolve/holes.h"

namespace shoulderline {

namespace {

// Holes that are made alike, and where.
struct AlikeHoles {
    const ResolvedCut* first = nullptr;
    std::vector<Vec2> places;
};

// The middle of the mouth on the face of the pattern; of a blind one from behind, of that behind.
Vec2 mouthOn(const ResolvedCut& cut, const PartView& view) {
    const ResolvedHole& hole = *cut.hole;
    const bool comesOut = cut.isThrough && cut.face != view.face;
    return view.toPlane(hole.mouth + hole.into * (comesOut ? hole.depth.mm() : 0.0));
}

}  // namespace

std::vector<std::string> holeWordsOf(const ResolvedPart& part,
                                     const PartView& view,
                                     const std::string& datum,
                                     const LengthStyle& style) {
    std::vector<ResolvedCut> bores;
    for (const ResolvedCut& cut : part.cuts) {
        // A joint's own are bored by its sheet.
        const bool isPlain = !cut.hole && !cut.exact && !cut.joint && cut.kind == CutKind::Bore;
        bores.push_back(cut);
        bores.back().hole = isPlain ? roundHole(cut) : cut.hole;  // a pin's, a peg's
    }
    std::vector<AlikeHoles> alike;
    for (const ResolvedCut& cut : bores) {
        const bool isHere = cut.face == view.face || cut.face == oppositeOf(view.face);
        if (!cut.hole || cut.hole->isForHead || !isHere) {
            continue;
        }
        auto found = std::find_if(alike.begin(), alike.end(), [&](const AlikeHoles& one) {
            return one.first->face == cut.face && one.first->isThrough == cut.isThrough &&
                   isMadeAlike(*one.first->hole, *cut.hole);
        });
        if (found == alike.end()) {
            alike.push_back({&cut, {}});
            found = alike.end() - 1;
        }
        found->places.push_back(mouthOn(cut, view));
    }
    const auto shown = [&](double mm) { return letterLength(Length::mm(mm), style); };
    std::vector<std::string> lines;
    for (const AlikeHoles& one : alike) {
        const std::size_t count = one.places.size();
        std::string text;
        for (const std::string& line : holeLines(
                 part, *one.first, count > 1 ? std::to_string(count) + " \u00d7 " : "", style)) {
            text += (text.empty() ? "" : ", ") + line;
        }
        if (one.first->face != view.face) {
            text += ", from the " + std::string(wordFor(one.first->face));
        }
        for (std::size_t i = 0; i < count; ++i) {
            text += (i == 0 ? ":  " : ";  ") + shown(one.places[i].x) + " along, " +
                    shown(one.places[i].y) + " from the " + datum;
        }
        lines.push_back(std::move(text));
    }
    return lines;
}

}  // namespace shoulderline
