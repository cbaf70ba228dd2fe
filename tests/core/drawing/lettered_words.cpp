// What the notes and tables of a part's sheets say.
#include <algorithm>
#include <cmath>

#include "core/drawing/mortise_rows.h"
#include "core/drawing/part_sizes.h"
#include "core/measure/length_text.h"
#include "core/resolve/joined_grooves.h"
#include "tests/core/drawing/lettered_part.h"

namespace shoulderline::testing {

namespace {

bool mentions(const std::string& text, const char* words) {
    return text.find(words) != std::string::npos;
}

// A length along the way into a face: its axis, and whether it counts from the far side.
struct Into {
    int axis = 0;
    bool isFromFar = false;
};
Into intoOf(Face face) {
    switch (face) {
        case Face::FaceSide:
            return {2, false};
        case Face::BackSide:
            return {2, true};
        case Face::FaceEdge:
            return {1, false};
        case Face::BackEdge:
            return {1, true};
        case Face::StartEnd:
            return {0, false};
        case Face::FarEnd:
            return {0, true};
    }
    return {};
}

}  // namespace

std::optional<LetteredPart::Figure> LetteredPart::figureOf(std::string text) {
    Figure figure;
    const std::string whole = text;
    if (const std::size_t times = text.find(" \u00d7 "); times != std::string::npos) {
        figure.count = std::stoi(text);
        text = text.substr(times + 4);
    }
    if (text.rfind("\u2300", 0) == 0) {
        text = text.substr(3);
    }
    if (const std::size_t more = text.find(", eight sides"); more != std::string::npos) {
        text = text.substr(0, more);
    }
    // "4 × ≈3 27/32 (15 3/8)": all four together are nearer than one of them.
    bool isSum = false;
    if (const std::size_t sum = text.find(" ("); sum != std::string::npos) {
        text = text.substr(sum + 2, text.size() - sum - 3);
        isSum = true;
    } else if (text.rfind('(', 0) == 0) {
        text = text.substr(1, text.size() - 2);
    }
    const Result<Length> read = readLength(text, unit_);
    if (!read) {
        unread_.push_back(whole);
        return std::nullopt;
    }
    figure.mm = read->mm() / (isSum ? figure.count : 1);
    return figure;
}

// "2 × bore ⌀3/8, 1/2 deep", "groove 1/4 wide, through", "3/8 from face side".
void LetteredPart::readNote(const View& view, const Note& note) {
    const double x = view.at(0, note.target.x);
    const double across = view.at(1, note.target.y);
    const int acrossAxis = view.axisOf(1);
    const Into into = intoOf(view.face);
    struct Hollow {
        Box box;
        bool isRound;
        bool isThrough;
        const ResolvedHole* hole = nullptr;
    };
    std::vector<Hollow> hollows;
    for (const MortiseSolid& m : part_.mortises) {
        if (opensOn(m, view.face)) {
            hollows.push_back(
                {setOutBoxOf(resolved_, part_, m), isBored(resolved_, m), m.isThrough});
        }
    }
    const std::vector<ResolvedCut> made = groovesJoined(part_.cuts);
    for (const ResolvedCut& c : made) {
        if (c.hole && c.hole->isForHead) {
            continue;  // told with its screw hole
        }
        if (c.face == view.face || (c.isThrough && oppositeOf(c.face) == view.face)) {
            hollows.push_back(
                {setOutBoxOf(c), c.isSetOutByMiddle(), c.isThrough, c.hole ? &*c.hole : nullptr});
        }
    }
    const auto isIn = [](double at, double low, double high) {
        return at > low - kHere && at < high + kHere;
    };
    // Of a hole within another the one that the words fit.
    const auto says = [&](const char* words) {
        return std::any_of(note.lines.begin(), note.lines.end(), [&](const std::string& line) {
            return mentions(line, words);
        });
    };
    const auto targeted = std::find_if(hollows.begin(), hollows.end(), [&](const Hollow& h) {
        const int first = view.axisOf(0);
        return isIn(x, h.box.min[first], h.box.max[first]) &&
               isIn(across, h.box.min[acrossAxis], h.box.max[acrossAxis]) &&
               says("through") == h.isThrough;
    });
    if (targeted == hollows.end()) {
        return;
    }
    const Vec3 size = targeted->box.size();
    const double place = targeted->box.min[acrossAxis];
    // Of two, one at each edge, the words are of both: the second lies as far from its own.
    const double blank = part_.bodyBox().max[acrossAxis];
    const bool areTwo = says("one at each edge") || says("one at each side");
    const auto isSecond = [&](const Box& box) {
        return areTwo && std::abs(place + box.max[acrossAxis] - blank) < kHere;
    };
    for (const Hollow& hollow : hollows) {
        const Box& box = hollow.box;
        // Holes in an end have each its place by dimensions.
        const bool isInEnd = isEnd(view.face) && hollow.isRound;
        const bool isAlike =
            norm(box.size() - size) < kHere &&
            (isInEnd || isSecond(box) || std::abs(box.min[acrossAxis] - place) < kHere) &&
            hollow.isRound == targeted->isRound;
        if (!isAlike) {
            continue;
        }
        readTurned(view.face, box, note.lines);
        for (const std::string& line : note.lines) {
            if (line.rfind("counterbore", 0) == 0 || line.rfind("countersunk", 0) == 0) {
                readHead(hollow.hole, view.face, line);
                continue;
            }
            // Each phrase between commas.
            for (std::size_t at = 0; at < line.size();) {
                const std::size_t end = std::min(line.find(", ", at), line.size());
                std::string phrase = line.substr(at, end - at);
                at = end + 2;
                const auto ending = [&](const std::string& words) -> std::optional<double> {
                    if (phrase.size() <= words.size() ||
                        phrase.compare(phrase.size() - words.size(), words.size(), words) != 0) {
                        return std::nullopt;
                    }
                    std::string number = phrase.substr(0, phrase.size() - words.size());
                    const std::size_t times = number.find(" \u00d7 ");
                    number = times == std::string::npos ? number : number.substr(times + 4);
                    const std::size_t digit = number.find_first_of("0123456789");
                    const std::size_t about = number.find("\u2248");
                    if (std::min(digit, about) == std::string::npos) {
                        return std::nullopt;  // "rabbet across"
                    }
                    number = number.substr(std::min(digit, about));
                    const std::optional<Figure> figure = figureOf(number);
                    return figure ? std::optional(figure->mm) : std::nullopt;
                };
                const auto from = [&](int axis, double mm) {
                    const bool byMiddle = hollow.isRound || phrase.rfind("middle ", 0) == 0;
                    const double to = byMiddle ? box.centre()[axis] : box.min[axis];
                    addFigure(axis, 0.0, to, mm);
                };
                if (const std::size_t slot = phrase.find("slot ");
                    slot != std::string::npos && hollow.hole != nullptr) {
                    readSlot(box, into.axis, phrase.substr(slot + 5));
                } else if (const std::size_t round = phrase.find("\u2300");
                           round != std::string::npos) {
                    const std::optional<Figure> d = figureOf(phrase.substr(round));
                    for (int axis = 0; axis < 3 && d; ++axis) {
                        if (axis != into.axis) {
                            addFigure(axis, box.min[axis], box.centre()[axis], d->mm / 2.0);
                            addFigure(axis, box.centre()[axis], box.max[axis], d->mm / 2.0);
                        }
                    }
                } else if (const auto bit = ending(" bit"); bit && hollow.isRound) {
                    for (int axis = 0; axis < 3; ++axis) {
                        if (axis != into.axis) {
                            addFigure(axis, box.min[axis], box.centre()[axis], *bit / 2.0);
                            addFigure(axis, box.centre()[axis], box.max[axis], *bit / 2.0);
                        }
                    }
                } else if (const auto deep = ending(" deep")) {
                    addFigure(into.axis,
                              into.isFromFar ? box.max[into.axis] : box.min[into.axis],
                              into.isFromFar ? box.min[into.axis] : box.max[into.axis],
                              *deep);
                } else if (const auto sloping = ending(" deep along it")) {
                    addFigure(into.axis,
                              into.isFromFar ? box.max[into.axis] : box.min[into.axis],
                              into.isFromFar ? box.min[into.axis] : box.max[into.axis],
                              *sloping);
                } else if (const auto square = ending(" square")) {
                    for (int axis = 0; axis < 3; ++axis) {
                        if (axis != into.axis) {
                            addFigure(axis, box.min[axis], box.centre()[axis], *square / 2.0);
                            addFigure(axis, box.centre()[axis], box.max[axis], *square / 2.0);
                        }
                    }
                } else if (const auto wide = ending(" wide")) {
                    addFigure(acrossAxis, box.min[acrossAxis], box.max[acrossAxis], *wide);
                } else if (const auto lying = ending(" across")) {
                    addFigure(acrossAxis, box.min[acrossAxis], box.max[acrossAxis], *lying);
                } else if (const auto thick = ending(" in the thickness")) {
                    addFigure(2, box.min.z, box.max.z, *thick);
                } else if (const auto broad = ending(" in the width")) {
                    addFigure(1, box.min.y, box.max.y, *broad);
                } else if (const auto edge = ending(" from face edge")) {
                    from(1, *edge);
                } else if (const auto ofBlank = ending(" from the blank's edge")) {
                    from(1, *ofBlank);
                } else if (const auto under = ending(" from the blank's face")) {
                    from(2, *under);
                } else if (const auto side = ending(" from face side")) {
                    from(2, *side);
                }
            }
        }
    }
}

// "5/16 \u00d7 1 7/8, turned 9.1\u00b0, 1 in 6.3," and "to the right away from the face edge".
void LetteredPart::readTurned(Face face, const Box& box, const std::vector<std::string>& lines) {
    const std::string times = " \u00d7 ";
    const std::string word = ", turned ";
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        const std::size_t at = lines[i].find(word);
        const std::size_t by = lines[i].find(times);
        if (at == std::string::npos || by == std::string::npos) {
            continue;
        }
        const std::optional<Figure> shorter = figureOf(lines[i].substr(0, by));
        const std::optional<Figure> longer =
            figureOf(lines[i].substr(by + times.size(), at - by - times.size()));
        const double degrees = std::stod(lines[i].substr(at + word.size()));
        const bool isAway = lines[i + 1].rfind("to the right away from", 0) == 0;
        if (shorter && longer) {
            turned_.push_back(
                {face, box.centre(), shorter->mm, longer->mm, isAway ? degrees : -degrees});
        }
    }
}

