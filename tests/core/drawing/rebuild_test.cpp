// Every part is made again from what its sheet says, and compared with the part: the figures are
// read as a maker reads them, from the lettering, and put together by where they stand.
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/sheets.h"
#include "core/measure/length_text.h"
#include "tests/support/pieces.h"

namespace shoulderline {
namespace {

const LetteringMetrics kMetrics;
constexpr double kOnSheet = 1e-6;

// "5 × ≈1 3/8": how many, and how long.
struct Figure {
    int count = 1;
    double mm = 0.0;
};
Figure figureOf(const DimensionOp& op, Unit unit) {
    std::string text = op.text;
    Figure figure;
    if (const std::size_t times = text.find(" \u00d7 "); times != std::string::npos) {
        figure.count = std::stoi(text);
        text = text.substr(times + 4);
    }
    // "4 × ≈3 27/32 (15 3/8)": all four together are nearer than one of them.
    if (const std::size_t sum = text.find(" ("); sum != std::string::npos) {
        const Result<Length> together =
            readLength(text.substr(sum + 2, text.size() - sum - 3), unit);
        EXPECT_TRUE(together) << op.text;
        figure.mm = together ? together->mm() / figure.count : 0.0;
        return figure;
    }
    const Result<Length> read = readLength(text, unit);
    EXPECT_TRUE(read) << op.text;
    figure.mm = read ? read->mm() : 0.0;
    return figure;
}

// One view, end or section of the sheet: its name, the dimensions that follow it, the corner and
// size of its first outline, and the notes beside it.
struct Note {
    Vec2 target;
    std::vector<std::string> lines;
};
struct View {
    std::string name;
    std::vector<DimensionOp> sizes;
    std::vector<Note> notes;
    std::vector<std::string> words;
    std::optional<Vec2> corner;
    Vec2 size;

    [[nodiscard]] std::vector<DimensionOp> all(const std::string& of) const {
        std::vector<DimensionOp> found;
        std::copy_if(sizes.begin(), sizes.end(), std::back_inserter(found), [&](const auto& op) {
            return op.of == of;
        });
        return found;
    }
};

std::vector<View> viewsOn(const Sheet& sheet) {
    std::vector<View> views;
    bool isNote = false;
    for (const Op& op : sheet.ops) {
        if (const auto* group = std::get_if<BeginGroup>(&op)) {
            isNote = false;
            if (group->subject.kind == SubjectKind::Part &&
                group->name.find(", ") != std::string::npos &&
                !std::count_if(views.begin(), views.end(), [&](const View& v) {
                    return v.name == group->name;
                })) {
                views.push_back({group->name, {}, {}, {}, std::nullopt, {}});
            }
            continue;
        }
        if (views.empty()) {
            continue;
        }
        View& view = views.back();
        if (const auto* dimension = std::get_if<DimensionOp>(&op)) {
            view.sizes.push_back(*dimension);
        } else if (const auto* stroke = std::get_if<Stroke>(&op)) {
            if (stroke->role == LineRole::Visible && stroke->points.size() == 5 && !view.corner) {
                view.corner = stroke->points[0];
                view.size = stroke->points[2] - stroke->points[0];
            }
            if (stroke->role == LineRole::Dimension && stroke->points.size() == 2 && !isNote) {
                view.notes.push_back({stroke->points[0], {}});
                isNote = true;
            }
        } else if (const auto* text = std::get_if<TextOp>(&op)) {
            view.words.push_back(text->text);
            if (isNote) {
                view.notes.back().lines.push_back(text->text);
            }
        } else if (std::holds_alternative<EndGroup>(op)) {
            isNote = false;
        }
    }
    return views;
}

class Maker {
  public:
    Maker(const Sheet& sheet, Unit unit) : unit_(unit), views_(viewsOn(sheet)) {}

    // Body, tenons and hollows as boxes of the part's frame.
    Box body;
    std::vector<Box> tenons;
    std::vector<Box> mortises;

