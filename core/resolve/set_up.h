#pragma once

#include <string>
#include <vector>

#include "core/resolve/resolved_piece.h"

namespace shoulderline {

// Millimetres, a hair below the smallest hollow chisels: they begin at 1/4 in or 6 mm (common
// practice). Narrower mortises are cut with a mortise chisel.
inline constexpr double kLeastHollowChisel = 5.6;

// One setting of a tool for one joint: what is cut, with what, and how it is set from the faces
// that all marking is done from. The rule book has the tool's name as the subject of its row and
// the caution that goes with it as the sentence.
struct SetUp {
    RuleId tool = RuleId::SetUpChisel;
    std::size_t part = 0;  // in ResolvedPiece::parts
    std::string work;      // "mortise", "cheek at the face side"
    Length cutter;  // width of the chisel or cutter, diameter of the bit or of a round tenon, a
                    // saw's kerf where that counts; else zero
    Face reference = Face::FaceSide;  // that the fence bears on
    Length fence;                     // from there to the near side of the cut (a bit: its middle)
    Length depth;
    Length from;  // along the part from its start end (a tenon: from its end; in an end: from a
    Length to;    // long face) to where the cut begins and ends; both zero where it runs through
    bool fromShoulder = false;    // the last two are from the shoulder, out along the tenon
    bool beforeShaping = false;   // while the blank is square, before the part is tapered or curved
    Length runsOutAt = {};        // of a stop set askew: from the end, at the part's edge
    Face along = Face::StartEnd;  // what `from` and `to` are measured from: in an end a long face
    Length reach = {};  // as `fence`, to the far side of a mouth that is wider than its cutter
    // Of a mouth that does not run as the blank does: `fence`, `from` and `to` are to its middle,
    // it is `mouth` long, and its length turns by that about the face, above zero where it comes
    // farther from the reference towards the far end.
    Angle turn = {};
    Length mouth = {};
    bool slopesOut = false;   // as deep as told at the tenon, sloping to nothing away from it
    bool isTrench = false;    // sawn across the part at `from` and `to`, whatever its fence
    bool isByMiddle = false;  // of a stop for a shoulder out of square: to the middle of its line
    Length eased = {};        // of the end of a tenon: by how much, all round
    // Of a slot with a sloping outer end: where that has got to on the face where the slot is
    // shorter, which is the one it enters or the one it comes out of; zero for a square one.
    Length slopesTo = {};
    bool isShortAtMouth = false;
    // Of a cheek out of line with its part: `fence` is where it leaves the shoulder.
    Angle lean = {};
    Length fenceAtEnd = {};
    // Of the ends of a mortise that its tenon's wedges spread into: how far each is pared back
    // where it is widest, at the far face or at the bottom; `fence` and the like then say nothing.
    Length pared = {};
    bool isFarFaceOpen = false;
    Face entered = Face::FaceSide;  // of a mortise: by the tool; of its pared ends: where they are
    bool isLeaning = false;         // into a mouth askew, its depth along the tool
    bool isThrough = false;         // cut right through, its depth all the wood that is there
    // Of the mitre of a tenon's end: `from` and `to` are from the shoulder to the saw's line, at
    // `reference` where the tenon is left shorter and at `along`, across from it.
    bool isMitre = false;
    // Once the part is shaped, as the mouth is on the face that the shaping leaves: the stretch of
    // its outline that is laid level, from the start end; both zero where that is curved.
    bool afterShaping = false;
    Length lieFrom = {};
    Length lieTo = {};
    friend bool operator==(const SetUp&, const SetUp&) = default;
};

// The settings for one joint, in the order of work: the mortised part first, the tenon after it, so
// that it can be fitted. None for a joint that is not cut. The order, and a mortise cut before its
// tenon, are common practice; so is that a part which is tapered or curved is mortised and tenoned
// while its blank is square: its settings are then from the blank's faces, its depths from the face
// that the shaping takes off. Where more would be taken off over a mortise than it is deep, or its
// mouth lies askew on a face as sawn, it is cut after the shaping, and its depth is from that face.
// A long part is not stood on end at a machine; the rule book has how long.
[[nodiscard]] std::vector<SetUp> setUpsOf(const ResolvedPiece& resolved, std::size_t joint);

// "mortise, front post: 3/8 hollow chisel, in the mortiser; fence 3/8 from the face side, 1 3/8
// deep, from 12 to 14 1/2 from the foot".
[[nodiscard]] std::string setUpText(const SetUp& setUp,
                                    const ResolvedPiece& resolved,
                                    const LengthStyle& style);

// The same for several that differ in nothing but their place along the part, as one: "... at 3, 6
// and 9 from the left end", or for many that are evenly spaced "at 3 and 12 more, 2 1/2 apart",
// where that much added up keeps to the step that lengths are shown to. So are those that differ in
// their fence only, as the cheeks of a tenon. A line with the part and the tool of the one before
// it says "likewise" for both, unless `isEachFull`. Before them a line for each part whose joints
// are cut before or after it is shaped, with the reason.
[[nodiscard]] std::vector<std::string> setUpTexts(const std::vector<SetUp>& setUps,
                                                  const ResolvedPiece& resolved,
                                                  const LengthStyle& style,
                                                  bool isEachFull = false);

// The cautions of the tools that these settings need, each once, with the tool's name.
[[nodiscard]] std::vector<std::string> cautionsFor(const std::vector<SetUp>& setUps,
                                                   const RuleBook& rules);

}  // namespace shoulderline
