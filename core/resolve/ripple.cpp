#include "core/resolve/ripple.h"

#include <algorithm>
#include <array>
#include <set>
#include <unordered_map>

namespace shoulderline {

namespace {

struct NamedLength {
    std::string_view name;
    Length value;
};

std::vector<NamedLength> sizesOf(const ResolvedPart& part) {
    std::vector<NamedLength> sizes{{"shoulder to shoulder", part.shoulderLength.value},
                                   {"length over tenons", part.length()},
                                   {"width", part.width.value},
                                   {"thickness", part.thickness.value}};
    if (part.startTenon.mm() == 0 && part.farTenon.mm() == 0) {
        sizes.erase(sizes.begin());
        sizes.front().name = "length";
    }
    if (part.number > 0) {
        sizes.push_back({"gap", part.gap});
    }
    return sizes;
}

std::vector<NamedLength> sizesOf(const ResolvedJoint& joint) {
    if (joint.kind == JointKind::Rests) {
        return {};
    }
    const Tenon& tenon = joint.tenon;
    const Mortise& mortise = joint.mortise;
    std::vector<NamedLength> sizes;
    if (joint.hasTenon()) {
        sizes = {{"tenon thickness", tenon.thickness.value},
                 {"tenon width", tenon.width.value},
                 {"tenon length", tenon.length.value},
                 {"projection", tenon.projection.value},
                 {"shoulder at face side", tenon.shoulders.faceSide.value},
                 {"shoulder at back side", tenon.shoulders.backSide.value},
                 {"shoulder at face edge", tenon.shoulders.faceEdge.value},
                 {"shoulder at back edge", tenon.shoulders.backEdge.value},
                 {"mortise width", mortise.width.value},
                 {"mortise length", mortise.length.value},
                 {"mortise depth", mortise.depth.value},
                 {"mortise from face", mortise.fromFace.value},
                 {"mortise from end", mortise.fromStart.value}};
    }
    for (const FurtherSize& further : joint.further) {
        sizes.push_back({wordFor(further.name).data(), further.size.value});
    }
    return sizes;
}

std::string subjectOf(const ResolvedPiece& piece, const ResolvedJoint& joint) {
    return piece.parts[joint.tenoned].of + (joint.kind == JointKind::Rests ? " on " : " into ") +
           piece.parts[joint.mortised].of;
}

std::string subjectOf(const ResolvedPiece&, const ResolvedPart& part) {
    return part.of;
}

void pointAt(const ResolvedPart&, std::size_t index, Moved& moved) {
    moved.part = index;
}

void pointAt(const ResolvedJoint& joint, std::size_t index, Moved& moved) {
    moved.joint = index;
    moved.part = joint.tenoned;
}

// Adds to a list, once for all members that moved alike.
class Collector {
  public:
    void add(Moved moved) {
        const auto key = std::tuple{moved.subject,
                                    moved.size,
                                    moved.before ? moved.before->mm() : -1e9,
                                    moved.after ? moved.after->mm() : -1e9};
        if (seen_.insert(key).second) {
            list.push_back(std::move(moved));
        }
    }
    std::vector<Moved> list;

  private:
    std::set<std::tuple<std::string, std::string, double, double>> seen_;
};

template <class Item>
void compare(const ResolvedPiece& before,
             const std::vector<Item>& old,
             const ResolvedPiece& after,
             const std::vector<Item>& now,
             Collector& collector) {
    std::unordered_map<std::string_view, const Item*> byName;
    for (const Item& item : old) {
        byName.emplace(item.name, &item);
    }
    for (std::size_t i = 0; i < now.size(); ++i) {
        const std::vector<NamedLength> sizes = sizesOf(now[i]);
        Moved moved;
        moved.subject = subjectOf(after, now[i]);
        pointAt(now[i], i, moved);
        const auto it = byName.find(now[i].name);
        if (it == byName.end()) {
            if (!sizes.empty()) {
                moved.size = sizes.front().name;
                moved.after = sizes.front().value;
                collector.add(std::move(moved));
            }
            continue;
        }
        const std::vector<NamedLength> was = sizesOf(*it->second);
        byName.erase(it);
        for (const NamedLength& size : sizes) {
            const auto same = std::find_if(was.begin(), was.end(), [&](const NamedLength& other) {
                return other.name == size.name;
            });
            if (same != was.end() && !nearlyEqual(same->value, size.value)) {
                Moved one = moved;
                one.size = size.name;
                one.before = same->value;
                one.after = size.value;
                collector.add(std::move(one));
            }
        }
    }
    for (const Item& item : old) {
        const std::vector<NamedLength> sizes = sizesOf(item);
        if (byName.contains(item.name) && !sizes.empty()) {
            collector.add({subjectOf(before, item),
                           std::string(sizes.front().name),
                           sizes.front().value,
                           std::nullopt,
                           std::nullopt,
                           std::nullopt});
        }
    }
}

}  // namespace

std::vector<Moved> ripple(const ResolvedPiece& before, const ResolvedPiece& after) {
    Collector collector;
    compare(before, before.joints, after, after.joints, collector);
    compare(before, before.parts, after, after.parts, collector);
    return std::move(collector.list);
}

}  // namespace shoulderline
