#include <map>
#include <set>

#include <gtest/gtest.h>

#include "core/check/contacts.h"
#include "tests/reference/solid_geometry/occt_solids.h"
#include "tests/support/pieces.h"

// What a back that swings shares with the rest at each of its stations, against Open CASCADE
// Technology 7.6, whose arcs are true arcs.
namespace shoulderline {
namespace {

using reference::Solid;
using reference::SolidPlan;

Solid bodyOf(const ResolvedPart& part) {
    return Solid(SolidPlan{part.body, part.frame, {}, {}});
}

// The deepest contact's volume by pair; what only touches shares none.
std::map<std::pair<std::size_t, std::size_t>, double> sharedIn(const ResolvedPiece& piece) {
    std::map<std::pair<std::size_t, std::size_t>, double> shared;
    for (const Contact& contact : contactsOf(piece)) {
        shared.emplace(std::pair(contact.first, contact.second), contact.volume);
    }
    return shared;
}

// The armchair shown at a station, and how many pairs of what swings and what does not share wood.
int compareAt(Piece piece, const std::string& station) {
    for (Assembly& assembly : piece.assemblies) {
        if (assembly.swing) {
            assembly.swing->at = station;
        }
    }
    const ResolvedPiece resolved = testing::resolved(piece);
    EXPECT_EQ(resolved.swings.size(), 1u);
    EXPECT_EQ(resolved.swings.at(0).positions.at(resolved.swings[0].at).name, station);
    const auto ours = sharedIn(resolved);
    const std::set<std::size_t> moving(resolved.swings[0].moving.begin(),
                                       resolved.swings[0].moving.end());
    int sharing = 0;
    for (const std::size_t i : moving) {
        for (std::size_t k = 0; k < resolved.parts.size(); ++k) {
            const ResolvedPart& one = resolved.parts[i];
            const ResolvedPart& other = resolved.parts[k];
            if (moving.contains(k) || !boundsInSpace(one).meets(boundsInSpace(other))) {
                continue;
            }
            const double theirs = reference::common(bodyOf(one), bodyOf(other)).volume();
            const auto found = ours.find(std::minmax(i, k));
            const double mine = found == ours.end() ? 0.0 : found->second;
            // Facets keep within kArcSagitta of a face: of the bar's hollow and the slat's bow.
            const double facets =
                2 * kArcSagitta * one.shoulderLength.value.mm() * one.width.value.mm();
            EXPECT_NEAR(mine, theirs, facets) << one.name << " and " << other.name;
            sharing += theirs > facets ? 1 : 0;
        }
    }
    return sharing;
}

class SwingAgainstOcct : public ::testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(OpenCascade,
                         SwingAgainstOcct,
                         ::testing::Values("upright", "reading", "resting"));

TEST_P(SwingAgainstOcct, TheArmchairsBackIsClearOfTheRest) {
    EXPECT_EQ(compareAt(testing::sample("armchair"), GetParam()), 0);
}

// Slats bulge into a bar that is not hollow; how far depends on the station.
TEST_P(SwingAgainstOcct, WhatAStraightBarSharesWithTheSlatsIsTheSame) {
    Piece piece = testing::sample("armchair");
    testing::statedPart(piece, "rest bar").shape.clear();
    // Set so that one of the slats meets the bar at every station.
    testing::statedPart(piece, "back slat").width = "2 3/4 in";

    EXPECT_GT(compareAt(piece, GetParam()), 0);
}

}  // namespace
}  // namespace shoulderline
