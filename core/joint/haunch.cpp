#include <array>

#include "core/joint/size_chain.h"
#include "core/joint/tenon_features.h"

namespace shoulderline {

namespace {

bool isHaunched(const JointTask& task) {
    return task.form.has(JointFeature::Haunch) || task.form.has(JointFeature::SlopingHaunch);
}

// A haunch between two places across the width; sloping, it runs out at `high` or at `low`.
JointSolid haunchIn(const Box& box, bool isSloping, bool runsOutLow) {
    JointSolid solid{box, std::nullopt, true};
    if (isSloping) {
        // In x and y, at the thickness of the tenon: full at the tenon, nothing at the edge.
        const double full = runsOutLow ? box.max.y : box.min.y;
        const std::array<Vec2, 3> corners{
            Vec2{0, box.min.y}, Vec2{box.max.x, full}, Vec2{0, box.max.y}};
        solid.exact = ConvexSolid::prism(corners, box.min.z, box.max.z);
    }
    return solid;
}

}  // namespace

void sizeHaunch(const JointTask& task,
                const SizingGuide& guide,
                const StatedSizes& stated,
                SizedJoint& joint) {
    if (!isHaunched(task)) {
        return;
    }
    Size length;
    if (task.groove) {
        link(length, RuleId::HaunchFillsGroove, {}, {}, task.groove->depth);
    } else {
        length = fixedSize(RuleId::HaunchLength, guide);
    }
    state(length, stated[SizeName::HaunchLength]);
    joint.further.push_back({SizeName::HaunchLength, length});
}

void cutHaunch(const JointTask& task, const SizedJoint& sized, JointCuts& cuts) {
    if (!isHaunched(task)) {
        return;
    }
    const double length = sized.furtherSize(SizeName::HaunchLength).mm();
    const double width = task.section.width.mm();
    const bool low = task.endsAtFaceEdge();
    const bool isSloping = task.form.has(JointFeature::SlopingHaunch);
    const std::vector<JointSolid> tenons = cuts.tenons;
    const std::vector<JointSolid> mortises = cuts.mortises;
    const auto add = [&](double from, double to, const Box& tenon, const Box& mouth, bool slopes) {
        if (to - from <= kLengthTolerance.mm() || length <= kLengthTolerance.mm()) {
            return;
        }
        const Box wood{{0, from, tenon.min.z}, {length, to, tenon.max.z}};
        const Box room{{0, from, mouth.min.z}, {length, to, mouth.max.z}};
        cuts.tenons.push_back(haunchIn(wood, slopes, low));
        cuts.mortises.push_back(haunchIn(room, slopes, low));
    };
    for (std::size_t i = 0; i < tenons.size(); ++i) {
        const Box& tenon = tenons[i].box;
        const Box& mouth = mortises[i].box;
        const bool isOuter =
            low ? tenon.min.y <= tenons.front().box.min.y : tenon.max.y >= tenons.back().box.max.y;
        if (isOuter) {
            add(low ? 0 : tenon.max.y, low ? tenon.min.y : width, tenon, mouth, isSloping);
        }
        // Between double tenons a square one, so that the rail cannot cup.
        if (i > 0 && tenon.min.z == tenons[i - 1].box.min.z) {
            add(tenons[i - 1].box.max.y, tenon.min.y, tenon, mouth, false);
        }
    }
}

}  // namespace shoulderline
