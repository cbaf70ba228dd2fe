// From a keystroke, or a step of a drag, to the whole window redrawn, off screen: everything that
// follows worked out, every widget that it touches repainted.

#include <QApplication>
#include <QMouseEvent>
#include <QTemporaryDir>

#include <benchmark/benchmark.h>

#include "tests/support/pieces.h"
#include "ui/pages/part_canvas.h"
#include "ui/pages/piece_canvas.h"
#include "ui/window/main_window.h"
#include "ui/window/run_window.h"

namespace shoulderline {
namespace {

// The window on the armchair.
class ArmchairWindow {
  public:
    explicit ArmchairWindow(int page)
        : window_({testing::ruleBook(),
                   testing::workshop(),
                   testing::speciesTable(),
                   testing::strengthBook()},
                  prompts_,
                  QDir(folder_.path())) {
        window_.document().start(testing::sample("armchair"), QString());
        window_.resize(1440, 900);
        window_.showPage(page);
        window_.show();
        QApplication::processEvents();
    }
    [[nodiscard]] Document& document() { return window_.document(); }
    template <class Kind>
    [[nodiscard]] Kind& canvas(MainWindow::PageIndex page) const {
        return static_cast<Kind&>(*window_.page(page).canvas());
    }

  private:
    QTemporaryDir folder_;  // for snapshots of unsaved work
    DialogPrompts prompts_;
    MainWindow window_;
};

// The rail thickness changed to and fro.
void keystrokeToRedrawn(benchmark::State& state) {
    ArmchairWindow window(static_cast<int>(state.range(0)));
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

void send(QWidget& to, QEvent::Type type, QPointF at) {
    const bool isPress = type == QEvent::MouseButtonPress;
    const bool isMove = type == QEvent::MouseMove;
    QMouseEvent event(type,
                      at,
                      to.mapToGlobal(at),
                      isMove ? Qt::NoButton : Qt::LeftButton,
                      isPress || isMove ? Qt::LeftButton : Qt::NoButton,
                      Qt::NoModifier);
    QApplication::sendEvent(&to, &event);
}

// Held down at `from` and moved by `way` and back again, a step each time.
void dragToAndFro(benchmark::State& state, QWidget& canvas, QPointF from, QPointF way) {
    send(canvas, QEvent::MouseButtonPress, from);
    QApplication::processEvents();
    bool isAway = false;
    for (auto _ : state) {
        isAway = !isAway;
        send(canvas, QEvent::MouseMove, isAway ? from + way : from);
        QApplication::processEvents();
    }
    send(canvas, QEvent::MouseButtonRelease, from);
}

void dragOfAnOutlinePoint(benchmark::State& state) {
    ArmchairWindow window(MainWindow::PartsPageIndex);
    window.document().choosePart(window.document().resolved().findPart("arm, right"));
    QApplication::processEvents();
    auto& canvas = window.canvas<PartCanvas>(MainWindow::PartsPageIndex);
    dragToAndFro(state, canvas, canvas.handleAt(1), {30.0, 0.0});
}
BENCHMARK(dragOfAnOutlinePoint)->Unit(benchmark::kMillisecond);

void dragOfARodsLine(benchmark::State& state) {
    ArmchairWindow window(MainWindow::PiecePageIndex);
    auto& canvas = window.canvas<PieceCanvas>(MainWindow::PiecePageIndex);
    const std::vector<RodLine>& lines = canvas.rod(RodKind::Heights).lines;
    std::size_t seat = 0;
    while (seat + 1 < lines.size() && lines[seat].at < 425.0) {
        ++seat;
    }
    dragToAndFro(state, canvas, canvas.rodLineAt(RodKind::Heights, seat), {0.0, -20.0});
}
BENCHMARK(dragOfARodsLine)->Unit(benchmark::kMillisecond);

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
