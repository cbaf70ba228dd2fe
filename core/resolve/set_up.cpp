#include "core/resolve/set_up.h"

#include <algorithm>
#include <functional>
#include <set>
#include <span>

#include "core/measure/length_text.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kLeastHollowChisel = 6.0;  // mm: hollow chisels begin at 1/4 in or 6 mm

class SetUps {
  public:
    SetUps(const ResolvedPiece& resolved, std::size_t index)
        : resolved_(resolved), index_(index), joint_(resolved.joints[index]) {}

    std::vector<SetUp> take() {
        addMortises();
        addCuts(joint_.mortised);
        addTenon();
        addCuts(joint_.tenoned);
        return std::move(all_);
    }

  private:
    SetUp& add(RuleId tool, std::size_t part, std::string work) {
        SetUp one;
        one.tool = tool;
        one.part = part;
        one.work = std::move(work);
        all_.push_back(std::move(one));
        return all_.back();
    }

    // Of a cut into `face`: the reference face across it, how far the cut lies from there.
    static void setFence(SetUp& one, Face face, const Box& box, bool byMiddle) {
        const int into = inwardOf(face).axis;
        const int across = into == 2 ? 1 : 2;
        one.reference = across == 1 ? Face::FaceEdge : Face::FaceSide;
        one.fence = Length::mm(byMiddle ? box.centre()[across] : box.min[across]);
        one.depth = Length::mm(box.size()[into]);
        const int along = into == 0 ? 1 : 0;
        one.from = Length::mm(byMiddle ? box.centre()[along] : box.min[along]);
        one.to = Length::mm(byMiddle ? box.centre()[along] : box.max[along]);
    }

    // What runs across the whole part along an end of it is fenced from that end.
    static void fenceFromEnd(SetUp& one, const ResolvedCut& cut, const ResolvedPart& part) {
        const int into = inwardOf(cut.face).axis;
        if (into == 0) {
            return;
        }
        const int across = 3 - into;
        const Box body = part.bodyBox();
        const double slack = kLengthTolerance.mm();
        const bool isWhole =
            cut.box.min[across] <= slack && cut.box.max[across] >= body.max[across] - slack;
        if (!isWhole || cut.box.size().x >= cut.box.size()[across]) {
            return;
        }
        const double fromFar = body.max.x - cut.box.max.x;
        const bool isAtFar = fromFar < cut.box.min.x;
        one.reference = isAtFar ? Face::FarEnd : Face::StartEnd;
        one.fence = Length::mm(std::max(0.0, isAtFar ? fromFar : cut.box.min.x));
        one.cutter = Length::mm(cut.box.size().x);
        one.from = one.to = Length();
    }

    // What is cut into a tenon is placed from its shoulder.
    void placeFromShoulder(SetUp& one, const Box& box, std::size_t part) const {
        const double length = resolved_.parts[part].shoulderLength.value.mm();
        const double slack = kLengthTolerance.mm();
        const bool isAtFar = box.min.x >= length - slack;
        if (isAtFar || box.max.x <= slack) {
            const Length from = isAtFar ? one.from - Length::mm(length) : -one.to;
            const Length to = isAtFar ? one.to - Length::mm(length) : -one.from;
            one.from = from;
            one.to = to;
            one.fromShoulder = true;
        }
    }

    // As it opens on the face: a wedged one widens behind it.
    [[nodiscard]] static Box openBox(const MortiseSolid& mortise) {
        Box box = mortise.box;
        if (!mortise.exact) {
            return box;
        }
        const Box mouth = mouthOf(mortise);
        const int into = inwardOf(mortise.face).axis;
        for (int axis = 0; axis < 3; ++axis) {
            if (axis != into && mouth.max[axis] - mouth.min[axis] > kLengthTolerance.mm()) {
                box.min[axis] = mouth.min[axis];
                box.max[axis] = mouth.max[axis];
            }
        }
        return box;
    }

    [[nodiscard]] RuleId mortisingTool() const {
        if (joint_.has(JointFeature::RoundEnds)) {
            return RuleId::SetUpRouter;
        }
        return joint_.mortise.width.value.mm() < kLeastHollowChisel - 0.4 ? RuleId::SetUpChisel
                                                                          : RuleId::SetUpMortiser;
    }

