// Why: the sample fleet is data, not code: machines as their owner would describe them, the nodes on them,
// and what happens to each, by date. Read once, checked, then plain. Files: FOLDER/scenario.json (start,
// weeks, node kinds, weather, list of tags, recordings that arrive spoiled) and FOLDER/TAG.json a machine
// (description, nodes, stories, what the site noted). Units in the names; severities as in severity_scale.h,
// straight lines between dates, held before the first and after the last. Errors: file and place. Thread:
// plain data.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/file_system.h"
#include "core/base/json_object.h"
#include "core/base/time.h"
#include "core/simulate/simulation.h"

namespace fettle::sim {

// A value that moves in straight lines between dates.
struct DatedValue {
    Instant on;
    double value = 0;
};
double valueAt(const std::vector<DatedValue>& knots, Instant time);

struct Story {
    Condition condition;  // kind, place and everything but the severity
    std::vector<DatedValue> severity;
    std::optional<double> hotAboveC;  // only above this ambient, in full 6 K higher
    std::string text;                 // one sentence for the reader of truth.json
    std::string fault;                // fault key of the contracts; empty: nothing is wrong with the machine
    bool decoy = false;
    std::vector<std::string> expect;   // fault keys a verdict at the end should name
    std::vector<std::string> mustNot;  // fault keys it must not name
    std::string unseen;                // reason why the machine cannot be judged at the end: silent, idle ...
    bool visibleNow = false;           // one recording of the last week can show it
};

// Kinds of story that are not a source of vibration.
inline constexpr const char* kStoppedKind = "stopped";  // stands still, recordings go on
inline constexpr const char* kSilentKind = "silent";    // no recordings

struct CaptureKind {
    std::string name;  // empty: the node's usual one
    double seconds = 4;
    double rateHz = 0;                         // 0: the node's
    int bits = 0;                              // 0: the node's
    std::vector<std::chrono::weekday> onDays;  // empty: every day
};

struct FleetNode {
    std::size_t point = 0;
    NodeKind kind;  // its clockError is this node's own
    std::string id;
    std::vector<CaptureKind> captures;
    bool givesSpeed = false, givesLoad = false, simultaneous = true;
};

struct OperationPlan {
    double load = 0.75, loadSwing = 0.01;  // of rated; within a recording, relative
    double loadDaily = 0.03;               // from day to day, relative
    double hallC = 0;                      // warmer than outdoors by
    double slipFactor = 1;
    std::vector<double> outputHz;  // inverter: least and most
};

struct DenseSpan {
    Instant from, to;
    int perWeek = 7;
};

// What people of the site wrote down: a job done, or left undone.
struct SiteEvent {
    Instant time;
    std::string kind;  // repair greasing part moved_node cleaning inspection other
    std::string at, text;
};

struct FleetMachine {
    Machine machine;
    Json description;  // as in the file
    OperationPlan operation;
    std::vector<FleetNode> nodes;
    std::vector<DenseSpan> dense;
    std::vector<Story> stories;
    std::vector<SiteEvent> events;  // oldest first
    std::string about;
};

// Recordings that do not arrive as they should, so that intake has something to refuse, park and recognise.
struct IntakeTrouble {
    std::string kind;            // one of the words below
    std::string machine, point;  // all recordings of this point ...
    Instant from, to;            // ... on these days, both included
    std::optional<Instant> received;
    std::string should, text;  // what intake should do: refuse park recognise take; and why, for the reader
};
inline constexpr const char* kClockReset = "clock_reset";  // the node counts from 1970 on
inline constexpr const char* kCutOff = "cut_off";          // the file ends in the middle
inline constexpr const char* kDuplicate = "duplicate";     // comes a second time under another name
inline constexpr const char* kLate = "late";               // comes days after, at `received`

struct HeatWave {
    Instant from, to;
    double plusK = 0;
};

struct Scenario {
    std::string site;
    Instant start;  // a Monday, 00:00 UTC
    int weeks = 26;
    std::vector<HeatWave> heatWaves;
    std::vector<FleetMachine> machines;
    std::vector<IntakeTrouble> intake;
    std::uint64_t checksum = 0;         // of all files' texts
    std::vector<std::string> warnings;  // unknown keys

    Instant end() const { return start + std::chrono::days(7 * weeks); }
};

Result<Scenario> loadScenario(const FileSystem& files, const std::string& folder);

}  // namespace fettle::sim
