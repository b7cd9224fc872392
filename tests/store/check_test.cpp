#include <gmock/gmock.h>

#include <filesystem>

#include "core/store/database.h"
#include "core/store/packing.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

namespace fs = std::filesystem;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

// Two recordings; then somebody's hand in the tables.
class Check : public StoreTest {
  protected:
    void SetUp() override {
        StoreTest::SetUp();
        for (const char* time : {"2026-05-04T06:20:00Z", "2026-05-05T06:20:00Z"})
            ASSERT_TRUE(fleet_->recordings().put(newRecording(machine_, time, 1, 500)));
        ASSERT_TRUE(fleet_->machines().put(machineJson("B"), "b.json"));
    }
    void script(const std::string& sql) {
        auto database = Database::open(path_, Access::ReadWrite).value();
        const auto done = database->script("PRAGMA foreign_keys=OFF; " + sql);
        ASSERT_TRUE(done) << done.error().sentence();
    }
    std::vector<std::string> faults(bool deep = true) { return fleet_->check(deep).value(); }
};

TEST_F(Check, ASoundFileHasNoFaults) {
    EXPECT_THAT(faults(), IsEmpty());
    EXPECT_THAT(faults(false), IsEmpty());
    reopen(OpenMode::ReadOnly);
    EXPECT_THAT(faults(), IsEmpty());
}

TEST_F(Check, SamplesThatAreNotWhatWasPutIn) {
    script("UPDATE waveform SET digest = digest + 1 WHERE recording = 2 AND place = 0");
    EXPECT_THAT(faults(), ElementsAre(path_ + ": waveform of recording 2: is not what was put in"));
    EXPECT_EQ(fleet_->recordings().recording(2).error().kind, ErrorKind::Damaged);
    EXPECT_THAT(faults(false), IsEmpty()) << "structure only";
}

TEST_F(Check, AWaveformOrExaminationThatDoesNotUnpack) {
    script("UPDATE waveform SET data = x'0102' WHERE recording = 1 AND place = 1");
    script("UPDATE examination SET json = x'28b52ffd' WHERE recording = 2");
    EXPECT_THAT(faults(), ElementsAre(HasSubstr("waveform of recording 1: breaks off in its head"),
                                      HasSubstr("examination of recording 2: ")));
    EXPECT_EQ(fleet_->recordings().examinationJson(2).error().kind, ErrorKind::Damaged);
}

TEST_F(Check, AnExaminationThatIsNoJson) {
    auto database = Database::open(path_, Access::ReadWrite).value();
    ASSERT_TRUE(
        database->run("UPDATE examination SET json = ? WHERE recording = 2", Blob{pack("{\"schema\"")}));
    EXPECT_THAT(faults(), ElementsAre(HasSubstr("examination of recording 2: ")));
}

TEST_F(Check, RowsThatBelongToNothing) {
    script("DELETE FROM examination WHERE recording = 1");
    EXPECT_THAT(faults(), ElementsAre(HasSubstr("recordings 1: have no examination")));
    script("UPDATE channel SET machine = (SELECT id FROM machine WHERE tag = 'B') WHERE name = 'x'");
    EXPECT_THAT(faults(), Contains(HasSubstr("recordings 2: have channels of another machine")));
    script(
        "INSERT INTO weight SELECT machine, time + 1, recording, hypothesis, 0 FROM weight WHERE recording = "
        "2");
    EXPECT_THAT(faults(), Contains(HasSubstr("weights of recordings 2: are of another machine or time")));
    script(
        "INSERT INTO trend(channel, time, recording, running, zone) SELECT channel, time + 1, recording, '', "
        "'' "
        "FROM trend WHERE recording = 2");
    EXPECT_THAT(faults(), Contains(HasSubstr("trend rows of recordings 2: are of another channel or time")));
    script(
        "INSERT INTO spectrum SELECT channel, kind, time + 1, recording, top_hz, lines FROM spectrum WHERE "
        "recording = 2");
    EXPECT_THAT(faults(), Contains(HasSubstr("spectra of recordings 2: are of another channel or time")));
    script("DELETE FROM machine WHERE tag = 'KL-ID-01'");
    EXPECT_THAT(faults(), Contains(HasSubstr("belongs to a row of machine that is not there")));
}

