// Why: the tests of intake want a folder of recordings as a node would leave it, and a fleet file with the
// machines they are of. Recordings come from the simulator (truth known), small ones from plain numbers.
// Times are given; nothing depends on today.
#pragma once

#include <gtest/gtest.h>

#include "core/base/json_object.h"
#include "core/diagnosis/examine.h"
#include "core/intake/import.h"
#include "core/signal/reader.h"
#include "core/signal/sound_file.h"
#include "tests/base/scratch_folder.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle::intake_test {

inline Instant at(const std::string& utc) {
    return parseUtc(utc).value();
}
inline const Instant kNow = at("2026-06-01T12:00:00Z");

// What the sidecar says; empty texts are left out.
struct Said {
    std::string machine = "T-1", point = "P", time = "2026-05-04T06:20:00Z", received = "", capture = "";
    std::vector<std::string> channels{"x", "z"};
    std::string unit = "g";
    double scale = 1, speedRpm = 0;
};

inline Json sidecarOf(const Said& said) {
    Json json = Json::object();
    const auto add = [&](const char* key, const std::string& value) {
        if (!value.empty()) json[key] = value;
    };
    add("machine", said.machine);
    add("point", said.point);
    add("time", said.time);
    add("received", said.received);
    add("capture", said.capture);
    if (said.speedRpm > 0) json["speed_rpm"] = said.speedRpm;
    json["channels"] = Json::array();
    for (const std::string& name : said.channels)
        json["channels"].push_back({{"name", name}, {"unit", said.unit}, {"scale", said.scale}});
    return json;
}

// 16-bit WAV of noise: as quick to make as it is to examine.
inline std::string noiseWav(std::uint64_t seed, double seconds = 0.7, double sigma = 0.1,
                            double rateHz = 6400, std::size_t channels = 2) {
    std::vector<std::vector<double>> samples;
    for (std::size_t c = 0; c < channels; ++c) {
        samples.push_back(made::noise(std::size_t(seconds * rateHz), sigma, seed * 16 + c));
        for (double& x : samples.back())
            x = std::clamp(x, -1.0, 1.0);
    }
    auto bytes = writeSoundFile(samples, rateHz, SoundFormat::WavPcm16);
    EXPECT_TRUE(bytes) << (bytes ? "" : bytes.error().sentence());
    return bytes ? *bytes : "";
}

// What a simulated node would send: 24-bit WAV in parts of its range, and the range as the scale.
struct Sent {
    std::string wav;
    double scale = 1, speedRpm = 0;
    void tell(Said& said) const { said.scale = scale, said.speedRpm = speedRpm; }
};
inline Sent sent(const sim::SimulationSetup& setup) {
    const auto simulated = sim::simulate(setup);
    EXPECT_TRUE(simulated) << (simulated ? "" : simulated.error().sentence());
    std::vector<std::vector<double>> samples;
    for (const sim::SimulatedChannel& channel : simulated->channels) {
        samples.emplace_back();
        for (const std::int32_t sample : channel.samples)
            samples.back().push_back(sample / std::ldexp(1.0, simulated->bits - 1));
    }
    auto bytes = writeSoundFile(samples, simulated->rateHz, SoundFormat::WavPcm24);
    EXPECT_TRUE(bytes) << (bytes ? "" : bytes.error().sentence());
    return {bytes ? *bytes : "", simulated->channels[0].scale, simulated->shaftHz * 60};
}

// A file and its sidecar; the name is without extension.
inline std::string send(const std::string& folder, const std::string& name, const std::string& wav,
                        const Said& said) {
    RealFileSystem disk;
    EXPECT_TRUE(disk.makeFolders(folder));
    EXPECT_TRUE(disk.writeSafely(folder + "/" + name + ".json", sidecarOf(said).dump()));
    EXPECT_TRUE(disk.writeSafely(folder + "/" + name + ".wav", wav));
    return folder + "/" + name + ".wav";
}

// The two machines of tests/diagnosis: T-1 with one point P, T-2 with M and F.
inline const char* kFanSet = R"({ "tag": "T-2", "service": "test fan", "mains_hz": 50, "support": "rigid",
    "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484 }, "driven": { "kind": "fan", "blades": 12 },
    "points": [
      { "id": "M", "at": "driver DE", "channels": [
        { "name": "x", "quantity": "acceleration", "unit": "g", "direction": "horizontal" },
        { "name": "v", "quantity": "velocity", "unit": "mm/s", "direction": "axial" },
        { "name": "flux", "quantity": "flux", "unit": "1" } ] },
      { "id": "F", "at": "driven DE", "channels": [ { "name": "x" } ] } ] })";

inline std::unique_ptr<FleetFile> newFleet(const std::string& path,
                                           const SiteSettings& site = {"Test", "UTC", 0.1}) {
    auto fleet = FleetFile::create(path, site);
    EXPECT_TRUE(fleet) << (fleet ? "" : fleet.error().sentence());
    if (!fleet) return nullptr;
    for (const std::string& machine : {made::motorText(), std::string(kFanSet)}) {
        const auto put = (*fleet)->machines().put(machine, "machine.json");
        EXPECT_TRUE(put) << (put ? "" : put.error().sentence());
    }
    return std::move(*fleet);
}

class IntakeTest : public testing::Test {
  protected:
    void SetUp() override {
        fleet_ = newFleet(path_);
        ASSERT_TRUE(fleet_);
        options_.now = kNow;
        options_.threads = 2;
    }
    std::string sendNoise(const std::string& name, const Said& said, std::uint64_t seed = 1) {
        return send(in_, name, noiseWav(seed), said);
    }
    ImportReport taken(const std::vector<std::string>& paths) {
        const auto report = import(*fleet_, disk_, paths, options_);
        EXPECT_TRUE(report) << (report ? "" : report.error().sentence());
        return report ? *report : ImportReport{};
    }
    ImportReport taken() { return taken({in_}); }
    std::size_t count() { return fleet_->recordings().count().value(); }
    std::vector<RecordingEntry> entriesOf(const std::string& tag) {
        const auto machine = fleet_->machines().byTag(tag);
        EXPECT_TRUE(machine);
        const auto entries =
            fleet_->recordings().list(machine->id, at("1970-01-01T00:00:00Z"), at("2100-01-01T00:00:00Z"));
        EXPECT_TRUE(entries);
        return *entries;
    }
    void expectClean() {
        const auto faults = fleet_->check(true);
        ASSERT_TRUE(faults) << faults.error().sentence();
        EXPECT_TRUE(faults->empty()) << faults->front();
    }

    ScratchFolder folder_;
    std::string path_ = folder_ / "site.fettle", in_ = folder_ / "in";
    std::unique_ptr<FleetFile> fleet_;
    RealFileSystem disk_;
    ImportOptions options_;
};

}  // namespace fettle::intake_test
