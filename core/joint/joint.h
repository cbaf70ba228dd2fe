#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/geometry/box.h"
#include "core/piece/words.h"
#include "core/rules/reason.h"

namespace shoulderline {

using JointFeatures = std::set<JointFeature>;

// What joint it is: its kind and what it has besides.
struct JointForm {
    JointKind kind = JointKind::Blind;
    JointFeatures features;

    [[nodiscard]] bool has(JointFeature feature) const { return features.contains(feature); }
    // Whether wood of one part stands in the other (a loose tenon counts): what the sizes of Tenon
    // and Mortise are for.
    [[nodiscard]] bool hasTenon() const {
        return kind != JointKind::Rests && kind != JointKind::Dowelled &&
               kind != JointKind::Screwed && !isDry() && kind != JointKind::CrossLap;
    }
    // Whether an edge stands without glue in a groove, with room to move.
    [[nodiscard]] bool isDry() const {
        return kind == JointKind::Grooved || kind == JointKind::Tongued;
    }
    // Whether the tenon comes out at the far face.
    [[nodiscard]] bool isThrough() const {
        return kind == JointKind::Through || kind == JointKind::Bridle || kind == JointKind::Lap;
    }
    // Whether the whole section goes in, with no shoulders to speak of.
    [[nodiscard]] bool isWholeSection() const {
        return kind == JointKind::LetIn || kind == JointKind::Housed;
    }
    // Whether the rule book judges its proportions: a bridle and a lap are thirds and halves.
    [[nodiscard]] bool isSized() const {
        return hasTenon() && kind != JointKind::Bridle && kind != JointKind::Lap;
    }
    // "through, twin, drawbored"; for a plain one its kind alone.
    [[nodiscard]] std::string words() const;

    friend bool operator==(const JointForm&, const JointForm&) = default;
};

// The four shoulders of a tenon: how far the part stands out past the tenon (past both of twins or
// doubles) at each of its sides.
struct Shoulders {
    Size faceSide;
    Size backSide;
    Size faceEdge;
    Size backEdge;
    friend bool operator==(const Shoulders&, const Shoulders&) = default;
};

// Thickness across the cheeks, width the long way of the mouth, length into the mortise (with the
// projection, for a through tenon); projection past the far face. Of twin or double tenons each
// one.
struct Tenon {
    Size thickness;
    Size width;
    Size length;
    Size projection;
    Shoulders shoulders;
    friend bool operator==(const Tenon&, const Tenon&) = default;
};

// The mouth on `face` of the mortised part: `width` across, `length` along, `depth` into the wood;
// of twins or doubles the first.
// fromFace: from the mortised part's reference face (face side or face edge, whichever the mouth's
// long edges lie along; else the face edge) to the near edge of the mouth; where a
// rabbet takes it away beside the mortise, from the rabbet. fromStart and fromFar:
// from the mouth to the two ends of the part's body (its shoulders, where it has tenons of its
// own).
struct Mortise {
    Face face = Face::FaceSide;
    Face reference = Face::FaceSide;  // what fromFace is measured from
    Size width;
    Size length;
    Size depth;
    Size fromFace;
    Size fromStart;
    Length fromFar;
    Length below;             // how far the face as it is lies below the blank's at the mouth
    Length pastShoulder;      // ... past the end of the shoulder that reaches furthest
    Length there;             // wood behind the mouth, from the face as it is
    Length referenceIn = {};  // how far the reference face lies in from the blank's at the mouth
    friend bool operator==(const Mortise&, const Mortise&) = default;
};

// A size that only some joints have (a pin's diameter, the length of a haunch).
struct FurtherSize {
    SizeName name = SizeName::TenonGap;
    Size size;
    friend bool operator==(const FurtherSize&, const FurtherSize&) = default;
};

}  // namespace shoulderline
