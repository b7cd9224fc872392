// Two elements of one bearing: the bearing first, then the elements, and whether their cage shifts agree.
#include "core/diagnosis/mixed_damage.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fettle {
namespace {

using ::testing::HasSubstr;

Hypothesis found(const std::string& fault, const std::string& at, double weight, double shift) {
    Hypothesis h;
    h.fault = fault;
    h.at = at;
    h.weightDban = weight;
    h.best.cageShift = shift;
    h.sentence = "Found.";
    return h;
}

TEST(MixedDamage, TwoElementsOfOneBearingNameEachOther) {
    std::vector<Hypothesis> all = {found("bearing_inner_race", "driver DE", 100, 0.0072),
                                   found("bearing_outer_race", "driver DE", 67, 0.0074)};
    wordMixedDamage(all);
    EXPECT_THAT(all[0].sentence, HasSubstr("outer race (67 decibans)"));
    EXPECT_THAT(all[1].sentence, HasSubstr("inner race (100 decibans)"));
    EXPECT_THAT(all[0].sentence, HasSubstr("which element failed first cannot be told"));
    EXPECT_TRUE(all[0].against.empty() && all[1].against.empty());
}

// Outer race, inner race and cage hang on one cage ratio (kinematics): a half per cent apart is two bearings.
TEST(MixedDamage, ShiftsThatDisagreeSpeakAgainstBoth) {
    std::vector<Hypothesis> all = {found("bearing_inner_race", "driver DE", 100, 0.0072),
                                   found("bearing_outer_race", "driver DE", 67, 0.0021)};
    wordMixedDamage(all);
    ASSERT_EQ(all[0].against.size(), 1u);
    EXPECT_THAT(all[0].against[0], HasSubstr("+0.21 % on the outer race"));
    EXPECT_EQ(all[1].against.size(), 1u);
}

// The rolling element slips on its own (Randall and Antoni, MSSP 25 (2011) 485-520, section 2).
TEST(MixedDamage, TheRollingElementIsNotTied) {
    std::vector<Hypothesis> all = {found("bearing_inner_race", "driver DE", 100, 0.0072),
                                   found("bearing_rolling_element", "driver DE", 67, -0.004)};
    wordMixedDamage(all);
    EXPECT_TRUE(all[0].against.empty());
    EXPECT_THAT(all[0].sentence, HasSubstr("rolling element"));
}

TEST(MixedDamage, OtherBearingsAndOtherFaultsAreLetBe) {
    std::vector<Hypothesis> all = {found("bearing_inner_race", "driver DE", 100, 0),
                                   found("bearing_outer_race", "driver NDE", 60, 0.01),
                                   found("belt", "driver DE", 40, 0)};
    wordMixedDamage(all);
    for (const Hypothesis& h : all)
        EXPECT_EQ(h.sentence, "Found.") << h.fault;
}

}  // namespace
}  // namespace fettle
