// Formulae of ISO 21940-11 against figures computed apart from this program (NumPy).
#include "core/workshop/unbalance.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

TEST(Unbalance, PermissibleValuesAndForceAsComputedApart) {
    EXPECT_NEAR(permissibleOffsetUm(6.3, 1500), 40.1070456592, 1e-9);
    EXPECT_NEAR(permissibleUnbalanceGmm(6.3, 20, 1500), 802.140913183, 1e-8);
    EXPECT_NEAR(unbalanceForceN(permissibleUnbalanceGmm(6.3, 20, 1500), 1500), 19.7920337176, 1e-9);
    EXPECT_NEAR(permissibleOffsetUm(6.3, 2970), 20.2560836662, 1e-9);
    EXPECT_NEAR(permissibleUnbalanceGmm(6.3, 50, 2970), 1012.80418331, 1e-7);
    EXPECT_NEAR(unbalanceForceN(permissibleUnbalanceGmm(6.3, 50, 2970), 2970), 97.9705669022, 1e-9);
    EXPECT_NEAR(permissibleUnbalanceGmm(2.5, 150, 1480), 2419.58528349, 1e-7);
}

// The turbine rotor of ISO 1940-1 (its inputs from memory): 3600 kg, 3000 r/min, G 2.5, planes 1500 and
// 900 mm from the centre of mass. The standard prints about 28.6e3 g mm.
TEST(Unbalance, TurbineRotorOfTheStandardIsSharedToItsPlanes) {
    const double whole = permissibleUnbalanceGmm(2.5, 3600, 3000);
    EXPECT_NEAR(whole, 28647.9, 0.05);
    const PlaneShares shares = shareToPlanes(whole, 1500, 900);
    EXPECT_NEAR(shares.first, 10743, 0.5);
    EXPECT_NEAR(shares.second, 17905, 0.5);
}

TEST(Unbalance, ForceOfAMassGrowsWithTheSquareOfSpeed) {
    EXPECT_NEAR(unbalanceForceN(unbalanceGmm(10, 100), 1500), 24.6740110027, 1e-9);
    EXPECT_NEAR(unbalanceForceN(unbalanceGmm(1, 100), 3000), 9.86960440109, 1e-10);
    EXPECT_NEAR(unbalanceForceN(500, 3000) / unbalanceForceN(500, 1500), 4, 1e-12);
}

TEST(Unbalance, TenPercentOfTheRotorsWeight) {
    EXPECT_NEAR(massOfWeightShareG(0.1, 100, 1500, 200), 19.8724277113, 1e-9);
}

TEST(Unbalance, EquivalentGradeIsThePermissibleOneReadBackwards) {
    for (const double grade : kBalanceGrades)
        EXPECT_NEAR(equivalentGrade(permissibleUnbalanceGmm(grade, 37, 1465), 37, 1465), grade, 1e-9 * grade);
    EXPECT_EQ(gradeThatHolds(2.5), 2.5);
    EXPECT_EQ(gradeThatHolds(2.51), 6.3);
    EXPECT_EQ(gradeThatHolds(4001), std::nullopt);
    EXPECT_EQ(gradeName(6.3), "G 6.3");
    EXPECT_EQ(gradeName(1600), "G 1600");
}

TEST(Unbalance, WithoutSpeedMassOrRadiusThereIsNothing) {
    EXPECT_EQ(permissibleUnbalanceGmm(6.3, 20, 0), 0);
    EXPECT_EQ(permissibleUnbalanceGmm(6.3, 0, 1500), 0);
    EXPECT_EQ(massOfWeightShareG(0.1, 100, 1500, 0), 0);
    EXPECT_EQ(shareToPlanes(100, 0, 0).first, 0);
}

TEST(Unbalance, UsualGradeByKindHeightAndSpeed) {
    EXPECT_EQ(usualGrade(RotorKind::ElectricMotor, 1480, 280), 2.5);
    EXPECT_EQ(usualGrade(RotorKind::ElectricMotor, 1400, 71), 6.3);
    EXPECT_EQ(usualGrade(RotorKind::ElectricMotor, 950, 280), 6.3);
    EXPECT_EQ(usualGrade(RotorKind::FanOrPump, 1480), 6.3);
}

}  // namespace
}  // namespace fettle
