#include "core/store/recording_store.h"

#include <gmock/gmock.h>

#include <cstring>

#include "core/store/packed_recording.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

using RecordingStoreTest = StoreTest;

const Instant kEarly = at("1980-01-01T00:00:00Z"), kLate = at("2100-01-01T00:00:00Z");

void expectSameBits(const std::vector<double>& a, const std::vector<double>& b) {
    ASSERT_EQ(a.size(), b.size());
    EXPECT_EQ(std::memcmp(a.data(), b.data(), a.size() * sizeof(double)), 0);
}

TEST_F(RecordingStoreTest, WhatWasPutInComesBackAfterOpeningAgain) {
    const NewRecording made = newRecording(machine_, "2026-05-04T06:20:00.250Z");
    ASSERT_EQ(fleet_->recordings().put(made).value(), PutRecording::Stored);
    reopen();
    const auto back = fleet_->recordings().recording(1);
    ASSERT_TRUE(back) << back.error().sentence();
    const Recording &a = *made.recording, &b = **back;
    EXPECT_EQ(b.file, a.file);
    EXPECT_EQ(b.machine, a.machine);
    EXPECT_EQ(b.point, a.point);
    EXPECT_EQ(b.time, a.time);
    EXPECT_EQ(b.timeSource, a.timeSource);
    EXPECT_EQ(b.received, a.received);
    EXPECT_EQ(b.capture, a.capture);
    EXPECT_EQ(b.simultaneous, a.simultaneous);
    EXPECT_EQ(b.speedRpm, a.speedRpm);
    EXPECT_EQ(b.outputHz, a.outputHz);
    EXPECT_EQ(b.frameTempC, a.frameTempC);
    EXPECT_EQ(b.ambientTempC, a.ambientTempC);
    EXPECT_EQ(b.loadPct, a.loadPct);
    EXPECT_EQ(b.warnings, a.warnings);
    ASSERT_EQ(b.channels.size(), a.channels.size());
    for (std::size_t c = 0; c < a.channels.size(); ++c) {
        const Channel &in = a.channels[c], &out = b.channels[c];
        EXPECT_EQ(
            std::tie(out.name, out.point, out.unit, out.sampleRateHz, out.fullScale, out.bits, out.scale),
            std::tie(in.name, in.point, in.unit, in.sampleRateHz, in.fullScale, in.bits, in.scale));
        expectSameBits(out.samples, in.samples);
    }
    EXPECT_EQ(fleet_->recordings().sidecar(1).value(), made.sidecar);
    EXPECT_EQ(fleet_->recordings().examinationJson(1).value(), made.examinationJson);
    expectClean();
}

TEST_F(RecordingStoreTest, TheEntrySaysWhatTheListNeeds) {
    NewRecording made = newRecording(machine_, "2026-05-04T06:20:00Z");
    made.late = true;
    ASSERT_TRUE(fleet_->recordings().put(made));
    const RecordingEntry entry = fleet_->recordings().entry(1).value();
    EXPECT_EQ(entry.machine, machine_);
    EXPECT_EQ(entry.time, made.recording->time);
    EXPECT_EQ(entry.format, "WAV");
    EXPECT_EQ(entry.running, "running");
    EXPECT_EQ(entry.engine, "0.1.0 5c1f");
    EXPECT_EQ(entry.sampleRateHz, 12800);
    EXPECT_EQ(entry.seconds, 0.32);  // 4096 samples at 12800 Hz
    EXPECT_EQ(entry.speedRpm, 1483.2);
    EXPECT_EQ(entry.frameTempC, 61.5);
    EXPECT_EQ(entry.ambientTempC, std::nullopt);
    EXPECT_THAT(entry.channels, ElementsAre("x", "z", "flux"));
    EXPECT_TRUE(entry.hasWaveform);
    EXPECT_TRUE(entry.late);
    EXPECT_GT(entry.importedAt, at("2020-01-01T00:00:00Z"));
}

