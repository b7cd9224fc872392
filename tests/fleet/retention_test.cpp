// Retention on a fleet file: what goes, what is held and why, and what a reader is told of what went. Each
// hold is tested on a recording that goes without it.
#include "core/fleet/retention.h"

#include "core/fleet/round_desk.h"
#include "core/fleet/sound_spectra.h"
#include "core/fleet/verification.h"
#include "core/workshop/balance_job.h"
#include "core/workshop/trial_json.h"
#include "tests/fleet/retention_site.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

// A morning in April: neither young nor the strongest of its day, nor of the baseline.
const std::string kMorning = "2026-04-14T06:00:00Z", kEvening = "2026-04-14T18:00:00Z";

class Retention : public RetentionSite {};

TEST_F(Retention, ListedFirstThenDoneAsListed) {
    const std::string before = content();
    const auto plan = planRetention(*fleet_);
    ASSERT_TRUE(plan) << plan.error().sentence();
    EXPECT_EQ(content(), before) << "a plan changes nothing";
    const auto done = apply();
    for (const KeptKind kind : kAllKept) {
        const Amount goes = plan->total(kind).goes, taken = done.taken[std::size_t(kind)];
        EXPECT_GT(goes.recordings, 100u) << keyOf(kind);
        EXPECT_EQ(taken.recordings, goes.recordings) << keyOf(kind);
        EXPECT_EQ(taken.bytes, goes.bytes) << keyOf(kind);
    }
    expectClean();
    const auto rest = planRetention(*fleet_);
    for (const KeptKind kind : kAllKept) {
        EXPECT_EQ(rest->total(kind).goes.recordings, 0u);
        EXPECT_EQ(rest->total(kind).kept().recordings, plan->total(kind).kept().recordings);
        EXPECT_EQ(rest->total(kind).kept().bytes, plan->total(kind).kept().bytes);
    }
}

TEST_F(Retention, AsShippedOneADayAndOneAWeek) {
    apply();
    EXPECT_EQ(left("2026-06-27T06:00:00Z"), "WSE") << "the last days whole";
    EXPECT_EQ(left("2026-06-10T06:00:00Z"), "-SE") << "waveforms two days, the others thirty";
    EXPECT_EQ(left("2026-06-10T12:00:00Z"), "WSE") << "the strongest of its day";
    EXPECT_EQ(left(kMorning), "---");
    EXPECT_EQ(left("2026-04-14T12:00:00Z"), "WSE");
    // 92 days before 28 June is 28 March, a Saturday: weeks up to Sunday the 22nd.
    EXPECT_EQ(left("2026-03-16T12:00:00Z"), "WSE") << "of a week the first of equals";
    EXPECT_EQ(left("2026-03-17T12:00:00Z"), "-SE");
    EXPECT_EQ(left("2026-03-23T12:00:00Z"), "WSE") << "of this week still one a day";
    EXPECT_EQ(left("2026-03-24T12:00:00Z"), "WSE");
}

TEST_F(Retention, ASecondTimeNothingIsWritten) {
    apply();
    const std::string before = content();
    const auto standing = fleet_->changesByOthers();
    auto other = FleetFile::open(fleet_->path()).value();
    const auto again = applyRetention(*other);
    ASSERT_TRUE(again);
    EXPECT_EQ(again->all().recordings, 0u);
    EXPECT_EQ(content(), before);
    EXPECT_EQ(fleet_->changesByOthers().value(), standing.value()) << "not even a note of the run";
}

TEST_F(Retention, TrendsWeightsAndMeasuresStayForEver) {
    const auto channel = fleet_->trends().channels(machineId()).value().at(0).id;
    const auto count = [&] {
        return fleet_->trends()
                   .trend(channel, Quantity::VelocityRms, at("2026-01-01T00:00:00Z"),
                          at("2026-12-01T00:00:00Z"))
                   ->size() +
               fleet_->recordings()
                   .weights(machineId(), at("2026-01-01T00:00:00Z"), at("2026-12-01T00:00:00Z"))
                   ->size();
    };
    const std::size_t before = count();
    ASSERT_EQ(before, 2 * 3 * 175u);
    keepOnly(8);
    apply();
    EXPECT_EQ(count(), before);
}

