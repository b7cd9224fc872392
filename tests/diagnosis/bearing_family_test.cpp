// Where a bearing's faults draw lines: against a published list and against kinematics.
// Sources: Case Western Reserve University Bearing Data Center, defect frequencies of the drive-end bearing
// 6205-2RS (0.3126 in on 1.537 in, 9 elements) in multiples of running speed: inner 5.4152, outer 3.5848,
// cage 0.39828, rolling element 4.7135 (both strikes a spin); Randall and Antoni, MSSP 25 (2011) 485-520, eq.
// 1-4 and sec. 2.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "core/diagnosis/family.h"

namespace fettle {
namespace {

const BearingGeometry kDriveEnd{9, 0.3126 * 25.4, 1.537 * 25.4, 0};

BearingVariant driveEnd(TurningRing turning = TurningRing::Inner) {
    return asVariant(kDriveEnd, turning);
}

double at(const FamilyLine& line, double c) {
    return line.order + line.slope * c;
}

double carrier(BearingElement element, const BearingVariant& bearing, double c = 0) {
    return at(bearingFamily(element, bearing).lines[0], c);
}

const FamilyLine* lineAt(const Family& family, double order) {
    for (const FamilyLine& line : family.lines)
        if (std::abs(line.order - order) < 1e-9) return &line;
    return nullptr;
}

TEST(BearingFamily, CarriersAreThePublishedOnes) {
    EXPECT_NEAR(carrier(BearingElement::OuterRace, driveEnd()), 3.5848, 2e-4);
    EXPECT_NEAR(carrier(BearingElement::InnerRace, driveEnd()), 5.4152, 2e-4);
    EXPECT_NEAR(carrier(BearingElement::RollingElement, driveEnd()), 4.7135, 2e-4);
    EXPECT_NEAR(carrier(BearingElement::Cage, driveEnd()), 0.39828, 5e-5);
}

TEST(BearingFamily, OrdersAsGivenAreTakenAsTheyAre) {
    const BearingVariant given{"orders as given", {3.053, 4.9469, 1.9937, 0.3817}, 8, "", true};
    EXPECT_DOUBLE_EQ(carrier(BearingElement::OuterRace, given), 3.053);
    EXPECT_DOUBLE_EQ(carrier(BearingElement::InnerRace, given), 4.9469);
    EXPECT_DOUBLE_EQ(carrier(BearingElement::RollingElement, given), 2 * 1.9937);
    EXPECT_DOUBLE_EQ(carrier(BearingElement::Cage, given), 0.3817);
}

// The cage passes N elements over the outer ring a turn of its own and N less those over the inner: whatever
// the cage does, both together are N a turn of the shaft.
TEST(BearingFamily, OuterAndInnerKeepTheirSumWhateverTheCageDoes) {
    for (const TurningRing turning : {TurningRing::Inner, TurningRing::Outer})
        for (double c = -0.02; c <= 0.0201; c += 0.005) {
            const auto bearing = driveEnd(turning);
            const double outer = carrier(BearingElement::OuterRace, bearing, c);
            const double inner = carrier(BearingElement::InnerRace, bearing, c);
            EXPECT_NEAR(outer + inner, 9, 1e-9) << c;
            const double cage = carrier(BearingElement::Cage, bearing, c);
            const double still = turning == TurningRing::Inner ? outer : inner;
            EXPECT_NEAR(still, 9 * cage, 1e-9) << c;
            EXPECT_NEAR(cage, bearing.orders.ftf * (1 + c), 1e-12);
        }
}

// A turning outer ring (idlers, pulleys): the cage follows it at more than half speed, so the ring that
// stands is the inner one and is passed N x FTF times, more often than the turning one (kinematics).
TEST(BearingFamily, OuterRingTurning) {
    const auto inner = driveEnd(), outer = driveEnd(TurningRing::Outer);
    EXPECT_GT(outer.orders.ftf, 0.5);
    EXPECT_NEAR(outer.orders.ftf, 1 - inner.orders.ftf, 1e-12);
    EXPECT_GT(carrier(BearingElement::InnerRace, outer, 0.01), carrier(BearingElement::InnerRace, outer));
    EXPECT_LT(carrier(BearingElement::OuterRace, outer, 0.01), carrier(BearingElement::OuterRace, outer));
    EXPECT_NEAR(carrier(BearingElement::RollingElement, outer), 4.7135, 2e-4);
}

TEST(BearingFamily, HarmonicsAreWholeMultiplesAndMoveWithTheCarrier) {
    const std::map<BearingElement, int> count{{BearingElement::OuterRace, 12},
                                              {BearingElement::InnerRace, 8},
                                              {BearingElement::RollingElement, 8},
                                              {BearingElement::Cage, 5}};
    for (const auto& [element, harmonics] : count) {
        const Family family = bearingFamily(element, driveEnd());
        int seen = 0;
        for (const FamilyLine& line : family.lines) {
            if (!line.carrier) continue;
            ++seen;
            EXPECT_NEAR(at(line, 0.01), line.harmonic * at(family.lines[0], 0.01), 1e-9) << line.name;
        }
        EXPECT_GE(seen, std::min(harmonics, 5)) << family.fault;
        EXPECT_EQ(seen, harmonics) << family.fault;
    }
}

struct Spacing {
    BearingElement element;
    double step;
    std::vector<int> sidebands;
};

// Randall and Antoni, sec. 2.1: inner-race faults turn through the load zone (sidebands at shaft speed),
// rolling elements pass it with the cage (sidebands at cage speed); outer-race faults stand still in it
// (shaft sidebands weak: low w).
TEST(BearingFamily, SidebandsStandOneShaftOrCageTurnAway) {
    const double cage = driveEnd().orders.ftf;
    for (const Spacing& s : {Spacing{BearingElement::OuterRace, 1, {-1, 1}},
                             Spacing{BearingElement::InnerRace, 1, {-2, -1, 1, 2}},
                             Spacing{BearingElement::RollingElement, cage, {-2, -1, 1, 2}}}) {
        const Family family = bearingFamily(s.element, driveEnd());
        std::size_t sidebands = 0;
        for (const FamilyLine& line : family.lines)
            sidebands +=
                line.name.find(" + ") != std::string::npos || line.name.find(" - ") != std::string::npos;
        EXPECT_EQ(sidebands, 2 * s.sidebands.size()) << family.fault;
        for (const int h : {1, 2})
            for (const int j : s.sidebands) {
                const FamilyLine* line = lineAt(family, h * family.lines[0].order + j * s.step);
                ASSERT_NE(line, nullptr) << family.fault << " " << h << " " << j;
                EXPECT_NEAR(line->slope, h * family.lines[0].slope, 1e-12);
                EXPECT_NE(line->name.find(std::to_string(std::abs(j)) + " x"), std::string::npos)
                    << line->name;
            }
    }
    const auto weightOf = [](BearingElement e) { return bearingFamily(e, driveEnd()).lines.back().w; };
    EXPECT_LT(weightOf(BearingElement::OuterRace), weightOf(BearingElement::InnerRace));
}

TEST(BearingFamily, SharesAreProbabilitiesAndNamesAreOnce) {
    for (const BearingElement element : kBearingElements) {
        const Family family = bearingFamily(element, driveEnd());
        EXPECT_EQ(family.fault, faultKey(element));
        std::map<std::string, int> names;
        double before = 1;
        for (const FamilyLine& line : family.lines) {
            EXPECT_GT(line.w, 0);
            EXPECT_LT(line.w, 1);
            if (line.carrier) {
                EXPECT_LE(line.w, before) << "a higher harmonic is not surer: " << line.name;
                before = line.w;
            }
            EXPECT_EQ(++names[line.name], 1) << line.name;
        }
    }
}

}  // namespace
}  // namespace fettle
