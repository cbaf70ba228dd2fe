#pragma once

#include <bitset>
#include <optional>
#include <string>
#include <vector>

#include "core/check/strength_book.h"
#include "core/resolve/resolved_piece.h"
#include "core/timber/species.h"

namespace shoulderline {

using Assumptions = std::bitset<kAssumptionCount>;

// Sizes to judge a joint by in the place of its own, in millimetres: what a mend would give.
struct TenonSizes {
    std::optional<double> thickness;
    std::optional<double> width;
    std::optional<double> length;  // inside the wood
};

// What the estimate of one joint is, or why there is none.
struct JointStrength {
    std::string whyNot;    // one clause where there is no estimate; else empty
    JointSection section;  // what it was worked out from
    Capacity bending;      // newton metres, in the plane of the rail and the tenon's width
    Capacity withdrawal;   // newtons
    Capacity shear;        // newtons, along the tenon's width
    // Its sizes lie near those of a published test, or the maker broke one like it. Where not, the
    // figures serve to rank joints only and are not to be shown.
    bool isCovered = false;
    std::optional<double> ownTest;  // newton metres, of the maker's that it was brought to
    Assumptions assumptions;

    [[nodiscard]] bool isEstimated() const { return whyNot.empty(); }
};

// A test of the maker's, worked out.
struct OwnTest {
    std::string tenoned;  // stated names
    std::string mortised;
    double newtonMetres = 0.0;
    std::optional<std::size_t> joint;  // the first joint between those parts
};

// Estimates joints of one piece: finds their wood once, keeps what they are held to. The referred
// piece, table and book must outlive it.
class StrengthEstimator {
  public:
    // `own`: worked out by ownTests().
    StrengthEstimator(const Piece& piece,
                      const ResolvedPiece& resolved,
                      const SpeciesTable& species,
                      const StrengthBook& book,
                      std::vector<OwnTest> own = {});

    // The strength of one joint, by the sizes that it has, or those of `changed` where given. Cheap
    // enough to be asked for every mend of every finding.
    [[nodiscard]] JointStrength strengthOf(std::size_t joint, const TenonSizes& changed = {}) const;

    // What the moment of a joint may be, as a share of its ultimate one: once, or many times over.
    [[nodiscard]] double allowableShare(bool isRepeated) const;
    [[nodiscard]] const Adhesive& adhesive() const { return adhesive_; }

  private:
    [[nodiscard]] const Species* woodOf(std::size_t part) const { return woods_[part]; }
    [[nodiscard]] JointSection sectionOf(const ResolvedJoint&, const TenonSizes& changed) const;
    // Of a tenon whose end is cut askew, over its cheeks; none for a square one.
    [[nodiscard]] std::optional<double> meanLength(const ResolvedJoint&) const;
    [[nodiscard]] bool isCovered(const JointSection&) const;
    void bringToOwnTest(const ResolvedJoint&, JointStrength&) const;
    [[nodiscard]] JointStrength byTheBook(std::size_t joint, const TenonSizes& changed) const;

    const ResolvedPiece& resolved_;
    const StrengthBook& book_;
    const Adhesive& adhesive_;
    std::vector<const Species*> woods_;  // of each part; null where there are no figures
    std::vector<bool> isHeatTreated_;    // likewise
    std::vector<OwnTest> own_;
    std::vector<JointStrength> ownByTheBook_;  // of own_, without their tests
};

// The maker's tests of a piece, worked out; of those that cannot be, or that are of no joint there
// is, one sentence each.
struct OwnTests {
    std::vector<OwnTest> tests;
    std::vector<std::string> troubles;
};
[[nodiscard]] OwnTests ownTests(const Piece& piece, const ResolvedPiece& resolved);

}  // namespace shoulderline
