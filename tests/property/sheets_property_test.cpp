#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/drawing/dimension_parts.h"
#include "core/drawing/lettering_metrics.h"
#include "core/drawing/print_order.h"
#include "core/drawing/title_block.h"
#include "tests/core/drawing/sheet_checks.h"
#include "tests/property/random_frame.h"
#include "tests/support/pieces.h"

// Every kind of sheet of any frame.
namespace shoulderline {
namespace {

const LetteringMetrics kMetrics;

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) {
        text += line + "; ";
    }
    return text;
}

void expectClear(const PrintJob& job) {
    for (const Sheet& content : job.contents) {
        const std::vector<std::string> overlaps = testing::overlapsOn(content, kMetrics);
        RC_LOG() << content.title << ": " << joined(overlaps);
        RC_ASSERT(overlaps.empty());
    }
}

RC_GTEST_PROP(AnyFramesSheets, HaveNothingOnAnythingAndKeepToTheirSpace, ()) {
    const Piece piece = testing::randomFrame();
    const ResolvedPiece resolved = testing::resolved(piece);
    PrintOrder order;
    order.paper = *findPaper(*rc::gen::element<std::string>("A4", "Letter", "A3", "Tabloid", "A2"));
    order.units = *rc::gen::element(
        PrintUnits::AsPiece, PrintUnits::Millimetres, PrintUnits::InchesAndMillimetres);
    order.kind = PrintKind::Set;

    const PrintJob set = printJob(piece, resolved, order, kMetrics);

    expectClear(set);
    const std::optional<std::string> off = runsOffPaper(set, kMetrics);
    RC_LOG() << "off its space: " << off.value_or("");
    RC_ASSERT(!off);
}

RC_GTEST_PROP(AnyFramesSheets, AreClearAtFullSizeToo, ()) {
    const Piece piece = testing::randomFrame();
    const ResolvedPiece resolved = testing::resolved(piece);
    PrintOrder order;
    order.paper = *findPaper("A4");
    for (const PrintKind kind : {PrintKind::Rods, PrintKind::Story}) {
        order.kind = kind;
        expectClear(printJob(piece, resolved, order, kMetrics));
    }
}

}  // namespace
}  // namespace shoulderline
