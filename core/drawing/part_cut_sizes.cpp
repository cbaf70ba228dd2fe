#include "core/drawing/part_cut_sizes.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/hole_views.h"
#include "core/drawing/part_faces.h"
#include "core/drawing/part_sizing.h"
#include "core/drawing/round_wood.h"
#include "core/measure/length_text.h"
#include "core/resolve/face_there.h"
#include "core/resolve/holes.h"
#include "core/resolve/joined_grooves.h"
#include "core/resolve/screws_needed.h"

namespace shoulderline {

namespace {

// How much shorter along the part a notch with a sloping wall is at the back side.
double narrowingOf(const ResolvedCut& notch) {
    if (!notch.exact || notch.kind != CutKind::Notch || isEnd(notch.face)) {
        return 0.0;
    }
    const auto lengthOn = [&](Vec3 outward) {
        double low = notch.box.max.x;
        double high = notch.box.min.x;
        for (const Vec3& corner : notchMouth(*notch.exact, outward)) {
            low = std::min(low, corner.x);
            high = std::max(high, corner.x);
        }
        return high - low;
    };
    return std::max(0.0, lengthOn({0, 0, -1}) - lengthOn({0, 0, 1}));
}

// Alike but for their place along the part; holes in an end, but for their place on it.
bool isAlike(const ResolvedCut& a, const ResolvedCut& b) {
    const Vec3 sizeA = a.box.size();
    const Vec3 sizeB = b.box.size();
    if (a.hole.has_value() != b.hole.has_value() || (a.hole && !isMadeAlike(*a.hole, *b.hole))) {
        return false;
    }
    if (a.peg && b.peg && !nearlyEqual(a.peg->proud, b.peg->proud)) {
        return false;
    }
    if (a.isSetOutByMiddle() && isEnd(a.face)) {
        return a.kind == b.kind && a.face == b.face && a.note == b.note &&
               isSameSize(sizeA.x, sizeB.x) && isSameSize(sizeA.y, sizeB.y);
    }
    return a.kind == b.kind && a.face == b.face && a.isThrough == b.isThrough && a.note == b.note &&
           isSameSize(sizeA.x, sizeB.x) && isSameSize(sizeA.y, sizeB.y) &&
           isSameSize(sizeA.z, sizeB.z) && isSameSize(a.box.min.y, b.box.min.y) &&
           isSameSize(a.box.min.z, b.box.min.z);
}

// Whether two cuts that run along the part are alike but that one lies at the one side of the face,
// `across` being its axis there, and the other at the other side.
bool areAtBothSides(const ResolvedCut& a, const ResolvedCut& b, int across, double wide) {
    const auto isAtSide = [&](const ResolvedCut& cut, bool high) {
        return high ? isSameSize(cut.box.max[across], wide) : isSameSize(cut.box.min[across], 0.0);
    };
    const bool isAtBoth =
        (isAtSide(a, false) && isAtSide(b, true)) || (isAtSide(a, true) && isAtSide(b, false));
    ResolvedCut moved = b;
    moved.box.min[across] = a.box.min[across];
    moved.box.max[across] = a.box.min[across] + b.box.size()[across];
    const bool isLong = a.box.size().x > a.box.size()[across];
    return isAtBoth && isLong && !a.isSetOutByMiddle() && !a.hole && !b.hole &&
           isSameSize(a.box.min.x, b.box.min.x) && isAlike(a, moved);
}

class CutWriter {
  public:
    explicit CutWriter(SizeWriter& writer)
        : to_(writer),
          part_(writer.part),
          view_(writer.view),
          cuts_(groovesJoined(writer.part.cuts)) {}

    void write() {
        std::vector<std::vector<const ResolvedCut*>> rows;
        for (const ResolvedCut& cut : cuts_) {
            const bool isForHead = cut.hole && cut.hole->isForHead;  // told with its screw hole
            if (!isSetOutOn(part_, cut, view_.face) || isKerf(cut) || isForHead) {
                continue;
            }
            const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& r) {
                return isAlike(*r.front(), cut) || (r.size() == 1 && isTwin(*r.front(), cut));
            });
            if (row == rows.end()) {
                rows.push_back({&cut});
            } else {
                row->push_back(&cut);
            }
        }
        std::size_t told = 0;
        for (const auto& row : rows) {
            if (!isEnd(view_.face)) {
                placeAlong(row);
            } else if (row.front()->isSetOutByMiddle()) {
                placeOnEnd(row);
            }
            note(row, {++told, rows.size()});
        }
    }

  private:
    [[nodiscard]] std::string shown(double mm) const { return to_.shown(mm); }
    [[nodiscard]] int acrossAxis() const {
        return view_.face == Face::FaceSide || view_.face == Face::BackSide ? 1 : 2;
    }

    [[nodiscard]] bool isTwin(const ResolvedCut& a, const ResolvedCut& b) const {
        const int across = acrossAxis();
        return !isEnd(view_.face) && areAtBothSides(a, b, across, part_.bodyBox().max[across]);
    }

