#include "core/drawing/rods.h"

#include <algorithm>
#include <cmath>

#include "core/resolve/frames.h"

namespace shoulderline {

int axisOf(RodKind kind) {
    switch (kind) {
        case RodKind::Heights:
            return 2;
        case RodKind::Widths:
            return 0;
        case RodKind::Depths:
            return 1;
    }
    return 2;
}

namespace {

// Which part gives a place its name where several lie on it: lower goes first.
int importanceOf(Role role) {
    switch (role) {
        case Role::Seat:
        case Role::Arm:
            return 0;
        case Role::Rail:
            return 1;
        case Role::Post:
            return 2;
        case Role::Stretcher:
            return 3;
        case Role::Stile:
            return 4;
        case Role::Panel:
        case Role::Bracket:
        case Role::Cleat:
            return 5;
        case Role::Slat:
        case Role::Spindle:
            return 6;
    }
    return 6;
}

struct Mark {
    double at = 0.0;
    std::string name;
    int importance = 0;
    std::size_t part = 0;
    bool isShoulder = false;
};

// How low and how high a part comes that leans.
void addReach(const ResolvedPart& part, std::size_t index, std::vector<Mark>& marks) {
    const int axis = axisOf(RodKind::Heights);
    const Box box = boundsInSpace(part);
    const std::string& name = part.number > 0 ? part.name : part.of;
    for (const bool high : {false, true}) {
        marks.push_back({high ? box.max[axis] : box.min[axis],
                         name + ", " + std::string(wordFor(sideOf(axis, high))),
                         importanceOf(part.role),
                         index,
                         false});
    }
}

void addMarks(const ResolvedPiece& resolved,
              std::size_t index,
              RodKind kind,
              std::vector<Mark>& marks) {
    const ResolvedPart& part = resolved.parts[index];
    const std::optional<Frame> frame = squared(part.frame);
    const int axis = axisOf(kind);
    if (!frame) {
        if (kind == RodKind::Heights) {
            addReach(part, index, marks);
        }
        return;
    }
    const Box box = frame->outerBounds(part.bodyBox());
    const std::string& name = kind == RodKind::Widths || part.number > 0 ? part.name : part.of;
    const bool runsAlong = std::abs(frame->x[axis]) > 0.5;
    for (const bool high : {false, true}) {
        const bool atStart = (frame->x[axis] > 0.0) != high;
        const bool isShoulder = runsAlong && (atStart ? part.startTenon : part.farTenon).mm() > 0.0;
        const std::string side(isShoulder ? std::string_view("shoulder")
                                          : wordFor(sideOf(axis, high)));
        marks.push_back({high ? box.max[axis] : box.min[axis],
                         name + ", " + side,
                         importanceOf(part.role),
                         index,
                         isShoulder});
    }
}

void addTo(RodLine& line, const Mark& mark) {
    if (line.name.empty()) {
        line.name = mark.name;
    } else if (line.name != mark.name &&
               std::find(line.others.begin(), line.others.end(), mark.name) == line.others.end()) {
        line.others.push_back(mark.name);
    }
    if (std::find(line.parts.begin(), line.parts.end(), mark.part) == line.parts.end()) {
        line.parts.push_back(mark.part);
    }
    line.isShoulder = line.isShoulder || mark.isShoulder;
}

}  // namespace

Rod rodOf(const Piece&, const ResolvedPiece& resolved, RodKind kind) {
    std::vector<Mark> marks;
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        addMarks(resolved, i, kind, marks);
    }
    std::stable_sort(
        marks.begin(), marks.end(), [](const Mark& a, const Mark& b) { return a.at < b.at; });

    Rod rod;
    rod.kind = kind;
    for (std::size_t first = 0; first < marks.size();) {
        std::size_t end = first;
        while (end < marks.size() && marks[end].at - marks[first].at <= kLengthTolerance.mm()) {
            ++end;
        }
        const auto begin = marks.begin() + static_cast<std::ptrdiff_t>(first);
        const auto last = marks.begin() + static_cast<std::ptrdiff_t>(end);
        std::stable_sort(
            begin, last, [](const Mark& a, const Mark& b) { return a.importance < b.importance; });
        RodLine line;
        line.at = begin->at;
        std::for_each(begin, last, [&](const Mark& mark) { addTo(line, mark); });
        rod.lines.push_back(std::move(line));
        first = end;
    }
    if (!rod.lines.empty()) {
        rod.from = rod.lines.front().at;
        rod.to = rod.lines.back().at;
    }
    if (kind == RodKind::Heights) {
        rod.from = std::min(rod.from, 0.0);  // heights are from the floor
    }
    return rod;
}

}  // namespace shoulderline
