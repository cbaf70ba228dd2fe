#include "tests/core/drawing/lettered_part.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/part_sections.h"
#include "core/drawing/part_views.h"
#include "core/measure/length_text.h"

namespace shoulderline::testing {

namespace {

bool contains(const std::string& text, const char* words) {
    return text.find(words) != std::string::npos;
}

}  // namespace

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
                const SectionPlan plan(resolved_, part_, unit_ == Unit::Inch);
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

std::optional<LetteredPart::Turned> LetteredPart::turned(Face face, Vec3 middle) const {
    const auto found = std::find_if(turned_.begin(), turned_.end(), [&](const Turned& one) {
        return one.face == face && norm(one.middle - middle) < kHere;
    });
    return found == turned_.end() ? std::nullopt : std::optional(*found);
}

const std::vector<LetteredPart::Point>* LetteredPart::outline(Face face) const {
    const auto found = outlines_.find(face);
    return found == outlines_.end() ? nullptr : &found->second;
}

}  // namespace shoulderline::testing
