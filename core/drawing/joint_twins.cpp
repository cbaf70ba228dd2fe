#include "core/drawing/joint_twins.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

#include "core/drawing/joint_drawing.h"

namespace shoulderline {

namespace {

// What a drawing shows, as text: its lines to a hundredth of a millimetre and its words, whatever
// they are drawn of.
class Trace {
  public:
    explicit Trace(const Sheet& sheet) {
        for (const Op& op : sheet.ops) {
            add(op);
        }
        std::sort(lines_.begin(), lines_.end());
    }
    friend bool operator==(const Trace&, const Trace&) = default;

  private:
    static std::string shown(Vec2 p) {
        return ' ' + std::to_string(std::lround(p.x * 100.0)) + ' ' +
               std::to_string(std::lround(p.y * 100.0));
    }
    // A line is the same drawn from either end.
    static std::string shown(const Stroke& stroke) {
        std::string there;
        std::string back;
        for (std::size_t i = 0; i < stroke.points.size(); ++i) {
            there += shown(stroke.points[i]);
            back += shown(stroke.points[stroke.points.size() - 1 - i]);
        }
        return std::to_string(static_cast<int>(stroke.role)) + std::min(there, back);
    }
    void add(const Op& op) {
        if (const auto* stroke = std::get_if<Stroke>(&op)) {
            lines_.push_back(shown(*stroke));
        } else if (const auto* text = std::get_if<TextOp>(&op)) {
            lines_.push_back(text->text + shown(text->at));
        } else if (const auto* size = std::get_if<DimensionOp>(&op)) {
            lines_.push_back(size->text + size->of + shown(size->from) + shown(size->to));
        }
    }
    std::vector<std::string> lines_;
};

// What joints that are drawn alike have in common at least; cheap to tell.
std::vector<long> roughly(const ResolvedPiece& resolved, const JointGroup& group) {
    const ResolvedJoint& joint = resolved.joints[group.joints.front()];
    std::vector<long> key{static_cast<long>(joint.kind),
                          std::lround(joint.tenon.length.value.mm() * 100.0),
                          std::lround(joint.tenon.width.value.mm() * 100.0),
                          std::lround(joint.tenon.thickness.value.mm() * 100.0),
                          std::lround(joint.mortise.depth.value.mm() * 100.0)};
    for (const JointFeature feature : joint.features) {
        key.push_back(static_cast<long>(feature));
    }
    for (const FurtherSize& further : joint.further) {
        key.push_back(static_cast<long>(further.name));
        key.push_back(std::lround(further.size.value.mm() * 100.0));
    }
    return key;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    for (std::size_t at = text.find(from); at != std::string::npos && from != to;
         at = text.find(from, at + to.size())) {
        text.replace(at, from.size(), to);
    }
    return text;
}

}  // namespace

std::vector<JointGroup> drawnOnce(const Piece& piece,
                                  const ResolvedPiece& resolved,
                                  std::vector<JointGroup> groups,
                                  const TextMetrics& metrics) {
    std::map<std::size_t, Trace> traces;  // by the place in `kept`
    std::map<std::vector<long>, std::vector<std::size_t>> rough;
    std::vector<JointGroup> kept;
    const auto traceOf = [&](const JointGroup& group, bool withMarks = false) {
        const JointStyle style{0.5, {2.5, 7.0, 6.5}, false, withMarks};
        return Trace(drawJoint(piece, resolved, group.joints.front(), style, metrics));
    };
    for (JointGroup& group : groups) {
        std::vector<std::size_t>& like = rough[roughly(resolved, group)];
        JointGroup* twin = nullptr;
        if (!like.empty()) {
            const Trace own = traceOf(group);
            for (const std::size_t one : like) {
                const auto known = traces.try_emplace(one, traceOf(kept[one])).first;
                twin = twin == nullptr && known->second == own ? &kept[one] : twin;
            }
        }
        if (twin != nullptr) {
            twin->areMarksAlike =
                twin->areMarksAlike && traceOf(*twin, true) == traceOf(group, true);
            twin->alike.push_back(std::move(group.joints));
        } else {
            like.push_back(kept.size());
            kept.push_back(std::move(group));
        }
    }
    return kept;
}

std::vector<std::string> linesWithTwins(const Piece& piece,
                                        const ResolvedPiece& resolved,
                                        const JointGroup& group) {
    std::vector<std::string> lines = setUpLines(piece, resolved, group);
    const std::vector<std::string> first = setUpLines(piece, resolved, group, true);
    const ResolvedJoint& model = resolved.joints[group.joints.front()];
    const auto nameOf = [&](std::size_t part) { return resolved.parts[part].of; };
    for (const std::vector<std::size_t>& joints : group.alike) {
        const ResolvedJoint& joint = resolved.joints[joints.front()];
        std::vector<std::string> differing;
        for (const std::string& line : setUpLines(piece, resolved, {joints, {}}, true)) {
            // As it would be of the first.
            const std::string told =
                replaced(replaced(line, nameOf(joint.mortised), nameOf(model.mortised)),
                         nameOf(joint.tenoned),
                         nameOf(model.tenoned));
            if (std::find(first.begin(), first.end(), told) == first.end()) {
                differing.push_back("- " + line);
            }
        }
        lines.push_back(nameOfJoint(resolved, joints.front()) +
                        (differing.empty() ? ": the same" : ": the same, but"));
        lines.insert(lines.end(), differing.begin(), differing.end());
    }
    return lines;
}

std::vector<SetUp> setUpsWithTwins(const ResolvedPiece& resolved, const JointGroup& group) {
    std::vector<SetUp> all = setUpsOf(resolved, group);
    for (const std::vector<std::size_t>& joints : group.alike) {
        const std::vector<SetUp> more = setUpsOf(resolved, JointGroup{joints, {}});
        all.insert(all.end(), more.begin(), more.end());
    }
    return all;
}

std::string nameOfJoint(const ResolvedPiece& resolved, std::size_t joint) {
    const ResolvedPart& tenoned = resolved.parts[resolved.joints[joint].tenoned];
    const ResolvedPart& mortised = resolved.parts[resolved.joints[joint].mortised];
    const bool isOn = resolved.joints[joint].kind == JointKind::Screwed;  // nothing is let in
    return tenoned.of + (isOn ? " on " : " into ") +
           (tenoned.stated == mortised.stated ? "the next " : "") + mortised.of;
}

}  // namespace shoulderline
