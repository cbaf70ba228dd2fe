#include "core/drawing/part_sections.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/hatching.h"
#include "core/drawing/joint_section.h"
#include "core/drawing/mortise_rows.h"
#include "core/drawing/part_faces.h"
#include "core/drawing/turned_mouth.h"
#include "core/geometry/eased_body.h"
#include "core/geometry/plane_cut.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kSamePlane = 0.001;  // mm
constexpr double kShared = 2.0;       // mm of length that mortises in one section must share

bool samePlane(double a, double b) {
    return std::abs(a - b) <= kSamePlane;
}

// Whether two mortises look alike in a section across the part.
bool looksAlike(const MortiseSolid& a, const MortiseSolid& b) {
    return a.face == b.face && a.isThrough == b.isThrough && samePlane(a.box.min.y, b.box.min.y) &&
           samePlane(a.box.max.y, b.box.max.y) && samePlane(a.box.min.z, b.box.min.z) &&
           samePlane(a.box.max.z, b.box.max.z);
}

bool looksAlike(const PartSection& a, const PartSection& b, const ResolvedPart& part) {
    return a.mortises.size() == b.mortises.size() &&
           std::all_of(a.mortises.begin(), a.mortises.end(), [&](std::size_t i) {
               return std::any_of(b.mortises.begin(), b.mortises.end(), [&](std::size_t k) {
                   return looksAlike(part.mortises[i], part.mortises[k]);
               });
           });
}

std::string letterAt(std::size_t number) {
    static constexpr std::string_view kLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    const std::string last(1, kLetters[number % kLetters.size()]);
    return number < kLetters.size() ? last : letterAt(number / kLetters.size() - 1) + last;
}

// Puts a row of mortises into a section that there is, where one of them lies beside what that
// shows; else into a new one.
void addRow(const std::vector<const MortiseSolid*>& row,
            const ResolvedPart& part,
            std::vector<PartSection>& sections) {
    const auto indexOf = [&](const MortiseSolid* m) {
        return static_cast<std::size_t>(m - part.mortises.data());
    };
    for (PartSection& section : sections) {
        for (const MortiseSolid* mortise : row) {
            const double low = std::max(section.low, mortise->box.min.x);
            const double high = std::min(section.high, mortise->box.max.x);
            if (high - low >= kShared) {
                section.low = low;
                section.high = high;
                section.mortises.push_back(indexOf(mortise));
                return;
            }
        }
    }
    const MortiseSolid& first = *row.front();
    sections.push_back(
        {{}, 0.0, first.box.min.x, first.box.max.x, {indexOf(row.front())}, std::nullopt});
}

std::optional<PartSection> throughTenons(const ResolvedPart& part, End end) {
    double reach = 0.0;
    for (const TenonSolid& tenon : part.tenons) {
        if ((tenon.box.min.x < 0.0) == (end == End::Start)) {
            const double length = tenon.box.size().x;
            reach = reach == 0.0 ? length : std::min(reach, length);
        }
    }
    if (reach == 0.0) {
        return std::nullopt;
    }
    PartSection section;
    section.tenonsAt = end;
    const double shoulder = end == End::Start ? 0.0 : part.shoulderLength.value.mm();
    section.low = end == End::Start ? shoulder - reach : shoulder;
    section.high = section.low + reach;
    return section;
}

}  // namespace

namespace {

// A section and the mortises that it stands for: those it cuts and those that would look alike.
struct PossibleSection {
    PartSection section;
    std::vector<std::size_t> mortises;
};

// The middle of the longest run of a section's stretch that no cut of the part crosses, such as the
// slot for a wedge; of all of it where there is none.
double clearOfCuts(const PartSection& section, const ResolvedPart& part) {
    std::vector<double> ends{section.low, section.high};
    const auto isIn = [&](double at) { return at > section.low && at < section.high; };
    for (const ResolvedCut& cut : part.cuts) {
        for (const double at : {cut.box.min.x, cut.box.max.x}) {
            if (isIn(at)) {
                ends.push_back(at);
            }
        }
    }
    std::sort(ends.begin(), ends.end());
    double best = (section.low + section.high) / 2.0;
    double longest = 0.0;
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
        const double middle = (ends[i] + ends[i + 1]) / 2.0;
        const bool isCut =
            std::any_of(part.cuts.begin(), part.cuts.end(), [&](const ResolvedCut& cut) {
                return cut.box.min.x < middle && middle < cut.box.max.x;
            });
        if (!isCut && ends[i + 1] - ends[i] > longest) {
            longest = ends[i + 1] - ends[i];
            best = middle;
        }
    }
    return best;
}

