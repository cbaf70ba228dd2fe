#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/check/strength_model.h"
#include "core/measure/result.h"

namespace shoulderline {

// A glue: how it compares with the one the tests were made with, and what share of the ultimate
// moment it bears many times over; none where no source was read.
struct Adhesive {
    std::string name;
    std::optional<double> momentFactor;
    std::optional<double> fatigueShare;
    std::string source;
};

// A set of like joints that were broken, as published. Millimetres, newton metres.
struct PublishedTest {
    std::string name;
    std::string species;
    std::string adhesive;
    double tenonThickness = 0.0;
    double tenonWidth = 0.0;
    double tenonLength = 0.0;
    double railThickness = 0.0;
    double railWidth = 0.0;
    int count = 0;
    double mean = 0.0;
    double deviation = 0.0;
    std::string source;
};

// What the estimates take for granted. The texts and sources are rows of the strength book.
enum class Assumption {
    CloseShoulders,
    WoodFigures,
    GlueFace,
    TenonShoulder,
    MortiseWall,
    TJointWidth,
    BondShear,
    CrossShear,
    RoundEnds,
    MitredEnd,
    OtherSpecies,
    OtherSizes,
    OwnTest,
    GlueAlike,
    GlueLeastShare,
    Repeated,
    Once,
    EqualFrames,
    HeatTreated,
    WholeChairs,
};
inline constexpr std::size_t kAssumptionCount =
    static_cast<std::size_t>(Assumption::WholeChairs) + 1;

struct AssumptionText {
    std::string id;
    std::string text;
    std::string source;
};

// What a published load acts on.
enum class LoadKind { Seat, Back, BackPush, ArmOut, ArmDown, LegFront, LegSide, Stated };

// A load as a source gives it. `newtons` acts level on backs, legs and outward on arms, and down on
// arms; `seatNewtons` down on the seat.
struct PublishedLoad {
    std::string id;
    std::string name;
    LoadKind kind = LoadKind::Seat;
    double newtons = 0.0;
    double seatNewtons = 0.0;
    bool isRepeated = false;
    std::string source;
};

// The published figures on the strength of joints and the loads on seats.
class StrengthBook {
  public:
    // Reads resources/strength/strength_book.json. Errors: BadFile with the place.
    [[nodiscard]] static Result<StrengthBook> read(std::string_view json);

    [[nodiscard]] const std::string& caution() const { return caution_; }
    [[nodiscard]] Range bond() const { return bond_; }  // of glued cheeks drawn out, MPa
    [[nodiscard]] const std::string& bondSource() const { return bondSource_; }
    // How far each size of a tenon may be from a tested one, as a share of that.
    [[nodiscard]] double coveredShare() const { return coveredShare_; }
    [[nodiscard]] double tJointWidth() const { return tJointWidth_; }  // millimetres
    [[nodiscard]] double roundEnds() const { return roundEnds_; }      // factor, below 1
    // Of withdrawal, where either wood is heat-treated; below 1.
    [[nodiscard]] double heatTreated() const { return heatTreated_; }
    [[nodiscard]] const std::vector<Adhesive>& adhesives() const { return adhesives_; }
    // By name; the first one for an empty or unknown name.
    [[nodiscard]] const Adhesive& adhesive(std::string_view name) const;
    [[nodiscard]] const std::vector<PublishedTest>& tests() const { return tests_; }
    [[nodiscard]] const std::vector<PublishedLoad>& loads() const { return loads_; }
    [[nodiscard]] const AssumptionText& operator[](Assumption assumption) const {
        return assumptions_[static_cast<std::size_t>(assumption)];
    }
    // Share of the ultimate moment that counts under a single load: the least of (mean - k s) /
    // mean over the tests, k the tolerance factor at the book's confidence and proportion.
    [[nodiscard]] double staticShare() const { return staticShare_; }
    // The share that counts under repeated load: the glue's own, or the least of all.
    [[nodiscard]] double fatigueShare(const Adhesive&) const;
    // Greatest spread of the tests, deviation over mean.
    [[nodiscard]] double spread() const { return spread_; }

  private:
    std::string caution_;
    Range bond_;
    std::string bondSource_;
    double coveredShare_ = 0.0;
    double tJointWidth_ = 0.0;
    double roundEnds_ = 1.0;
    double heatTreated_ = 1.0;
    double staticShare_ = 0.0;
    double spread_ = 0.0;
    std::vector<Adhesive> adhesives_;
    std::vector<PublishedTest> tests_;
    std::vector<PublishedLoad> loads_;
    std::vector<AssumptionText> assumptions_;
};

}  // namespace shoulderline
