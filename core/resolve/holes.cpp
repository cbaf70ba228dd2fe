#include "core/resolve/holes.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/cylinder.h"
#include "core/joint/size_chain.h"
#include "core/measure/angle_text.h"
#include "core/resolve/end_words.h"
#include "core/resolve/frames.h"

namespace shoulderline {

CutAxes axesOn(Face face) {
    switch (face) {
        case Face::FaceSide:
            return {0, 1, 2, false};
        case Face::BackSide:
            return {0, 1, 2, true};
        case Face::FaceEdge:
            return {0, 2, 1, false};
        case Face::BackEdge:
            return {0, 2, 1, true};
        case Face::StartEnd:
            return {1, 2, 0, false};
        case Face::FarEnd:
            return {1, 2, 0, true};
    }
    return {};
}

Face acrossReference(Face face) {
    return axesOn(face).across == 1 ? Face::FaceEdge : Face::FaceSide;
}

std::string alongReference(const ResolvedPart& part, Face face) {
    return axesOn(face).along == 0 ? placesFromWord(part, End::Start)
                                   : std::string(wordFor(Face::FaceEdge));
}

double lowOnAxis(Datum from, double at, double size, double whole, bool byMiddle) {
    const double half = byMiddle ? size / 2 : 0.0;
    switch (from) {
        case Datum::Start:
            return at - half;
        case Datum::Middle:
            return whole / 2 + at - size / 2;
        case Datum::Far:
            break;
    }
    return whole - at - size + half;
}

namespace {

constexpr double kPastFace = 0.5;  // mm that the solid of a hole goes past a face

// Half the angle between the sides of a countersink.
double halfSink(Unit unit) {
    return Angle::degrees(unit == Unit::Inch ? 41.0 : 45.0).radians();
}

// A circle of `radius`, or two halves of one `reach` apart to either side; counter-clockwise.
std::vector<Vec2> slotRing(double radius, double reach) {
    const int facets = circleFacets(radius) / 4 * 4 + 4;  // so that its ends are on it
    std::vector<Vec2> ring;
    for (int i = 0; i <= facets; ++i) {
        const double angle = -M_PI / 2 + M_PI * 2 * i / facets;
        const double side = i * 2 <= facets ? reach : -reach;
        // Where the halves part, both ends of the straight sides.
        if (reach > 0.0 && i * 2 == facets) {
            ring.push_back({reach, radius});
            ring.push_back({-reach, radius});
        } else if (i < facets || reach > 0.0) {
            ring.push_back({side + radius * std::cos(angle), radius * std::sin(angle)});
        }
    }
    return ring;
}

// A frame on the mouth with its z into the wood and its x along the slot, or along the face.
Frame frameAt(const ResolvedHole& hole) {
    const bool isSlotted = norm(hole.slotAlong) > 0.5;
    Vec3 aside = hole.slotAlong;
    if (!isSlotted) {
        aside[(longestAxis(hole.into) + 1) % 3] = 1.0;
        aside = normalised(aside - hole.into * dot(aside, hole.into));
    }
    return {hole.mouth, aside, cross(hole.into, aside), hole.into};
}

class HoleReading {
  public:
    HoleReading(const CutStatement& cut,
                const Vec3& size,
                const Place& place,
                const SizingGuide& guide,
                Evaluation& evaluation)
        : cut_(cut),
          axes_(axesOn(cut.face)),
          size_(size),
          place_(place),
          guide_(guide),
          evaluation_(evaluation),
          name_(wordFor(cut.kind)) {}

    std::vector<ResolvedCut> read() {
        const std::size_t before = evaluation_.troubleCount();
        const bool isScrew = cut_.kind == CutKind::ScrewHole;
        hole_.kind = cut_.kind;
        if (!readPlace()) {
            return {};
        }
        if (isScrew ? !readSlot() : !readTilt()) {
            return {};
        }
        std::vector<ResolvedCut> cuts{finished(hole_)};
        if (isScrew && cut_.head != ScrewHead::Plain) {
            if (const std::optional<ResolvedHole> head = readHead()) {
                cuts.front().hole->headWidth = head->headWidth;
                cuts.front().hole->headDepth = head->headDepth;
                cuts.push_back(finished(*head));
            }
        }
        return evaluation_.troubleCount() > before && !isScrew ? std::vector<ResolvedCut>() : cuts;
    }

  private:
    [[nodiscard]] double whole() const { return size_[axes_.into]; }

    bool readPlace() {
        const std::optional<Length> along =
            evaluation_.length(cut_.along, place_, name_ + ": place along", Length());
        const std::optional<Length> across =
            evaluation_.length(cut_.across, place_, name_ + ": place across", Length());
        const std::optional<Length> diameter =
            evaluation_.size(cut_.width, place_, name_ + ": diameter");
        if (!along || !across || !diameter) {
            return false;
        }
        hole_.diameter = *diameter;
        const double d = diameter->mm();
        hole_.mouth[axes_.along] =
            lowOnAxis(cut_.alongFrom, along->mm(), d, size_[axes_.along], true) + d / 2;
        hole_.mouth[axes_.across] =
            lowOnAxis(cut_.acrossFrom, across->mm(), d, size_[axes_.across], true) + d / 2;
        hole_.mouth[axes_.into] = axes_.fromHigh ? whole() : 0.0;
        hole_.into[axes_.into] = axes_.fromHigh ? -1.0 : 1.0;
        for (const int axis : {axes_.along, axes_.across}) {
            if (hole_.mouth[axis] - d / 2 >= size_[axis] || hole_.mouth[axis] + d / 2 <= 0.0) {
                tellOutside(axis);
                return false;
            }
        }
        return true;
    }

