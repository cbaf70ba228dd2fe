#include "core/resolve/tenon_set_up.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/resolve/end_plane.h"
#include "core/resolve/frames.h"
#include "core/resolve/joint_angles.h"
#include "core/resolve/stations.h"
#include "core/resolve/tenon_mitre.h"

namespace shoulderline {

namespace {

// One side of a tenon: how far its cheek lies in from the part's face, and what a haunch leaves of
// the length sawn there.
struct TenonSide {
    Face face = Face::FaceSide;
    Length shoulder;
    Length haunch;  // how long it stands out from the shoulder at this side; zero for none
    bool isSloping = false;
    bool isGrooved = false;  // a groove along the part has taken its wood away already

    [[nodiscard]] bool isCut() const { return shoulder > kLengthTolerance; }
};

class TenonSetUps {
  public:
    TenonSetUps(const ResolvedPiece& resolved, std::size_t index)
        : resolved_(resolved),
          index_(index),
          joint_(resolved.joints[index]),
          part_(resolved.parts[joint_.tenoned]) {}

    std::vector<SetUp> take() {
        if (joint_.kind == JointKind::Round) {
            SetUp& round = add(RuleId::SetUpRoundTenon, "round tenon");
            round.cutter = joint_.tenon.thickness.value;
            round.depth = joint_.tenon.length.value;
            addRoundShoulder();
            return std::move(all_);
        }
        if (isFork()) {
            addFork();
            return std::move(all_);
        }
        const Shoulders& s = joint_.tenon.shoulders;
        const std::array<TenonSide, 4> sides{side(Face::FaceSide, s.faceSide),
                                             side(Face::BackSide, s.backSide),
                                             side(Face::FaceEdge, s.faceEdge),
                                             side(Face::BackEdge, s.backEdge)};
        addCheeks(sides[0], sides[1], joint_.tenon.thickness.value, JointFeature::Twin);
        addCheeks(sides[2], sides[3], joint_.tenon.width.value, JointFeature::Double);
        addShoulders(sides);
        addHaunches(sides);
        addMitre();
        addWaste();
        addStop(RuleId::SetUpShoulderPlane, "shoulders, pared", lengthInMiddle(), {});
        addEnd();
        return std::move(all_);
    }

  private:
    SetUp& add(RuleId tool, std::string work) {
        SetUp one;
        one.tool = tool;
        one.part = joint_.tenoned;
        one.work = std::move(work);
        all_.push_back(std::move(one));
        return all_.back();
    }

    // Against a stop, `from` the end of the tenon.
    SetUp& addStop(RuleId tool, std::string work, Length from, Length depth) {
        SetUp& one = add(tool, std::move(work));
        one.to = from;
        one.depth = depth;
        return one;
    }

    // From the end of the tenon back to the shoulder, along the tenon at (y, z) of the part: the
    // end lies square to the tenon, the shoulder may not.
    [[nodiscard]] Length lengthAt(double y, double z) const {
        const Frame tenon = relativeFrame(part_.frame, joint_.frame);
        const Vec3 onShoulder{endAt(part_, joint_.end, y, z), y, z};
        const double past = dot(onShoulder - tenon.origin, tenon.x);
        return joint_.tenon.length.value - Length::mm(past);
    }
    [[nodiscard]] Length lengthInMiddle() const {
        return lengthAt(part_.width.value.mm() / 2, part_.thickness.value.mm() / 2);
    }
    // On the middle of that face.
    [[nodiscard]] Length lengthOn(Face face) const {
        const AxisWay inward = inwardOf(face);
        Vec3 at = part_.bodyBox().centre();
        at[inward.axis] = inward.way > 0.0 ? 0.0 : part_.bodyBox().max[inward.axis];
        return lengthAt(at.y, at.z);
    }
    // Whether the shoulder's line on that face is out of square.
    [[nodiscard]] bool isSlanted(Face face) const {
        constexpr double kSquare = 0.0009;  // radians: less cannot be set
        for (const ShoulderLine& line : endAnglesOf(part_, joint_.end).lines) {
            if (line.side == face) {
                return std::abs(line.fromSquare.radians()) > kSquare;
            }
        }
        return false;
    }

    [[nodiscard]] TenonSide side(Face face, const Size& shoulder) const {
        TenonSide one{face,
                      shoulder.value,
                      Length(),
                      joint_.has(JointFeature::SlopingHaunch),
                      isGrooved(face, shoulder.value)};
        const Box body = part_.bodyBox();
        for (const TenonSolid& solid : part_.tenons) {
            const bool isAtThisEnd = (solid.box.centre().x < 0.0) == (joint_.end == End::Start);
            if (solid.joint != index_ || !solid.isHaunch || !isAtThisEnd) {
                continue;
            }
            const double slack = kLengthTolerance.mm();
            if ((face == Face::FaceEdge && solid.box.min.y <= slack) ||
                (face == Face::BackEdge && solid.box.max.y >= body.max.y - slack)) {
                one.haunch = Length::mm(solid.box.size().x);
            }
        }
        return one;
    }