// "counterbore \u230010, 66 deep", slotted "counterbore 10 \u00d7 14.5, 66 deep": the wider hole
// over a screw hole.
void LetteredPart::readHead(const ResolvedHole* hole, Face face, const std::string& line) {
    const Into into = intoOf(face);
    const std::string times = " \u00d7 ";
    const std::size_t first = line.find_first_of("0123456789");
    const std::size_t by = line.find(times);
    const std::size_t comma = line.find(", ");
    const std::size_t deep = line.find(" deep");
    const std::optional<Figure> wide = figureOf(line.substr(first, std::min(by, comma) - first));
    const std::optional<Figure> over =
        by == std::string::npos
            ? wide
            : figureOf(line.substr(by + times.size(), comma - by - times.size()));
    const std::optional<Figure> depth = deep == std::string::npos
                                            ? std::nullopt
                                            : figureOf(line.substr(comma + 2, deep - comma - 2));
    for (const ResolvedCut& cut : part_.cuts) {
        if (hole == nullptr || !wide || !over || !cut.hole || !cut.hole->isForHead ||
            cut.hole->cut != hole->cut) {
            continue;
        }
        const Box box = setOutBoxOf(cut);
        for (int axis = 0; axis < 3; ++axis) {
            if (axis != into.axis) {
                const bool isAlongSlot = std::abs(cut.hole->slotAlong[axis]) > 0.5;
                const double half = (isAlongSlot ? over->mm : wide->mm) / 2.0;
                addFigure(axis, box.min[axis], box.centre()[axis], half);
                addFigure(axis, box.centre()[axis], box.max[axis], half);
            }
        }
        if (depth) {
            addFigure(into.axis,
                      into.isFromFar ? box.max[into.axis] : box.min[into.axis],
                      into.isFromFar ? box.min[into.axis] : box.max[into.axis],
                      depth->mm);
        }
    }
}

