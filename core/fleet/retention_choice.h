// Why: which recordings' waveforms, spectra and examinations stay, as a pure choice over what a machine has.
// Age counts back from the newest recording of the same point (never from one dated after now): a point that
// fell silent, or a whole fleet that did, keeps its last days whole however long the silence. Days and weeks
// (from Monday) are those of the site's calendar; a day or week is thinned once all of it is old enough.
// Of a day or week the strongest stays: the largest weight of any hypothesis, then the largest velocity
// r.m.s., then the earliest; the same for all three kinds, so that what stays is one whole recording. What
// somebody stands on stays besides. Thread: pure.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/store/retention_store.h"

namespace fettle {

enum class KeptFor {  // the first that applies is told
    Young,            // not old enough
    Round,            // an open round's week, or what a kept round's rows show
    Finding,          // a week's strongest recording of a fault that reached 20 decibans, or a standing alert
    Baseline,         // days that say what is usual
    Trial,
    Balance,
    Job,      // weighed before and after a job
    History,  // the last before and the first after a dated event, a report or a job
    Request,  // answered one
    Refusal,  // of its file something was refused that nobody has answered
    Day,      // the strongest of its day
    Week
};
inline constexpr std::size_t kReasons = 12;
const char* keyOf(KeptFor reason);    // "young", "one_a_day"
const char* inWords(KeptFor reason);  // "not old enough yet"

inline constexpr std::array<bool, kKeptKinds> kEverything = {true, true, true};
inline constexpr std::array<bool, kKeptKinds> kAllButWaveform = {false, true, true};

// What recordings of one machine are held for.
struct Holds {
    using Reasons = std::array<std::optional<KeptFor>, kKeptKinds>;
    std::unordered_map<std::int64_t, Reasons> of;  // by recording
    struct Days {
        int first = 0, last = 0;  // since 1970-01-01, site's calendar
    };
    // By point: all spectra of these days stay, and of each day the strongest waveform and examination.
    std::map<std::string, std::vector<Days>> baselines;

    // A reason that comes earlier in KeptFor stands before a later one.
    void add(std::int64_t recording, KeptFor why, const std::array<bool, kKeptKinds>& kinds = kEverything);
    bool inBaseline(const std::string& point, int day) const;
};

// Of each recording and kind: why it stays; empty: it goes (or is not there).
using Choice = std::array<std::optional<KeptFor>, kKeptKinds>;
struct Aged {
    std::vector<KeptRecording> recordings;
    std::vector<Instant> clocks;            // of each, by the site's clock
    std::map<std::string, Instant> newest;  // by point, by that clock: of those too that are not given
    Instant now{};                          // by that clock
};
std::vector<Choice> chooseKept(const Aged& aged, const RetentionRules& rules, const Holds& holds);
// Recordings (indices) that are weighed against others of their day or week: evidence and level of others are
// not looked at.
std::vector<std::size_t> contested(const Aged& aged, const RetentionRules& rules, const Holds& holds);

// The stronger of two.
bool isStronger(const KeptRecording& a, const KeptRecording& b);
int weekOfDay(int day);  // counted from Mondays

}  // namespace fettle