TEST_F(Retention, WhatAFindingStandsOnStays) {
    keepOnly(8);
    hearDaysAt("FN-01", "2026-04-14", "2026-04-14", {{"07:00", heard(26)}, {"08:00", heard(24)}});
    hearDaysAt("FN-01", "2026-04-21", "2026-04-21", {{"07:00", heard(19)}});
    apply();
    EXPECT_EQ(left("2026-04-14T07:00:00Z"), "WSE")
        << "the week's strongest of a fault that reached 20 decibans";
    EXPECT_EQ(left("2026-04-14T08:00:00Z"), "---");
    EXPECT_EQ(left("2026-04-21T07:00:00Z"), "---") << "19 decibans are no finding";
}

TEST_F(Retention, AnOpenRoundsWeekStays) {
    keepOnly(8);
    hearDaysAt("FN-01", "2026-04-14", "2026-04-14", {{"07:00", heard(45)}});
    const auto round = openRound(*fleet_, "2026-04-19");
    ASSERT_TRUE(round) << round.error().sentence();
    apply();
    ASSERT_NE(round->list.machines.at(0).urgency, "leave");
    for (const char* time : {"06:00", "12:00", "18:00"})
        EXPECT_EQ(left("2026-04-15T" + std::string(time) + ":00Z"), "WSE") << time;
    EXPECT_EQ(left("2026-04-12T12:00:00Z"), "---") << "the day before it";
    // Closed: what its rows show, and the newest of the point.
    ASSERT_TRUE(fleet_->rounds().close(round->entry.id, "test"));
    apply();
    EXPECT_EQ(left("2026-04-14T07:00:00Z"), "WSE");
    EXPECT_EQ(left("2026-04-19T18:00:00Z"), "WSE");
    EXPECT_EQ(left("2026-04-15T12:00:00Z"), "---");
}

// A row on leave stands on the week's examinations; its waveforms are looked at where the sample asks for it.
TEST_F(Retention, OfMachinesOnLeaveAnOpenRoundHoldsNoWaveformsButOfTheSample) {
    keepOnly(8);
    for (int i = 1; i <= 18; ++i) {
        const std::string tag = "LV-" + std::to_string(i);
        std::string text = made::motorText();
        text.replace(text.find("\"T-1\""), 5, "\"" + tag + "\"");
        ASSERT_TRUE(fleet_->machines().put(text, tag));
        hearDaysAt(tag, "2026-04-13", "2026-04-19", {{"06:00", heard(-3)}, {"12:00", heard(1)}});
        hearDays(tag, "2026-06-28", "2026-06-28", {});
    }
    const auto round = openRound(*fleet_, "2026-04-19");
    ASSERT_TRUE(round) << round.error().sentence();
    apply();
    std::map<bool, int> seen;
    for (const RoundMachine& machine : round->list.machines) {
        if (machine.tag.rfind("LV-", 0) != 0) continue;
        ASSERT_EQ(machine.urgency, "leave") << machine.tag;
        ++seen[machine.inSample];
        for (const char* time : {"2026-04-14T06:00:00Z", "2026-04-16T06:00:00Z"})
            EXPECT_EQ(left(time, machine.tag), machine.inSample ? "WSE" : "-SE") << machine.tag << time;
    }
    EXPECT_GE(seen[false], 3) << "at most 15 of the leave machines are drawn";
    EXPECT_GE(seen[true], 10);
    expectClean();
}

