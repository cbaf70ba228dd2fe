#include "core/check/contacts.h"

#include <algorithm>
#include <iterator>
#include <tuple>

#include "core/geometry/box_solids.h"
#include "core/geometry/convex_solid.h"
#include "core/geometry/spatial_index.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

constexpr double kTouching = 0.01;  // millimetres

// The widest gap that a face of `a` leaves to all of `b`; below zero where each face has some of
// `b` behind it.
double gapBeyondFaces(const ConvexSolid& a, const ConvexSolid& b) {
    double widest = -1e9;
    for (const ConvexSolid::Face& face : a.faces()) {
        double nearest = 1e9;
        for (const Vec3& corner : b.vertices()) {
            nearest = std::min(nearest, face.plane.height(corner));
        }
        widest = std::max(widest, nearest);
    }
    return widest;
}

// How solid `a` stands to `b`, both in one space, the axes of their parts as given; depth below
// zero where they are apart.
Contact contactOf(const ConvexSolid& a, const Frame& fa, const ConvexSolid& b, const Frame& fb) {
    Contact contact;
    contact.depth = -1.0;
    const double gap = std::max(gapBeyondFaces(a, b), gapBeyondFaces(b, a));
    if (gap > kTouching) {
        return contact;
    }
    // Of the smaller most faces of the other cut nothing.
    const bool isFirstSmaller = norm(a.bounds().size()) < norm(b.bounds().size());
    const ConvexSolid& small = isFirstSmaller ? a : b;
    const ConvexSolid& large = isFirstSmaller ? b : a;
    // Where a face keeps them apart but for a hair, nothing is shared that is worth the name.
    const std::optional<ConvexSolid> shared =
        gap > -kTouching ? std::nullopt : within(small, large, 0.0);
    if (!shared && !within(small, large, kTouching)) {
        return contact;
    }
    contact.depth = 0.0;
    if (shared) {
        double least = 1e9;
        for (const Frame* frame : {&fa, &fb}) {
            for (int i = 0; i < 3; ++i) {
                const Extent extent = shared->extentAlong(frame->axis(i));
                least = std::min(least, extent.max - extent.min);
            }
        }
        if (least > kTouching) {
            contact.depth = least;
            contact.volume = shared->volume();
        }
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

bool areNear(const Box& a, const Box& b) {
    for (int i = 0; i < 3; ++i) {
        if (a.min[i] > b.max[i] + kTouching || b.min[i] > a.max[i] + kTouching) {
            return false;
        }
    }
    return true;
}

// One convex piece of a part's body in the piece's space, with the box around it. A curved part has
// many pieces of which a neighbour is near to one or two, so they are moved when they are looked
// at.
class Pieces {
  public:
    explicit Pieces(const ResolvedPart& part) : frame_(part.frame), solids_(part.wood()) {
        for (const Box& box : solids_.boundsOfPieces()) {
            bounds_.push_back(frame_.outerBounds(box));
        }
        moved_.resize(bounds_.size());
    }

    [[nodiscard]] std::vector<std::size_t> nearTo(const Box& box) const {
        std::vector<std::size_t> near;
        for (std::size_t k = 0; k < bounds_.size(); ++k) {
            if (areNear(bounds_[k], box)) {
                near.push_back(k);
            }
        }
        return near;
    }
    [[nodiscard]] const Box& bounds(std::size_t k) const { return bounds_[k]; }
    const ConvexSolid& operator[](std::size_t k) {
        if (!moved_[k]) {
            moved_[k] = solids_.pieces()[k].transformed(frame_);
        }
        return *moved_[k];
    }

  private:
    Frame frame_;
    BodySolids solids_;
    std::vector<Box> bounds_;
    std::vector<std::optional<ConvexSolid>> moved_;
};

// Of the contacts of two parts' pieces, the deepest with the volume of all.
class Deepest {
  public:
    Deepest() { most_.depth = -1.0; }
    void add(const Contact& here) {
        volume_ += here.volume;
        most_ = here.depth > most_.depth ? here : most_;
    }
    [[nodiscard]] Contact contact() const {
        Contact all = most_;
        all.volume = volume_;
        return all;
    }

  private:
    Contact most_;
    double volume_ = 0.0;
};

// The bodies of the parts, in pieces made when they are asked for.
class Bodies {
  public:
    Bodies(const std::vector<ResolvedPart>& parts,
           const std::vector<Box>& bounds,
           const std::function<bool(std::size_t, std::size_t)>& mayTouch)
        : parts_(parts), bounds_(bounds), mayTouch_(mayTouch), pieces_(parts.size()) {}

    [[nodiscard]] bool isBox(std::size_t i) const { return parts_[i].body.isBox(); }
    // Less what is cut out of either: a board notched around a post.
    Contact contact(std::size_t i, std::size_t j) {
        const Contact uncut = ofBodies(i, j);
        if (uncut.depth <= 0 || (!isCut(parts_[i]) && !isCut(parts_[j]))) {
            return uncut;
        }
        const std::vector<ConvexSolid> others = left(j, bounds_[i]);
        Deepest deepest;
        for (const ConvexSolid& piece : left(i, bounds_[j])) {
            for (const ConvexSolid& other : others) {
                deepest.add(contactOf(piece, parts_[i].frame, other, parts_[j].frame));
            }
        }
        return deepest.contact();
    }
    // Of a solid that belongs to part `i` with the body of `j`.
    Contact contact(const ConvexSolid& solid, std::size_t i, std::size_t j) {
        Deepest deepest;
        for (const std::size_t l : of(j).nearTo(solid.bounds())) {
            deepest.add(contactOf(solid, parts_[i].frame, of(j)[l], parts_[j].frame));
        }
        return deepest.contact();
    }

  private:
    [[nodiscard]] static bool isCut(const ResolvedPart& part) {
        return std::any_of(part.cuts.begin(), part.cuts.end(), [](const ResolvedCut& cut) {
            return !cut.joint && !cut.hole;
        });
    }
    // What is left of a part's body near a place, in the piece's space.
    std::vector<ConvexSolid> left(std::size_t i, const Box& near) {
        std::vector<ConvexSolid> wood;
        for (const std::size_t k : of(i).nearTo(near)) {
            wood.push_back(of(i)[k]);
        }
        for (const ResolvedCut& cut : parts_[i].cuts) {
            if (cut.joint || cut.hole) {
                continue;
            }
            const ConvexSolid gone = cut.solid().transformed(parts_[i].frame);
            std::vector<ConvexSolid> kept;
            for (const ConvexSolid& piece : wood) {
                std::vector<ConvexSolid> some = difference(piece, gone);
                kept.insert(kept.end(),
                            std::make_move_iterator(some.begin()),
                            std::make_move_iterator(some.end()));
            }
            wood = std::move(kept);
        }
        return wood;
    }
    Contact ofBodies(std::size_t i, std::size_t j) {
        const ResolvedPart& one = parts_[i];
        const ResolvedPart& other = parts_[j];
        const Contact blanks = contactOf(one.bodyBox(), one.frame, other.bodyBox(), other.frame);
        const bool areBlanks = !one.bend && !other.bend;  // a bend goes beyond its blank
        if ((areBlanks && blanks.depth < 0) || (isBox(i) && isBox(j))) {
            return blanks;
        }
        const bool onlyTouch = areBlanks && blanks.depth <= 0;
        if (onlyTouch && mayTouch_ && mayTouch_(std::min(i, j), std::max(i, j))) {
            return blanks;
        }
        Deepest deepest;
        for (const std::size_t k : of(i).nearTo(bounds_[j])) {
            for (const std::size_t l : of(j).nearTo(of(i).bounds(k))) {
                deepest.add(contactOf(of(i)[k], one.frame, of(j)[l], other.frame));
            }
        }
        return deepest.contact();
    }
    Pieces& of(std::size_t i) {
        if (!pieces_[i]) {
            pieces_[i].emplace(parts_[i]);
        }
        return *pieces_[i];
    }

    const std::vector<ResolvedPart>& parts_;
    const std::vector<Box>& bounds_;
    const std::function<bool(std::size_t, std::size_t)>& mayTouch_;
    std::vector<std::optional<Pieces>> pieces_;
};

}  // namespace

std::vector<Contact> contactsOf(
    const ResolvedPiece& resolved,
    const std::function<bool(std::size_t first, std::size_t second)>& mayTouch) {
    const std::vector<ResolvedPart>& parts = resolved.parts;
    std::vector<Box> boxes;
    boxes.reserve(parts.size());
    for (const ResolvedPart& part : parts) {
        boxes.push_back(boundsInSpace(part));
    }
    Bodies bodies(parts, boxes, mayTouch);
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
                const bool isPassedOver = contact.depth <= 0 && mayTouch && mayTouch(i, j);
                if (contact.depth >= 0 && !isPassedOver) {
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
                        ? bodies.contact(tenon.solid().transformed(parts[i].frame), i, j)
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
