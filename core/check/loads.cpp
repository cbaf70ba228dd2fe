#include "core/check/loads.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <unordered_map>

#include "core/check/racking.h"
#include "core/check/stated_numbers.h"
#include "core/check/sway_frame.h"
#include "core/measure/length.h"

namespace shoulderline {

namespace {

constexpr double kBelowTopOfBack = 100.0;  // ISO 7173:1989, 7.6
constexpr double kLeastBack = 200.0;       // a back rises at least so far over the seat
constexpr double kRailBelowSeat = 60.0;    // a rail whose top is this near the seat carries it
constexpr double kRailOverSeat = 15.0;
constexpr double kMostNewtons = 1e6;

class Carrier {
  public:
    Carrier(const Piece& piece,
            const ResolvedPiece& resolved,
            const SpeciesTable& species,
            const StrengthBook& book)
        : piece_(piece),
          resolved_(resolved),
          book_(book),
          frames_(rackingFrames(piece, resolved, species)) {
        carried_.demands.resize(resolved.joints.size());
        findBodies();
        findSeat();
    }

    CarriedLoads carry() {
        for (const PublishedLoad& published : book_.loads()) {
            carryPublished(published);
        }
        for (const StatedLoad& stated : piece_.use.loads) {
            carryStated(stated);
        }
        return std::move(carried_);
    }

  private:
    // Frames of each body and way, so that each gets its share.
    void findBodies() {
        for (std::size_t i = 0; i < frames_.frames.size(); ++i) {
            const RackingFrame& frame = frames_.frames[i];
            byBody_[keyOf(frame.body, frame.way)].push_back(i);
        }
        for (const ResolvedPart& part : resolved_.parts) {
            const Box bounds = boundsOverTenons(part);
            top_ = std::max(top_, bounds.max.z - frames_.floor);
        }
    }

    static std::size_t keyOf(std::size_t body, RackingWay way) {
        return 2 * body + (way == RackingWay::InDepth ? 1 : 0);
    }

    // The seat's level: of the measure named so, or of the top of the part that is the seat.
    void findSeat() {
        for (const ResolvedMeasure& measure : resolved_.measures) {
            if (measure.name == "seat height" && measure.value) {
                if (const Result<Length> length = measure.value->asLength()) {
                    seat_ = length->mm() - frames_.floor;
                }
            }
        }
        for (const ResolvedPart& part : resolved_.parts) {
            if (part.role == Role::Seat && !seat_) {
                seat_ = boundsInSpace(part).max.z - frames_.floor;
            }
        }
    }

    void add(std::size_t joint, Demand demand) {
        isReached_ = true;
        std::vector<Demand>& demands = carried_.demands[joint];
        for (Demand& one : demands) {
            if (one.load == demand.load) {
                one.newtonMetres = std::max(one.newtonMetres, demand.newtonMetres);
                one.shearNewtons = std::max(one.shearNewtons, demand.shearNewtons);
                return;
            }
        }
        demands.push_back(demand);
    }

    void addMoments(const RackingFrame& frame, const SwayFrame& sway) {
        const std::vector<EndMoments> moments = solveSway(sway);
        for (std::size_t i = 0; i < moments.size(); ++i) {
            const std::size_t load = carried_.loads.size();
            add(frame.members[i].fromJoint, {load, std::abs(moments[i].from), 0.0});
            add(frame.members[i].toJoint, {load, std::abs(moments[i].to), 0.0});
        }
    }

    // A level force on every body, shared by its frames that way.
    void sway(RackingWay way, double newtons, double level, bool frontRolls) {
        for (const RackingFrame& frame : frames_.frames) {
            if (frame.way == way) {
                swayOne(frame, newtons, level, frontRolls);
            }
        }
    }

    void swayOne(const RackingFrame& frame, double newtons, double level, bool frontRolls) {
        const auto share =
            newtons / static_cast<double>(byBody_[keyOf(frame.body, frame.way)].size());
        SwayFrame pushed = frame.sway;
        if (frontRolls) {
            for (std::size_t i = 0; i + 1 < pushed.posts.size(); ++i) {
                pushed.posts[i].footRolls = true;
            }
        }
        pushed.forces = {{pushed.posts.size() - 1, level, share}};
        addMoments(frame, pushed);
    }

