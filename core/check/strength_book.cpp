#include "core/check/strength_book.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <nlohmann/json.hpp>

#include "core/check/tolerance_factor.h"

namespace shoulderline {

namespace {

using Json = nlohmann::json;

constexpr std::array<std::string_view, kAssumptionCount> kAssumptionIds{
    "close.shoulders", "wood.figures", "glue.face",    "tenon.shoulder", "mortise.wall",
    "t.joint.width",   "bond.shear",   "cross.shear",  "round.ends",     "mitred.end",
    "other.species",   "other.sizes",  "own.test",     "glue.alike",     "glue.least.share",
    "repeated",        "once",         "equal.frames", "heat.treated",   "whole.chairs"};
// In the order of LoadKind.
constexpr std::array<std::string_view, 7> kLoadKinds{
    "seat", "back", "back push", "arm out", "arm down", "leg front", "leg side"};

// Reads members of the book's objects; keeps the first place where one is not as expected.
class BookReader {
  public:
    std::string text(const Json& row, const char* key, const std::string& place) {
        const auto it = row.find(key);
        if (it == row.end() || !it->is_string() || it->get_ref<const std::string&>().empty()) {
            refuse(place + "/" + key, "A text is expected.");
            return {};
        }
        return it->get<std::string>();
    }
    double figure(const Json& row, const char* key, const std::string& place) {
        const std::optional<double> value = optional(row, key);
        if (!value || !std::isfinite(*value) || *value <= 0.0) {
            refuse(place + "/" + key, "A number above zero is expected.");
            return 1.0;
        }
        return *value;
    }
    static std::optional<double> optional(const Json& row, const char* key) {
        const auto it = row.find(key);
        return it != row.end() && it->is_number() ? std::optional(it->get<double>()) : std::nullopt;
    }
    const Json& object(const Json& row, const char* key) {
        static const Json kEmpty = Json::object();
        const auto it = row.find(key);
        if (it == row.end() || !it->is_object()) {
            refuse(std::string("/") + key, "An object is expected.");
            return kEmpty;
        }
        return *it;
    }
    template <class Read>
    void each(const Json& document, const char* key, Read read) {
        const auto it = document.find(key);
        const std::string place = std::string("/") + key;
        if (it == document.end() || !it->is_array() || it->empty()) {
            refuse(place, "A list is expected.");
            return;
        }
        for (std::size_t i = 0; i < it->size(); ++i) {
            const std::string at = place + "/" + std::to_string(i);
            if (!(*it)[i].is_object()) {
                refuse(at, "An object is expected.");
                return;
            }
            read((*it)[i], at);
        }
    }
    void refuse(std::string place, std::string message) {
        if (!error_) {
            error_ = Error{ErrorCode::BadFile, std::move(message), std::move(place), 0};
        }
    }
    [[nodiscard]] const std::optional<Error>& error() const { return error_; }

