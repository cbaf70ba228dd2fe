#include "core/drawing/patterns.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <tuple>
#include <utility>

#include "core/drawing/form_pattern.h"
#include "core/drawing/part_sizes.h"
#include "core/drawing/pattern_holes.h"
#include "core/drawing/pattern_joints.h"
#include "core/drawing/pattern_maker.h"
#include "core/drawing/strips.h"
#include "core/drawing/tiles.h"
#include "core/drawing/title_block.h"

namespace shoulderline {

namespace {

constexpr double kFigureHeight = 2.5;    // mm, of the stations
constexpr double kWidestOfForm = 150.0;  // mm, of the lines under a form

}  // namespace

std::vector<double> stationsAlong(double length, Unit unit) {
    constexpr double kMost = 32.0;
    const std::vector<double> steps =
        unit == Unit::Inch ? std::vector<double>{12.7, 25.4, 50.8, 76.2, 152.4, 304.8}
                           : std::vector<double>{10, 20, 25, 50, 100, 250};
    const auto step =
        std::find_if(steps.begin(), steps.end(), [&](double s) { return length / s <= kMost; });
    const double interval = step == steps.end() ? length / kMost : *step;
    std::vector<double> stations;
    // One that falls short of the end by less than its figure is high would run into the end's.
    for (int i = 0; i * interval < length - 2.0 * kFigureHeight; ++i) {
        stations.push_back(i * interval);
    }
    stations.push_back(length);
    return stations;
}

namespace {

std::string datumOf(const PatternPlane& plane) {
    return std::string(wordFor(plane.across == 1 ? Face::FaceEdge : Face::FaceSide));
}

std::string titleOf(const std::string& part, const PatternPlane& plane) {
    return part + ", pattern of the " + std::string(wordFor(plane.seenOn));
}

std::string sizeText(const Piece& piece, const ResolvedPart& part) {
    return "finished size over all " + finishedSize(piece, part) + " " + unitsOf(piece);
}

// Of a part that is bent over one.
std::optional<Pattern> formOf(const Piece& piece,
                              const ResolvedPiece& resolved,
                              const PartKind& kind,
                              double widest,
                              const TextMetrics& metrics) {
    const ResolvedPart& part = resolved.parts[kind.parts.front()];
    if (!part.bend || part.bend->method == BendMethod::Sawn) {
        return std::nullopt;
    }
    Sheet sheet = formPattern(piece, resolved, part, widest, metrics);
    sheet.title = kind.name + ", form";
    return Pattern{sheet.title, std::move(sheet)};
}

// A pattern that serves several outlines alike.
struct SharedPattern {
    const ResolvedPart* part = nullptr;  // of the first
    PatternPlane plane;
    std::vector<std::string> parts;  // by the names of their kinds, and how many to make
    std::vector<std::string> quantities;
    std::vector<std::string> faces;
    PatternWords words;
};

bool areAlike(const PatternPlane& a, const PatternPlane& b) {
    constexpr double kSameLine = 1e-3;  // mm
    return norm(a.blank - b.blank) < kSameLine &&
           std::equal(a.outline->vertices.begin(),
                      a.outline->vertices.end(),
                      b.outline->vertices.begin(),
                      b.outline->vertices.end(),
                      [&](const OutlineVertex& one, const OutlineVertex& other) {
                          return norm(one.point - other.point) < kSameLine &&
                                 std::abs(one.bulge - other.bulge) < 1e-6;
                      });
}

// What of the joints a pattern shows, without the names of what it is about.
std::vector<Op> jointLines(const ResolvedPiece& resolved,
                           const ResolvedPart& part,
                           const PatternPlane& plane) {
    std::vector<Op> ops =
        patternJoints(resolved, part, plane.seenOn, plane.outline->flatten().points);
    std::erase_if(ops, [](const Op& op) {
        return std::holds_alternative<BeginGroup>(op) || std::holds_alternative<EndGroup>(op);
    });
    return ops;
}

// Whether both show the same joints and holes at the same places.
bool areJoinedAlike(const Piece& piece,
                    const ResolvedPiece& resolved,
                    const SharedPattern& one,
                    const ResolvedPart& part,
                    const PatternPlane& plane) {
    const auto holes = [&](const ResolvedPart& of, const PatternPlane& on) {
        return holeWordsOf(of, partView(of, on.seenOn), {}, piece.style);
    };
    return jointLines(resolved, *one.part, one.plane) == jointLines(resolved, part, plane) &&
           holes(*one.part, one.plane) == holes(part, plane);
}

std::string joined(const std::vector<std::string>& words, const std::string& last) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        text += (i == 0 ? "" : i + 1 < words.size() ? ", " : last) + words[i];
    }
    return text;
}

void addOnce(const std::string& word, std::vector<std::string>& words) {
    if (std::find(words.begin(), words.end(), word) == words.end()) {
        words.push_back(word);
    }
}

// Of one part "make 2: 1 right as drawn, 1 left mirrored"; of several each under its name.
std::string quantitiesOf(const SharedPattern& pattern) {
    return pattern.parts.size() > 1
               ? joined(pattern.quantities, "; ")
               : pattern.quantities.front().substr(pattern.parts.front().size() + 2);
}

