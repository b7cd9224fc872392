#include "tests/bench/size_fleet.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <random>

#include "core/diagnosis/examine.h"
#include "core/fleet/round_desk.h"
#include "core/intake/stored_form.h"
#include "core/store/database.h"
#include "core/store/fleet_file.h"
#include "core/store/packing.h"
#include "core/store/sidecar_rows.h"
#include "core/store/spectrum_codec.h"
#include "core/store/spectrum_spans.h"
#include "core/store/waveform_codec.h"
#include "tests/bench/bench_case.h"
#include "tests/bench/or_end.h"

namespace fettle::bench {

namespace {

using std::chrono::hours;
using std::chrono::minutes;

constexpr int kADay = 72;
constexpr std::size_t kSamples = 36'000;  // of a recording: 3 s at 12 kHz
constexpr int kWeek = 7;

constexpr const char* kFormOfMachine =
    R"({{ "tag": "{0}", "asset": "E-{1:05}", "service": "fan {1}", "area": "Hall {2}",
    "mains_hz": 60, "support": "rigid",
    "driver": {{ "kind": "induction", "power_kw": 1.5, "poles": 4, "rated_rpm": 1730, "supply": "mains",
      "bearings": {{ "DE": {{ "designation": "6205" }}, "NDE": {{ "designation": "6203" }} }} }},
    "points": [ {{ "id": "DE", "at": "driver DE", "mount": "bearing_housing",
      "channels": [ {{ "name": "de", "quantity": "acceleration", "unit": "g", "direction": "vertical" }} ] }} ] }})";

constexpr const char* kSidecar = R"({{
  "schema": 1,
  "engine": "a node's firmware 4.2.1 9f3a77e2",
  "machine": "M-{0:04}",
  "point": "DE",
  "time": "{1}",
  "time_source": "node",
  "received": "{2}",
  "capture": "{0:04}-{3:07}",
  "simultaneous": true,
  "frame_temp_c": {4:.1f},
  "ambient_temp_c": {5:.1f},
  "channels": [
    {{
      "name": "de",
      "unit": "g",
      "scale": 16.0
    }}
  ]
}}
)";

// What every recording holds, packed once.
struct Packed {
    NewRecording form;
    std::string waveform, examination;
    std::uint64_t digest = 0;
    std::vector<std::string> spectra;  // quantised
    std::vector<std::int64_t> hypotheses, measures;
};

class SizeFleet {
  public:
    explicit SizeFleet(const SizeFleetOptions& options)
        : options_(options),
          full_(options.what == "full"),
          machines_(options.machines ? options.machines
                    : full_          ? 100
                                     : 1000),
          path_(options.folder + "/" + options.what + ".fettle") {}

    void make() {
        std::filesystem::create_directories(options_.folder);
        std::filesystem::remove(path_);
        registerAll();
        pack();
        database_ = orEnd(Database::open(path_, Access::ReadWrite));
        orEnd(
            database_->script("PRAGMA foreign_keys=OFF; PRAGMA synchronous=OFF; PRAGMA cache_size=-400000; "
                              "PRAGMA journal_mode=MEMORY;"));
        nameThings();
        for (int day = options_.days; day > 0; --day)
            addDay(day);
        database_.reset();
        fmt::print("{} machines, {} days, {} recordings; the round is being opened\n", machines_,
                   options_.days, recordings_);
        auto fleet = orEnd(FleetFile::open(path_));
        orEnd(openRound(*fleet, "2026-06-28"));
        fleet.reset();
        fmt::print("{}: {:.2f} GB\n", path_, double(std::filesystem::file_size(path_)) / 1e9);
    }

  private:
    void registerAll() {
        auto fleet = orEnd(FleetFile::create(path_, {"size", "UTC", 0.1}));
        for (int i = 1; i <= machines_; ++i)
            orEnd(fleet->machines().put(fmt::format(kFormOfMachine, fmt::format("M-{:04}", i), i, 1 + i % 12),
                                        "fleet of real size"));
    }