TEST_F(Check, ProgressIsToldAndARequestToStopIsHeard) {
    std::size_t calls = 0, last = 0;
    const auto told = [&](std::size_t done, std::size_t total, std::string_view what) {
        ++calls;
        last = done;
        EXPECT_EQ(total, 2u);
        EXPECT_EQ(what, "recordings");
    };
    EXPECT_TRUE(fleet_->check(true, told));
    EXPECT_EQ(calls, 2u);
    EXPECT_EQ(last, 1u);
    CancelToken cancel;
    cancel.cancel();
    const auto stopped = fleet_->check(true, {}, cancel);
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().kind, ErrorKind::Cancelled);
    EXPECT_THAT(faults(), IsEmpty()) << "asked again";
}

using Backup = Check;

TEST_F(Backup, ACopyHoldsAllAndIsOneFile) {
    const std::string copy = folder_ / "copy.fettle";
    std::size_t last = 0, all = 1;
    const auto done = fleet_->backup(copy, [&](std::size_t pages, std::size_t total, std::string_view) {
        last = pages;
        all = total;
    });
    ASSERT_TRUE(done) << done.error().sentence();
    EXPECT_EQ(last, all);
    EXPECT_FALSE(fs::exists(copy + "-wal"));
    auto opened = FleetFile::open(copy);
    ASSERT_TRUE(opened) << opened.error().sentence();
    EXPECT_EQ((*opened)->outcome(), OpenOutcome::Current);
    EXPECT_EQ((*opened)->recordings().count().value(), 2u);
    EXPECT_THAT((*opened)->check(true).value(), IsEmpty());
    EXPECT_TRUE((*opened)->recordings().put(newRecording(machine_, "2026-06-01T00:00:00Z")));
}

// A writer goes on between the pages; the copy is of one moment.
TEST_F(Backup, WhileOthersWriteItIsOfOneMoment) {
    auto writer = FleetFile::open(path_).value();
    for (int i = 0; i < 12; ++i)  // some 300 pages: more than are copied at once
        ASSERT_TRUE(writer->recordings().put(
            newRecording(machine_, "2026-06-0" + std::to_string(i % 9 + 1) + "T00:00:00Z",
                         std::uint64_t(100 + i), 200000)));
    const std::size_t before = writer->recordings().count().value();
    std::size_t calls = 0;
    const auto done =
        fleet_->backup(folder_ / "copy.fettle", [&](std::size_t, std::size_t, std::string_view) {
            ++calls;
            EXPECT_TRUE(writer->recordings().put(
                newRecording(machine_, "2026-07-01T00:00:00Z", 1000 + std::uint64_t(calls), 500)));
        });
    ASSERT_TRUE(done) << done.error().sentence();
    EXPECT_GT(calls, 1u);
    auto copy = FleetFile::open(folder_ / "copy.fettle").value();
    EXPECT_EQ(copy->recordings().count().value(), before);
    EXPECT_THAT(copy->check(true).value(), IsEmpty());
    EXPECT_EQ(writer->recordings().count().value(), before + calls);
}

TEST_F(Backup, StoppedOnRequestItLeavesNothing) {
    CancelToken cancel;
    cancel.cancel();
    EXPECT_EQ(fleet_->backup(folder_ / "copy.fettle", {}, cancel).error().kind, ErrorKind::Cancelled);
    for (const auto& entry : fs::directory_iterator(folder_.path()))
        EXPECT_THAT(entry.path().filename().string(), testing::StartsWith("site.fettle"));
    EXPECT_THAT(faults(), IsEmpty());
    EXPECT_EQ(fleet_->backup(folder_ / "no/copy.fettle").error().kind, ErrorKind::Unreadable);
}

}  // namespace
}  // namespace fettle
