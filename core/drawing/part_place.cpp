#include "core/drawing/part_place.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/resolve/end_words.h"
#include "core/resolve/frames.h"

namespace shoulderline {

namespace {

bool isOnlyFixed(const ResolvedJoint& joint) {
    return joint.kind == JointKind::Rests || joint.kind == JointKind::Screwed;
}

// What the part is let into at one end; none where that is nothing or several.
const ResolvedPart* mateAt(const ResolvedPiece& resolved, std::size_t part, End end) {
    const ResolvedPart* mate = nullptr;
    for (const ResolvedJoint& joint : resolved.joints) {
        const bool isAtEnd = joint.tenoned == part && joint.end == end && !isOnlyFixed(joint) &&
                             joint.kind != JointKind::CrossLap && joint.kind != JointKind::Grooved;
        if (!isAtEnd) {
            continue;
        }
        const ResolvedPart& other = resolved.parts[joint.mortised];
        if (mate != nullptr && mate->name != other.name) {
            return nullptr;
        }
        mate = &other;
    }
    return mate;
}

// Whether the part is alike from both of its ends.
bool isAlikeFromBothEnds(const ResolvedPart& part) {
    const double length = part.shoulderLength.value.mm();
    const auto turned = [length](Box box) {
        const double low = length - box.max.x;
        box.max.x = length - box.min.x;
        box.min.x = low;
        return box;
    };
    const auto areAlike = [&](const auto& solids) {
        return std::all_of(solids.begin(), solids.end(), [&](const auto& one) {
            const Box there = turned(one.box);
            return std::any_of(solids.begin(), solids.end(), [&](const auto& other) {
                const double slack = kLengthTolerance.mm();
                return other.box.holds(there, slack) && there.holds(other.box, slack);
            });
        });
    };
    const auto isEvenly = [&](const Outline& outline) {
        const std::vector<OutlineVertex>& ring = outline.vertices;
        return std::all_of(ring.begin(), ring.end(), [&](const OutlineVertex& one) {
            const Vec2 there{length - one.point.x, one.point.y};
            return std::any_of(ring.begin(), ring.end(), [&](const OutlineVertex& other) {
                return norm(other.point - there) < kLengthTolerance.mm();
            });
        });
    };
    return part.body.planes.empty() && isEvenly(part.body.face) &&
           (!part.body.edge || isEvenly(*part.body.edge)) && areAlike(part.tenons) &&
           areAlike(part.mortises) && areAlike(part.cuts);
}

// Whether the part has a face square to the axis of space.
bool hasFaceSquareTo(const ResolvedPart& part, int axis) {
    const std::array<Vec3, 3> ways{part.frame.x, part.frame.y, part.frame.z};
    return std::any_of(ways.begin(), ways.end(), [axis](const Vec3& way) {
        return std::abs(std::abs(way[axis]) - 1.0) < kSquareTolerance;
    });
}

// Whether the boxes touch on faces square to the axis.
bool touchAlong(const Box& a, const Box& b, int axis) {
    const double kNear = kLengthTolerance.mm();
    return std::abs(a.min[axis] - b.max[axis]) < kNear ||
           std::abs(a.max[axis] - b.min[axis]) < kNear;
}

// Both ends of an axis as the maker names them, low and high, and what lies beyond them.
struct SideWords {
    std::string low;
    std::string high;
};
SideWords sidesOf(int axis, const Box& box, bool isOfPair) {
    if (axis == 2) {
        return {"bottom", "top"};
    }
    if (axis == 1) {
        return {"front", "back"};
    }
    if (!isOfPair) {
        return {"left side", "right side"};
    }
    return box.centre().x > 0.0 ? SideWords{"inner side", "outer side"}
                                : SideWords{"outer side", "inner side"};
}

// "top 2 below the top of front rail": upright by the tops, as rails are marked out from there;
// else by the two sides that lie nearer one another.
std::string placeAlong(
    int axis, const Box& box, const ResolvedPart& other, bool isOfPair, const LengthStyle& style) {
    const double kSame = kLengthTolerance.mm();
    const Box on = boundsInSpace(other);
    const double low = box.min[axis] - on.min[axis];
    const double high = box.max[axis] - on.max[axis];
    if (std::abs(low) > kSame && std::abs(low + high) < kSame) {
        constexpr std::array<const char*, 3> kMidway{
            "from side to side", "from front to back", "up"};
        return std::string("midway ") + kMidway[static_cast<std::size_t>(axis)] + " on " + other.of;
    }
    const bool byHigh = axis == 2 ? std::abs(low) > kSame : std::abs(high) <= std::abs(low) + kSame;
    const double past = byHigh ? high : low;  // along the axis
    const SideWords words = sidesOf(axis, box, isOfPair);
    const std::string& side = byHigh ? words.high : words.low;
    const std::string of = " the " + side + " of " + other.of;
    if (std::abs(past) < kSame) {
        return side + " flush with" + of;
    }
    const bool isShort = byHigh == (past < 0.0);
    const char* beyond = axis == 2   ? (past < 0.0 ? " below" : " above")
                         : axis == 1 ? (past < 0.0 ? " in front of" : " behind")
                         : isShort   ? " short of"
                                     : " past";
    return side + " " + letterLength(Length::mm(std::abs(past)), style) + beyond + of;
}

}  // namespace

std::optional<std::string> endsInto(const ResolvedPiece& resolved, std::size_t index) {
    const ResolvedPart& part = resolved.parts[index];
    const ResolvedPart* start = mateAt(resolved, index, End::Start);
    const ResolvedPart* far = mateAt(resolved, index, End::Far);
    if (start == nullptr || far == nullptr || start == far) {
        return std::nullopt;
    }
    if (isAlikeFromBothEnds(part)) {
        return std::nullopt;
    }
    const bool areApart = start->of != far->of;
    const auto told = [&](const ResolvedPart& mate, End end) {
        return endWord(part, end) + " into " + (areApart ? mate.of : mate.name);
    };
    const std::string first = told(*start, End::Start);
    const std::string second = told(*far, End::Far);
    const bool startsRight = first.rfind("right", 0) == 0;
    // Semicolons, as the name of a mate may have a comma of its own.
    return startsRight ? second + "; " + first : first + "; " + second;
}

std::vector<std::string> placesOnOthers(const ResolvedPiece& resolved,
                                        std::size_t index,
                                        const LengthStyle& style) {
    const ResolvedPart& part = resolved.parts[index];
    const Box box = boundsInSpace(part);
    std::vector<const ResolvedPart*> others;
    std::array<bool, 3> isFixed{false, false, false};
    for (const ResolvedJoint& joint : resolved.joints) {
        if (joint.tenoned != index && joint.mortised != index) {
            continue;
        }
        if (joint.kind != JointKind::Rests) {
            return {};  // its mortises, or the pilot holes of its screws, are dimensioned
        }
        const ResolvedPart& other =
            resolved.parts[joint.tenoned == index ? joint.mortised : joint.tenoned];
        others.push_back(&other);
        for (int axis = 0; axis < 3; ++axis) {
            const bool touches = touchAlong(box, boundsInSpace(other), axis);
            isFixed[static_cast<std::size_t>(axis)] |= touches;
        }
    }
    std::vector<std::string> lines;
    for (const int axis : {2, 1, 0}) {
        const auto it = std::find_if(others.begin(), others.end(), [&](const ResolvedPart* other) {
            return hasFaceSquareTo(*other, axis);
        });
        const bool isTold = !isFixed[static_cast<std::size_t>(axis)] && it != others.end() &&
                            hasFaceSquareTo(part, axis);
        if (isTold) {
            lines.push_back(placeAlong(axis, box, **it, part.hand != Hand::None, style));
        }
    }
    return lines;
}

std::optional<std::string> overhangs(const Piece& piece,
                                     const ResolvedPiece& resolved,
                                     std::size_t index) {
    const ResolvedPart& part = resolved.parts[index];
    const auto* caps = std::get_if<Caps>(&piece.parts[part.stated].relation);
    const bool isOfSet = piece.parts[part.stated].spacing.has_value();
    if (caps == nullptr || isOfSet || part.hand != Hand::None || !squared(part.frame)) {
        return std::nullopt;
    }
    std::optional<Box> under;
    for (const ResolvedPart& other : resolved.parts) {
        const bool isUnder =
            std::any_of(caps->on.begin(), caps->on.end(), [&](const std::string& name) {
                return name == other.of || name == other.name;
            });
        if (isUnder && !squared(other.frame)) {
            return std::nullopt;  // its foot or its top is out further than where it is lain on
        }
        if (isUnder) {
            const Box bounds = boundsInSpace(other);
            under = under ? Box::around(*under, bounds) : bounds;
        }
    }
    if (!under) {
        return std::nullopt;
    }
    const Box own = boundsInSpace(part);
    const std::array<std::pair<Side, double>, 4> ways{{{Side::Left, under->min.x - own.min.x},
                                                       {Side::Right, own.max.x - under->max.x},
                                                       {Side::Front, under->min.y - own.min.y},
                                                       {Side::Back, own.max.y - under->max.y}}};
    std::string text;
    for (std::size_t i = 0; i < ways.size(); ++i) {
        constexpr double kSeen = 0.4;  // mm
        std::string sides;
        bool isTold = ways[i].second < kSeen;
        for (std::size_t other = 0; other < ways.size(); ++other) {
            if (std::abs(ways[other].second - ways[i].second) < kLengthTolerance.mm()) {
                isTold = isTold || other < i;
                sides += (sides.empty() ? "the " : " and the ") +
                         std::string(wordFor(ways[other].first));
            }
        }
        if (!isTold) {
            text += (text.empty() ? "stands out past them " : ", ") +
                    letterLength(Length::mm(ways[i].second), piece.style) + " at " + sides;
        }
    }
    return text.empty() ? std::nullopt : std::optional(text);
}

}  // namespace shoulderline