    void tellOutside(int axis) {
        const bool isAlong = axis == axes_.along;
        evaluation_.trouble(place_,
                            "a " + name_ + " of it lies outside the wood: its middle is " +
                                evaluation_.shown(Length::mm(hole_.mouth[axis])) +
                                (isAlong ? " along" : " across") + " the face, which is " +
                                evaluation_.shown(Length::mm(size_[axis])) +
                                (isAlong ? " long" : " wide"));
    }

    std::optional<Angle> tilt(const Statement& statement, const std::string& way) {
        const std::string what = name_ + ": tilt " + way;
        const std::optional<Angle> angle = evaluation_.angle(statement, place_, what);
        if (angle && std::abs(angle->degrees()) > kMostTilt.degrees() + 1e-9) {
            evaluation_.trouble(place_,
                                what + " is " + showAngle(*angle) +
                                    " from square to the face; at most " + showAngle(kMostTilt) +
                                    " can be bored");
            return std::nullopt;
        }
        return angle;
    }

    bool readTilt() {
        const std::optional<Angle> along = tilt(cut_.tiltAlong, "along");
        const std::optional<Angle> across = tilt(cut_.tiltAcross, "across");
        if (!along || !across) {
            return false;
        }
        hole_.lean.along = *along;
        hole_.lean.across = *across;
        Vec3 way = hole_.into;
        way[axes_.along] = std::tan(along->radians());
        way[axes_.across] = std::tan(across->radians());
        const double through = norm(way) * whole();
        hole_.into = normalised(way);
        return readDepth(Length::mm(through));
    }

    bool readDepth(Length through) {
        const std::optional<Length> depth =
            evaluation_.size(cut_.depth, place_, name_ + ": depth", through);
        if (!depth) {
            return false;
        }
        hole_.depth = std::min(*depth, through);
        isThrough_ = *depth >= through - kLengthTolerance;
        return true;
    }

    bool readSlot() {
        hole_.head = cut_.head;
        hole_.slot = cut_.slot;
        if (!readDepth(Length::mm(whole()))) {
            return false;
        }
        if (cut_.slot == SlotWay::Round) {
            return true;
        }
        hole_.slotAlong[cut_.slot == SlotWay::Along ? axes_.along : axes_.across] = 1.0;
        hole_.slotWidth = hole_.slotLength.value = hole_.diameter;
        if (cut_.length.empty()) {
            return true;  // by rule, once it is known what lies behind it
        }
        const std::optional<Length> length =
            evaluation_.size(cut_.length, place_, name_ + ": length of the slot");
        if (!length) {
            return false;
        }
        if (*length < hole_.diameter - kLengthTolerance) {
            evaluation_.trouble(place_,
                                name_ + ": its slot is " + evaluation_.shown(*length) +
                                    " long, less than it is wide; at least " +
                                    evaluation_.shown(hole_.diameter) + " is needed");
            return false;
        }
        hole_.slotLength.state = SizeState::Stated;
        link(hole_.slotLength, RuleId::Stated, *length, {}, *length);
        return true;
    }

    // The countersink or counterbore over the hole.
    std::optional<ResolvedHole> readHead() {
        ResolvedHole head = hole_;
        head.isForHead = true;
        const bool isCone = cut_.head == ScrewHead::Countersunk;
        link(head.headWidth,
             isCone ? RuleId::ScrewSinkWidth : RuleId::PlugDiameter,
             hole_.diameter,
             {},
             isCone ? hole_.diameter * guide_.rules[RuleId::ScrewSinkWidth].value
                    : nearestOn(guide_.bits,
                                hole_.diameter * guide_.rules[RuleId::PlugDiameter].value));
        if (!stateOver(cut_.headWidth, "width of the head", head.headWidth)) {
            return std::nullopt;
        }
        head.diameter = head.headWidth.value;
        if (head.diameter <= hole_.diameter + kLengthTolerance) {
            evaluation_.trouble(place_,
                                name_ + ": the hole for its head is " +
                                    evaluation_.shown(head.diameter) +
                                    " wide, no wider than the hole itself; more than " +
                                    evaluation_.shown(hole_.diameter) + " is needed");
            return std::nullopt;
        }
        if (isCone) {
            const double half = (head.diameter - hole_.diameter).mm() / 2;
            head.depth = Length::mm(half / std::tan(halfSink(evaluation_.unit())));
            head.headDepth.value = head.depth;
            return head;
        }
        head.headDepth = shareOf(head.diameter, RuleId::PlugDepth, guide_);
        toGrid(head.headDepth,
               std::min(snapUp(head.headDepth.value, guide_.grid), hole_.depth / 2),
               guide_.grid);
        if (!stateOver(cut_.headDepth, "depth of the head", head.headDepth)) {
            return std::nullopt;
        }
        head.depth = std::min(head.headDepth.value, hole_.depth);
        return head;
    }

