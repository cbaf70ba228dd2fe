#include "core/measure/measures.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/measure/measure_name.h"

namespace shoulderline {

namespace {

constexpr std::size_t kMostNamesInMessage = 8;

using Indexes = std::map<std::string, std::size_t, std::less<>>;

Result<Value> lookupIn(const std::vector<MeasureResult>& results,
                       const Indexes& indexes,
                       std::string_view name) {
    const auto found = indexes.find(name);
    if (found == indexes.end()) {
        return fail(ErrorCode::UnknownName, "there is no measure '" + std::string(name) + "'");
    }
    const Result<Value>& value = results[found->second].value;
    if (!value) {
        return fail(value.error().code,
                    "this hangs on '" + std::string(name) + "', which could not be worked out");
    }
    return value;
}

// Walks the measures so that each comes after those it mentions, and evaluates them on the way. The
// walk keeps its own stack: a chain may be as long as a file has measures.
class Evaluation {
  public:
    Evaluation(std::vector<MeasureResult>& results,
               const Indexes& indexes,
               const std::vector<std::optional<Expression>>& expressions)
        : results_(results),
          indexes_(indexes),
          expressions_(expressions),
          states_(results.size(), State::Untouched),
          pathPlaces_(results.size()),
          lookup_([this](std::string_view name) { return lookupIn(results_, indexes_, name); }) {}

    void run() {
        for (std::size_t i = 0; i < results_.size(); ++i) {
            if (states_[i] == State::Untouched) {
                walkFrom(i);
            }
        }
    }

  private:
    enum class State { Untouched, Waiting, InCycle, Done };
    struct Visit {
        std::size_t measure;
        std::size_t nextDependency;
        // The path from this place to its end is known to lie in cycles; past the end if not.
        std::size_t inCycleFrom;
    };

    void enter(std::size_t measure) {
        states_[measure] = State::Waiting;
        pathPlaces_[measure] = path_.size();
        path_.push_back({measure, 0, path_.size() + 1});
    }

    void walkFrom(std::size_t start) {
        enter(start);
        while (!path_.empty()) {
            Visit& visit = path_.back();
            const auto& dependencies = results_[visit.measure].dependsOn;
            if (visit.nextDependency == dependencies.size()) {
                leave(visit.measure);
                continue;
            }
            const auto found = indexes_.find(dependencies[visit.nextDependency++]);
            if (found == indexes_.end()) {
                continue;
            }
            const State state = states_[found->second];
            if (state == State::Untouched) {
                enter(found->second);
            } else if (state != State::Done) {
                reportCycle(found->second);
            }
        }
    }

    void leave(std::size_t measure) {
        MeasureResult& result = results_[measure];
        if (states_[measure] != State::InCycle && expressions_[measure]) {
            result.value = expressions_[measure]->evaluate(lookup_);
            // A bare measure counts as a length, so it must be one that can be worked with.
            if (result.value && result.value->isBare()) {
                if (const auto length = result.value->asLength(); !length) {
                    result.value = tl::unexpected(length.error());
                }
            }
            if (!result.value) {
                result.value.error().where = result.name;
            }
        }
        states_[measure] = State::Done;
        const std::size_t inCycleFrom = path_.back().inCycleFrom;
        path_.pop_back();
        if (!path_.empty()) {
            path_.back().inCycleFrom =
                std::min(path_.back().inCycleFrom, std::min(inCycleFrom, path_.size()));
        }
    }

    // The measures on the path from `first` on hang on one another in a ring. Those already known
    // to are passed over, so that no file can make this slow.
    void reportCycle(std::size_t first) {
        const std::size_t start = pathPlaces_[first];
        for (std::size_t place = start; place < path_.back().inCycleFrom && place < path_.size();
             ++place) {
            const std::size_t measure = path_[place].measure;
            if (std::exchange(states_[measure], State::InCycle) != State::InCycle) {
                MeasureResult& result = results_[measure];
                result.value = fail(ErrorCode::Cycle, ringSentence(start, place), result.name);
            }
        }
        path_.back().inCycleFrom = std::min(path_.back().inCycleFrom, start);
    }

    // 'a' hangs on 'b', which hangs on 'a': the ring from `start` to the end of the path, told from
    // `place` on.
    [[nodiscard]] std::string ringSentence(std::size_t start, std::size_t place) const {
        const std::size_t size = path_.size() - start;
        const auto nameAfter = [&](std::size_t steps) {
            const std::size_t inRing = (place - start + steps) % size;
            return "'" + results_[path_[start + inRing].measure].name + "'";
        };
        if (size == 1) {
            return nameAfter(0) + " hangs on itself";
        }
        std::string sentence = nameAfter(0) + " hangs on " + nameAfter(1);
        for (std::size_t i = 2; i <= std::min(size, kMostNamesInMessage); ++i) {
            sentence += ", which hangs on " + nameAfter(i);
        }
        if (size > kMostNamesInMessage) {
            sentence += ", and so on round " + std::to_string(size) + " measures";
        }
        return sentence;
    }

    std::vector<MeasureResult>& results_;
    const Indexes& indexes_;
    const std::vector<std::optional<Expression>>& expressions_;
    std::vector<State> states_;
    std::vector<Visit> path_;
    std::vector<std::size_t> pathPlaces_;  // of each measure that is on the path
    Lookup lookup_;
};

}  // namespace

MeasureTable MeasureTable::evaluateAll(const std::vector<NamedExpression>& measures, Unit bare) {
    MeasureTable table;
    std::vector<std::optional<Expression>> expressions(measures.size());
    table.results_.reserve(measures.size());
    for (std::size_t i = 0; i < measures.size(); ++i) {
        MeasureResult result = {tidyName(measures[i].name), Value(), {}};
        if (!isMeasureName(result.name)) {
            result.value = fail(ErrorCode::BadText,
                                "a measure cannot have this name; a name is words of letters and "
                                "digits, begins with a letter, and is no unit or function",
                                result.name);
        } else if (!table.indexes_.emplace(result.name, i).second) {
            result.value =
                fail(ErrorCode::BadText,
                     "there is already a measure '" + result.name + "'; the first stands",
                     result.name);
        } else if (auto expression = Expression::parse(measures[i].text, bare); !expression) {
            result.value = tl::unexpected(std::move(expression.error()));
            result.value.error().where = result.name;
        } else {
            result.dependsOn = expression->names();
            expressions[i] = std::move(*expression);
        }
        table.results_.push_back(std::move(result));
    }
    Evaluation(table.results_, table.indexes_, expressions).run();
    return table;
}

Result<Value> MeasureTable::lookup(std::string_view name) const {
    return lookupIn(results_, indexes_, name);
}

Lookup MeasureTable::lookupFunction() const {
    return [this](std::string_view name) { return lookup(name); };
}

}  // namespace shoulderline
