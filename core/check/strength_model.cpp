#include "core/check/strength_model.h"

#include <algorithm>
#include <cmath>

#include "core/measure/length.h"

namespace shoulderline {

namespace {

constexpr double kCheeks = 2.0;
constexpr double kPeakOfRectangle = 1.5;

std::size_t at(Mechanism mechanism) {
    return static_cast<std::size_t>(mechanism);
}

// Sets the range and what governs from what each mechanism gives.
Capacity governed(Capacity capacity) {
    bool isFirst = true;
    double least = 0.0;
    for (std::size_t i = 0; i < kMechanismCount; ++i) {
        const std::optional<Range>& one = capacity.each[i];
        if (!one) {
            continue;
        }
        if (isFirst || one->middle() < least) {
            least = one->middle();
            capacity.governs = static_cast<Mechanism>(i);
        }
        capacity.range = isFirst ? *one
                                 : Range{std::min(capacity.range.low, one->low),
                                         std::min(capacity.range.high, one->high)};
        isFirst = false;
    }
    return capacity;
}

double tenonsOf(const JointSection& joint) {
    return joint.isTwin || joint.isDouble ? 2.0 : 1.0;
}

double widthOf(const JointSection& joint) {
    const bool isLimited = joint.runsOn && joint.widthThatCounts > 0.0;
    return isLimited ? std::min(joint.tenonWidth, joint.widthThatCounts) : joint.tenonWidth;
}

Range glueFace(const JointSection& joint) {
    const double w = widthOf(joint);
    const double l = joint.tenonLength;
    const double tenons = joint.isTwin ? 2.0 : 1.0;
    const double unit = tenons * joint.glueFactor * joint.shearMpa * kCheeks / Length::kMmPerMetre;
    return {unit * w * l * std::hypot(w, l) / 6.0, unit * distanceIntegral(w, l)};
}

// The shoulder's section: on one side of the neutral axis the rail is pressed over all its
// thickness (the tenon, and the shoulders at its cheeks and edge), on the other the tenon is drawn.
Range tenonWithShoulder(const JointSection& joint) {
    const double drawn = joint.tenonThickness * (joint.isTwin ? 2.0 : 1.0);
    const double pressed = std::max(joint.railThickness, drawn);
    const double height = widthOf(joint) + std::max(0.0, joint.shoulder);
    const double ratio = std::sqrt(drawn / pressed);
    const double deep = height * ratio / (1.0 + ratio);
    const double rest = height - deep;
    const double inertia = (pressed * deep * deep * deep + drawn * rest * rest * rest) / 3.0;
    const double elastic = joint.ruptureMpa * inertia / std::max(rest, deep);
    const double plasticDeep = height * drawn / (drawn + pressed);
    const double force = joint.ruptureMpa * drawn * (height - plasticDeep);
    return {elastic / Length::kMmPerMetre, force * height / 2.0 / Length::kMmPerMetre};
}

std::optional<Range> mortiseWall(const JointSection& joint) {
    if (!joint.wall) {
        return std::nullopt;
    }
    const MortisedSection& wall = *joint.wall;
    const double depth = std::min(wall.mortiseDepth, wall.depth);
    const double whole = wall.breadth * wall.depth;
    const double hole = wall.mortiseWidth * depth;
    const double area = whole - hole;
    if (area <= 0.0) {
        return Range{};
    }
    // From the entered face: the whole less the mortise, about their common middle.
    const double middle = (whole * wall.depth / 2.0 - hole * depth / 2.0) / area;
    const auto about = [middle](double breadth, double height, double centre) {
        const double off = centre - middle;
        return breadth * height * (height * height / 12.0 + off * off);
    };
    const double inertia = about(wall.breadth, wall.depth, wall.depth / 2.0) -
                           about(wall.mortiseWidth, depth, depth / 2.0);
    const double modulus = std::max(0.0, inertia) / std::max(middle, wall.depth - middle);
    const double moment = wall.ruptureMpa * modulus / Length::kMmPerMetre;
    return Range{moment, joint.runsOn ? 2.0 * moment : moment};
}

}  // namespace

Capacity Capacity::times(double factor) const {
    Capacity scaled = *this;
    scaled.range = range.times(factor);
    for (std::optional<Range>& one : scaled.each) {
        if (one) {
            one = one->times(factor);
        }
    }
    return scaled;
}

std::string_view wordFor(Mechanism mechanism) {
    switch (mechanism) {
        case Mechanism::GlueFace:
            return "glue face";
        case Mechanism::TenonWithShoulder:
            return "tenon with its shoulder";
        case Mechanism::MortiseWall:
            break;
    }
    return "mortise wall";
}

double distanceIntegral(double a, double b) {
    if (a <= 0.0 || b <= 0.0) {
        return 0.0;
    }
    const double p = a / 2.0;
    const double q = b / 2.0;
    return 4.0 * (p * q * std::hypot(p, q) / 3.0 + p * p * p * std::asinh(q / p) / 6.0 +
                  q * q * q * std::asinh(p / q) / 6.0);
}

Capacity bendingCapacity(const JointSection& joint) {
    Capacity capacity;
    capacity.each[at(Mechanism::GlueFace)] = glueFace(joint);
    capacity.each[at(Mechanism::TenonWithShoulder)] = tenonWithShoulder(joint);
    for (std::optional<Range>& one : capacity.each) {
        one = one && joint.isDouble ? std::optional(one->times(2.0)) : one;
    }
    capacity.each[at(Mechanism::MortiseWall)] = mortiseWall(joint);
    for (std::optional<Range>& one : capacity.each) {
        one = one ? std::optional(one->times(joint.endFactor)) : one;
    }
    return governed(capacity);
}

Capacity withdrawalCapacity(const JointSection& joint, Range bond) {
    const double area = tenonsOf(joint) * kCheeks * joint.tenonWidth * joint.tenonLength;
    const double torn =
        tenonsOf(joint) * joint.ruptureMpa * joint.tenonThickness * joint.tenonWidth;
    Capacity capacity;
    capacity.each[at(Mechanism::GlueFace)] = Range{std::min(bond.low, joint.shearMpa) * area,
                                                   std::min(bond.high, joint.shearMpa) * area};
    capacity.each[at(Mechanism::TenonWithShoulder)] = Range{torn, torn};
    return governed(capacity);
}

Capacity shearCapacity(const JointSection& joint, Range bond) {
    const double across =
        tenonsOf(joint) * joint.shearMpa * joint.tenonThickness * joint.tenonWidth;
    Capacity capacity = withdrawalCapacity(joint, bond);
    capacity.each[at(Mechanism::TenonWithShoulder)] = Range{across / kPeakOfRectangle, across};
    return governed(capacity);
}

}  // namespace shoulderline
