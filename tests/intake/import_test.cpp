// What an import promises. Source: the project's contract of `import` (idempotent, resumable; each refusal
// one line: file, place, rule) and common practice, no source.
#include <gmock/gmock.h>

#include <filesystem>

#include "core/exchange/examination_json.h"
#include "core/signal/recording_limits.h"
#include "tests/intake/fleet_content.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::UnorderedElementsAreArray;

class ImportTest : public IntakeTest {
  protected:
    // Of the motor T-1, its outer race at the drive end at fault.
    std::string sendFaulty(const std::string& name, const std::string& time, std::uint64_t seed) {
        const Machine motor = made::motor();
        auto setup = made::with(made::setupOf(motor, seed, 2), "bearing_outer_race", "driver DE", 0.75);
        const Sent node = sent(setup);
        Said said;
        said.time = time;
        said.scale = node.scale;
        return send(in_, name, node.wav, said);
    }
};

TEST_F(ImportTest, KeepsEverythingOfARecording) {
    const std::string path = sendFaulty("one", "2026-05-04T06:20:00Z", 3);
    const ImportReport report = taken();
    EXPECT_EQ(report.found, 1u);
    EXPECT_EQ(report.stored, 1u);
    EXPECT_TRUE(report.refusals.empty());
    const auto entries = entriesOf("T-1");
    ASSERT_EQ(entries.size(), 1u);
    EXPECT_EQ(entries[0].file, path);
    EXPECT_EQ(entries[0].format, "WAV");
    EXPECT_EQ(entries[0].point, "P");
    EXPECT_EQ(entries[0].running, "running");
    EXPECT_EQ(entries[0].time, at("2026-05-04T06:20:00Z"));
    EXPECT_EQ(fleet_->recordings().sidecar(entries[0].id).value(), disk_.read(in_ + "/one.json").value());
    const auto raw = readRecording(disk_, path);
    const auto kept = fleet_->recordings().recording(entries[0].id);
    ASSERT_TRUE(raw && kept);
    ASSERT_EQ((*kept)->channels.size(), 2u);
    EXPECT_EQ((*kept)->channels[1].samples, (*raw)->channels[1].samples);
    expectClean();
}

// The same verdict as without a fleet file: `examine` of the file alone.
TEST_F(ImportTest, WeighsAsExamineDoes) {
    const std::string path = sendFaulty("one", "2026-05-04T06:20:00Z", 3);
    taken();
    const auto alone = examine(made::motor(), {readRecording(disk_, path).value()});
    ASSERT_TRUE(alone);
    const std::int64_t id = entriesOf("T-1")[0].id;
    EXPECT_EQ(fleet_->recordings().examinationJson(id).value(), examinationAsText(*alone));
    ASSERT_FALSE(alone->findings.empty());
    EXPECT_EQ(alone->findings[0].fault, "bearing_outer_race");
    const auto weights = fleet_->recordings().weights(entriesOf("T-1")[0].machine, at("2026-05-01T00:00:00Z"),
                                                      at("2026-06-01T00:00:00Z"));
    ASSERT_TRUE(weights);
    std::size_t weighed = 0;
    for (const Hypothesis& h : alone->considered) {
        if (!h.weightDban) continue;
        ++weighed;
        const auto row = std::find_if(weights->begin(), weights->end(), [&](const WeightEntry& w) {
            return w.fault == h.fault && w.at == h.at;
        });
        ASSERT_NE(row, weights->end()) << h.fault;
        EXPECT_EQ(row->weightDban, *h.weightDban);
    }
    EXPECT_EQ(weights->size(), weighed);
}

TEST_F(ImportTest, LevelsAreThoseOfTheExamination) {
    const std::string path = sendFaulty("one", "2026-05-04T06:20:00Z", 3);
    taken();
    const auto alone = examine(made::motor(), {readRecording(disk_, path).value()});
    const auto channels = fleet_->trends().channels(entriesOf("T-1")[0].machine);
    ASSERT_TRUE(alone && channels);
    ASSERT_EQ(channels->size(), 2u);
    for (std::size_t c = 0; c < 2; ++c) {
        const ChannelLevels& levels = alone->recordings[0].levels[c];
        const auto row = fleet_->trends().latest((*channels)[c].id);
        ASSERT_TRUE(row && *row);
        EXPECT_EQ((*row)->channel, levels.channel);
        EXPECT_EQ((*row)->values[std::size_t(Quantity::VelocityRms)], levels.velocityRmsMmS);
        EXPECT_EQ((*row)->values[std::size_t(Quantity::Order1)], levels.order1MmS);
        EXPECT_EQ((*row)->values[std::size_t(Quantity::SpeedRpm)], alone->recordings[0].speed.rpm);
        ASSERT_FALSE(levels.zones.empty());
        EXPECT_EQ((*row)->zone, levels.zones[0].zone);
        for (const WaterfallKind kind :
             {WaterfallKind::Velocity, WaterfallKind::Acceleration, WaterfallKind::Envelope}) {
            const auto spectra = fleet_->trends().spectra((*channels)[c].id, kind, at("2026-05-01T00:00:00Z"),
                                                          at("2026-06-01T00:00:00Z"));
            ASSERT_TRUE(spectra);
            ASSERT_EQ(spectra->size(), 1u);
            EXPECT_EQ((*spectra)[0].lines.size(), kStoredLines);
        }
    }
}

