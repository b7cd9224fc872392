// What is drawn beside a trend, on a history made by hand: limits of ISO 20816-3 group 2 on a rigid base
// (1.4, 2.8, 4.5 mm/s; from memory), growth of 0.03 mm/s a day worked out on paper.
#include "core/fleet/trend_past.h"

#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;

class Past : public MadeHistory {
  protected:
    // Sound to 14 April; from then on it grows.
    void live(double perDay) {
        std::string date = "2026-03-02";
        for (int day = 0; day < 74; ++day, date = datePlus(date, 1).value()) {
            Heard heard;
            heard.velocityMmS = 1 + (day % 2 ? 0.02 : -0.02) + std::max(0, day - 43) * perDay;
            heard.order1MmS = heard.velocityMmS / 2;
            hear("FN-01", date, heard);
        }
    }
    // The short way to the baseline's days comes to the same ones.
    void expectSameDays(const Machine& machine, const ChannelEntry& channel, const TrendPast& past) {
        const auto days = baselineDays(*fleet_, "FN-01", machine, channel);
        ASSERT_TRUE(days) << days.error().sentence();
        ASSERT_EQ(days->has_value(), past.baseline.has_value());
        if (!*days) return;
        EXPECT_EQ((*days)->first, past.baseline->from);
        EXPECT_EQ((*days)->last, past.baseline->to);
    }
    TrendPast past(Quantity quantity) {
        const auto machine = fleet_->machines().describedAt("FN-01").value();
        const auto entry = fleet_->machines().byTag("FN-01").value();
        const auto channels = fleet_->trends().channels(entry.id).value();
        const auto answer = trendPast(*fleet_, "FN-01", *machine, channels.at(0), quantity);
        EXPECT_TRUE(answer) << (answer ? "" : answer.error().sentence());
        if (answer && quantity == Quantity::VelocityRms) expectSameDays(*machine, channels.at(0), *answer);
        return answer ? *answer : TrendPast{};
    }
};

TEST_F(Past, TheBaselineIsItsFirstSixWeeksWithTheBandOfItsDays) {
    live(0);
    const TrendPast one = past(Quantity::VelocityRms);
    ASSERT_TRUE(one.baseline);
    EXPECT_EQ(dateOfDay(one.baseline->from), "2026-03-02");
    EXPECT_EQ(dateOfDay(one.baseline->to), "2026-04-12");
    EXPECT_EQ(one.baseline->days, 42);
    EXPECT_NEAR(one.baseline->middle, 1, 0.021);
    EXPECT_LT(one.baseline->low, 0.98);
    EXPECT_GT(one.baseline->high, 1.02);
    ASSERT_TRUE(one.limits);
    EXPECT_EQ(one.limits->count, 42);
    EXPECT_FALSE(one.since);
    EXPECT_FALSE(one.heading);
}

TEST_F(Past, AGrowingLevelHasADayAndADateAtTheNextLimit) {
    live(0.03);
    const TrendPast one = past(Quantity::VelocityRms);
    ASSERT_TRUE(one.since);
    EXPECT_GE(dateOfDay(*one.since), "2026-04-13");
    EXPECT_LE(dateOfDay(*one.since), "2026-04-25");
    // 1.9 mm/s on 14 May, above A/B; 0.9 mm/s more at 0.03 a day are 30 days straight on, fewer where it
    // goes on in proportion.
    ASSERT_TRUE(one.heading);
    EXPECT_EQ(one.heading->limitName, "B/C");
    EXPECT_EQ(one.heading->limit, 2.8);
    EXPECT_NEAR(one.heading->level, 1.9, 0.1);
    const int day = *one.heading->date.median - one.heading->day;
    EXPECT_GT(day, 15);
    EXPECT_LT(day, 36);
    EXPECT_LE(*one.heading->date.from, *one.heading->date.median);
    EXPECT_FALSE(past(Quantity::Order1).heading);  // a limit is of the overall velocity alone
}

TEST_F(Past, ARepairBeginsAnotherBaseline) {
    live(0);
    tell("FN-01", "2026-05-04T12:00:00Z", "repair", "driver DE", "new bearing");
    const TrendPast one = past(Quantity::VelocityRms);
    EXPECT_FALSE(one.baseline);
    EXPECT_THAT(one.why, HasSubstr("14"));
}

TEST_F(Past, WhatIsNotFollowedHasNone) {
    live(0);
    const TrendPast one = past(Quantity::Kurtosis);
    EXPECT_FALSE(one.baseline);
    EXPECT_EQ(one.why, "");
}

}  // namespace
}  // namespace fettle::fleet_test