    void pack() {
        auto raw = std::make_shared<Recording>(*soundCase().recording);
        raw->machine = "M-0001", raw->point = "DE", raw->time = parseUtc("2026-06-28T00:00:00Z");
        raw->frameTempC = 52, raw->ambientTempC = 21, raw->loadPct = 80;
        raw->channels[0].samples.resize(kSamples);
        const auto examined = orEnd(examineRecording(soundCase().machine, raw));
        packed_.form = storedForm(raw, 1, soundCase().machine, examined);
        const Channel& channel = raw->channels[0];
        packed_.waveform = packWaveform(channel.samples, channel.bits, channel.scale);
        packed_.digest = digestOf(channel.samples);
        packed_.examination = fettle::pack(packed_.form.examinationJson);
        for (const StoredSpectrum& spectrum : packed_.form.spectra)
            packed_.spectra.push_back(quantised(spectrum.lines));
        fmt::print(
            "a recording: waveform {} bytes of {} samples, examination {}, {} weights, {} measures, "
            "{} spectra\n",
            packed_.waveform.size(), kSamples, packed_.examination.size(), packed_.form.weights.size(),
            packed_.form.measures.size(), packed_.spectra.size());
    }

    void nameThings() {
        for (int i = 1; i <= machines_; ++i)
            run("INSERT INTO channel(id, machine, point, name, quantity, unit, direction) VALUES "
                "(?,?,'DE','de','acceleration','g','vertical')",
                i, i);
        for (const auto& weight : packed_.form.weights) {
            run("INSERT INTO hypothesis(fault, at) VALUES (?,?) ON CONFLICT DO NOTHING", weight.fault,
                weight.at);
            packed_.hypotheses.push_back(
                orEnd(database_->one<std::int64_t>("SELECT id FROM hypothesis WHERE fault=? AND at=?",
                                                   weight.fault, weight.at))
                    .value_or(0));
        }
        for (const StoredMeasure& measure : packed_.form.measures) {
            run("INSERT INTO measure(fault, at, name, unit) VALUES (?,?,?,?) ON CONFLICT DO NOTHING",
                measure.fault, measure.at, measure.name, measure.unit);
            packed_.measures.push_back(
                orEnd(database_->one<std::int64_t>(
                          "SELECT id FROM measure WHERE fault=? AND at=? AND name=? AND unit=?",
                          measure.fault, measure.at, measure.name, measure.unit))
                    .value_or(0));
        }
        run("INSERT INTO retention_run(id, started, by, rules) VALUES (1, 0, 'bench', '')");
    }

    template <class... Values>
    void run(const char* sql, const Values&... values) {
        orEnd(database_->run(sql, values...));
    }

    void addDay(int ago) {
        Transaction transaction(*database_);
        orEnd(transaction.begun());
        const Instant day = *parseUtc("2026-06-29T00:00:00Z") - hours(24) * ago;
        for (int machine = 1; machine <= machines_; ++machine) {
            for (int i = 0; i < kADay; ++i)
                addRecording(machine, day + minutes(20 * i) + std::chrono::seconds(machine % 900), i, ago);
            if (full_) addSpans(machine, day);
        }
        orEnd(transaction.commit());
        if (ago % 30 == 0)
            fmt::print("{} days to go, {} recordings\n", ago, recordings_), std::fflush(stdout);
    }

    double swing() { return std::exp(0.1 * normal_(random_)); }

    void addRecording(int machine, Instant time, int ofDay, int ago) {
        const std::int64_t id = ++recordings_;
        std::array<char, 16> key{};
        for (int i = 0; i < 8; ++i)
            key[std::size_t(i)] = char(id >> (8 * (7 - i)));
        run("INSERT INTO recording(id, key, machine, time, file, format, tag, point, capture, time_source, "
            "received, simultaneous, sample_rate_hz, samples, frame_temp_c, ambient_temp_c, load_pct, "
            "warnings, "
            "sidecar, running, speed_rpm, speed_pm_rpm, late, imported) VALUES "
            "(?,?,?,?,?,'FLAC',?,'DE','0515-0004506','node',?,1,12000,?,52,21,80,'[]','','running',1730.5,0."
            "4,"
            "0,?)",
            id, Blob{{key.data(), key.size()}}, machine, time,
            fmt::format("/srv/recordings/M-{:04}/{}_DE.flac", machine, formatUtc(time)),
            fmt::format("M-{:04}", machine), time + std::chrono::seconds(9), kSamples, time + hours(1));
        const double warmth = 5 * normal_(random_);
        orEnd(putSidecar(
            *database_, id, machine, "DE",
            fmt::format(kSidecar, machine, formatUtc(time), formatUtc(time + std::chrono::seconds(9)), id,
                        52 + warmth, 21 + 0.6 * warmth)));
        run("INSERT INTO recording_channel(recording, place, channel, unit, full_scale, bits, scale) VALUES "
            "(?,0,?,'g',16,16,16)",
            id, machine);
        addTrend(machine, time, id);
        if (full_) addFull(machine, time, id, ofDay, ago);
        const bool examined = !full_ && ago <= kWeek && ofDay == 30;
        if (examined) addExamination(machine, time, id);
    }

