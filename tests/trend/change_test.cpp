// The weight of a change: what the days can carry, how often chance reaches it, what matters at all.
#include "core/trend/change.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace fettle {
namespace {

Baseline baseline(int count, double mean, double spread) {
    Baseline b;
    for (int i = 0; i < count; ++i)
        b.days.push_back({i, fromScale(mean, Scale::Decibels), 1});
    b.mean = mean;
    b.spread = spread;
    b.median = fromScale(mean, Scale::Decibels);
    return b;
}

std::vector<DayValue> week(const std::vector<double>& decibels) {
    std::vector<DayValue> days;
    for (std::size_t i = 0; i < decibels.size(); ++i)
        days.push_back({100 + int(i), fromScale(decibels[i], Scale::Decibels), 1});
    return days;
}

// Vovk and Wang (2021): the calibrator integrates to 1, so the mean e-value of uniform p is 1.
TEST(Change, TheCalibratorIsAnEValue) {
    double sum = 0;
    constexpr int kSteps = 200000;
    for (int i = 0; i < kSteps; ++i) {
        const double root = (i + 0.5) / kSteps;  // p = root^20 is dense where f is large
        sum += std::pow(10.0, changeDban(std::pow(root, 20), 0.15) / 10) * 20 * std::pow(root, 19) / kSteps;
    }
    EXPECT_NEAR(sum, 1, 1e-4);
}

// 14 days carry at most 21.8 decibans, 42 days 33.4: by hand from (n + 1)^-3 and kappa 0.15.
TEST(Change, NoWeekWeighsMoreThanItsBaselinesDaysCarry) {
    for (const WeekRule rule : {WeekRule::MeanOfDays, WeekRule::MiddleDay}) {
        ChangeOptions options;
        options.rule = rule;
        const auto few = weighChange(baseline(14, 0, 1), week({60, 60, 60, 60}), options);
        EXPECT_NEAR(few->weightDban, 10 * std::log10(0.15) + 25.5 * std::log10(15.0), 1e-9);
        EXPECT_EQ(few->weightDban, few->mostDban);
        const auto more = weighChange(baseline(42, 0, 1), week({60, 60, 60, 60}), options);
        EXPECT_NEAR(more->weightDban, 33.41, 0.02);
    }
}

TEST(Change, OneOddDayCarriesNoWeekByItsMiddleDay) {
    const std::vector<double> decibels = {0.2, -0.4, 0.1, 20, -0.2, 0.3, 0};
    EXPECT_LT(weighChange(baseline(42, 0, 1), week(decibels))->weightDban, 0);
    ChangeOptions mean;
    mean.rule = WeekRule::MeanOfDays;
    EXPECT_GT(weighChange(baseline(42, 0, 1), week(decibels), mean)->weightDban, 20);
}

TEST(Change, FallsWeighAsMuchAsRises) {
    const auto up = weighChange(baseline(42, 0, 1), week({5, 5, 5}));
    const auto down = weighChange(baseline(42, 0, 1), week({-5, -5, -5}));
    EXPECT_NEAR(up->weightDban, down->weightDban, 1e-9);
    EXPECT_TRUE(up->up());
    EXPECT_FALSE(down->up());
    EXPECT_NEAR(up->step, 5, 1e-9);
    EXPECT_NEAR(down->now, std::pow(10, -0.25), 1e-9);
    EXPECT_FALSE(weighChange(baseline(42, 0, 1), week({9})));
}

// Independent normal days: of 20,000 weeks at most 1 in 10, 100 and 1,000 at 10, 20, 30 decibans.
TEST(Change, ChanceStaysBelowTheBoundWhereDaysAreIndependent) {
    std::mt19937_64 random(7);
    std::normal_distribution<double> normal;
    constexpr int kWeeks = 20000;
    int at10 = 0, at20 = 0;
    for (int w = 0; w < kWeeks; ++w) {
        std::vector<DayValue> past;
        for (int i = 0; i < 14; ++i)
            past.push_back({i + 4, fromScale(normal(random), Scale::Decibels), 1});
        const auto search = baselineOf(past, std::nullopt, 100);
        ASSERT_TRUE(search.baseline);
        std::vector<double> decibels(7);
        for (double& one : decibels)
            one = normal(random);
        const double weight = weighChange(*search.baseline, week(decibels))->weightDban;
        at10 += weight >= 10;
        at20 += weight >= 20;
    }
    EXPECT_LE(at10, kWeeks / 10);
    EXPECT_LE(at20, kWeeks / 100);
}

Change step(double was, double now) {
    Change c;
    c.was = was;
    c.now = now;
    c.step = 20 * std::log10(now / was);
    return c;
}

// A/B 1.4, B/C 2.8 mm/s: a quarter is 0.7 mm/s.
// Common practice, no source: a line of a few mg that doubles is nothing to open a motor for.
TEST(Change, ALineThatStaysTinyDoesNotMatterHoweverItGrew) {
    Change change;
    change.was = 0.001;
    change.now = 0.008;
    change.step = 18;
    MattersBy by;
    by.line = true;
    EXPECT_TRUE(matters(change, by));
    by.leastValue = 0.02;
    EXPECT_FALSE(matters(change, by));
    change.now = 0.03;
    EXPECT_TRUE(matters(change, by));
}

// A sideband 28 dB below its carrier that comes up to 11 below it: levels in decibels lie below zero.
TEST(Change, ALevelBelowZeroDecibelsMatters) {
    Change change;
    change.was = -28;
    change.now = -11;
    change.step = 17;
    MattersBy by;
    by.line = true;
    EXPECT_TRUE(matters(change, by));
    change.step = 5;
    EXPECT_FALSE(matters(change, by));
}

TEST(Change, MattersFromAQuarterOfTheLimitOn) {
    const MattersBy level{1.4, 2.8, false, 6}, line{1.4, 2.8, true, 6}, none{{}, {}, false, 6};
    EXPECT_TRUE(matters(step(1.0, 1.71), level));
    EXPECT_FALSE(matters(step(1.0, 1.69), level));
    EXPECT_TRUE(matters(step(1.71, 1.0), level));
    EXPECT_FALSE(matters(step(0.1, 0.3), level));
    EXPECT_TRUE(matters(step(0.1, 0.3), line));     // 9.5 dB, above 0.14 mm/s
    EXPECT_FALSE(matters(step(0.04, 0.12), line));  // below it
    EXPECT_TRUE(matters(step(0.1, 0.21), none));
    EXPECT_FALSE(matters(step(0.1, 0.19), none));
}

TEST(Change, TheDayItBeganIsTheLastZeroOfTheSums) {
    std::vector<DayValue> days;
    for (int i = 42; i < 80; ++i)
        days.push_back({i, fromScale(i < 70 ? (i % 2 ? 0.3 : -0.3) : 4, Scale::Decibels), 1});
    const auto since = changedSince(baseline(42, 0, 1), days);
    ASSERT_TRUE(since);
    EXPECT_EQ(*since, 70);
    days.resize(20);
    EXPECT_FALSE(changedSince(baseline(42, 0, 1), days));
}

}  // namespace
}  // namespace fettle