TEST_F(RecordingStoreTest, ListsAreByTimeAndWithinTheirEnds) {
    for (const char* time : {"2026-05-06T00:00:00Z", "2026-05-04T00:00:00Z", "2026-05-05T00:00:00Z"})
        ASSERT_TRUE(fleet_->recordings().put(newRecording(machine_, time)));
    const auto list =
        fleet_->recordings().list(machine_, at("2026-05-04T00:00:00Z"), at("2026-05-05T00:00:00Z")).value();
    ASSERT_EQ(list.size(), 2u);
    EXPECT_EQ(list[0].time, at("2026-05-04T00:00:00Z"));
    EXPECT_EQ(list[1].time, at("2026-05-05T00:00:00Z"));
    EXPECT_EQ(fleet_->recordings().newest().value(), at("2026-05-06T00:00:00Z"));
    EXPECT_EQ(fleet_->recordings().newest(machine_).value(), at("2026-05-06T00:00:00Z"));
    EXPECT_EQ(fleet_->recordings().newest(machine_ + 1).value(), std::nullopt);
    EXPECT_EQ(fleet_->recordings().count().value(), 3u);
    EXPECT_TRUE(fleet_->recordings().list(machine_ + 1, kEarly, kLate)->empty());
}

TEST_F(RecordingStoreTest, HeadsAreThoseOfTheList) {
    std::vector<NewRecording> made{newRecording(machine_, "2026-05-06T00:00:00Z", 1),
                                   newRecording(machine_, "2026-05-04T00:00:00Z", 2)};
    made[1].late = true;
    ASSERT_TRUE(fleet_->recordings().putAll(made));
    const auto heads = fleet_->recordings().heads(machine_, kEarly, kLate).value();
    ASSERT_EQ(heads.size(), 2u);
    EXPECT_EQ(heads[0].time, at("2026-05-04T00:00:00Z"));
    EXPECT_EQ(heads[0].point, "M-DE");
    EXPECT_TRUE(heads[0].late && !heads[1].late);
    EXPECT_FALSE(heads[0].levelsOnly);
    EXPECT_EQ(fleet_->recordings().heads(machine_, kEarly, at("2026-05-05T00:00:00Z"))->size(), 1u);
}

// What another connection writes meanwhile is seen afterwards, and also after work that was thrown out of.
TEST_F(RecordingStoreTest, AMomentStaysAsItWasUntilItEnds) {
    ASSERT_TRUE(fleet_->recordings().put(newRecording(machine_, "2026-05-04T00:00:00Z", 1)));
    const auto other = FleetFile::open(path_, OpenMode::ReadOnly);
    ASSERT_TRUE(other);
    const auto count = [&] { return (*other)->recordings().count().value(); };
    const auto read = (*other)->atOneMoment([&]() -> Status {
        EXPECT_EQ(count(), 1u);
        EXPECT_TRUE(fleet_->recordings().put(newRecording(machine_, "2026-05-05T00:00:00Z", 2)));
        EXPECT_EQ(count(), 1u);
        return {};
    });
    EXPECT_TRUE(read);
    EXPECT_EQ(count(), 2u);
    EXPECT_THROW((void)(*other)->atOneMoment([&]() -> Status { throw std::exception(); }), std::exception);
    EXPECT_TRUE(fleet_->recordings().put(newRecording(machine_, "2026-05-06T00:00:00Z", 3)));
    EXPECT_EQ(count(), 3u);
}

TEST_F(RecordingStoreTest, OneRecordingStandsOnce) {
    const NewRecording made = newRecording(machine_, "2026-05-04T06:20:00Z");
    EXPECT_FALSE(fleet_->recordings().knows(made.key).value());
    EXPECT_THAT(fleet_->recordings().putAll({made, made}).value(),
                ElementsAre(PutRecording::Stored, PutRecording::AlreadyThere));
    EXPECT_EQ(fleet_->recordings().put(made).value(), PutRecording::AlreadyThere);
    EXPECT_TRUE(fleet_->recordings().knows(made.key).value());
    EXPECT_EQ(fleet_->recordings().count().value(), 1u);
    expectClean();
}