// Where in its stretch a section shows the mortises as deep as they are: a haunch may slope; in the
// middle else.
double deepestIn(const PartSection& section, const ResolvedPart& part) {
    constexpr double kInside = 0.005;  // of the ends of the stretch
    const auto depthAt = [&](double at) {
        double depth = 0.0;
        for (const std::size_t m : section.mortises) {
            const MortiseSolid& mortise = part.mortises[m];
            const std::vector<Vec2> ring =
                mortise.exact ? solidAcross(*mortise.exact, at) : std::vector<Vec2>();
            if (mortise.isHaunch && !ring.empty()) {
                const bool isInWidth = inwardOf(mortise.face).axis == 1;
                const auto [low, high] =
                    std::minmax_element(ring.begin(), ring.end(), [&](Vec2 a, Vec2 b) {
                        return isInWidth ? a.y < b.y : a.x < b.x;
                    });
                depth += isInWidth ? high->y - low->y : high->x - low->x;
            }
        }
        return depth;
    };
    const double middle = (section.low + section.high) / 2.0;
    double best = middle;
    for (const double at : {section.low + kInside, section.high - kInside}) {
        best = depthAt(at) > depthAt(best) + kSamePlane ? at : best;
    }
    return best;
}

// Of a section through a sloping haunch the mark stands where the section is taken, too.
void takeDeepEnd(PartSection& section, const ResolvedPart& part) {
    constexpr double kShare = 0.15;  // of the stretch: clear of the line at its end
    const double middle = (section.low + section.high) / 2.0;
    const bool hasSlope =
        std::any_of(section.mortises.begin(), section.mortises.end(), [&](std::size_t m) {
            return part.mortises[m].isHaunch && part.mortises[m].exact;
        });
    if (!hasSlope || samePlane(section.at, middle)) {
        return;
    }
    section.isAtDeepEnd = true;
    const double stretch = (section.high - section.low) * kShare;
    (section.at < middle ? section.high : section.low) =
        section.at < middle ? section.low + stretch : section.high - stretch;
}

std::vector<PossibleSection> throughMortises(const ResolvedPart& part,
                                             const std::vector<MortiseRow>& rows) {
    std::vector<PartSection> sections;
    for (const MortiseRow& row : rows) {
        addRow(row.mortises, part, sections);
    }
    const auto isOfHaunch = [&](const PartSection& section) {
        return std::all_of(section.mortises.begin(), section.mortises.end(), [&](std::size_t m) {
            return part.mortises[m].isHaunch;
        });
    };
    std::vector<PossibleSection> candidates;
    for (PartSection& section : sections) {
        const auto alike =
            std::find_if(candidates.begin(), candidates.end(), [&](const PossibleSection& c) {
                return looksAlike(c.section, section, part);
            });
        if (alike == candidates.end()) {
            candidates.push_back({section, section.mortises});
            continue;
        }
        alike->mortises.insert(
            alike->mortises.end(), section.mortises.begin(), section.mortises.end());
        if (isOfHaunch(alike->section) && !isOfHaunch(section)) {
            alike->section = section;  // where one looks for it
        }
    }
    return candidates;
}

}  // namespace

SectionPlan::SectionPlan(const ResolvedPiece& resolved,
                         const ResolvedPart& part,
                         bool isThirdAngle) {
    std::vector<MortiseRow> rows;
    for (const Face face : {Face::FaceSide, Face::FaceEdge, Face::BackSide, Face::BackEdge}) {
        for (MortiseRow& row : rowsOn(face, resolved, part)) {
            rows.push_back(std::move(row));
        }
    }
    std::vector<PossibleSection> candidates = throughMortises(part, rows);
    for (const EndToShow& end : endsToShow(part, isThirdAngle)) {
        const End which = end.face == Face::StartEnd ? End::Start : End::Far;
        if (std::optional<PartSection> section = throughTenons(part, which)) {
            candidates.push_back({std::move(*section), {}});
        }
    }
    const auto middleOf = [](const PossibleSection& c) {
        return (c.section.low + c.section.high) / 2.0;
    };
    std::stable_sort(candidates.begin(),
                     candidates.end(),
                     [&](const PossibleSection& a, const PossibleSection& b) {
                         return middleOf(a) < middleOf(b);
                     });
    for (PossibleSection& candidate : candidates) {
        candidate.section.at = candidate.section.tenonsAt ? clearOfCuts(candidate.section, part)
                                                          : deepestIn(candidate.section, part);
        takeDeepEnd(candidate.section, part);
        candidate.section.letter = letterAt(sections_.size());
        for (const std::size_t m : candidate.mortises) {
            for (const MortiseRow& row : rows) {
                if (std::find(row.mortises.begin(), row.mortises.end(), &part.mortises[m]) !=
                    row.mortises.end()) {
                    for (const MortiseSolid* mortise : row.mortises) {
                        shown_.push_back(
                            {mortise->joint, mortise->isHaunch, candidate.section.letter});
                    }
                }
            }
        }
        sections_.push_back(std::move(candidate.section));
    }
}

