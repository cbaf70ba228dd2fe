#include <algorithm>
#include <cmath>

#include "core/resolve/box_placing.h"
#include "core/resolve/relations.h"

namespace shoulderline {

namespace {

// Half of what a leaning post takes up along x and y where a level plane cuts it.
std::array<double, 2> halfAtLevel(const Frame& frame, const Section& section, SectionForm form) {
    const double width = section.width.value.mm() / 2;
    const double thickness = section.thickness.value.mm() / 2;
    // Slid along the post into the level plane.
    const Vec3 y = (frame.y - frame.x * (frame.y.z / frame.x.z)) * width;
    const Vec3 z = (frame.z - frame.x * (frame.z.z / frame.x.z)) * thickness;
    std::array<double, 2> half{};
    for (int axis = 0; axis < 2; ++axis) {
        half[static_cast<std::size_t>(axis)] = form == SectionForm::Round
                                                   ? std::hypot(y[axis], z[axis])
                                                   : std::abs(y[axis]) + std::abs(z[axis]);
    }
    return half;
}

}  // namespace

std::optional<PlacedMember> placeLeaning(const Part& part,
                                         const Stands& stands,
                                         const PlacedMember& upright,
                                         const Section& section,
                                         const Place& place,
                                         Evaluation& evaluation) {
    constexpr double kMostLean = 60.0;  // degrees; beyond it, no post
    const std::optional<Angle> rake = evaluation.angle(stands.rake, place, "rake");
    const std::optional<Angle> splay = evaluation.angle(stands.splay, place, "splay");
    const double foot = upright.box.min.z;
    const double top = upright.box.max.z;
    const std::optional<Length> level =
        evaluation.length(stands.atLevel, place, "level of x and y", Length::mm(foot));
    if (!rake || !splay || !level) {
        return std::nullopt;
    }
    if (std::abs(rake->degrees()) > kMostLean || std::abs(splay->degrees()) > kMostLean) {
        evaluation.trouble(place, "its rake and its splay are no more than 60 degrees");
        return std::nullopt;
    }
    PlacedMember member = upright;
    const double toMiddle = upright.box.centre().x >= 0 ? -1.0 : 1.0;
    Frame frame;
    frame.x = normalised({toMiddle * std::tan(splay->radians()), std::tan(rake->radians()), 1.0});
    const Vec3 edge = -directionOf(upright.faceEdge);
    frame.y = normalised(edge - frame.x * dot(edge, frame.x));
    frame.z = cross(frame.x, frame.y);

    Box at = upright.box;
    const std::array<double, 2> half = halfAtLevel(frame, section, part.section);
    if (!putAtPosition(at, 0, stands.x, 2 * half[0], "x", place, evaluation) ||
        !putAtPosition(at, 1, stands.y, 2 * half[1], "y", place, evaluation)) {
        return std::nullopt;
    }
    Vec3 middle = at.centre();
    middle.z = level->mm();
    // The blank reaches to the furthest places of its level ends.
    const Vec3 y = frame.y * (section.width.value.mm() / 2);
    const Vec3 z = frame.z * (section.thickness.value.mm() / 2);
    const double rise = reachOf(part.section, y.z, z.z);
    const double start = (foot - middle.z - rise) / frame.x.z;
    const double far = (top - middle.z + rise) / frame.x.z;
    frame.origin = middle + frame.x * start - y - z;
    member.length = sizeFrom(RuleId::PartPlaced, Length::mm(far - start));
    member.turned = frame;
    member.box = {{}, {far - start, section.width.value.mm(), section.thickness.value.mm()}};
    const Vec3 up = frame.directionToLocal({0, 0, 1});
    const auto endAt = [&](double height, Vec3 outward) {
        const Vec3 on = middle + frame.x * ((height - middle.z) / frame.x.z);
        member.ends.push_back({{outward, dot(outward, frame.toLocal(on))}});
    };
    endAt(foot, -up);
    endAt(top, up);
    return member;
}

}  // namespace shoulderline
