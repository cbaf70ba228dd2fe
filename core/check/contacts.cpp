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

// How solid `a` stands to `b`, both in one space, the axes of their parts as given; depth below
// zero where they are apart.
Contact contactOf(const ConvexSolid& a, const Frame& fa, const ConvexSolid& b, const Frame& fb) {
    Contact contact;
    contact.depth = -1.0;
    if (const std::optional<ConvexSolid> shared = intersection(a, b)) {
        double least = 1e9;
        for (const Frame* frame : {&fa, &fb}) {
            for (int i = 0; i < 3; ++i) {
                const Extent extent = shared->extentAlong(frame->axis(i));
                least = std::min(least, extent.max - extent.min);
            }
        }
        contact.depth = least > kTouching ? least : 0.0;
        contact.volume = least > kTouching ? shared->volume() : 0.0;
    } else if (distance(a, b).distance < kTouching) {
        contact.depth = 0.0;
    }
    return contact;
}

// The same for boxes in frames that may lie square to one another.
Contact contactOf(const Box& a, const Frame& fa, const Box& b, const Frame& fb) {
    const std::optional<Frame> square = squared(relativeFrame(fa, fb));
    if (!square) {
        return contactOf(ConvexSolid::box(a, fa), fa, ConvexSolid::box(b, fb), fb);
    }
    Contact contact;
    contact.depth = -1.0;
    const Box other = square->outerBounds(b);
    Vec3 shared;
    for (int i = 0; i < 3; ++i) {
        shared[i] = std::min(a.max[i], other.max[i]) - std::max(a.min[i], other.min[i]);
    }
    // They touch where they meet in a face: apart or overlapping by a hair on one axis, and well
    // on the others.
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

// A convex piece of wood, and the box around it.
struct Wood {
    ConvexSolid solid;
    Box around;
};

Wood woodOf(ConvexSolid solid) {
    const Box around = solid.bounds();
    return {std::move(solid), around};
}

bool areNear(const Box& a, const Box& b) {
    for (int i = 0; i < 3; ++i) {
        if (a.min[i] > b.max[i] + kTouching || b.min[i] > a.max[i] + kTouching) {
            return false;
        }
    }
    return true;
}

// The bodies of the parts in convex pieces in the piece's space, made when they are asked for.
class Bodies {
  public:
    explicit Bodies(const std::vector<ResolvedPart>& parts) : parts_(parts), made_(parts.size()) {}

    [[nodiscard]] bool isBox(std::size_t i) const { return parts_[i].body.isBox(); }
    const std::vector<Wood>& of(std::size_t i) {
        std::vector<Wood>& made = made_[i];
        if (made.empty()) {
            for (const ConvexSolid& piece : parts_[i].body.pieces()) {
                made.push_back(woodOf(piece.transformed(parts_[i].frame)));
            }
        }
        return made;
    }
    Contact contact(std::size_t i, std::size_t j) {
        const ResolvedPart& one = parts_[i];
        const ResolvedPart& other = parts_[j];
        const Contact blanks = contactOf(one.bodyBox(), one.frame, other.bodyBox(), other.frame);
        if (blanks.depth < 0 || (isBox(i) && isBox(j))) {
            return blanks;
        }
        return contact(of(i), i, j);
    }
    // Of a solid that belongs to part `i` with the body of `j`.
    Contact contact(const std::vector<Wood>& solids, std::size_t i, std::size_t j) {
        Contact most;
        most.depth = -1.0;
        double volume = 0.0;
        for (const Wood& solid : solids) {
            for (const Wood& wood : of(j)) {
                if (!areNear(solid.around, wood.around)) {
                    continue;  // a curved part has many pieces
                }
                const Contact here =
                    contactOf(solid.solid, parts_[i].frame, wood.solid, parts_[j].frame);
                volume += here.volume;
                most = here.depth > most.depth ? here : most;
            }
        }
        most.volume = volume;
        return most;
    }

  private:
    const std::vector<ResolvedPart>& parts_;
    std::vector<std::vector<Wood>> made_;
};

}  // namespace

std::vector<Contact> contactsOf(const ResolvedPiece& resolved) {
    const std::vector<ResolvedPart>& parts = resolved.parts;
    std::vector<Box> boxes;
    boxes.reserve(parts.size());
    for (const ResolvedPart& part : parts) {
        boxes.push_back(boundsInSpace(part));
    }
    Bodies bodies(parts);
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
                Contact contact = bodies.contact(i, j);
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
                    tenon.exact || !bodies.isBox(j)
                        ? bodies.contact({woodOf(tenon.solid().transformed(parts[i].frame))}, i, j)
                        : contactOf(tenon.box, parts[i].frame, parts[j].bodyBox(), parts[j].frame);
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