    // Whether a groove along that face, as wide as the tenon at least, is as deep as its shoulder
    // and runs out at this end.
    [[nodiscard]] bool isGrooved(Face face, Length shoulder) const {
        const double slack = kLengthTolerance.mm();
        const int into = inwardOf(face).axis;
        const int across = 3 - into;
        const Box body = part_.bodyBox();
        const Shoulders& s = joint_.tenon.shoulders;
        const Extent tenon =
            across == 2 ? Extent{s.faceSide.value.mm(), body.max.z - s.backSide.value.mm()}
                        : Extent{s.faceEdge.value.mm(), body.max.y - s.backEdge.value.mm()};
        return std::any_of(part_.cuts.begin(), part_.cuts.end(), [&](const ResolvedCut& cut) {
            const bool runsOut = joint_.end == End::Start ? cut.box.min.x <= slack
                                                          : cut.box.max.x >= body.max.x - slack;
            return cut.kind == CutKind::Groove && cut.face == face && runsOut &&
                   cut.box.size()[into] >= shoulder.mm() - slack &&
                   cut.box.min[across] <= tenon.min + slack &&
                   cut.box.max[across] >= tenon.max - slack;
        });
    }

    // The slotted end that straddles the middle of the other part of a bridle.
    [[nodiscard]] bool isFork() const {
        const auto sides =
            std::count_if(part_.tenons.begin(), part_.tenons.end(), [&](const TenonSolid& one) {
                return one.joint == index_;
            });
        return joint_.kind == JointKind::Bridle && sides == 2;
    }

    void addFork() {
        const Length low = joint_.tenon.shoulders.faceSide.value;
        for (const Length fence : {low, low + joint_.tenon.thickness.value}) {
            SetUp& one = add(RuleId::SetUpSaw, "cheeks of the slot");
            one.reference = Face::FaceSide;
            one.fence = fence;
            one.depth = joint_.tenon.length.value;
        }
        addStop(RuleId::SetUpParing, "waste of the slot, cut out", joint_.tenon.length.value, {});
    }

    // As the part is at its end: one that tapers has less there than its blank.
    void addRoundShoulder() {
        const double end = joint_.end == End::Start ? 0.0 : part_.shoulderLength.value.mm();
        const std::array<double, 2> half = stationAt(part_, Frame{}, end).half;
        SetUp& one =
            addStop(RuleId::SetUpSaw,
                    "shoulder of the round tenon",
                    lengthInMiddle(),
                    Length::mm(std::max(half[0], half[1])) - joint_.tenon.thickness.value / 2);
        one.reference = Face::FaceSide;
        one.isByMiddle = isSlanted(Face::FaceSide) || isSlanted(Face::FaceEdge);
    }

    void addCheeks(const TenonSide& near, const TenonSide& far, Length size, JointFeature pair) {
        const Size* gap = joint_.size(SizeName::TenonGap);
        const Length whole = joint_.has(pair) && gap != nullptr ? size * 2 + gap->value : size;
        const bool isOnSide = near.face == Face::FaceSide;
        const auto addCheek = [&](const std::string& work, Length fence, Length stands) {
            SetUp& one = add(RuleId::SetUpSaw, work);
            one.reference = near.face;
            one.fence = fence;
            one.depth = (isOnSide ? lengthAt(part_.width.value.mm() / 2, fence.mm())
                                  : lengthAt(fence.mm(), part_.thickness.value.mm() / 2)) -
                        stands;
            addLean(one);
        };
        const std::string cheek = isOnSide ? "cheek at the " : "edge cheek at the ";
        if (near.isCut() && !near.isGrooved) {
            addCheek(cheek + std::string(wordFor(near.face)), near.shoulder, near.haunch);
        }
        if (whole > size) {
            addCheek("inner cheeks", near.shoulder + size, {});
            addCheek("inner cheeks", near.shoulder + whole - size, {});
        }
        if (far.isCut() && !far.isGrooved) {
            addCheek(cheek + std::string(wordFor(far.face)), near.shoulder + whole, far.haunch);
        }
    }

    void addWaste() {
        if (joint_.has(JointFeature::Twin) || joint_.has(JointFeature::Double)) {
            addStop(RuleId::SetUpParing,
                    "waste between the tenons, cut out",
                    joint_.tenon.length.value,
                    {});
        }
    }

    // What is done to the tenon once it fits.
    void addEnd() {
        if (joint_.has(JointFeature::RoundEnds)) {
            add(RuleId::SetUpParing, "edges of the tenon, rounded to half its thickness");
        }
        if (const Size* eased = joint_.size(SizeName::EndEasing)) {
            add(RuleId::SetUpEasingPlane,
                joint_.has(JointFeature::RoundedEnd) ? "end of the tenon, rounded"
                                                     : "end of the tenon, chamfered")
                .eased = eased->value;
        }
    }