std::string SectionPlan::letterOf(std::size_t joint, bool ofHaunch) const {
    const auto shown = std::find_if(shown_.begin(), shown_.end(), [&](const Shown& s) {
        return s.joint == joint && s.isHaunch == ofHaunch;
    });
    return shown == shown_.end() ? std::string() : shown->letter;
}

std::string SectionPlan::letterOf(End end) const {
    const auto section = std::find_if(sections_.begin(),
                                      sections_.end(),
                                      [&](const PartSection& s) { return s.tenonsAt == end; });
    return section == sections_.end() ? std::string() : section->letter;
}

namespace {

// What of a convex ring in (z, y) keeps inside the plane at `at` along the part.
std::vector<Vec2> keptOf(const std::vector<Vec2>& ring, const HalfSpace& keeps, double at) {
    std::vector<Vec2> kept;
    const auto heightOf = [&](Vec2 p) { return keeps.height({at, p.y, p.x}); };
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vec2 a = ring[i];
        const Vec2 b = ring[(i + 1) % ring.size()];
        const double from = heightOf(a);
        const double to = heightOf(b);
        if (from <= kPlaneTolerance) {
            kept.push_back(a);
        }
        if ((from < -kPlaneTolerance && to > kPlaneTolerance) ||
            (from > kPlaneTolerance && to < -kPlaneTolerance)) {
            kept.push_back(a + (b - a) * (from / (from - to)));
        }
    }
    return kept;
}

}  // namespace

std::vector<std::vector<Vec2>> uneasedAcross(const ResolvedPart& part, double at) {
    const auto spansOf = [&](const Outline& outline) {
        return spansInside({outline.flatten().points}, {0, 1}, {1, 0}, at);
    };
    std::vector<std::vector<Vec2>> rings;
    const std::vector<Span> thick =
        part.body.edge ? spansOf(*part.body.edge) : std::vector<Span>{{0.0, part.body.thickness}};
    for (const Span& y : spansOf(part.body.face)) {
        for (const Span& z : thick) {
            std::vector<Vec2> ring = ringOf(Rect{{z.from, y.from}, {z.to, y.to}});
            for (const PlaneCut& plane : part.body.planes) {
                ring = keptOf(ring, plane.keeps, at);
            }
            if (ring.size() > 2) {
                rings.push_back(std::move(ring));
            }
        }
    }
    return rings;
}

namespace {

// The faces that sawing a solid off at `at` opens, hollows and all; none where it cannot be sawn.
std::vector<std::vector<Vec2>> wholeAcross(const Polyhedron& whole, double at) {
    std::vector<std::vector<Vec2>> rings;
    const std::optional<Polyhedron> sawn = cutByPlane(whole, {{1, 0, 0}, at});
    if (!sawn) {
        return rings;
    }
    for (const Polyhedron::Face& face : sawn->faces) {
        std::vector<Vec2> ring;
        for (const int v : face.loop) {
            const Vec3 p = sawn->vertices[static_cast<std::size_t>(v)];
            if (std::abs(p.x - at) < kPlaneTolerance) {
                ring.push_back({p.z, p.y});
            }
        }
        if (ring.size() == face.loop.size()) {
            rings.push_back(std::move(ring));
        }
    }
    return rings;
}

}  // namespace

std::vector<std::vector<Vec2>> bodyAcross(const ResolvedPart& part, double at) {
    if (part.body.easings.empty()) {
        return uneasedAcross(part, at);
    }
    std::vector<std::vector<Vec2>> rings = wholeAcross(part.wood().whole(), at);
    if (rings.empty()) {
        for (const ConvexSolid& piece : piecesAcross(part.body, at)) {
            rings.push_back(solidAcross(piece, at));
        }
    }
    return rings;
}

std::vector<Vec2> solidAcross(const ConvexSolid& solid, double at) {
    // Turned so that the part's length is the way that the plane is cut across.
    const Frame turned{{}, {0, 0, 1}, {0, 1, 0}, {1, 0, 0}};
    return ringAt(solid.toPolyhedron().transformed(turned), at, 1.0);
}

}  // namespace shoulderline
