#include "tests/core/drawing/lettered_part.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/part_sections.h"
#include "core/drawing/part_views.h"
#include "core/measure/length_text.h"

namespace shoulderline::testing {

namespace {

constexpr double kHere = 0.02;  // mm of wood: places nearer than that are one

bool contains(const std::string& text, const char* words) {
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

// A view of a sheet, and how its millimetres lie in the part.
struct LetteredPart::View {
    Face face = Face::FaceSide;
    Vec2 corner;  // on the sheet, of the body
    double scale = 1.0;
    PartView seen;

    // What of the part lies at a place of the sheet along (0) or down (1) the view.
    [[nodiscard]] double at(int direction, double onSheet) const {
        const double v = (onSheet - (direction == 0 ? corner.x : corner.y)) / scale;
        const int axis = axisOf(direction);
        const Vec3 unit = axis == 0 ? Vec3{1, 0, 0} : axis == 1 ? Vec3{0, 1, 0} : Vec3{0, 0, 1};
        const Vec2 zero = seen.toPlane(Vec3{});
        const Vec2 one = seen.toPlane(unit);
        const double from = direction == 0 ? zero.x : zero.y;
        const double way = (direction == 0 ? one.x : one.y) - from;
        return (v - from) / way;
    }
    [[nodiscard]] int axisOf(int direction) const {
        if (isEnd(face)) {
            return direction == 0 ? 2 : 1;
        }
        const bool isEdge = face == Face::FaceEdge || face == Face::BackEdge;
        return direction == 0 ? 0 : isEdge ? 2 : 1;
    }
};

struct LetteredPart::Note {
    Vec2 target;
    std::vector<std::string> lines;
};

LetteredPart::LetteredPart(const std::vector<Sheet>& sheets,
                           const ResolvedPiece& resolved,
                           const ResolvedPart& part,
                           Unit unit)
    : resolved_(resolved), part_(part), unit_(unit) {
    for (const Sheet& sheet : sheets) {
        readSheet(sheet);
    }
    spread();
}

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

void LetteredPart::readSheet(const Sheet& sheet) {
    std::optional<View> view;
    std::optional<Note> note;
    std::optional<Face> table;
    std::vector<std::string> words;
    std::vector<std::pair<View, Note>> notes;
    const auto faceNamed = [](const std::string& name) {
        std::optional<Face> found;
        for (const Face face : {Face::FaceSide,
                                Face::BackSide,
                                Face::FaceEdge,
                                Face::BackEdge,
                                Face::StartEnd,
                                Face::FarEnd}) {
            const std::string word = ", " + std::string(wordFor(face));
            if (name.size() > word.size() &&
                name.compare(name.size() - word.size(), word.size(), word) == 0) {
                found = face;
            }
        }
        return found;
    };
    for (std::size_t i = 0; i < sheet.ops.size(); ++i) {
        const Op& op = sheet.ops[i];
        if (const auto* group = std::get_if<BeginGroup>(&op)) {
            note.reset();
            const bool isPart = group->subject.kind == SubjectKind::Part;
            // The first thing drawn of a view is the blank of the body, of a section its outline.
            const auto* blank = std::get_if<Fill>(&sheet.ops[i + 1]);
            const std::optional<Face> face = faceNamed(group->name);
            if (face && isPart && blank != nullptr) {
                view = View{*face, blank->points[0], 1.0, partView(part_, *face)};
                view->scale = (blank->points[1].x - blank->points[0].x) / view->seen.size.x;
            } else if (const std::size_t at = group->name.find(", section ");
                       at != std::string::npos && isPart) {
                const SectionPlan plan(resolved_, part_);
                const std::string letter = group->name.substr(at + 10);
                const auto section = std::find_if(
                    plan.sections().begin(), plan.sections().end(), [&](const PartSection& s) {
                        return s.letter == letter;
                    });
                const auto* ring = std::get_if<Stroke>(&sheet.ops[i + 1]);
                const std::vector<std::vector<Vec2>> across = section == plan.sections().end()
                                                                  ? std::vector<std::vector<Vec2>>()
                                                                  : bodyAcross(part_, section->at);
                if (ring == nullptr || across.empty()) {
                    unread_.push_back(group->name);
                    continue;
                }
                Rect drawn{ring->points[0], ring->points[0]};
                Rect model{across[0][0], across[0][0]};
                for (const Vec2& p : ring->points) {
                    drawn.include(p);
                }
                for (const Vec2& p : across[0]) {
                    model.include(p);
                }
                view = View{Face::FarEnd, {}, 1.0, partView(part_, Face::FarEnd)};
                view->scale = drawn.size().x / model.size().x;
                view->corner = drawn.min - model.min * view->scale;
            } else if (group->name.rfind("outline of the ", 0) == 0) {
                table = faceNamed("x, " + group->name.substr(15));
                words.clear();
            }
        } else if (std::holds_alternative<EndGroup>(op)) {
            if (table) {
                readOutline(*table, words);
                table.reset();
            }
            if (note && view) {
                notes.emplace_back(*view, *note);
            }
            note.reset();
        } else if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
            if (view) {
                readDimension(*view, *dimension);
            }
        } else if (const auto* stroke = std::get_if<Stroke>(&op)) {
            if (stroke->role == LineRole::Dimension && !note && i > 0 &&
                std::holds_alternative<BeginGroup>(sheet.ops[i - 1])) {
                note = Note{stroke->points[0], {}};
            }
        } else if (const auto* text = std::get_if<TextOp>(&op)) {
            words.push_back(text->text);
            if (note) {
                note->lines.push_back(text->text);
            }
        }
    }
    const bool bothEnds = std::any_of(words.begin(), words.end(), [](const std::string& word) {
        return contains(word, "both ends");
    });
    for (auto& [seen, said] : notes) {
        readNote(seen, said);
        if (bothEnds && isEnd(seen.face)) {
            seen.face = oppositeOf(seen.face);
            readNote(seen, said);
        }
    }
}

std::size_t LetteredPart::placeAt(std::size_t axis, double at) {
    std::vector<Place>& places = places_[axis];
    const auto found = std::find_if(places.begin(), places.end(), [&](const Place& place) {
        return std::abs(place.at - at) < kHere;
    });
    if (found != places.end()) {
        return static_cast<std::size_t>(found - places.begin());
    }
    places.push_back({at, std::nullopt, {}});
    return places.size() - 1;
}

void LetteredPart::addFigure(int axis, double from, double to, double value) {
    const auto a = static_cast<std::size_t>(axis);
    const double length = to >= from ? value : -value;
    const std::size_t first = placeAt(a, from);
    const std::size_t second = placeAt(a, to);
    places_[a][first].steps.push_back({second, length});
    places_[a][second].steps.push_back({first, -length});
}

void LetteredPart::readDimension(const View& view, const DimensionOp& op) {
    const std::optional<Figure> figure = figureOf(op.text);
    if (!figure) {
        return;
    }
    const int direction = op.isTurned && !op.running ? 1 : 0;
    const auto along = [&](Vec2 p) { return direction == 0 ? p.x : p.y; };
    const int axis = view.axisOf(direction);
    const double from = view.at(direction, along(op.from));
    const double to = view.at(direction, along(op.to));
    if (op.text.rfind("\u2300", 0) == 0 || contains(op.text, "eight sides")) {
        // As wide the other way, about the same centre.
        const int other = view.axisOf(1 - direction);
        const double centre = view.at(1 - direction, direction == 0 ? op.from.y : op.from.x);
        const double half = std::abs(to - from) / 2.0;
        addFigure(axis, from, (from + to) / 2.0, figure->mm / 2.0);
        addFigure(axis, (from + to) / 2.0, to, figure->mm / 2.0);
        addFigure(other, centre - half, centre, figure->mm / 2.0);
        addFigure(other, centre, centre + half, figure->mm / 2.0);
        return;
    }
    if (op.of == "pitch") {
        for (int i = 0; i < figure->count; ++i) {
            addFigure(axis, from + (to - from) * i, from + (to - from) * (i + 1), figure->mm);
        }
        return;
    }
    addFigure(axis, from, to, figure->mm);
    lengths_.push_back({op.of, from, to, figure->mm});
    if (figure->count > 1) {  // all that are alike
        for (const MortiseSolid& mortise : part_.mortises) {
            const Box box = setOutBox(mortise);
            if (std::abs(box.size().x - std::abs(to - from)) < kHere) {
                addFigure(axis, box.min.x, box.max.x, figure->mm);
            }
        }
    }
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
    };
    std::vector<Hollow> hollows;
    for (const MortiseSolid& m : part_.mortises) {
        if (opensOn(m, view.face)) {
            hollows.push_back({setOutBox(m), isBored(resolved_, m), m.isThrough});
        }
    }
    for (const ResolvedCut& c : part_.cuts) {
        if (c.face == view.face || (c.isThrough && oppositeOf(c.face) == view.face)) {
            hollows.push_back({c.box, c.kind == CutKind::Bore, c.isThrough});
        }
    }
    const auto isIn = [](double at, double low, double high) {
        return at > low - kHere && at < high + kHere;
    };
    // Of a hole within another the one that the words fit.
    const auto says = [&](const char* words) {
        return std::any_of(note.lines.begin(), note.lines.end(), [&](const std::string& line) {
            return contains(line, words);
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
    for (const Hollow& hollow : hollows) {
        const Box& box = hollow.box;
        // Holes in an end have each its place by dimensions.
        const bool isInEnd = isEnd(view.face) && hollow.isRound;
        const bool isAlike = norm(box.size() - size) < kHere &&
                             (isInEnd || std::abs(box.min[acrossAxis] - place) < kHere) &&
                             hollow.isRound == targeted->isRound;
        if (!isAlike) {
            continue;
        }
        for (const std::string& line : note.lines) {
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
                    number = number.substr(std::min(digit, about));
                    const std::optional<Figure> figure = figureOf(number);
                    return figure ? std::optional(figure->mm) : std::nullopt;
                };
                const auto from = [&](int axis, double mm) {
                    const double to = hollow.isRound ? box.centre()[axis] : box.min[axis];
                    addFigure(axis, 0.0, to, mm);
                };
                if (const std::size_t round = phrase.find("\u2300"); round != std::string::npos) {
                    const std::optional<Figure> d = figureOf(phrase.substr(round));
                    for (int axis = 0; axis < 3 && d; ++axis) {
                        if (axis != into.axis) {
                            addFigure(axis, box.min[axis], box.centre()[axis], d->mm / 2.0);
                            addFigure(axis, box.centre()[axis], box.max[axis], d->mm / 2.0);
                        }
                    }
                } else if (const auto deep = ending(" deep")) {
                    addFigure(into.axis,
                              into.isFromFar ? box.max[into.axis] : box.min[into.axis],
                              into.isFromFar ? box.min[into.axis] : box.max[into.axis],
                              *deep);
                } else if (const auto wide = ending(" wide")) {
                    addFigure(acrossAxis, box.min[acrossAxis], box.max[acrossAxis], *wide);
                } else if (const auto lying = ending(" across")) {
                    addFigure(acrossAxis, box.min[acrossAxis], box.max[acrossAxis], *lying);
                } else if (const auto thick = ending(" thick way")) {
                    addFigure(2, box.min.z, box.max.z, *thick);
                } else if (const auto broad = ending(" wide way")) {
                    addFigure(1, box.min.y, box.max.y, *broad);
                } else if (const auto edge = ending(" from face edge")) {
                    from(1, *edge);
                } else if (const auto side = ending(" from face side")) {
                    from(2, *side);
                }
            }
        }
    }
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
            point.radius = radius ? (contains(then, "round") ? 1.0 : -1.0) * radius->mm : 0.0;
        }
        outlines_[face].push_back(point);
    }
}

