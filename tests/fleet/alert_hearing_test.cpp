// What rules are given of recordings: none that may raise an alert, by whatever rule, without its sensor
// checks. Months made by hand (made_history.h): 1 mm/s, and from a day on 6 mm/s, on a motor whose B/C limit
// is below 5 mm/s.
#include "core/fleet/alerts.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {

namespace {

class AlertHearingTest : public MadeHistory {
  protected:
    static Heard loud(const std::string& check) {
        Heard heard;
        heard.velocityMmS = 6;
        heard.failedCheck = check;
        return heard;
    }
    std::vector<AlertNow> met(const std::string& now) {
        AlertRule rule;
        rule.name = "grows";
        rule.kind = "growth";
        const auto machine = fleet_->machines().byTag("FN-01");
        const auto heard = heardMachine(*fleet_, *machine, {rule}, at(now));
        EXPECT_TRUE(heard);
        return heard ? alertsNow({rule}, *heard, at(now), false).met : std::vector<AlertNow>();
    }
};

TEST_F(AlertHearingTest, GrowthIsAlertedOnWhereTheSensorIsSound) {
    hearDays("FN-01", "2026-04-01", "2026-04-20", {});
    hearDays("FN-01", "2026-04-21", "2026-04-25", loud(""));
    const auto alerts = met("2026-04-25T07:00:00Z");
    ASSERT_EQ(alerts.size(), 1u);
    EXPECT_NEAR(alerts[0].value, 500, 1e-6) << "from 1 to 6 mm/s";
}

TEST_F(AlertHearingTest, NotOnRecordingsThatFailedACheck) {
    hearDays("FN-01", "2026-04-01", "2026-04-20", {});
    hearDays("FN-01", "2026-04-21", "2026-04-25", loud("ski_slope"));
    EXPECT_TRUE(met("2026-04-25T07:00:00Z").empty());
}

// A sensor that hung loose a week ago, and heard little, makes no growth of what it hears now.
TEST_F(AlertHearingTest, NotAgainstALevelThatFailedACheck) {
    Heard little;
    little.failedCheck = "ski_slope";
    hearDays("FN-01", "2026-04-11", "2026-04-18", little);
    hearDays("FN-01", "2026-04-19", "2026-04-25", loud(""));
    EXPECT_TRUE(met("2026-04-25T07:00:00Z").empty());
}

}  // namespace

}  // namespace fettle::fleet_test
