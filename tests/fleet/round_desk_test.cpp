// The round from the fleet file: put together, opened, decided, closed. Truth: what the simulator put into
// the recordings; rules: the project's own (each listed machine a decision, each unseen one a reason, leave
// as a block after its sample).
#include "core/fleet/round_desk.h"

#include <set>

#include "core/exchange/round_json.h"
#include "core/fleet/machine_desk.h"
#include "core/fleet/machine_week.h"
#include "core/fleet/site_calendar.h"
#include "core/store/day.h"
#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

class RoundDesk : public SmallSite {
  protected:
    void decideAll(const KeptRound& kept) {
        for (const RoundMachine& m : kept.list.machines) {
            Status done;
            if (m.urgency == "unseen")
                done = answerUnseen(*fleet_, kept.entry.id, m.tag, "", "test");
            else if (m.urgency != "leave")
                done = decide(*fleet_, kept.entry.id, accept(m.tag));
            else if (m.inSample)
                done = markOpened(*fleet_, kept.entry.id, m.tag);
            EXPECT_TRUE(done) << m.tag;
        }
    }
    static Decision accept(const std::string& tag) {
        Decision decision;
        decision.machine = tag;
        decision.by = "test";
        return decision;
    }
};

TEST_F(RoundDesk, EveryMachineIsOnTheListWithWhatTheSimulatorPutIn) {
    const auto list = listNow(*fleet_, kUntil);
    ASSERT_TRUE(list) << list.error().sentence();
    EXPECT_EQ(list->from, "2026-05-04");
    EXPECT_EQ(list->until, kUntil);
    ASSERT_EQ(list->machines.size(), kTags.size());
    const RoundMachine& race = machineIn(*list, "A-RACE");
    EXPECT_EQ(race.listedBy, ListedBy::Evidence);
    ASSERT_FALSE(race.findings.empty());
    EXPECT_EQ(race.findings[0].finding.fault, "bearing_inner_race");
    EXPECT_EQ(race.findings[0].finding.at, "driver DE");
    EXPECT_EQ(machineIn(*list, "B-SOUND").urgency, "leave");
    const RoundMachine& shake = machineIn(*list, "C-SHAKE");
    EXPECT_EQ(shake.listedBy, ListedBy::Zone);
    EXPECT_EQ(shake.zone, "D");
    EXPECT_EQ(shake.urgency, "act");
    EXPECT_EQ(machineIn(*list, "D-MUTE").unseenReason, "silent");
    EXPECT_EQ(machineIn(*list, "E-FLAT").unseenReason, "low_battery");
    EXPECT_THAT(machineIn(*list, "E-FLAT").unseenWords, HasSubstr("2026-04-07"));
}

TEST_F(RoundDesk, LooksAtTheWeekAskedForAndWritesNothing) {
    const auto april = listNow(*fleet_, "2026-04-12");
    ASSERT_TRUE(april) << april.error().sentence();
    EXPECT_EQ(machineIn(*april, "E-FLAT").unseenReason, "");
    EXPECT_EQ(machineIn(*april, "A-RACE").unseenReason, "silent");
    const auto newest = listNow(*fleet_);
    ASSERT_TRUE(newest);
    EXPECT_EQ(newest->until, "2026-05-07");
    EXPECT_THAT(fleet_->rounds().all().value(), IsEmpty());
    EXPECT_FALSE(listNow(*fleet_, "next week"));
}

TEST_F(RoundDesk, AWeekEndsWhenTheSitesDayDoes) {
    SiteSettings site = fleet_->site().value();
    site.timeZone = "Pacific/Auckland";  // twelve hours ahead: 06:20 UTC on the 7th is the evening there
    ASSERT_TRUE(fleet_->setSite(site));
    const auto period = periodTo(site, "2026-05-07");
    ASSERT_TRUE(period);
    EXPECT_EQ(formatUtc(period->end), "2026-05-07T12:00:00Z");
    EXPECT_EQ(formatUtc(period->from), "2026-04-30T12:00:00Z");
}

