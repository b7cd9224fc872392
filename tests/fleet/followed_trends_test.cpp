// What a week asks of a machine's history, from the stores: baselines that end where the machine was altered,
// like load, temperatures left out where nobody gives an ambient. Expected answers by hand.
#include "core/fleet/followed_trends.h"

#include "core/fleet/machine_desk.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/sheet_content.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

using ::testing::HasSubstr;

class FollowedTrendsTest : public MadeHistory {
  protected:
    FollowedTrends followed(const std::string& until = "2026-04-05") {
        const auto entry = fleet_->machines().byTag("FN-01").value();
        const auto site = fleet_->site().value();
        const auto period = periodTo(site, until).value();
        const auto described = fleet_->machines().describedAt("FN-01").value();
        auto out = followedTrends(*fleet_, entry, *described, period);
        EXPECT_TRUE(out);
        return out ? *out : FollowedTrends{};
    }
    static const FollowedChange& of(const FollowedTrends& all, Followed quantity) {
        static const FollowedChange none;
        for (const FollowedChange& one : all.changes)
            if (one.quantity == quantity) return one;
        ADD_FAILURE() << followedName(quantity) << " is not followed";
        return none;
    }
    void hearWeek(double order1) {
        Heard loud;
        loud.order1MmS = order1;
        loud.velocityMmS = order1 + 0.5;
        hearDays("FN-01", "2026-03-30", "2026-04-05", loud);
    }
};

TEST_F(FollowedTrendsTest, AWeekAgainstTheFirstSixWeeks) {
    hearDays("FN-01", "2026-01-05", "2026-03-29", {});
    hearWeek(3);
    const FollowedTrends all = followed();
    const FollowedChange& once = of(all, Followed::Order1);
    ASSERT_TRUE(once.week.change) << once.week.why;
    EXPECT_EQ(once.week.baselineDays, 42);
    EXPECT_EQ(dateOfDay(once.week.baselineFrom), "2026-01-05");
    EXPECT_EQ(dateOfDay(once.week.baselineTo), "2026-02-15");
    EXPECT_EQ(once.week.change->was, 0.5);
    EXPECT_EQ(once.week.change->now, 3);
    EXPECT_TRUE(once.week.matters);
    EXPECT_GE(once.week.change->weightDban, 20);
    EXPECT_EQ(dateOfDay(once.week.since.value_or(0)), "2026-03-30");
    EXPECT_EQ(once.point, "P");
    EXPECT_FALSE(of(all, Followed::HighBand).week.matters);
    EXPECT_LT(of(all, Followed::HighBand).week.change->weightDban, 0);
    for (const FollowedChange& one : all.changes)
        EXPECT_NE(one.quantity, Followed::TemperatureRise);
}

// No change is weighed across a repair: until there are days enough, the missing ones are told.
TEST_F(FollowedTrendsTest, ARepairEndsTheBaseline) {
    hearDays("FN-01", "2026-01-05", "2026-03-29", {});
    hearWeek(3);
    tell("FN-01", "2026-03-20T10:00:00Z", "repair", "driver");
    const FollowedChange once = of(followed(), Followed::Order1);
    EXPECT_FALSE(once.week.change);
    EXPECT_THAT(once.week.why, HasSubstr("no baseline: 7 of 14 days"));
    EXPECT_THAT(once.week.why, HasSubstr("since 2026-03-20"));
    tell("FN-01", "2026-01-20T10:00:00Z", "greasing", "driver");
    EXPECT_FALSE(of(followed(), Followed::Order1).week.change);
}

// Half load is compared with half load, and there is none of it.
TEST_F(FollowedTrendsTest, OnlyDaysOfLikeLoadAreCompared) {
    hearDays("FN-01", "2026-01-05", "2026-03-29", {});
    Heard half;
    half.loadPct = 40;
    half.order1MmS = 3;
    hearDays("FN-01", "2026-03-30", "2026-04-05", half);
    const FollowedChange once = of(followed(), Followed::Order1);
    EXPECT_FALSE(once.week.change);
    EXPECT_THAT(once.week.why, HasSubstr("0 of 14 days"));
}

