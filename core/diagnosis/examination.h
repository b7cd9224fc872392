// Why: all that was weighed, as plain data: what the report, the JSON, the fleet file and the panels read.
// Nothing is computed from it but wording. Units in the names; weights in decibans (10 log10 of the e-value),
// unrounded.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace fettle {

enum class LineState { Found, Absent, LeftOut };
std::string toText(LineState state);

struct LineRow {
    std::string name;
    double order = 0;  // of the hypothesis's own shaft, at the shift that fits best
    double expectedHz = 0;
    double foundHz = 0;  // top of the peak; 0 where left out
    double aboveFloorDb = 0;
    double rankP = 1;
    double w = 0;
    double weightDban = 0;  // 0 where left out
    LineState state = LineState::LeftOut;
    std::string why;       // of a line left out: shared with what, or beyond the view
    bool carrier = false;  // a harmonic of the defect frequency itself
    int harmonic = 1;
};

// One hypothesis weighed on one recording. The rows add up: sum(rows) + searchDban = weightDban.
struct Weighing {
    double weightDban = 0;
    double searchDban = 0;  // what the search over views, shifts and variants costs, or brings back
    double cageShift = 0;   // best c: true over expected FTF, minus 1
    std::string variant, view;
    std::string point;  // whose channel that is
    double levelG =
        0;  // of what swings at its first lines, by their height and the band's level; 0: not read
    std::size_t channel = 0;
    std::vector<LineRow> rows;
};

struct Severity {
    std::string kind;   // zone | stage
    std::string value;  // A..D | early developed late
    std::optional<double> level, limit;
    std::string unit, basis;
};

// Which way the lines went that a finding and its rival both explain.
inline constexpr const char* kClaimedByRival = "claimed lines of this one";
inline constexpr const char* kClaimedFromRival = "explained by the lines of this one";

struct Rival {
    std::string fault, at;
    double weightDban = 0;
    std::string lines;  // kClaimedByRival | kClaimedFromRival
};

// What one feature of the pattern said for a cause (cause_table.h).
struct CauseNote {
    std::string feature, unit;
    double value = 0, dban = 0;
};

// One hypothesis over all recordings of the examination.
struct Hypothesis {
    std::string fault, at;
    std::string path;                  // how it was heard (core/machine/path.h); empty: from its own housing
    std::optional<double> weightDban;  // of the mean e-value; absent: not weighed
    std::optional<double> beforeClaimsDban;  // what it was before stronger faults claimed their lines
    std::string why;                         // of one not weighed, or of a possible one
    std::size_t recording = 0;               // whose rows are shown: the strongest
    std::size_t recordingCount = 0;          // weighed or judged on; 0: none could
    double meanDban = 0;                     // row "mean over n recordings"; 0 for one recording
    Weighing best;
    Severity severity;
    std::string urgency;  // leave watch plan act
    std::string provedOn;
    std::vector<Rival> rivals;
    std::optional<double> persistence;  // share of the recordings at 10 decibans or more, or that name it
    std::vector<std::string> against;
    std::string sentence;
    std::optional<double> causeShare;   // among the causes of raised shaft vibration; sums to 1 at a place
    std::vector<CauseNote> causeNotes;  // of a cause that is named
};

struct BlindSpot {
    std::string fault, at, why, cure;
    bool machineWide = false;  // by description and points alone: told anew of every span of recordings
};

struct QualityNote {
    std::string code, channel, detail;
};

struct SpeedEstimate {
    std::string from;
    double rpm = 0, plusMinusRpm = 0;
};

struct SpeedResult {
    std::optional<double> rpm;
    double plusMinusRpm = 0;
    std::string from;  // "given, refined" | "given" | "found" | why there is none
    std::optional<double> givenRpm;
    std::vector<SpeedEstimate> estimates;
};

struct ZoneNote {
    std::string zone, basis;
    std::optional<double> limit;  // the next boundary up, mm/s
    bool indicative = false, greyOnly = false;
};

struct ChannelLevels {
    std::string channel;
    std::optional<double> velocityRmsMmS;  // leastHz to mostHz below
    double velocityLeastHz = 10, velocityMostHz = 1000;
    std::optional<double> accelerationRmsG;
    double crestFactor = 0, kurtosis = 0;
    std::vector<ZoneNote> zones;  // two where the support is unknown
    std::string noZoneWhy;
    std::optional<double> order1MmS, order2MmS, order3MmS;  // r.m.s. at 1x, 2x, 3x
};

// A number that one fault would raise, to be followed over weeks: most faults draw lines that every sound
// machine draws too, so the evidence is its change (core/trend), the name is the pattern it belongs to. One
// recording's value says nothing by itself. `name` is fixed for ever (it names the series in the fleet file):
// "mesh 1-3 x", "1x - pole pass".
struct FaultMeasure {
    std::string fault, at;    // key and place: "gear_mesh", "G1"
    std::string name, unit;   // unit: mm/s | g | dB | 1
    std::size_t channel = 0;  // index into the recording's channels
    double value = 0;
};

struct ChannelFacts {
    std::string name, point, direction, quantity;
    double sampleRateHz = 0;
    std::size_t samples = 0;
};

// Series of a node that the fleet file keeps beside those of faults: no machine's change is weighed on them.
inline constexpr const char* kSensorFault = "sensor";
inline constexpr const char* kMainsMeasure = "mains";        // Hz by the stated sample rate
inline constexpr const char* kMainsHalfWidth = "mains, +-";  // Hz

// The mains as this recording reads it by its stated sample rate, before any correction: held against other
// nodes on the same grid it shows whose rate is wrong.
struct MainsFacts {
    double hz = 0, plusMinusHz = 0;
    std::string from;     // "flux" | "2 x mains in vibration"
    bool output = false;  // an inverter's output, not the grid
};

struct RecordingFacts {
    std::string file;
    std::vector<ChannelFacts> channels;
    std::string running;  // stopped energised_not_turning running unsteady unknown
    SpeedResult speed;
    std::optional<MainsFacts> mains;  // empty: not seen in it
    std::optional<double> frameTempC;
    std::vector<QualityNote> quality;
    std::vector<ChannelLevels> levels;
    std::vector<FaultMeasure> measures;  // only of a turning machine of known speed
};

struct Examination {
    std::string engine, machine, service;
    std::vector<RecordingFacts> recordings;
    SpeedResult speed;                   // of the recordings together
    std::vector<Hypothesis> findings;    // strongest first, those without a weight last
    std::vector<Hypothesis> considered;  // every hypothesis, findings too
    std::vector<BlindSpot> blind;
    std::vector<std::string> warnings;
};

}  // namespace fettle