TEST_F(RoundDesk, AKeptRoundIsTheListItWasOpenedWith) {
    const KeptRound kept = opened();
    const auto again = keptRound(*fleet_, kept.entry.id);
    ASSERT_TRUE(again);
    EXPECT_EQ(toJson(again->list).dump(), toJson(kept.list).dump());
    const auto now = listNow(*fleet_, kUntil);
    ASSERT_TRUE(now);
    for (const RoundMachine& m : now->machines) {
        EXPECT_EQ(m.urgency, machineIn(kept.list, m.tag).urgency);
        EXPECT_EQ(m.weightDban, machineIn(kept.list, m.tag).weightDban);
    }
    const auto current = currentRound(*fleet_);
    ASSERT_TRUE(current && *current);
    EXPECT_EQ((*current)->entry.id, kept.entry.id);
    EXPECT_FALSE(openRound(*fleet_, kUntil)) << "a second round while one is open";
}

TEST_F(RoundDesk, LaterRecordingsAndDescriptionsDoNotChangeAKeptRound) {
    const KeptRound kept = opened();
    ASSERT_TRUE(fleet_->machines().setByHand("B-SOUND", true, "the operators ask"));
    EXPECT_EQ(toJson(keptRound(*fleet_, kept.entry.id)->list).dump(), toJson(kept.list).dump());
    EXPECT_EQ(machineIn(listNow(*fleet_, kUntil).value(), "B-SOUND").listedBy, ListedBy::Hand);
}

TEST_F(RoundDesk, ClosesWhenEverythingIsAnsweredAndNotBefore) {
    const KeptRound kept = opened();
    const std::int64_t id = kept.entry.id;
    const auto early = closeRound(*fleet_, id, "test");
    ASSERT_FALSE(early);
    EXPECT_THAT(early.error().sentence(), HasSubstr("A-RACE"));
    EXPECT_THAT(early.error().sentence(), HasSubstr("D-MUTE"));
    EXPECT_FALSE(acceptLeave(*fleet_, id, "test")) << "before the sample was opened";
    decideAll(kept);
    EXPECT_FALSE(closeRound(*fleet_, id, "test")) << "leave is not accepted";
    ASSERT_TRUE(acceptLeave(*fleet_, id, "test"));
    EXPECT_THAT(keptRound(*fleet_, id)->progress.missing, IsEmpty());
    ASSERT_TRUE(closeRound(*fleet_, id, "test"));
    const auto closed = keptRound(*fleet_, id);
    ASSERT_TRUE(closed && closed->entry.closedAt);
    EXPECT_EQ(closed->entry.closedBy, "test");
    for (const Status& late : {decide(*fleet_, id, accept("A-RACE")), closeRound(*fleet_, id, "test"),
                               acceptLeave(*fleet_, id, "test"), markOpened(*fleet_, id, "B-SOUND"),
                               answerUnseen(*fleet_, id, "D-MUTE", "", "test")}) {
        ASSERT_FALSE(late);
        EXPECT_THAT(late.error().sentence(), HasSubstr("closed"));
    }
}

TEST_F(RoundDesk, TakesOnlyTheAnswersARoundAsksFor) {
    const std::int64_t id = opened().entry.id;
    EXPECT_FALSE(decide(*fleet_, id, accept("B-SOUND"))) << "on leave";
    EXPECT_FALSE(decide(*fleet_, id, accept("D-MUTE"))) << "unseen";
    EXPECT_FALSE(decide(*fleet_, id, accept("NO-SUCH")));
    EXPECT_FALSE(answerUnseen(*fleet_, id, "A-RACE", "seen", "test"));
    EXPECT_FALSE(markOpened(*fleet_, id, "A-RACE"));
    EXPECT_FALSE(decide(*fleet_, id + 1, accept("A-RACE")));
    Decision defer = accept("A-RACE");
    defer.kind = DecisionKind::Defer;
    defer.deferTo = "2026-06-01";
    EXPECT_FALSE(decide(*fleet_, id, defer)) << "without a reason";
    defer.reason = "stop in June";
    defer.deferTo = kUntil;
    EXPECT_FALSE(decide(*fleet_, id, defer)) << "to a day of the round itself";
    defer.deferTo = "2026-06-31";
    EXPECT_FALSE(decide(*fleet_, id, defer)) << "to a day that is none";
    defer.deferTo = "2026-06-01";
    EXPECT_TRUE(decide(*fleet_, id, defer));
    const auto state = keptRound(*fleet_, id)->state;
    ASSERT_EQ(state.decisions.size(), 1u);
    EXPECT_EQ(state.decisions[0].deferTo, "2026-06-01");
    EXPECT_NE(state.decisions[0].at, Instant{});
}