// Every outline of the piece, those that are alike as one: a taper is one pattern for all its legs
// and both its faces. Where their joints differ, it goes without them.
std::vector<SharedPattern> sharedPatterns(const Piece& piece, const ResolvedPiece& resolved) {
    std::vector<SharedPattern> shared;
    for (const PartKind& kind : partKinds(resolved)) {
        const ResolvedPart& part = resolved.parts[kind.parts.front()];
        for (const PatternPlane& plane : patternPlanes(part)) {
            auto found = std::find_if(shared.begin(), shared.end(), [&](const SharedPattern& one) {
                return areAlike(one.plane, plane);
            });
            if (found == shared.end()) {
                shared.push_back({&part, plane, {}, {}, {}, {}});
                found = shared.end() - 1;
                found->words.datum = datumOf(plane);
            }
            addOnce(kind.name, found->parts);
            addOnce(kind.name + ": " + quantityText(resolved, kind), found->quantities);
            addOnce(std::string(wordFor(plane.seenOn)), found->faces);
            found->words.withJoints =
                found->words.withJoints && areJoinedAlike(piece, resolved, *found, part, plane);
            if (found->words.datum != datumOf(plane)) {
                found->words.datum = "reference face";
            }
        }
    }
    for (SharedPattern& one : shared) {
        one.words.title =
            joined(one.parts, " and ") + ", pattern of the " + joined(one.faces, " and the ");
        if (!one.words.withJoints) {
            one.words.notes.push_back(
                "the outline alone: mark the joints of each by its own sheet");
        }
    }
    return shared;
}

// On the fewest sheets of the paper, of the ways to set its words out.
Sheet onFewestSheets(const SharedPattern& pattern,
                     const Piece& piece,
                     const ResolvedPiece& resolved,
                     const Paper& paper,
                     const TileOptions& options,
                     const TextMetrics& metrics) {
    std::optional<Sheet> best;
    int fewest = 0;
    using enum PatternWordsPlace;
    // The first of them is the clearest to read.
    for (PatternLayout layout : {PatternLayout{false, Around, true},
                                 PatternLayout{true, Around, true},
                                 PatternLayout{false, Beside, true},
                                 PatternLayout{true, Beside, true},
                                 PatternLayout{false, Margin, true},
                                 PatternLayout{true, Around, false},
                                 PatternLayout{true, Beside, false},
                                 PatternLayout{false, Margin, false}}) {
        const auto tryOut = [&] {
            Sheet sheet = makePattern(
                piece, resolved, *pattern.part, pattern.plane, layout, pattern.words, metrics);
            const int count = diagonalOn(sheet.size, paper, options)
                                  ? 1
                                  : tileGrid(sheet.size, paper, options).count();
            return std::pair{std::move(sheet), count};
        };
        auto [sheet, count] = tryOut();
        if (count > 1) {
            layout.widest = widestBetweenCuts(paper, options);
            std::tie(sheet, count) = tryOut();
        }
        if (!best || count < fewest) {
            best = std::move(sheet);
            fewest = count;
        }
    }
    return *std::move(best);
}

}  // namespace

std::vector<Pattern> patternsOf(const Piece& piece,
                                const ResolvedPiece& resolved,
                                const PartKind& kind,
                                const TextMetrics& metrics) {
    const ResolvedPart& part = resolved.parts[kind.parts.front()];
    std::vector<Pattern> patterns;
    for (const PatternPlane& plane : patternPlanes(part)) {
        const PatternWords words{titleOf(part.of, plane), datumOf(plane)};
        Sheet sheet = makePattern(piece, resolved, part, plane, {}, words, metrics);
        sheet.title = kind.name + ", " + std::string(wordFor(plane.seenOn));
        patterns.push_back({sheet.title, std::move(sheet)});
    }
    if (std::optional<Pattern> form = formOf(piece, resolved, kind, kWidestOfForm, metrics)) {
        patterns.push_back(*std::move(form));
    }
    return patterns;
}

PrintJob patternsJob(const Piece& piece,
                     const ResolvedPiece& resolved,
                     const Paper& paper,
                     const TileOptions& options,
                     const std::string& date,
                     const TextMetrics& metrics) {
    std::vector<FullSizeDrawing> drawings;
    for (const SharedPattern& pattern : sharedPatterns(piece, resolved)) {
        const std::string name =
            joined(pattern.parts, " and ") + ", " + joined(pattern.faces, ", ");
        Sheet sheet = onFewestSheets(pattern, piece, resolved, paper, options, metrics);
        sheet.title = name;
        drawings.push_back({std::move(sheet),
                            "pattern of " + name,
                            quantitiesOf(pattern),
                            sizeText(piece, *pattern.part)});
    }
    const double widest = std::min(kWidestOfForm, widestBetweenCuts(paper, options));
    for (const PartKind& kind : partKinds(resolved)) {
        if (std::optional<Pattern> form = formOf(piece, resolved, kind, widest, metrics)) {
            drawings.push_back({std::move(form->drawing),
                                "pattern of " + form->name,
                                quantityText(resolved, kind),
                                sizeText(piece, resolved.parts[kind.parts.front()])});
        }
    }
    return tiledJob(
        piece, piece.name + ", patterns", std::move(drawings), paper, options, date, metrics);
}

}  // namespace shoulderline