TEST_F(ImportTest, ASecondTimeNothingIsStored) {
    for (int i = 0; i < 5; ++i)
        sendNoise("r" + std::to_string(i), {.time = "2026-05-0" + std::to_string(i + 1) + "T06:20:00Z"}, i);
    EXPECT_EQ(taken().stored, 5u);
    const auto before = contentOf(*fleet_);
    const ImportReport again = taken();
    EXPECT_EQ(again.stored, 0u);
    EXPECT_EQ(again.already, 5u);
    EXPECT_EQ(contentOf(*fleet_), before);
}

TEST_F(ImportTest, OtherNameSameRecording) {
    sendNoise("a", {});
    sendNoise("b", {});  // within one import
    EXPECT_EQ(taken().stored, 1u);
    sendNoise("c", {});  // and in a later one
    const ImportReport later = taken();
    EXPECT_EQ(later.stored, 0u);
    EXPECT_EQ(later.already, 3u);
    EXPECT_EQ(count(), 1u);
}

// Recordings of a stopped machine can be alike to the last bit.
TEST_F(ImportTest, SameBytesAtAnotherTimeOrPointAreAnotherRecording) {
    const std::string still = noiseWav(1, 0.7, 0, 6400, 1);
    send(in_, "a", still, {.machine = "T-2", .point = "M", .channels = {"x"}});
    send(in_, "b", still,
         {.machine = "T-2", .point = "M", .time = "2026-05-05T06:20:00Z", .channels = {"x"}});
    send(in_, "c", still, {.machine = "T-2", .point = "F", .channels = {"x"}});
    EXPECT_EQ(taken().stored, 3u);
    const auto entries = entriesOf("T-2");
    ASSERT_EQ(entries.size(), 3u);
    for (const RecordingEntry& entry : entries)
        EXPECT_EQ(entry.running, "stopped");
}

TEST_F(ImportTest, NumberOfThreadsChangesNothing) {
    for (int i = 0; i < 12; ++i)
        sendNoise("r" + std::to_string(10 + i), {.time = "2026-05-" + std::to_string(10 + i) + "T06:20:00Z"},
                  i);
    std::vector<std::vector<std::string>> acknowledged(2);
    std::vector<std::vector<std::string>> contents;
    for (int run = 0; run < 2; ++run) {
        const auto fleet = newFleet(folder_ / ("f" + std::to_string(run)));
        options_.threads = run == 0 ? 1 : 4;
        options_.batch = run == 0 ? 16 : 5;
        options_.acknowledged = [&, run](const std::vector<std::string>& paths) {
            acknowledged[run].insert(acknowledged[run].end(), paths.begin(), paths.end());
        };
        ASSERT_TRUE(import(*fleet, disk_, {in_}, options_));
        contents.push_back(contentOf(*fleet));
        const auto machine = fleet->machines().byTag("T-1")->id;
        const auto entries = fleet->recordings().list(machine, at("2026-01-01T00:00:00Z"), kNow).value();
        for (std::size_t i = 1; i < entries.size(); ++i)
            EXPECT_LT(entries[i - 1].id, entries[i].id);  // stored in the order of the names
    }
    EXPECT_EQ(contents[0], contents[1]);
    EXPECT_EQ(acknowledged[0], acknowledged[1]);
    EXPECT_EQ(acknowledged[0].size(), 12u);
}