    bool stateOver(const Statement& statement, const std::string& what, Size& size) {
        if (statement.empty()) {
            return true;
        }
        const std::optional<Length> value =
            evaluation_.size(statement, place_, name_ + ": " + what);
        if (value) {
            size.state = SizeState::Stated;
            link(size, RuleId::Stated, *value, {}, *value);
        }
        return value.has_value();
    }

    [[nodiscard]] ResolvedCut finished(const ResolvedHole& hole) const {
        ResolvedCut cut;
        cut.kind = CutKind::Bore;
        cut.face = cut_.face;
        cut.note = cut_.note;
        cut.isThrough = isThrough_ && !hole.isForHead;
        cut.hole = hole;
        fitSolid(cut, evaluation_.unit());
        // Along its axis what is wood: the solid goes past the faces.
        cut.box.min[axes_.into] = std::max(cut.box.min[axes_.into], 0.0);
        cut.box.max[axes_.into] = std::min(cut.box.max[axes_.into], whole());
        return cut;
    }

    static void fitSolid(ResolvedCut& cut, Unit unit) {
        const ResolvedHole& hole = *cut.hole;
        const bool isCone = hole.isForHead && hole.head == ScrewHead::Countersunk;
        if (hole.lean.isTilted() || isCone || hole.slotLength.value > hole.slotWidth) {
            cut.exact = solidOf(hole, cut.isThrough, unit);
            cut.box = cut.exact->bounds();
            return;
        }
        const Vec3 half{hole.diameter.mm() / 2, hole.diameter.mm() / 2, hole.diameter.mm() / 2};
        const Vec3 end = hole.mouth + hole.into * hole.depth.mm();
        cut.box = {hole.mouth - half, hole.mouth + half};
        const int axis = longestAxis(hole.into);
        cut.box.min[axis] = std::min(hole.mouth[axis], end[axis]);
        cut.box.max[axis] = std::max(hole.mouth[axis], end[axis]);
    }

    const CutStatement& cut_;
    CutAxes axes_;
    const Vec3& size_;
    const Place& place_;
    const SizingGuide& guide_;
    Evaluation& evaluation_;
    std::string name_;
    ResolvedHole hole_;
    bool isThrough_ = false;
};

}  // namespace

ResolvedHole roundHole(const ResolvedCut& bore) {
    if (bore.hole) {
        return *bore.hole;
    }
    const CutAxes axes = axesOn(bore.face);
    ResolvedHole hole;
    hole.mouth = bore.box.centre();
    hole.mouth[axes.into] = axes.fromHigh ? bore.box.max[axes.into] : bore.box.min[axes.into];
    hole.into[axes.into] = axes.fromHigh ? -1.0 : 1.0;
    hole.diameter = Length::mm(bore.box.size()[axes.along]);
    hole.depth = Length::mm(bore.box.size()[axes.into]);
    return hole;
}

ConvexSolid solidOf(const ResolvedHole& hole, bool isThrough, Unit unit) {
    const double radius = hole.diameter.mm() / 2;
    // A tilted one's far side of the mouth lies before its middle, and so where it comes out.
    const double past = kPastFace + radius * std::tan(hole.lean.tilt().radians());
    const bool isSlotted = hole.slot != SlotWay::Round;
    const double reach =
        isSlotted ? std::max(0.0, (hole.slotLength.value - hole.slotWidth).mm() / 2) : 0.0;
    const std::vector<Vec2> ring = slotRing(radius, reach);
    const std::vector<int> oneSurface(ring.size(), 0);
    const bool isCone = hole.isForHead && hole.head == ScrewHead::Countersunk;
    const Frame frame = frameAt(hole);
    ConvexSolid solid = ConvexSolid::prism(
        ring, isCone ? 0.0 : -past, hole.depth.mm() + (isThrough ? past : 0.0), frame, oneSurface);
    if (!isCone) {
        return solid;
    }
    const double half = halfSink(unit);
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vec2 side = ring[(i + 1) % ring.size()] - ring[i];
        const Vec2 out = Vec2{side.y, -side.x} * (1.0 / norm(side));
        const Vec3 normal = normalised(frame.directionToOuter(
            {out.x * std::cos(half), out.y * std::cos(half), std::sin(half)}));
        const Vec3 on = frame.toOuter({ring[i].x, ring[i].y, 0.0});
        if (std::optional<ConvexSolid> left = solid.clipped({normal, dot(normal, on)}, 0)) {
            solid = std::move(*left);
        }
    }
    return solid;
}

std::vector<ResolvedCut> workOutHole(const CutStatement& cut,
                                     const Vec3& size,
                                     const Place& place,
                                     const SizingGuide& guide,
                                     Evaluation& evaluation) {
    return HoleReading(cut, size, place, guide, evaluation).read();
}

}  // namespace shoulderline
