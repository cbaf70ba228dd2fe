#include "core/check/movement.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <unordered_map>
#include <unordered_set>

#include "core/check/stated_numbers.h"
#include "core/resolve/frames.h"
#include "core/resolve/holes.h"
#include "core/timber/moisture.h"

namespace shoulderline {

namespace {

constexpr double kUsualCelsius = 21.1;
constexpr double kUsualDry = 30.0;  // relative humidity, percent
constexpr double kUsualDamp = 60.0;
constexpr double kFibreSaturation = 30.0;

Result<double> moistureOf(const RoomAir& air, double usualHumidity, StatedNumbers& numbers) {
    if (!air.moisture.empty()) {
        return numbers.number(air.moisture, 0.0, kFibreSaturation);
    }
    Result<double> celsius = kUsualCelsius;
    Result<double> humidity = usualHumidity;
    if (!air.celsius.empty()) {
        celsius = numbers.number(air.celsius, kLeastCelsius - 1.0, kMostCelsius + 1.0);
    }
    if (!air.humidity.empty()) {
        humidity = numbers.number(air.humidity, 0.0, 100.0);
    }
    if (!celsius || !humidity) {
        return celsius ? humidity : celsius;
    }
    return equilibriumMoisture(*celsius, *humidity);
}

bool isUsual(const RoomAir& air) {
    return air == RoomAir{};
}

std::optional<double> growth(double size,
                             const std::optional<double>& coefficient,
                             const Season& season) {
    if (!coefficient) {
        return std::nullopt;
    }
    const Result<double> change = changeOfSize(size, *coefficient, season.dry, season.damp);
    return change ? std::optional(*change) : std::nullopt;
}

// Where, across the width of a part, a joint or a screw holds it.
struct HeldAt {
    double across = 0.0;
    std::size_t joint = 0;
};

// A screw through a hole that the maker states, from another part into this one.
struct StatedScrew {
    std::size_t from = 0;
    double across = 0.0;  // over the width of the part that it holds
    bool isSlotted = false;
};

std::vector<StatedScrew> screwsInto(const ResolvedPiece& resolved, std::size_t part) {
    std::vector<StatedScrew> screws;
    for (std::size_t i = 0; i < resolved.parts.size(); ++i) {
        for (const ResolvedCut& cut : resolved.parts[i].cuts) {
            if (!cut.hole || cut.hole->isForHead || cut.hole->kind != CutKind::ScrewHole ||
                i == part) {
                continue;
            }
            const std::optional<ScrewedTo> to = screwedTo(resolved, i, *cut.hole);
            if (to && to->part == part) {
                const Vec3 mouth = resolved.parts[i].frame.toOuter(cut.hole->mouth);
                screws.push_back({i,
                                  resolved.parts[part].frame.toLocal(mouth).y,
                                  cut.hole->slot != SlotWay::Round});
            }
        }
    }
    return screws;
}

}  // namespace

Season seasonOf(const Piece& piece) {
    StatedNumbers numbers(piece);
    const Climate& climate = piece.use.climate;
    Season season;
    const auto worked = [&](const RoomAir& air, double usualHumidity, const char* which) {
        const Result<double> moisture = moistureOf(air, usualHumidity, numbers);
        if (moisture) {
            return *moisture;
        }
        season.troubles.push_back(std::string(which) + " air: " + moisture.error().message);
        return moistureOf({}, usualHumidity, numbers).value_or(0.0);
    };
    season.dry = worked(climate.dry, kUsualDry, "driest");
    season.damp = worked(climate.damp, kUsualDamp, "dampest");
    if (season.dry > season.damp) {
        season.troubles.push_back("the driest air is damper than the dampest one");
        std::swap(season.dry, season.damp);
    }
    const bool isAllUsual = isUsual(climate.dry) && isUsual(climate.damp);
    const std::string usual =
        "30 and 60 % relative humidity at 21 °C, heated rooms over a year: common practice";
    season.source =
        (isAllUsual ? usual
                    : std::string("the air as the maker states it") +
                          (isUsual(climate.dry) || isUsual(climate.damp) ? ", else " + usual
                                                                         : std::string())) +
        "; moisture content of wood in it by the Wood Handbook, FPL-GTR-282 (2021), eq. "
        "(4-5)";
    return season;
}

RingDirection ringsAcrossWidth(Cut cut) {
    switch (cut) {
        case Cut::Flat:
            return RingDirection::Tangential;
        case Cut::Quarter:
            return RingDirection::Radial;
        case Cut::Rift:
            break;
    }
    return RingDirection::Between;
}

RingDirection ringsAcrossThickness(Cut cut) {
    switch (cut) {
        case Cut::Flat:
            return RingDirection::Radial;
        case Cut::Quarter:
            return RingDirection::Tangential;
        case Cut::Rift:
            break;
    }
    return RingDirection::Between;
}

MovementReport movementReport(const Piece& piece,
                              const ResolvedPiece& resolved,
                              const SpeciesTable& species) {
    struct Wood {
        std::optional<double> width;
        std::optional<double> thickness;
    };
    std::unordered_map<std::string_view, Wood> woods;
    for (const Stock& stock : piece.stocks) {
        if (const Species* wood = species.find(stock.species)) {
            woods[stock.name] = {changeCoefficient(*wood, ringsAcrossWidth(stock.cut)),
                                 changeCoefficient(*wood, ringsAcrossThickness(stock.cut))};
        }
    }
    MovementReport report;
    report.season = seasonOf(piece);
    report.parts.reserve(resolved.parts.size());
    for (const ResolvedPart& part : resolved.parts) {
        const auto it = woods.find(part.stock);
        const Wood wood = it == woods.end() ? Wood{} : it->second;
        report.parts.push_back({growth(part.width.value.mm(), wood.width, report.season),
                                growth(part.thickness.value.mm(), wood.thickness, report.season),
                                wood.width});
    }
    return report;
}

PartGraph::PartGraph(const ResolvedPiece& resolved) : resolved_(resolved) {
    next_.resize(resolved.parts.size());
    for (const ResolvedJoint& joint : resolved.joints) {
        if (!joint.form().isDry()) {
            next_[joint.tenoned].push_back(joint.mortised);
            next_[joint.mortised].push_back(joint.tenoned);
        }
    }
}

bool PartGraph::areTied(std::size_t part, const HeldApart& apart) const {
    if (apart.joints.size() < 2) {
        return false;
    }
    const Vec3 across = resolved_.parts[part].frame.y;
    const auto holderOf = [&](std::size_t index) {
        const ResolvedJoint& joint = resolved_.joints[index];
        return joint.tenoned == part ? joint.mortised : joint.tenoned;
    };
    // What is wide across its own grain that way gives with the part.
    const auto gives = [&](std::size_t i) {
        const ResolvedPart& one = resolved_.parts[i];
        const double wide = std::abs(dot(one.frame.y, across)) * one.width.value.mm() +
                            std::abs(dot(one.frame.z, across)) * one.thickness.value.mm();
        return i == part || wide > apart.distance / 2;
    };
    const std::size_t from = holderOf(apart.joints[0]);
    const std::size_t to = holderOf(apart.joints[1]);
    if (gives(from) || gives(to)) {
        return false;
    }
    std::unordered_set<std::size_t> seen{from};
    std::vector<std::size_t> open{from};
    while (!open.empty()) {
        const std::size_t at = open.back();
        open.pop_back();
        if (at == to) {
            return true;
        }
        for (const std::size_t next : next_[at]) {
            if (!gives(next) && seen.insert(next).second) {
                open.push_back(next);
            }
        }
    }
    return false;
}

HeldApart heldApart(const ResolvedPiece& resolved,
                    std::size_t part,
                    const std::vector<std::size_t>& jointsOnPart) {
    const ResolvedPart& held = resolved.parts[part];
    const std::vector<StatedScrew> screws = screwsInto(resolved, part);
    HeldApart apart;
    std::optional<HeldAt> least;
    std::optional<HeldAt> most;
    const auto add = [&](const HeldAt& at) {
        least = !least || at.across < least->across ? at : *least;
        most = !most || at.across > most->across ? at : *most;
    };
    for (const std::size_t index : jointsOnPart) {
        const ResolvedJoint& joint = resolved.joints[index];
        if (joint.form().isWholeSection() || joint.form().isDry()) {
            continue;  // a shelf moves as the side that it is housed in does; a panel is free
        }
        const std::size_t other = joint.tenoned == part ? joint.mortised : joint.tenoned;
        if (joint.kind == JointKind::Rests && !screws.empty()) {
            // The maker says where it is fixed; in a slot it moves.
            for (const StatedScrew& screw : screws) {
                if (screw.from == other && !screw.isSlotted) {
                    add({screw.across, index});
                }
            }
            continue;
        }
        double across = held.frame.toLocal(joint.frame.origin).y;
        if (!joint.hasTenon()) {
            // The middle of the width that both parts share.
            const ResolvedPart& there = resolved.parts[other];
            const Box box = relativeFrame(held.frame, there.frame).outerBounds(there.bodyBox());
            const Box own = held.bodyBox();
            across = (std::max(own.min.y, box.min.y) + std::min(own.max.y, box.max.y)) / 2;
        }
        add({across, index});
        apart.isLetIn = apart.isLetIn || joint.hasTenon() || joint.kind == JointKind::Dowelled ||
                        joint.kind == JointKind::CrossLap;
    }
    if (least && most->across > least->across) {
        apart.distance = most->across - least->across;
        apart.joints = {least->joint, most->joint};
    }
    return apart;
}

}  // namespace shoulderline