// Row by row, packed bytes and numbers of rows and all: what workers pack does not depend on who packs it.
TEST_F(ImportTest, OneThreadAndFourMakeTheSameTables) {
    sendFaulty("a_faulty", "2026-05-04T06:20:00Z", 3);
    sendFaulty("b_faulty", "2026-05-05T06:20:00Z", 4);
    for (int i = 10; i < 20; ++i)
        sendNoise("r" + std::to_string(i), {.time = "2026-05-" + std::to_string(i) + "T06:20:00Z"}, i);
    fleet_.reset();
    std::vector<std::vector<std::string>> tables;
    for (const int threads : {1, 4}) {
        const std::string path = folder_ / ("by" + std::to_string(threads) + ".fettle");
        std::filesystem::copy_file(path_, path);
        auto fleet = FleetFile::open(path);
        ASSERT_TRUE(fleet) << fleet.error().sentence();
        options_.threads = threads;
        const auto report = import(**fleet, disk_, {in_}, options_);
        ASSERT_TRUE(report) << report.error().sentence();
        EXPECT_EQ(report->stored, 12u);
        fleet->reset();
        tables.push_back(tablesOf(path));
    }
    EXPECT_THAT(tables[0], Contains(HasSubstr("waveform|12|")));
    EXPECT_EQ(tables[0], tables[1]);
}

TEST_F(ImportTest, AcknowledgesStoredAndKnownAndNothingElse) {
    const std::string good = sendNoise("a_good", {});
    const std::string same = sendNoise("b_same", {});
    sendNoise("c_stranger", {.machine = "X-9"}, 2);
    std::vector<std::string> acknowledged;
    options_.acknowledged = [&](const std::vector<std::string>& paths) {
        for (const std::string& path : paths) {
            acknowledged.push_back(path);
            EXPECT_EQ(fleet_->recordings().count().value(), 1u);  // it is in by then
        }
    };
    taken();
    EXPECT_THAT(acknowledged, ElementsAre(good, same));
}

// Refused as "in/a.wav" and taken in, or refused for another reason, under its whole path.
TEST_F(ImportTest, ARefusalIsOfTheFileAndNotOfItsName) {
    const auto back = std::filesystem::current_path();
    const std::string path = sendNoise("a", {.machine = "X-9"});
    std::filesystem::current_path(folder_.path());
    EXPECT_EQ(taken({"in/../in/a.wav"}).refusals[0].path, "in/../in/a.wav") << "told as it was named";
    std::filesystem::current_path(back);
    ASSERT_EQ(fleet_->log().refusals()->size(), 1u);
    EXPECT_EQ(fleet_->log().refusals()->front().path, path);
    sendNoise("a", {.point = "nowhere"});
    taken({path});
    ASSERT_EQ(fleet_->log().refusals()->size(), 1u);
    EXPECT_EQ(fleet_->log().refusals()->front().place, "/point");
    sendNoise("a", {});
    EXPECT_EQ(taken({path}).stored, 1u);
    EXPECT_TRUE(fleet_->log().refusals(true)->empty());
}

TEST_F(ImportTest, RefusalsAreKeptAndGoWhenTheFileIsTakenInAfterAll) {
    const std::string path = sendNoise("a", {.machine = "X-9"});
    ImportReport report = taken();
    ASSERT_EQ(report.refusals.size(), 1u);
    EXPECT_EQ(report.refusals[0].kind, "refused");
    EXPECT_EQ(report.refusals[0].path, path);
    EXPECT_EQ(report.refusals[0].place, "/machine");
    EXPECT_THAT(report.refusals[0].rule, HasSubstr("\"X-9\""));
    options_.now = kNow + std::chrono::hours(24);
    taken();
    auto kept = fleet_->log().refusals();
    ASSERT_TRUE(kept);
    ASSERT_EQ(kept->size(), 1u);  // the same path and rule: counted, not doubled
    EXPECT_EQ((*kept)[0].times, 2);
    EXPECT_EQ((*kept)[0].firstSeen, kNow);
    EXPECT_EQ((*kept)[0].lastSeen, *options_.now);
    sendNoise("a", {});
    EXPECT_EQ(taken().stored, 1u);
    EXPECT_TRUE(fleet_->log().refusals(true)->empty());
}

TEST_F(ImportTest, OneBadFileDoesNotStopTheOthers) {
    for (int i = 0; i < 8; ++i)
        sendNoise("r" + std::to_string(i), {.time = "2026-05-0" + std::to_string(i + 1) + "T06:20:00Z"}, i);
    const std::string whole = noiseWav(3);
    ASSERT_TRUE(disk_.writeSafely(in_ + "/r3.wav", whole.substr(0, whole.size() / 2)));
    ASSERT_TRUE(disk_.writeSafely(in_ + "/r5.json", "{ \"machine\": "));
    ASSERT_TRUE(disk_.writeSafely(in_ + "/r6.wav", ""));
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 5u);
    ASSERT_EQ(report.refusals.size(), 3u);
    EXPECT_THAT(report.refusals[0].rule, HasSubstr("ends after"));
    EXPECT_THAT(report.refusals[1].place, HasSubstr("r5.json"));
    EXPECT_EQ(report.refusals[2].rule, "the file is empty");
    EXPECT_EQ(report.found, report.stored + report.refusals.size());
}