TEST_F(Retention, TheBaselineStays) {
    const auto machine = fleet_->machines().describedAt("FN-01").value();
    const auto channel = fleet_->trends().channels(machineId()).value().at(0);
    const auto band = [&] {
        return soundBand(*fleet_, "FN-01", *machine, channel, WaterfallKind::Velocity, 1484.0 / 60).value();
    };
    const auto before = band();
    ASSERT_EQ(before.why, "");
    ASSERT_GT(before.band.spectra, 100u);
    apply();
    EXPECT_EQ(left("2026-01-14T06:00:00Z"), "-S-") << "all spectra";
    EXPECT_EQ(left("2026-01-14T12:00:00Z"), "WSE") << "one waveform a day";
    EXPECT_EQ(left("2026-01-15T12:00:00Z"), "WSE");
    EXPECT_EQ(left("2026-02-24T06:00:00Z"), "---") << "after its 42 days";
    const auto after = band();
    EXPECT_EQ(after.band.spectra, before.band.spectra) << "the overlay stands on the same spectra";
}

TEST_F(Retention, ATrialsSpansStay) {
    keepOnly(8);
    Trial trial;
    trial.machine = "FN-01", trial.name = "a mass", trial.startedBy = "test";
    trial.startedAt = at("2026-04-13T00:00:00Z");
    trial.beforeFrom = at("2026-04-13T00:00:00Z");
    trial.changeFrom = at("2026-04-15T00:00:00Z"), trial.changeUntil = at("2026-04-15T03:00:00Z");
    trial.afterUntil = at("2026-04-17T00:00:00Z");
    ASSERT_TRUE(fleet_->workshop().put({0, "FN-01", "trial", "a mass", {}, {}, {}, trialAsText(trial)}));
    apply();
    EXPECT_EQ(left(kMorning), "WSE");
    EXPECT_EQ(left("2026-04-16T18:00:00Z"), "WSE");
    EXPECT_EQ(left("2026-04-12T18:00:00Z"), "---");
    EXPECT_EQ(left("2026-04-17T06:00:00Z"), "---");
}

TEST_F(Retention, ABalancingsRecordingsStay) {
    keepOnly(8);
    BalanceJob job = proposedJob(*fleet_->machines().describedAt("FN-01").value(), "driver");
    job.machine = "FN-01", job.name = "rotor";
    job.initial.recording = idAt(kMorning);
    WorkshopEntry entry{0, "FN-01", "balance", "rotor", at("2026-06-05T09:00:00Z"), {}, {}, balanceJson(job)};
    ASSERT_TRUE(fleet_->workshop().put(entry));
    apply();
    EXPECT_EQ(left(kMorning), "WSE") << "named in it";
    EXPECT_EQ(left("2026-06-05T06:00:00Z"), "WSE") << "while it was in work";
    EXPECT_EQ(left(kEvening), "---");
    EXPECT_EQ(left("2026-06-03T18:00:00Z"), "---");
}

TEST_F(Retention, WhatAJobIsVerifiedByStaysButForWaveforms) {
    keepOnly(8);
    const Job done = job("FN-01", "2026-04-13T08:00:00Z", "unbalance @ driver");
    tell("FN-01", "2026-04-20T07:00:00Z", "repair", "", "cleaned");
    const auto before = verifyJob(*fleet_, done);
    ASSERT_TRUE(before && before->verdict) << before->words();
    apply();
    EXPECT_EQ(left("2026-04-15T06:00:00Z"), "-SE") << "of the week before";
    EXPECT_EQ(left("2026-04-21T18:00:00Z"), "-SE") << "of the days after";
    EXPECT_EQ(left("2026-04-05T06:00:00Z"), "---");
    const auto after = verifyJob(*fleet_, done);
    ASSERT_TRUE(after) << after.error().sentence();
    EXPECT_EQ(after->words(), before->words());
}

