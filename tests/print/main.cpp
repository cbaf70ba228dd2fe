#include <QApplication>
#include <QHashSeed>
#include <iostream>
#include <string>

#include <gtest/gtest.h>

#include "core/drawing/lettering_metrics.h"
#include "tests/support/pieces.h"
#include "ui/printing/pdf_writer.h"

namespace {

// print_test --write FILE: the full-size prints of the armchair, by a program of its own.
int writeArmchair(const char* file) {
    using namespace shoulderline;
    const Piece piece = shoulderline::testing::sample("armchair");
    const LetteringMetrics metrics;
    const PrintJob job = fullSizeJob(piece,
                                     shoulderline::testing::resolved(piece),
                                     {},
                                     *findPaper("A4"),
                                     {},
                                     "2026-11-24",
                                     metrics);
    return writePdf(job, file, "2026-11-24") ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
    QHashSeed::setDeterministicGlobalSeed();
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application(argc, argv);
    if (argc == 3 && std::string(argv[1]) == "--write") {
        return writeArmchair(argv[2]);
    }
    ::testing::InitGoogleTest(&argc, argv);
    return RUN_ALL_TESTS();
}
