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

    [[nodiscard]] bool isCut() const { return shoulder > kLengthTolerance; }
};

class TenonSetUps {
  public:
    TenonSetUps(const ResolvedPiece& resolved, std::size_t index)
        : resolved_(resolved),
          index_(index),
          joint_(resolved.joints[index]),
          part_(resolved.parts[joint_.tenoned]),
          isOutOfSquare_(!endAnglesOf(part_, joint_.end).isSquare) {}

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
        addStop(RuleId::SetUpShoulderPlane, "shoulders, pared", joint_.tenon.length.value, {});
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
        const bool isShoulder = nearlyEqual(from, joint_.tenon.length.value);
        one.to = isShoulder ? from + shoulderBack(part_.thickness.value.mm() / 2) : from;
        one.depth = depth;
        one.isByMiddle = isOutOfSquare_ && isShoulder;
        return one;
    }

    // How far a shoulder square to a curve lies back from the face that the part meets, `z` off the
    // face side. One that leans with its neighbour lies on that face.
    [[nodiscard]] Length shoulderBack(double z) const {
        if (!part_.bend || part_.bend->shoulders == BendShoulders::Chord ||
            !squared(relativeFrame(part_.frame, joint_.frame))) {
            return {};
        }
        const double at = endAt(part_, joint_.end, part_.width.value.mm() / 2, z);
        return Length::mm(joint_.end == End::Start ? at : part_.shoulderLength.value.mm() - at);
    }

    [[nodiscard]] TenonSide side(Face face, const Size& shoulder) const {
        TenonSide one{face, shoulder.value, Length(), joint_.has(JointFeature::SlopingHaunch)};
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
                    joint_.tenon.length.value,
                    Length::mm(std::max(half[0], half[1])) - joint_.tenon.thickness.value / 2);
        one.reference = Face::FaceSide;
    }

    void addCheeks(const TenonSide& near, const TenonSide& far, Length size, JointFeature pair) {
        const Size* gap = joint_.size(SizeName::TenonGap);
        const Length whole = joint_.has(pair) && gap != nullptr ? size * 2 + gap->value : size;
        const auto addCheek = [&](const std::string& work, Length fence, Length depth) {
            SetUp& one = add(RuleId::SetUpSaw, work);
            one.reference = near.face;
            one.fence = fence;
            one.depth =
                depth + shoulderBack(near.face == Face::FaceSide ? fence.mm()
                                                                 : part_.thickness.value.mm() / 2);
            addLean(one);
        };
        const Length length = joint_.tenon.length.value;
        if (near.isCut()) {
            addCheek("cheek at the " + std::string(wordFor(near.face)),
                     near.shoulder,
                     length - near.haunch);
        }
        if (whole > size) {
            addCheek("inner cheeks", near.shoulder + size, length);
            addCheek("inner cheeks", near.shoulder + whole - size, length);
        }
        if (far.isCut()) {
            addCheek("cheek at the " + std::string(wordFor(far.face)),
                     near.shoulder + whole,
                     length - far.haunch);
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
                addStop(RuleId::SetUpSaw,
                        "mitre of the end, " + std::to_string(std::lround(mitre->angle.degrees())) +
                            "\u00b0, shorter at the " + std::string(wordFor(mitre->shorter)),
                        Length::mm(mitre->longest - mitre->shortest),
                        {});
                return;
            }
        }
    }

    // Sides whose shoulders are as deep as one another are sawn with one setting. A square haunch
    // leaves no shoulder at its side.
    void addShoulders(const std::array<TenonSide, 4>& sides) {
        std::array<bool, 4> isDone{};
        for (std::size_t i = 0; i < sides.size(); ++i) {
            isDone[i] = !sides[i].isCut() || sides[i].haunch > kLengthTolerance;
        }
        for (std::size_t i = 0; i < sides.size(); ++i) {
            std::vector<std::string_view> alike;
            for (std::size_t k = i; k < sides.size() && !isDone[i]; ++k) {
                if (!isDone[k] && nearlyEqual(sides[k].shoulder, sides[i].shoulder)) {
                    alike.push_back(wordFor(sides[k].face));
                    isDone[k] = k != i;
                }
            }
            if (!alike.empty()) {
                addStop(
                    RuleId::SetUpSaw, workOn(alike), joint_.tenon.length.value, sides[i].shoulder);
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
            const Length length = joint_.tenon.length.value;
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
    bool isOutOfSquare_;
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