TEST_F(Retention, BesideAnEventTheLastBeforeAndTheFirstAfterStay) {
    keepOnly(8);
    tell("FN-01", "2026-04-14T09:00:00Z", "inspection");
    tell("FN-01", "2026-04-28T09:00:00Z", "note", "", "nobody was there");
    ASSERT_TRUE(fleet_->log().addFeedback(
        {0, "FN-01", "unbalance", "driver", "confirmed", "", "dirt", "test", at("2026-05-05T15:00:00Z")}));
    apply();
    EXPECT_EQ(left(kMorning), "WSE");
    EXPECT_EQ(left("2026-04-14T12:00:00Z"), "WSE");
    EXPECT_EQ(left(kEvening), "---");
    EXPECT_EQ(left("2026-04-28T06:00:00Z"), "---");
    EXPECT_EQ(left("2026-05-05T12:00:00Z"), "WSE");
    EXPECT_EQ(left("2026-05-05T18:00:00Z"), "WSE");
}

// Told when its neighbours were thinned already: what is left next to it stays from then on.
TEST_F(Retention, BesideWhatIsToldLateWhatIsLeftStays) {
    apply();
    ASSERT_EQ(left("2026-04-14T06:00:00Z"), "---");
    tell("FN-01", "2026-04-14T09:00:00Z", "inspection");
    keepOnly(8);
    apply();
    EXPECT_EQ(left("2026-04-13T12:00:00Z"), "WSE") << "the strongest of the day before";
    EXPECT_EQ(left("2026-04-14T12:00:00Z"), "WSE");
    EXPECT_EQ(left("2026-04-12T12:00:00Z"), "---");
    EXPECT_EQ(left("2026-04-15T12:00:00Z"), "---");
}

TEST_F(Retention, WhatAnswersARequestStays) {
    keepOnly(8);
    Request request;
    request.machine = "FN-01", request.point = "P", request.what = "longer", request.why = "to see";
    const auto id = fleet_->requests().add(request).value();
    ASSERT_TRUE(fleet_->requests().answer(id, at("2026-04-14T07:00:00Z"), idAt(kMorning), "longer"));
    apply();
    EXPECT_EQ(left(kMorning), "WSE");
    EXPECT_EQ(left(kEvening), "---");
}

TEST_F(Retention, NothingWithARefusalThatNobodyAnswered) {
    keepOnly(8);
    const std::string file = fleet_->recordings().entry(idAt(kMorning))->file;
    Refusal refusal;
    refusal.path = file, refusal.place = "byte 44", refusal.rule = "breaks off", refusal.kind = "refused";
    ASSERT_TRUE(fleet_->log().putRefusal(refusal));
    apply();
    EXPECT_EQ(left(kMorning), "WSE");
    EXPECT_EQ(left(kEvening), "---");
    ASSERT_TRUE(fleet_->log().answerRefusal(fleet_->log().refusals()->at(0).id));
    apply();
    EXPECT_EQ(left(kMorning), "---") << "answered, it ages as others do";
}

// Somebody notes an inspection while it runs: what was to go next to it stays.
TEST_F(Retention, WhatIsDoneMeanwhileProtects) {
    keepOnly(8);
    auto desk = FleetFile::open(fleet_->path()).value();
    RetentionOptions options;
    options.batch = 10;
    int batches = 0;
    options.afterBatch = [&] {
        if (++batches != 5) return;
        ASSERT_TRUE(desk->log().addEvent(
            {0, "FN-01", at("2026-04-14T07:00:00Z"), "inspection", "", "seen", "somebody"}));
    };
    const auto done = apply(options);
    EXPECT_EQ(done.lookedAgain, 1u);
    EXPECT_EQ(left(kMorning), "WSE");
    EXPECT_EQ(left(kEvening), "---");
    expectClean();
}

TEST_F(Retention, StoppedItGoesOnAndEndsAsInOneGo) {
    const auto plan = planRetention(*fleet_);
    RetentionOptions options;
    options.batch = 16;
    options.afterBatch = [&] { options.cancel.cancel(); };
    const auto first = apply(options);
    EXPECT_TRUE(first.cancelled);
    EXPECT_LE(first.all().recordings, 3 * 16u);
    expectClean();
    const auto second = apply();
    EXPECT_EQ(first.all().recordings + second.all().recordings, plan->goes().recordings);
    EXPECT_EQ(planRetention(*fleet_)->goes().recordings, 0u);
}

