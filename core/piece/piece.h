#pragma once

#include <array>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "core/measure/length_text.h"
#include "core/piece/shape.h"
#include "core/piece/use.h"
#include "core/piece/words.h"

namespace shoulderline {

// What the maker states. Plain values, nothing computed: every quantity is the text of an
// expression (see core/measure/expression.h), empty where the maker leaves it to the rule.
// Space: x to the right as one faces the piece, y from front to back, z up from the floor; the
// plane x = 0 is the middle of the piece, in which pairs are mirrored.
// `extras` holds, as JSON text of an object, the members of a file that this version does not know.

// A size or angle of the whole piece that the maker names.
struct Measure {
    std::string name;
    Statement expression;
    std::string note;
    Statement least;  // limits that the maker sets; empty for none
    Statement most;
    Statement found;  // as taken from an original; empty for none
    std::string extras;
    friend bool operator==(const Measure&, const Measure&) = default;
};

// A named kind of material.
struct Stock {
    std::string name;
    std::string species;
    Cut cut = Cut::Flat;
    Statement thickness;
    Statement measuredThickness;  // as planed; overrides `thickness` when not empty
    Statement greatestWidth;      // widest board to be had; empty for no limit
    Statement greatestLength;     // longest board to be had; empty for no limit
    std::string extras;
    bool isHeatTreated = false;  // modified by heat: its glue lines hold less
    friend bool operator==(const Stock&, const Stock&) = default;
};

// Where a part lies along one axis: one of its own faces (or its middle) at a stated coordinate.
struct Position {
    Side face = Side::Centre;
    Statement at;
    friend bool operator==(const Position&, const Position&) = default;
};

// How far a part is set in from a face of the part it joins; from Centre: off its middle.
struct Setting {
    Side from = Side::Centre;
    Statement by;  // inwards positive; empty for zero (flush, or centred)
    friend bool operator==(const Setting&, const Setting&) = default;
};

// A post on its foot. Its length runs up; heights are to the shoulder, tenons come on top. A post
// that leans has its ends cut level.
struct Stands {
    Position x;
    Position y;
    Statement foot;          // level of its lower end; empty for the floor
    Statement height;        // level of its upper end
    Statement rake = {};     // as seen from the side, the angle by which it leans back going up
    Statement splay = {};    // as seen from the front, by which it leans to the middle going up
    Statement atLevel = {};  // the level at which x and y are stated; empty for its foot
    friend bool operator==(const Stands&, const Stands&) = default;
};

// A rail is moved from where it is stated, no further than it takes for its mortises to leave wood
// between themselves and those of another part; how far follows anew from the sizes as they are.
struct GivesWay {
    std::string to;  // the stated name of the part whose mortises it passes; empty: none
    Side towards = Side::Centre;  // up, down or aside
    friend bool operator==(const GivesWay&, const GivesWay&) = default;
};

// A member between two parts that face each other. References name a part ("front post"), for one
// of a pair with its hand ("front post, left"); without it the part of the same hand is meant. It
// runs along an axis of space unless it is angled or meets a part that leans: then it runs from
// where it is set on the one to where it is set on the other.
struct Spans {
    std::string from;
    std::string to;
    std::optional<Position>
        level;            // top, bottom or centre at a height; for an upright member, its
                          // left, right, front, back or centre along the part it rises from
    Setting set;          // across the parts it joins
    bool flat = false;    // lies with its width level instead of upright
    bool angled = false;  // runs straight from the one to the other
    bool leans = false;   // its width lies along the parts that it joins
    std::optional<Position> levelTo = std::nullopt;  // at the second part, where it is another
    GivesWay givesWay = {};
    ShoulderFit fit = ShoulderFit::Follow;  // where the face that it meets is shaped
    friend bool operator==(const Spans&, const Spans&) = default;
};

// A member that lies on the tops of others and runs past them by stated overhangs. A reference to a
// set means all its members; to a pair, from a part that is none, both.
struct Caps {
    std::vector<std::string> on;
    Side runs = Side::Back;  // which way its length runs: Right (across) or Back (in depth)
    std::map<Side, Statement> overhang;  // beyond the outermost faces of what it lies on
    friend bool operator==(const Caps&, const Caps&) = default;
};

// A panel that fills a frame of four and stands in grooves of all of them: its grain runs from one
// of `ends` to the other, its width between `edges`. `set` places the groove across the frame.
struct Fills {
    std::array<std::string, 2> edges;
    std::array<std::string, 2> ends;
    Setting set;
    friend bool operator==(const Fills&, const Fills&) = default;
};

// Placed by a point and three angles, turned about x, then y, then z. Its length, width and
// thickness run along x, y and z before turning; the point is where its three reference faces meet.
struct Free {
    Statement x, y, z;
    Statement aboutX, aboutY, aboutZ;  // angles; empty for none
    Statement length;
    friend bool operator==(const Free&, const Free&) = default;
};

using Relation = std::variant<Stands, Spans, Caps, Free, Fills>;

// A set of equal members, evenly placed between two parts, along the axis on which these stand
// apart: the gaps between neighbours and at both ends are alike (count or greatest gap given), or
// neighbours stand at a stated pitch, centred. One of `count`, `greatestGap` and `pitch` decides;
// `count` goes with `pitch` too.
struct Spacing {
    std::string after;  // the set lies between these two parts
    std::string before;
    Statement count;
    Statement greatestGap;
    Statement pitch;
    friend bool operator==(const Spacing&, const Spacing&) = default;
};

struct Part {
    std::string name;
    Role role = Role::Rail;
    std::string assembly;  // empty for the piece itself
    std::string stock;
    Statement width;
    Statement thickness;  // empty: as the stock is
    SectionForm section = SectionForm::Square;
    bool pair = false;  // stated once, mirrored in x = 0
    Side faceEdge =
        Side::Centre;  // which way its face edge looks; Centre leaves it to the relation
    Relation relation;
    std::optional<Spacing> spacing;
    Shape shape;  // empty for a plain prism
    std::vector<CutStatement> cuts;
    std::string note;
    std::string extras;
    std::optional<Bend> bend = std::nullopt;    // none for a straight part
    std::vector<EasingStatement> easings = {};  // of its arrises, in the order they are made
    Statement foundWidth = {};      // as it came out at the bench, over what is stated; what
    Statement foundThickness = {};  // follows from it goes by that
    friend bool operator==(const Part&, const Part&) = default;
};

// A place at which a rest bar can stand: stated by how far its front lies behind the pivot, or by
// the angle, from upright, at which the back is to lean there. One of the two decides.
struct RestStation {
    std::string name;
    Statement behind;
    Statement lean;
    std::string extras;
    friend bool operator==(const RestStation&, const RestStation&) = default;
};

// How an assembly swings: about the x axis of its own frame, on pins through its origin, until the
// back of one of its members leans on the front upper edge of a rest bar that is set at one of
// several stations. References name parts as in Spans.
struct Swing {
    std::string leans;                  // the member that leans: "back stile"
    std::string rest;                   // the bar that it leans on: "rest bar"
    std::vector<RestStation> stations;  // in order
    std::string at;                     // the station that the piece is shown at; empty: the first
    Statement pin;                      // diameter of the pivot pins; empty: no holes are bored
    std::vector<std::string> pinned;    // parts that are bored for them
    Statement pinDepth;  // of the holes in parts outside the assembly; empty: through
    Statement spacer;    // thickness of the spacers at either side; empty: none
    Statement peg;       // diameter of the pegs behind the bar; empty: none
    Statement pegDepth;  // of their holes; empty: through
    std::string extras;
    friend bool operator==(const Swing&, const Swing&) = default;
};

// Parts glued up together. Its own frame is turned (about x, then y, then z) and moved within its
// parent.
struct Assembly {
    std::string name;
    std::string parent;  // empty for the piece itself
    Statement x, y, z;
    Statement aboutX, aboutY, aboutZ;
    std::string note;
    std::string extras;
    std::optional<Swing> swing = std::nullopt;  // over `aboutX`
    friend bool operator==(const Assembly&, const Assembly&) = default;
};

// A size of a joint that the maker states over the rule: the size itself, an offset to what the
// rule gives, or the size as it came out at the bench.
struct SizeStatement {
    SizeState state = SizeState::Stated;  // never ByRule
    Statement expression;
    friend bool operator==(const SizeStatement&, const SizeStatement&) = default;
};

// What the maker says of the joints between two parts, by their stated names: for all of a pair or
// set alike. Also adds a joint where two parts touch without a relation.
struct JointStatement {
    std::string tenoned;
    std::string mortised;
    std::optional<JointKind> kind;
    std::set<JointFeature> features;
    std::map<SizeName, SizeStatement> sizes;
    std::string note;
    std::string extras;
    std::string stock = {};  // of what it takes besides its members (a loose tenon, wedges, pins);
                             // empty: as the tenoned part
    friend bool operator==(const JointStatement&, const JointStatement&) = default;
};

// A rule of this maker's, by the id of the rule it takes the place of.
struct HouseRule {
    std::string id;
    Statement value;
    std::string note;
    std::string extras;
    friend bool operator==(const HouseRule&, const HouseRule&) = default;
};

struct Piece {
    std::string name;
    std::string note;
    Unit unit = Unit::Inch;  // of a bare number in a statement; decides the rack and the grid too
    LengthStyle style =
        LengthStyle::fractions(16);  // how lengths are shown; changes nothing that is stated
    std::vector<Measure> measures;
    std::vector<Stock> stocks;
    std::vector<Assembly> assemblies;
    std::vector<Part> parts;
    std::vector<JointStatement> joints;
    std::vector<HouseRule> houseRules;
    std::vector<Statement> rack;  // chisels (mortise widths) at hand; empty for the usual rack
    Use use;                      // what it has to bear, and the air it stands in
    std::string extras;
    friend bool operator==(const Piece&, const Piece&) = default;
};

// A reference to a part split into its stated name and the hand it asks for (None if it does not).
struct PartReference {
    std::string_view name;
    Hand hand = Hand::None;
};
[[nodiscard]] PartReference splitReference(std::string_view reference);

// The joint statement for two stated parts, or null.
[[nodiscard]] const JointStatement* findJointStatement(const Piece&,
                                                       std::string_view tenoned,
                                                       std::string_view mortised);

}  // namespace shoulderline
