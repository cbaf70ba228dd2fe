#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/geometry/body.h"
#include "core/geometry/body_solids.h"
#include "core/geometry/box.h"
#include "core/geometry/frame.h"
#include "core/joint/joint.h"
#include "core/measure/measures.h"
#include "core/piece/piece.h"
#include "core/resolve/resolved_bend.h"
#include "core/resolve/resolved_easing.h"
#include "core/resolve/resolved_hole.h"
#include "core/resolve/resolved_peg.h"
#include "core/resolve/resolved_swing.h"
#include "core/rules/reason.h"

namespace shoulderline {

// A solid of a joint in its part's own frame, millimetres: a box, or within it a convex solid.
// A tenon stands out past a shoulder of the body.
struct TenonSolid {
    std::size_t joint = 0;
    Box box;
    std::optional<ConvexSolid> exact = std::nullopt;  // where it is not the box itself
    bool isHaunch = false;

    [[nodiscard]] ConvexSolid solid() const { return exact ? *exact : ConvexSolid::box(box); }
    friend bool operator==(const TenonSolid&, const TenonSolid&) = default;
};
struct MortiseSolid {
    std::size_t joint = 0;
    Face face = Face::FaceSide;
    Box box;    // the wood taken away; of one that goes in askew its mouth, as deep as it goes
    Box tenon;  // what fills it
    bool isThrough = false;
    std::optional<ConvexSolid> exact = std::nullopt;  // where it is not the box itself
    bool isHaunch = false;

    [[nodiscard]] ConvexSolid solid() const { return exact ? *exact : ConvexSolid::box(box); }
    // Around all of it.
    [[nodiscard]] Box bounds() const { return exact ? exact->bounds() : box; }
    friend bool operator==(const MortiseSolid&, const MortiseSolid&) = default;
};

// A cut other than a mortise, in its part's own frame: a box, or for a bore the cylinder that fits
// into it, its axis along the way into the wood. `joint` is the one that it is made for, if any.
struct ResolvedCut {
    CutKind kind = CutKind::Groove;
    Face face = Face::FaceSide;
    Box box;
    bool isThrough = false;
    std::string note;
    std::optional<std::size_t> joint;
    std::optional<ConvexSolid> exact = std::nullopt;  // where it is not the box itself
    std::optional<ResolvedHole> hole = std::nullopt;  // of a bore or a screw hole as stated
    std::optional<ResolvedPeg> peg = std::nullopt;    // of a peg mortise

    // Whether its place is that of its middle, as a bore's and a peg mortise's is.
    [[nodiscard]] bool isSetOutByMiddle() const {
        return kind == CutKind::Bore || kind == CutKind::PegMortise;
    }
    // What is taken away; the cylinder of a bore with facets within kArcSagitta, inside it.
    [[nodiscard]] ConvexSolid solid() const;
    friend bool operator==(const ResolvedCut&, const ResolvedCut&) = default;
};

// One member as it will be made. Its frame sits at the corner of its body where the start
// shoulder (or start end), face edge and face side meet: x along the length, y along the width from
// the face edge, z along the thickness from the face side. The blank of its body is the box
// (0,0,0)-(shoulder length, width, thickness); tenons stand out past x = 0 and x = shoulder length.
// Seen from its face side with the face edge up, x runs to the right; for the mirrored one of a
// pair, to the left. A post's length runs up.
struct ResolvedPart {
    std::string name;        // "side rail, upper, left"; "side slat 3, right"
    std::string of;          // stated name
    std::size_t stated = 0;  // index in Piece::parts
    Hand hand = Hand::None;
    int number = 0;  // in its set, from 1; 0 for a part that is not one of a set
    Role role = Role::Rail;
    SectionForm section = SectionForm::Square;
    std::string stock;
    std::string assembly;
    Frame frame;
    Body body;            // in `frame`: the blank as shaped
    Size shoulderLength;  // length of the body
    Size width;
    Size thickness;
    Length startTenon;  // how far tenons stand out past the start and the far shoulder
    Length farTenon;
    Length startHorn;  // left on past the ends until the glue is dry
    Length farHorn;
    std::vector<TenonSolid> tenons;
    std::vector<MortiseSolid> mortises;
    std::vector<ResolvedCut> cuts;
    Length gap;  // between neighbours of its set; zero for a part that is not one of a set
    std::optional<ResolvedBend> bend = std::nullopt;  // its body then goes beyond the blank
    BodySolids solids = {};  // of `body`; shared with its twin and those of its set
    std::vector<ResolvedEasing> easings = {};  // as the body has them, in the order stated

