// Which recordings stay: the rule of ages and the strongest of a day and a week, worked out on paper.
#include <gmock/gmock.h>

#include "core/fleet/retention_choice.h"
#include "core/trend/daily.h"

namespace fettle {
namespace {

using testing::Each;
using testing::ElementsAre;

const Instant kMonday = parseUtc("2026-05-04T00:00:00Z").value();  // a Monday
const Instant kLongAfter = parseUtc("2030-01-01T00:00:00Z").value();

// One recording an hour or as told, with all three kinds.
class RetentionChoice : public testing::Test {
  protected:
    std::int64_t add(Instant time, double dban, const std::string& point = "P") {
        KeptRecording one;
        one.id = std::int64_t(recordings_.size()) + 1;
        one.time = time;
        one.point = point;
        one.running = "running";
        one.bytes = {1000, 100, 10};
        one.evidenceDban = dban;
        recordings_.push_back(one);
        return one.id;
    }
    // `aDay` of each day; the last but one of the day is the strongest.
    void addDays(int count, int aDay, const std::string& point = "P") {
        for (int day = 0; day < count; ++day)
            for (int n = 0; n < aDay; ++n)
                add(kMonday + std::chrono::hours(24 * day + n), n == aDay - 2 ? 15 : 5, point);
    }
    std::vector<Choice> choose(Instant now = kLongAfter) const {
        return chooseKept(aged(now), rules_, holds_);
    }
    Aged aged(Instant now = kLongAfter) const {
        Aged all;
        all.recordings = recordings_, all.now = now;
        for (const KeptRecording& one : recordings_)
            all.clocks.push_back(one.time);
        return all;
    }
    // Days since the first Monday with how many of the kind stay.
    std::map<int, int> keptByDay(KeptKind kind) {
        const auto choices = choose();
        std::map<int, int> kept;
        for (std::size_t i = 0; i < recordings_.size(); ++i)
            kept[dayOf(recordings_[i].time) - dayOf(kMonday)] += choices[i][std::size_t(kind)].has_value();
        return kept;
    }

