#include <cmath>

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/geometry/body.h"
#include "tests/core/geometry/eased_volumes.h"

// What holds of the arrises of any rail, whatever is taken off them.
namespace shoulderline {
namespace {

using testing::volumeOfPieces;

double inTenths(int low, int high) {
    return *rc::gen::inRange(low, high) / 10.0;
}

Body anyRail() {
    return {Outline::rectangle(inTenths(1000, 9000), inTenths(200, 1200)), inTenths(120, 500), {}};
}

Easing anyEasing(const Body& rail) {
    Easing easing;
    easing.profile =
        *rc::gen::element(EasingProfile::Chamfer, EasingProfile::Round, EasingProfile::Cove);
    easing.on = *rc::gen::element(
        BodyFace::FaceSide, BodyFace::BackSide, BodyFace::StartEnd, BodyFace::FarEnd);
    const bool isEnd = easing.on == BodyFace::StartEnd || easing.on == BodyFace::FarEnd;
    if (!isEnd && *rc::gen::arbitrary<bool>()) {
        easing.with = *rc::gen::element(BodyFace::FaceEdge, BodyFace::BackEdge);
    }
    const Vec2 most = rail.face.bounds().max;
    const double least = std::min(most.y, rail.thickness);
    easing.onReach = inTenths(5, static_cast<int>(least * 4));
    easing.otherReach =
        *rc::gen::arbitrary<bool>() ? easing.onReach : inTenths(5, static_cast<int>(least * 4));
    if (easing.with && *rc::gen::arbitrary<bool>()) {
        easing.from = inTenths(0, static_cast<int>(most.x * 3));
        easing.runOut = inTenths(5, static_cast<int>(most.x * 3));
        if (*rc::gen::arbitrary<bool>()) {
            easing.to = most.x - inTenths(0, static_cast<int>(most.x * 1));
        }
    }
    return easing;
}

void expectSameWood(const Body& body) {
    Body whole = body;
    whole.easings.clear();
    const Result<Polyhedron> solid = body.toPolyhedron();
    RC_PRE(solid.has_value());
    const double gone = whole.volume().value() - solid->volume();

    RC_ASSERT(gone > 0.0 && solid->volume() > 0.0);
    RC_ASSERT(std::abs(volumeOfPieces(body) - solid->volume()) < 1e-4 * gone);
}

RC_GTEST_PROP(AnyEasedRail, HasTheSameWoodInItsPiecesAsInTheWhole, ()) {
    Body body = anyRail();
    body.easings = {anyEasing(body)};

    expectSameWood(body);
}

RC_GTEST_PROP(AnyEasedRail, HasItWithEveryArrisAlongItWorkedInAWayOfItsOwn, ()) {
    Body body = anyRail();
    for (const BodyFace on : {BodyFace::FaceSide, BodyFace::BackSide}) {
        for (const BodyFace with : {BodyFace::FaceEdge, BodyFace::BackEdge}) {
            Easing easing = anyEasing(body);
            easing.on = on;
            easing.with = with;
            body.easings.push_back(easing);
        }
    }

    expectSameWood(body);
}

// Of one square arris: the hollow and the round of the same size make up the square that they lie
// in, for the one is the other turned over.
RC_GTEST_PROP(AnyEasedRail, LosesByACoveAndByARoundOverTheSquareOfBoth, ()) {
    Body body = anyRail();
    Easing easing = anyEasing(body);
    easing.on = BodyFace::FaceSide;
    easing.with = BodyFace::BackEdge;
    easing.from.reset();
    easing.to.reset();
    const double whole = body.volume().value();
    const auto taken = [&](EasingProfile profile) {
        easing.profile = profile;
        Body eased = body;
        eased.easings = {easing};
        return whole - eased.volume().value();
    };
    const double square = easing.onReach * easing.otherReach * body.face.bounds().max.x;

    RC_ASSERT(std::abs(taken(EasingProfile::Cove) + taken(EasingProfile::Round) - square) <
              1e-9 * whole);
}

}  // namespace
}  // namespace shoulderline
