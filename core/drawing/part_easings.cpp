#include "core/drawing/part_easings.h"

#include <algorithm>

#include "core/drawing/hatching.h"
#include "core/drawing/part_sizing.h"
#include "core/resolve/end_words.h"

namespace shoulderline {

namespace {

bool isOnBackEdge(Arris at) {
    return at == Arris::FaceSideBackEdge || at == Arris::BackSideBackEdge;
}

// Whether its lowest arris in the view lies on the back edge.
bool reachesBackEdge(Arris at) {
    return at != Arris::FaceSideFaceEdge && at != Arris::BackSideFaceEdge;
}

// How far down the view the wood of the face side ends at `x` along it.
double lowerEdgeAt(const ResolvedPart& part, const PartView& view, double x) {
    double lower = 0.0;
    for (const Span& wood : spansInside({part.body.face.flatten().points}, {0, 1}, {1, 0}, x)) {
        lower = std::max(lower, wood.to);
    }
    return lower > 0.0 ? lower : view.size.y;
}

// Where the note's leader ends: on the arris, at a third of it; around an end in its middle. Of
// several arrises on the lowest, as the notes stand under the view.
Vec2 targetOf(const ResolvedEasing& easing, const ResolvedPart& part, const PartView& view) {
    constexpr double kShare = 1.0 / 3.0;
    const double middle = view.size.y / 2.0;
    if (easing.at == Arris::StartEnd) {
        return {0.0, middle};
    }
    if (easing.at == Arris::FarEnd) {
        return {view.size.x, middle};
    }
    const double from = easing.from ? easing.from->mm() : 0.0;
    const double to = easing.to ? easing.to->mm() : view.size.x;
    const double in = std::min(easing.second.mm(), view.size.y) / 2.0;
    const double at = from + (to - from) * kShare;
    return {at, reachesBackEdge(easing.at) ? lowerEdgeAt(part, view, at) - in : in};
}

void addStops(const ResolvedEasing& easing, SizeWriter& writer) {
    const double depth = isOnBackEdge(easing.at) ? writer.view.size.y : 0.0;
    const auto add = [&](double at, const char* of) {
        NeededSize size{0.0, at, 0.0, depth, {}, 0.0, of, writer.subject};
        size.mayRun = true;
        writer.along(std::move(size));
    };
    if (easing.from) {
        add(easing.from->mm(), "easing begins");
    }
    if (easing.to) {
        add(easing.to->mm(), "easing ends");
    }
}

}  // namespace

std::string easingText(const ResolvedEasing& easing, const LengthStyle& lengths) {
    const std::string size = letterLength(easing.size, lengths);
    const bool isEven = isSameSize(easing.size.mm(), easing.second.mm());
    const std::string both =
        isEven ? size : size + " \u00d7 " + letterLength(easing.second, lengths);
    const std::string kind(wordFor(easing.kind));
    switch (easing.kind) {
        case EasingKind::Chamfer:
            return kind + " " + both;
        case EasingKind::RoundOver:
        case EasingKind::Cove:
            return kind + (isEven ? " R " : " ") + both;
        case EasingKind::Pyramid:
            break;
    }
    return kind + " " + size + " high";
}

void addEasingSizes(SizeWriter& writer) {
    if (writer.view.face != Face::FaceSide) {
        return;
    }
    for (const ResolvedEasing& easing : writer.part.easings) {
        NeededNote note;
        note.subject = writer.subject;
        note.target = targetOf(easing, writer.part, writer.view);
        note.lines.push_back(easingText(easing, writer.piece.style));
        note.lines.push_back(arrisWordOn(writer.part, easing.at));
        if (easing.from || easing.to) {
            note.lines.push_back("stopped, run out over " + writer.shown(easing.runOut.mm()));
            addStops(easing, writer);
        }
        if (!easing.note.empty()) {
            note.lines.push_back(easing.note);
        }
        writer.note(std::move(note));
    }
}

}  // namespace shoulderline
