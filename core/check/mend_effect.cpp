#include "core/check/mend_effect.h"

#include <algorithm>
#include <array>

#include "core/check/figure_text.h"
#include "core/resolve/resolve.h"

namespace shoulderline {

namespace {

constexpr std::array kCompared{SizeName::TenonThickness,
                               SizeName::TenonWidth,
                               SizeName::TenonLength,
                               SizeName::MortiseDepth,
                               SizeName::TenonGap,
                               SizeName::HaunchLength,
                               SizeName::Diameter,
                               SizeName::BoreDepth};

std::size_t countMustMend(const std::vector<Finding>& findings) {
    return static_cast<std::size_t>(
        std::count_if(findings.begin(), findings.end(), [](const Finding& finding) {
            return finding.severity == Severity::MustMend;
        }));
}

std::vector<ChangedSize> changedSizes(const ResolvedJoint& before, const ResolvedJoint& after) {
    std::vector<ChangedSize> sizes;
    for (const SizeName name : kCompared) {
        const Size* was = before.size(name);
        const Size* is = after.size(name);
        const Length a = was != nullptr ? was->value : Length();
        const Length b = is != nullptr ? is->value : Length();
        if (!nearlyEqual(a, b)) {
            sizes.push_back({std::string(wordFor(name)), a, b});
        }
    }
    const auto addPlace = [&](const char* name, Length a, Length b) {
        if (!nearlyEqual(a, b)) {
            sizes.push_back({name, a, b});
        }
    };
    addPlace("mortise from end", before.mortise.fromStart.value, after.mortise.fromStart.value);
    addPlace("mortise from face", before.mortise.fromFace.value, after.mortise.fromFace.value);
    return sizes;
}

}  // namespace

std::optional<double> MendedJoint::times() const {
    const double was = before.bending.range.middle();
    if (!before.isEstimated() || !after.isEstimated() || was <= 0.0) {
        return std::nullopt;
    }
    return after.bending.range.middle() / was;
}

std::optional<MendEffect> effectOf(const Piece& piece,
                                   const ResolvedPiece& resolved,
                                   const Finding& finding,
                                   const Mend& mend,
                                   const Workbench& bench) {
    if (!mend.edit) {
        return std::nullopt;
    }
    const Result<Piece> mended = apply(piece, *mend.edit);
    if (!mended) {
        return std::nullopt;
    }
    const ResolvedPiece then = resolve(*mended, bench.rules, bench.workshop);
    const StrengthEstimator now(
        piece, resolved, bench.species, bench.book, ownTests(piece, resolved).tests);
    const StrengthEstimator after(
        *mended, then, bench.species, bench.book, ownTests(*mended, then).tests);
    MendEffect effect;
    for (const std::optional<std::size_t>& index : {finding.joint, finding.otherJoint}) {
        const std::optional<std::size_t> same =
            index ? then.findJoint(resolved.joints[*index].name) : std::nullopt;
        if (same) {
            effect.joints.push_back({resolved.joints[*index].name,
                                     changedSizes(resolved.joints[*index], then.joints[*same]),
                                     now.strengthOf(*index),
                                     after.strengthOf(*same)});
        }
    }
    effect.mustMendBefore = countMustMend(check(piece, resolved, bench.species, bench.book));
    effect.mustMendAfter = countMustMend(check(*mended, then, bench.species, bench.book));
    return effect;
}

std::vector<FindingEffects> effectsOf(const Piece& piece,
                                      const ResolvedPiece& resolved,
                                      const std::vector<Finding>& findings,
                                      const Workbench& bench) {
    constexpr std::size_t kMostParts = 20000;  // resolved again, over all mends
    std::size_t parts = 0;
    std::vector<FindingEffects> all;
    for (const Finding& finding : findings) {
        FindingEffects effects;
        for (const Mend& mend : finding.mends) {
            const bool isTried =
                finding.joint && mend.edit && parts + resolved.parts.size() <= kMostParts;
            parts += isTried ? resolved.parts.size() : 0;
            effects.push_back(isTried ? effectOf(piece, resolved, finding, mend, bench)
                                      : std::nullopt);
        }
        all.push_back(std::move(effects));
    }
    return all;
}

std::vector<std::string> effectLines(const Piece& piece, const MendEffect& effect) {
    std::vector<std::string> lines;
    for (const MendedJoint& joint : effect.joints) {
        std::string line = joint.name + ": ";
        for (const ChangedSize& size : joint.sizes) {
            line += size.name + " " + showLength(size.before, piece.style) + " to " +
                    showLength(size.after, piece.style, true) + "; ";
        }
        const std::optional<double> times = joint.times();
        if (!times) {
            line += joint.after.whyNot.empty() ? "no estimate of its strength"
                                               : "no estimate: " + joint.after.whyNot;
        } else if (joint.isCovered()) {
            line += "bends at " + rangeText(joint.before.bending.range, "") + ", then " +
                    rangeText(joint.after.bending.range, "N\u00a0m") + ", " +
                    figureText(*times, 2) + " times";
        } else {
            constexpr double kAlike = 0.005;
            line += *times > 1.0 + kAlike   ? "ranks stronger"
                    : *times < 1.0 - kAlike ? "ranks weaker"
                                            : "ranks alike in strength";
            line += "; outside the sizes that were tested no figure is given";
        }
        lines.push_back(std::move(line));
    }
    const std::size_t left = effect.mustMendAfter;
    lines.push_back(left == 0 ? "nothing must be mended then"
                              : std::to_string(left) + " must be mended then, " +
                                    std::to_string(effect.mustMendBefore) + " now");
    return lines;
}

}  // namespace shoulderline
