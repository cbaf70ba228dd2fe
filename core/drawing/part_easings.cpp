#include "core/drawing/part_easings.h"

#include <algorithm>

#include "core/drawing/part_sizing.h"

namespace shoulderline {

namespace {

bool isOnBackEdge(Arris at) {
    return at == Arris::FaceSideBackEdge || at == Arris::BackSideBackEdge;
}

// Where the note's leader ends: on the arris, at a third of it; around an end in its middle.
Vec2 targetOf(const ResolvedEasing& easing, const PartView& view) {
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
    return {from + (to - from) * kShare, isOnBackEdge(easing.at) ? view.size.y - in : in};
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
        note.target = targetOf(easing, writer.view);
        note.lines.push_back(easingText(easing, writer.piece.style));
        note.lines.emplace_back(easing.at == Arris::AllAlong ? "all four arrises along it"
                                                             : wordFor(easing.at));
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