    // Each end leg of each frame pushed at its foot, the others held.
    void pushLegs(RackingWay way, double newtons) {
        for (const RackingFrame& frame : frames_.frames) {
            if (frame.way != way) {
                continue;
            }
            for (const std::size_t leg : {std::size_t{0}, frame.sway.posts.size() - 1}) {
                SwayFrame pushed = frame.sway;
                pushed.posts[leg].footRolls = true;
                pushed.forces = {{leg, 0.0, newtons}};
                addMoments(frame, pushed);
            }
        }
    }

    void addBeam(const RackingMember& member, double newtons) {
        const double length = resolved_.parts[member.part].shoulderLength.value.mm();
        const std::size_t load = carried_.loads.size();
        const double moment = newtons * length / 8.0 / Length::kMmPerMetre;
        add(member.fromJoint, {load, moment, newtons / 2.0});
        add(member.toJoint, {load, moment, newtons / 2.0});
    }

    [[nodiscard]] bool carriesSeat(const RackingMember& member) const {
        const ResolvedPart& part = resolved_.parts[member.part];
        const double over = boundsInSpace(part).max.z - frames_.floor - *seat_;
        return over > -kRailBelowSeat && over < kRailOverSeat;
    }

    void pressSeat(double newtons) {
        for (const auto& [key, frames] : byBody_) {
            std::vector<const RackingMember*> rails;
            for (const std::size_t index : frames) {
                for (const RackingMember& member : frames_.frames[index].members) {
                    if (carriesSeat(member)) {
                        rails.push_back(&member);
                    }
                }
            }
            for (const RackingMember* rail : rails) {
                addBeam(*rail, newtons / static_cast<double>(rails.size()));
            }
        }
    }

    // Down on a part with a tenon at each end.
    void press(std::size_t part, double newtons) {
        std::optional<std::size_t> first;
        for (std::size_t i = 0; i < resolved_.joints.size(); ++i) {
            const ResolvedJoint& joint = resolved_.joints[i];
            if (joint.tenoned != part || !joint.hasTenon()) {
                continue;
            }
            if (first) {
                addBeam({part, *first, i}, newtons);
            }
            first = i;
        }
    }

    // The greatest back force that does not tip a body, whose seat load lies in the middle between
    // its feet; no limit where there is no frame.
    [[nodiscard]] double tipping(double seatNewtons, double level) const {
        double least = std::numeric_limits<double>::infinity();
        for (const RackingFrame& frame : frames_.frames) {
            if (frame.way == RackingWay::InDepth) {
                const double spacing = frame.places.back() - frame.places.front();
                least =
                    std::min(least, tippingForce({seatNewtons, 0, level, 0, spacing, spacing / 2}));
            }
        }
        return least;
    }

    void carryBack(Load& load) {
        if (!seat_ || top_ < *seat_ + kLeastBack) {
            return;
        }
        load.level = top_ - kBelowTopOfBack;
        if (load.seatNewtons > 0.0) {
            const double limit = tipping(load.seatNewtons, load.level);
            load.isTipping = limit < load.newtons;
            load.newtons = std::min(load.newtons, limit);
        }
        sway(RackingWay::InDepth, load.newtons, load.level, true);
    }

    void carryArms(Load& load) {
        for (std::size_t i = 0; i < resolved_.parts.size(); ++i) {
            const ResolvedPart& part = resolved_.parts[i];
            if (part.role != Role::Arm) {
                continue;
            }
            if (load.kind == LoadKind::ArmDown) {
                press(i, load.newtons);
            } else {
                load.level = boundsInSpace(part).max.z - frames_.floor;
                swayBodyOf(i, RackingWay::Across, load.newtons, load.level);
            }
        }
    }

    void swayBodyOf(std::size_t part, RackingWay way, double newtons, double level) {
        const auto it = byBody_.find(keyOf(frames_.bodyOf[part], way));
        if (it != byBody_.end()) {
            for (const std::size_t index : it->second) {
                swayOne(frames_.frames[index], newtons, level, false);
            }
        }
    }

