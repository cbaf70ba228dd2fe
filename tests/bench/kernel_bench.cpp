// Hidden lines of the armchair as it is pictured, ours and the geometry kernel's (Open CASCADE)
// side by side in one run; and one view of a piece of a thousand parts.
#include <benchmark/benchmark.h>

#include "core/drawing/pictorial.h"
#include "core/drawing/piece_view.h"
#include "core/geometry/hidden_lines.h"
#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"
#include "tests/support/row_of_chairs.h"

namespace shoulderline {
namespace {

void ours(benchmark::State& state) {
    const ResolvedPiece chair = testing::resolved(testing::sample("armchair"));
    std::vector<Polyhedron> solids;
    for (const ResolvedPart& part : chair.parts) {
        solids.push_back(part.body.toPolyhedron()->transformed(part.frame));
        for (const TenonSolid& tenon : part.tenons) {
            solids.push_back(Polyhedron::box(tenon.box, part.frame));
        }
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(hiddenLines(solids, pictorialView()));
    }
    state.counters["solids"] = static_cast<double>(solids.size());
}

void kernel(benchmark::State& state) {
    const ResolvedPiece chair = testing::resolved(testing::sample("armchair"));
    std::vector<reference::Solid> solids;
    for (const ResolvedPart& part : chair.parts) {
        solids.emplace_back(reference::SolidPlan{part.body, part.frame, {}, {}});
        for (const TenonSolid& tenon : part.tenons) {
            solids.emplace_back(reference::SolidPlan{tenon.box, part.frame, {}, {}});
        }
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(reference::seenLengths(solids, pictorialView()));
    }
    state.counters["solids"] = static_cast<double>(solids.size());
}

void thousandParts(benchmark::State& state, const View& view) {
    const ResolvedPiece row = testing::resolved(testing::rowOfChairs(25));
    for (auto _ : state) {
        benchmark::DoNotOptimize(elevationOf(row, view));
    }
    state.counters["parts"] = static_cast<double>(row.parts.size());
}

void thousandPartsPicture(benchmark::State& state) {
    const ResolvedPiece row = testing::resolved(testing::rowOfChairs(25));
    for (auto _ : state) {
        benchmark::DoNotOptimize(pictureOf(row, pictorialView()));
    }
}

BENCHMARK(ours)->Unit(benchmark::kMillisecond);
BENCHMARK(kernel)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(thousandParts, front, View::front())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(thousandParts, side, View::side())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(thousandParts, plan, View::plan())->Unit(benchmark::kMillisecond);
BENCHMARK(thousandPartsPicture)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace shoulderline

BENCHMARK_MAIN();
