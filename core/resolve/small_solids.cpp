#include "core/resolve/small_solids.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

#include "core/geometry/box_solids.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

// A prism of a polygon in x and y of the joint's frame, between two values of z. `high` tells
// whether its corners were named as for the high side of the tenon or turned over to the low one.
ConvexSolid wedgeOf(std::vector<Vec2> corners, bool high, double z0, double z1) {
    if (!high) {
        std::reverse(corners.begin(), corners.end());
    }
    return ConvexSolid::prism(corners, z0, z1);
}

class SmallSolids {
  public:
    SmallSolids(const ResolvedPiece& resolved, std::size_t index)
        : resolved_(resolved), index_(index), joint_(resolved.joints[index]) {}

    std::vector<SmallSolid> take() {
        if (const std::optional<ConvexSolid> tusk = tuskWedge(resolved_, index_)) {
            all_.push_back({SmallPartKind::TuskWedge, *tusk, {0, 0, -1}, true});
        }
        const Size* flare = joint_.size(SizeName::WedgeFlare);
        flare_ = flare != nullptr ? flare->value.mm() : 0.0;
        addBores();
        addKerfWedges();
        if (joint_.has(JointFeature::WedgedOutside) && joint_.isThrough() &&
            flare_ > kLengthTolerance.mm()) {
            addOutsideWedges();
        }
        return std::move(all_);
    }

  private:
    [[nodiscard]] Frame inJoint(std::size_t part) const {
        return relativeFrame(joint_.frame, resolved_.parts[part].frame);
    }

    [[nodiscard]] bool isPlug(const ResolvedCut& cut) const {
        const Size* plug = joint_.size(SizeName::PlugDiameter);
        const Vec3 size = cut.box.size();
        const int into = inwardOf(cut.face).axis;
        return plug != nullptr &&
               nearlyEqual(Length::mm(size[(into + 1) % 3]), plug->value);  // the widest
    }

    void addBores() {
        const bool isPinned =
            joint_.has(JointFeature::Pinned) || joint_.has(JointFeature::Drawbored);
        const std::size_t part =
            joint_.kind == JointKind::Screwed ? joint_.tenoned : joint_.mortised;
        for (const ResolvedCut& cut : resolved_.parts[part].cuts) {
            if (cut.joint != index_ || cut.kind != CutKind::Bore) {
                continue;
            }
            const bool isPluggedOne = joint_.kind == JointKind::Screwed && isPlug(cut);
            if (!isPluggedOne && !(isPinned && part == joint_.mortised)) {
                continue;
            }
            const auto [axis, way] = inwardOf(cut.face);
            Vec3 outward;
            outward[axis] = -way;
            const Frame frame = inJoint(part);
            all_.push_back({isPluggedOne ? SmallPartKind::Plug : SmallPartKind::Pin,
                            cut.solid().transformed(frame),
                            frame.directionToOuter(outward),
                            true});
        }
    }

    // The middle, along its width, of the tenon in which a kerf lies.
    [[nodiscard]] double middleOfTenon(const Box& kerf) const {
        const Frame frame = inJoint(joint_.tenoned);
        for (const TenonSolid& tenon : resolved_.parts[joint_.tenoned].tenons) {
            const Box box = tenon.solid().transformed(frame).bounds();
            const Vec3 at = kerf.centre();
            if (tenon.joint == index_ && box.min.y < at.y && at.y < box.max.y && box.min.z < at.z &&
                at.z < box.max.z) {
                return box.centre().y;
            }
        }
        return 0.0;
    }

    void addKerfWedges() {
        const Frame frame = inJoint(joint_.tenoned);
        for (const ResolvedCut& cut : resolved_.parts[joint_.tenoned].cuts) {
            if (!isWedgedKerf(resolved_, index_, cut)) {
                continue;
            }
            const Box kerf = cut.solid().transformed(frame).bounds();
            const bool isHigh = kerf.centre().y > middleOfTenon(kerf);
            const double inner = isHigh ? kerf.min.y : kerf.max.y;
            const double outer = isHigh ? kerf.max.y : kerf.min.y;
            const double wide = outer + (isHigh ? flare_ : -flare_);
            // At its thin end a wedge is as thick as the saw left room for.
            all_.push_back({SmallPartKind::Wedge,
                            wedgeOf({{kerf.min.x, inner},
                                     {kerf.max.x, inner},
                                     {kerf.max.x, wide},
                                     {kerf.min.x, outer}},
                                    isHigh,
                                    kerf.min.z,
                                    kerf.max.z),
                            {1, 0, 0},
                            joint_.isThrough()});
        }
    }

