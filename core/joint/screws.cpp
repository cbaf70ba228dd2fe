#include "core/joint/screws.h"

#include <algorithm>
#include <cmath>

#include "core/joint/size_chain.h"

namespace shoulderline {

namespace {

constexpr double kTouching = 0.01;   // millimetres
constexpr double kForTwo = 60.0;     // mm that two screws need between them; common practice
constexpr double kPitch = 150.0;     // mm from screw to screw; common practice
constexpr double kPilotShare = 0.7;  // of the screw's diameter; common practice
constexpr double kFinest = 0.5;      // mm: screws are sold by steps of this or finer

// The axis along which the two touch, the second on the high side (+1) or the low one; 0 where they
// do not lie flat on one another.
struct Touch {
    int axis = 0;
    double way = 0.0;
};

Touch touchOf(const ScrewTask& task) {
    for (int axis = 0; axis < 3; ++axis) {
        const int u = (axis + 1) % 3;
        const int v = (axis + 2) % 3;
        const auto shares = [&](int i) {
            return std::min(task.through.max[i], task.into.max[i]) -
                       std::max(task.through.min[i], task.into.min[i]) >
                   kTouching;
        };
        if (!shares(u) || !shares(v)) {
            continue;
        }
        if (std::abs(task.into.min[axis] - task.through.max[axis]) < kTouching) {
            return {axis, 1.0};
        }
        if (std::abs(task.through.min[axis] - task.into.max[axis]) < kTouching) {
            return {axis, -1.0};
        }
    }
    return {};
}

// How far the wood lies in from the box at each hole's mouth, where the hole is `diameter` wide;
// empty where one has none behind it.
std::vector<double> woodInAt(const ScrewTask& task,
                             const std::vector<JointBore>& holes,
                             double diameter) {
    std::vector<double> in;
    for (const JointBore& hole : holes) {
        if (!task.woodIn) {
            in.push_back(0.0);
            continue;
        }
        const Box mouth = JointBore{hole.mouth, hole.axis, hole.way, diameter, 0.0}.box();
        const std::optional<double> here = task.woodIn(mouth, hole.axis, hole.way);
        if (!here) {
            return {};
        }
        in.push_back(*here);
    }
    return in;
}

// Sinks the heads: a wider hole at the mouth of each clearance hole.
void addPlugs(const ScrewTask& task,
              Length screw,
              Length blank,
              const SizingGuide& guide,
              const StatedSizes& stated,
              ScrewedButt& butt) {
    Size diameter;
    link(diameter,
         RuleId::PlugDiameter,
         screw,
         {},
         nearestOn(guide.bits, screw * guide.rules[RuleId::PlugDiameter].value));
    state(diameter, stated[SizeName::PlugDiameter]);
    const std::vector<double> in = woodInAt(task, butt.clearance, diameter.value.mm());
    if (in.empty()) {
        butt.trouble = "there is no wood under the head of a screw";
        return;
    }
    const Length held = blank - Length::mm(*std::max_element(in.begin(), in.end()));
    Size depth = shareOf(diameter.value, RuleId::PlugDepth, guide);
    toGrid(depth, std::min(snapUp(depth.value, guide.grid), held / 2), guide.grid);
    state(depth, stated[SizeName::PlugDepth]);
    if (depth.value > held - kLengthTolerance) {
        butt.trouble = "the plugs go through the part and leave nothing under the heads";
    }
    const Length underHead = held - depth.value;
    for (const JointBore& hole : butt.clearance) {
        butt.plugs.push_back(
            {hole.mouth, hole.axis, hole.way, diameter.value.mm(), (blank - underHead).mm(), true});
    }
    butt.further.push_back({SizeName::PlugDiameter, std::move(diameter)});
    butt.further.push_back({SizeName::PlugDepth, std::move(depth)});
}

}  // namespace

ScrewedButt screwButt(const ScrewTask& task, const SizingGuide& guide, const StatedSizes& stated) {
    ScrewedButt butt;
    const Touch touch = touchOf(task);
    if (touch.way == 0.0) {
        butt.trouble = "the two do not lie flat on one another, so no screw goes through";
        return butt;
    }
    const Length blank = Length::mm(task.through.size()[touch.axis]);
    const Length there = Length::mm(task.into.size()[touch.axis]);
    Box shared;
    for (int i = 0; i < 3; ++i) {
        shared.min[i] = std::max(task.through.min[i], task.into.min[i]);
        shared.max[i] = std::min(task.through.max[i], task.into.max[i]);
    }
    const int u = (touch.axis + 1) % 3;
    const int v = (touch.axis + 2) % 3;
    const int along = shared.size()[u] >= shared.size()[v] ? u : v;
    const double run = shared.size()[along];
    const int count = run < kForTwo ? 1 : std::max(2, static_cast<int>(std::lround(run / kPitch)));
    for (int i = 0; i < count; ++i) {
        Vec3 mouth = shared.centre();
        mouth[along] = shared.min[along] + run * (i + 0.5) / count;
        mouth[touch.axis] =
            touch.way > 0 ? task.through.min[touch.axis] : task.through.max[touch.axis];
        butt.clearance.push_back({mouth, touch.axis, touch.way, 0.0, blank.mm()});
    }
    const std::vector<double> in = woodInAt(task, butt.clearance, kFinest);
    if (in.empty()) {
        butt = {};
        butt.trouble = "a screw would go where the part is cut away";
        return butt;
    }
    const Length held = blank - Length::mm(*std::max_element(in.begin(), in.end()));
    Size diameter = shareOf(held, RuleId::ScrewDiameter, guide);
    const Length step = std::max(guide.grid / 2, Length::mm(kFinest));
    toGrid(diameter, snapNearest(diameter.value, step), step);
    state(diameter, stated[SizeName::Diameter]);
    Size depth;
    link(depth,
         RuleId::ScrewDepth,
         diameter.value,
         {},
         diameter.value * guide.rules[RuleId::ScrewDepth].value);
    const Length most = there - guide.rules[RuleId::MortiseFloorLeast].length();
    if (most < depth.value) {
        link(depth, RuleId::MortiseFloorLeast, there, {}, std::max(most, there / 2));
    }
    state(depth, stated[SizeName::BoreDepth]);
    for (JointBore& hole : butt.clearance) {
        hole.diameter = diameter.value.mm();
        Vec3 mouth = hole.mouth;
        mouth[touch.axis] += touch.way * blank.mm();
        butt.pilot.push_back(
            {mouth, touch.axis, touch.way, diameter.value.mm() * kPilotShare, depth.value.mm()});
    }
    if (task.isPlugged) {
        addPlugs(task, diameter.value, blank, guide, stated, butt);
    }
    butt.further.insert(
        butt.further.begin(),
        {{SizeName::Diameter, std::move(diameter)}, {SizeName::BoreDepth, std::move(depth)}});
    return butt;
}

SoldScrew soldScrew(Length diameter, Length reach, bool inInches) {
    constexpr double kSnug = 0.003;  // in
    constexpr int kFirst = 4;
    constexpr int kLast = 14;
    const auto shankOf = [](int gauge) { return 0.060 + 0.013 * gauge; };
    const double hole = diameter.mm() / Length::kMmPerInch;
    SoldScrew screw;
    for (int gauge = kFirst; gauge <= kLast; gauge += 2) {
        if (shankOf(gauge) <= hole + kSnug) {
            screw.gauge = gauge;
        }
    }
    if (hole > shankOf(kLast + 2)) {
        screw.gauge = 0;
    }
    const Length step = inInches ? Length::mm(Length::kMmPerInch / 4.0) : Length::mm(5.0);
    screw.length = snapDown(reach, step);
    return screw;
}

}  // namespace shoulderline
