// Why: all that a findings sheet is made from, gathered once, so that wording, parts and figures are pure
// functions of it and can be tested without a fleet file. Thread: plain data.
#pragma once

#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/fleet/machine_week.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/trend_past.h"

namespace fettle {

// Weighed and graded: a repair may be planned on it. Else an inspection is asked for.
inline bool isFirm(const RoundFinding& told) {
    return told.finding.weightDban && (told.finding.urgency == "act" || told.finding.urgency == "plan");
}

// What a sheet stands on that has no finding.
inline constexpr const char* kByHand = "nothing: put there by a person";

struct SheetCase {
    std::shared_ptr<const Machine> machine;
    MachineEntry entry;
    std::string site;
    Period period;
    std::string today;  // the day of making; empty: not said
    RoundMachine row;
    std::size_t number = 1;  // of row.findings, from 1
    RoundFinding told;       // as the round tells it
    Hypothesis finding;      // the same with its rows, where it was weighed
    std::optional<Examination> week;
    // Of week->recordings, which one of the fleet file each is; 0: cannot be told.
    std::vector<std::int64_t> weekIds;
    std::int64_t recording = 0;   // whose rows are shown; 0: not kept
    std::string thinnedOn;        // day on which retention took its waveform; empty: it did not
    std::string recordingTime;    // UTC
    std::string recordingMoment;  // the same by the site's clock, in words
    Governing governing;
    TrendPast past;                    // of the governing quantity
    std::vector<DayValue> changeDays;  // of what a finding by change rests on; may be empty
    SiteRecord record;                 // of all findings
    SiteRecord faultRecord;            // of those of this fault
    std::optional<Job> job;
    std::vector<Event> events;
    std::string engine;

    std::string curedWords;  // that work cured it before; empty: none did, or not of this finding
    std::string massWords;   // 1x in grams; empty: not known, or not of this finding

    bool criticalityGiven = true, standbyGiven = true;  // by the description; else the default holds

    // The day dates are told from: that of making, never before the round's end.
    const std::string& day() const { return std::max(today, period.lastDay); }
    bool byHandOnly() const { return told.finding.provedOn == kByHand; }
    bool firm() const { return isFirm(told); }
};

}  // namespace fettle