    std::vector<KeptRecording> recordings_;
    RetentionRules rules_;
    Holds holds_;
};

TEST_F(RetentionChoice, AllThenOneADayThenOneAWeek) {
    rules_.rule(KeptKind::Waveform) = {2, 7, {}};
    addDays(28, 4);  // the newest is day 27, a Sunday
    const auto kept = keptByDay(KeptKind::Waveform);
    for (int day = 25; day <= 27; ++day)
        EXPECT_EQ(kept.at(day), 4) << "two whole days and the one begun";
    // A week is thinned once its Sunday is older than 2 + 7 days: day 13 is 14 days old, day 20 is 7.
    for (int day = 14; day < 25; ++day)
        EXPECT_EQ(kept.at(day), 1) << day;
    for (int week = 0; week < 2; ++week) {
        int sum = 0;
        for (int day = 7 * week; day < 7 * week + 7; ++day)
            sum += kept.at(day);
        EXPECT_EQ(sum, 1) << "week " << week;
    }
}

TEST_F(RetentionChoice, SpectraAndExaminationsAsShipped) {
    addDays(60, 3);
    for (const KeptKind kind : {KeptKind::Spectra, KeptKind::Examination}) {
        const auto kept = keptByDay(kind);
        for (const auto& [day, count] : kept)
            EXPECT_EQ(count, day >= 59 - 30 ? 3 : 1) << day;
    }
}

TEST_F(RetentionChoice, TheStrongestOfADayStaysAndWholly) {
    addDays(40, 5);
    const auto choices = choose();
    for (std::size_t i = 0; i < recordings_.size(); ++i) {
        if (dayOf(recordings_[i].time) - dayOf(kMonday) > 5) continue;
        const bool strongest = i % 5 == 3;
        EXPECT_EQ(choices[i][0].has_value(), strongest) << i;
        EXPECT_EQ(choices[i][1].has_value(), strongest) << i;
        EXPECT_EQ(choices[i][2].has_value(), strongest) << i;
    }
}

TEST_F(RetentionChoice, AmongEquallyStrongTheLevelThenTheEarliestDecides) {
    KeptRecording a, b;
    a.id = 2, b.id = 1;
    a.time = kMonday, b.time = kMonday + std::chrono::hours(1);
    EXPECT_TRUE(isStronger(a, b));
    b.levelMmS = 0.1;
    EXPECT_TRUE(isStronger(b, a)) << "any level before none";
    a.evidenceDban = -30;
    EXPECT_TRUE(isStronger(a, b)) << "what was weighed before what was not";
}

TEST_F(RetentionChoice, ASilentPointKeepsItsLastDays) {
    addDays(30, 4, "DEAD");
    for (int day = 0; day < 400; ++day)
        add(kMonday + std::chrono::hours(24 * day), 0, "ALIVE");
    const auto choices = choose();
    int dead = 0;
    for (std::size_t i = 0; i < recordings_.size(); ++i)
        if (recordings_[i].point == "DEAD" && dayOf(recordings_[i].time) - dayOf(kMonday) >= 27)
            dead += choices[i][0] == KeptFor::Young;
    EXPECT_EQ(dead, 12) << "three days of four, though the others went on for a year";
}

TEST_F(RetentionChoice, ARecordingDatedAheadAgesNothing) {
    addDays(2, 4);
    const Instant now = kMonday + std::chrono::hours(48);
    add(now + std::chrono::hours(24 * 3650), 0);
    for (const Choice& choice : choose(now))
        EXPECT_THAT(choice, Each(std::optional(KeptFor::Young)));
}

// Of a point whose newest recordings hold nothing (levels of a table) those before age all the same.
TEST_F(RetentionChoice, WhatHoldsNothingAgesWhatDoes) {
    addDays(3, 4);
    Aged all = aged();
    EXPECT_THAT(chooseKept(all, rules_, holds_).front(), Each(std::optional(KeptFor::Young)));
    all.newest["P"] = kMonday + std::chrono::hours(24 * 400);
    all.newest["ANOTHER"] = kMonday + std::chrono::hours(24 * 4000);
    EXPECT_THAT(chooseKept(all, rules_, holds_).front(), Each(std::optional<KeptFor>()));
    all.now = kMonday + std::chrono::hours(48);
    EXPECT_THAT(chooseKept(all, rules_, holds_).front(), Each(std::optional(KeptFor::Young)))
        << "dated ahead it ages nothing";
}

// The rank of what is not contested may be anything: with strange ranks there the same stays.
TEST_F(RetentionChoice, OnlyWhatIsContestedIsRanked) {
    rules_.rule(KeptKind::Waveform) = {2, 7, 60};
    rules_.rule(KeptKind::Spectra) = {10, 20, {}};
    addDays(120, 3);
    for (int day = 0; day < 120; ++day)
        add(kMonday + std::chrono::hours(24 * day), 0, "ONE A DAY");
    for (std::size_t i = 0; i < recordings_.size(); i += 2)
        recordings_[i].bytes[i % 3] = 0;
    holds_.baselines["P"] = {{dayOf(kMonday) + 20, dayOf(kMonday) + 30}};
    holds_.add(17, KeptFor::Trial);
    const auto ranked = contested(aged(), rules_, holds_);
    const std::vector<Choice> wanted = choose();
    EXPECT_GT(ranked.size(), 50u);
    EXPECT_LT(ranked.size(), recordings_.size() - 30);
    for (std::size_t i = 0; i < recordings_.size(); ++i)
        if (!std::count(ranked.begin(), ranked.end(), i)) recordings_[i].evidenceDban = 1000.0 - double(i);
    EXPECT_EQ(choose(), wanted);
}

TEST_F(RetentionChoice, WhatIsHeldStaysForItsReason) {
    addDays(200, 4);
    holds_.add(1, KeptFor::Trial);
    holds_.add(2, KeptFor::Job, kAllButWaveform);
    const auto choices = choose();
    EXPECT_THAT(choices[0], Each(std::optional(KeptFor::Trial)));
    EXPECT_THAT(choices[1], ElementsAre(std::nullopt, KeptFor::Job, KeptFor::Job));
    holds_.add(1, KeptFor::Finding);
    EXPECT_THAT(choose()[0], Each(std::optional(KeptFor::Finding))) << "the reason that comes first is told";
}

TEST_F(RetentionChoice, OfTheBaselineAllSpectraAndOneWaveformADay) {
    rules_.rule(KeptKind::Waveform) = {2, 7, {}};
    addDays(120, 4);
    const int first = dayOf(kMonday);
    holds_.baselines["P"] = {{first, first + 41}};
    const auto waveforms = keptByDay(KeptKind::Waveform), spectra = keptByDay(KeptKind::Spectra);
    for (int day = 0; day < 42; ++day) {
        EXPECT_EQ(spectra.at(day), 4) << day;
        EXPECT_EQ(waveforms.at(day), 1) << day;
    }
    int after = 0;
    for (int day = 42; day < 84; ++day)
        after += waveforms.at(day);
    EXPECT_EQ(after, 6) << "one a week again";
}

TEST_F(RetentionChoice, NoneWhereTheRuleSaysSo) {
    rules_.rule(KeptKind::Waveform) = {2, 0, 0};
    addDays(60, 2);
    const auto kept = keptByDay(KeptKind::Waveform);
    for (int day = 0; day < 49; ++day)
        EXPECT_EQ(kept.at(day), 0) << day;
}

// What is left of a thinned history, asked again, stays.
TEST_F(RetentionChoice, ASecondTimeNothingGoes) {
    addDays(250, 6);
    holds_.baselines["P"] = {{dayOf(kMonday), dayOf(kMonday) + 41}};
    const auto first = choose();
    for (std::size_t i = 0; i < recordings_.size(); ++i)
        for (std::size_t kind = 0; kind < kKeptKinds; ++kind)
            if (!first[i][kind]) recordings_[i].bytes[kind] = 0;
    const auto second = choose();
    for (std::size_t i = 0; i < recordings_.size(); ++i)
        for (std::size_t kind = 0; kind < kKeptKinds; ++kind)
            EXPECT_EQ(second[i][kind].has_value(), recordings_[i].bytes[kind] > 0) << i;
}

TEST(WeekOfDay, BeginsOnMonday) {
    const int monday = dayOf(kMonday);
    EXPECT_EQ(weekOfDay(monday), weekOfDay(monday + 6));
    EXPECT_EQ(weekOfDay(monday - 1), weekOfDay(monday) - 1);
    EXPECT_EQ(weekOfDay(-4), -1);  // Sunday 1969-12-28
    EXPECT_EQ(weekOfDay(-3), 0);
}

TEST(RetentionRules, AreSetByKeyAndTold) {
    RetentionRules rules;
    EXPECT_EQ(inWords(KeptKind::Waveform, rules.rule(KeptKind::Waveform)),
              "waveforms: all for 2 days, then one a day for 90 days, then one a week");
    ASSERT_TRUE(setRule(rules, "waveforms.weekly=365"));
    ASSERT_TRUE(setRule(rules, "waveforms.daily=10"));
    ASSERT_TRUE(setRule(rules, "spectra.all=1"));
    EXPECT_EQ(
        inWords(KeptKind::Waveform, rules.rule(KeptKind::Waveform)),
        "waveforms: all for 2 days, then one a day for 10 days, then one a week for 365 days, then none");
    EXPECT_EQ(inWords(KeptKind::Spectra, rules.rule(KeptKind::Spectra)),
              "spectra: all for 1 day, then one a day");
    ASSERT_TRUE(setRule(rules, "waveforms.all=ever"));
    EXPECT_EQ(inWords(KeptKind::Waveform, rules.rule(KeptKind::Waveform)), "waveforms: all for ever");
    for (const char* wrong : {"waveforms", "waveforms.all", "waveforms.all=", "waveforms.all=-1", "x.all=3",
                              "waveforms.hourly=3", "spectra.daily=1e9", "waveforms.all=2 days", ""})
        EXPECT_FALSE(setRule(rules, wrong)) << wrong;
    ASSERT_TRUE(setRule(rules, "examinations.all=7"));
    EXPECT_FALSE(checkRules(rules)) << "a round is made of the examinations of its week";
}

}  // namespace
}  // namespace fettle