// "5 \u00d7 9.5 along the part".
void LetteredPart::readSlot(const Box& box, int intoAxis, const std::string& words) {
    const std::string times = " \u00d7 ";
    const std::size_t at = words.find(times);
    const bool isAlong = mentions(words, " along the part");
    const std::size_t end = words.find(isAlong ? " along" : " across");
    const std::optional<Figure> wide = figureOf(words.substr(0, at));
    const std::optional<Figure> along =
        figureOf(words.substr(at + times.size(), end - at - times.size()));
    for (int axis = 0; axis < 3 && wide && along; ++axis) {
        if (axis != intoAxis) {
            const double half = ((axis == 0) == isAlong ? along->mm : wide->mm) / 2.0;
            addFigure(axis, box.min[axis], box.centre()[axis], half);
            addFigure(axis, box.centre()[axis], box.max[axis], half);
        }
    }
}

Box setOutBoxOf(const ResolvedCut& cut) {
    if (!cut.hole || !cut.exact) {
        return cut.box;
    }
    const ResolvedHole& hole = *cut.hole;
    const int into = cut.face == Face::StartEnd || cut.face == Face::FarEnd     ? 0
                     : cut.face == Face::FaceEdge || cut.face == Face::BackEdge ? 1
                                                                                : 2;
    const double more = std::max(0.0, (hole.slotLength.value - hole.slotWidth).mm()) / 2.0;
    Box box;
    for (int axis = 0; axis < 3; ++axis) {
        const double half = hole.diameter.mm() / 2.0 + std::abs(hole.slotAlong[axis]) * more;
        box.min[axis] = hole.mouth[axis] - half;
        box.max[axis] = hole.mouth[axis] + half;
    }
    const double end = hole.mouth[into] + (hole.into[into] > 0.0 ? 1.0 : -1.0) * hole.depth.mm();
    box.min[into] = std::min(hole.mouth[into], end);
    box.max[into] = std::max(hole.mouth[into], end);
    return box;
}

