#include <vector>

#include <benchmark/benchmark.h>

#include "core/geometry/hidden_lines.h"
#include "tests/core/geometry/random_frames.h"

namespace shoulderline {
namespace {

// 61 posts and rails with 100 tenons: ten bays of five rails each.
std::vector<Polyhedron> chairSized(double degrees) {
    const Frame turned = Frame::turned({}, Angle::degrees(degrees), {}, Angle::degrees(degrees));
    std::vector<Polyhedron> solids;
    for (const test::Stick& stick : test::framedSticks(1, 10, 5)) {
        solids.push_back(Polyhedron::box(stick.box, turned.compose(stick.frame)));
    }
    return solids;
}

void squareOn(benchmark::State& state) {
    const std::vector<Polyhedron> solids = chairSized(0);
    for (auto _ : state) {
        benchmark::DoNotOptimize(hiddenLines(solids, View::front()));
    }
    state.counters["solids"] = static_cast<double>(solids.size());
}

void squareOnMerged(benchmark::State& state) {
    const std::vector<Polyhedron> solids = chairSized(0);
    for (auto _ : state) {
        benchmark::DoNotOptimize(mergeCoincident(hiddenLines(solids, View::front())));
    }
}

void fromTheSide(benchmark::State& state) {
    const std::vector<Polyhedron> solids = chairSized(0);
    for (auto _ : state) {
        benchmark::DoNotOptimize(hiddenLines(solids, View::side()));
    }
}

void fromTheSideMerged(benchmark::State& state) {
    const std::vector<Polyhedron> solids = chairSized(0);
    for (auto _ : state) {
        benchmark::DoNotOptimize(mergeCoincident(hiddenLines(solids, View::side())));
    }
}

void askew(benchmark::State& state) {
    const std::vector<Polyhedron> solids = chairSized(7);
    for (auto _ : state) {
        benchmark::DoNotOptimize(hiddenLines(solids, View::front()));
    }
}

BENCHMARK(squareOn)->Unit(benchmark::kMicrosecond);
BENCHMARK(squareOnMerged)->Unit(benchmark::kMicrosecond);
BENCHMARK(fromTheSide)->Unit(benchmark::kMicrosecond);
BENCHMARK(fromTheSideMerged)->Unit(benchmark::kMicrosecond);
BENCHMARK(askew)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace shoulderline