    void carryPublished(const PublishedLoad& published) {
        Load load;
        load.name = published.name;
        load.kind = published.kind;
        load.newtons = published.newtons;
        load.seatNewtons = published.seatNewtons;
        load.isRepeated = published.isRepeated;
        load.source = published.source;
        isReached_ = false;
        switch (published.kind) {
            case LoadKind::Seat:
                if (seat_) {
                    pressSeat(load.seatNewtons);
                }
                break;
            case LoadKind::Back:
            case LoadKind::BackPush:
                carryBack(load);
                break;
            case LoadKind::ArmOut:
            case LoadKind::ArmDown:
                carryArms(load);
                break;
            case LoadKind::LegFront:
            case LoadKind::LegSide:
                if (seat_) {
                    pushLegs(published.kind == LoadKind::LegFront ? RackingWay::InDepth
                                                                  : RackingWay::Across,
                             load.newtons);
                }
                break;
            case LoadKind::Stated:
                break;
        }
        if (isReached_) {
            carried_.loads.push_back(std::move(load));
        }
    }

    [[nodiscard]] std::optional<std::size_t> partFor(const std::string& reference) const {
        if (const auto exact = resolved_.findPart(reference)) {
            return exact;
        }
        for (std::size_t i = 0; i < resolved_.parts.size(); ++i) {
            if (resolved_.parts[i].of == reference) {
                return i;
            }
        }
        return std::nullopt;
    }

    void trouble(const StatedLoad& stated, const std::string& what) {
        carried_.troubles.push_back("load '" + stated.name + "': " + what);
    }

    void carryStated(const StatedLoad& stated) {
        const Result<double> newtons = numbers_.number(stated.newtons, 0.0, kMostNewtons);
        const std::optional<std::size_t> part = partFor(stated.on);
        if (!newtons || !part) {
            trouble(stated,
                    newtons ? "there is no part '" + stated.on + "'"
                            : "force: " + newtons.error().message);
            return;
        }
        const ResolvedPart& on = resolved_.parts[*part];
        const Box bounds = boundsInSpace(on);
        Load load;
        load.name = stated.name;
        load.towards = stated.towards;
        load.newtons = *newtons;
        load.level = (bounds.min.z + bounds.max.z) / 2.0 - frames_.floor;
        load.part = *part;
        load.isRepeated = stated.isRepeated;
        load.source = "the maker's word";
        if (!stated.height.empty()) {
            const Result<Length> height = numbers_.length(stated.height);
            if (!height || height->mm() < 0.0) {
                trouble(stated,
                        height ? "it acts below the floor" : "height: " + height.error().message);
                return;
            }
            load.level = height->mm();
        }
        isReached_ = false;
        carryStated(load);
        if (!isReached_) {
            trouble(stated, "it reaches no joint that can be judged");
            return;
        }
        carried_.loads.push_back(std::move(load));
    }

    void carryStated(const Load& load) {
        switch (load.towards) {
            case Side::Left:
            case Side::Right:
                swayBodyOf(load.part, RackingWay::Across, load.newtons, load.level);
                break;
            case Side::Front:
            case Side::Back:
                swayBodyOf(load.part, RackingWay::InDepth, load.newtons, load.level);
                break;
            case Side::Bottom:
            case Side::Top:
                press(load.part, load.newtons);
                break;
            case Side::Centre:
                break;
        }
    }

    const Piece& piece_;
    const ResolvedPiece& resolved_;
    const StrengthBook& book_;
    RackingFrames frames_;
    StatedNumbers numbers_{piece_};
    std::unordered_map<std::size_t, std::vector<std::size_t>> byBody_;
    std::optional<double> seat_;  // above the floor
    double top_ = 0.0;            // of the piece, above the floor
    bool isReached_ = false;
    CarriedLoads carried_;
};

}  // namespace

CarriedLoads carryLoads(const Piece& piece,
                        const ResolvedPiece& resolved,
                        const SpeciesTable& species,
                        const StrengthBook& book) {
    return Carrier(piece, resolved, species, book).carry();
}

}  // namespace shoulderline