    // The middle of a hole: of one as stated that of its mouth.
    [[nodiscard]] Vec3 middleOf(const ResolvedCut& cut) const {
        Vec3 middle = cut.box.centre();
        if (cut.hole) {
            const CutAxes axes = axesOn(cut.face);
            const bool isBehind = view_.face == oppositeOf(cut.face);
            const Vec3 at =
                cut.hole->mouth + cut.hole->into * (isBehind ? cut.hole->depth.mm() : 0);
            middle[axes.along] = at[axes.along];
            middle[axes.across] = at[axes.across];
        }
        return middle;
    }

    void along(double from, double to, double depth, const char* of) {
        NeededSize size{
            from, to, isSameSize(from, 0.0) ? 0.0 : depth, depth, {}, 0.0, of, to_.subject};
        size.mayRun = isSameSize(from, 0.0) && std::string_view(of) != "cut length";
        to_.along(std::move(size));
    }

    void placeAlong(const std::vector<const ResolvedCut*>& row) {
        const double length = part_.shoulderLength.value.mm();
        for (const ResolvedCut* cut : row) {
            const Rect rect = view_.toPlane(cut->box);
            if (cut->isSetOutByMiddle()) {
                const Vec3 middle = middleOf(*cut);
                const double centre = middle.x;
                // A hole in a tenon is placed from the shoulder that it is next to.
                const bool isPastFar = centre > length;
                along(isPastFar ? length : std::min(0.0, centre),
                      isPastFar ? centre : std::max(0.0, centre),
                      view_.toPlane(middle).y,
                      cut->peg ? "peg mortise centre" : "bore centre");
                continue;
            }
            const bool isPastStart = cut->box.max.x < kLengthTolerance.mm();
            if (isPastStart || cut->box.min.x > length - kLengthTolerance.mm()) {
                // In a tenon, from its shoulder on.
                const double shoulder = isPastStart ? 0.0 : length;
                const double near = isPastStart ? cut->box.max.x : cut->box.min.x;
                along(std::min(shoulder, near),
                      std::max(shoulder, near),
                      rect.min.y,
                      "cut from the shoulder");
                along(cut->box.min.x, cut->box.max.x, rect.min.y, "cut length");
                continue;
            }
            if (cut->box.min.x > kLengthTolerance.mm()) {
                along(0.0, cut->box.min.x, rect.min.y, "cut from end");
            }
            if (cut->box.max.x < length - kLengthTolerance.mm()) {
                along(std::max(0.0, cut->box.min.x), cut->box.max.x, rect.min.y, "cut length");
            }
        }
    }

    // By their centres, from the face edge and the face side.
    void placeOnEnd(const std::vector<const ResolvedCut*>& row) {
        const Vec2 corner = view_.toPlane(Vec3{});
        for (const ResolvedCut* cut : row) {
            const Vec2 at = view_.toPlane(middleOf(*cut));
            const bool isFar = view_.face == Face::FarEnd;
            to_.down({corner.y,
                      at.y,
                      0.0,
                      isFar ? view_.size.x - at.x : at.x,
                      {},
                      0.0,
                      "bore centre",
                      to_.subject});
            const double under = view_.size.y - at.y;
            to_.along({std::min(corner.x, at.x),
                       std::max(corner.x, at.x),
                       isFar ? 0.0 : under,
                       isFar ? under : 0.0,
                       {},
                       0.0,
                       "bore centre",
                       to_.subject});
        }
    }

    // Whether a cut runs across the whole part: how wide it is, its length along the part tells.
    [[nodiscard]] bool runsAcross(const ResolvedCut& cut) const {
        const int across = acrossAxis();
        return !cut.isSetOutByMiddle() && !isEnd(view_.face) &&
               cut.box.min[across] < kLengthTolerance.mm() &&
               cut.box.max[across] > part_.bodyBox().max[across] - kLengthTolerance.mm() &&
               cut.box.size().x < cut.box.size()[across];
    }

    // "bore 3/8, through", "groove 1/4 wide, 3/8 deep", "rabbet across, 3/8 deep".
    [[nodiscard]] std::string sectionText(const ResolvedCut& cut) const {
        const int across = acrossAxis();
        const int into = isEnd(view_.face) ? 0 : (across == 1 ? 2 : 1);
        const Vec3 size = cut.box.size();
        const bool isBore = cut.kind == CutKind::Bore;
        const double wide = isEnd(view_.face) ? size.y : size[across];
        std::string text(wordFor(cut.kind));
        text += isBore            ? " \u2300" + shown(wide)
                : runsAcross(cut) ? std::string(" across")
                                  : " " + shown(wide) + " wide";
        text += cut.isThrough ? ", through" : ", " + shown(size[into]) + " deep";
        return text;
    }

    // "edge" on the face side and its back, "side" on the edges.
    [[nodiscard]] std::string sideWord() const { return acrossAxis() == 1 ? "edge" : "side"; }

