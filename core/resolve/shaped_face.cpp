#include "core/resolve/shaped_face.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/resolve/face_there.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// Under the end, by shares of its two sides.
struct Sounding {
    double u = 0.0;
    double v = 0.0;
    double depth = 0.0;
};

std::vector<Sounding> soundingsUnder(const EndOver& end) {
    constexpr int kAlong = 16;  // over either side
    constexpr int kAcross = 2;
    constexpr double kInside = 1e-6;  // so that a line along an edge of the body meets it
    const BodySolids wood = end.part->wood();
    const Vec3 way = end.frame.directionToLocal(end.way);
    std::vector<Sounding> all;
    const auto sound = [&](double u, double v) {
        const double a = std::clamp(u, kInside, 1.0 - kInside);
        const double b = std::clamp(v, kInside, 1.0 - kInside);
        const Vec3 at = end.corner + end.sides[0] * a + end.sides[1] * b;
        if (const std::optional<double> depth = firstWood(wood, end.frame.toLocal(at), way)) {
            all.push_back({u, v, *depth});
        }
    };
    for (int i = 0; i <= kAlong; ++i) {
        for (int k = 0; k <= kAcross; ++k) {
            const double fine = static_cast<double>(i) / kAlong;
            const double rough = static_cast<double>(k) / kAcross;
            sound(fine, rough);
            sound(rough, fine);
        }
    }
    return all;
}

// How much deeper the wood lies at the far end of a side than at its beginning, on the average.
double fallAlong(const std::vector<Sounding>& all, double Sounding::*share) {
    double low = 0.0;
    double high = 0.0;
    int lows = 0;
    int highs = 0;
    for (const Sounding& one : all) {
        if (one.*share == 0.0) {
            low += one.depth;
            ++lows;
        } else if (one.*share == 1.0) {
            high += one.depth;
            ++highs;
        }
    }
    return lows > 0 && highs > 0 ? high / highs - low / lows : 0.0;
}

}  // namespace

bool isShaped(const ResolvedPart& part) {
    const Body plain{part.body.face, part.body.thickness, part.body.edge};
    return part.section == SectionForm::Square && !plain.isBox();
}

std::optional<ShoulderOnFace> shoulderOn(const EndOver& end) {
    constexpr double kFlat = 1e-3;  // millimetres; less is the straight line of the blank
    constexpr double kFall = 1e-4;
    if (!isShaped(*end.part)) {
        return std::nullopt;
    }
    const std::vector<Sounding> all = soundingsUnder(end);
    const auto [least, most] =
        std::minmax_element(all.begin(), all.end(), [](const Sounding& a, const Sounding& b) {
            return a.depth < b.depth;
        });
    if (all.empty() || (std::abs(least->depth) < kFlat && std::abs(most->depth) < kFlat)) {
        return std::nullopt;
    }
    const auto falling = [&](double Sounding::*share) {
        const double fall = fallAlong(all, share);
        return std::abs(fall) < kFall ? 0.0 : fall;
    };
    const double alongFirst = falling(&Sounding::u);
    const double alongSecond = falling(&Sounding::v);
    const auto onPlane = [&](double u, double v) { return u * alongFirst + v * alongSecond; };
    ShoulderOnFace shoulder;
    shoulder.deepest = most->depth;
    double base = 1e30;
    for (const Sounding& one : all) {
        base = std::min(base, one.depth - onPlane(one.u, one.v));
    }
    for (const Sounding& one : all) {
        shoulder.open = std::max(shoulder.open, one.depth - onPlane(one.u, one.v) - base);
    }
    shoulder.reach = base + std::max(0.0, alongFirst) + std::max(0.0, alongSecond);
    shoulder.isSquare = alongFirst == 0.0 && alongSecond == 0.0;
    const Vec3 on = end.corner + end.way * base;
    const Vec3 first = end.sides[0] + end.way * alongFirst;
    const Vec3 second = end.sides[1] + end.way * alongSecond;
    Vec3 normal = normalised(cross(first, second));
    normal = dot(normal, end.way) < 0 ? -normal : normal;
    const Vec3 local = end.frame.directionToLocal(normal);
    shoulder.plane = {local, dot(local, end.frame.toLocal(on))};
    return shoulder;
}

}  // namespace shoulderline
