// 1x told in grams over months made by hand: a fan of 0.02 mm/s a gram gathers dirt after its balancing, so
// every expected gram can be worked out on paper.
#include "core/fleet/grams.h"

#include <cmath>

#include "core/base/units.h"
#include "core/fleet/balance_desk.h"
#include "core/workshop/balance_solve.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

constexpr double kPerGram = 0.02;

class GramsOfHistory : public MadeHistory {
  protected:
    // As found 5 mm/s; a trial of 100 g; the correction is 250 g. `channel` ties the sensor to the node.
    BalanceJob job(const std::string& channel) {
        BalanceJob job;
        job.machine = "FN-01";
        job.name = "first balancing";
        job.cautionsRead = true;
        fitToMethod(job);
        job.planes[0].name = "rim";
        job.planes[0].radiusMm = 900;
        job.sensors[0].channel = channel;
        job.initial.sensors = {{{5.0, 30.0}}};
        const Polar trial = polarOf(phasorOf({5, 30}) + kPerGram * phasorOf({100, 120}));
        job.trials[0].trial = Polar{100, 120};
        job.trials[0].sensors = {{{trial.amount, trial.degrees}}};
        return job;
    }
    void balance(const std::string& channel, const std::string& closed) {
        WorkshopEntry entry;
        entry.machine = "FN-01";
        entry.kind = "balance";
        entry.name = "first balancing";
        entry.json = balanceJson(job(channel));
        entry.createdAt = at(closed);
        entry.closedAt = at(closed);
        ASSERT_TRUE(fleet_->workshop().put(entry));
    }
    // 1x grows by `perDay` from `from` on.
    void growing(const std::string& first, int days, double from, double perDay) {
        for (int i = 0; i < days; ++i) {
            Heard heard;
            heard.order1MmS = from + perDay * i;
            hear("FN-01", datePlus(first, i).value(), heard);
        }
    }
};

TEST_F(GramsOfHistory, WithoutAClosedBalancingThereAreNone) {
    growing("2026-03-01", 20, 1, 0);
    const auto none = massNow(*fleet_, "FN-01");
    ASSERT_TRUE(none) << none.error().sentence();
    EXPECT_FALSE(*none);
    ASSERT_TRUE(keepBalance(*fleet_, 0, job("P x"), false));
    EXPECT_FALSE(*massNow(*fleet_, "FN-01"));
}

TEST_F(GramsOfHistory, ByTheCoefficientOfATiedSensor) {
    growing("2026-02-20", 9, 5, 0);
    balance("P x", "2026-03-01T12:00:00Z");
    growing("2026-03-02", 60, 0.2, 0.03);
    const auto now = massNow(*fleet_, "FN-01");
    ASSERT_TRUE(now) << now.error().sentence();
    ASSERT_TRUE(*now);
    EXPECT_TRUE((*now)->byCoefficient);
    EXPECT_EQ((*now)->where, "P x");
    // Median of the last seven days, 53 to 59: day 56, 0.2 + 56 x 0.03 = 1.88 mm/s.
    EXPECT_NEAR((*now)->levelMmS, 1.88, 1e-9);
    EXPECT_NEAR((*now)->mass.grams, 94, 0.1);
    EXPECT_LT((*now)->mass.low, 94);
    EXPECT_GT((*now)->mass.high, 94);
    ASSERT_TRUE((*now)->growth);
    EXPECT_NEAR((*now)->growth->perWeek, 7 * 0.03 / kPerGram, 0.2);
    // 75 kW on a rigid base: B/C at 2.8 mm/s, 140 g, some 28 days after the last.
    ASSERT_TRUE((*now)->limitG);
    EXPECT_NEAR(*(*now)->limitG, 140, 0.1);
    ASSERT_TRUE((*now)->date);
    EXPECT_NEAR(*(*now)->date->median - (*now)->day, 27.7, 6);
    EXPECT_NE((*now)->sentence.find("94 g at the 900 mm radius of rim"), std::string::npos)
        << (*now)->sentence;
    EXPECT_NE((*now)->sentence.find("clean"), std::string::npos) << (*now)->sentence;
}