TEST_F(ImportTest, FolderWithStrangeFiles) {
    sendNoise("good", {});
    for (const char* name :
         {"notes.txt", "readme.md", "machine.json", ".hidden", "photo.jpg", "x.wav.17.part"})
        ASSERT_TRUE(disk_.writeSafely(in_ + "/" + name, "all bolts checked; see the log\n1;2\n"));
    ASSERT_TRUE(disk_.writeSafely(in_ + "/broken.wav", "all bolts checked"));
    ASSERT_TRUE(disk_.makeFolders(in_ + "/sub"));
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 1u);
    ASSERT_EQ(report.refusals.size(), 1u);  // a .wav that is none is somebody's recording, damaged
    EXPECT_THAT(report.refusals[0].path, HasSubstr("broken.wav"));
    EXPECT_EQ(report.passedOver, 7u);  // six strange ones and the sidecar
    // Named, they are refused.
    EXPECT_EQ(taken({in_ + "/notes.txt", in_ + "/machine.json", in_ + "/nosuch.wav"}).refusals.size(), 3u);
}

TEST_F(ImportTest, FoldersWithinFoldersWhenAskedTo) {
    send(in_ + "/T-1/may", "a", noiseWav(1), {});
    send(in_ + "/T-2", "b", noiseWav(2, 0.7, 0.1, 6400, 1),
         {.machine = "T-2", .point = "M", .channels = {"x"}});
    EXPECT_EQ(taken().found, 0u);
    options_.recursive = true;
    EXPECT_EQ(taken().stored, 2u);
}

TEST_F(ImportTest, HostileNames) {
    std::vector<std::string> names = {"with blank", "new\nline",          "quote'\"",   "ünïcödé",
                                      "-dash",      "percent%s%n",        "semi;colon", "\xff\xfe",
                                      "tab\there",  std::string(200, 'n')};
    for (std::size_t i = 0; i < names.size(); ++i)
        sendNoise(names[i], {.time = "2026-05-" + std::to_string(10 + i) + "T06:20:00Z"}, i);
    const std::string bad = in_ + "/bad\nname\x1b[31m.wav";
    ASSERT_TRUE(disk_.writeSafely(bad, "RIFF"));
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, names.size());
    ASSERT_EQ(report.refusals.size(), 1u);
    EXPECT_EQ(report.refusals[0].path, bad);
    EXPECT_EQ(taken().already, names.size());
    EXPECT_EQ(fleet_->log().refusals()->size(), 1u);
    expectClean();
}

TEST_F(ImportTest, DescriptionThatHeldThen) {
    // From June on the point is called Q.
    std::string june = made::motorText();
    june.replace(june.find("\"id\": \"P\""), 9, "\"id\": \"Q\"");
    ASSERT_TRUE(fleet_->machines().put(june, "june.json", "2026-05-10"));
    sendNoise("may", {.time = "2026-05-09T23:59:59Z"}, 1);
    sendNoise("may_wrong", {.point = "Q", .time = "2026-05-09T12:00:00Z"}, 2);
    sendNoise("june", {.point = "Q", .time = "2026-05-10T00:00:00Z"}, 3);
    sendNoise("june_wrong", {.time = "2026-05-11T00:00:00Z"}, 4);
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 2u);
    ASSERT_EQ(report.refusals.size(), 2u);
    EXPECT_THAT(report.refusals[0].rule, HasSubstr("has Q"));
    EXPECT_THAT(report.refusals[1].rule, HasSubstr("has P"));
}

TEST_F(ImportTest, RemovedMachine) {
    ASSERT_TRUE(fleet_->machines().remove("T-1", "2026-05-10", "scrapped"));
    sendNoise("before", {.time = "2026-05-09T12:00:00Z"}, 1);
    sendNoise("after", {.time = "2026-05-12T12:00:00Z"}, 2);
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 1u);
    ASSERT_EQ(report.refusals.size(), 1u);
    EXPECT_THAT(report.refusals[0].rule, HasSubstr("2026-05-10"));
}