// Recordings of a stopped machine can be alike to the last byte.
TEST_F(RecordingStoreTest, TheKeyKnowsBytesMachinePointChannelsAndTime) {
    const Recording raw = *newRecording(machine_, "2026-05-04T06:20:00Z").recording;
    const RecordingKey key = recordingKey("bytes", raw);
    EXPECT_EQ(recordingKey("bytes", raw), key);
    EXPECT_NE(recordingKey("bytes.", raw), key);
    Recording other = raw;
    other.time = *raw.time + std::chrono::milliseconds(1);
    EXPECT_NE(recordingKey("bytes", other), key);
    other = raw;
    other.machine = "another";
    EXPECT_NE(recordingKey("bytes", other), key) << "points of two machines often have one name";
    other = raw;
    other.point = "M-NDE";
    EXPECT_NE(recordingKey("bytes", other), key);
    other = raw;
    other.channels[0].name = "y";
    EXPECT_NE(recordingKey("bytes", other), key);
    other = raw;
    other.file = "elsewhere.wav";
    other.channels[0].samples[0] = 1;
    EXPECT_EQ(recordingKey("bytes", other), key);
}

TEST_F(RecordingStoreTest, WeightsAndExaminationsOfASpan) {
    for (int day = 1; day <= 3; ++day)
        ASSERT_TRUE(fleet_->recordings().put(
            newRecording(machine_, "2026-05-0" + std::to_string(day) + "T00:00:00Z", std::uint64_t(day))));
    const auto weights = fleet_->recordings().weights(machine_, at("2026-05-02T00:00:00Z"), kLate).value();
    ASSERT_EQ(weights.size(), 4u);
    EXPECT_EQ(weights[0].fault, "bearing_outer_race");
    EXPECT_EQ(weights[0].at, "driver DE");
    EXPECT_EQ(weights[0].weightDban, 14.5);
    EXPECT_EQ(weights[0].recording, 2);
    EXPECT_EQ(weights[1].weightDban, -3);
    const auto weighed =
        fleet_->recordings().examinations(machine_, kEarly, at("2026-05-02T00:00:00Z")).value();
    ASSERT_EQ(weighed.size(), 2u);
    EXPECT_EQ(weighed[1].json, R"({"schema": 1, "seed": 2})");
    EXPECT_EQ(weighed[1].running, "running");
}

// A WAV and the UFF made of it are one capture; so is a file with a byte more behind its samples.
TEST_F(RecordingStoreTest, TheSameSamplesOfAnotherFileAreThereAlready) {
    const NewRecording first = newRecording(machine_, "2026-05-04T06:20:00Z", 1);
    ASSERT_EQ(fleet_->recordings().put(first).value(), PutRecording::Stored);
    const auto likeFirst = [&](auto change) {
        NewRecording other = newRecording(machine_, "2026-05-04T06:20:00Z", 1);
        auto raw = std::make_shared<Recording>(*other.recording);
        change(*raw);
        other.recording = raw;
        other.key[0] = std::uint8_t(other.key[0] + 1 + fleet_->recordings().count().value());
        return fleet_->recordings().put(other).value();
    };
    EXPECT_EQ(likeFirst([](Recording& raw) { raw.file = "out/other.uff"; }), PutRecording::AlreadyThere);
    EXPECT_EQ(likeFirst([](Recording& raw) { raw.channels[1].samples[7] += 1e-3; }), PutRecording::Stored);
    EXPECT_EQ(likeFirst([](Recording& raw) { *raw.time += std::chrono::milliseconds(1); }),
              PutRecording::Stored);
    EXPECT_EQ(fleet_->recordings().count().value(), 3u);
    expectClean();
}