    [[nodiscard]] std::string placeText(const ResolvedCut& cut) const {
        const bool isBore = cut.isSetOutByMiddle();
        const Vec3 at = isBore ? middleOf(cut) : cut.box.min;
        if (isEnd(view_.face)) {
            return (isBore ? "centre " : "") + shown(at.y) + " from face edge, " + shown(at.z) +
                   " from face side";
        }
        const int across = acrossAxis();
        const Vec3 blank = part_.bodyBox().size();
        if (!isBore && isSameSize(at[across], 0.0)) {
            return isSameSize(cut.box.max[across], blank[across])
                       ? std::string("from side to side")
                       : "at the " +
                             std::string(wordFor(across == 1 ? Face::FaceEdge : Face::FaceSide));
        }
        return (isBore ? "centre " : "") + shown(at[across]) + " from " +
               referenceAcross(part_, across, cut.box.min.x, cut.box.max.x);
    }

    // Which screw a hole is for: its clearance hole says so, and its pilot.
    void addScrew(const ResolvedCut& cut, NeededNote& note) const {
        if (!cut.joint || *cut.joint >= to_.resolved.joints.size() ||
            to_.resolved.joints[*cut.joint].kind != JointKind::Screwed) {
            return;
        }
        const ResolvedJoint& joint = to_.resolved.joints[*cut.joint];
        const Size* diameter = joint.size(SizeName::Diameter);
        const double wide = isEnd(view_.face) ? cut.box.size().y : cut.box.size().x;
        const Size* plug = joint.size(SizeName::PlugDiameter);
        const bool isPlug = plug != nullptr && isSameSize(wide, plug->value.mm());
        const bool inInches = unitOf(to_.piece.style) == Unit::Inch;
        const std::optional<SoldScrew> screw = screwOf(to_.resolved, *cut.joint, inInches);
        if (diameter == nullptr || !screw || isPlug) {
            return;
        }
        note.lines.push_back("screw " + screwText(*screw, diameter->value, to_.piece.style));
    }

    // Which of how many notes of cuts on the face: those of cuts that run along it together point
    // to places of their own.
    struct Turn {
        std::size_t number = 1;
        std::size_t of = 1;
    };

    // What a note points to of a cut that is not a hole.
    [[nodiscard]] Vec2 targetIn(const ResolvedCut& cut, const Turn& turn) const {
        const Rect rect = view_.toPlane(cut.box);
        const Vec2 middle = (rect.min + rect.max) * 0.5;
        if (runsAcross(cut)) {
            constexpr double kLow = 0.8;  // near the notes
            return {middle.x, rect.min.y + kLow * rect.size().y};
        }
        const double along = static_cast<double>(turn.number) / static_cast<double>(turn.of + 1);
        return {std::min(middle.x, rect.min.x + view_.size.x * along), middle.y};
    }

    void note(const std::vector<const ResolvedCut*>& row, const Turn& turn) {
        // Of two, one at each side, the leader points to that which lies nearer to the notes.
        const bool areTwins = row.size() == 2 && isTwin(*row.front(), *row.back());
        const bool isLower = areTwins && view_.toPlane(row.front()->box).min.y <
                                             view_.toPlane(row.back()->box).min.y;
        const ResolvedCut& cut = isLower ? *row.back() : *row.front();
        const Rect rect = view_.toPlane(cut.box);
        NeededNote note;
        note.subject = to_.subject;
        note.target = cut.hole                 ? view_.toPlane(middleOf(cut))
                      : cut.isSetOutByMiddle() ? (rect.min + rect.max) * 0.5
                                               : targetIn(cut, turn);
        const std::string times =
            row.size() > 1 ? std::to_string(row.size()) + " \u00d7 " : std::string();
        if (!cut.note.empty()) {
            note.lines.push_back(cut.note);
        }
        addScrew(cut, note);
        if (cut.hole) {
            for (std::string& line : holeLines(to_.part, cut, times, to_.piece.style)) {
                note.lines.push_back(std::move(line));
            }
        } else if (cut.peg) {
            for (std::string& line : pegLines(part_, cut, times, to_.piece.style)) {
                note.lines.push_back(std::move(line));
            }
        } else {
            note.lines.push_back(times + sectionText(cut));
            if (const double by = narrowingOf(cut); by > kLengthTolerance.mm()) {
                note.lines.push_back("outer wall slopes, " + shown(by) +
                                     " shorter at the back side");
            }
        }
        if (beginsInWaste(part_, cut)) {
            if (cut.kind == CutKind::Notch && !cut.isThrough) {
                note.lines.push_back("deep from the blank's " + std::string(wordFor(cut.face)));
            }
            note.lines.emplace_back("before the blank is shaped");
        }
        if (!runsAcross(cut) && (!isEnd(view_.face) || !cut.isSetOutByMiddle())) {
            note.lines.push_back(areTwins ? "one at each " + sideWord() : placeText(cut));
        }
        to_.note(std::move(note));
    }

    SizeWriter& to_;
    const ResolvedPart& part_;
    const PartView& view_;
    std::vector<ResolvedCut> cuts_;  // as they are made
};

}  // namespace

void addCutSizes(SizeWriter& writer) {
    CutWriter(writer).write();
}

}  // namespace shoulderline
