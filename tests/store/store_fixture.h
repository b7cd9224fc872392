// Why: every test of the stores wants a fleet file of its own with a machine or two and recordings that look
// like a node's: whole numbers of 16 bits scaled to g, two axes and flux.
#pragma once

#include <gtest/gtest.h>

#include "core/store/fleet_file.h"
#include "tests/base/scratch_folder.h"

namespace fettle {

inline constexpr const char* kMachineForm =
    R"({"tag": "%s", "mains_hz": 50, "service": "%v", "site": "Hollin Edge", "area": "kiln", "criticality": "A",
        "driver": {"kind": "induction", "poles": 4, "rated_rpm": 1484, "power_kw": 75},
        "points": [{"id": "M-DE", "at": "driver DE", "channels": [
            {"name": "x", "quantity": "acceleration", "unit": "g", "direction": "horizontal"},
            {"name": "z", "quantity": "acceleration", "unit": "g", "direction": "axial"},
            {"name": "flux", "quantity": "flux", "unit": "1"}]}]})";

inline std::string machineJson(const std::string& tag, const std::string& service = "fan") {
    std::string text = kMachineForm;
    text.replace(text.find("%s"), 2, tag);
    text.replace(text.find("%v"), 2, service);
    return text;
}

inline Instant at(const std::string& utc) {
    return parseUtc(utc).value();
}

inline const SiteSettings kSite{"Hollin Edge", "Europe/London", 0.1};

// Nonsense that is the same everywhere; a linear congruential generator (Knuth's constants).
class Nonsense {
  public:
    explicit Nonsense(std::uint64_t seed) : state_(seed) {}
    std::uint64_t bits() {
        state_ = state_ * 6364136223846793005u + 1442695040888963407u;
        return state_ ^ state_ >> 29;
    }
    int below(int end) { return int((bits() >> 11) % std::uint64_t(end)); }

  private:
    std::uint64_t state_;
};

inline Channel wholeChannel(const std::string& name, std::size_t samples, std::uint64_t seed,
                            double scale = 16) {
    Channel channel{name, "M-DE", "g", 12800, {}, scale, 16, scale};
    Nonsense noise(seed);
    int walk = 0;
    for (std::size_t i = 0; i < samples; ++i) {
        walk = walk * 7 / 8 + noise.below(801) - 400;
        channel.samples.push_back(walk / 32768.0 * scale);
    }
    return channel;
}

// As intake would hand it in, with levels, spectra and a short examination.
inline NewRecording newRecording(std::int64_t machine, const std::string& time, std::uint64_t seed = 1,
                                 std::size_t samples = 4096) {
    auto raw = std::make_shared<Recording>();
    raw->file = "in/" + time + ".wav";
    raw->machine = "KL-ID-01";
    raw->point = "M-DE";
    raw->time = at(time);
    raw->timeSource = "node";
    raw->received = at(time) + std::chrono::seconds(9);
    raw->capture = "0417-" + std::to_string(seed);
    raw->simultaneous = Simultaneous::Yes;
    raw->speedRpm = 1483.25;
    raw->frameTempC = 61.5;
    raw->loadPct = 80;
    raw->warnings = {"a key nobody asked for: \"colour\""};
    raw->channels = {wholeChannel("x", samples, seed), wholeChannel("z", samples, seed + 1),
                     wholeChannel("flux", samples, seed + 2, 1)};
    raw->channels[2].unit = "1";
    NewRecording made;
    made.machine = machine;
    made.key = recordingKey(time + std::to_string(seed), *raw);
    made.format = "WAV";
    made.sidecar =
        R"({"schema": 1, "engine": "node 4.2.1", "machine": "KL-ID-01", "point": "M-DE", "time": ")" + time +
        R"(", "capture": "0417-)" + std::to_string(seed) + R"(", "speed_rpm": 1483.25})";
    made.running = "running";
    made.speedRpm = 1483.2;
    made.speedPlusMinusRpm = 0.3;
    made.engine = "0.1.0 5c1f";
    made.examinationJson = R"({"schema": 1, "seed": )" + std::to_string(seed) + "}";
    made.weights = {{"bearing_outer_race", "driver DE", 12.5 + double(seed)}, {"unbalance", "driver", -3}};
    for (const char* name : {"x", "z"}) {
        TrendRow row;
        row.channel = name, row.point = "M-DE", row.quantity = "acceleration", row.unit = "g";
        row.direction = name[0] == 'x' ? "horizontal" : "axial";
        row.time = *raw->time;
        row.running = "running";
        for (std::size_t i = 0; i < kQuantities; ++i)
            row.values[i] = double(i) + double(seed) / 16;
        row.values[std::size_t(Quantity::AmbientTempC)].reset();
        row.zone = "C";
        row.nextLimitMmS = 4.5;
        made.trends.push_back(row);
        made.spectra.push_back({name, "M-DE", WaterfallKind::Velocity, 1000, std::vector<float>(800, 0.25f)});
    }
    made.recording = raw;
    return made;
}

// An empty fleet file with machine KL-ID-01.
class StoreTest : public testing::Test {
  protected:
    void SetUp() override {
        auto made = FleetFile::create(path_, kSite);
        ASSERT_TRUE(made) << made.error().sentence();
        fleet_ = std::move(*made);
        const auto put = fleet_->machines().put(machineJson("KL-ID-01"), "m.json");
        ASSERT_TRUE(put) << put.error().sentence();
        machine_ = fleet_->machines().byTag("KL-ID-01")->id;
    }
    // Closed and opened again.
    void reopen(OpenMode mode = OpenMode::ReadWrite) {
        fleet_.reset();
        auto opened = FleetFile::open(path_, mode);
        ASSERT_TRUE(opened) << opened.error().sentence();
        fleet_ = std::move(*opened);
    }
    void expectClean() {
        const auto faults = fleet_->check(true);
        ASSERT_TRUE(faults) << faults.error().sentence();
        EXPECT_TRUE(faults->empty()) << faults->front();
    }

    ScratchFolder folder_;
    std::string path_ = folder_ / "site.fettle";
    std::unique_ptr<FleetFile> fleet_;
    std::int64_t machine_ = 0;
};

}  // namespace fettle