// From the corner of the body on, along as few figures as it takes.
void LetteredPart::spread() {
    for (std::size_t axis = 0; axis < 3; ++axis) {
        std::vector<std::size_t> ring{placeAt(axis, 0.0)};
        places_[axis][ring.front()].lettered = 0.0;
        while (!ring.empty()) {
            std::vector<std::size_t> next;
            for (const std::size_t i : ring) {
                const Place& place = places_[axis][i];
                for (const Step& step : place.steps) {
                    std::optional<double>& there = places_[axis][step.to].lettered;
                    if (!there) {
                        there = *place.lettered + step.value;
                        next.push_back(step.to);
                    }
                }
            }
            ring = std::move(next);
        }
    }
}

std::optional<double> LetteredPart::place(int axis, double at) const {
    for (const Place& place : places_[static_cast<std::size_t>(axis)]) {
        if (std::abs(place.at - at) < kHere) {
            return place.lettered;
        }
    }
    return std::nullopt;
}

std::optional<Box> LetteredPart::place(const Box& box) const {
    Box placed;
    for (int axis = 0; axis < 3; ++axis) {
        const std::optional<double> min = place(axis, box.min[axis]);
        const std::optional<double> max = place(axis, box.max[axis]);
        if (!min || !max) {
            return std::nullopt;
        }
        placed.min[axis] = *min;
        placed.max[axis] = *max;
    }
    return placed;
}

std::optional<double> LetteredPart::length(const std::string& of, double end) const {
    for (const Told& told : lengths_) {
        if (told.of == of &&
            (std::abs(told.from - end) < kHere || std::abs(told.to - end) < kHere)) {
            return told.mm;
        }
    }
    return std::nullopt;
}

const std::vector<LetteredPart::Point>* LetteredPart::outline(Face face) const {
    const auto found = outlines_.find(face);
    return found == outlines_.end() ? nullptr : &found->second;
}

}  // namespace shoulderline::testing
