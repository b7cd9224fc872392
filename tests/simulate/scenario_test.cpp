#include "core/simulate/scenario.h"

#include <gtest/gtest.h>

#include <set>
#include <tuple>

#include "core/simulate/fleet_state.h"
#include "core/simulate/sample_plan.h"
#include "tests/simulate/probe.h"
#include "tests/simulate/sample_fleet.h"

namespace fettle::sim {
namespace {

using namespace probe;

TEST(SampleFleet, IsTwentyMachinesOverHalfAYearWithoutWarnings) {
    EXPECT_EQ(fleet().machines.size(), 20u);
    EXPECT_EQ(fleet().weeks, 26);
    EXPECT_TRUE(fleet().warnings.empty()) << fleet().warnings.front();
}

TEST(SampleFleet, HasTheKindsOfMachineAndStoryItPromises) {
    std::set<int> poles;
    std::set<double> rates;
    std::set<std::string> kinds;
    int decoys = 0, inverters = 0, sound = 0;
    for (const FleetMachine& machine : fleet().machines) {
        poles.insert(machine.machine.driver.poles.value_or(0));
        inverters += machine.machine.driver.inverter;
        sound += machine.stories.empty();
        EXPECT_GE(machine.machine.driver.powerKw, 5.5);
        EXPECT_LE(machine.machine.driver.powerKw, 250);
        for (const FleetNode& node : machine.nodes)
            rates.insert(node.kind.rateHz);
        for (const Story& story : machine.stories) {
            decoys += story.decoy;
            kinds.insert(story.condition.kind);
        }
    }
    EXPECT_EQ(poles, (std::set<int>{2, 4, 6}));
    EXPECT_EQ(rates, (std::set<double>{3200, 6400, 12800, 25600}));
    EXPECT_EQ(inverters, 1);
    EXPECT_EQ(decoys, 2);
    EXPECT_GE(sound, 5);
    for (const char* kind : {"unbalance", "bearing_outer_race", "misalignment", "rotor_bar", "looseness",
                             "gear_mesh", "cavitation", "bearing_dry_or_worn", "loose_node", kSilentKind,
                             kStoppedKind, "neighbour", "electrical_2x_mains"})
        EXPECT_TRUE(kinds.count(kind)) << kind;
}

TEST(SampleFleet, FanIsCleanedAndGathersAgain) {
    const FleetMachine* machine = byTag("KL-ID-01");
    ASSERT_TRUE(machine);
    const Story& story = machine->stories.at(0);
    const double before = severityAt(story, 10, utc("2026-03-24T00:00:00Z"));
    const double after = severityAt(story, 10, utc("2026-03-25T00:00:00Z"));
    EXPECT_GT(before, 0.5);
    EXPECT_LT(after, 0.1);
    EXPECT_GT(severityAt(story, 10, utc("2026-06-25T00:00:00Z")), 0.4);
}

TEST(Severity, RunsInStraightLinesBetweenDates) {
    const std::vector<DatedValue> knots{{utc("2026-01-10T00:00:00Z"), 0.2},
                                        {utc("2026-01-20T00:00:00Z"), 0.6}};
    EXPECT_DOUBLE_EQ(valueAt(knots, utc("2026-01-01T00:00:00Z")), 0.2);
    EXPECT_DOUBLE_EQ(valueAt(knots, utc("2026-01-15T00:00:00Z")), 0.4);
    EXPECT_DOUBLE_EQ(valueAt(knots, utc("2026-02-01T00:00:00Z")), 0.6);
    EXPECT_EQ(valueAt({}, utc("2026-02-01T00:00:00Z")), 0);
}

TEST(Severity, OfAHotDayStoryNeedsHeat) {
    Story story;
    story.severity = {{utc("2026-01-01T00:00:00Z"), 0.8}};
    story.hotAboveC = 20;
    EXPECT_EQ(severityAt(story, 15, utc("2026-06-01T00:00:00Z")), 0);
    EXPECT_DOUBLE_EQ(severityAt(story, 23, utc("2026-06-01T00:00:00Z")), 0.4);
    EXPECT_DOUBLE_EQ(severityAt(story, 35, utc("2026-06-01T00:00:00Z")), 0.8);
}

TEST(Weather, SummerIsWarmerAndSomeDaysAreHot) {
    const double winter = outdoorsC(fleet(), utc("2026-01-20T12:00:00Z"));
    EXPECT_GT(winter, -8);
    EXPECT_LT(winter, 12);
    EXPECT_GT(outdoorsC(fleet(), utc("2026-07-02T14:00:00Z")), 22);
}

// Every machine of the last week can be simulated; those without a fault sound like it. Gearboxes are left
// out of the kurtosis: mesh tones bring it below 3.
TEST(SampleFleet, LastWeekSoundsAsTold) {
    std::set<std::tuple<std::size_t, std::size_t, std::size_t>> heard;  // one of each node's captures
    for (const PlannedRecording& planned : planRecordings(fleet(), lastWeek())) {
        if (!heard.insert({planned.machine, planned.node, planned.capture}).second) continue;
        const FleetMachine& machine = fleet().machines[planned.machine];
        const auto recording = simulate(setupOf(fleet(), planned, 1));
        ASSERT_TRUE(recording) << recording.error().sentence();
        if (!machine.stories.empty()) continue;
        for (const SimulatedChannel& channel : recording->channels) {
            if (channel.unit != "g") continue;
            const auto values = valuesOf(*recording, channel.name);
            EXPECT_GT(rmsOf(values), 0.01) << machine.machine.tag;
            EXPECT_LT(rmsOf(values), 0.2) << machine.machine.tag;
            if (!machine.machine.gears.empty()) continue;
            EXPECT_GT(kurtosisOf(values), 2.7) << machine.machine.tag << " " << channel.name;
            EXPECT_LT(kurtosisOf(values), 3.5) << machine.machine.tag << " " << channel.name;
        }
    }
}

}  // namespace
}  // namespace fettle::sim