TEST_F(GramsOfHistory, ByWhatTheCorrectionMadeOfTheNodesLevel) {
    growing("2026-02-20", 9, 4, 0);
    balance("", "2026-03-01T12:00:00Z");
    growing("2026-03-02", 30, 0.5, 0);
    const auto now = massNow(*fleet_, "FN-01");
    ASSERT_TRUE(now) << now.error().sentence();
    ASSERT_TRUE(*now);
    EXPECT_FALSE((*now)->byCoefficient);
    // 250 g took 4 mm/s to 0.5: 0.016 mm/s a gram, from 0.014 to 0.018.
    EXPECT_NEAR((*now)->mass.grams, 0.5 / (4.0 / 250), 0.1);
    EXPECT_NEAR((*now)->mass.high, 1.0 / (3.5 / 250), 0.1);
    EXPECT_EQ((*now)->mass.low, 0);
}

TEST_F(GramsOfHistory, CountsFromTheLastCleaning) {
    balance("P x", "2026-03-01T12:00:00Z");
    growing("2026-03-02", 30, 0.2, 0.1);
    tell("FN-01", "2026-04-01T08:00:00Z", "cleaning");
    growing("2026-04-02", 20, 0.2, 0.05);
    const auto now = massNow(*fleet_, "FN-01");
    ASSERT_TRUE(now && *now);
    EXPECT_EQ((*now)->days.size(), 20u);
    EXPECT_NEAR((*now)->growth->perWeek, 7 * 0.05 / kPerGram, 0.5);
}

TEST_F(GramsOfHistory, ClosedJobsLeaveTheirCoefficientsAndDoNotChange) {
    balance("P x", "2026-03-01T12:00:00Z");
    const auto desk = balanceDesk(*fleet_, "FN-01");
    ASSERT_TRUE(desk) << desk.error().sentence();
    ASSERT_EQ(desk->saved.size(), 1u);
    EXPECT_NEAR(std::abs(desk->saved[0].influence.perGram[0]), kPerGram, 1e-9);
    EXPECT_EQ(desk->saved[0].date, "2026-03-01");
    EXPECT_FALSE(keepBalance(*fleet_, desk->entries[0].id, job(""), false));
}

// A recording with a mark once a turn at 1500 r/min and a velocity of 2 mm/s r.m.s. that peaks 75 degrees
// later.
TEST_F(GramsOfHistory, ARecordingWithAMarkGivesItsReading) {
    auto raw = std::make_shared<Recording>();
    raw->file = "run0.wav";
    raw->machine = "FN-01";
    raw->point = "P";
    raw->time = at("2026-05-01T10:00:00Z");
    raw->loadPct = 70;
    Channel speed{"x", "P", "mm/s", 5120, {}, 16, 16, 16}, mark{"mark", "P", "V", 5120, {}, 16, 16, 16};
    for (int i = 0; i < 5120 * 2; ++i) {
        const double turns = 25.0 * i / 5120 + 0.3;
        speed.samples.push_back(2 * std::sqrt(2.0) * std::cos(kTwoPi * (turns - 75.0 / 360)));
        mark.samples.push_back(turns - std::floor(turns) < 0.04 ? 5 : 0);
    }
    raw->channels = {speed, mark};
    NewRecording made;
    made.machine = fleet_->machines().byTag("FN-01").value().id;
    made.key = recordingKey(raw->file, *raw);
    made.recording = raw;
    made.format = "WAV";
    made.running = "running";
    made.engine = "0.1.0 5c1f";
    made.examinationJson = examinationAsText(made::examination({}));
    ASSERT_TRUE(fleet_->recordings().put(made));
    const auto desk = balanceDesk(*fleet_, "FN-01");
    ASSERT_TRUE(desk) << desk.error().sentence();
    ASSERT_EQ(desk->recordings.size(), 1u);
    const auto read = onceOfRecording(*fleet_, desk->recordings[0].id, "x", "mark");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_NEAR(read->once.reading.amount, 2, 0.01);
    EXPECT_NEAR(read->once.reading.degrees, 75, 1.8);  // half a sample is 0.9 degrees
    EXPECT_NEAR(read->once.rpm, 1500, 2);
    EXPECT_EQ(read->loadPct, 70);
    EXPECT_FALSE(onceOfRecording(*fleet_, desk->recordings[0].id, "x", "x"));
    EXPECT_FALSE(onceOfRecording(*fleet_, desk->recordings[0].id, "mark", "x"));
}

}  // namespace
}  // namespace fettle::fleet_test