TEST_F(Retention, AListSaysHowFarItIsAndStops) {
    std::vector<std::string> said;
    const auto note = [&](std::size_t done, std::size_t total, std::string_view what) {
        EXPECT_LE(done, total);
        said.emplace_back(what);
    };
    ASSERT_TRUE(planRetention(*fleet_, {}, note));
    EXPECT_THAT(said, testing::ElementsAre("waveforms", "examinations", "FN-01", "FN-02"));
    for (const std::size_t after : {0u, 1u, 2u, 3u}) {
        const CancelToken stop;
        std::size_t heard = 0;
        const auto listed = planRetention(
            *fleet_, {},
            [&](std::size_t, std::size_t, std::string_view) {
                if (heard++ == after) stop.cancel();
            },
            stop);
        if (after == 3) continue;  // the last machine is carried to its end
        ASSERT_FALSE(listed) << after;
        EXPECT_EQ(listed.error().kind, ErrorKind::Cancelled);
        EXPECT_LE(heard, after + 2);
    }
}

TEST_F(Retention, WhatWentIsToldWithItsDay) {
    apply();
    const std::int64_t id = idAt(kMorning);
    const auto entry = fleet_->recordings().entry(id).value();
    EXPECT_FALSE(entry.hasWaveform);
    ASSERT_TRUE(entry.thinnedAt);
    const std::string today = formatDate(*entry.thinnedAt);
    for (const auto& said : {fleet_->recordings().recording(id).error().sentence(),
                             fleet_->recordings().examinationJson(id).error().sentence()})
        EXPECT_THAT(said, HasSubstr("was thinned by retention on " + today));
    EXPECT_FALSE(fleet_->recordings().entry(idAt("2026-06-28T06:00:00Z"))->thinnedAt);
    expectClean();
}

TEST_F(Retention, AnOldWeekAskedAgainSaysThatItWasThinned) {
    EXPECT_THAT(listNow(*fleet_, "2026-04-19")->warnings, IsEmpty());
    apply();
    const auto list = listNow(*fleet_, "2026-04-19");
    ASSERT_TRUE(list) << list.error().sentence();
    ASSERT_EQ(list->warnings.size(), 1u);
    EXPECT_THAT(list->warnings[0], HasSubstr("14 recordings of this week were thinned"));
    EXPECT_THAT(listNow(*fleet_)->warnings, IsEmpty());
}

TEST_F(Retention, AYearOfAMachineIsEstimatedByItsRate) {
    const auto plan = planRetention(*fleet_);
    const YearEstimate& year = plan->machines.at(0).year;
    EXPECT_NEAR(year.recordings, 3 * 365, 1);
    // Two days of three, 90 of one, 273 at one in seven; all of equal size.
    const KindPlan waveforms = plan->machines[0].kinds[std::size_t(KeptKind::Waveform)];
    const double each = double(waveforms.kept().bytes + waveforms.goes.bytes) /
                        double(waveforms.kept().recordings + waveforms.goes.recordings);
    EXPECT_NEAR(year.bytes[std::size_t(KeptKind::Waveform)], (2 * 3 + 90 + 273.0 / 7) * each,
                0.01 * each * 135);
    // Thirty days of three, then one.
    EXPECT_NEAR(year.bytes[std::size_t(KeptKind::Spectra)], (30 * 3 + 335) * 800.0, 800);
}

TEST_F(Retention, WrongRulesAreRefusedAndNothingGoes) {
    RetentionRules rules;
    rules.rule(KeptKind::Examination).allDays = 2;
    EXPECT_FALSE(fleet_->retention().setRules(rules));
    EXPECT_FALSE(planRetention(*fleet_, rules));
    EXPECT_EQ(fleet_->retention().rules().value(), RetentionRules());
}

}  // namespace
}  // namespace fettle::fleet_test
