// Drawings of the armchair: elevations, part drawings, full-size prints, and how much of a print's
// time is Qt's own.
#include <QBuffer>
#include <QGuiApplication>
#include <QHashSeed>
#include <QLineF>
#include <QPainter>
#include <QPdfWriter>
#include <QPolygonF>

#include <benchmark/benchmark.h>

#include "core/drawing/dashes.h"
#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/lettering_widths.h"
#include "core/drawing/overloaded.h"
#include "core/drawing/pictorial.h"
#include "core/drawing/piece_view.h"
#include "core/drawing/pulled_apart.h"
#include "core/drawing/rods.h"
#include "tests/support/pieces.h"
#include "ui/painting/lettering_font.h"
#include "ui/printing/page_size.h"
#include "ui/printing/pdf_writer.h"

namespace shoulderline {
namespace {

struct Chair {
    Piece piece = testing::sample("armchair");
    ResolvedPiece resolved = testing::resolved(piece);
    LetteringMetrics metrics;

    [[nodiscard]] PrintJob fullSize() const {
        return fullSizeJob(piece, resolved, {}, *findPaper("A4"), {}, "2026-11-24", metrics);
    }
};

void elevation(benchmark::State& state, const View& view) {
    const Chair chair;
    for (auto _ : state) {
        benchmark::DoNotOptimize(elevationOf(chair.resolved, view));
    }
}

// The picture with hidden lines removed: assembled, and pulled apart with its mortises.
void pictorial(benchmark::State& state, bool isApart) {
    const Chair chair;
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            pictureOf(chair.resolved,
                      pictorialView(),
                      isApart ? pulledApart(chair.resolved, 50.0) : std::vector<Vec3>{}));
    }
}

void pictorialOnPaper(benchmark::State& state) {
    const Chair chair;
    for (auto _ : state) {
        benchmark::DoNotOptimize(pictorialSheet(
            chair.piece, chair.resolved, {{420, 297}, 0.0, "2026-11-24", 0, 0}, chair.metrics));
    }
}

void drawingSet(benchmark::State& state) {
    const Chair chair;
    const Paper paper = *findPaper("A3");
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            setJob(chair.piece, chair.resolved, paper, "2026-11-24", chair.metrics));
    }
}

void partDrawings(benchmark::State& state) {
    const Chair chair;
    const std::vector<PartKind> kinds = partKinds(chair.resolved);
    for (auto _ : state) {
        for (const PartKind& kind : kinds) {
            benchmark::DoNotOptimize(
                partDrawing(chair.piece, chair.resolved, kind, 0.25, false, chair.metrics));
        }
    }
    state.counters["drawings"] = static_cast<double>(kinds.size());
}

void rods(benchmark::State& state) {
    const Chair chair;
    for (auto _ : state) {
        for (const RodKind kind : {RodKind::Heights, RodKind::Widths, RodKind::Depths}) {
            benchmark::DoNotOptimize(rodOf(chair.piece, chair.resolved, kind));
        }
    }
}

void fullSizeLayout(benchmark::State& state) {
    const Chair chair;
    for (auto _ : state) {
        benchmark::DoNotOptimize(chair.fullSize());
    }
}

void fullSizePdf(benchmark::State& state) {
    const Chair chair;
    for (auto _ : state) {
        const Result<std::string> pdf = pdfOf(chair.fullSize(), "2026-11-24");
        state.counters["bytes"] = static_cast<double>(pdf ? pdf->size() : 0);
    }
}

// What a sheet comes to in Qt's own terms, worked out beforehand: lines by pen width, filled
// polygons, plain text.
struct Bare {
    struct Words {
        QPointF at;
        double scale = 1.0;
        bool isTurned = false;
        QString text;
    };
    std::vector<std::pair<double, QLineF>> lines;
    std::vector<QPolygonF> polygons;
    std::vector<Words> words;
};

QPointF point(Vec2 p) {
    return {p.x, p.y};
}

class BareMaker {
  public:
    explicit BareMaker(Vec2 shift) : shift_(shift) {}

    void add(const Sheet& sheet) {
        for (const Op& op : sheet.ops) {
            std::visit(Overloaded{
                           [&](const Stroke& stroke) { line(stroke, sheet.lines); },
                           [&](const Fill& fill) {
                               if (!fill.tint) {
                                   polygon(fill);
                               }
                           },
                           [](const ArcOp&) {},
                           [&](const TextOp& text) { lettering(text); },
                           [&](const DimensionOp& dimension) {
                               const DimensionParts parts = partsOf(dimension, metrics_);
                               for (const Stroke& stroke : parts.strokes) {
                                   line(stroke, sheet.lines);
                               }
                               for (const Fill& arrow : parts.arrows) {
                                   polygon(arrow);
                               }
                               lettering(parts.figure);
                           },
                           [](const BeginGroup&) {},
                           [](const EndGroup&) {},
                       },
                       op);
        }
    }
    [[nodiscard]] Bare take() { return std::move(bare_); }

