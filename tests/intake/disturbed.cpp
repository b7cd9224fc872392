#include "tests/intake/disturbed.h"

#include <cstdlib>
#include <filesystem>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/intake/re_examine.h"
#include "core/store/packed_recording.h"
#include "core/store/re_examination_store.h"
#include "tests/intake/fleet_content.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {

namespace {

ImportOptions options() {
    ImportOptions options;
    options.now = kNow;
    options.threads = 2;
    return options;
}

Said saidOf(int i) {
    Said said;
    if (i % 3 == 0) said.machine = "T-2", said.point = "F", said.channels = {"x"};
    said.time = formatUtc(at("2026-05-04T06:20:00Z") + std::chrono::minutes(i));
    if (i % 16 == 5) said.machine = "X-9";  // refused
    if (i % 16 == 11) said.time.clear();    // parked
    return said;
}

constexpr const char* kLongAgo = "0.0.1 long ago";

// By "TAG TIME", as re-examination tells of them.
std::map<std::string, RecordingEntry> entriesByName(FleetFile& fleet) {
    std::map<std::string, RecordingEntry> all;
    const auto machines = fleet.machines().all().value();
    for (const MachineEntry& machine : machines) {
        const auto entries =
            fleet.recordings().list(machine.id, at("1970-01-01T00:00:00Z"), at("2100-01-01T00:00:00Z"));
        EXPECT_TRUE(entries);
        for (const RecordingEntry& entry : *entries)
            all.emplace(machine.tag + " " + formatUtc(entry.time), entry);
    }
    return all;
}

void expectClean(FleetFile& fleet) {
    const auto faults = fleet.check(true);
    ASSERT_TRUE(faults) << faults.error().sentence();
    EXPECT_TRUE(faults->empty()) << faults->front();
}

}  // namespace

Disturbed::Disturbed() : in_(folder_ / "in") {
    for (int i = 0; i < kRecordings; ++i) {
        const Said said = saidOf(i);
        send(in_, "r" + std::to_string(100 + i),
             noiseWav(std::uint64_t(i), 0.7, 0.1, 6400, said.channels.size()), said);
    }
    const auto fleet = newFleet(folder_ / "undisturbed.fettle");
    const auto report = import(*fleet, RealFileSystem(), {in_}, options());
    EXPECT_TRUE(report) << (report ? "" : report.error().sentence());
    if (!report) return;
    expected_ = contentOf(*fleet);
    refused_ = report->refusals.size();
    EXPECT_EQ(expected_.size() + refused_, std::size_t(kRecordings));
    EXPECT_EQ(refused_, 6u);
}

std::string Disturbed::newFleetFile(const std::string& folder, int run) const {
    const std::string path = folder + "/run" + std::to_string(run) + ".fettle";
    newFleet(path);
    return path;
}

void Disturbed::expectWholeAndCarriedOn(const std::string& fleetPath,
                                        const std::vector<std::string>& acknowledged) const {
    auto opened = FleetFile::open(fleetPath);
    ASSERT_TRUE(opened) << opened.error().sentence();
    FleetFile& fleet = **opened;
    expectClean(fleet);
    const std::vector<std::string> there = filesIn(fleet);
    const std::set<std::string> once(there.begin(), there.end());
    EXPECT_EQ(once.size(), there.size()) << "a recording stands twice";
    for (const std::string& path : acknowledged)
        EXPECT_EQ(once.count(fileNameOf(path)), 1u) << path << " was acknowledged and is not there";
    const auto report = import(fleet, RealFileSystem(), {in_}, options());
    ASSERT_TRUE(report) << report.error().sentence();
    EXPECT_EQ(report->already, there.size());
    EXPECT_EQ(report->refusals.size(), refused_);
    EXPECT_EQ(fleet.log().refusals()->size(), refused_);
    EXPECT_EQ(contentOf(fleet), expected_);
    expectClean(fleet);
}

WeighedLongAgo::WeighedLongAgo() {
    const Disturbed disturbed;
    const auto fleet = newFleet(path_);
    const auto report = import(*fleet, RealFileSystem(), {disturbed.in()}, options());
    EXPECT_TRUE(report) << (report ? "" : report.error().sentence());
    expected_ = contentOf(*fleet);
    for (const auto& [name, entry] : entriesByName(*fleet)) {
        NewRecording old;
        old.machine = entry.machine;
        old.running = "running";
        old.engine = kLongAgo;
        old.examinationJson = fleet->recordings().examinationJson(entry.id).value();
        const auto replaced = fleet->recordings().replaceExamination(entry.id, packComputed(old));
        EXPECT_TRUE(replaced) << (replaced ? "" : replaced.error().sentence());
    }
    EXPECT_NE(contentOf(*fleet), expected_);
}

std::string WeighedLongAgo::newFleetFile(const std::string& folder, int run) const {
    const std::string path = folder + "/again" + std::to_string(run) + ".fettle";
    std::filesystem::copy_file(path_, path);
    return path;
}

void WeighedLongAgo::expectWholeAndCarriedOn(const std::string& fleetPath,
                                             const std::vector<std::string>& acknowledged) const {
    auto opened = FleetFile::open(fleetPath);
    ASSERT_TRUE(opened) << opened.error().sentence();
    FleetFile& fleet = **opened;
    expectClean(fleet);
    const auto there = entriesByName(fleet);
    for (const std::string& name : acknowledged) {
        ASSERT_EQ(there.count(name), 1u) << name;
        EXPECT_EQ(there.at(name).engine, WeighingSettings().engine()) << name << " was acknowledged";
    }
    const auto report = reExamine(fleet, "", options());
    ASSERT_TRUE(report) << report.error().sentence();
    EXPECT_GE(report->alreadyCurrent, acknowledged.size());
    EXPECT_EQ(report->weighed + report->alreadyCurrent, expected_.size());
    EXPECT_EQ(contentOf(fleet), expected_);
    const auto runs = fleet.reExaminations().runs();
    ASSERT_TRUE(runs && runs->size() == 1u) << "what was cut short is carried on as one run";
    EXPECT_TRUE(runs->front().finished);
    const auto before = fleet.reExaminations().weighedBefore(runs->front().id);
    ASSERT_TRUE(before && before->size() == 1u);
    EXPECT_EQ(before->front().engine, kLongAgo);
    EXPECT_EQ(before->front().recordings, expected_.size());
    expectClean(fleet);
}

int timesFrom(const char* variable, int usual) {
    const char* text = std::getenv(variable);
    const auto number = parseInteger(text ? text : "");
    return number && *number > 0 ? int(*number) : usual;
}

}  // namespace fettle::intake_test
