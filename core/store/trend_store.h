// Why: what is followed over years: one wide row of levels a recording and channel, and one spectrum of 800
// lines a kind for the waterfall, both clustered by (channel, time) so that a year of one channel is one run
// on disk. Units in the names; absent: not measured. Spectra are quantised in 0.75 dB steps re 1e-6 of their
// unit, reduced by maximum, so that a one-bin line survives.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

class Database;

enum class WaterfallKind {  // numbers stand in the file: never change them
    Velocity = 1,           // r.m.s. mm/s a line, to 1000 Hz (or the channel's top)
    Acceleration = 2,       // r.m.s. g a line, to the channel's top
    Envelope =
        3  // amplitude ratio to the local floor of the whole band's squared-envelope spectrum, to 1000 Hz
};
inline constexpr std::size_t kStoredLines = 800;

struct StoredSpectrum {
    std::string channel, point;  // names within the recording
    WaterfallKind kind = WaterfallKind::Velocity;
    double topHz = 0;          // line i covers [i, i + 1) x topHz / lines.size()
    std::vector<float> lines;  // at most kStoredLines, linear
};

// Quantities of a trend row; order and names are the file's columns.
enum class Quantity {
    VelocityRms,      // mm/s, 10 (2) to 1000 Hz
    AccelerationRms,  // g
    Peak,             // g
    CrestFactor,
    Kurtosis,
    Order1,
    Order2,
    Order3,    // mm/s r.m.s.
    HighBand,  // g r.m.s., above 1 kHz
    Offset,    // unit of the channel: gravity, drift
    SpeedRpm,
    FrameTempC,
    AmbientTempC,
    LoadPct
};
inline constexpr std::size_t kQuantities = 14;
const char* columnOf(Quantity quantity);  // "velocity_rms_mm_s"
const char* unitOf(Quantity quantity);    // "mm/s"

struct TrendRow {
    std::string channel, point, quantity, unit, direction;  // of the channel, as described at that time
    Instant time{};
    std::string running;  // running state of the recording
    std::optional<double> values[kQuantities];
    std::string zone;  // A .. D or empty
    std::optional<double> nextLimitMmS;
};

struct ChannelEntry {
    std::int64_t id = 0, machine = 0;
    std::string point, name, quantity, unit, direction;
};

struct TrendPoint {
    Instant time{};
    std::int64_t recording = 0;
    std::string running;
    double value = 0;
};

// All quantities of one recording on one channel.
struct TrendValues {
    Instant time{};
    std::int64_t recording = 0;
    std::string running;
    std::optional<double> values[kQuantities];
    std::optional<double> of(Quantity quantity) const { return values[std::size_t(quantity)]; }
};

// A number that one fault would raise (core/diagnosis: FaultMeasure), as it is stored.
struct StoredMeasure {
    std::string channel, point;  // names within the recording
    std::string fault, at, name, unit;
    double value = 0;
};

// One of them on one channel: what `measured` gives the values of.
struct MeasureSeries {
    std::int64_t channel = 0, measure = 0;  // ids in the file
    std::string point, channelName, direction;
    std::string fault, at, name, unit;
};

struct SpectrumAt {
    Instant time{};
    std::int64_t recording = 0;
    double topHz = 0;
    std::vector<float> lines;  // linear, as quantised
};

struct SpectrumSpan {
    Instant from{}, until{};  // [from, until)
    double topHz = 0;
    std::size_t spectra = 0;   // that went in, whether they are still kept or not
    std::int64_t loudest = 0;  // recording whose spectrum held the largest line
    Instant at{};              // of that recording
    std::vector<float> lines;  // linear, as quantised
};

class TrendStore {
  public:
    explicit TrendStore(Database& database) : database_(database) {}

    Result<std::vector<ChannelEntry>> channels(std::int64_t machine);
    // One quantity of one channel within [from, until], oldest first; rows without the value are left out.
    Result<std::vector<TrendPoint>> trend(std::int64_t channel, Quantity quantity, Instant from,
                                          Instant until);
    // All quantities of one channel in one reading, within [from, until], oldest first.
    Result<std::vector<TrendValues>> values(std::int64_t channel, Instant from, Instant until);
    // Velocity, speed and load of one channel from `from` on, oldest first, rows without velocity left out.
    // `take` says from when on the next one is wanted (not later than this one: the next there is), empty: no
    // more; what lies between is not read.
    Status walk(std::int64_t channel, Instant from,
                const std::function<std::optional<Instant>(const TrendValues&)>& take);
    Result<std::optional<Instant>> first(std::int64_t channel);  // of its oldest row
    Result<std::optional<TrendRow>> latest(std::int64_t channel);
    // Every measure of the machine that has a value, in the order of fault, place, name, point and channel.
    Result<std::vector<MeasureSeries>> measures(std::int64_t machine);
    // Its values within [from, until], oldest first; `running` as trend() has it.
    Result<std::vector<TrendPoint>> measured(const MeasureSeries& series, Instant from, Instant until);
    Result<std::vector<SpectrumAt>> spectra(std::int64_t channel, WaterfallKind kind, Instant from,
                                            Instant until);

    // The largest of every line over spans of time that meet [from, until], in order of time: of the coarsest
    // length that still gives `columns` of them, else of the shortest.
    struct Spans {
        std::vector<SpectrumSpan> spans;
        std::chrono::milliseconds each{};
        std::size_t spectra = 0;  // that went in
    };
    Result<Spans> spans(std::int64_t channel, WaterfallKind kind, Instant from, Instant until,
                        std::size_t columns);
    // Spans of series that a program before put in (core/store/spectrum_spans.h), a transaction a series.
    // Without it spectra of such a series cannot be deleted. Nothing to do: done at once.
    Status buildSpans(const Progress& progress = {}, const CancelToken& cancel = {});

  private:
    struct Ends {
        Instant first{}, last{};
    };
    Result<std::optional<Ends>> endsOfSpectra(std::int64_t channel, WaterfallKind kind);
    Database& database_;
};

}  // namespace fettle
