#include "tests/intake/disturbed.h"

#include <cstdlib>
#include <set>

#include "core/base/text.h"
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

int timesFrom(const char* variable, int usual) {
    const char* text = std::getenv(variable);
    const auto number = parseInteger(text ? text : "");
    return number && *number > 0 ? int(*number) : usual;
}

}  // namespace fettle::intake_test