    void make() {
        for (const View& view : views_) {
            for (const DimensionOp& op : view.sizes) {
                if (op.of == "shoulder length" || op.of == "length") {
                    body.max.x = mm(op);
                    length_ = op;
                } else if (op.of == "width") {
                    body.max.y = mm(op);
                } else if (op.of == "thickness") {
                    body.max.z = mm(op);
                }
            }
        }
        makeTenons();
        for (const Face face : {Face::FaceSide, Face::FaceEdge, Face::BackSide, Face::BackEdge}) {
            if (const View* view = named(", " + std::string(wordFor(face)))) {
                makeMortises(*view, face);
            }
        }
    }

  private:
    [[nodiscard]] double mm(const DimensionOp& op) const { return figureOf(op, unit_).mm; }

    [[nodiscard]] const View* named(const std::string& ending) const {
        for (const View& view : views_) {
            if (view.name.size() >= ending.size() &&
                view.name.compare(view.name.size() - ending.size(), ending.size(), ending) == 0) {
                return &view;
            }
        }
        return nullptr;
    }

    void makeTenons() {
        for (const View& view : views_) {
            for (const DimensionOp& op : view.all("tenon length")) {
                const bool isFar = std::abs(std::min(op.from.x, op.to.x) -
                                            std::max(length_.from.x, length_.to.x)) < kOnSheet;
                const View* end = named(isFar ? ", far end" : ", start end");
                if (end == nullptr) {
                    end = named(isFar ? ", start end" : ", far end");  // both ends are alike
                }
                ASSERT_NE(end, nullptr);
                makeTenon(*end, isFar, mm(op));
            }
        }
    }
    // Where a size is not given, the tenon is as wide or thick as the part, or flush.
    void makeTenon(const View& end, bool isFar, double long_) {
        const auto one = [&](const std::string& of) -> std::optional<double> {
            const auto found = end.all(of);
            return found.empty() ? std::nullopt : std::optional(mm(found[0]));
        };
        Box box;
        box.min.x = isFar ? body.max.x : -long_;
        box.max.x = isFar ? body.max.x + long_ : 0.0;
        box.min.z = one("shoulder at the face side").value_or(0.0);
        box.max.z = box.min.z + one("tenon thickness").value_or(body.max.z);
        box.min.y = one("shoulder at the face edge").value_or(0.0);
        box.max.y = box.min.y + one("tenon width").value_or(body.max.y);
        tenons.push_back(box);
    }

    void makeMortises(const View& view, Face face) {
        for (const DimensionOp& fromEnd : view.all("from end")) {
            const double first = std::max(fromEnd.from.x, fromEnd.to.x);
            double step = 0.0;  // of a row, in the wood and on the sheet
            double onSheet = 0.0;
            int count = 1;
            for (const DimensionOp& pitch : view.all("pitch")) {
                if (std::abs(pitch.from.x - first) < kOnSheet) {
                    count = figureOf(pitch, unit_).count + 1;
                    step = mm(pitch);
                    onSheet = pitch.to.x - pitch.from.x;
                }
            }
            std::optional<DimensionOp> size;
            for (const DimensionOp& length : view.all("mortise length")) {
                const double at = first + onSheet * (count - 1);
                if (std::abs(length.from.x - at) < kOnSheet ||
                    (!size && figureOf(length, unit_).count > 1)) {
                    size = length;
                }
            }
            ASSERT_TRUE(size) << "a mouth without its length";
            const double mouth = size->to.x - size->from.x;
            const Note* note = nullptr;
            for (const Note& candidate : view.notes) {
                const bool isHere = candidate.target.x > first - kOnSheet &&
                                    candidate.target.x < first + mouth + kOnSheet;
                if (isHere || (note == nullptr && figureOf(*size, unit_).count > 1)) {
                    note = isHere ? &candidate : note;
                }
            }
            if (note == nullptr) {  // one of several that are alike: as the note of those says
                for (const Note& candidate : view.notes) {
                    if (!candidate.lines.empty() &&
                        candidate.lines[0].find(" for ") != std::string::npos) {
                        note = &candidate;
                    }
                }
            }
            ASSERT_NE(note, nullptr) << "a mouth without a note";
            ASSERT_GE(note->lines.size(), 2u);
            const std::string letter = note->lines[1].substr(0, note->lines[1].find("\u2013"));
            const bool isThrough = note->lines[1].find("through") != std::string::npos;
            const View* section = named(", section " + letter);
            ASSERT_NE(section, nullptr) << letter;
            Box box = across(*section, face, isThrough);
            for (int i = 0; i < count; ++i) {
                box.min.x = mm(fromEnd) + step * i;
                box.max.x = box.min.x + mm(*size);
                mortises.push_back(box);
            }
        }
    }

