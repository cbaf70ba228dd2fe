// Resolving and checking: the armchair, and rows of it up to 10,000 parts.

#include <benchmark/benchmark.h>

#include "core/check/finding.h"
#include "core/resolve/ripple.h"
#include "core/storage/piece_text.h"
#include "tests/support/pieces.h"
#include "tests/support/row_of_chairs.h"

namespace shoulderline {
namespace {

void resolveRow(benchmark::State& state) {
    const Piece piece = testing::rowOfChairs(static_cast<int>(state.range(0)));
    std::size_t parts = 0;
    for (auto _ : state) {
        const ResolvedPiece resolved = testing::resolved(piece);
        parts = resolved.parts.size();
        benchmark::DoNotOptimize(resolved);
    }
    state.counters["parts"] = static_cast<double>(parts);
    state.counters["per_part"] = benchmark::Counter(
        static_cast<double>(parts),
        benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(resolveRow)->Arg(1)->Arg(10)->Arg(100)->Arg(250)->Unit(benchmark::kMicrosecond);

void checkRow(benchmark::State& state) {
    const Piece piece = testing::rowOfChairs(static_cast<int>(state.range(0)));
    const ResolvedPiece resolved = testing::resolved(piece);
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            check(piece, resolved, testing::speciesTable(), testing::strengthBook()));
    }
    const auto parts = static_cast<double>(resolved.parts.size());
    state.counters["parts"] = parts;
    state.counters["joints"] = static_cast<double>(resolved.joints.size());
    state.counters["per_part"] = benchmark::Counter(
        parts, benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(checkRow)->Arg(1)->Arg(10)->Arg(100)->Arg(250)->Unit(benchmark::kMicrosecond);

void readArmchair(benchmark::State& state) {
    const std::string text = testing::textOf("samples/armchair.shoulder");
    for (auto _ : state) {
        benchmark::DoNotOptimize(readPiece(text));
    }
}
BENCHMARK(readArmchair)->Unit(benchmark::kMicrosecond);

void rippleOfThickerRails(benchmark::State& state) {
    Piece piece = testing::sample("armchair");
    const ResolvedPiece before = testing::resolved(piece);
    testing::statedMeasure(piece, "rail thickness").expression = "1 1/8 in";
    const ResolvedPiece after = testing::resolved(piece);
    for (auto _ : state) {
        benchmark::DoNotOptimize(ripple(before, after));
    }
}
BENCHMARK(rippleOfThickerRails)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace shoulderline

BENCHMARK_MAIN();
