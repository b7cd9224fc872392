// Which recordings the sample fleet has, what arrives spoiled, and how large it all is. What is promised: a
// recording a machine and day, under 400 MB (the project's own aim).
#include "core/simulate/sample_plan.h"

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <tuple>

#include "core/signal/reader.h"
#include "core/signal/sound_file.h"
#include "tests/simulate/probe.h"
#include "tests/simulate/sample_fleet.h"

namespace fettle::sim {
namespace {

using namespace probe;
using std::chrono::days;

const CaptureKind& captureOf(const PlannedRecording& planned) {
    return fleet().machines[planned.machine].nodes[planned.node].captures[planned.capture];
}

std::vector<PlannedRecording> whole() {
    return planRecordings(fleet(), {});
}

TEST(Plan, EveryMachineEveryDayButTheSilentOne) {
    std::map<std::string, std::set<Instant>> heard;
    for (const PlannedRecording& planned : whole()) {
        EXPECT_GE(planned.time, fleet().start);
        EXPECT_LT(planned.time, fleet().end());
        heard[fleet().machines[planned.machine].machine.tag].insert(std::chrono::floor<days>(planned.time));
    }
    EXPECT_EQ(heard.size(), 20u);
    for (const auto& [tag, on] : heard)
        EXPECT_EQ(on.size(), tag == "QY-PU-05" ? 155u : 182u) << tag;
    EXPECT_EQ(*heard["QY-PU-05"].rbegin(), utc("2026-06-08T00:00:00Z"));
}

TEST(Plan, UsualCapturesAreAsManyAsAskedAndOthersKeepTheirDays) {
    SampleOptions once = lastWeek("CR-JC-01");
    once.perWeek = 1;
    std::map<std::string, std::vector<Instant>> times;
    for (const PlannedRecording& planned : planRecordings(fleet(), once))
        times[captureOf(planned).name].push_back(planned.time);
    EXPECT_EQ(times[""].size(), 1u);
    ASSERT_EQ(times["narrow"].size(), 1u);
    const std::chrono::weekday day(std::chrono::floor<days>(times["narrow"].front()));
    EXPECT_EQ(day, std::chrono::Tuesday);
    EXPECT_EQ(planRecordings(fleet(), lastWeek("PK-PU-06")).size(), 7u);
}

// Slip sidebands of a 110 kW motor need long records: 8 over the pole-pass frequency, 2.4 Hz at full load
// here.
TEST(Plan, CrusherHasALongNarrowRecording) {
    for (const CaptureKind& capture : byTag("CR-JC-01")->nodes.at(0).captures)
        if (capture.name == "narrow") {
            EXPECT_EQ(capture.seconds, 32);
            EXPECT_EQ(capture.rateHz, 1000);
        }
    EXPECT_EQ(byTag("CR-JC-01")->nodes.at(0).captures.size(), 3u);
}

TEST(Plan, DenseWeeksHaveMore) {
    SampleOptions options;
    options.machine = "QY-CV-03";
    int before = 0, within = 0;
    for (const PlannedRecording& planned : planRecordings(fleet(), options)) {
        before += planned.time >= utc("2026-06-08T00:00:00Z") && planned.time < utc("2026-06-15T00:00:00Z");
        within += planned.time >= utc("2026-06-15T00:00:00Z") && planned.time < utc("2026-06-22T00:00:00Z");
    }
    EXPECT_EQ(before, 15);  // two points daily, one weekly
    EXPECT_EQ(within, 29);
}

TEST(Plan, IdleMachineIsRecordedButStands) {
    SampleOptions options;
    options.machine = "HY-EL-02";
    int stopped = 0;
    for (const PlannedRecording& planned : planRecordings(fleet(), options))
        stopped += !setupOf(fleet(), planned, 1).operation.turning;
    EXPECT_EQ(stopped, 28);  // 6 April to 3 May
}

// A capture's number is its own: files that share one are read as one capture.
TEST(Plan, NamesAndNumbersAreUnique) {
    std::set<std::string> names, numbers;
    for (const PlannedRecording& planned : whole()) {
        EXPECT_TRUE(names.insert(std::to_string(planned.machine) + planned.name).second) << planned.name;
        const bool copy = planned.name.ends_with("_again");
        EXPECT_EQ(numbers.insert(planned.captureId).second, !copy) << planned.name;
    }
}

// One machine alone gives what the whole fleet's run gives for it.
TEST(Plan, PartsAgreeWithTheWhole) {
    std::set<std::string> names;
    for (const PlannedRecording& planned : planRecordings(fleet(), lastWeek()))
        names.insert(std::to_string(planned.machine) + planned.name);
    const auto part = planRecordings(fleet(), lastWeek("CR-JC-01"));
    ASSERT_EQ(part.size(), 9u);
    for (const PlannedRecording& planned : part) {
        EXPECT_TRUE(names.count(std::to_string(planned.machine) + planned.name));
        EXPECT_EQ(setupOf(fleet(), planned, 1).seed, setupOf(fleet(), planned, 1).seed);
        EXPECT_NE(setupOf(fleet(), planned, 1).seed, setupOf(fleet(), planned, 2).seed);
    }
    EXPECT_NE(setupOf(fleet(), part[0], 1).seed, setupOf(fleet(), part[1], 1).seed);
}

// The same samples on every computer and from every thread: the pinned words are those of the first machine's
// and the inverter's newest recording. A change of a scenario file may change them, a change of the simulator
// must not without a new kSimulatorVersion.
TEST(Plan, SamplesOfTheFleetArePinned) {
    const auto hashOfNewest = [](const char* tag) {
        const auto made = simulate(setupOf(fleet(), planRecordings(fleet(), lastWeek(tag)).back(), 1));
        return made ? hashOf(*made) : 0;
    };
    EXPECT_EQ(hashOfNewest("CR-DF-02"), 0xC9F5BDB39E71104CULL);
    EXPECT_EQ(hashOfNewest("KL-CF-03"), 0xF4D965902DC47B6ULL);
}

// By plan: the middle recording of every kind is made, its size stands for all of that kind.
TEST(Plan, FleetTakesLessThan400Megabytes) {
    constexpr double kBlock = 4096;  // what a sidecar takes on most file systems
    std::map<std::tuple<std::size_t, std::size_t, std::size_t>, std::vector<PlannedRecording>> kinds;
    for (const PlannedRecording& planned : whole())
        kinds[{planned.machine, planned.node, planned.capture}].push_back(planned);
    double bytes = 0;
    for (const auto& [kind, all] : kinds) {
        const auto made = simulate(setupOf(fleet(), all[all.size() / 2], 1));
        ASSERT_TRUE(made);
        std::vector<std::vector<double>> channels;
        for (const SimulatedChannel& channel : made->channels) {
            channels.emplace_back();
            for (const std::int32_t sample : channel.samples)
                channels.back().push_back(sample / double(std::int64_t(1) << (made->bits - 1)));
        }
        const auto flac = writeSoundFile(channels, made->rateHz,
                                         made->bits == 24 ? SoundFormat::Flac24 : SoundFormat::Flac16);
        ASSERT_TRUE(flac);
        bytes += double(all.size()) * (double(flac->size()) + kBlock / 2 + kBlock);
    }
    EXPECT_LT(bytes, 400e6);
    EXPECT_GT(whole().size(), 3640u);  // 20 machines, 182 days
}

const IntakeTrouble& troubleOf(const PlannedRecording& planned) {
    return fleet().intake.at(*planned.trouble);
}

TEST(Spoiled, ArrivesAsTold) {
    std::map<std::string, int> count;
    for (const PlannedRecording& planned : whole()) {
        if (!planned.trouble) {
            EXPECT_EQ(planned.stated, planned.time);
            EXPECT_LT(planned.received - planned.time, std::chrono::minutes(1));
            continue;
        }
        const IntakeTrouble& trouble = troubleOf(planned);
        ++count[trouble.kind];
        EXPECT_LT(planned.time, fleet().end() - days(7)) << "the newest week is left alone";
        if (trouble.kind == kClockReset) {
            EXPECT_LT(planned.stated, utc("1970-01-03T00:00:00Z"));
            EXPECT_TRUE(planned.name.starts_with("1970-01-0"));
            EXPECT_GT(planned.received, utc("2026-05-06T00:00:00Z"));
        } else if (trouble.kind == kLate) {
            EXPECT_GT(planned.received - planned.time, days(4));
            EXPECT_EQ(planned.stated, planned.time);
        }
    }
    EXPECT_EQ(count,
              (std::map<std::string, int>{{kClockReset, 2}, {kCutOff, 1}, {kDuplicate, 1}, {kLate, 3}}));
}

TEST(Spoiled, CopyIsTheSameButForItsName) {
    const auto plan = whole();
    const auto copy = std::find_if(plan.begin(), plan.end(), [](const PlannedRecording& planned) {
        return planned.trouble && troubleOf(planned).kind == kDuplicate;
    });
    ASSERT_NE(copy, plan.end());
    const auto first = std::find_if(plan.begin(), plan.end(), [&](const PlannedRecording& planned) {
        return planned.captureId == copy->captureId && planned.name != copy->name;
    });
    ASSERT_NE(first, plan.end());
    const auto a = simulate(setupOf(fleet(), *first, 1)), b = simulate(setupOf(fleet(), *copy, 1));
    ASSERT_TRUE(a && b);
    EXPECT_EQ(hashOf(*a), hashOf(*b));
    EXPECT_EQ(sidecarOf(fleet(), *first, *a), sidecarOf(fleet(), *copy, *b));
}

TEST(Sidecar, IsReadBackWithoutARemark) {
    for (const PlannedRecording& planned : planRecordings(fleet(), lastWeek("KL-CF-03"))) {
        const auto made = simulate(setupOf(fleet(), planned, 1));
        ASSERT_TRUE(made);
        Recording recording;
        recording.file = planned.name + ".wav";
        for (std::size_t c = 0; c < made->channels.size(); ++c)
            recording.channels.push_back({"", "", "", made->rateHz, {1.0}, 1});
        const auto done =
            applySidecar(recording, sidecarOf(fleet(), planned, *made).dump(), planned.name + ".json");
        ASSERT_TRUE(done) << done.error().sentence();
        EXPECT_TRUE(recording.warnings.empty()) << recording.warnings.front();
        EXPECT_EQ(recording.machine, "KL-CF-03");
        EXPECT_EQ(recording.time, planned.time);
        EXPECT_NEAR(recording.outputHz.value_or(0), made->supplyHz, 0.06);
        EXPECT_EQ(recording.channels[0].samples[0], 16);
        EXPECT_EQ(recording.channels[3].unit, "1");
    }
}

}  // namespace
}  // namespace fettle::sim
