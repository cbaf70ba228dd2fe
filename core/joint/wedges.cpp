#include <array>

#include "core/joint/size_chain.h"
#include "core/joint/tenon_features.h"

namespace shoulderline {

namespace {

constexpr double kSawKerf = 1.5;  // millimetres that a backsaw takes; common practice

bool isWedged(const JointTask& task) {
    return task.form.has(JointFeature::WedgedOutside) || task.form.has(JointFeature::WedgedInKerfs);
}

// The mouth with its far end wider by `flare` at each end of its length.
ConvexSolid flared(const Box& mouth, double flare) {
    const std::array<Vec2, 4> corners{Vec2{mouth.min.x, mouth.min.y},
                                      Vec2{mouth.max.x, mouth.min.y - flare},
                                      Vec2{mouth.max.x, mouth.max.y + flare},
                                      Vec2{mouth.min.x, mouth.max.y}};
    return ConvexSolid::prism(corners, mouth.min.z, mouth.max.z);
}

}  // namespace

void sizeWedges(const JointTask& task,
                const SizingGuide& guide,
                const StatedSizes& stated,
                SizedJoint& joint) {
    if (!isWedged(task)) {
        return;
    }
    if (task.form.has(JointFeature::WedgedOutside) && !task.form.isThrough()) {
        joint.troubles.push_back(
            "wedges at the edges need a through tenon; in a blind one they go "
            "into kerfs");
    }
    Size flare = shareOf(joint.mortiseDepth.value, RuleId::WedgeFlare, guide);
    state(flare, stated[SizeName::WedgeFlare]);
    joint.further.push_back({SizeName::WedgeFlare, std::move(flare)});
    if (task.form.has(JointFeature::WedgedInKerfs)) {
        Size depth = shareOf(joint.tenon.length.value, RuleId::KerfDepth, guide);
        toGrid(depth, snapDown(depth.value, guide.grid), guide.grid);
        state(depth, stated[SizeName::KerfDepth]);
        joint.further.push_back({SizeName::KerfDepth, std::move(depth)});
        if (joint.tenon.width.value <= guide.rules[RuleId::KerfPlace].length() * 3) {
            joint.troubles.push_back("the tenon is too narrow for two kerfs");
        }
    }
}

void cutWedges(const JointTask& task,
               const SizedJoint& sized,
               const SizingGuide& guide,
               JointCuts& cuts) {
    if (!isWedged(task) || (task.form.has(JointFeature::WedgedOutside) && !task.form.isThrough())) {
        return;
    }
    const double flare = sized.furtherSize(SizeName::WedgeFlare).mm();
    const double depth = sized.furtherSize(SizeName::KerfDepth).mm();
    const double place = guide.rules[RuleId::KerfPlace].length().mm();
    for (std::size_t i = 0; i < cuts.tenons.size(); ++i) {
        JointSolid& mouth = cuts.mortises[i];
        if (flare > kLengthTolerance.mm()) {
            mouth.exact = flared(mouth.box, flare);
            mouth.box.min.y -= flare;
            mouth.box.max.y += flare;
        }
        const Box& tenon = cuts.tenons[i].box;
        if (depth <= kLengthTolerance.mm() || tenon.max.y - tenon.min.y <= 3 * place) {
            continue;
        }
        for (const double y : {tenon.min.y + place, tenon.max.y - place}) {
            cuts.kerfs.push_back({{{tenon.max.x - depth, y - kSawKerf / 2, tenon.min.z},
                                   {tenon.max.x, y + kSawKerf / 2, tenon.max.z}},
                                  std::nullopt,
                                  false});
        }
    }
}

void makeLoose(JointCuts& cuts) {
    for (const JointSolid& mouth : cuts.mortises) {
        JointSolid own = mouth;
        own.box.min.x = -mouth.box.max.x;
        own.box.max.x = 0;
        cuts.ownMortises.push_back(std::move(own));
    }
    cuts.loose = std::move(cuts.tenons);
    cuts.tenons.clear();
}

}  // namespace shoulderline
