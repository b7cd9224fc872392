// The bookkeeping of the time machine, worked out by hand.
#include "core/round/first_listed.h"

#include <gtest/gtest.h>

#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

const std::vector<int> kEnds{7, 14, 21, 28};

TEST(FirstListed, TheFirstDayAndTheRoundsFromThenOn) {
    const std::vector<DayOnList> asked{{7, false, ""},     {12, true, "plan"}, {13, true, "plan"},
                                       {14, true, "plan"}, {21, false, ""},    {28, true, "act"}};
    const auto first = firstListed(asked, 0, 29, kEnds);
    ASSERT_TRUE(first.first);
    EXPECT_EQ(first.first->day, 12);
    EXPECT_EQ(first.daysBefore, 17);
    EXPECT_EQ(first.roundsAsked, 3);
    EXPECT_EQ(first.roundsListed, 2);
}

TEST(FirstListed, WhatWasListedBeforeTheLastEventBelongsToThat) {
    const std::vector<DayOnList> asked{
        {7, true, "plan"}, {14, true, "plan"}, {21, false, ""}, {28, false, ""}};
    const auto first = firstListed(asked, 14, 29, kEnds);
    EXPECT_FALSE(first.first);
    EXPECT_EQ(first.roundsAsked, 2);
    EXPECT_EQ(first.roundsListed, 0);
}

TEST(FirstListed, TheDayOfTheFailureIsNoWarning) {
    const std::vector<DayOnList> asked{{28, true, "act"}};
    EXPECT_FALSE(firstListed(asked, 0, 28, kEnds).first);
}

TEST(FirstListed, AnEntryByHandIsNotTheRule) {
    auto week = made::plain("P-1");
    week.byHand = true;
    week.byHandWhy = "noisy";
    EXPECT_FALSE(dayOnList(made::alone(week), 7).listed);
    const auto loud = made::alone(made::inZone(made::plain("P-1"), "D", 9, 4.5));
    EXPECT_TRUE(dayOnList(loud, 7).listed);
}

}  // namespace
}  // namespace fettle
