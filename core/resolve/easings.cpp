#include <algorithm>
#include <cmath>

#include "core/resolve/resolved_easing.h"
#include "core/resolve/shaping.h"

namespace shoulderline {

namespace {

struct Faces {
    BodyFace on = BodyFace::FaceSide;
    std::optional<BodyFace> with = std::nullopt;
};

std::vector<Faces> facesAt(Arris arris) {
    using enum BodyFace;
    switch (arris) {
        case Arris::FaceSideFaceEdge:
            return {{FaceSide, FaceEdge}};
        case Arris::FaceSideBackEdge:
            return {{FaceSide, BackEdge}};
        case Arris::BackSideFaceEdge:
            return {{BackSide, FaceEdge}};
        case Arris::BackSideBackEdge:
            return {{BackSide, BackEdge}};
        case Arris::AllAlong:
            return {{FaceSide, FaceEdge},
                    {FaceSide, BackEdge},
                    {BackSide, FaceEdge},
                    {BackSide, BackEdge}};
        case Arris::AroundFaceSide:
            return {{FaceSide}};
        case Arris::AroundBackSide:
            return {{BackSide}};
        case Arris::StartEnd:
            return {{StartEnd}};
        case Arris::FarEnd:
            return {{FarEnd}};
    }
    return {};
}

EasingProfile profileOf(EasingKind kind) {
    switch (kind) {
        case EasingKind::Chamfer:
            return EasingProfile::Chamfer;
        case EasingKind::RoundOver:
            return EasingProfile::Round;
        case EasingKind::Cove:
            return EasingProfile::Cove;
        case EasingKind::Pyramid:
            break;
    }
    return EasingProfile::Pyramid;
}

template <class AnyEasing>
std::string nameOf(const AnyEasing& easing) {
    return std::string(wordFor(easing.kind)) + ", " + std::string(wordFor(easing.at));
}

class EasingReader {
  public:
    EasingReader(const Part& part, double lengthMm, const Place& place, Evaluation& evaluation)
        : part_(part), lengthMm_(lengthMm), place_(place), evaluation_(evaluation) {}

    std::optional<ResolvedEasing> read(const EasingStatement& easing) {
        const std::string name = nameOf(easing);
        if (const std::string why = whyNot(easing); !why.empty()) {
            evaluation_.trouble(place_, name + ": " + why);
            return std::nullopt;
        }
        const std::optional<Length> size = evaluation_.size(easing.size, place_, name + ": size");
        if (!size) {
            return std::nullopt;
        }
        const std::optional<Length> second =
            evaluation_.size(easing.second, place_, name + ": size on the other face", *size);
        const std::optional<Length> runOut =
            evaluation_.size(easing.runOut, place_, name + ": run-out", *size);
        const bool isKnown = second && runOut;
        if (!isKnown) {
            return std::nullopt;
        }
        ResolvedEasing made{easing.kind,
                            easing.at,
                            *size,
                            *second,
                            std::nullopt,
                            std::nullopt,
                            *runOut,
                            easing.note};
        return addStops(easing, name, made) ? std::optional(made) : std::nullopt;
    }

  private:
    [[nodiscard]] std::string whyNot(const EasingStatement& easing) const {
        const bool isAtEnd = easing.at == Arris::StartEnd || easing.at == Arris::FarEnd;
        if (easing.kind == EasingKind::Pyramid && !isAtEnd) {
            return "only an end can be cut to a pyramid";
        }
        if (!isAtEnd && part_.section != SectionForm::Square) {
            return "a part that is " + std::string(wordFor(part_.section)) +
                   " in section has no such arris; only its ends can be eased";
        }
        if (!isAlong(easing.at) && !(easing.fromStart.empty() && easing.fromFar.empty())) {
            return "only an arris along the part can be stopped";
        }
        return {};
    }

    bool addStops(const EasingStatement& easing, const std::string& name, ResolvedEasing& made) {
        if (!easing.fromStart.empty()) {
            made.from = evaluation_.length(easing.fromStart, place_, name + ": where it begins");
            if (!made.from) {
                return false;
            }
        }
        if (!easing.fromFar.empty()) {
            const std::optional<Length> fromFar =
                evaluation_.length(easing.fromFar, place_, name + ": where it ends");
            if (!fromFar) {
                return false;
            }
            made.to = Length::mm(lengthMm_) - *fromFar;
        }
        const double from = made.from ? made.from->mm() : 0.0;
        const double to = made.to ? made.to->mm() : lengthMm_;
        const double most = lengthMm_ - (made.from && made.to ? 2.0 : 1.0) * made.runOut.mm();
        if ((made.from || made.to) &&
            (from < 0.0 || to > lengthMm_ || from + lengthMm_ - to >= most)) {
            evaluation_.trouble(
                place_,
                name +
                    ": its stops leave nothing between them, or lie outside the part; with its "
                    "run-outs they may take up to " +
                    evaluation_.shown(Length::mm(std::max(0.0, most))) + " of its length");
            return false;
        }
        return true;
    }