    void addTrend(int machine, Instant time, std::int64_t id) {
        static const std::string sql = [] {
            std::string text = "INSERT INTO trend(channel, time, recording, running, zone, next_limit_mm_s",
                        places = "?,?,?,'running',?,?";
            for (std::size_t q = 0; q < kQuantities; ++q)
                text += std::string(", ") + columnOf(Quantity(q)), places += ",?";
            return text + ") VALUES (" + places + ")";
        }();
        const TrendRow& form = packed_.form.trends[0];
        Statement row(*database_, sql);
        row.bind(machine, time, id, form.zone, form.nextLimitMmS);
        for (const auto& value : form.values)
            row.bind(value ? std::optional(*value * swing()) : value);
        orEnd(row.finish());
    }

    void addExamination(int machine, Instant time, std::int64_t id) {
        std::string json = packed_.form.examinationJson;
        if (const auto at = json.find("M-0001"); at != std::string::npos)
            json.replace(at, 6, fmt::format("M-{:04}", machine));
        run("INSERT INTO examination(recording, engine, json) VALUES (?,?,?)", id, packed_.form.engine,
            full_ ? Blob{packed_.examination} : Blob{fettle::pack(json)});
        addWeights(machine, time, id);
    }

    void addWeights(int machine, Instant time, std::int64_t id) {
        for (std::size_t i = 0; i < packed_.hypotheses.size(); ++i)
            run("INSERT INTO weight(machine, time, recording, hypothesis, weight_dban) VALUES (?,?,?,?,?) ON "
                "CONFLICT DO NOTHING",
                machine, time, id, packed_.hypotheses[i],
                packed_.form.weights[i].weightDban + 2 * normal_(random_));
    }

    // By the shipped rules: the first of a day is its one, the first of a week of days the week's.
    void addFull(int machine, Instant time, std::int64_t id, int ofDay, int ago) {
        addWeights(machine, time, id);
        for (std::size_t i = 0; i < packed_.measures.size(); ++i)
            run("INSERT INTO measured(channel, measure, time, recording, value) VALUES (?,?,?,?,?)", machine,
                packed_.measures[i], time, id, packed_.form.measures[i].value * swing());
        const bool daily = ofDay == 0, all = ago <= 30 || daily;
        const bool waveform = ago <= 2 || (daily && (ago <= 92 || ago % kWeek == 0));
        if (waveform)
            run("INSERT INTO waveform(recording, place, digest, data) VALUES (?,0,?,?)", id,
                std::int64_t(packed_.digest), Blob{packed_.waveform});
        if (all) {
            for (std::size_t i = 0; i < packed_.spectra.size(); ++i)
                run("INSERT INTO spectrum(channel, kind, time, recording, top_hz, lines) VALUES "
                    "(?,?,?,?,?,?)",
                    machine, int(packed_.form.spectra[i].kind), time, id, packed_.form.spectra[i].topHz,
                    Blob{packed_.spectra[i]});
            run("INSERT INTO examination(recording, engine, json) VALUES (?,?,?)", id, packed_.form.engine,
                Blob{packed_.examination});
        }
        const std::optional<int> taken = 1, kept;
        if (!waveform)
            run("INSERT INTO thinned(recording, waveform, spectra, examination) VALUES (?,?,?,?)", id, taken,
                all ? kept : taken, all ? kept : taken);
    }

    void addSpans(int machine, Instant day) {
        const std::int64_t first = recordings_ - kADay + 1;
        for (std::size_t i = 0; i < packed_.spectra.size(); ++i)
            for (int level = 1; level <= kSpanLevels; ++level)
                for (Instant start = day; start < day + hours(24); start += spanLength(level))
                    run("INSERT INTO spectrum_span(channel, kind, level, start, top_hz, spectra, loudest, "
                        "at, "
                        "lines) VALUES (?,?,?,?,?,?,?,?,?)",
                        machine, int(packed_.form.spectra[i].kind), level, start,
                        packed_.form.spectra[i].topHz, spanLength(level) / minutes(20), first, start,
                        Blob{packed_.spectra[i]});
    }

    const SizeFleetOptions& options_;
    const bool full_;
    const int machines_;
    const std::string path_;
    std::unique_ptr<Database> database_;
    Packed packed_;
    std::int64_t recordings_ = 0;
    std::mt19937 random_{7};
    std::normal_distribution<double> normal_;
};

}  // namespace

int makeSizeFleet(const SizeFleetOptions& options) {
    SizeFleet(options).make();
    return 0;
}

}  // namespace fettle::bench