TEST_F(RoundDesk, TheNextRoundTellsWorkDoneSinceTheLast) {
    const KeptRound kept = opened();
    decideAll(kept);
    ASSERT_TRUE(acceptLeave(*fleet_, kept.entry.id, "test"));
    ASSERT_TRUE(closeRound(*fleet_, kept.entry.id, "test"));
    ASSERT_TRUE(fleet_->log().addEvent(
        {0, "A-RACE", intake_test::at("2026-05-12T08:00:00Z"), "repair", "driver DE", "new bearing", "t"}));
    const auto next = listNow(*fleet_, "2026-05-17");
    ASSERT_TRUE(next);
    EXPECT_THAT(machineIn(*next, "A-RACE").changed, HasSubstr("epaired on 2026-05-12"));
}

TEST_F(RoundDesk, ARemovedMachineIsNotLookedFor) {
    ASSERT_TRUE(fleet_->machines().remove("D-MUTE", "2026-05-01", "scrapped"));
    EXPECT_EQ(listNow(*fleet_, kUntil)->machines.size(), kTags.size() - 1);
    EXPECT_EQ(listNow(*fleet_, "2026-04-12")->machines.size(), kTags.size()) << "it was there in April";
}

TEST_F(RoundDesk, TwoRoundsDrawTheirSamplesFromFreshSeeds) {
    std::set<std::uint64_t> seeds{opened().entry.sampleSeed};
    const auto kept = currentRound(*fleet_).value();
    decideAll(*kept);
    ASSERT_TRUE(acceptLeave(*fleet_, kept->entry.id, "test"));
    ASSERT_TRUE(closeRound(*fleet_, kept->entry.id, "test"));
    const auto next = openRound(*fleet_, "2026-05-17");
    ASSERT_TRUE(next) << next.error().sentence();
    seeds.insert(next->entry.sampleSeed);
    EXPECT_EQ(seeds.size(), 2u);
}

TEST_F(RoundDesk, PromisesTheBoundAndCountsConfirmedReports) {
    const RoundList list = listNow(*fleet_, kUntil).value();
    const auto before = listPromise(*fleet_, list);
    ASSERT_TRUE(before);
    EXPECT_THAT(*before, HasSubstr("of the 1 listed on evidence, at most 1 in 10 on average over rounds"));
    EXPECT_THAT(*before, testing::Not(HasSubstr("confirmed")));
    for (const char* outcome : {"confirmed", "confirmed", "not_found", "not_opened"})
        ASSERT_TRUE(fleet_->log().addFeedback({0, "A-RACE", "bearing_inner_race", "driver DE", outcome, "",
                                               "", "t", intake_test::at("2026-05-12T08:00:00Z")}));
    EXPECT_THAT(listPromise(*fleet_, list).value(), HasSubstr("2 of 3 confirmed here so far"));
}

TEST_F(RoundDesk, StopsWhenAskedTo) {
    const CancelToken cancel;
    cancel.cancel();
    const auto list = listNow(*fleet_, kUntil, {}, cancel);
    ASSERT_FALSE(list);
    EXPECT_EQ(list.error().kind, ErrorKind::Cancelled);
}

TEST_F(RoundDesk, AFleetWithoutRecordingsHasAListOfUnseenMachines) {
    auto empty = FleetFile::create(folder_ / "empty.fettle", {"Empty", "UTC", 0.1});
    ASSERT_TRUE(empty);
    ASSERT_TRUE((*empty)->machines().put(description("X"), "x.json"));
    const auto list = listNow(**empty);
    ASSERT_TRUE(list) << list.error().sentence();
    ASSERT_EQ(list->machines.size(), 1u);
    EXPECT_EQ(list->machines[0].urgency, "unseen");
}

TEST_F(RoundDesk, ARoundNeedsAMachine) {
    auto empty = FleetFile::create(folder_ / "empty.fettle", {"Empty", "UTC", 0.1});
    ASSERT_TRUE(empty);
    const auto kept = openRound(**empty, kUntil);
    ASSERT_FALSE(kept);
    EXPECT_THAT(kept.error().sentence(), HasSubstr("no machine is registered"));
    EXPECT_THAT((*empty)->rounds().all().value(), IsEmpty());
}

