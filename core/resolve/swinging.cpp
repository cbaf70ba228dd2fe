#include <algorithm>
#include <cmath>

#include "core/measure/angle_text.h"
#include "core/resolve/frames.h"
#include "core/resolve/placer.h"
#include "core/resolve/swing_angle.h"

// Assemblies that swing: where their stations bring them, and what is bored for them.
namespace shoulderline {

Frame ResolvedSwing::swungTo(const Frame& frame, Angle lean) const {
    const Angle by = Angle::radians(positions[at].lean.radians() - lean.radians());
    const Frame fromPivot{pivot * -1.0};
    return Frame::turned(pivot, by, {}, {}).compose(fromPivot.compose(frame));
}

Frame ResolvedSwing::barAt(const Frame& frame, const SwingPosition& position) const {
    Frame moved = frame;
    moved.origin.y += (position.behind - positions[at].behind).mm();
    return moved;
}

namespace {

constexpr double kMostLean = 85.0;  // degrees
constexpr double kHair = 1e-6;      // mm

Place placeOfAssembly(const Assembly& assembly) {
    return {"assembly", assembly.name, std::nullopt};
}

Face faceOn(int axis, bool isHigh) {
    constexpr std::array<std::array<Face, 2>, 3> kFaces{{{Face::StartEnd, Face::FarEnd},
                                                         {Face::FaceEdge, Face::BackEdge},
                                                         {Face::FaceSide, Face::BackSide}}};
    return kFaces[static_cast<std::size_t>(axis)][isHigh ? 1 : 0];
}

// A hole along the direction `way` of space (into the wood) through the point `at`; none where
// the part lies askew to it or the hole would leave its sides.
std::optional<ResolvedCut> bore(
    const ResolvedPart& part, Vec3 at, Vec3 way, double diameter, std::optional<double> depth) {
    const Vec3 into = part.frame.directionToLocal(way);
    const int axis = longestAxis(into);
    if (std::abs(into[axis]) < 1.0 - kSquareTolerance) {
        return std::nullopt;
    }
    const Box body = part.bodyBox();
    const Vec3 middle = part.frame.toLocal(at);
    ResolvedCut cut;
    cut.kind = CutKind::Bore;
    for (int k = 0; k < 3; ++k) {
        cut.box.min[k] = middle[k] - diameter / 2;
        cut.box.max[k] = middle[k] + diameter / 2;
        if (k != axis && (cut.box.min[k] < body.min[k] || cut.box.max[k] > body.max[k])) {
            return std::nullopt;
        }
    }
    cut.face = faceOn(axis, into[axis] < 0.0);
    cut.box.min[axis] = body.min[axis];
    cut.box.max[axis] = body.max[axis];
    const double whole = body.max[axis] - body.min[axis];
    cut.isThrough = !depth || *depth >= whole;
    if (!cut.isThrough) {
        if (into[axis] > 0.0) {
            cut.box.max[axis] = body.min[axis] + *depth;
        } else {
            cut.box.min[axis] = body.max[axis] - *depth;
        }
    }
    return cut;
}

}  // namespace

std::optional<std::size_t> Placer::statedPart(const std::string& reference) const {
    auto it = byName_.find(reference);
    if (it == byName_.end()) {
        it = byName_.find(splitReference(reference).name);
    }
    return it == byName_.end() || entries_[it->second].members.empty() ? std::nullopt
                                                                       : std::optional(it->second);
}

// "; the nearest that it reaches is a lean of 12\u00b0, the bar 2 1/2 in behind the pivot": of the
// leans at which the bar meets the back between its ends.
std::string Placer::nearestReached(const ResolvedSwing& swing, const Box& back, Angle lean) const {
    const double above = swing.above.mm();
    const double behindBack = swing.back.mm();
    // Leaning back, the bar meets the back ever further up, where its top is above the pivot: then
    // the nearest is where it meets one of the ends, or the nearest lean that there is.
    const auto isMet = [&](double radians) {
        const Angle at = Angle::radians(radians);
        const double contact = contactAt(behindAt(at, above, behindBack), above, at);
        return contact >= back.min.z - kHair && contact <= back.max.z + kHair;
    };
    const double most = Angle::degrees(kMostLean).radians();
    std::vector<double> candidates{std::clamp(lean.radians(), 0.0, most)};
    for (const double end : {back.min.z, back.max.z}) {
        const double far = std::hypot(behindBack, end);
        if (far > std::abs(above)) {
            const double behind = std::sqrt(far * far - above * above);
            if (const std::optional<Angle> there = leanAgainst(behind, above, behindBack)) {
                candidates.push_back(std::min(there->radians(), most));
            }
        }
    }
    std::optional<double> nearest;
    for (const double one : candidates) {
        if (isMet(one) &&
            (!nearest || std::abs(one - lean.radians()) < std::abs(*nearest - lean.radians()))) {
            nearest = one;
        }
    }
    if (!nearest) {
        return "; it reaches none";
    }
    // As figures that can be typed: to a tenth of a degree and a whole step, on the side that
    // works.
    const auto tidy = [](double value, double step, const auto& works) {
        for (const double to : {std::round(value / step), std::floor(value / step)}) {
            if (works(to * step)) {
                return to * step;
            }
        }
        return std::ceil(value / step) * step;
    };
    const double tenth = Angle::degrees(0.1).radians();
    const double found = tidy(*nearest, tenth, isMet);
    const double behind = tidy(behindAt(Angle::radians(*nearest), above, behindBack),
                               evaluation_.step().mm(),
                               [&](double mm) {
                                   const auto there = leanAgainst(mm, above, behindBack);
                                   return there && isMet(there->radians());
                               });
    return "; the nearest that it reaches is a lean of " + showAngle(Angle::radians(found)) +
           ", the bar " + evaluation_.shown(Length::mm(behind)) + " behind the pivot";
}

std::optional<SwingPosition> Placer::reached(const ResolvedSwing& swing,
                                             const RestStation& station,
                                             const Box& back,
                                             const Place& place) {
    const std::string name = "station '" + station.name + "': ";
    if (station.behind.empty() == station.lean.empty()) {
        evaluation_.trouble(place,
                            name +
                                "one of these is stated: how far the bar stands behind the "
                                "pivot, or the angle of the back");
        return std::nullopt;
    }
    const double above = swing.above.mm();
    const double behindBack = swing.back.mm();
    SwingPosition position{station.name, {}, {}, {}};
    if (station.behind.empty()) {
        const std::optional<Angle> lean = evaluation_.angle(station.lean, place, name + "lean");
        if (!lean) {
            return std::nullopt;
        }
        if (lean->degrees() < 0.0 || lean->degrees() > kMostLean) {
            evaluation_.trouble(place,
                                name + "a back leans from 0\u00b0 to " +
                                    showAngle(Angle::degrees(kMostLean)) + " from upright, not " +
                                    showAngle(*lean) + nearestReached(swing, back, *lean),
                                RuleId::SwingReach);
            return std::nullopt;
        }
        position.lean = *lean;
        position.behind = Length::mm(behindAt(*lean, above, behindBack));
    } else {
        const std::optional<Length> behind =
            evaluation_.length(station.behind, place, name + "behind the pivot");
        if (!behind) {
            return std::nullopt;
        }
        const std::optional<Angle> lean = leanAgainst(behind->mm(), above, behindBack);
        if (!lean) {
            evaluation_.trouble(place,
                                name + "the back cannot lean on a bar " +
                                    evaluation_.shown(*behind) + " behind the pivot" +
                                    nearestReached(swing, back, {}),
                                RuleId::SwingReach);
            return std::nullopt;
        }
        position.lean = *lean;
        position.behind = *behind;
    }
    const double contact = contactAt(position.behind.mm(), above, position.lean);
    position.contact = Length::mm(contact);
    if (contact < back.min.z || contact > back.max.z) {
        evaluation_.trouble(
            place,
            name + "the bar would meet the back " + evaluation_.shown(position.contact) +
                " from the pivot, past its end" + nearestReached(swing, back, position.lean),
            RuleId::SwingReach);
        return std::nullopt;
    }
    return position;
}

std::optional<ResolvedSwing> Placer::solveSwing(std::size_t index) {
    const Assembly& assembly = piece_.assemblies[index];
    const Swing& stated = *assembly.swing;
    const Place place = placeOfAssembly(assembly);
    const std::optional<std::size_t> leaning = statedPart(stated.leans);
    const std::optional<std::size_t> bar = statedPart(stated.rest);
    if (!leaning || !bar || piece_.parts[*leaning].assembly != assembly.name) {
        evaluation_.trouble(place,
                            "it swings until one of its own parts leans on a bar: '" +
                                stated.leans + "' and '" + stated.rest +
                                "' are not that, or could not be placed");
        return std::nullopt;
    }
    const Frame outer = assemblies_.of(assembly.parent);
    if (norm(outer.x - Vec3{1, 0, 0}) > kSquareTolerance ||
        norm(outer.y - Vec3{0, 1, 0}) > kSquareTolerance) {
        evaluation_.trouble(place, "it swings in an assembly that is itself turned");
        return std::nullopt;
    }
    ResolvedSwing swing;
    swing.assembly = index;
    swing.pivot = assemblies_.of(assembly.name).origin;
    const Box back = boundsInSpace(entries_[*leaning].members.front());
    ResolvedPart rest = entries_[*bar].members.front();
    rest.frame = assemblies_.of(piece_.parts[*bar].assembly).compose(rest.frame);
    const Box restBox = boundsInSpace(rest);
    swing.back = Length::mm(back.max.y);
    swing.above = Length::mm(restBox.max.z - swing.pivot.z);
    for (const RestStation& station : stated.stations) {
        if (std::optional<SwingPosition> position = reached(swing, station, back, place)) {
            if (station.name == stated.at) {
                swing.at = swing.positions.size();
            }
            swing.positions.push_back(std::move(*position));
        }
    }
    if (swing.positions.empty()) {
        evaluation_.trouble(place, "it has no station in reach", RuleId::SwingReach);
        return std::nullopt;
    }
    if (!stated.at.empty() && swing.positions[swing.at].name != stated.at) {
        evaluation_.trouble(place, "it has no station '" + stated.at + "' in reach");
    }
    swing.spacer = evaluation_.length(stated.spacer, place, "spacer", Length()).value_or(Length());
    const SwingPosition& now = swing.positions[swing.at];
    assemblies_.turn(assembly.name, Angle::radians(-now.lean.radians()));
    offsets_[*bar] = {0.0, swing.pivot.y + now.behind.mm() - restBox.min.y, 0.0};
    return swing;
}

// A size above zero in millimetres; none where it is not stated or cannot be worked out.
std::optional<double> Placer::statedMm(const Statement& statement,
                                       const Place& place,
                                       std::string_view what) {
    const std::optional<Length> size =
        statement.empty() ? std::optional<Length>() : evaluation_.size(statement, place, what);
    return size ? std::optional(size->mm()) : std::nullopt;
}

void Placer::boreFor(ResolvedSwing& swing, PlacedPiece& placed) {
    const Assembly& assembly = piece_.assemblies[swing.assembly];
    const Swing& stated = *assembly.swing;
    const Place place = placeOfAssembly(assembly);
    const std::optional<double> pin = statedMm(stated.pin, place, "pivot pin");
    const std::optional<double> deep = statedMm(stated.pinDepth, place, "depth for the pin");
    for (const std::string& reference : stated.pinned) {
        const std::optional<std::size_t> index = statedPart(reference);
        if (!index || pin.value_or(0.0) <= 0.0) {
            evaluation_.trouble(place, "there is no pin to bore '" + reference + "' for");
            continue;
        }
        const bool isInside = piece_.parts[*index].assembly == assembly.name;
        for (std::size_t i = 0; i < placed.parts.size(); ++i) {
            ResolvedPart& part = placed.parts[i];
            if (part.stated != *index) {
                continue;
            }
            const double side = boundsInSpace(part).centre().x - swing.pivot.x;
            const Vec3 way{side >= 0.0 ? 1.0 : -1.0, 0.0, 0.0};
            std::optional<ResolvedCut> hole = bore(part,
                                                   swing.pivot,
                                                   isInside ? way * -1.0 : way,
                                                   pin.value_or(0.0),
                                                   isInside ? std::nullopt : deep);
            if (!hole) {
                evaluation_.trouble(
                    place,
                    "its pivot pin does not pass through the wood of '" + part.name + "'",
                    RuleId::SwingReach);
                continue;
            }
            hole->note = "pivot pin";
            swing.holes.push_back({i,
                                   part.frame.outerBounds(hole->box),
                                   Length::mm(pin.value_or(0.0)),
                                   std::nullopt});
            part.cuts.push_back(std::move(*hole));
        }
    }
    borePegs(swing, placed);
}

// Behind the bar at every station, in what it lies on.
void Placer::borePegs(ResolvedSwing& swing, PlacedPiece& placed) {
    const Assembly& assembly = piece_.assemblies[swing.assembly];
    const Swing& stated = *assembly.swing;
    const Place place = placeOfAssembly(assembly);
    const Caps* caps = std::get_if<Caps>(&piece_.parts[placed.parts[swing.bar].stated].relation);
    if (stated.peg.empty() || caps == nullptr) {
        return;
    }
    const double peg = statedMm(stated.peg, place, "peg").value_or(0.0);
    const std::optional<double> deep = statedMm(stated.pegDepth, place, "depth for the pegs");
    if (peg <= 0.0) {
        return;
    }
    const Box bar = boundsInSpace(placed.parts[swing.bar]);
    for (std::size_t i = 0; i < placed.parts.size(); ++i) {
        ResolvedPart& part = placed.parts[i];
        const bool carries =
            std::any_of(caps->on.begin(), caps->on.end(), [&](const std::string& reference) {
                return reference == part.name || statedPart(reference) == part.stated;
            });
        if (!carries) {
            continue;
        }
        const Box under = boundsInSpace(part);
        const double x = (std::max(bar.min.x, under.min.x) + std::min(bar.max.x, under.max.x)) / 2;
        for (std::size_t k = 0; k < swing.positions.size(); ++k) {
            const SwingPosition& position = swing.positions[k];
            const double y =
                swing.pivot.y + position.behind.mm() + (bar.max.y - bar.min.y) + peg / 2;
            std::optional<ResolvedCut> hole =
                bore(part, {x, y, under.max.z}, {0.0, 0.0, -1.0}, peg, deep);
            if (!hole) {
                const double before = swing.pivot.y + (bar.max.y - bar.min.y) + peg / 2;
                const double low = under.min.y + peg / 2 - before;  // of the bar behind the pivot
                const double high = under.max.y - peg / 2 - before;
                const bool isPast = y - before > high;
                const double step = evaluation_.step().mm();
                const double nearest =
                    step * (isPast ? std::floor(high / step) : std::ceil(low / step));
                const bool isThere =
                    bore(part, {x, nearest + before, under.max.z}, {0.0, 0.0, -1.0}, peg, deep)
                        .has_value();
                evaluation_.trouble(
                    place,
                    "the peg of station '" + position.name + "' finds no wood in '" + part.name +
                        "'" +
                        (isThere ? "; the nearest that it does is with the bar " +
                                       evaluation_.shown(Length::mm(nearest)) + " behind the pivot"
                                 : std::string()),
                    RuleId::SwingReach);
                continue;
            }
            hole->note = "peg, " + position.name;
            swing.holes.push_back({i, part.frame.outerBounds(hole->box), Length::mm(peg), k});
            part.cuts.push_back(std::move(*hole));
        }
    }
}

void Placer::solveSwings(PlacedPiece& placed) {
    for (std::size_t i = 0; i < piece_.assemblies.size(); ++i) {
        if (piece_.assemblies[i].swing && assemblies_.has(piece_.assemblies[i].name)) {
            if (std::optional<ResolvedSwing> swing = solveSwing(i)) {
                placed.swings.push_back(std::move(*swing));
            }
        }
    }
}

// Which parts move, once their order is known.
void Placer::finishSwings(PlacedPiece& placed) {
    for (ResolvedSwing& swing : placed.swings) {
        const Assembly& assembly = piece_.assemblies[swing.assembly];
        const std::optional<std::size_t> leaning = statedPart(assembly.swing->leans);
        const std::optional<std::size_t> bar = statedPart(assembly.swing->rest);
        for (std::size_t i = 0; i < placed.parts.size(); ++i) {
            const ResolvedPart& part = placed.parts[i];
            if (bar == part.stated) {
                swing.bar = i;
            } else if (assemblies_.isWithin(part.assembly, assembly.name)) {
                swing.moving.push_back(i);
                if (leaning == part.stated) {
                    swing.leaning.push_back(i);
                }
            }
        }
        boreFor(swing, placed);
    }
}

}  // namespace shoulderline
