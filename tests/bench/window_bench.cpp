// From a keystroke to the whole window redrawn, off screen: the armchair's rail thickness changed
// to and fro, everything that follows worked out, every widget that it touches repainted.

#include <QApplication>
#include <QTemporaryDir>

#include <benchmark/benchmark.h>

#include "tests/support/pieces.h"
#include "ui/window/main_window.h"
#include "ui/window/run_window.h"

namespace shoulderline {
namespace {

void keystrokeToRedrawn(benchmark::State& state) {
    const QTemporaryDir folder;  // for snapshots of unsaved work
    DialogPrompts prompts;
    MainWindow window({testing::ruleBook(),
                       testing::workshop(),
                       testing::speciesTable(),
                       testing::strengthBook()},
                      prompts,
                      QDir(folder.path()));
    window.document().start(testing::sample("armchair"), QString());
    window.resize(1440, 900);
    window.showPage(static_cast<int>(state.range(0)));
    window.show();
    QApplication::processEvents();
    bool isThick = false;
    for (auto _ : state) {
        isThick = !isThick;
        const bool isDone =
            window.document()
                .apply(SetMeasure{"rail thickness", isThick ? "1 1/8 in" : "7/8 in"})
                .has_value();
        benchmark::DoNotOptimize(isDone);
        QApplication::processEvents();
    }
}
// Pages: Piece, Parts, Joints, Prints.
BENCHMARK(keystrokeToRedrawn)->DenseRange(0, 3)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace shoulderline

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    shoulderline::prepareLook(application);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
