#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace shoulderline {

// The mechanics of one glued mortise and tenon, bent in the plane of its rail and of the tenon's
// width. Pure functions; lengths in millimetres, stresses in MPa, forces in newtons, moments in
// newton metres. Every figure is an estimate, for comparing joints.

// From a first yield (or the weaker assumption) to the most that the same mechanism can give.
struct Range {
    double low = 0.0;
    double high = 0.0;
    [[nodiscard]] double middle() const { return (low + high) / 2.0; }
    [[nodiscard]] Range times(double factor) const { return {low * factor, high * factor}; }
    friend bool operator==(const Range&, const Range&) = default;
};

enum class Mechanism { GlueFace, TenonWithShoulder, MortiseWall };
inline constexpr std::size_t kMechanismCount = 3;

// "glue face", "tenon with its shoulder", "mortise wall".
[[nodiscard]] std::string_view wordFor(Mechanism);

// The mortised part at the mortise, for bending in the plane of the joint.
struct MortisedSection {
    double depth = 0.0;    // along the tenon
    double breadth = 0.0;  // across the tenon's cheeks
    double mortiseDepth = 0.0;
    double mortiseWidth = 0.0;
    double ruptureMpa = 0.0;
};

struct JointSection {
    double tenonThickness = 0.0;
    double tenonWidth = 0.0;
    double tenonLength = 0.0;      // inside the wood
    double railThickness = 0.0;    // of the part that carries the tenon, across the cheeks
    double shoulder = 0.0;         // the less of those at the tenon's two edges
    double ruptureMpa = 0.0;       // modulus of rupture of the tenon's wood
    double shearMpa = 0.0;         // shear parallel to the grain of the weaker wood
    bool runsOn = false;           // the mortised part goes on past the joint (a T), both ways
    double widthThatCounts = 0.0;  // of a T joint's tenon at most; zero for no limit
    bool isTwin = false;           // two such tenons side by side in the thickness
    bool isDouble = false;         // two such tenons one above the other
    double glueFactor = 1.0;       // of the glue, over the one that the tests were made with
    double endFactor = 1.0;        // of the shape of the tenon's ends, over square ones
    std::optional<MortisedSection> wall;  // none where it is not bent in the plane of the joint
};

// What each mechanism gives, none where it is not known, and the one that governs: that of the
// least middle. `range` runs from the least low to the least high.
struct Capacity {
    Range range;
    Mechanism governs = Mechanism::GlueFace;
    std::array<std::optional<Range>, kMechanismCount> each;

    // All of it by a factor; what governs stays.
    [[nodiscard]] Capacity times(double factor) const;
};

// Ultimate bending moment.
// The shape of the ends counts for every mechanism. Two tenons are two glue faces and, one above
// the other, each by itself; side by side, one of both thicknesses. Glue face: n = 2 cheeks, w by
// l, in torsion about the tenon's middle; low: elastic, the corner at the shear strength, n w l
// sqrt(w2 + l2) S / 6 (Smardzewski, Furniture Design (2015), method of section 6; the polar figures
// derived); high: all of it at the shear strength, S n times the integral of the distance
// (derived); times the glue. Tenon with its shoulder: the shoulder's section, pressed over the
// rail's thickness and drawn over the tenon's; low: elastic, high: plastic (derived). Without a
// shoulder it is the tenon alone. Mortise wall: the net section of the mortised part, elastic;
// high: twice that where it runs on both ways (derived).
[[nodiscard]] Capacity bendingCapacity(const JointSection&);

// Drawn straight out, newtons: the bond of both cheeks at `bond` (MPa), within the wood's shear
// strength; and the tenon torn off, its modulus of rupture standing for its strength along the
// grain.
[[nodiscard]] Capacity withdrawalCapacity(const JointSection&, Range bond);

// Pushed across the cheeks' long way, at the shoulder, newtons: shear of the tenon, with the peak
// of a rectangle (low) or without (high); and the bond of both cheeks.
[[nodiscard]] Capacity shearCapacity(const JointSection&, Range bond);

// Integral of the distance from the middle over a rectangle a by b; mm3.
[[nodiscard]] double distanceIntegral(double a, double b);

}  // namespace shoulderline
