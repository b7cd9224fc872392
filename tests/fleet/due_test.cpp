// What comes before the list. Rules: the project's own; common practice, no source.
#include "core/fleet/due.h"

#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

class Due : public SmallSite {
  protected:
    std::vector<DueItem> at(const std::string& until) {
        const auto list = listNow(*fleet_, until);
        EXPECT_TRUE(list);
        auto due = dueOf(*fleet_, list.value_or(RoundList{}));
        EXPECT_TRUE(due);
        return due.value_or(std::vector<DueItem>{});
    }
    void put(const std::string& state, const std::string& runUntil,
             std::optional<std::int64_t> replaces = {}) {
        Job job;
        job.machine = "A-RACE";
        job.findings = {"bearing_inner_race @ driver DE"};
        job.state = state;
        job.runUntil = runUntil;
        job.replaces = replaces;
        ASSERT_TRUE(fleet_->log().putJob(job));
    }
};

TEST_F(Due, ADeferredEntryComesBackOnItsDayUnlessDecidedAnew) {
    const std::int64_t id = opened().entry.id;
    Decision defer;
    defer.machine = "A-RACE";
    defer.kind = DecisionKind::Defer;
    defer.deferTo = "2026-06-01";
    defer.reason = "stop in June";
    ASSERT_TRUE(decide(*fleet_, id, defer));
    EXPECT_THAT(at("2026-05-31"), IsEmpty());
    const auto due = at("2026-06-01");
    ASSERT_EQ(due.size(), 1u);
    EXPECT_EQ(due[0].kind, "deferred");
    EXPECT_THAT(due[0].words, HasSubstr("stop in June"));
    Decision accept;
    accept.machine = "A-RACE";
    ASSERT_TRUE(decide(*fleet_, id, accept));
    EXPECT_THAT(at("2026-06-01"), IsEmpty());
}

TEST_F(Due, JobsPastTheirDayAndJobsToVerify) {
    put("issued", "2026-05-20");
    EXPECT_THAT(at("2026-05-20"), IsEmpty());
    ASSERT_EQ(at("2026-05-24").size(), 1u);
    EXPECT_EQ(at("2026-05-24")[0].kind, "overdue");
    put("done", "2026-05-18", 1);  // replaces the first
    const auto due = at("2026-05-24");
    ASSERT_EQ(due.size(), 1u);
    EXPECT_EQ(due[0].kind, "verify");
    put("closed", "2026-05-18", 2);
    EXPECT_THAT(at("2026-05-24"), IsEmpty());
}

}  // namespace
}  // namespace fettle::fleet_test
