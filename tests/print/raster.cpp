#include "tests/print/raster.h"

#include <QProcess>
#include <QStringList>
#include <QTemporaryDir>
#include <cmath>
#include <functional>

#include <gtest/gtest.h>

namespace shoulderline::testing {

namespace {

constexpr double kDotsPerMm = 600.0 / 25.4;

// Middles of the runs of `darkness` over half of full black, weighed by darkness.
std::vector<double> middles(const std::vector<double>& darkness, double origin) {
    constexpr double kIsInk = 40.0;
    std::vector<double> found;
    double weight = 0.0;
    double moment = 0.0;
    for (std::size_t i = 0; i <= darkness.size(); ++i) {
        const double dark = i < darkness.size() ? darkness[i] : 0.0;
        if (dark > kIsInk) {
            weight += dark;
            moment += dark * (static_cast<double>(i) + 0.5);
        } else if (weight > 0.0) {
            found.push_back(origin + moment / weight / kDotsPerMm);
            weight = moment = 0.0;
        }
    }
    return found;
}

}  // namespace

Crop rasterised(const std::string& pdf, int page, double x, double y, double width, double height) {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("page"));
    const auto dots = [](double mm) { return QString::number(std::lround(mm * kDotsPerMm)); };
    const QStringList arguments{QStringLiteral("-png"),
                                QStringLiteral("-gray"),
                                QStringLiteral("-r"),
                                QStringLiteral("600"),
                                QStringLiteral("-f"),
                                QString::number(page),
                                QStringLiteral("-l"),
                                QString::number(page),
                                QStringLiteral("-singlefile"),
                                QStringLiteral("-x"),
                                dots(x),
                                QStringLiteral("-y"),
                                dots(y),
                                QStringLiteral("-W"),
                                dots(width),
                                QStringLiteral("-H"),
                                dots(height),
                                QString::fromStdString(pdf),
                                file};
    EXPECT_EQ(QProcess::execute(QStringLiteral("pdftocairo"), arguments), 0)
        << "pdftocairo of poppler-utils";
    Crop crop;
    crop.image = QImage(file + QStringLiteral(".png")).convertToFormat(QImage::Format_Grayscale8);
    EXPECT_FALSE(crop.image.isNull());
    crop.x = static_cast<double>(std::lround(x * kDotsPerMm)) / kDotsPerMm;
    crop.y = static_cast<double>(std::lround(y * kDotsPerMm)) / kDotsPerMm;
    return crop;
}

std::vector<double> uprightLines(const Crop& crop, double top, double bottom) {
    std::vector<double> darkness(static_cast<std::size_t>(crop.image.width()), 0.0);
    const int from = static_cast<int>((top - crop.y) * kDotsPerMm);
    const int to = static_cast<int>((bottom - crop.y) * kDotsPerMm);
    for (int row = from; row < to; ++row) {
        const uchar* const line = crop.image.constScanLine(row);
        for (std::size_t i = 0; i < darkness.size(); ++i) {
            darkness[i] += (255.0 - line[i]) / (to - from);
        }
    }
    return middles(darkness, crop.x);
}

std::vector<double> levelLines(const Crop& crop, double left, double right) {
    std::vector<double> darkness(static_cast<std::size_t>(crop.image.height()), 0.0);
    const int from = static_cast<int>((left - crop.x) * kDotsPerMm);
    const int to = static_cast<int>((right - crop.x) * kDotsPerMm);
    for (int row = 0; row < crop.image.height(); ++row) {
        const uchar* const line = crop.image.constScanLine(row);
        for (int i = from; i < to; ++i) {
            darkness[static_cast<std::size_t>(row)] += (255.0 - line[i]) / (to - from);
        }
    }
    return middles(darkness, crop.y);
}

double nearest(const std::vector<double>& values, double wanted) {
    double best = 1e9;
    for (const double value : values) {
        if (std::abs(value - wanted) < std::abs(best - wanted)) {
            best = value;
        }
    }
    EXPECT_NEAR(best, wanted, 2.0) << "no line there";
    return best;
}

Output runProgram(const std::string& program, const std::vector<std::string>& arguments) {
    QProcess process;
    QStringList list;
    for (const std::string& argument : arguments) {
        list << QString::fromStdString(argument);
    }
    process.start(QString::fromStdString(program), list);
    process.waitForFinished();
    return {process.readAllStandardOutput().toStdString() +
                process.readAllStandardError().toStdString(),
            process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1};
}

}  // namespace shoulderline::testing
