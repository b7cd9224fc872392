// The map of a simulated inverter machine whose natural frequencies are known (core/simulate: one spring,
// mass and damper a direction), and of a machine at one speed. The simulator's physics is written apart from
// this program's.
#include "core/fleet/resonance_desk.h"

#include "core/base/file_system.h"
#include "core/diagnosis/prepare.h"
#include "core/diagnosis/waterfall_lines.h"
#include "tests/exchange/schema_check.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;

constexpr int kRecordings = 72;

Machine cooler() {
    return made::machineOf(R"({ "tag": "FN-09", "service": "cooler fan", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 45, "poles": 4, "rated_rpm": 1478, "supply": "inverter", "rated_hz": 50,
                    "output_hz_range": [25, 50], "rpm_min": 720, "rpm_max": 1490 },
        "points": [ { "id": "P", "at": "driver DE", "mount": "bearing_housing", "fixing": "stud", "channels": [
            { "name": "x", "quantity": "acceleration", "unit": "g", "direction": "horizontal" },
            { "name": "z", "quantity": "acceleration", "unit": "g", "direction": "axial" } ] } ] })");
}

// Spectra as they are stored, of speeds between 31 and 48 Hz of output in a fixed scattered order.
std::vector<ChannelSpectra> swept(const sim::MachineCharacter& character) {
    const Machine machine = cooler();
    std::vector<ChannelSpectra> channels{{"P x", {}}, {"P z", {}}};
    for (int i = 0; i < kRecordings; ++i) {
        auto setup = made::setupOf(machine, std::uint64_t(i + 1), 2);
        setup.character = character;
        setup.operation.outputHz = 31 + 17.0 * ((i * 29) % kRecordings) / kRecordings;
        const auto one = made::made(setup);
        const PreparedRecording prepared = prepare(machine, one.recording, {});
        for (std::size_t c = 0; c < channels.size() && c < prepared.views.size(); ++c)
            for (WaterfallLines& lines : waterfallLines(prepared.views[c], 10))
                if (lines.kind == "velocity")
                    channels[c].spectra.push_back({60 * one.shaftHz, lines.topHz, std::move(lines.lines)});
    }
    return channels;
}

const Resonance* nearest(const ResonanceMap& map, double hz) {
    const Resonance* best = nullptr;
    for (const Resonance& one : map.resonances)
        if (!best || std::abs(one.hz - hz) < std::abs(best->hz - hz)) best = &one;
    return best;
}

TEST(SimulatedSweep, ShowsTheNaturalFrequenciesOfItsSupports) {
    const auto character = sim::characterOf(cooler());
    const ResonanceMap map = resonanceMap(swept(character), 720, 1490);
    ASSERT_EQ(map.lacking, "");
    const Resonance* horizontal = nearest(map, character.horizontal.hz);
    ASSERT_NE(horizontal, nullptr);
    const double bin = horizontal->crossings.front().order *
                       (map.channels[0].bins[0].toRpm - map.channels[0].bins[0].fromRpm) / 60;
    EXPECT_NEAR(horizontal->hz, character.horizontal.hz, bin);
    EXPECT_EQ(horizontal->crossings.front().channel, "P x");
    Json json = toJson(MachineResonance{nullptr, {}, {}, "UTC", map});
    EXPECT_EQ(json["resonances"].size(), map.resonances.size());
    EXPECT_EQ(json["bands"][0]["level_mm_s"], map.bands.at(0).level);
    json["schema"] = 1, json["engine"] = "0", json["machine"] = "FN-09";
    const auto text =
        RealFileSystem().read(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/resonance.schema.json");
    ASSERT_TRUE(text);
    const Json schema = Json::parse(*text);
    EXPECT_THAT(made::SchemaCheck(schema).faultsOf(json), testing::IsEmpty());
    EXPECT_THAT(made::SchemaCheck(schema).untoldKeysOf(json), testing::IsEmpty());
}

TEST(SimulatedSweep, OfAMachineWithoutOneInReachShowsNone) {
    auto character = sim::characterOf(cooler());
    character.horizontal = {600, 0.5};
    character.axial = {700, 0.5};
    const ResonanceMap map = resonanceMap(swept(character), 720, 1490);
    ASSERT_EQ(map.lacking, "");
    EXPECT_TRUE(map.resonances.empty())
        << map.resonances[0].hz << " Hz, order " << map.resonances[0].crossings[0].order;
}

class ResonanceDesk : public MadeHistory {};

TEST_F(ResonanceDesk, AMachineAtOneSpeedHasNotEnough) {
    hearDays("FN-01", "2026-03-01", "2026-03-20", {});
    const auto found = resonanceOf(*fleet_, "FN-01");
    ASSERT_TRUE(found) << found.error().sentence();
    EXPECT_THAT(found->map.lacking, HasSubstr("not enough speeds: 20 recordings between 1484 and 1484"));
    EXPECT_EQ(found->map.channels.size(), 1u);
    EXPECT_THAT(resonanceOf(*fleet_, "FN-02")->map.lacking, HasSubstr("no running recording"));
    EXPECT_FALSE(resonanceOf(*fleet_, "FN-99"));
}

}  // namespace
}  // namespace fettle::fleet_test