  private:
    void line(const Stroke& stroke, LineGroup group) {
        const LineStyle style = lineStyle(stroke.role, group);
        for (const DrawnLine& drawn : drawnLines(stroke.points, style)) {
            bare_.lines.push_back(
                {style.width, {point(drawn.a + shift_), point(drawn.b + shift_)}});
        }
    }
    void polygon(const Fill& fill) {
        QPolygonF polygon;
        for (const Vec2& p : fill.points) {
            polygon << point(p + shift_);
        }
        bare_.polygons.push_back(polygon);
    }
    void lettering(const TextOp& text) {
        for (const TextRun& run : layOutText(text.text, text.height, text.isBold, metrics_).runs) {
            const Vec2 at = text.at + (text.isTurned ? Vec2{run.at.y, -run.at.x} : run.at) + shift_;
            const double scale = run.height * kUnitsPerEm /
                                 (static_cast<double>(kLetteringPixels) * kCapHeightUnits);
            bare_.words.push_back(
                {point(at), scale, text.isTurned, QString::fromStdString(run.text)});
        }
    }

    Vec2 shift_;
    LetteringMetrics metrics_;
    Bare bare_;
};

void paintBare(QPainter& painter, const Bare& bare, const QFont& font) {
    for (const auto& [width, line] : bare.lines) {
        painter.setPen(QPen(Qt::black, width, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(line);
    }
    painter.setBrush(Qt::black);
    painter.setPen(Qt::NoPen);
    for (const QPolygonF& polygon : bare.polygons) {
        painter.drawPolygon(polygon);
    }
    painter.setPen(Qt::black);
    painter.setFont(font);
    for (const Bare::Words& words : bare.words) {
        painter.save();
        painter.translate(words.at);
        if (words.isTurned) {
            painter.rotate(-90);
        }
        painter.scale(words.scale, words.scale);
        painter.drawText(QPointF(0, 0), words.text);
        painter.restore();
    }
}

// The same primitives on the same pages by Qt alone: no layout, no second pass over the file.
void barePdf(benchmark::State& state) {
    const Chair chair;
    const PrintJob job = chair.fullSize();
    std::vector<Bare> pages;
    for (const Page& page : job.pages) {
        BareMaker maker(page.printable.min - page.origin);
        maker.add(job.contents[page.content]);
        BareMaker furniture({0, 0});
        furniture.add(page.furniture);
        Bare bare = maker.take();
        const Bare more = furniture.take();
        bare.lines.insert(bare.lines.end(), more.lines.begin(), more.lines.end());
        bare.polygons.insert(bare.polygons.end(), more.polygons.begin(), more.polygons.end());
        bare.words.insert(bare.words.end(), more.words.begin(), more.words.end());
        pages.push_back(std::move(bare));
    }
    const QFont font = letteringFont();
    for (auto _ : state) {
        QByteArray bytes;
        QBuffer buffer(&bytes);
        buffer.open(QIODevice::WriteOnly);
        QPdfWriter writer(&buffer);
        writer.setResolution(1200);
        writer.setPageLayout(layoutOf(job.pages.front()));
        QPainter painter(&writer);
        for (std::size_t i = 0; i < pages.size(); ++i) {
            if (i > 0) {
                writer.setPageLayout(layoutOf(job.pages[i]));
                writer.newPage();
            }
            painter.save();
            painter.scale(1200 / 25.4, 1200 / 25.4);
            paintBare(painter, pages[i], font);
            painter.restore();
        }
        painter.end();
        state.counters["bytes"] = static_cast<double>(bytes.size());
    }
}

BENCHMARK_CAPTURE(elevation, front, View::front())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(elevation, side, View::side())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(elevation, plan, View::plan())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(pictorial, assembled, false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(pictorial, pulled_apart, true)->Unit(benchmark::kMillisecond);
BENCHMARK(pictorialOnPaper)->Unit(benchmark::kMillisecond);
BENCHMARK(drawingSet)->Unit(benchmark::kMillisecond);
BENCHMARK(rods)->Unit(benchmark::kMillisecond);
BENCHMARK(partDrawings)->Unit(benchmark::kMillisecond);
BENCHMARK(fullSizeLayout)->Unit(benchmark::kMillisecond);
BENCHMARK(fullSizePdf)->Unit(benchmark::kMillisecond);
BENCHMARK(barePdf)->Unit(benchmark::kMillisecond);

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
