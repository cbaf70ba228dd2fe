#include "core/drawing/parts_list.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/drawing/part_easings.h"
#include "core/drawing/sheets.h"
#include "core/measure/length_text.h"
#include "core/resolve/screws_needed.h"
#include "core/resolve/small_parts.h"

namespace shoulderline {

namespace {

constexpr double kListHeight = 2.5;
constexpr double kRow = 5.6;
constexpr double kBetweenListColumns = 4.0;
constexpr double kPastWords = 1.5;  // of a row's line
constexpr std::size_t kColumns = 7;

struct ListColumn {
    std::string_view head;
    Align align = Align::Left;
};
constexpr std::array<ListColumn, kColumns> kHeads{{{"no.", Align::Right},
                                                   {"part", Align::Left},
                                                   {"quantity", Align::Right},
                                                   {"length", Align::Right},
                                                   {"width", Align::Right},
                                                   {"thickness", Align::Right},
                                                   {"stock", Align::Left}}};

// ", horns 1 each", ", horn 1"; empty for a part without.
std::string hornText(const ResolvedPart& part, const LengthStyle& style) {
    const bool atStart = part.startHorn > kLengthTolerance;
    const bool atFar = part.farHorn > kLengthTolerance;
    if (!atStart && !atFar) {
        return {};
    }
    const std::string one = letterLength(atStart ? part.startHorn : part.farHorn, style);
    if (!atStart || !atFar) {
        return ", with horn " + one;
    }
    return nearlyEqual(part.startHorn, part.farHorn)
               ? ", with horns " + one
               : ", with horns " + one + " and " + letterLength(part.farHorn, style);
}

// ", chamfer 1/8 and round-over R 1/4": what is taken off its arrises, each once.
std::string easedText(const ResolvedPart& part, const LengthStyle& style) {
    std::vector<std::string> once;
    for (const ResolvedEasing& easing : part.easings) {
        const std::string one = easingText(easing, style);
        if (std::find(once.begin(), once.end(), one) == once.end()) {
            once.push_back(one);
        }
    }
    std::string text;
    for (std::size_t i = 0; i < once.size(); ++i) {
        text += (i == 0 || i + 1 < once.size() ? ", " : " and ") + once[i];
    }
    return text;
}

// Screws as they are bought: those of one size together, wherever they go.
struct BoughtScrews {
    std::string name;  // "screw No. 8"; in millimetres "screw"
    Length length;
    Length diameter;
    bool hasGauge = false;
    int quantity = 0;
    std::size_t part = 0;  // the first that they go through
};

std::vector<BoughtScrews> boughtScrews(const ResolvedPiece& resolved, const LengthStyle& style) {
    std::vector<BoughtScrews> all;
    for (const NeededScrews& screws : screwsNeeded(resolved, unitOf(style) == Unit::Inch)) {
        BoughtScrews some{screwName(screws.screw, style),
                          screws.screw.length,
                          screws.diameter,
                          hasGauge(screws.screw, style),
                          screws.quantity,
                          screws.parts.front()};
        const auto same = std::find_if(all.begin(), all.end(), [&](const BoughtScrews& one) {
            return one.name == some.name && nearlyEqual(one.length, some.length) &&
                   (one.hasGauge || nearlyEqual(one.diameter, some.diameter));
        });
        if (same == all.end()) {
            all.push_back(std::move(some));
        } else {
            same->quantity += some.quantity;
        }
    }
    return all;
}

// "wedge, lower end rail"; where others of that name are made otherwise, with what it goes into:
// "wedge, lower end rail into back post".
std::string nameAmong(const std::vector<SmallPart>& all,
                      const SmallPart& small,
                      const ResolvedPiece& resolved) {
    const auto ofName = std::count_if(all.begin(), all.end(), [&](const SmallPart& other) {
        return other.name() == small.name();
    });
    if (ofName < 2 || small.joints.empty()) {
        return small.name();
    }
    const ResolvedJoint& joint = resolved.joints[small.joints.front()];
    return small.name() + " into " + resolved.parts[joint.mortised].of;
}

}  // namespace

std::vector<Op> partsList(const Piece& piece,
                          const ResolvedPiece& resolved,
                          const TextMetrics& metrics) {
    const auto shown = [&](Length length) { return letterLength(length, piece.style); };
    std::vector<std::array<std::string, kColumns>> rows;
    std::vector<Subject> subjects{{}};
    rows.push_back({});
    for (std::size_t c = 0; c < kColumns; ++c) {
        rows.front()[c] = kHeads[c].head;
    }
    for (const PartKind& kind : partKinds(resolved)) {
        const ResolvedPart& part = resolved.parts[kind.parts.front()];
        rows.push_back({std::to_string(rows.size()),
                        kind.name + hornText(part, piece.style) + easedText(part, piece.style),
                        std::to_string(kind.quantity),
                        shown(part.blankLength()),
                        shown(part.width.value),
                        shown(part.thickness.value),
                        part.stock});
        subjects.push_back({SubjectKind::Part, kind.parts.front()});
    }
    const std::vector<SmallPart> smallParts = smallPartsOf(piece, resolved);
    for (const SmallPart& small : smallParts) {
        const std::string across = small.isRound() ? "\u2300" : "";
        rows.push_back({"",
                        nameAmong(smallParts, small, resolved),
                        std::to_string(small.quantity),
                        shown(small.length),
                        across + shown(small.width),
                        small.isRound() ? std::string() : shown(small.thickness),
                        small.stock});
        subjects.push_back(small.part ? Subject{SubjectKind::Part, *small.part}
                                      : Subject{SubjectKind::Joint, small.joints.front()});
    }
    for (const BoughtScrews& screws : boughtScrews(resolved, piece.style)) {
        rows.push_back({"",
                        screws.name,
                        std::to_string(screws.quantity),
                        shown(screws.length),
                        screws.hasGauge ? std::string() : "\u2300" + shown(screws.diameter),
                        "",
                        ""});
        subjects.push_back({SubjectKind::Part, screws.part});
    }
    std::array<double, kColumns> left{};
    std::array<double, kColumns> right{};
    double x = 0.0;
    for (std::size_t c = 0; c < kColumns; ++c) {
        double width = 0.0;
        for (const auto& row : rows) {
            width = std::max(width, metrics.width(row[c], kListHeight, false));
        }
        left[c] = x;
        right[c] = x + width;
        x = right[c] + kBetweenListColumns;
    }
    std::vector<Op> ops;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const double baseline = kRow * (static_cast<double>(r) + 1.0) - 1.4;
        ops.push_back(BeginGroup{subjects[r], rows[r][1]});
        for (std::size_t c = 0; c < kColumns; ++c) {
            const Align align = kHeads[c].align;
            ops.push_back(TextOp{{align == Align::Left ? left[c] : right[c], baseline},
                                 rows[r][c],
                                 kListHeight,
                                 align,
                                 false,
                                 false});
        }
        ops.push_back(EndGroup{});
        const double under = kRow * (static_cast<double>(r) + 1.0) + 0.2;
        ops.push_back(Stroke{{{0.0, under}, {right.back() + kPastWords, under}},
                             r == 0 ? LineRole::Visible : LineRole::Construction});
    }
    return ops;
}

}  // namespace shoulderline