TEST_F(RoundDesk, AWeekFarAheadIsListedNotOpened) {
    const auto kept = openRound(*fleet_, "2099-01-01");
    ASSERT_FALSE(kept);
    EXPECT_THAT(kept.error().sentence(), HasSubstr("round to 2099-01-01"));
    EXPECT_THAT(kept.error().sentence(), HasSubstr("more than 7 days after"));
    EXPECT_THAT(fleet_->rounds().all().value(), IsEmpty());
    EXPECT_TRUE(listNow(*fleet_, "2099-01-01"));
    EXPECT_FALSE(openRound(*fleet_, "in May"));
    const std::string today = dateIn("UTC", nowUtc()).value();
    EXPECT_FALSE(openRound(*fleet_, datePlus(today, 9).value()));
    EXPECT_TRUE(openRound(*fleet_, datePlus(today, 6).value())) << "the week that runs, whatever the hour";
}

TEST_F(RoundDesk, AWeekIsKeptOnce) {
    const KeptRound kept = opened();
    decideAll(kept);
    ASSERT_TRUE(acceptLeave(*fleet_, kept.entry.id, "test"));
    ASSERT_TRUE(closeRound(*fleet_, kept.entry.id, "test"));
    const auto again = openRound(*fleet_, kUntil);
    ASSERT_FALSE(again);
    EXPECT_THAT(again.error().sentence(), HasSubstr("was kept already"));
    EXPECT_TRUE(openRound(*fleet_, "2026-05-17"));
}

// A sensor that sent one value while the machine stood does not hide a good recording of it running; where
// nothing turns the check that failed is named.
TEST_F(RoundDesk, AFlatRecordingAtStandstillDoesNotHideARunningOne) {
    const std::string flat =
        writeSoundFile({std::vector<double>(6400, 0.25), std::vector<double>(6400, 0.25)}, 6400,
                       SoundFormat::WavPcm16)
            .value();
    intake_test::Said said;
    ImportOptions options;
    options.now = intake_test::kNow;
    for (const char* tag : {"B-SOUND", "D-MUTE"})
        for (int day = 4; day <= 10; ++day) {
            said.machine = tag;
            said.time = "2026-05-" + std::string(day < 10 ? "0" : "") + std::to_string(day) + "T08:00:00Z";
            intake_test::send(folder_ / "flat", tag + std::to_string(day), flat, said);
        }
    const auto report = import(*fleet_, RealFileSystem(), {folder_ / "flat"}, options);
    ASSERT_TRUE(report && report->refusals.empty());
    const auto list = listNow(*fleet_, kUntil);
    ASSERT_TRUE(list) << list.error().sentence();
    EXPECT_EQ(machineIn(*list, "B-SOUND").urgency, "leave");
    EXPECT_EQ(machineIn(*list, "D-MUTE").unseenReason, "poor_data");
    EXPECT_THAT(machineIn(*list, "D-MUTE").unseenWords, HasSubstr("sensor check: flat on x"));
}

TEST_F(RoundDesk, TheGoverningLevelIsThatOfTheWorstChannel) {
    const auto machine = fleet_->machines().byTag("C-SHAKE").value();
    const auto described = fleet_->machines().describedAt("C-SHAKE").value();
    const auto period = periodTo(fleet_->site().value(), kUntil).value();
    const auto governing = governingOf(*fleet_, machine, *described, period);
    ASSERT_TRUE(governing && governing->level && governing->limits);
    EXPECT_EQ(governing->title, "P x velocity r.m.s.") << "unbalance shakes radially";
    EXPECT_EQ(governing->zone, "D");
    EXPECT_EQ(governing->days.size(), 3u);
    const auto channels = fleet_->trends().channels(machine.id).value();
    for (const ChannelEntry& channel : channels) {
        const auto trend =
            fleet_->trends().trend(channel.id, Quantity::VelocityRms, period.from, period.last()).value();
        for (const TrendPoint& p : trend)
            EXPECT_LE(p.value, *governing->level * 1.2) << channel.name;
    }
}

}  // namespace
}  // namespace fettle::fleet_test