TEST_F(RecordingStoreTest, AReExaminationTakesThePlaceOfTheOldOne) {
    ASSERT_TRUE(fleet_->recordings().put(newRecording(machine_, "2026-05-04T06:20:00Z", 1)));
    NewRecording again = newRecording(machine_, "2026-05-04T06:20:00Z", 9);
    again.recording = nullptr;
    again.engine = "0.2.0";
    again.running = "unsteady";
    again.weights = {{"looseness", "driver", 31}};
    again.trends.pop_back();
    again.trends[0].direction = "vertical";  // the description was corrected meanwhile
    ASSERT_TRUE(fleet_->recordings().replaceExamination(1, packComputed(again)));
    EXPECT_EQ(fleet_->recordings().entry(1)->engine, "0.2.0");
    EXPECT_EQ(fleet_->recordings().entry(1)->running, "unsteady");
    EXPECT_EQ(fleet_->recordings().examinationJson(1).value(), again.examinationJson);
    ASSERT_EQ(fleet_->recordings().weights(machine_, kEarly, kLate)->size(), 1u);
    std::size_t rows = 0;
    const auto channels = fleet_->trends().channels(machine_).value();
    for (const ChannelEntry& channel : channels) {
        const auto points = fleet_->trends().trend(channel.id, Quantity::VelocityRms, kEarly, kLate).value();
        rows += points.size();
        if (points.empty()) continue;
        EXPECT_EQ(channel.direction, "vertical");
        EXPECT_EQ(points[0].value, 9 / 16.0);
    }
    EXPECT_EQ(rows, 1u);
    EXPECT_TRUE(fleet_->recordings().recording(1));
    expectClean();
    EXPECT_EQ(fleet_->recordings().replaceExamination(2, packComputed(again)).error().kind,
              ErrorKind::NotFound);
}

TEST_F(RecordingStoreTest, WhatContradictsItselfIsRefusedWhole) {
    const NewRecording good = newRecording(machine_, "2026-05-04T06:20:00Z");
    NewRecording bad = newRecording(machine_, "2026-05-05T06:20:00Z");
    bad.trends[0].channel = "y";
    auto refused = fleet_->recordings().putAll({good, bad});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().kind, ErrorKind::Invalid);
    EXPECT_THAT(refused.error().sentence(), HasSubstr("channel M-DE y: is not in the recording"));
    EXPECT_EQ(fleet_->recordings().count().value(), 0u);

    bad = newRecording(machine_, "2026-05-05T06:20:00Z");
    bad.spectra[0].lines.resize(801);
    EXPECT_EQ(fleet_->recordings().put(bad).error().kind, ErrorKind::Invalid);
    bad = newRecording(machine_ + 1, "2026-05-05T06:20:00Z");  // no such machine
    EXPECT_EQ(fleet_->recordings().put(bad).error().kind, ErrorKind::Invalid);
    auto raw = std::make_shared<Recording>(*good.recording);
    raw->time.reset();
    bad = good;
    bad.recording = raw;
    EXPECT_THAT(fleet_->recordings().put(bad).error().sentence(), HasSubstr("without a time"));
    raw = std::make_shared<Recording>(*good.recording);
    raw->channels[1].samples.pop_back();
    bad.recording = raw;
    EXPECT_THAT(fleet_->recordings().put(bad).error().sentence(), HasSubstr("one rate and length"));
    EXPECT_EQ(fleet_->recordings().count().value(), 0u);
    expectClean();
}

TEST_F(RecordingStoreTest, AskingForWhatIsNotThere) {
    EXPECT_EQ(fleet_->recordings().entry(7).error().kind, ErrorKind::NotFound);
    EXPECT_EQ(fleet_->recordings().recording(7).error().kind, ErrorKind::NotFound);
    EXPECT_EQ(fleet_->recordings().sidecar(7).error().kind, ErrorKind::NotFound);
    EXPECT_THAT(fleet_->recordings().examinationJson(7).error().sentence(),
                HasSubstr("examination of recording 7: is not in the fleet file"));
    EXPECT_EQ(fleet_->recordings().newest().value(), std::nullopt);
}

}  // namespace
}  // namespace fettle