    // From the section's dimensions on the side where the mortise enters.
    [[nodiscard]] Box across(const View& section, Face face, bool isThrough) const {
        Box box = body;
        if (!section.corner) {
            ADD_FAILURE() << "a section without an outline";
            return box;
        }
        const Vec2 min = *section.corner;
        const Vec2 max = min + section.size;
        const auto standsAt = [&](const DimensionOp& op, Face side) {
            if (side == Face::FaceEdge) {
                return !op.isTurned && op.lineFrom.y < min.y;
            }
            if (side == Face::BackEdge) {
                return !op.isTurned && op.lineFrom.y > max.y;
            }
            return side == Face::FaceSide ? op.isTurned && op.lineFrom.x < min.x
                                          : op.isTurned && op.lineFrom.x > max.x;
        };
        const bool opensUpOrDown = face == Face::FaceEdge || face == Face::BackEdge;
        const int acrossAxis = opensUpOrDown ? 2 : 1;
        const int deepAxis = 3 - acrossAxis;
        box.min[acrossAxis] = 0.0;
        for (const DimensionOp& op : section.sizes) {
            if (op.of == "from face" && standsAt(op, face)) {
                box.min[acrossAxis] = mm(op);
            }
        }
        for (const DimensionOp& op : section.sizes) {
            if (op.of == "mortise width" && standsAt(op, face)) {
                box.max[acrossAxis] = box.min[acrossAxis] + mm(op);
            }
        }
        box.min[deepAxis] = 0.0;
        box.max[deepAxis] = body.max[deepAxis];
        const bool isFromZero = face == Face::FaceEdge || face == Face::FaceSide;
        for (const DimensionOp& op : section.sizes) {
            if (isThrough || op.of != "mortise depth" || op.isTurned != opensUpOrDown) {
                continue;
            }
            const double low = opensUpOrDown ? op.from.y : op.from.x;
            const double high = opensUpOrDown ? op.to.y : op.to.x;
            const double start = opensUpOrDown ? min.y : min.x;
            const double end = opensUpOrDown ? max.y : max.x;
            if (isFromZero && std::abs(std::min(low, high) - start) < kOnSheet) {
                box.max[deepAxis] = mm(op);
            } else if (!isFromZero && std::abs(std::max(low, high) - end) < kOnSheet) {
                box.min[deepAxis] = body.max[deepAxis] - mm(op);
            }
        }
        return box;
    }