// A log of many gigabytes beside the recordings is not read to see whether it is one. Holes only, no bytes.
TEST_F(ImportTest, ATextBeyondAnyRecordingIsNotReadForItsBeginning) {
    sendNoise("a", {});
    std::filesystem::resize_file((RealFileSystem().writeSafely(in_ + "/log.csv", "x"), in_ + "/log.csv"),
                                 kMostRecordingBytes + 1);
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 1u);
    ASSERT_EQ(report.refusals.size(), 1u);
    EXPECT_THAT(report.refusals[0].rule, HasSubstr("is larger than"));
}

// The week of a round that is kept, open or closed, by the calendar of the site: Sydney is ten hours ahead in
// May.
TEST_F(ImportTest, LateWhereTheListIsKept) {
    ASSERT_TRUE(fleet_->setSite({"Test", "Australia/Sydney", 0.1}));
    RoundEntry round;
    round.from = "2026-05-04";
    round.until = "2026-05-10";
    round.engine = "test";
    const auto open = fleet_->rounds().open(round, {});
    ASSERT_TRUE(open) << open.error().sentence();
    sendNoise("a_open", {.time = "2026-05-05T00:00:00Z"}, 1);
    EXPECT_EQ(taken().late, 1u) << "its list was made without it";
    ASSERT_TRUE(fleet_->rounds().close(*open, "engineer"));
    sendNoise("b_before", {.time = "2026-05-03T13:59:59Z"}, 2);  // 23:59:59 on the 3rd there
    sendNoise("c_first", {.time = "2026-05-03T14:00:00Z"}, 3);
    sendNoise("d_last", {.time = "2026-05-10T13:59:59Z"}, 4);
    sendNoise("e_after", {.time = "2026-05-10T14:00:00Z"}, 5);
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 4u);
    EXPECT_EQ(report.late, 2u);
    std::vector<std::string> late;
    for (const RecordingEntry& entry : entriesOf("T-1"))
        if (entry.late) late.push_back(fileNameOf(entry.file));
    EXPECT_THAT(late, ElementsAre("c_first.wav", "a_open.wav", "d_last.wav"));
}

TEST_F(ImportTest, CancelledInTheMiddleAndCarriedOn) {
    for (int i = 0; i < 20; ++i)
        sendNoise("r" + std::to_string(10 + i), {.time = "2026-05-" + std::to_string(10 + i) + "T06:20:00Z"},
                  i);
    options_.batch = 4;
    std::size_t steps = 0;
    options_.progress = [&](std::size_t done, std::size_t total, std::string_view) {
        EXPECT_EQ(done, ++steps);
        EXPECT_EQ(total, 20u);
        if (done == 7) options_.cancel.cancel();
    };
    std::vector<std::string> acknowledged;
    options_.acknowledged = [&](const std::vector<std::string>& paths) {
        for (const std::string& path : paths)
            acknowledged.push_back(fileNameOf(path));
    };
    const ImportReport first = taken();
    EXPECT_TRUE(first.cancelled);
    EXPECT_EQ(first.stored, 7u);  // what was examined is not thrown away
    EXPECT_EQ(filesIn(*fleet_), acknowledged);
    options_.cancel = {};
    options_.progress = {};
    const ImportReport second = taken();
    EXPECT_FALSE(second.cancelled);
    EXPECT_EQ(second.already, 7u);
    EXPECT_EQ(second.stored, 13u);
    expectClean();
}

TEST_F(ImportTest, AReadOnlyFleetFileIsNotWritten) {
    sendNoise("a", {});
    fleet_.reset();
    auto opened = FleetFile::open(path_, OpenMode::ReadOnly);
    ASSERT_TRUE(opened);
    const auto report = import(**opened, disk_, {in_}, options_);
    ASSERT_FALSE(report);
    EXPECT_EQ(report.error().kind, ErrorKind::Unwritable);
}

TEST_F(ImportTest, UnknownKeyIsOneWarningForAllFiles) {
    for (int i = 0; i < 3; ++i) {
        sendNoise("r" + std::to_string(i), {.time = "2026-05-0" + std::to_string(i + 1) + "T06:20:00Z"}, i);
        const std::string sidecar = in_ + "/r" + std::to_string(i) + ".json";
        std::string text = disk_.read(sidecar).value();
        ASSERT_TRUE(disk_.writeSafely(sidecar, "{\"colour\":\"grey\"," + text.substr(1)));
    }
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 3u);
    ASSERT_EQ(report.warnings.size(), 1u);
    EXPECT_THAT(report.warnings[0].text, HasSubstr("colour"));
    EXPECT_THAT(report.warnings[0].path, HasSubstr("r0"));
    EXPECT_EQ(report.warnings[0].files, 3u);
}

}  // namespace
}  // namespace fettle::intake_test