    void addOutsideWedges() {
        const Frame frame = inJoint(joint_.mortised);
        for (const MortiseSolid& mortise : resolved_.parts[joint_.mortised].mortises) {
            if (mortise.joint != index_ || mortise.isHaunch) {
                continue;
            }
            const Box tenon = frame.outerBounds(mortise.tenon);
            const double end = mortise.solid().transformed(frame).bounds().max.x;
            for (const bool isHigh : {false, true}) {
                const double edge = isHigh ? tenon.max.y : tenon.min.y;
                const double wide = edge + (isHigh ? flare_ : -flare_);
                all_.push_back(
                    {SmallPartKind::Wedge,
                     wedgeOf(
                         {{0.0, edge}, {end, edge}, {end, wide}}, isHigh, tenon.min.z, tenon.max.z),
                     {1, 0, 0},
                     true});
            }
        }
    }

    const ResolvedPiece& resolved_;
    std::size_t index_;
    const ResolvedJoint& joint_;
    double flare_ = 0.0;
    std::vector<SmallSolid> all_;
};

}  // namespace

std::vector<SmallSolid> smallSolidsOf(const ResolvedPiece& resolved, std::size_t joint) {
    return SmallSolids(resolved, joint).take();
}

bool isWedgedKerf(const ResolvedPiece& resolved, std::size_t joint, const ResolvedCut& cut) {
    return cut.joint == joint && cut.kind == CutKind::Notch &&
           (cut.face == Face::StartEnd || cut.face == Face::FarEnd) &&
           resolved.joints[joint].has(JointFeature::WedgedInKerfs);
}

namespace {

// What is left of a tenon beside its two kerfs, the outer strips bent out by `flare` at their ends.
void addSpread(const Box& tenon,
               const Box& low,
               const Box& high,
               double flare,
               std::vector<ConvexSolid>& pieces) {
    const double root = std::max(low.min.x, high.min.x);
    const double end = tenon.max.x;
    const auto add = [&](std::initializer_list<Vec2> corners) {
        const std::vector<Vec2> ring(corners);
        pieces.push_back(ConvexSolid::prism(ring, tenon.min.z, tenon.max.z));
    };
    add({{tenon.min.x, tenon.min.y},
         {root, tenon.min.y},
         {root, tenon.max.y},
         {tenon.min.x, tenon.max.y}});
    add({{root, low.max.y}, {end, low.max.y}, {end, high.min.y}, {root, high.min.y}});
    add({{root, tenon.min.y},
         {end, tenon.min.y - flare},
         {end, low.min.y - flare},
         {root, low.min.y}});
    add({{root, high.max.y},
         {end, high.max.y + flare},
         {end, tenon.max.y + flare},
         {root, tenon.max.y}});
}

}  // namespace

std::vector<ConvexSolid> spreadTenonsOf(const ResolvedPiece& resolved, std::size_t joint) {
    constexpr double kBox = 1e-6;  // of the volume
    const ResolvedJoint& one = resolved.joints[joint];
    const ResolvedPart& part = resolved.parts[one.tenoned];
    const Frame frame = relativeFrame(one.frame, part.frame);
    const Size* flare = one.size(SizeName::WedgeFlare);
    std::vector<ConvexSolid> pieces;
    for (const TenonSolid& tenon : part.tenons) {
        if (tenon.joint != joint) {
            continue;
        }
        const ConvexSolid solid = tenon.solid().transformed(frame);
        const Box box = solid.bounds();
        std::vector<Box> kerfs;
        for (const ResolvedCut& cut : part.cuts) {
            const Box kerf = cut.solid().transformed(frame).bounds();
            if (isWedgedKerf(resolved, joint, cut) && overlap(kerf, box)) {
                kerfs.push_back(kerf);
            }
        }
        std::sort(kerfs.begin(), kerfs.end(), [](const Box& a, const Box& b) {
            return a.min.y < b.min.y;
        });
        const bool isBox = std::abs(solid.volume() - box.volume()) < kBox * box.volume();
        if (flare == nullptr || kerfs.size() != 2 || !isBox) {
            return {};
        }
        addSpread(box, kerfs.front(), kerfs.back(), flare->value.mm(), pieces);
    }
    return pieces;
}

}  // namespace shoulderline