    const Part& part_;
    double lengthMm_;
    const Place& place_;
    Evaluation& evaluation_;
};

ResolvedEasing scaled(const ResolvedEasing& easing, double share) {
    ResolvedEasing smaller = easing;
    smaller.size = Length::mm(easing.size.mm() * share);
    smaller.second = Length::mm(easing.second.mm() * share);
    return smaller;
}

bool canBeMade(const Body& body, const ResolvedEasing& easing) {
    Body tried = body;
    for (const Easing& one : easingsOf(easing)) {
        tried.easings.push_back(one);
    }
    return tried.toPolyhedron().has_value();
}

// The largest size in steps of `step` that can be made; zero where none can.
Length greatestSize(const Body& body, const ResolvedEasing& easing, Length step) {
    constexpr int kHalvings = 14;
    double works = 0.0;
    double fails = 1.0;
    for (int i = 0; i < kHalvings; ++i) {
        const double middle = (works + fails) / 2;
        (canBeMade(body, scaled(easing, middle)) ? works : fails) = middle;
    }
    return step * std::floor(works * easing.size.mm() / step.mm() + 1e-9);
}

}  // namespace

bool isAlong(Arris arris) {
    return facesAt(arris).front().with.has_value();
}

std::vector<Easing> easingsOf(const ResolvedEasing& easing) {
    const bool isPyramid = easing.kind == EasingKind::Pyramid;
    std::vector<Easing> easings;
    for (const Faces& faces : facesAt(easing.at)) {
        Easing one;
        one.profile = profileOf(easing.kind);
        one.on = faces.on;
        one.with = faces.with;
        one.onReach = isPyramid ? 0.0 : easing.size.mm();
        one.otherReach = isPyramid ? easing.size.mm() : easing.second.mm();
        one.runOut = easing.from || easing.to ? easing.runOut.mm() : 0.0;
        if (easing.from) {
            one.from = easing.from->mm();
        }
        if (easing.to) {
            one.to = easing.to->mm();
        }
        easings.push_back(one);
    }
    return easings;
}

namespace {

Body easedBy(const Body& body, const std::vector<ResolvedEasing>& easings) {
    Body eased = body;
    for (const ResolvedEasing& easing : easings) {
        for (const Easing& one : easingsOf(easing)) {
            eased.easings.push_back(one);
        }
    }
    return eased;
}

}  // namespace

void easeArrises(const Part& part,
                 const Place& place,
                 const KnownSolids& known,
                 Evaluation& evaluation,
                 ResolvedPart& resolved) {
    EasingReader reader(part, resolved.shoulderLength.value.mm(), place, evaluation);
    std::vector<ResolvedEasing> wanted;
    for (const EasingStatement& easing : part.easings) {
        if (const std::optional<ResolvedEasing> one = reader.read(easing)) {
            wanted.push_back(*one);
        }
    }
    if (wanted.empty()) {
        return;
    }
    // All at once, as is usual; one by one only to find which cannot be made.
    const Body all = easedBy(resolved.body, wanted);
    resolved.solids = known.of(all, part.name);
    if (!resolved.solids.isEmpty()) {
        resolved.body = all;
        resolved.easings = std::move(wanted);
        return;
    }
    for (const ResolvedEasing& one : wanted) {
        if (canBeMade(resolved.body, one)) {
            resolved.body = easedBy(resolved.body, {one});
            resolved.easings.push_back(one);
            continue;
        }
        const Length most = greatestSize(resolved.body, one, evaluation.step());
        evaluation.trouble(
            place,
            nameOf(one) + ": " + evaluation.shown(one.size) +
                (most.mm() > 0.0 ? " is more than the wood there has; up to " +
                                       evaluation.shown(most) + " can be made"
                                 : " cannot be made there, and no size can: the arris is gone, or "
                                   "runs smoothly into a rounded end; stop it, or go around the "
                                   "side"));
    }
    resolved.solids = BodySolids::of(resolved.body);
}

}  // namespace shoulderline
