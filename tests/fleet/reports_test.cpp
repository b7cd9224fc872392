// The same report of one day stands once; the day is the site's. New York is UTC-4 in May (IANA table).
#include "core/fleet/reports.h"

#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

class Reports : public SmallSite {
  protected:
    bool isNew(const std::string& time) {
        const Feedback report{0,  "A-RACE", "bearing_inner_race", "driver DE", "confirmed", "",
                              "", "tests",  intake_test::at(time)};
        const auto kept = keepReport(*fleet_, report, intake_test::kNow);
        EXPECT_TRUE(kept) << (kept ? "" : kept.error().sentence());
        return kept && !kept->already;
    }
};

TEST_F(Reports, AReportOfTheSitesDayStandsOnce) {
    SiteSettings site = fleet_->site().value();
    site.timeZone = "America/New_York";
    ASSERT_TRUE(fleet_->setSite(site));
    EXPECT_TRUE(isNew("2026-05-12T22:00:00Z"));
    EXPECT_FALSE(isNew("2026-05-13T02:00:00Z")) << "the same evening there";
    EXPECT_TRUE(isNew("2026-05-13T05:00:00Z")) << "after midnight there";
    EXPECT_EQ(fleet_->log().feedback()->size(), 2u);
}

}  // namespace
}  // namespace fettle::fleet_test
