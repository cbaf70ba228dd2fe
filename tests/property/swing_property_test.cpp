#include <algorithm>
#include <array>
#include <cmath>

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/resolve/frames.h"
#include "core/storage/piece_text.h"
#include "tests/support/pieces.h"

// What holds of any back that swings, against a solution that knows no formula: the section of the
// back as a rectangle is turned about the pivot, and halving finds where a side of it meets the
// bar's edge.
namespace shoulderline {
namespace {

using testing::partNamed;
using testing::resolved;

// All in sixteenths of an inch.
struct Sizes {
    int thick;   // of the back, front to back
    int before;  // how much of it stands before the pivot
    int tall;
    int below;   // the pivot
    int above;   // the bar's top over the pivot
    int behind;  // the bar's front behind the pivot
};

Sizes randomSizes() {
    Sizes s{};
    s.thick = *rc::gen::inRange(8, 40);
    s.before = *rc::gen::inRange(0, s.thick);
    s.tall = *rc::gen::inRange(240, 600);
    s.below = *rc::gen::inRange(0, 40);
    s.above = *rc::gen::inRange(16, 150);
    s.behind = *rc::gen::inRange(s.thick - s.before + 1, 150);
    return s;
}

std::string sixteenths(int count) {
    return std::to_string(count) + "/16 in";
}

Piece swingingBack(const Sizes& s) {
    Piece piece;
    piece.name = "back";
    Stock stock;
    stock.name = "oak";
    stock.species = "White oak";
    stock.thickness = sixteenths(s.thick);
    piece.stocks.push_back(stock);
    Assembly back;
    back.name = "back";
    back.y = "20 in";
    back.z = "18 in";
    back.swing.emplace();
    back.swing->leans = "stile";
    back.swing->rest = "bar";
    back.swing->stations = {{"one", sixteenths(s.behind), "", {}}};
    piece.assemblies.push_back(back);
    Part stile;
    stile.name = "stile";
    stile.role = Role::Stile;
    stile.assembly = "back";
    stile.stock = "oak";
    stile.width = "2 in";
    stile.faceEdge = Side::Right;
    Stands stands;
    stands.x = {Side::Centre, "0 in"};
    stands.y = {Side::Front, "-(" + sixteenths(s.before) + ")"};
    stands.foot = "-(" + sixteenths(s.below) + ")";
    stands.height = sixteenths(s.tall);
    stile.relation = stands;
    piece.parts.push_back(stile);
    Part bar;
    bar.name = "bar";
    bar.role = Role::Cleat;
    bar.stock = "oak";
    bar.width = "1 in";
    Free free;
    free.x = "-10 in";
    free.y = "30 in";
    free.z = "18 in + " + sixteenths(s.above) + " - " + sixteenths(s.thick);
    free.length = "20 in";
    bar.relation = free;
    piece.parts.push_back(bar);
    return piece;
}

// How deep the point (behind and above the pivot, inches) lies in the back's section when it leans
// so: above zero inside. The four corners are turned, and each side's line is measured from.
double depthIn(const Sizes& s, double lean, double y, double z) {
    const double front = -s.before / 16.0;
    const double rear = front + s.thick / 16.0;
    const double foot = -s.below / 16.0;
    const double top = s.tall / 16.0;
    const std::array<std::array<double, 2>, 4> upright{
        {{front, foot}, {rear, foot}, {rear, top}, {front, top}}};
    std::array<std::array<double, 2>, 4> turned{};
    for (std::size_t i = 0; i < 4; ++i) {
        const auto [cy, cz] = upright[i];
        turned[i] = {cy * std::cos(lean) + cz * std::sin(lean),
                     cz * std::cos(lean) - cy * std::sin(lean)};
    }
    double least = 1e9;
    for (std::size_t i = 0; i < 4; ++i) {
        const auto& a = turned[i];
        const auto& b = turned[(i + 1) % 4];
        const double along = std::hypot(b[0] - a[0], b[1] - a[1]);
        least = std::min(least, ((b[0] - a[0]) * (z - a[1]) - (b[1] - a[1]) * (y - a[0])) / along);
    }
    return least;
}

// The lean at which the section first meets the point, from upright on; below zero for none.
double leanBySteps(const Sizes& s) {
    const double y = s.behind / 16.0;
    const double z = s.above / 16.0;
    constexpr double kStep = 0.002;
    for (double lean = 0.0; lean < 1.48; lean += kStep) {
        if (depthIn(s, lean + kStep, y, z) > 0.0) {
            double low = lean;
            double high = lean + kStep;
            for (int i = 0; i < 60; ++i) {
                const double middle = (low + high) / 2;
                (depthIn(s, middle, y, z) > 0.0 ? high : low) = middle;
            }
            return high;
        }
    }
    return -1.0;
}

RC_GTEST_PROP(AnySwing, LeansWhereItFirstMeetsTheBar, ()) {
    const Sizes s = randomSizes();
    const ResolvedPiece piece = resolved(swingingBack(s));

    RC_ASSERT(piece.swings.size() == 1u);
    const SwingPosition& position = piece.swings[0].positions.at(0);
    RC_ASSERT(std::abs(position.lean.radians() - leanBySteps(s)) < 1e-6);
    // The bar was set where it is stated to stand.
    const Box bar = boundsInSpace(partNamed(piece, "bar"));
    RC_ASSERT(std::abs(bar.min.y - (20.0 + s.behind / 16.0) * 25.4) < 1e-6);
    RC_ASSERT(std::abs(bar.max.z - (18.0 + s.above / 16.0) * 25.4) < 1e-6);
}

RC_GTEST_PROP(AnySwing, StationsStatedEitherWayAreTheSame, ()) {
    const Sizes s = randomSizes();
    Piece piece = swingingBack(s);
    const ResolvedPiece first = resolved(piece);
    const SwingPosition byDistance = first.swings.at(0).positions.at(0);
    RestStation& station = piece.assemblies[0].swing->stations[0];
    station.behind.clear();
    station.lean = std::to_string(byDistance.lean.degrees()) + " deg";
    const ResolvedPiece second = resolved(piece);

    const SwingPosition& byLean = second.swings.at(0).positions.at(0);
    RC_ASSERT(std::abs(byLean.lean.radians() - byDistance.lean.radians()) < 1e-7);
    RC_ASSERT(std::abs((byLean.behind - byDistance.behind).mm()) < 1e-3);
}

RC_GTEST_PROP(AnySwing, ReadsBackFromWhatWasWritten, ()) {
    Piece piece = swingingBack(randomSizes());
    Swing& swing = *piece.assemblies[0].swing;
    const auto some = [](const char* text) {
        return *rc::gen::arbitrary<bool>() ? std::string(text) : std::string();
    };
    swing.at = some("one");
    swing.pin = some("1/2 in");
    swing.pinDepth = some("1 in");
    swing.spacer = some("3/8 in");
    swing.peg = some("5/8 in");
    swing.pegDepth = some("3/4 in");
    swing.extras = some(R"({"later":[1,2]})");
    if (*rc::gen::arbitrary<bool>()) {
        swing.pinned = {"stile", "bar, left"};
    }
    if (*rc::gen::arbitrary<bool>()) {
        swing.stations.push_back({"two", "", "30 deg", some(R"({"note":"x"})")});
    }
    RC_ASSERT(readPiece(writePiece(piece)).value() == piece);
}

}  // namespace
}  // namespace shoulderline