    Unit unit_;
    std::vector<View> views_;
    DimensionOp length_;
};

// A side stands on two figures, each of which may be off by half of the smallest fraction, or
// tenth, that the piece is lettered to.
double toleranceOf(const LengthStyle& style) {
    constexpr double kHair = 0.02;
    const bool isInches = style.kind == LengthStyle::Kind::Fractions;
    return 2.0 * (isInches ? 25.4 / style.denominator / 2.0 : 0.05) + kHair;
}

bool nearly(const Box& a, const Box& b, double tolerance) {
    for (int i = 0; i < 3; ++i) {
        if (std::abs(a.min[i] - b.min[i]) > tolerance ||
            std::abs(a.max[i] - b.max[i]) > tolerance) {
            return false;
        }
    }
    return true;
}

template <typename Solid>
void expectSame(const std::vector<Box>& made,
                const std::vector<Solid>& model,
                double tolerance,
                const std::string& what) {
    EXPECT_EQ(made.size(), model.size()) << what;
    for (const Solid& solid : model) {
        EXPECT_TRUE(std::any_of(made.begin(),
                                made.end(),
                                [&](const Box& box) { return nearly(box, solid.box, tolerance); }))
            << what << ": not made at " << solid.box.min.x << ", " << solid.box.min.y << ", "
            << solid.box.min.z << " to " << solid.box.max.x << ", " << solid.box.max.y << ", "
            << solid.box.max.z;
    }
}

double volumeOf(const Maker& made) {
    double volume = made.body.volume();
    for (const Box& tenon : made.tenons) {
        volume += tenon.volume();
    }
    for (const Box& mortise : made.mortises) {
        volume -= mortise.volume();
    }
    return volume;
}

// One tenon at an end at most, mortises in the sides only, all of them plain.
bool isOfBoxes(const ResolvedPart& part) {
    const auto atStart = std::count_if(part.tenons.begin(),
                                       part.tenons.end(),
                                       [](const TenonSolid& t) { return t.box.min.x < 0.0; });
    const bool hasTwins = atStart > 1 || static_cast<long>(part.tenons.size()) - atStart > 1;
    const bool isInEnds =
        std::any_of(part.mortises.begin(), part.mortises.end(), [](const MortiseSolid& m) {
            return m.face == Face::StartEnd || m.face == Face::FarEnd;
        });
    if (hasTwins || isInEnds) {
        return false;
    }
    const auto isPlain = [](const auto& solid) { return !solid.exact && !solid.isHaunch; };
    return part.body.isBox() && part.cuts.empty() &&
           std::all_of(part.tenons.begin(), part.tenons.end(), isPlain) &&
           std::all_of(part.mortises.begin(), part.mortises.end(), isPlain);
}

class MadeFromTheSheet : public ::testing::TestWithParam<const char*> {};

TEST_P(MadeFromTheSheet, IsThePart) {
    const Piece piece = testing::sample(GetParam());
    const ResolvedPiece resolved = testing::resolved(piece);
    const double tolerance = toleranceOf(piece.style);
    int made = 0;
    for (const PartKind& kind : partKinds(resolved)) {
        const ResolvedPart& part = resolved.parts[kind.parts.front()];
        if (!isOfBoxes(part)) {
            continue;
        }
        for (const Vec2 paper : {Vec2{297, 210}, Vec2{420, 297}}) {
            Maker maker(partSheet(piece, resolved, kind, {paper, 0.0, "", 0, 0}, kMetrics),
                        unitOf(piece.style));
            maker.make();
            EXPECT_TRUE(nearly(maker.body, part.bodyBox(), tolerance)) << kind.name;
            expectSame(maker.tenons, part.tenons, tolerance, kind.name + ", tenon");
            expectSame(maker.mortises, part.mortises, tolerance, kind.name + ", mortise");
            double model = part.bodyBox().volume();
            for (const TenonSolid& tenon : part.tenons) {
                model += tenon.box.volume();
            }
            for (const MortiseSolid& mortise : part.mortises) {
                model -= mortise.box.volume();
            }
            EXPECT_NEAR(volumeOf(maker) / model, 1.0, 0.02) << kind.name;
            ++made;
        }
    }
    EXPECT_GE(made, 2) << "a kind, on two sizes of paper";
}

INSTANTIATE_TEST_SUITE_P(Samples,
                         MadeFromTheSheet,
                         ::testing::ValuesIn(testing::kSamples),
                         [](const auto& sampled) { return std::string(sampled.param); });

}  // namespace
}  // namespace shoulderline
