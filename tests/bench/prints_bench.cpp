// Everything that is printed of the armchair, every sheet by itself, and the densest sheet painted
// as a window paints it while it is zoomed and moved.
#include <QGuiApplication>
#include <QHashSeed>
#include <QImage>
#include <QPainter>
#include <algorithm>
#include <chrono>

#include <benchmark/benchmark.h>

#include "core/drawing/lettering_metrics.h"
#include "core/drawing/print_order.h"
#include "tests/support/pieces.h"
#include "ui/painting/sheet_painter.h"
#include "ui/printing/pdf_writer.h"

namespace shoulderline {
namespace {

struct Chair {
    Piece piece = testing::sample("armchair");
    ResolvedPiece resolved = testing::resolved(piece);
    LetteringMetrics metrics;

    [[nodiscard]] PrintJob job(PrintKind kind, const char* paper = "A4") const {
        PrintOrder order;
        order.kind = kind;
        order.paper = *findPaper(paper);
        order.date = "2026-11-24";
        return printJob(piece, resolved, order, metrics);
    }
};

// All kinds of prints as PDF, one after another.
void everything(benchmark::State& state) {
    const Chair chair;
    std::size_t pages = 0;
    for (auto _ : state) {
        pages = 0;
        for (const PrintKind kind : kPrintKinds) {
            const PrintJob job = chair.job(kind);
            pages += job.pages.size();
            benchmark::DoNotOptimize(pdfOf(job, "2026-11-24"));
        }
    }
    state.counters["pages"] = static_cast<double>(pages);
}

void layout(benchmark::State& state, PrintKind kind) {
    const Chair chair;
    for (auto _ : state) {
        benchmark::DoNotOptimize(chair.job(kind));
    }
    state.counters["pages"] = static_cast<double>(chair.job(kind).pages.size());
}

// The slowest part drawing and joint drawing of the chair, as the pages of the window show them.
void slowestPartOnScreen(benchmark::State& state) {
    const Chair chair;
    const std::vector<PartKind> kinds = partKinds(chair.resolved);
    for (auto _ : state) {
        double slowest = 0.0;
        for (const PartKind& kind : kinds) {
            const auto start = std::chrono::steady_clock::now();
            benchmark::DoNotOptimize(
                partDrawing(chair.piece, chair.resolved, kind, 0.25, false, chair.metrics));
            const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
            slowest = std::max(slowest, took.count());
        }
        state.SetIterationTime(slowest);
    }
}

void slowestJointOnScreen(benchmark::State& state) {
    const Chair chair;
    for (auto _ : state) {
        double slowest = 0.0;
        for (std::size_t joint = 0; joint < chair.resolved.joints.size(); ++joint) {
            const auto start = std::chrono::steady_clock::now();
            benchmark::DoNotOptimize(
                jointDrawing(chair.piece, chair.resolved, joint, chair.metrics));
            const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
            slowest = std::max(slowest, took.count());
        }
        state.SetIterationTime(slowest);
    }
}

// A window of 1400 x 900 over the sheet with the most ops: fitted, and zoomed in six times and
// moved a little at every frame.
void zoomAndPan(benchmark::State& state, double zoom) {
    const Chair chair;
    const PrintJob job = chair.job(PrintKind::Set, "A3");
    const auto densest = std::max_element(
        job.contents.begin(), job.contents.end(), [](const Sheet& a, const Sheet& b) {
            return a.ops.size() < b.ops.size();
        });
    const SheetPainter painter;
    QImage image(1400, 900, QImage::Format_ARGB32_Premultiplied);
    double moved = 0.0;
    for (auto _ : state) {
        image.fill(Qt::white);
        QPainter onImage(&image);
        const double scale = zoom * 900.0 / densest->size.y;
        onImage.translate(-(zoom - 1.0) * 500.0 - moved, -(zoom - 1.0) * 300.0);
        onImage.scale(scale, scale);
        SheetLook look;
        look.leastWidth = 1.0 / scale;
        painter.paint(onImage, *densest, look);
        moved = moved > 60.0 ? 0.0 : moved + 1.0;
    }
    state.counters["ops"] = static_cast<double>(densest->ops.size());
}

BENCHMARK(everything)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(layout, parts_full_size, PrintKind::PartsFullSize)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(layout, part_sheets, PrintKind::PartSheets)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(layout, piece_sheet, PrintKind::PieceSheet)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(layout, pictorial, PrintKind::Pictorial)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(layout, set, PrintKind::Set)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(layout, patterns, PrintKind::Patterns)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(layout, story, PrintKind::Story)->Unit(benchmark::kMillisecond);
BENCHMARK(slowestPartOnScreen)->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK(slowestJointOnScreen)->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(zoomAndPan, fitted, 1.0)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(zoomAndPan, six_times, 6.0)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace shoulderline

int main(int argc, char** argv) {
    QHashSeed::setDeterministicGlobalSeed();
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication application(argc, argv);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