    // A tenon out of line with its part leaves the face that its cheek is gauged from, or nears it.
    void addLean(SetUp& one) const {
        constexpr double kStraight = 0.0009;  // radians: less cannot be set
        const Vec3 out = part_.frame.directionToLocal(joint_.frame.x);
        const int across = inwardOf(one.reference).axis;
        const double lean = std::atan2(out[across], std::abs(out.x));
        if (std::abs(lean) > kStraight) {
            one.lean = Angle::radians(lean);
            one.fenceAtEnd = one.fence + Length::mm(one.depth.mm() * out[across]);
        }
    }

    // From the corner that stays, down to the other side.
    void addMitre() {
        const double shoulder = joint_.end == End::Start ? 0.0 : part_.shoulderLength.value.mm();
        for (const TenonSolid& solid : part_.tenons) {
            if (solid.joint != index_ || solid.isHaunch || !joint_.has(JointFeature::Mitred)) {
                continue;
            }
            const std::optional<TenonMitre> mitre =
                mitreOf(solid, [shoulder](const Vec3& p) { return std::abs(p.x - shoulder); });
            if (mitre) {
                SetUp& one =
                    add(RuleId::SetUpSaw,
                        "mitre of the end, " + std::to_string(std::lround(mitre->angle.degrees())) +
                            "\u00b0");
                one.isMitre = true;
                one.reference = mitre->shorter;
                one.along = mitre->longer;
                one.from = Length::mm(mitre->shortest);
                one.to = Length::mm(mitre->longest);
                one.fromShoulder = true;
                return;
            }
        }
    }

    // Sides whose shoulders are as deep as one another and as far from the end are sawn with one
    // setting. A square haunch leaves no shoulder at its side.
    void addShoulders(const std::array<TenonSide, 4>& sides) {
        std::array<bool, 4> isDone{};
        for (std::size_t i = 0; i < sides.size(); ++i) {
            isDone[i] =
                !sides[i].isCut() || sides[i].isGrooved || sides[i].haunch > kLengthTolerance;
        }
        const auto isOneSetting = [&](const TenonSide& a, const TenonSide& b) {
            return nearlyEqual(a.shoulder, b.shoulder) &&
                   nearlyEqual(lengthOn(a.face), lengthOn(b.face)) &&
                   isSlanted(a.face) == isSlanted(b.face);
        };
        for (std::size_t i = 0; i < sides.size(); ++i) {
            std::vector<std::string_view> alike;
            for (std::size_t k = i; k < sides.size() && !isDone[i]; ++k) {
                if (!isDone[k] && isOneSetting(sides[k], sides[i])) {
                    alike.push_back(wordFor(sides[k].face));
                    isDone[k] = k != i;
                }
            }
            if (!alike.empty()) {
                SetUp& one = addStop(
                    RuleId::SetUpSaw, workOn(alike), lengthOn(sides[i].face), sides[i].shoulder);
                one.isByMiddle = isSlanted(sides[i].face);
            }
        }
    }

    [[nodiscard]] static std::string workOn(const std::vector<std::string_view>& faces) {
        if (faces.size() == 4) {
            return "shoulders all round, sawn";
        }
        std::string text = faces.size() == 1 ? "shoulder at the " : "shoulders at the ";
        for (std::size_t i = 0; i < faces.size(); ++i) {
            text += i == 0 ? "" : i + 1 == faces.size() ? " and " : ", ";
            text += faces[i];
        }
        return text + ", sawn";
    }

    // The end of the haunch; one that slopes is sawn from there down to the shoulder at the edge.
    void addHaunches(const std::array<TenonSide, 4>& sides) {
        for (const TenonSide& side : sides) {
            if (side.haunch <= kLengthTolerance) {
                continue;
            }
            const Length length = lengthOn(side.face);
            SetUp& one = addStop(RuleId::SetUpSaw,
                                 side.isSloping ? "slope of the haunch" : "end of the haunch",
                                 length - side.haunch,
                                 side.shoulder);
            one.runsOutAt = side.isSloping ? length : Length();
        }
    }

    const ResolvedPiece& resolved_;
    std::size_t index_;
    const ResolvedJoint& joint_;
    const ResolvedPart& part_;
    std::vector<SetUp> all_;
};

}  // namespace

std::vector<SetUp> tenonSetUpsOf(const ResolvedPiece& resolved, std::size_t joint) {
    const JointForm form = resolved.joints[joint].form();
    if (!form.hasTenon() || form.isWholeSection() ||
        resolved.joints[joint].kind == JointKind::Loose) {
        return {};
    }
    return TenonSetUps(resolved, joint).take();
}

}  // namespace shoulderline
