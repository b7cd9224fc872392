#include "tests/bench/large_fleet.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <random>

#include "core/diagnosis/examine.h"
#include "core/exchange/examination_json.h"
#include "core/fleet/round_desk.h"
#include "core/intake/stored_form.h"
#include "core/store/fleet_file.h"
#include "tests/bench/bench_case.h"
#include "tests/bench/or_end.h"

namespace fettle::bench {

namespace {

using std::chrono::hours;
using std::chrono::minutes;

constexpr std::size_t kBatch = 500;
constexpr int kAreas = 12, kFaultyEvery = 40, kSilentEvery = 20, kSilentWeeks = 3;
constexpr int kFullOnes = 40;  // newest recordings of the year's machine whose waveforms are kept

constexpr const char* kMachine =
    R"({{ "tag": "{0}", "asset": "E-{1:05}", "service": "fan {1}", "area": "Hall {2}",
    "mains_hz": 60, "support": "rigid",
    "driver": {{ "kind": "induction", "power_kw": 1.5, "poles": 4, "rated_rpm": 1730, "supply": "mains",
      "bearings": {{
        "DE":  {{ "designation": "6205", "rolling_elements": 9, "element_mm": 7.94, "pitch_mm": 39.04 }},
        "NDE": {{ "designation": "6203", "rolling_elements": 8, "element_mm": 6.746, "pitch_mm": 28.5 }} }} }},
    "points": [ {{ "id": "DE", "at": "driver DE", "mount": "bearing_housing",
      "channels": [ {{ "name": "de", "quantity": "acceleration", "unit": "g", "direction": "vertical" }} ] }} ] }})";

std::string tagOf(int machine) {
    return fmt::format("M-{:04}", machine);
}

// A recording with everything weighed on it, and the same with an examination that holds its facts alone.
struct Form {
    NewRecording full;
    std::string factsOnly;
};

Form formOf(const BenchCase& from, const std::string& tag, std::int64_t machine) {
    Machine described = from.machine;
    described.tag = tag;
    auto raw = std::make_shared<Recording>(*from.recording);
    raw->machine = tag;
    raw->point = "DE";
    raw->time = parseUtc("2026-01-01T00:00:00Z");
    raw->frameTempC = 52;
    raw->ambientTempC = 21;
    raw->loadPct = 80;
    const ExaminedRecording examined = orEnd(examineRecording(described, raw));
    Form form{storedForm(raw, machine, described, examined), {}};
    Examination facts = examined.examination;
    facts.findings.clear();
    facts.considered.clear();
    facts.blind.clear();
    form.factsOnly = examinationAsText(facts);
    return form;
}

class LargeFleet {
  public:
    explicit LargeFleet(const LargeFleetOptions& options) : options_(options) {}

    void make() {
        const std::string path = options_.folder + "/large.fettle";
        std::filesystem::create_directories(options_.folder);
        std::filesystem::remove(path);
        fleet_ = orEnd(FleetFile::create(path, {"large", "UTC", 0.1}));
        for (int i = 1; i <= options_.machines; ++i)
            orEnd(fleet_->machines().put(fmt::format(kMachine, tagOf(i), i, 1 + i % kAreas), "large fleet"));
        for (int i = 2; i <= options_.machines; ++i)
            addWeekly(i);
        addYear();
        flush();
        fmt::print("{} machines and {} recordings; the round is being opened\n", options_.machines, made_);
        const KeptRound round = orEnd(openRound(*fleet_, kLastDay));
        fleet_.reset();
        fmt::print("{}: {:.0f} MB, {} lines in the round\n", path,
                   double(std::filesystem::file_size(path)) / 1e6, round.list.machines.size());
    }

  private:
    // One examination serves many machines: names differ, what was weighed does not.
    Form formFor(int machine) {
        const bool faulty = machine % kFaultyEvery == 0;
        const std::string tag = tagOf(machine);
        const std::int64_t id = orEnd(fleet_->machines().byTag(tag)).id;
        Form& base = faulty ? faulty_ : sound_;
        if (base.factsOnly.empty()) base = formOf(faulty ? faultyCase() : soundCase(), "TAG-HERE", id);
        Form form = base;
        form.full.machine = id;
        for (std::string* json : {&form.full.examinationJson, &form.factsOnly})
            if (const auto at = json->find("TAG-HERE"); at != std::string::npos) json->replace(at, 8, tag);
        auto raw = std::make_shared<Recording>(*form.full.recording);
        raw->machine = tag;
        form.full.recording = raw;
        return form;
    }

    void addWeekly(int machine) {
        const Form form = formFor(machine);
        const Instant last = *parseUtc("2026-06-24T06:00:00Z");
        const int silent = machine % kSilentEvery == 7 ? kSilentWeeks : 0;
        for (int week = options_.weeks - 1; week >= silent; --week)
            add(form, last - hours(24 * 7 * week) + minutes(machine % 600), week == silent, week == 0, {});
    }

    void addYear() {
        const Form form = formFor(1);
        const Instant last = *parseUtc("2026-06-28T23:40:00Z");
        for (int i = options_.rows - 1; i >= 0; --i)
            add(form, last - minutes(20 * i), i < 7 * 72, i < kFullOnes, double(i) / options_.rows);
    }

    // `ago`: of the year's machine, 0 now to 1 a year ago.
    void add(const Form& form, Instant time, bool examined, bool waveform, std::optional<double> ago) {
        NewRecording one = form.full;
        auto raw = std::make_shared<Recording>(*form.full.recording);
        raw->time = time;
        if (!waveform)
            for (Channel& channel : raw->channels)
                channel.samples.resize(16);
        one.recording = raw;
        one.key = recordingKey(std::to_string(++made_), *raw);
        if (!examined) one.examinationJson = form.factsOnly;
        vary(one, ago);
        batch_.push_back(std::move(one));
        if (batch_.size() >= kBatch) flush();
    }

    double normal() { return normal_(random_); }

    void vary(NewRecording& one, std::optional<double> ago) {
        const double swing = std::pow(10, 0.05 * normal()), grown = ago ? 1.5 - *ago : 1;
        for (TrendRow& row : one.trends)
            for (std::size_t q = 0; q < kQuantities; ++q) {
                const bool level = q < std::size_t(Quantity::Offset);
                if (row.values[q]) *row.values[q] *= level ? swing * grown : 1 + 0.01 * normal();
            }
        if (!ago) one.spectra.clear();
        for (StoredSpectrum& spectrum : one.spectra) {
            for (float& line : spectrum.lines)
                line *= float(swing * std::pow(10, 0.1 * normal()));
            const auto drifting = std::size_t(200 + 80 * std::sin(9 * *ago));
            if (drifting < spectrum.lines.size()) spectrum.lines[drifting] *= 20;
            if (random_() % 50 == 0) spectrum.lines[random_() % spectrum.lines.size()] *= 50;
        }
        for (auto& weight : one.weights)
            weight.weightDban += 2 * normal();
        for (StoredMeasure& measure : one.measures)
            measure.value *= 1 + 0.05 * normal();
    }

    void flush() {
        if (batch_.empty()) return;
        orEnd(fleet_->recordings().putAll(batch_));
        batch_.clear();
    }

    const LargeFleetOptions& options_;
    std::unique_ptr<FleetFile> fleet_;
    Form sound_, faulty_;
    std::vector<NewRecording> batch_;
    std::mt19937 random_{5};
    std::normal_distribution<double> normal_;
    int made_ = 0;
};

}  // namespace

int makeLargeFleet(const LargeFleetOptions& options) {
    LargeFleet(options).make();
    return 0;
}

}  // namespace fettle::bench