Box setOutBoxOf(const ResolvedPiece& resolved,
                const ResolvedPart& part,
                const MortiseSolid& mortise) {
    const ResolvedJoint& joint = resolved.joints[mortise.joint];
    const Vec3 axis = part.frame.directionToLocal(joint.frame.x);
    const Into into = intoOf(mortise.face);
    const bool isSquareIn = std::abs(axis[into.axis]) > 1.0 - 1e-9;
    if (isSquareIn || !isDepthAlongIt(resolved, part, mortise)) {
        return setOutBox(mortise);
    }
    const Vec3 mouth = mouthOf(mortise).centre();
    const double half = joint.mortise.width.value.mm() / 2.0;
    const double deep = mortise.solid().extentAlong(axis).max - dot(mouth, axis);
    const double face = into.isFromFar ? part.bodyBox().max[into.axis] : 0.0;
    Box box{mouth - Vec3{half, half, half}, mouth + Vec3{half, half, half}};
    box = isBored(resolved, mortise) ? box : setOutBox(mortise);
    box.min[into.axis] = into.isFromFar ? face - deep : face;
    box.max[into.axis] = into.isFromFar ? face : face + deep;
    return box;
}

void LetteredPart::readOutline(Face face, const std::vector<std::string>& words) {
    // The heading and the heads of three columns; then the columns one after another, the numbers
    // first.
    std::vector<std::string> cells;
    for (const std::string& word : words) {
        if (word.rfind("outline of", 0) != 0 && word.rfind("from ", 0) != 0 && word != "then") {
            cells.push_back(word);
        }
    }
    const std::size_t rows = cells.size() / 4;
    for (std::size_t i = 0; i < rows; ++i) {
        Point point;
        if (const std::optional<Figure> along = figureOf(cells[rows + i])) {
            point.along = along->mm;
        }
        if (const std::optional<Figure> across = figureOf(cells[2 * rows + i])) {
            point.across = across->mm;
        }
        const std::string& then = cells[3 * rows + i];
        if (then.rfind("arc R ", 0) == 0) {
            const std::size_t end = then.rfind(", ");
            const std::optional<Figure> radius = figureOf(then.substr(6, end - 6));
            point.radius = radius ? (mentions(then, "rises") ? 1.0 : -1.0) * radius->mm : 0.0;
        }
        constexpr std::string_view kOver = " over a chord of ";
        if (const std::size_t over = then.find(kOver); over != std::string::npos) {
            const std::size_t bow = then.find(", ") + 2;
            const std::size_t figure = then.find(' ', bow) + 1;
            const std::optional<Figure> rise = figureOf(then.substr(figure, over - figure));
            const std::optional<Figure> chord = figureOf(then.substr(over + kOver.size()));
            if (rise && chord && rise->mm > 0.0) {
                const double half = chord->mm / 2.0;
                point.radius = (mentions(then, "rises") ? 1.0 : -1.0) *
                               (half * half + rise->mm * rise->mm) / (2.0 * rise->mm);
            }
        }
        outlines_[face].push_back(point);
    }
}

}  // namespace shoulderline::testing