    void addMortises() {
        if (joint_.kind == JointKind::Stub) {
            return;  // it stands in a groove that is there
        }
        for (const std::size_t part : {joint_.mortised, joint_.tenoned}) {
            for (const MortiseSolid& mortise : resolved_.parts[part].mortises) {
                if (mortise.joint != index_) {
                    continue;
                }
                const bool isRound = joint_.kind == JointKind::Round;
                const bool isOpen =
                    joint_.kind == JointKind::Bridle || joint_.kind == JointKind::Lap;
                const bool isHousing = joint_.form().isWholeSection();
                RuleId tool = mortisingTool();
                tool = isRound     ? RuleId::SetUpBit
                       : isOpen    ? RuleId::SetUpSaw
                       : isHousing ? RuleId::SetUpPlough
                                   : tool;
                SetUp& one = add(tool,
                                 part,
                                 mortise.isHaunch ? "mortise for the haunch"
                                 : isRound        ? "bored mortise"
                                 : isOpen         ? "slot"
                                 : isHousing      ? "housing"
                                                  : "mortise");
                setFence(one, mortise.face, openBox(mortise), isRound);
                one.fence =
                    one.fence - (part == joint_.mortised ? joint_.mortise.referenceIn : Length());
                one.cutter = isOpen ? Length() : joint_.mortise.width.value;
                if (joint_.mortise.below > kLengthTolerance) {
                    one.depth = joint_.mortise.depth.value;
                }
            }
        }
    }

    void addCuts(std::size_t part) {
        for (const ResolvedCut& cut : resolved_.parts[part].cuts) {
            if (cut.joint != index_) {
                continue;
            }
            const bool isBore = cut.kind == CutKind::Bore;
            const bool isEndCut = cut.face == Face::StartEnd || cut.face == Face::FarEnd;
            RuleId tool = RuleId::SetUpPlough;
            if (isBore) {
                tool = RuleId::SetUpBit;
            } else if (cut.kind == CutKind::Notch) {
                tool = isEndCut || joint_.kind == JointKind::CrossLap ? RuleId::SetUpSaw
                                                                      : RuleId::SetUpChisel;
            }
            SetUp one;
            one.tool = tool;
            one.part = part;
            one.work =
                cut.note.empty() || cut.kind == CutKind::Groove ? wordFor(cut.kind) : cut.note;
            setFence(one, cut.face, cut.box, isBore);
            placeFromShoulder(one, cut.box, part);
            const Vec3 size = cut.box.size();
            const int into = inwardOf(cut.face).axis;
            const int across = into == 2 ? 1 : 2;
            one.cutter = tool == RuleId::SetUpSaw
                             ? Length()
                             : Length::mm(isBore ? size[(into + 1) % 3] : size[across]);
            if (cut.kind == CutKind::Rabbet || cut.kind == CutKind::Groove) {
                fenceFromEnd(one, cut, resolved_.parts[part]);
            }
            if (std::find(all_.begin(), all_.end(), one) == all_.end()) {
                all_.push_back(std::move(one));
            }
        }
    }

    // Cheeks by a fence from the reference faces, shoulders by a stop from the end, pared last.
    void addTenon() {
        const JointForm form = joint_.form();
        if (!form.hasTenon() || form.isWholeSection() || joint_.kind == JointKind::Loose) {
            return;
        }
        const Tenon& tenon = joint_.tenon;
        if (joint_.kind == JointKind::Round) {
            SetUp& one = add(RuleId::SetUpSaw, joint_.tenoned, "shoulder of the round tenon");
            one.reference = Face::FaceSide;
            one.depth = tenon.shoulders.faceSide.value;
            one.to = tenon.length.value;
            return;
        }
        const Length gap = joint_.size(SizeName::TenonGap) != nullptr
                               ? joint_.size(SizeName::TenonGap)->value
                               : Length();
        const auto cheeks = [&](const char* first,
                                const char* second,
                                Face reference,
                                Length shoulder,
                                Length size,
                                Length other,
                                bool isPair) {
            const Length whole = isPair ? size * 2 + gap : size;
            if (shoulder > kLengthTolerance) {
                SetUp& one = add(RuleId::SetUpSaw, joint_.tenoned, first);
                one.reference = reference;
                one.fence = shoulder;
                one.depth = tenon.length.value;
            }
            if (other > kLengthTolerance) {
                SetUp& one = add(RuleId::SetUpSaw, joint_.tenoned, second);
                one.reference = reference;
                one.fence = shoulder + whole;
                one.depth = tenon.length.value;
            }
        };
        const Shoulders& s = tenon.shoulders;
        cheeks("cheek at the face side",
               "cheek at the back side",
               Face::FaceSide,
               s.faceSide.value,
               tenon.thickness.value,
               s.backSide.value,
               joint_.has(JointFeature::Twin));
        cheeks("cheek at the face edge",
               "cheek at the back edge",
               Face::FaceEdge,
               s.faceEdge.value,
               tenon.width.value,
               s.backEdge.value,
               joint_.has(JointFeature::Double));
        const Length deepest = std::max(s.faceSide.value, s.backSide.value);
        SetUp& saw = add(RuleId::SetUpSaw, joint_.tenoned, "shoulders, sawn");
        saw.depth = deepest;
        saw.to = tenon.length.value;
        SetUp& pare = add(RuleId::SetUpShoulderPlane, joint_.tenoned, "shoulders, pared");
        pare.depth = deepest;
        pare.to = tenon.length.value;
    }

    const ResolvedPiece& resolved_;
    std::size_t index_;
    const ResolvedJoint& joint_;
    std::vector<SetUp> all_;
};

}  // namespace

