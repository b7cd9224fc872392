// What a bearing's high band says of a greasing, on days made by hand. Source of the rule: practice (a dry
// bearing falls silent for weeks, a damaged one for hours or days), common practice, no source.
#include "core/round/grease.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>

namespace fettle {
namespace {

using testing::HasSubstr;

constexpr int kGreased = 20000;

// A day each from 20 before to `last` after the greasing; dB re 0.1 g.
std::vector<DayValue> made(const std::function<double(int)>& dbAfter, int last = 40) {
    std::vector<DayValue> days;
    for (int i = -20; i <= last; ++i)
        days.push_back({kGreased + i, 0.1 * std::pow(10.0, (i < 0 ? 0 : dbAfter(i)) / 20), 3});
    return days;
}

TEST(Grease, QuietForWeeksWasDry) {
    const auto w = greaseWitness(made([](int) { return -8.0; }), kGreased);
    EXPECT_EQ(w.course, GreaseCourse::WasDry);
    EXPECT_EQ(w.words,
              "the band above 1 kHz fell by 8.0 dB and stayed quiet for 28 days: the bearing was dry");
}

TEST(Grease, BackWithinDaysIsDamage) {
    const auto w = greaseWitness(made([](int i) { return i < 6 ? -8.0 : -0.5; }), kGreased);
    EXPECT_EQ(w.course, GreaseCourse::BackWithinDays);
    EXPECT_EQ(w.backOn, kGreased + 6);
    EXPECT_THAT(w.words, HasSubstr("back after 6 days"));
}

TEST(Grease, OneLoudDayIsNotBack) {
    const auto w = greaseWitness(made([](int i) { return i == 6 ? 0.0 : -8.0; }), kGreased);
    EXPECT_EQ(w.course, GreaseCourse::WasDry);
}

TEST(Grease, ASlowReturnOverWeeksIsNotWithinDays) {
    const auto w = greaseWitness(made([](int i) { return i < 20 ? -8.0 : 0.0; }), kGreased);
    EXPECT_EQ(w.course, GreaseCourse::WasDry);
}

TEST(Grease, NoChangeWasNotDry) {
    EXPECT_EQ(greaseWitness(made([](int) { return -2.9; }), kGreased).course, GreaseCourse::NoChange);
    EXPECT_EQ(greaseWitness(made([](int) { return -3.1; }), kGreased).course, GreaseCourse::WasDry);
}

TEST(Grease, LouderThenAndLater) {
    EXPECT_EQ(greaseWitness(made([](int) { return 4.0; }), kGreased).course, GreaseCourse::Louder);
    // Fresh grease churns for a few days and settles.
    EXPECT_EQ(greaseWitness(made([](int i) { return i < 4 ? 4.0 : 0.0; }), kGreased).course,
              GreaseCourse::NoChange);
}

TEST(Grease, TooEarlyToTell) {
    const auto w = greaseWitness(made([](int) { return -8.0; }, 5), kGreased);
    EXPECT_EQ(w.course, GreaseCourse::NotKnown);
    EXPECT_THAT(w.words, HasSubstr("9 more days"));
}

TEST(Grease, WithoutDaysOnBothSidesNothingIsSaid) {
    EXPECT_EQ(greaseWitness({}, kGreased).course, GreaseCourse::NotKnown);
    EXPECT_EQ(greaseWitness(made([](int) { return -8.0; }, 0), kGreased).course, GreaseCourse::NotKnown);
}

}  // namespace
}  // namespace fettle
