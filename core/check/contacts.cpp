#include "core/check/contacts.h"

#include <algorithm>
#include <tuple>

#include "core/geometry/box_solids.h"
#include "core/geometry/convex_solid.h"
#include "core/geometry/spatial_index.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kTouching = 0.01;  // millimetres

// How box `a` in frame `fa` stands to box `b` in `fb`; depth below zero where they are apart.
Contact contactOf(const Box& a, const Frame& fa, const Box& b, const Frame& fb) {
    Contact contact;
    contact.depth = -1.0;
    if (const std::optional<Frame> square = squared(relativeFrame(fa, fb))) {
        const Box other = square->outerBounds(b);
        Vec3 shared;
        for (int i = 0; i < 3; ++i) {
            shared[i] = std::min(a.max[i], other.max[i]) - std::max(a.min[i], other.min[i]);
        }
        // They touch where they meet in a face: apart or overlapping by a hair on one axis, and
        // well on the others.
        const double least = std::min({shared.x, shared.y, shared.z});
        const double most = std::max({shared.x, shared.y, shared.z});
        const double middle = shared.x + shared.y + shared.z - least - most;
        if (least > kTouching) {
            contact.depth = least;
            contact.volume = shared.x * shared.y * shared.z;
        } else if (least > -kTouching && middle > kTouching) {
            contact.depth = 0.0;
        }
        return contact;
    }
    const ConvexSolid first = ConvexSolid::box(a, fa);
    const ConvexSolid second = ConvexSolid::box(b, fb);
    if (const std::optional<ConvexSolid> shared = intersection(first, second)) {
        double least = 1e9;
        for (const Frame* frame : {&fa, &fb}) {
            for (int i = 0; i < 3; ++i) {
                const Extent extent = shared->extentAlong(frame->axis(i));
                least = std::min(least, extent.max - extent.min);
            }
        }
        contact.depth = least > kTouching ? least : 0.0;
        contact.volume = least > kTouching ? shared->volume() : 0.0;
    } else if (distance(first, second).distance < kTouching) {
        contact.depth = 0.0;
    }
    return contact;
}

}  // namespace

std::vector<Contact> contactsOf(const ResolvedPiece& resolved) {
    const std::vector<ResolvedPart>& parts = resolved.parts;
    std::vector<Box> boxes;
    boxes.reserve(parts.size());
    for (const ResolvedPart& part : parts) {
        boxes.push_back(part.frame.outerBounds(part.bodyBox()));
    }
    const SpatialIndex index{std::span<const Box>(boxes)};
    std::vector<Contact> contacts;
    const auto grown = [](Box box) {
        box.min = box.min - Vec3{kTouching, kTouching, kTouching};
        box.max = box.max + Vec3{kTouching, kTouching, kTouching};
        return box;
    };
    for (std::size_t i = 0; i < parts.size(); ++i) {
        index.query(grown(boxes[i]), [&](std::size_t j) {
            if (j > i) {
                Contact contact = contactOf(
                    parts[i].bodyBox(), parts[i].frame, parts[j].bodyBox(), parts[j].frame);
                if (contact.depth >= 0) {
                    contact.first = i;
                    contact.second = j;
                    contacts.push_back(contact);
                }
            }
        });
        for (const TenonSolid& tenon : parts[i].tenons) {
            const std::size_t into = resolved.joints[tenon.joint].mortised;
            index.query(parts[i].frame.outerBounds(tenon.box), [&](std::size_t j) {
                if (j == i || j == into) {
                    return;
                }
                Contact contact =
                    contactOf(tenon.box, parts[i].frame, parts[j].bodyBox(), parts[j].frame);
                if (contact.depth > 0) {
                    contact.first = std::min(i, j);
                    contact.second = std::max(i, j);
                    contacts.push_back(contact);
                }
            });
        }
    }
    std::sort(contacts.begin(), contacts.end(), [](const Contact& a, const Contact& b) {
        return std::tuple(a.first, a.second, -a.depth) < std::tuple(b.first, b.second, -b.depth);
    });
    return contacts;
}

}  // namespace shoulderline