std::vector<SetUp> setUpsOf(const ResolvedPiece& resolved, std::size_t joint) {
    if (resolved.joints[joint].kind == JointKind::Rests) {
        return {};
    }
    return SetUps(resolved, joint).take();
}

namespace {

using Shown = std::function<std::string(Length)>;

// All but where along the part.
std::string settingText(const SetUp& setUp, const ResolvedPiece& resolved, const Shown& shown) {
    std::string text = setUp.work + ", " + resolved.parts[setUp.part].of + ": " +
                       resolved.rules[setUp.tool].subject;
    if (setUp.cutter > kLengthTolerance) {
        text += " " + shown(setUp.cutter);
    }
    return text + "; fence " + shown(setUp.fence) + " from the " +
           std::string(wordFor(setUp.reference)) + ", " + shown(setUp.depth) + " deep";
}

bool isShoulder(const SetUp& setUp) {
    return setUp.fence <= kLengthTolerance && setUp.from == Length() &&
           setUp.to > kLengthTolerance && setUp.cutter == Length() && !setUp.fromShoulder;
}

std::string placeText(const SetUp& setUp, const Shown& shown) {
    return nearlyEqual(setUp.from, setUp.to)
               ? shown(setUp.from)
               : "from " + shown(setUp.from) + " to " + shown(setUp.to);
}

// "at 3, 6 and 9 from the start".
std::string placesText(std::span<const SetUp> alike, const Shown& shown) {
    constexpr std::size_t kMostListed = 4;
    const SetUp& first = alike.front();
    const std::string from = first.fromShoulder ? " from the shoulder" : " from the start";
    const bool isPoint = nearlyEqual(first.from, first.to);
    const Length pitch = alike.size() > 1 ? alike[1].from - first.from : Length();
    bool isEven = true;
    for (std::size_t i = 1; i < alike.size(); ++i) {
        isEven = isEven && nearlyEqual(alike[i].from - alike[i - 1].from, pitch);
    }
    std::string text = isPoint ? ", at " : ", ";
    if (alike.size() > kMostListed && isEven) {
        return text + placeText(first, shown) + from + " and " + std::to_string(alike.size() - 1) +
               " more, " + shown(pitch) + " apart";
    }
    for (std::size_t i = 0; i < alike.size(); ++i) {
        text += i == 0 ? "" : i + 1 == alike.size() ? " and " : ", ";
        text += placeText(alike[i], shown);
    }
    return text + from;
}

std::string textOf(std::span<const SetUp> alike,
                   const ResolvedPiece& resolved,
                   const LengthStyle& style) {
    const Shown shown = [&](Length length) { return showLength(length, style); };
    const SetUp& first = alike.front();
    if (isShoulder(first)) {
        return first.work + ", " + resolved.parts[first.part].of + ": " +
               resolved.rules[first.tool].subject + "; stop " + shown(first.to) +
               " from the end, " + shown(first.depth) + " deep";
    }
    const std::string text = settingText(first, resolved, shown);
    return first.to > kLengthTolerance ? text + placesText(alike, shown) : text;
}

bool areAlike(const SetUp& a, const SetUp& b) {
    return !isShoulder(a) && a.tool == b.tool && a.part == b.part && a.work == b.work &&
           nearlyEqual(a.cutter, b.cutter) && a.reference == b.reference &&
           nearlyEqual(a.fence, b.fence) && nearlyEqual(a.depth, b.depth) &&
           a.fromShoulder == b.fromShoulder && nearlyEqual(a.to - a.from, b.to - b.from) &&
           !nearlyEqual(a.from, b.from);
}

}  // namespace

std::string setUpText(const SetUp& setUp, const ResolvedPiece& resolved, const LengthStyle& style) {
    return textOf({&setUp, 1}, resolved, style);
}

std::vector<std::string> setUpTexts(const std::vector<SetUp>& setUps,
                                    const ResolvedPiece& resolved,
                                    const LengthStyle& style) {
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < setUps.size();) {
        std::size_t end = i + 1;
        while (end < setUps.size() && areAlike(setUps[i], setUps[end])) {
            ++end;
        }
        std::vector<SetUp> alike(setUps.begin() + static_cast<std::ptrdiff_t>(i),
                                 setUps.begin() + static_cast<std::ptrdiff_t>(end));
        std::sort(alike.begin(), alike.end(), [](const SetUp& a, const SetUp& b) {
            return a.from < b.from;
        });
        texts.push_back(textOf(alike, resolved, style));
        i = end;
    }
    return texts;
}

std::vector<std::string> cautionsFor(const std::vector<SetUp>& setUps, const RuleBook& rules) {
    std::set<RuleId> tools;
    for (const SetUp& one : setUps) {
        tools.insert(one.tool);
    }
    std::vector<std::string> cautions;
    for (const RuleId tool : tools) {
        cautions.push_back(rules[tool].subject + ": " + rules[tool].sentence);
    }
    return cautions;
}

}  // namespace shoulderline