TEST_F(FollowedTrendsTest, TheRoundListsItByChange) {
    hearDays("FN-01", "2026-01-05", "2026-03-29", {});
    hearWeek(3);
    const auto list = listNow(*fleet_, "2026-04-05");
    ASSERT_TRUE(list) << list.error().sentence();
    for (const RoundMachine& m : list->machines) {
        if (m.tag != "FN-01") continue;
        EXPECT_EQ(m.listedBy, ListedBy::Change);
        ASSERT_FALSE(m.findings.empty());
        EXPECT_EQ(m.findings[0].finding.fault, "unbalance");
        EXPECT_THAT(m.baseline, HasSubstr("42 days from 2026-01-05"));
        EXPECT_TRUE(m.findings[0].change && m.findings[0].change->limits);
        // A page that shows the week says the same.
        const auto entry = fleet_->machines().byTag("FN-01").value();
        const auto described = fleet_->machines().describedAt("FN-01").value();
        const auto period = periodTo(fleet_->site().value(), "2026-04-05").value();
        const auto span = examinationOfSpan(*fleet_, "FN-01", period.from, period.last()).value();
        const auto changes = changesOfWeek(*fleet_, entry, *described, period, span->examination);
        ASSERT_TRUE(changes) << changes.error().sentence();
        ASSERT_EQ(changes->size(), m.findings.size());
        EXPECT_EQ(changes->front().finding.sentence, m.findings[0].finding.sentence);
        EXPECT_EQ(changes->front().finding.urgency, m.findings[0].finding.urgency);
    }
}

// Velocity says nothing of it: the sheet shows what changed, where it changed, and adds up no lines.
TEST_F(FollowedTrendsTest, TheSheetOfARaisedHighBandShowsThatBand) {
    hearDays("FN-01", "2026-01-05", "2026-03-29", {});
    Heard rough;
    rough.highBandG = 0.8;
    hearDays("FN-01", "2026-03-30", "2026-04-05", rough);
    const auto list = listNow(*fleet_, "2026-04-05");
    ASSERT_TRUE(list) << list.error().sentence();
    const auto sheet = sheetContent(*fleet_, *list, std::nullopt, {"FN-01", 1, {}, "2026-04-06"});
    ASSERT_TRUE(sheet) << sheet.error().sentence();
    EXPECT_EQ(sheet->fault, "bearing_dry_or_worn");
    EXPECT_THAT(sheet->verdict, HasSubstr("High band at P x rose from 0.10 g to 0.80 g"));
    EXPECT_EQ(sheet->trend.title, "P x high band");
    EXPECT_EQ(sheet->trend.unit, "g");
    ASSERT_FALSE(sheet->trend.days.empty());
    EXPECT_EQ(sheet->trend.days.back().value, 0.8);
    EXPECT_EQ(sheet->trend.days.front().value, 0.1);
    EXPECT_TRUE(sheet->trend.past.baseline && sheet->trend.limits.empty());
    EXPECT_THAT(sheet->spectrum.caption, HasSubstr("P x: acceleration"));
    EXPECT_TRUE(sheet->rows.empty());
    EXPECT_THAT(sheet->rowsNote, HasSubstr("rests on a change"));
    EXPECT_THAT(sheet->howSure, HasSubstr("weight of the change"));
}

// 40 over 20 degrees is 20 K, 55 over 20 is 35 K. A temperature is the point's: no channel, no second blank.
TEST_F(FollowedTrendsTest, TheSheetOfAHotFrameShowsItsRiseOverAmbient) {
    Heard warm, hot;
    warm.ambientTempC = hot.ambientTempC = 20;
    warm.frameTempC = 40;
    hot.frameTempC = 55;
    hearDays("FN-01", "2026-01-05", "2026-03-29", warm);
    hearDays("FN-01", "2026-03-30", "2026-04-05", hot);
    const auto list = listNow(*fleet_, "2026-04-05");
    ASSERT_TRUE(list) << list.error().sentence();
    const auto sheet = sheetContent(*fleet_, *list, std::nullopt, {"FN-01", 1, {}, "2026-04-06"});
    ASSERT_TRUE(sheet) << sheet.error().sentence();
    EXPECT_EQ(sheet->fault, "overheating");
    EXPECT_THAT(sheet->verdict, HasSubstr("Frame over ambient at P rose from 20 K to 35 K"));
    EXPECT_EQ(sheet->trend.title, "P frame over ambient");
    EXPECT_EQ(sheet->trend.unit, "K");
    ASSERT_FALSE(sheet->trend.days.empty());
    EXPECT_EQ(sheet->trend.days.front().value, 20);
    EXPECT_EQ(sheet->trend.days.back().value, 35);
    EXPECT_TRUE(sheet->rows.empty());
}

}  // namespace
}  // namespace fettle::fleet_test