  private:
    std::optional<Error> error_;
};

PublishedTest readTest(BookReader& in, const Json& row, const std::string& place) {
    PublishedTest test;
    test.name = in.text(row, "name", place);
    test.species = in.text(row, "species", place);
    test.adhesive = in.text(row, "adhesive", place);
    test.tenonThickness = in.figure(row, "tenon_thickness_mm", place);
    test.tenonWidth = in.figure(row, "tenon_width_mm", place);
    test.tenonLength = in.figure(row, "tenon_length_mm", place);
    test.railThickness = in.figure(row, "rail_thickness_mm", place);
    test.railWidth = in.figure(row, "rail_width_mm", place);
    test.count = static_cast<int>(std::min(in.figure(row, "count", place), 1e6));
    test.mean = in.figure(row, "mean_newton_metres", place);
    test.deviation = in.figure(row, "deviation_newton_metres", place);
    test.source = in.text(row, "source", place);
    return test;
}

PublishedLoad readLoad(BookReader& in, const Json& row, const std::string& place) {
    PublishedLoad load;
    load.id = in.text(row, "id", place);
    load.name = in.text(row, "name", place);
    load.source = in.text(row, "source", place);
    load.newtons = BookReader::optional(row, "newtons").value_or(0.0);
    load.seatNewtons = BookReader::optional(row, "seat_newtons").value_or(0.0);
    load.isRepeated = row.contains("repeated") && row["repeated"] == true;
    const std::string kind = in.text(row, "kind", place);
    const auto it = std::find(kLoadKinds.begin(), kLoadKinds.end(), kind);
    if (it == kLoadKinds.end() || load.newtons + load.seatNewtons <= 0.0) {
        in.refuse(place, "A load needs a kind and a force.");
        return load;
    }
    load.kind = static_cast<LoadKind>(it - kLoadKinds.begin());
    return load;
}

}  // namespace

Result<StrengthBook> StrengthBook::read(std::string_view source) {
    const Json document = Json::parse(source, nullptr, false);
    if (!document.is_object()) {
        return fail(ErrorCode::BadFile, "The strength book is not a JSON object.", "/");
    }
    BookReader in;
    StrengthBook book;
    book.caution_ = in.text(document, "caution", "");
    const Json& bond = in.object(document, "bond_shear");
    book.bond_ = {in.figure(bond, "low_mpa", "/bond_shear"),
                  in.figure(bond, "high_mpa", "/bond_shear")};
    book.bondSource_ = in.text(bond, "source", "/bond_shear");
    book.coveredShare_ = in.figure(document, "covered_share", "");
    book.tJointWidth_ = in.figure(document, "t_joint_width_mm", "");
    book.roundEnds_ = in.figure(in.object(document, "round_ends"), "factor", "/round_ends");
    book.heatTreated_ = in.figure(in.object(document, "heat_treated"), "factor", "/heat_treated");
    in.each(document, "adhesives", [&](const Json& row, const std::string& place) {
        book.adhesives_.push_back({in.text(row, "name", place),
                                   BookReader::optional(row, "moment_factor"),
                                   BookReader::optional(row, "fatigue_share"),
                                   in.text(row, "source", place)});
    });
    in.each(document, "tests", [&](const Json& row, const std::string& place) {
        book.tests_.push_back(readTest(in, row, place));
    });
    in.each(document, "loads", [&](const Json& row, const std::string& place) {
        book.loads_.push_back(readLoad(in, row, place));
    });
    in.each(document, "assumptions", [&](const Json& row, const std::string& place) {
        const std::size_t index = book.assumptions_.size();
        book.assumptions_.push_back({in.text(row, "id", place),
                                     in.text(row, "text", place),
                                     in.text(row, "source", place)});
        if (index >= kAssumptionCount || book.assumptions_.back().id != kAssumptionIds[index]) {
            in.refuse(place, "The assumptions are expected in the order the program knows.");
        }
    });
    if (book.assumptions_.size() != kAssumptionCount) {
        in.refuse("/assumptions", "An assumption is missing.");
    }
    const double confidence = in.figure(document, "static_confidence", "");
    const double proportion = in.figure(document, "static_proportion", "");
    if (in.error()) {
        return tl::unexpected(*in.error());
    }
    book.staticShare_ = 1.0;
    for (const PublishedTest& test : book.tests_) {
        const double k = toleranceFactor(test.count, confidence, proportion);
        if (!(k >= 0.0)) {
            return fail(ErrorCode::BadFile, "The tests give no tolerance factor.", "/tests");
        }
        const double spread = test.deviation / test.mean;
        book.staticShare_ = std::min(book.staticShare_, 1.0 - k * spread);
        book.spread_ = std::max(book.spread_, spread);
    }
    return book;
}

const Adhesive& StrengthBook::adhesive(std::string_view name) const {
    const auto it = std::find_if(adhesives_.begin(), adhesives_.end(), [name](const Adhesive& one) {
        return one.name == name;
    });
    return it == adhesives_.end() ? adhesives_.front() : *it;
}

double StrengthBook::fatigueShare(const Adhesive& adhesive) const {
    if (adhesive.fatigueShare) {
        return *adhesive.fatigueShare;
    }
    double least = 1.0;
    for (const Adhesive& one : adhesives_) {
        least = std::min(least, one.fatigueShare.value_or(least));
    }
    return least;
}

}  // namespace shoulderline