    // The solids of the body in `frame`, worked out here where nobody kept them.
    [[nodiscard]] BodySolids wood() const {
        return solids.isEmpty() ? BodySolids::of(body) : solids;
    }

    [[nodiscard]] Length length() const { return shoulderLength.value + startTenon + farTenon; }
    // As it is sawn to length: with the horns that are cut off after glue-up.
    [[nodiscard]] Length blankLength() const { return length() + startHorn + farHorn; }
    // The blank of the body.
    [[nodiscard]] Box bodyBox() const {
        return {{0, 0, 0}, {shoulderLength.value.mm(), width.value.mm(), thickness.value.mm()}};
    }
    // The body with its tenons: the finished size over all.
    [[nodiscard]] Box overBox() const {
        Box box = bodyBox();
        box.min.x -= startTenon.mm();
        box.max.x += farTenon.mm();
        return box;
    }
    friend bool operator==(const ResolvedPart&, const ResolvedPart&) = default;
};

// One joint. Frame: origin in the middle of the mouth on the entered face, x into the mortised
// part, y along the tenon's width, z along its thickness; in the piece's space.
struct ResolvedJoint {
    std::string name;  // "side rail, upper, left into front post, left"
    JointKind kind = JointKind::Blind;
    JointFeatures features;
    std::size_t tenoned = 0;  // indices in ResolvedPiece::parts
    std::size_t mortised = 0;
    End end = End::Start;  // the end of the tenoned part that it is at
    Frame frame;
    Tenon tenon;  // not filled for a joint without a tenon
    Mortise mortise;
    std::vector<FurtherSize> further;

    // The size of that name; null where the joint has none.
    [[nodiscard]] const Size* size(SizeName which) const;
    [[nodiscard]] JointForm form() const { return {kind, features}; }
    [[nodiscard]] bool hasTenon() const { return JointForm{kind, {}}.hasTenon(); }
    [[nodiscard]] bool isThrough() const { return JointForm{kind, {}}.isThrough(); }
    [[nodiscard]] bool has(JointFeature feature) const { return features.contains(feature); }
    friend bool operator==(const ResolvedJoint&, const ResolvedJoint&) = default;
};

// What could not be worked out, and where.
struct Trouble {
    RuleId rule = RuleId::PieceResolves;
    std::string place;                // "part 'front rail'", "measure 'seat height'"
    std::string message;              // one sentence
    std::optional<std::size_t> part;  // index in Piece::parts
    std::string measure;
    friend bool operator==(const Trouble&, const Trouble&) = default;
};

struct ResolvedMeasure {
    std::string name;
    std::optional<Value> value;  // none where it could not be worked out
    std::vector<std::string> dependsOn;
};

// Everything that follows from a stated piece. Immutable once made.
struct ResolvedPiece {
    std::vector<ResolvedMeasure> measures;  // in the order stated
    std::vector<ResolvedPart> parts;
    std::vector<ResolvedJoint> joints;
    std::vector<Trouble> troubles;
    std::vector<Length> rack;  // the chisels the joints were sized for, ascending
    RuleBook rules;            // with the maker's house rules in it
    Box bounds;                // around all parts over their tenons and pegs; zero if empty
    std::vector<ResolvedSwing> swings;  // of the assemblies that swing and have a station in reach

    [[nodiscard]] std::optional<std::size_t> findPart(std::string_view name) const;
    [[nodiscard]] std::optional<std::size_t> findJoint(std::string_view name) const;
};

// What takes up the part's body in the piece's space: the smallest box around it.
[[nodiscard]] Box boundsInSpace(const ResolvedPart&);
// The same around the body with its tenons.
[[nodiscard]] Box boundsOverTenons(const ResolvedPart&);

// The mouth of a mortise on the face that it enters, corner by corner in the part's frame; a bored
// one's round mouth by its facets.
[[nodiscard]] std::vector<Vec3> mouthRing(const MortiseSolid&);
// The smallest box around that, flat where the face lies square.
[[nodiscard]] Box mouthOf(const MortiseSolid&);

// What is set out of a mortise whose box is around all of it: of one that goes in askew its mouth,
// as deep as it goes.
[[nodiscard]] Box setOutBox(const MortiseSolid&);

// The tenon for drawing, restated in the outer frame of `frame`.
[[nodiscard]] Polyhedron polyhedronOf(const TenonSolid& tenon, const Frame& frame);

// Volume of the part as made: body and tenons, less what mortises and cuts take from it; in cubic
// millimetres. Exact where all are boxes and for arcs of the body; bores as ResolvedCut::solid().
[[nodiscard]] double volumeAsMade(const ResolvedPart&);

}  // namespace shoulderline
