// A cage's comb is the cage's, whatever else finds a place on it. Geometry: an 8-ball 6309, whose elements'
// spin stands 2 (72.5 / 17.462 + 1) = 10.3 cage turns up, 2.9 % from a line of the comb. Levels are the
// simulator's.
#include <gtest/gtest.h>

#include "core/diagnosis/examine.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

Machine pumpMotor() {
    return made::machineOf(
        R"({ "tag": "T-CAGE", "mains_hz": 50, "driver": { "power_kw": 22, "poles": 2, "rated_rpm": 2945,
          "bearings": { "DE": { "rolling_elements": 8, "element_mm": 17.462, "pitch_mm": 72.5 } } },
        "points": [ { "id": "M", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
}

// Findings among the bearing's elements, three recordings each.
std::vector<std::string> namedFor(const char* kind) {
    std::vector<RecordingPtr> recordings;
    const Machine machine = pumpMotor();
    for (const std::uint64_t seed : {1u, 2u, 3u})
        recordings.push_back(
            made::made(made::with(made::setupOf(machine, seed, 4), kind, "driver DE", 0.75)).recording);
    const auto examined = examine(machine, recordings);
    EXPECT_TRUE(examined);
    std::vector<std::string> names;
    for (const Hypothesis& h : examined->findings)
        if (h.weightDban) names.push_back(h.fault);
    return names;
}

TEST(CageComb, ACagesCombNamesTheCageAlone) {
    EXPECT_EQ(namedFor("bearing_cage"), std::vector<std::string>{"bearing_cage"});
}

// Strikes at the spin's own rate, in clusters a cage turn apart: no comb between them.
TEST(CageComb, AnElementKeepsItsLines) {
    const auto names = namedFor("bearing_rolling_element");
    ASSERT_FALSE(names.empty());
    EXPECT_EQ(names[0], "bearing_rolling_element");
}

}  // namespace
}  // namespace fettle
